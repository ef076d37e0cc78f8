package site_test

import (
	"fmt"
	"image"
	"os"
	"slices"
	"strings"
	"testing"
)

// The lines of a plan drawing are told apart without colour: the reader's side is thick, worked walls are striped, the reach is a thin broken line. What is checked is
// what Chromium prints and poppler paints, in pure black and white, as coarse as a fax machine or an old copier may be. What counts as thick, thin and apart is our own
// reckoning; no source gives figures for plans as small as these.

// A lotLine is a line of a drawing, or its sample before a caption, as points 0.05 mm apart, in px on its side of paper.
type lotLine struct {
	Name    string // side, work or reach
	Sample  bool
	Points  [][2]float64
	Upright bool
}

const findLotLines = `[...document.querySelectorAll('section.face:not(.blank)')].map(face => {
  const o = face.getBoundingClientRect(), mm = 96 / 25.4;
  return [...face.querySelectorAll('figure :is(.side, .work, .reach)')].map(e => {
    const toScreen = e.getScreenCTM(), step = 0.05 * mm / toScreen.a, points = [];
    for (let at = 0; at <= e.getTotalLength(); at += step) {
      const p = e.getPointAtLength(at).matrixTransform(toScreen);
      points.push([p.x - o.left, p.y - o.top]);
    }
    const ends = [points[0], points[points.length - 1]];
    return {Name: e.getAttribute('class'), Sample: e.closest('.caption') != null, Points: points, Upright: Math.abs(ends[0][0] - ends[1][0]) < Math.abs(ends[0][1] - ends[1][1])};
  });
})`

const stepMM = 0.05

func TestLinesOfTheDrawingInBlackAndWhite(t *testing.T) {
	painters(t)
	demo, drawn := demoOn(t, "letter"), 0
	for _, job := range demo.jobs {
		for _, sheet := range job.Sheets {
			if sheet.Kind != "close_windows_request" {
				continue
			}
			for _, dpi := range []int{300, 150, 100} {
				t.Run(fmt.Sprintf("%s/%s at %d dpi", job.Code, sheet.ID, dpi), func(t *testing.T) {
					faults, lines := lotFaults(t, demo.path(sheet.Path), dpi)
					for _, fault := range faults {
						t.Error(fault)
					}
					drawn += lines
				})
			}
		}
	}
	if drawn < 100 {
		t.Errorf("only %d lines were looked at", drawn)
	}
}

// Stripes and dashes that run together or vanish, and a side that is as thin as the reach, are found.
func TestLostLinesAreFound(t *testing.T) {
	demo := demoOn(t, "letter")
	html, err := os.ReadFile(demo.path("print/alder-14/request-n12.html"))
	if err != nil {
		t.Fatal(err)
	}
	path := demo.path("print/alder-14/lost-lines.html")
	defer os.Remove(path)
	for _, c := range []struct{ from, to, fault string }{
		{`class="work" stroke-width="3.6" stroke-dasharray="1.8 1.2"`, `class="work" stroke-width="3.6" stroke-dasharray="2.7 .3"`, "work"},
		{`class="work" stroke-width="3.6" stroke-dasharray="1.8 1.2"`, `class="work" stroke-width="3.6" stroke-dasharray=".2 2.8"`, "work"},
		{`class="work" stroke-width="3.6"`, `class="work" stroke-width=".7"`, "work"},
		{`class="reach" stroke-width=".7" stroke-dasharray="2.4 2"`, `class="reach" stroke-width=".7"`, "reach"},
		{`class="reach" stroke-width=".7"`, `class="reach" stroke-width=".05"`, "reach"},
		{`class="reach" stroke-width=".7"`, `class="reach" stroke-width="3"`, "reach"},
		{`class="side" stroke-width="3.2"`, `class="side" stroke-width=".7"`, "side"},
		{`class="side" stroke-width="3.2"`, `class="side" stroke-width="3.2" stroke-dasharray="1.8 1.2"`, "side"},
	} {
		changed := strings.ReplaceAll(string(html), c.from, c.to)
		if changed == string(html) {
			t.Errorf("there is no %s", c.from)
		}
		if err := os.WriteFile(path, []byte(changed), 0o600); err != nil {
			t.Fatal(err)
		}
		faults, _ := lotFaults(t, path, 150)
		if !slices.ContainsFunc(faults, func(fault string) bool { return strings.HasPrefix(fault, c.fault) }) {
			t.Errorf("%s: no fault of %s among %q", c.to, c.fault, faults)
		}
	}
}

// lotFaults looks at every line of the drawings on a sheet.
func lotFaults(t *testing.T, path string, dpi int) (faults []string, lines int) {
	t.Helper()
	b := openTab(t)
	b.openFile(path)
	b.asPrinted()
	found := evaluated[[][]lotLine](b, findLotLines)
	for i, shot := range shoot(t, b.pdf(), dpi) {
		side := withoutGrey(painted(t, shot))
		for _, line := range found[i] {
			if fault := line.faultWithinADot(side, float64(dpi)/96); fault != "" {
				faults = append(faults, fault)
			}
			lines++
		}
	}
	return faults, lines
}

// A run is neighbouring points of the same colour.
type run struct {
	black bool
	mm    float64
}

// faultWithinADot lets the short sample of a line lie a dot higher or lower on paper than on the screen, where it was found: it is little more than a dot wide.
func (l lotLine) faultWithinADot(side *image.Gray, scale float64) string {
	fault := l.fault(side, scale)
	for _, dot := range []float64{-1, 1} {
		if !l.Sample || fault == "" {
			break
		}
		moved := l
		moved.Points = slices.Clone(l.Points)
		for i := range moved.Points {
			moved.Points[i][1] += dot / scale
		}
		if moved.fault(side, scale) == "" {
			fault = ""
		}
	}
	return fault
}

// fault says what is wrong with a line, or nothing.
func (l lotLine) fault(side *image.Gray, scale float64) string {
	runs := l.runs(side, scale)
	stripes, wide, length := striped(runs), l.width(side, scale), stepMM*float64(len(l.Points))
	switch {
	case l.Name == "side" && (wide < 1.1 || len(runs) != 1 || !runs[0].black):
		return fmt.Sprintf("side: %.1f mm wide in %d runs, want one black run of 1.1 mm at least", wide, len(runs))
	case l.Name == "work" && (wide < 1.1 || float64(len(stripes)) < length/2):
		return fmt.Sprintf("work: %.1f mm wide with %d stripes on %.1f mm, want 1.1 mm and one for each 2 mm at least", wide, len(stripes), length)
	case l.Name == "reach" && l.Sample && (wide > 0.7 || float64(len(stripes)) < length/3):
		return fmt.Sprintf("reach: %.1f mm wide with %d dashes on %.1f mm, want 0.7 mm at most and one for each 3 mm at least", wide, len(stripes), length)
	case l.Name == "reach" && !l.Sample && (len(stripes) < 5 || total(stripes) < total(runs)/3):
		return fmt.Sprintf("reach: %d dashes of %.0f mm on %.0f mm of ink, want 5 and a third at least; houses and other outlines hide the rest", len(stripes), total(stripes), total(runs))
	}
	return ""
}

// runs are the colours along a line, without a dot at either end, where it may touch another.
func (l lotLine) runs(side *image.Gray, scale float64) []run {
	var all []run
	ends := int(0.2 / stepMM)
	for _, p := range l.Points[ends : len(l.Points)-ends] {
		black := side.GrayAt(int(p[0]*scale), int(p[1]*scale)).Y < 128
		if len(all) == 0 || all[len(all)-1].black != black {
			all = append(all, run{black: black})
		}
		all[len(all)-1].mm += stepMM
	}
	return all
}

// striped are the black runs of 0.3 to 1.6 mm, each between white ones that are 0.25 mm long at least.
func striped(runs []run) (stripes []run) {
	for i, r := range runs {
		apart := (i == 0 || runs[i-1].mm >= 0.25) && (i == len(runs)-1 || runs[i+1].mm >= 0.25)
		if r.black && apart && r.mm >= 0.3 && r.mm <= 1.6 {
			stripes = append(stripes, r)
		}
	}
	return stripes
}

// total is the length of all black runs in mm.
func total(runs []run) (length float64) {
	for _, r := range runs {
		if r.black {
			length += r.mm
		}
	}
	return length
}

// width is how wide a straight line is in mm where it is black: the median.
func (l lotLine) width(side *image.Gray, scale float64) float64 {
	var widths []float64
	for i := len(l.Points) / 8; i < len(l.Points)*7/8; i++ {
		if w := l.across(side, scale, l.Points[i]); w > 0 {
			widths = append(widths, w)
		}
	}
	if len(widths) == 0 {
		return 0
	}
	slices.Sort(widths)
	return widths[len(widths)/2]
}

// across measures black dots at right angles to a straight line in mm, as far as 2 mm on each side.
func (l lotLine) across(side *image.Gray, scale float64, p [2]float64) float64 {
	dots := 0
	for _, step := range []int{-1, 1} {
		for n := 0; n <= int(2*mm*scale); n++ {
			x, y := int(p[0]*scale), int(p[1]*scale)
			if l.Upright {
				x += step * n
			} else {
				y += step * n
			}
			if side.GrayAt(x, y).Y >= 128 {
				break
			}
			if n > 0 || step > 0 {
				dots++
			}
		}
	}
	return float64(dots) / scale / mm
}
