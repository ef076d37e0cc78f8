package site_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/templates"
)

// A sign over several sheets is printed, cut at its marks, joined, and compared with the same sign printed on one large sheet.

// joinDPI is how finely the sheets are painted before they are joined.
const joinDPI = 100

func checkTiles(t *testing.T, demo *builtDemo, sheet record.Sheet) {
	paper, _, _ := strings.Cut(sheet.Paper, " ")
	record := sheet.Faces[0]
	if want := fmt.Sprintf("%s x%d", paper, record.Pages); sheet.Paper != want {
		t.Errorf("paper %q, want %q", sheet.Paper, want)
	}
	b := openTab(t)
	b.openFile(demo.path(sheet.Path))
	boards := checkBoards(b, sheet)
	checkOpened(t, demo, record)

	printed := b.pdf()
	checkPaper(t, printed, paper, record.Pages)
	checkFonts(t, printed, demo.families()...)
	var sheets []*image.Gray
	for i, shot := range shoot(t, printed, joinDPI) {
		side := painted(t, shot)
		if templates.TileFieldOf(paper).Turned {
			side = turnedBack(side)
		}
		checkBoardCapitals(t, side, boards[i], record)
		sheets = append(sheets, side)
	}
	checkQuietZone(t, measuredFaces(b)[len(boards)-1], sheets[len(boards)-1])
	compare(t, joined(t, sheets), whole(b, paper, record.Pages))
	if paper == "letter" {
		shots := shoot(t, printed, 150)
		checkCode(t, shots[len(shots)-1], record.QR)
	}
}

// isTiled reports whether a sheet is a sign over several sheets of paper.
func isTiled(sheet record.Sheet) bool { return strings.Contains(sheet.Paper, " x") }

// checkBoards measures the sheets of a sign as a screen shows them, and the code, which is on the last.
func checkBoards(b tab, sheet record.Sheet) []measuredBoard {
	b.Helper()
	paper, _, _ := strings.Cut(sheet.Paper, " ")
	boards, record := measuredBoards(b), sheet.Faces[0]
	if len(boards) != record.Pages {
		b.Fatalf("%d sheets, and %d in the record", len(boards), record.Pages)
	}
	for _, board := range boards {
		checkBoard(b.T, board, paper)
	}
	faces := measuredFaces(b)
	last := len(faces) - 1
	for _, face := range faces[:last] {
		if len(face.Codes) > 0 {
			b.Error("a code on a sheet that is not the last")
		}
	}
	checkCodeBox(b.T, faces[last])
	checkCodeRecord(b.T, faces[last], record)
	return boards
}

// A shownSide is a side of paper as it is measured and as it is painted. Those of a sign over several sheets stand upright, as it hangs.
type shownSide struct {
	measuredFace
	drawings []drawing
	painted  *image.Gray
}

// shownSides prints a sheet and pairs each side with its picture.
func shownSides(t *testing.T, demo *builtDemo, sheet record.Sheet, dpi int) (all []shownSide) {
	t.Helper()
	paper, _, _ := strings.Cut(sheet.Paper, " ")
	b := openTab(t)
	b.openFile(demo.path(sheet.Path))
	if !isTiled(sheet) {
		b.asPrinted()
	}
	faces, drawings := measuredFaces(b), evaluated[[][]drawing](b, findMarks)
	for _, shot := range shoot(t, b.pdf(), dpi) {
		side := painted(t, shot)
		if isTiled(sheet) && templates.TileFieldOf(paper).Turned {
			side = turnedBack(side)
		}
		n := len(all)
		if n == len(faces) {
			t.Fatalf("%s: more sides printed than the %d that were measured", sheet.ID, n)
		}
		all = append(all, shownSide{faces[n], drawings[n], side})
	}
	if len(all) != len(faces) {
		t.Fatalf("%s: %d sides printed, and %d measured", sheet.ID, len(all), len(faces))
	}
	return all
}

// A measuredBoard is one sheet of a sign as the browser shows it on a screen: not turned. Sizes are px from the top left corner of the paper.
type measuredBoard struct {
	Paper, Board   box
	Danger, Hazard []measuredLine
	Room           box // of the lines of the message, inside the frame
	Parts, Joins   []box
	Fits           []measuredFit
}

const measureBoards = `(async () => {
  await document.fonts.ready;
  const plain = (r, o) => ({Left: r.left - o.left, Top: r.top - o.top, Right: r.right - o.left, Bottom: r.bottom - o.top});
  function rangeOf(node) { const range = document.createRange(); range.selectNodeContents(node); return range; }
  function line(e, o) {
    const range = rangeOf(e), tops = new Set([...range.getClientRects()].map(r => Math.round(r.top)));
    return {Text: e.textContent, Rows: tops.size, Leading: parseFloat(getComputedStyle(e).lineHeight), Box: plain(e.getBoundingClientRect(), o), Ink: plain(range.getBoundingClientRect(), o)};
  }
  const fit = (e, o) => ({Planned: parseFloat(e.style.fontSize), Size: parseFloat(getComputedStyle(e).fontSize), Box: plain(e.getBoundingClientRect(), o),
    Room: plain(e.parentElement.getBoundingClientRect(), o), Lines: [...e.querySelectorAll('.line')].map(l => line(l, o))});
  return [...document.querySelectorAll('section.tile')].map(face => {
    const o = face.getBoundingClientRect(), lines = what => [...face.querySelectorAll(what + ' .line')].map(l => line(l, o));
    const hazards = face.querySelector('.hazards');
    return {Paper: plain(o, o), Board: plain(face.querySelector('.board').getBoundingClientRect(), o), Danger: lines('.danger'), Hazard: lines('.hazards'),
      Room: hazards ? plain(hazards.getBoundingClientRect(), o) : {Left: 0, Top: 0, Right: 0, Bottom: 0},
      Parts: [...face.querySelectorAll('.board > :not(.join)')].map(e => plain(e.getBoundingClientRect(), o)),
      Joins: [...face.querySelectorAll('.join')].map(e => plain(e.getBoundingClientRect(), o)),
      Fits: [...face.querySelectorAll('.fit')].map(e => fit(e, o))};
  });
})()`

func measuredBoards(b tab) []measuredBoard {
	b.Helper()
	return evaluated[[]measuredBoard](b, measureBoards)
}

// checkBoard makes sure that a sheet shows all of its piece: lines as they were measured, nothing over its edge but the marks, and those on paper that
// printers reach.
func checkBoard(t *testing.T, b measuredBoard, paper string) {
	t.Helper()
	field := templates.TileFieldOf(paper)
	if w, h := b.Board.width()/mm, b.Board.height()/mm; math.Abs(w-field.Width) > 0.2 || math.Abs(h-field.Height) > 0.2 {
		t.Errorf("a field of %.1f by %.1f mm, want %g by %g", w, h, field.Width, field.Height)
	}
	for _, line := range append(b.Danger, b.Hazard...) {
		if line.Rows != 1 || math.Abs(line.Box.height()-line.Leading) > slack {
			t.Errorf("the line %q stands in %d rows", line.Text, line.Rows)
		}
		if line.Ink.width() > templates.TileInside*mm+slack || !b.Board.holds(line.Box) {
			t.Errorf("the line %q is %.1f mm wide, or leaves its sheet", line.Text, line.Ink.width()/mm)
		}
	}
	for _, line := range b.Hazard {
		if !b.Room.holds(line.Box) {
			t.Errorf("the line %q leaves its frame: %.1f in %.1f px", line.Text, line.Box, b.Room)
		}
	}
	for i, part := range b.Parts {
		if !b.Board.holds(part) {
			t.Errorf("part %d leaves the sheet: %.1f in %.1f px", i, part, b.Board)
		}
		if i > 0 && part.meets(b.Parts[i-1]) {
			t.Errorf("part %d lies over the one before", i)
		}
	}
	reached := box{b.Paper.Left + 3*mm, b.Paper.Top + 3*mm, b.Paper.Right - 3*mm, b.Paper.Bottom - 3*mm}
	for _, mark := range b.Joins {
		if mark.meets(b.Board) || !reached.holds(mark) {
			t.Errorf("a mark of a join lies on the sign or off the paper: %.1f px", mark)
		}
	}
	for _, fit := range b.Fits {
		if !fit.Room.holds(fit.Box) {
			t.Errorf("measured text leaves its box: %.1f in %.1f px", fit.Box, fit.Room)
		}
		for _, line := range fit.Lines {
			if line.Rows != 1 {
				t.Errorf("the line %q stands in %d rows", line.Text, line.Rows)
			}
		}
	}
}

// turnedBack turns a side that was fed upright so that its sign stands upright.
func turnedBack(side *image.Gray) *image.Gray {
	w, h := side.Rect.Dx(), side.Rect.Dy()
	turned := image.NewGray(image.Rect(0, 0, h, w))
	for y := range w {
		for x := range h {
			turned.SetGray(x, y, side.GrayAt(w-1-y, x))
		}
	}
	return turned
}

func checkBoardCapitals(t *testing.T, side *image.Gray, b measuredBoard, record record.Face) {
	t.Helper()
	if len(b.Danger) > 0 {
		checkCapitals(t, side, joinDPI, b.Danger, true, record.SignalHeightMM)
	}
	if len(b.Hazard) > 0 {
		checkCapitals(t, side, joinDPI, b.Hazard, false, record.CapHeightMM)
	}
}

// checkCapitals measures, in print, the first letter of every line that begins with a flat capital without an accent, and compares its height with
// the claimed one, within 2 % or a dot.
func checkCapitals(t *testing.T, side *image.Gray, dpi int, lines []measuredLine, white bool, wantMM float64) {
	t.Helper()
	measured := 0
	for _, line := range lines {
		if !strings.ContainsAny(line.Text[:1], "BDEFHIKLMNPRTXZ") {
			continue
		}
		measured++
		got := firstLetterHeight(side, line.Ink, float64(dpi)/96, white) * 25.4 / float64(dpi)
		if math.Abs(got-wantMM) > max(0.02*wantMM, 25.4/float64(dpi)) {
			t.Errorf("the first letter of %q is %.2f mm high, and the record says %.2f mm", line.Text, got, wantMM)
		}
	}
	if measured == 0 && len(lines) > 1 {
		t.Logf("no line begins with a flat capital: %d lines", len(lines))
	}
}

// firstLetterHeight is the height in dots of the ink in the leftmost columns of a line, up to the first column without ink. Ink of other lines may lie
// in the same rows, so the dots are followed from the middle of the capital up and down.
func firstLetterHeight(side *image.Gray, ink box, scale float64, white bool) float64 {
	is := func(x, y int) bool { return (side.GrayAt(x, y).Y < 128) != white }
	middle := int((ink.Top + ink.Bottom) / 2 * scale)
	quarter := int(ink.height() * scale / 8)
	inked := func(x int) bool {
		for y := middle - quarter; y <= middle+quarter; y++ {
			if is(x, y) {
				return true
			}
		}
		return false
	}
	x := int(ink.Left*scale) - 3
	for !inked(x) && x < int(ink.Right*scale) {
		x++
	}
	from := x
	for inked(x) {
		x++
	}
	top, bottom := middle, middle
	for rowInked(is, from, x, top-1) {
		top--
	}
	for rowInked(is, from, x, bottom+1) {
		bottom++
	}
	return float64(bottom - top + 1)
}

func rowInked(is func(x, y int) bool, from, to, y int) bool {
	for x := from; x < to; x++ {
		if is(x, y) {
			return true
		}
	}
	return false
}

// joined cuts the sheets at their marks, as a person does with scissors, and puts them one below the other.
func joined(t *testing.T, sheets []*image.Gray) *image.Gray {
	t.Helper()
	width, height := sheets[0].Rect.Dx(), 0
	var pieces []*image.Gray
	for i, sheet := range sheets {
		top, bottom := 0, sheet.Rect.Dy()
		if i > 0 { // from the lower edge of the solid mark
			top = markRow(t, sheet, 0, 1, 0.85)
			for inkOf(sheet, top) > 0.5 {
				top++
			}
		}
		if i < len(sheets)-1 { // to the upper edge of the dashed one
			bottom = markRow(t, sheet, bottom-1, -1, 0.25)
			for inkOf(sheet, bottom-1) > 0.25 {
				bottom--
			}
		}
		pieces = append(pieces, sheet.SubImage(image.Rect(0, top, width, bottom)).(*image.Gray))
		height += bottom - top
	}
	all, y := image.NewGray(image.Rect(0, 0, width, height)), 0
	for _, piece := range pieces {
		for row := piece.Rect.Min.Y; row < piece.Rect.Max.Y; row++ {
			for x := range width {
				all.SetGray(x, y, piece.GrayAt(x, row))
			}
			y++
		}
	}
	return all
}

// markRow is the row of a mark: the first from the edge of the paper, in steps down or up, with ink over such a share of the width of a sign.
func markRow(t *testing.T, side *image.Gray, from, step int, share float64) int {
	t.Helper()
	for n := range side.Rect.Dy() / 10 {
		if y := from + n*step; inkOf(side, y) >= share {
			return y
		}
	}
	t.Fatal("no mark of a join at the edge of a sheet")
	return 0
}

// inkOf is the share of a row that has ink, inside the width of a sign.
func inkOf(side *image.Gray, y int) float64 {
	dark := 0
	for x := range side.Rect.Dx() {
		if side.GrayAt(x, y).Y < 200 {
			dark++
		}
	}
	return float64(dark) / (256 / 25.4 * joinDPI)
}

// whole prints the sign of a file on one sheet that is large enough, without joins.
func whole(b tab, paper string, parts int) *image.Gray {
	b.Helper()
	field := templates.TileFieldOf(paper)
	width := papers[paper].width / 72 * 25.4
	if field.Turned {
		width = papers[paper].height / 72 * 25.4
	}
	outer := (papers[paper].height/72*25.4 - field.Height) / 2
	if field.Turned {
		outer = (papers[paper].width/72*25.4 - field.Height) / 2
	}
	style := fmt.Sprintf(`@page { size: %.3fmm %.3fmm !important; }
.face.blank, .join { display: none !important; }
main { padding-block: %.3fmm; }
.face.tile { inline-size: %.3fmm !important; block-size: %.3fmm !important; break-after: avoid !important; margin: 0 !important; }
.tile .board { transform: none !important; margin: 0 !important; top: 0 !important; left: %.3fmm !important; }`,
		width, 2*outer+field.Height*float64(parts)+1, outer, width, field.Height, (width-field.Width)/2)
	evaluated[bool](b, fmt.Sprintf(`(() => { const s = document.createElement('style'); s.textContent = %q; document.head.append(s); return true; })()`, style))
	data, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
	if err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(b.TempDir(), "whole.pdf")
	writeFile(b.T, path, data)
	shots := shoot(b.T, path, joinDPI)
	if len(shots) != 1 {
		b.Fatalf("the sign without joins takes %d sheets", len(shots))
	}
	return painted(b.T, shots[0])
}

// compare makes sure that two pictures show the same: each dark dot of one lies within 0.8 mm of a dark dot of the other.
func compare(t *testing.T, got, want *image.Gray) {
	t.Helper()
	if d := got.Rect.Dx() - want.Rect.Dx(); d < -3 || d > 3 {
		t.Fatalf("the joined sign is %d dots wide, want %d", got.Rect.Dx(), want.Rect.Dx())
	}
	a, b := astray(got, want), astray(want, got)
	if a > 0.001 || b > 0.001 {
		t.Errorf("%.2f %% of the joined sign is not on the whole one, and %.2f %% of the whole one not on the joined", 100*a, 100*b)
	}
}

// astray is the share of dark dots of a picture that have no dark dot of the other near them.
func astray(a, b *image.Gray) float64 {
	const near = 3
	dark, lost := 0, 0
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			if a.GrayAt(x, y).Y >= 128 {
				continue
			}
			dark++
			if !darkNear(b, x, y, near) {
				lost++
			}
		}
	}
	if dark == 0 {
		return 1
	}
	return float64(lost) / float64(dark)
}

func darkNear(side *image.Gray, x, y, near int) bool {
	if side.GrayAt(x, y).Y < 160 {
		return true
	}
	for dy := -near; dy <= near; dy++ {
		for dx := -near; dx <= near; dx++ {
			if p := image.Pt(x+dx, y+dy); p.In(side.Rect) && side.GrayAt(p.X, p.Y) != (color.Gray{Y: 255}) && side.GrayAt(p.X, p.Y).Y < 160 {
				return true
			}
		}
	}
	return false
}

// Signs that need it go on larger paper, in a file of their own for the copy shop.
func TestPrintedOnLargerPaper(t *testing.T) {
	demo := demoOn(t, "letter\nlarger_paper: [11x17]")
	for _, job := range demo.jobs {
		want := 0
		for _, sheet := range job.Sheets {
			if !strings.HasPrefix(sheet.Paper, "11x17") {
				continue
			}
			if sheet.Kind != string(notices.WorkAreaSign) || sheet.ReadFromFt == 0 {
				t.Errorf("%s is on %s", sheet.ID, sheet.Paper)
			}
			want += sheet.Copies * len(leaves(sheet))
			t.Run(job.Code+"/"+sheet.ID, func(t *testing.T) { checkTiles(t, demo, sheet) })
		}
		b := openTab(t)
		b.openFile(demo.path(job.CopyShop))
		checkPaper(t, b.pdf(), "11x17", want)
		b.openFile(demo.path(job.Everything))
		if n := evaluated[int](b, `document.querySelectorAll('section.tile').length`); n != 0 {
			t.Errorf("%d sheets of 11x17 among those on Letter", n)
		}
	}
}

func writeFile(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
}
