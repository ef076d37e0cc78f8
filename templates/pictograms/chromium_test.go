package pictograms

import (
	"context"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// Outside reference of this file: Chromium, which draws the pictograms as the sheets are printed, here under a strict content security
// policy. The limits on weight and place are our own, set by looking.

const side = 192 // px of a drawing: 2 px a unit

// A raster is one drawing as the browser paints it; positions are in units of the grid.
type raster struct {
	image image.Image
	top   int // px
}

func (r raster) inked(x, y float64) bool {
	red, _, _, _ := r.image.At(int(x*side/96), r.top+int(y*side/96)).RGBA()
	return red < 0x8000
}

// share of ink among those points of the grid that count.
func (r raster) share(counts func(x, y float64) bool) float64 {
	ink, all := 0, 0
	for x := 0.25; x < 96; x += 0.5 {
		for y := 0.25; y < 96; y += 0.5 {
			if !counts(x, y) {
				continue
			}
			all++
			if r.inked(x, y) {
				ink++
			}
		}
	}
	return float64(ink) / float64(all)
}

// box around the ink: left, top, right, bottom.
func (r raster) box() (x0, y0, x1, y1 float64) {
	x0, y0 = 96, 96
	r.share(func(x, y float64) bool {
		if r.inked(x, y) {
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		}
		return true
	})
	return x0, y0, x1, y1
}

func everywhere(x, y float64) bool { return true }

// beside is how far a point lies from the middle of the bar: positive to the upper right, negative to the lower left.
func beside(x, y float64) float64 { return (x - y) / math.Sqrt2 }

func TestDrawings(t *testing.T) {
	drawn := draw(t)
	for _, name := range names {
		t.Run(string(name), func(t *testing.T) {
			checkPlace(t, drawn[name])
			checkGrey(t, drawn[name])
			if slices.Contains(prohibitions, name) {
				checkFigureUnderBar(t, drawn[name])
			}
		})
	}
	checkDistinct(t, drawn)
}

// Even weight and centring make a row of drawings look like one family.
func checkPlace(t *testing.T, r raster) {
	if weight := r.share(everywhere); weight < 0.2 || weight > 0.45 {
		t.Errorf("ink covers %.2f of the square, want 0.2 to 0.45", weight)
	}
	x0, y0, x1, y1 := r.box()
	if x0 < 2.5 || y0 < 2.5 || x1 > 93.5 || y1 > 93.5 {
		t.Errorf("ink from %.1f,%.1f to %.1f,%.1f comes too near to the edge", x0, y0, x1, y1)
	}
	if x, y := (x0+x1)/2, (y0+y1)/2; math.Abs(x-48) > 1.5 || math.Abs(y-48) > 1.5 {
		t.Errorf("the middle of the ink is %.1f,%.1f, want about 48,48", x, y)
	}
	if size := max(x1-x0, y1-y0); size < 76 {
		t.Errorf("the drawing is %.1f units at its longest, want at least 76", size)
	}
}

func checkGrey(t *testing.T, r raster) {
	for x := range side {
		for y := range side {
			if red, green, blue, _ := r.image.At(x, r.top+y).RGBA(); red != green || green != blue {
				t.Fatalf("colour at %d,%d px", x, y)
			}
		}
	}
}

// The bar is black within a white seam, and on both of its sides enough of the figure is left to be read.
func checkFigureUnderBar(t *testing.T, r raster) {
	inside := func(x, y float64) bool { return math.Hypot(x-48, y-48) < 34 }
	bar := func(x, y float64) bool { return inside(x, y) && math.Abs(beside(x, y)) < 3 }
	seam := func(x, y float64) bool {
		off := math.Abs(beside(x, y))
		return inside(x, y) && off > 4.4 && off < 5.7
	}
	if black := r.share(bar); black < 0.999 {
		t.Errorf("the bar is %.3f black", black)
	}
	if black := r.share(seam); black > 0.001 {
		t.Errorf("the seam beside the bar is %.3f black", black)
	}
	upper := r.share(func(x, y float64) bool { return inside(x, y) && beside(x, y) > 6.5 })
	lower := r.share(func(x, y float64) bool { return inside(x, y) && beside(x, y) < -6.5 })
	if min(upper, lower) < 0.15 {
		t.Errorf("the figure covers %.2f above and %.2f below the bar, want at least 0.15 of each", upper, lower)
	}
}

// Ring and bar are alike by design, so only what lies between them is compared.
func checkDistinct(t *testing.T, drawn map[Name]raster) {
	figure := func(x, y float64) bool { return math.Hypot(x-48, y-48) < 35 && math.Abs(beside(x, y)) > 6.5 }
	for i, a := range names {
		for _, b := range names[:i] {
			either := func(x, y float64) bool { return figure(x, y) && (drawn[a].inked(x, y) || drawn[b].inked(x, y)) }
			// Of the points that either inks, the shares inked by each add up to 1 and the share inked by both.
			if both := drawn[a].share(either) + drawn[b].share(either) - 1; both > 0.5 {
				t.Errorf("the figures of %s and %s share %.2f of their ink", a, b, both)
			}
		}
	}
}

// draw paints all pictograms, one under the other.
func draw(t *testing.T) map[Name]raster {
	t.Helper()
	path := browser(t)
	dir, err := os.MkdirTemp("", "pictograms")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) }) // Chromium may still write to its profile, which would fail t.TempDir
	if err := os.WriteFile(filepath.Join(dir, "page.html"), []byte(page()), 0o600); err != nil {
		t.Fatal(err)
	}
	shot := screenshot(t, path, dir)
	drawn := map[Name]raster{}
	for i, name := range names {
		drawn[name] = raster{shot, i * side}
	}
	return drawn
}

func page() string {
	var b strings.Builder
	fmt.Fprintf(&b, `<!doctype html><html lang="en"><meta charset="utf-8"><title>pictograms</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-only'">
<style nonce="only">body { margin: 0 } svg { display: block; width: %dpx }</style>`, side)
	for _, name := range names {
		b.WriteString(string(SVG(name)))
	}
	return b.String()
}

func screenshot(t *testing.T, browser, dir string) image.Image {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	shot := filepath.Join(dir, "page.png")
	cmd := exec.CommandContext(ctx, browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
		"--force-device-scale-factor=1", fmt.Sprintf("--window-size=600,%d", side*len(names)+100),
		"--user-data-dir="+filepath.Join(dir, "profile"), "--screenshot="+shot, "file://"+filepath.ToSlash(filepath.Join(dir, "page.html")))
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	file, err := os.Open(shot)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	picture, err := png.Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// browser is the path of Chromium, from CHROME_PATH or PATH. Without one the test is skipped, but not under CI.
func browser(t *testing.T) string {
	t.Helper()
	for _, name := range []string{os.Getenv("CHROME_PATH"), "chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatal("no Chromium in CHROME_PATH or PATH, and CI asks for it")
	}
	t.Skip("no Chromium in CHROME_PATH or PATH: the pictograms are not drawn")
	return ""
}
