package site_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/site/record"
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
)

// Outside references of this file: zbar and ZXing (as gozxing), two readers of QR codes that know nothing of our encoder; ISO/IEC 18004 for where
// codewords lie; and DENSO Wave, who invented the code, for dots a module and for what level Q mends.

// A photo is what a phone sees of a code on paper, with the side of a module in dots.
type photo struct {
	*image.Gray
	code   image.Rectangle // with its quiet zone; before anything is turned or scaled
	module float64
}

// hardships are what befalls paper between the printer and the phone, and both readers must read it then. A copy is read through a lens,
// which spreads its specks. The smear is the largest that the standard promises to mend; a much larger one must not be read, or these tests would
// prove nothing.
var hardships = []struct {
	name, source string
	dpi          int
	befalls      func(photo) photo
}{
	{"as printed", "ISO/IEC 18004", 300, untouched},
	{"printed in draft mode, 150 dpi", "common practice, no source", 150, untouched},
	{"out of focus", "common practice, no source: a spread of 0.25 mm", 300, blurred(0.25)},
	{"photocopied", "common practice, no source: 2 % larger, specks, no grey", 300, photographedCopies(1)},
	{"photocopied twice", "common practice, no source", 300, photographedCopies(2)},
	{"held askew", "common practice, no source: 12 degrees", 300, turned(12)},
	{"rubbed off", "about 25 % of codewords, qrcode.com/en/about/error_correction.html (from memory); ISO/IEC 18004 mends 18 of 70", 300, smeared(promised, 255)},
	{"stained", "the same", 300, smeared(promised, 0)},
	{"150 dpi, copied, askew and out of focus", "common practice, no source", 150, func(p photo) photo { return blurred(0.2)(turned(12)(photocopied(p))) }},
}

// The smallest code and the largest, on a request, a sign and a sign over several sheets, each out of what a browser prints.
func TestCodesScanAfterHardship(t *testing.T) {
	demo := demoOn(t, "letter")
	request := func(s record.Sheet) bool { return s.Kind == "close_windows_request" }
	sign := func(s record.Sheet) bool { return s.Kind == "work_area_sign" && !isTiled(s) }
	for _, sheet := range []record.Sheet{firstOf(t, demo, request), firstOf(t, demo, sign), firstOf(t, demo, isTiled)} {
		t.Run(sheet.ID, func(t *testing.T) {
			photos := photographed(t, demo, sheet)
			want := sheet.Faces[0].QR
			for _, h := range hardships {
				seen := h.befalls(photos[h.dpi])
				for reader, read := range map[string]string{"zbar": readByZbar(t, seen.Gray), "ZXing": readByZXing(seen.Gray)} {
					if read != want {
						t.Errorf("%s: %s reads %q, want %q (%s)", h.name, reader, read, want, h.source)
					}
				}
			}
			for _, ink := range []uint8{0, 255} {
				seen := smeared(tooMuch, ink)(photos[300])
				if readByZbar(t, seen.Gray) != "" || readByZXing(seen.Gray) != "" {
					t.Error("a smear over more than the standard can mend is read all the same, so these tests smear nothing")
				}
			}
		})
	}
}

func firstOf(t *testing.T, demo *builtDemo, wanted func(record.Sheet) bool) record.Sheet {
	t.Helper()
	for _, job := range demo.jobs {
		for _, sheet := range job.Sheets {
			if wanted(sheet) {
				return sheet
			}
		}
	}
	t.Fatal("the demo has no such sheet")
	return record.Sheet{}
}

// photographed is the first code on a printed sheet with 6 mm around it, by dots an inch.
func photographed(t *testing.T, demo *builtDemo, sheet record.Sheet) map[int]photo {
	t.Helper()
	photos := map[int]photo{}
	for _, dpi := range []int{300, 150} {
		sides := shownSides(t, demo, sheet, dpi)
		first := slices.IndexFunc(sides, func(s shownSide) bool { return len(s.Codes) > 0 })
		if first < 0 {
			t.Fatalf("%s has no code", sheet.ID)
		}
		face, side := sides[first].measuredFace, sides[first].painted
		scale := float64(side.Bounds().Dx()) / face.ClientWidth
		code := face.Codes[0].Box
		at := image.Rect(int(code.Left*scale), int(code.Top*scale), int(math.Ceil(code.Right*scale)), int(math.Ceil(code.Bottom*scale)))
		around := at.Inset(-dpi * 6 / 25).Intersect(side.Bounds())
		cut := image.NewGray(image.Rectangle{Max: around.Size()})
		draw.Draw(cut, cut.Bounds(), side, around.Min, draw.Src)
		photos[dpi] = photo{cut, at.Sub(around.Min), code.width() * scale / face.Codes[0].Modules}
	}
	return photos
}

func untouched(p photo) photo { return p }

// photographedCopies is a copy, or a copy of a copy, through a lens.
func photographedCopies(generations int) func(photo) photo {
	return func(p photo) photo {
		for range generations {
			p = photocopied(p)
		}
		return blurred(0.15)(p)
	}
}

// blurred spreads each dot as a bell curve whose standard deviation is a number of mm on a code of 1 mm a module.
func blurred(spread float64) func(photo) photo {
	return func(p photo) photo {
		p.Gray = blur(p.Gray, spread*p.module)
		return p
	}
}

// blur is a Gaussian blur, first along rows and then along columns.
func blur(from *image.Gray, sigma float64) *image.Gray {
	radius := int(math.Ceil(3 * sigma))
	weights, sum := make([]float64, 2*radius+1), 0.0
	for i := range weights {
		weights[i] = math.Exp(-math.Pow(float64(i-radius)/sigma, 2) / 2)
		sum += weights[i]
	}
	along := func(from *image.Gray, dx, dy int) *image.Gray {
		to := image.NewGray(from.Rect)
		for y := range from.Rect.Dy() {
			for x := range from.Rect.Dx() {
				light := 0.0
				for i, weight := range weights {
					at := from.PixOffset(clamp(x+(i-radius)*dx, from.Rect.Dx()), clamp(y+(i-radius)*dy, from.Rect.Dy()))
					light += weight * float64(from.Pix[at])
				}
				to.Pix[to.PixOffset(x, y)] = uint8(light / sum)
			}
		}
		return to
	}
	return along(along(from, 1, 0), 0, 1)
}

func clamp(i, n int) int { return max(0, min(i, n-1)) }

// photocopied is 2 % larger, a little blurred, with specks, and then either black or white.
func photocopied(p photo) photo {
	const larger = 1.02
	size := p.Rect.Size()
	copied := image.NewGray(image.Rect(0, 0, int(float64(size.X)*larger), int(float64(size.Y)*larger)))
	draw.BiLinear.Scale(copied, copied.Rect, p.Gray, p.Rect, draw.Src, nil)
	copied = blur(copied, 0.1*p.module)
	dice := rand.New(rand.NewPCG(18004, uint64(size.X)))
	for i, light := range copied.Pix {
		copied.Pix[i] = 0
		if float64(light)+dice.NormFloat64()*45 > 128 {
			copied.Pix[i] = 255
		}
	}
	return photo{copied, p.code, p.module * larger}
}

// turned is turned about the middle, on white.
func turned(degrees float64) func(photo) photo {
	return func(p photo) photo {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		w, h := float64(p.Rect.Dx()), float64(p.Rect.Dy())
		side := int(math.Hypot(w, h))
		to := image.NewGray(image.Rect(0, 0, side, side))
		draw.Draw(to, to.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
		half := float64(side) / 2
		draw.BiLinear.Transform(to, f64.Aff3{cos, -sin, half - cos*w/2 + sin*h/2, sin, cos, half - sin*w/2 - cos*h/2}, p.Gray, p.Rect, draw.Over, nil)
		return photo{to, p.code, p.module}
	}
}

// Smears in modules, from the top left dark one of a code of version 3, level Q: it has 70 codewords in two blocks, of which the standard mends 9 each
// (ISO/IEC 18004, characteristics of error correction, placement and interleaving). Both keep clear of the finders and of the alignment pattern.
var (
	promised = image.Rect(17, 10, 29, 19) // over 9 codewords of each block, 18 of 70
	tooMuch  = image.Rect(9, 10, 29, 19)  // over 15 of each
)

// smeared covers modules with ink or, at 255, rubs them off.
func smeared(modules image.Rectangle, ink uint8) func(photo) photo {
	return func(p photo) photo {
		const quiet = 4
		to := image.NewGray(p.Rect)
		copy(to.Pix, p.Pix)
		at := func(m image.Point) image.Point {
			return p.code.Min.Add(image.Pt(int((quiet+float64(m.X))*p.module+0.5), int((quiet+float64(m.Y))*p.module+0.5)))
		}
		draw.Draw(to, image.Rectangle{at(modules.Min), at(modules.Max)}, image.NewUniform(color.Gray{Y: ink}), image.Point{}, draw.Src)
		return photo{to, p.code, p.module}
	}
}

// Where the smears lie is worked out once more, from the order in which ISO/IEC 18004 places codewords: two columns at a time from the right, up and
// down by turns, past the timing pattern and around what is no data. Codewords of the two blocks take turns.
func TestSmearsCoverWhatTheyPromise(t *testing.T) {
	for _, c := range []struct {
		smear image.Rectangle
		want  int
	}{{promised, 9}, {tooMuch, 15}} {
		covered := map[int]bool{}
		bit := 0
		for _, module := range placement() {
			if module.In(c.smear) && bit/8 < 70 {
				covered[bit/8] = true
			}
			bit++
		}
		var blocks [2]int
		for codeword := range covered {
			blocks[codeword%2]++
		}
		if blocks != [2]int{c.want, c.want} {
			t.Errorf("%v covers %v codewords of the two blocks, want %d of each", c.smear, blocks, c.want)
		}
	}
}

// placement is the modules of version 3 in the order of their bits.
func placement() (order []image.Point) {
	const side = 29
	isData := func(m image.Point) bool {
		for _, pattern := range []image.Rectangle{
			image.Rect(0, 0, 9, 9), image.Rect(side-8, 0, side, 9), image.Rect(0, side-8, 9, side), // finders with format
			image.Rect(6, 0, 7, side), image.Rect(0, 6, side, 7), // timing
			image.Rect(20, 20, 25, 25), // alignment
		} {
			if m.In(pattern) {
				return false
			}
		}
		return true
	}
	up := true
	for right := side - 1; right > 0; right -= 2 {
		if right == 6 {
			right--
		}
		for i := range side {
			row := i
			if up {
				row = side - 1 - i
			}
			for _, m := range []image.Point{{X: right, Y: row}, {X: right - 1, Y: row}} {
				if isData(m) {
					order = append(order, m)
				}
			}
		}
		up = !up
	}
	return order
}

// readByZbar is the one code that zbar finds, or "".
func readByZbar(t *testing.T, seen image.Image) string {
	t.Helper()
	zbar := program(t, "no zbarimg found: install zbar-tools", "zbarimg")
	path := filepath.Join(t.TempDir(), "photo.png")
	var data bytes.Buffer
	if err := png.Encode(&data, seen); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	out, _ := exec.CommandContext(t.Context(), zbar, "--raw", "--quiet", "-Sdisable", "-Sqrcode.enable", path).Output() // it fails when it reads nothing
	return strings.TrimSuffix(string(out), "\n")
}

// readByZXing is the code that ZXing finds, or "".
func readByZXing(seen image.Image) string {
	bitmap, err := gozxing.NewBinaryBitmapFromImage(seen)
	if err != nil {
		return ""
	}
	result, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil {
		return ""
	}
	return result.GetText()
}

// The record says of each code what is on the paper. DENSO Wave asks for four dots of the printer a module, and 300 dpi is a coarse printer
// (qrcode.com/en/howto/cell.html); the smear above is worked out for version 3.
func TestRecordedCodes(t *testing.T) {
	demo := demoOn(t, "letter")
	for _, job := range demo.jobs {
		for _, sheet := range job.Sheets {
			for _, face := range sheet.Faces {
				if dots := face.QRModuleMM / 25.4 * 300; dots < 4 {
					t.Errorf("%s: %.1f dots a module at 300 dpi, want at least 4", sheet.ID, dots)
				}
				if face.QRVersion != 3 || face.QRLevel != "Q" {
					t.Errorf("%s: version %d, level %s; want 3 and Q", sheet.ID, face.QRVersion, face.QRLevel)
				}
			}
		}
	}
}
