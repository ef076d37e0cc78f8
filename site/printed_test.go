package site_test

import (
	"fmt"
	"image"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/templates"
)

// Outside references of this file: Chromium, which lays the sheets out and prints them; poppler, which reads the PDF again; and zbar, an
// independent reader of QR codes (ISO/IEC 18004). Sizes of paper are those of ISO 216 and ANSI/ASME Y14.1.

// papers are sizes in pt, and how finely the codes on them are read, in dots per inch. Both papers carry the same field, and reading takes long,
// so codes are read on one.
var papers = map[string]struct {
	width, height float64
	dpi           []int
}{
	"letter": {612, 792, []int{300, 150}},
	"a4":     {595.28, 841.89, nil},
	"11x17":  {792, 1224, nil}, // at the copy shop
}

var usualPapers = []string{"letter", "a4"}

// Every sheet of the demo is printed, measured and read on both papers.
func TestPrintedSheets(t *testing.T) {
	for _, paper := range usualPapers {
		demo := demoOn(t, paper)
		for _, job := range demo.jobs {
			for _, sheet := range job.Sheets {
				t.Run(paper+"/"+job.Code+"/"+sheet.ID, func(t *testing.T) {
					t.Parallel()
					if isTiled(sheet) {
						checkTiles(t, demo, sheet)
					} else {
						checkSheet(t, demo, sheet)
					}
				})
			}
		}
	}
}

func checkSheet(t *testing.T, demo *builtDemo, sheet record.Sheet) {
	b := openTab(t)
	b.openFile(demo.path(sheet.Path))
	b.asPrinted()
	faces := measuredFaces(b)
	recorded := recordOfSides(sheet)
	if len(faces) != len(recorded) {
		t.Fatalf("%d sides, and %d in the record", len(faces), len(recorded))
	}
	printed := b.pdf()
	checkPaper(t, printed, sheet.Paper, sides(sheet))
	checkFonts(t, printed, demo.families()...)
	checkPrintedSizes(b, printed, leastTypeOf(sheet))
	for i, face := range faces {
		checkField(t, face)
		checkLines(t, face)
		checkTypeSizes(t, face, recorded[i])
		checkCodeBox(t, face)
		checkCodeRecord(t, face, recorded[i])
		checkOpened(t, demo, recorded[i])
	}
	for _, dpi := range papers[sheet.Paper].dpi {
		for i, shot := range shoot(t, printed, dpi) {
			checkCode(t, shot, recorded[i].QR)
			checkQuietZone(t, faces[i], painted(t, shot))
			if dpi == 300 && sheet.Kind == string(notices.WorkAreaSign) {
				checkCapitals(t, painted(t, shot), dpi, faces[i].Fits[0].Lines, true, sheet.Faces[i].SignalHeightMM)
				checkCapitals(t, painted(t, shot), dpi, faces[i].Fits[1].Lines, false, sheet.Faces[i].CapHeightMM)
			}
		}
	}
}

// recordOfSides is the record of the face on each side of paper; a face may fill two.
func recordOfSides(sheet record.Sheet) (all []record.Face) {
	for _, f := range sheet.Faces {
		for range f.Pages {
			all = append(all, f)
		}
	}
	return all
}

// sides is how many sides of paper the record promises.
func sides(sheet record.Sheet) (n int) {
	for _, f := range sheet.Faces {
		n += f.Pages
	}
	return n
}

var sizeLine = regexp.MustCompile(`(?m)^Page +\d+ size: +([\d.]+) x ([\d.]+) pts`)

// checkPaper counts the sides of a PDF and compares the size of each, within 1 pt.
func checkPaper(t *testing.T, pdf, paper string, sides int) {
	t.Helper()
	info := output(t, program(t, "no pdfinfo found: install poppler-utils", "pdfinfo"), "-f", "1", "-l", "-1", pdf)
	sizes := sizeLine.FindAllStringSubmatch(info, -1)
	if len(sizes) != sides {
		t.Errorf("%d sides printed, want %d", len(sizes), sides)
	}
	for _, size := range sizes {
		width, height := number(t, size[1]), number(t, size[2])
		if want := papers[paper]; math.Abs(width-want.width) > 1 || math.Abs(height-want.height) > 1 {
			t.Errorf("a side of %g by %g pt, want %g by %g", width, height, want.width, want.height)
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// checkFonts finds a font in a PDF that the sheets were not measured with, such as the one a browser falls back to for a character.
func checkFonts(t *testing.T, pdf string, families ...string) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(output(t, program(t, "no pdffonts found: install poppler-utils", "pdffonts"), pdf)), "\n")
	if len(lines) < 3 {
		t.Error("no font in the PDF")
	}
	for _, line := range lines[min(2, len(lines)):] {
		if !slices.ContainsFunc(append(families, "Roboto"), func(family string) bool { return strings.Contains(line, family) }) {
			t.Errorf("a font that is not ours: %s", line)
		}
	}
}

// shoot paints each side of a PDF and returns the paths of the pictures, in order.
func shoot(t *testing.T, pdf string, dpi int) []string {
	t.Helper()
	dir := t.TempDir()
	output(t, program(t, "no pdftoppm found: install poppler-utils", "pdftoppm"), "-r", strconv.Itoa(dpi), "-gray", pdf, filepath.Join(dir, "side"))
	shots, err := filepath.Glob(filepath.Join(dir, "side-*.pgm"))
	if err != nil || len(shots) == 0 {
		t.Fatal("pdftoppm painted nothing", err)
	}
	slices.Sort(shots)
	return shots
}

// checkCode reads a side with zbar, which prints a line for every code that it finds, and fails when there is none.
func checkCode(t *testing.T, shot, want string) {
	t.Helper()
	zbar := program(t, "no zbarimg found: install zbar-tools", "zbarimg")
	out, err := exec.CommandContext(t.Context(), zbar, "--raw", "--quiet", "-Sdisable", "-Sqrcode.enable", shot).Output()
	if read := strings.TrimSuffix(string(out), "\n"); err != nil || read != want {
		t.Errorf("%s: zbar reads %q (%v), want exactly %q", filepath.Base(shot), read, err, want)
	}
}

// checkOpened makes sure that the page behind a code is there, in the language of its face.
func checkOpened(t *testing.T, demo *builtDemo, face record.Face) {
	t.Helper()
	file, err := os.Open(demo.path(face.Page))
	if err != nil {
		t.Error(err)
		return
	}
	defer file.Close()
	page, err := goquery.NewDocumentFromReader(file)
	if err != nil {
		t.Fatal(err)
	}
	if lang := page.Find("html").AttrOr("lang", ""); lang != face.Language {
		t.Errorf("the code of a face in %s opens a page in %s", face.Language, lang)
	}
}

// A box is where something stands, in CSS px from the top left corner of its face.
type box struct{ Left, Top, Right, Bottom float64 }

const (
	slack = 0.5 // px that a browser may round by
	mm    = 96 / 25.4
	pt    = 96.0 / 72
)

func (b box) width() float64  { return b.Right - b.Left }
func (b box) height() float64 { return b.Bottom - b.Top }

// holds reports whether another box lies inside.
func (b box) holds(o box) bool {
	return o.Left >= b.Left-slack && o.Top >= b.Top-slack && o.Right <= b.Right+slack && o.Bottom <= b.Bottom+slack
}

// meets reports whether two boxes share more than an edge.
func (b box) meets(o box) bool {
	return o.Left < b.Right-slack && o.Right > b.Left+slack && o.Top < b.Bottom-slack && o.Bottom > b.Top+slack
}

// A measuredFace is one side as the browser lays it out. Sizes are px.
type measuredFace struct {
	Classes                                              string
	ClientWidth, ClientHeight, ScrollWidth, ScrollHeight float64
	Field                                                box // inside the padding
	Parts                                                []struct {
		Name string
		Box  box
	}
	Texts []struct {
		Text   string
		Size   float64
		Small  bool // in the foot, or the address to type of a sign
		Box    box
		Fitted bool
	}
	Fits  []measuredFit
	Codes []struct {
		Box     box
		Modules float64 // along a side
		Dark    box     // in modules
	}
	Fonts []string // that did not load
}

func (f measuredFace) is(class string) bool { return slices.Contains(strings.Fields(f.Classes), class) }

// A measuredFit is texts that were measured before they were set. Sizes are px.
type measuredFit struct {
	Planned float64 // pt, as the style says
	Size    float64
	Box     box
	Room    box // inside the element around it
	Lines   []measuredLine
}

type measuredLine struct {
	Text     string
	Rows     int
	Leading  float64
	Box, Ink box // Ink is where the text stands, wrapped or not
}

// measuredFaces measures every face that carries something.
func measuredFaces(b tab) []measuredFace {
	b.Helper()
	faces := evaluated[[]measuredFace](b, measureFaces)
	for _, f := range faces {
		if len(f.Fonts) > 0 {
			b.Errorf("fonts that did not load: %v", f.Fonts)
		}
		if len(f.Texts) == 0 {
			b.Error("a face without text")
		}
	}
	return faces
}

const measureFaces = `(async () => {
  await document.fonts.ready;
  const plain = (r, o) => ({Left: r.left - o.left, Top: r.top - o.top, Right: r.right - o.left, Bottom: r.bottom - o.top});
  function inside(e) {
    const r = e.getBoundingClientRect(), s = getComputedStyle(e), n = side => parseFloat(s['padding' + side]) + parseFloat(s['border' + side + 'Width']);
    return {left: r.left + n('Left'), top: r.top + n('Top'), right: r.right - n('Right'), bottom: r.bottom - n('Bottom')};
  }
  function rangeOf(node) {
    const range = document.createRange();
    range.selectNodeContents(node);
    return range;
  }
  function texts(face, o) {
    const all = [], walker = document.createTreeWalker(face, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const node = walker.currentNode, e = node.parentElement;
      if (!node.data.trim() || e.closest('svg')) continue;
      const small = e.closest('.foot, .sign .typed') != null, fitted = e.closest('.fit') != null;
      for (let r of rangeOf(node).getClientRects()) {
        const more = r.height - parseFloat(getComputedStyle(e).lineHeight); // the height that a font says of itself, in whole px, may be more than a line has
        const over = more > 0 ? more / 2 + 1 : 0;
        r = {left: r.left, right: r.right, top: r.top + over, bottom: r.bottom - over, width: r.width};
        if (r.width > 0) all.push({Text: node.data.trim(), Size: parseFloat(getComputedStyle(e).fontSize), Small: small, Fitted: fitted, Box: plain(r, o)});
      }
    }
    return all;
  }
  function line(e, o) {
    const range = rangeOf(e), tops = new Set([...range.getClientRects()].map(r => Math.round(r.top)));
    return {Text: e.textContent, Rows: tops.size, Leading: parseFloat(getComputedStyle(e).lineHeight),
      Box: plain(e.getBoundingClientRect(), o), Ink: plain(range.getBoundingClientRect(), o)};
  }
  const fit = (e, o) => ({Planned: parseFloat(e.style.fontSize), Size: parseFloat(getComputedStyle(e).fontSize),
    Box: plain(e.getBoundingClientRect(), o), Room: plain(inside(e.parentElement), o), Lines: [...e.querySelectorAll('.line')].map(l => line(l, o))});
  function code(e, o) {
    const paths = e.querySelectorAll('path'), b = paths[paths.length - 1].getBBox();
    return {Box: plain(e.getBoundingClientRect(), o), Modules: e.viewBox.baseVal.width, Dark: plain({left: b.x, top: b.y, right: b.x + b.width, bottom: b.y + b.height}, {left: 0, top: 0})};
  }
  return [...document.querySelectorAll('section.face:not(.blank)')].map(face => {
    const o = face.getBoundingClientRect();
    return {Classes: face.className, ClientWidth: face.clientWidth, ClientHeight: face.clientHeight, ScrollWidth: face.scrollWidth, ScrollHeight: face.scrollHeight,
      Field: plain(inside(face), o), Texts: texts(face, o),
      Parts: [...face.children].map(e => ({Name: e.className || e.localName, Box: plain(e.getBoundingClientRect(), o)})),
      Fits: [...face.querySelectorAll('.fit')].map(e => fit(e, o)), Codes: [...face.querySelectorAll('.code svg')].map(e => code(e, o)),
      Fonts: [...document.fonts].filter(f => f.status == 'error').map(f => f.family)};
  });
})()`

// checkField makes sure that nothing is cut off: a face hides what leaves it.
func checkField(t *testing.T, f measuredFace) {
	t.Helper()
	if w, h := f.Field.width()/mm, f.Field.height()/mm; math.Abs(w-templates.FieldWidth) > 0.2 || math.Abs(h-templates.FieldHeight) > 0.2 {
		t.Errorf("a field of %.1f by %.1f mm, want %g by %g", w, h, templates.FieldWidth, templates.FieldHeight)
	}
	if f.ScrollHeight > f.ClientHeight || f.ScrollWidth > f.ClientWidth {
		t.Errorf("%g by %g px of content on a face of %g by %g", f.ScrollWidth, f.ScrollHeight, f.ClientWidth, f.ClientHeight)
	}
	for _, text := range f.Texts {
		if !text.Fitted && !f.Field.holds(text.Box) {
			t.Errorf("%q leaves the field: %.1f in %.1f px", text.Text, text.Box, f.Field)
		}
	}
	for i, part := range f.Parts {
		if !f.Field.holds(part.Box) {
			t.Errorf("%s leaves the field: %.1f in %.1f px", part.Name, part.Box, f.Field)
		}
		for _, earlier := range f.Parts[:i] {
			if part.Box.meets(earlier.Box) {
				t.Errorf("%s lies over %s: %.1f and %.1f px", part.Name, earlier.Name, part.Box, earlier.Box)
			}
		}
	}
}

// checkLines makes sure that each measured line is set as it was measured: on one row, inside its box, and its box inside the layout's.
func checkLines(t *testing.T, f measuredFace) {
	t.Helper()
	for _, fit := range f.Fits {
		if math.Abs(fit.Size-fit.Planned*pt) > 0.02 {
			t.Errorf("type of %g px, planned were %g pt", fit.Size, fit.Planned)
		}
		if !fit.Room.holds(fit.Box) || !f.Field.holds(fit.Box) {
			t.Errorf("measured text leaves its box: %.1f in %.1f px", fit.Box, fit.Room)
		}
		for _, line := range fit.Lines {
			if line.Rows != 1 || math.Abs(line.Box.height()-line.Leading) > slack {
				t.Errorf("the line %q is %.1f px high in %d rows, want %.1f px in one", line.Text, line.Box.height(), line.Rows, line.Leading)
			}
			if !fit.Box.holds(line.Box) || line.Ink.Left < fit.Box.Left-slack || line.Ink.Right > fit.Box.Right+slack {
				t.Errorf("the line %q leaves its box: %.1f in %.1f px", line.Text, line.Ink, fit.Box)
			}
		}
	}
}

const capHeight = 1456.0 / 2048 // of the type size: sCapHeight in the OS/2 table of Roboto 2.138

// letterHeights are multiples of the type size, by what is measured: of the bold font of the program or of Debian's package. The tests of the package
// fit compare them with another reader of fonts.
var letterHeights = map[string]float64{
	"capitals": capHeight, "letters from the top of alef to the tail of ain": 1.126, "whole characters": 0.898,
}

// checkTypeSizes looks for type that is too small, and compares the height of capitals in the record with the size that is set.
func checkTypeSizes(t *testing.T, f measuredFace, record record.Face) {
	t.Helper()
	for _, text := range f.Texts {
		if !text.Small && text.Size < adviseClear*pt-0.02 {
			t.Errorf("%q is set in %.2f pt", text.Text, text.Size/pt)
		}
	}
	main := 0 // the head of a letter
	if f.is("sign") {
		main = 1 // the message lines below the signal word
	}
	if len(f.Fits) <= main {
		t.Error("no measured text on the face")
		return
	}
	if set := f.Fits[main].Size * letterHeights[record.Letters] / mm; math.Abs(set-record.CapHeightMM) > 0.01 {
		t.Errorf("capitals of %.3f mm, and %.3f in the record", set, record.CapHeightMM)
	}
}

// checkCodeBox measures the code: a module of 1 mm is our own rule, four modules of quiet zone are that of ISO/IEC 18004.
func checkCodeBox(t *testing.T, f measuredFace) {
	t.Helper()
	if len(f.Codes) != 1 {
		t.Errorf("%d codes on the face, want 1", len(f.Codes))
		return
	}
	code := f.Codes[0]
	side := code.Box.width() / mm
	if module := side / code.Modules; module < 0.999 {
		t.Errorf("modules of %.3f mm, want at least 1", module)
	}
	if want := (box{4, 4, code.Modules - 4, code.Modules - 4}); code.Dark != want {
		t.Errorf("dark modules in %v of %g, want %v", code.Dark, code.Modules, want)
	}
	if (f.is("sign") || f.is("tile")) && (side < 55 || side > 65) {
		t.Errorf("a code of %.1f mm on a sign, want 55 to 65", side)
	}
	for _, text := range f.Texts {
		if text.Box.meets(code.Box) {
			t.Errorf("%q stands in the quiet zone", text.Text)
		}
	}
}

// checkCodeRecord compares the code as it lies on paper with its record. ISO/IEC 18004: a code of version V has 17 + 4V modules along a side.
func checkCodeRecord(t *testing.T, f measuredFace, record record.Face) {
	t.Helper()
	if len(f.Codes) != 1 {
		return // checkCodeBox says so
	}
	code := f.Codes[0]
	if want := float64(17 + 4*record.QRVersion + 8); code.Modules != want {
		t.Errorf("%g modules with the quiet zone, and version %d has %g", code.Modules, record.QRVersion, want)
	}
	if module := code.Box.width() / mm / code.Modules; math.Abs(module-record.QRModuleMM) > 0.005 {
		t.Errorf("modules of %.3f mm, and %.3f in the record", module, record.QRModuleMM)
	}
}

// checkQuietZone looks at the printed side: the quiet zone is white, and the three finder patterns stand at its inner corners.
func checkQuietZone(t *testing.T, f measuredFace, side *image.Gray) {
	t.Helper()
	if len(f.Codes) != 1 {
		return // checkCodeBox says so
	}
	code := f.Codes[0]
	scale := float64(side.Bounds().Dx()) / f.ClientWidth
	module := code.Box.width() / code.Modules
	dark := func(column, row float64) bool {
		return side.GrayAt(int((code.Box.Left+column*module)*scale), int((code.Box.Top+row*module)*scale)).Y < 128
	}
	for row := 0.5; row < code.Modules; row++ {
		for column := 0.5; column < code.Modules; column++ {
			quiet := min(row, column) < 4 || max(row, column) > code.Modules-4
			if quiet && dark(column, row) {
				t.Fatalf("ink in the quiet zone, at module %.0f, %.0f", column, row)
			}
		}
	}
	near, far := 4.5, code.Modules-4.5
	if !dark(near, near) || !dark(far, near) || !dark(near, far) {
		t.Error("no code where it was measured")
	}
}

// painted reads a picture in the form that pdftoppm writes fastest: a portable graymap, 8 bits a dot.
func painted(t *testing.T, path string) *image.Gray {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var width, height int
	if _, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n255\n", &width, &height); err != nil || len(data) < width*height {
		t.Fatalf("%s is no picture of pdftoppm", path)
	}
	return &image.Gray{Pix: data[len(data)-width*height:], Stride: width, Rect: image.Rect(0, 0, width, height)}
}

// One file prints a whole job, two-sided: the walk list, then every sheet as often as there are copies, each beginning on a front.
func TestPrintedEverything(t *testing.T) {
	for _, paper := range usualPapers {
		demo := demoOn(t, paper)
		for _, job := range demo.jobs {
			t.Run(paper+"/"+job.Code, func(t *testing.T) {
				t.Parallel()
				checkEverything(t, demo, job, paper)
			})
		}
	}
}

func checkEverything(t *testing.T, demo *builtDemo, job record.Job, paper string) {
	walk := openTab(t)
	walk.openFile(demo.path(job.WalkList))
	walk.asPrinted()
	lists := measuredFaces(walk)
	for _, f := range lists {
		checkField(t, f)
	}
	checkPaper(t, walk.pdf(), paper, len(lists))

	all := openTab(t)
	all.openFile(demo.path(job.Everything))
	want := padded(slices.Repeat([]string{"en"}, len(lists)))
	for _, sheet := range job.Sheets {
		for range sheet.Copies {
			want = append(want, leaves(sheet)...)
		}
	}
	got := evaluated[[]string](all, `[...document.querySelectorAll('section.face')].map(f => f.matches('.blank') ? '' : f.lang)`)
	if !slices.Equal(got, want) {
		t.Errorf("the languages of the sides, in order, with \"\" for a blank back, are\n%q, want\n%q", got, want)
	}
	checkPaper(t, all.pdf(), paper, len(got))
}

// leaves are the sides of a sheet with the blank backs that keep fronts on fronts. A sign over several sheets has a blank back behind each.
func leaves(sheet record.Sheet) (all []string) {
	if !isTiled(sheet) {
		return padded(languages(sheet))
	}
	for _, side := range languages(sheet) {
		all = append(all, side, "")
	}
	return all
}

// languages has one for each side of a sheet.
func languages(sheet record.Sheet) (all []string) {
	for _, f := range sheet.Faces {
		all = append(all, slices.Repeat([]string{f.Language}, f.Pages)...)
	}
	return all
}

// padded has a blank back after an odd number of sides.
func padded(sides []string) []string {
	if len(sides)%2 == 1 {
		sides = append(sides, "")
	}
	return sides
}

// The form to fill in at the house is three sides of Letter, and no question runs over its box.
func TestPrintedWalkRound(t *testing.T) {
	form, err := lists.WalkRound()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "walk-round.html")
	if err := os.WriteFile(path, form, 0o600); err != nil {
		t.Fatal(err)
	}
	b := openTab(t)
	b.openFile(path)
	b.asPrinted()
	for _, f := range measuredFaces(b) {
		checkField(t, f)
	}
	checkPaper(t, b.pdf(), "letter", 3)
}
