package site_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"testing"

	"example.org/doorleaf/site/record"
	"golang.org/x/image/draw"
)

// Sheets are printed on office printers, without colour and often with little toner, and are copied. What is checked here is what a browser prints and
// poppler paints, in grey and, as the worst copier sees it, in black and white without any grey.

// contrast is the contrast ratio of two colours. Source: WCAG 2.2, definitions of relative luminance and contrast ratio.
func contrast(a, b color.Color) float64 {
	light, dark := luminance(a), luminance(b)
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

func luminance(c color.Color) float64 {
	linear := func(v uint32) float64 {
		s := float64(v) / 0xffff
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	r, g, b, _ := c.RGBA()
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// Source: WCAG 2.2 (21 to 1 for black on white) and the pairs of greys and colours on either side of 4.5 and 3 that WebAIM teaches (from memory).
func TestContrastFormula(t *testing.T) {
	white := color.White
	for _, c := range []struct {
		on   color.Color
		want float64
	}{
		{color.Black, 21}, {white, 1}, {color.Gray{0x76}, 4.54}, {color.Gray{0x77}, 4.48}, {color.Gray{0x94}, 3.03}, {color.Gray{0x95}, 2.99},
		{color.RGBA{0xff, 0, 0, 0xff}, 4.00}, {color.RGBA{0, 0, 0xff, 0xff}, 8.59},
	} {
		if got := contrast(white, c.on); math.Abs(got-c.want) > 0.01 {
			t.Errorf("white on %v: %.2f, want %.2f", c.on, got, c.want)
		}
	}
}

const (
	leastContrast = 4.5  // WCAG 2.2, 1.4.3, level AA, for text of any size
	mostInk       = 0.12 // of a side, but for signs: our own figure, no source; a page of plain text takes about 5 %
)

// One sheet of each kind and look is checked on every side: text, pictograms and ink.
func TestSheetsInBlackAndWhite(t *testing.T) {
	t.Parallel()
	painters(t)
	demo := demoOn(t, "letter")
	seen := map[string]*image.Gray{} // pictograms by their drawing
	for _, sheet := range differing(demo) {
		t.Run(sheet.ID, func(t *testing.T) {
			for _, shown := range shownSides(t, demo, sheet, 150) {
				grey := shown.painted
				scale := float64(grey.Bounds().Dx()) / shown.ClientWidth
				checkInk(t, grey, sheet.Kind)
				for _, side := range []*image.Gray{grey, withoutGrey(grey)} {
					checkContrast(t, side, shown.measuredFace, scale)
					checkLegible(t, side, shown.drawings, scale)
				}
				for _, mark := range shown.drawings {
					seen[mark.Drawing] = shrunk(withoutGrey(grey), mark.Box, scale)
				}
			}
		})
	}
	checkMarksDiffer(t, seen)
}

// differing leaves out signs that differ from another in their door alone.
func differing(demo *builtDemo) (sheets []record.Sheet) {
	known := map[string]bool{}
	for _, job := range demo.jobs {
		for _, sheet := range job.Sheets {
			look := sheet.ID
			if sheet.Kind == "work_area_sign" {
				look = fmt.Sprint(job.Code, sheet.Faces[0].Language, sheet.Faces[0].CapHeightMM)
			}
			if !known[look] {
				sheets = append(sheets, sheet)
			}
			known[look] = true
		}
	}
	return sheets
}

// A drawing is a pictogram on a face, in px.
type drawing struct {
	Drawing string
	Box     box
}

const findMarks = `[...document.querySelectorAll('section.face:not(.blank)')].map(face => {
  const o = face.getBoundingClientRect();
  return [...face.querySelectorAll('.mark svg')].map(e => {
    const r = e.getBoundingClientRect();
    return {Drawing: e.outerHTML, Box: {Left: r.left - o.left, Top: r.top - o.top, Right: r.right - o.left, Bottom: r.bottom - o.top}};
  });
})`

func withoutGrey(side *image.Gray) *image.Gray {
	plain := image.NewGray(side.Rect)
	for i, light := range side.Pix {
		if light >= 128 {
			plain.Pix[i] = 255
		}
	}
	return plain
}

// ink is the share of a picture that is black; grey counts in part.
func ink(side *image.Gray) float64 {
	black := 0.0
	for _, light := range side.Pix {
		black += float64(255-light) / 255
	}
	return black / float64(len(side.Pix))
}

func checkInk(t *testing.T, side *image.Gray, kind string) {
	t.Helper()
	share := ink(side)
	t.Logf("%.1f %% ink", 100*share)
	if kind != "work_area_sign" && share > mostInk {
		t.Errorf("%.1f %% ink on a side, want at most %.0f", 100*share, 100*mostInk)
	}
	if share < 0.01 {
		t.Errorf("%.1f %% ink on a side, so hardly anything is printed", 100*share)
	}
}

// checkContrast compares the darkest with the lightest dot where each text stands.
func checkContrast(t *testing.T, side *image.Gray, f measuredFace, scale float64) {
	t.Helper()
	for _, text := range f.Texts {
		dark, light := extremes(side, onPaper(text.Box, scale))
		if ratio := contrast(color.Gray{Y: light}, color.Gray{Y: dark}); ratio < leastContrast {
			t.Errorf("%q has a contrast of %.1f, want %.1f", text.Text, ratio, leastContrast)
		}
	}
}

func onPaper(b box, scale float64) image.Rectangle {
	return image.Rect(int(b.Left*scale), int(b.Top*scale), int(math.Ceil(b.Right*scale)), int(math.Ceil(b.Bottom*scale)))
}

func extremes(side *image.Gray, at image.Rectangle) (dark, light uint8) {
	dark, light = 255, 0
	at = at.Intersect(side.Rect)
	for y := at.Min.Y; y < at.Max.Y; y++ {
		for x := at.Min.X; x < at.Max.X; x++ {
			dark, light = min(dark, side.GrayAt(x, y).Y), max(light, side.GrayAt(x, y).Y)
		}
	}
	return dark, light
}

// checkLegible wants as much contrast in pictograms as in text, and neither a blot nor a trace.
func checkLegible(t *testing.T, side *image.Gray, marks []drawing, scale float64) {
	t.Helper()
	for _, mark := range marks {
		dark, light := extremes(side, onPaper(mark.Box, scale))
		if ratio := contrast(color.Gray{Y: light}, color.Gray{Y: dark}); ratio < leastContrast {
			t.Errorf("a pictogram has a contrast of %.1f, want %.1f", ratio, leastContrast)
		}
		if share := ink(shrunk(side, mark.Box, scale)); share < 0.1 || share > 0.6 {
			t.Errorf("a pictogram of %.0f %% ink, want 10 to 60", 100*share)
		}
	}
}

// shrunk is a part of a side, painted 64 dots wide and high.
func shrunk(side *image.Gray, at box, scale float64) *image.Gray {
	to := image.NewGray(image.Rect(0, 0, 64, 64))
	draw.BiLinear.Scale(to, to.Rect, side, onPaper(at, scale), draw.Src, nil)
	return to
}

// checkMarksDiffer compares each pictogram with each other, dot by dot. One in twelve is our own figure: a ring with a bar is common to several.
func checkMarksDiffer(t *testing.T, seen map[string]*image.Gray) {
	t.Helper()
	if len(seen) < 4 {
		t.Errorf("only %d pictograms are on the sheets", len(seen))
	}
	for one, a := range seen {
		for other, b := range seen {
			if one >= other {
				continue
			}
			apart := 0.0
			for i := range a.Pix {
				apart += math.Abs(float64(a.Pix[i])-float64(b.Pix[i])) / 255 / float64(len(a.Pix))
			}
			t.Logf("two pictograms differ in %.0f %%", 100*apart)
			if apart < 1.0/12 {
				t.Errorf("two pictograms differ in %.0f %% of their dots alone:\n%s\n%s", 100*apart, one, other)
			}
		}
	}
}
