package site_test

import (
	"fmt"
	"image"
	"testing"
)

// The lines of a plan drawing are told apart by how they are drawn alone: whole and thick, striped and thick, broken and thin. Here they are, in the drawing and
// in the samples beside its captions, as poppler paints what Chromium prints, finely and coarsely, in grey and without any grey.

// A drawnLine is a line of the drawing as the browser lays it out: points on it, in px from the corner of its face, in steps of a fifth of a foot, and a step
// across it.
type drawnLine struct {
	Kind    string
	Points  []struct{ X, Y float64 }
	AcrossX float64 // px of one step across the line
	AcrossY float64
}

const findLines = `(() => {
  const face = document.querySelector('section.face'), o = face.getBoundingClientRect(), all = [];
  for (const e of face.querySelectorAll('figure :is(.side, .work), figcaption .reach')) {
    const m = e.getScreenCTM(), step = 0.2, points = [];
    for (let at = step; at < e.getTotalLength() - step; at += step) {
      const p = e.getPointAtLength(at).matrixTransform(m);
      points.push({X: p.x - o.left, Y: p.y - o.top});
    }
    const a = points[0], b = points[1];
    all.push({Kind: e.getAttribute('class'), Points: points, AcrossX: b.Y - a.Y, AcrossY: a.X - b.X});
  }
  return all;
})()`

func TestLinesOfDrawingsStayDistinct(t *testing.T) {
	demo := demoOn(t, "letter")
	b := openTab(t)
	b.openFile(demo.path("print/alder-14/request-n12.html"))
	b.asPrinted()
	lines, width := evaluated[[]drawnLine](b, findLines), measuredFaces(b)[0].ClientWidth
	pdf := b.pdf()
	for _, dpi := range []int{300, 150, 100} {
		grey := painted(t, shoot(t, pdf, dpi)[0])
		for look, side := range map[string]*image.Gray{"grey": grey, "without grey": withoutGrey(grey)} {
			t.Run(fmt.Sprint(dpi, " dpi, ", look), func(t *testing.T) { checkDrawnLines(t, side, lines, float64(grey.Rect.Dx())/width) })
		}
	}
}

func checkDrawnLines(t *testing.T, side *image.Gray, lines []drawnLine, scale float64) {
	thick, seen := map[string]float64{}, map[string]int{}
	for _, l := range lines {
		seen[l.Kind]++
		dark, changes := l.walk(side, scale)
		switch l.Kind {
		case "side":
			if dark < 0.97 {
				t.Errorf("a reader's side is dark over %.0f %%, want all of it", dark*100)
			}
		default:
			if dark < 0.3 || dark > 0.8 || changes < 4 {
				t.Errorf("the line %s is dark over %.0f %% with %d changes, want stripes", l.Kind, dark*100, changes)
			}
		}
		thick[l.Kind] = max(thick[l.Kind], l.thickness(side, scale))
	}
	if seen["side"] < 2 || seen["work"] < 2 || seen["reach"] < 1 {
		t.Errorf("found lines %v, want each kind in the captions, and two in the drawing", seen)
	}
	if thin := thick["reach"]; thin == 0 || thick["side"] < 2*thin || thick["work"] < 2*thin {
		t.Errorf("lines are %v px thick, want side and work at least twice as thick as reach", thick)
	}
}

// walk goes along the line: the share of it that is dark, and how often dark and light change.
func (l drawnLine) walk(side *image.Gray, scale float64) (dark float64, changes int) {
	last := false
	for i, p := range l.Points {
		is := side.GrayAt(int(p.X*scale), int(p.Y*scale)).Y < 128
		if is {
			dark++
		}
		if i > 0 && is != last {
			changes++
		}
		last = is
	}
	return dark / float64(len(l.Points)), changes
}

// thickness goes across the line from its dark points: the most px that are dark in one go.
func (l drawnLine) thickness(side *image.Gray, scale float64) float64 {
	most := 0.0
	for _, p := range l.Points {
		steps := 0.0
		for n := 0.0; side.GrayAt(int((p.X+n*l.AcrossX/4)*scale), int((p.Y+n*l.AcrossY/4)*scale)).Y < 128 && n < 200; n++ {
			steps++
		}
		most = max(most, steps)
	}
	return most
}
