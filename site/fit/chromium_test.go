package fit

import (
	"bytes"
	"context"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

// Outside reference of this file: Chromium, which shapes, breaks and draws the same font files by its own libraries.

var fonts = map[string]*Font{"regular": robotoRegular(), "bold": robotoBold(), "condensed": robotoCondensed(), "arabic": arabicRegular(), "arabicbold": arabicBold()}

// What is measured: sentences in the manner of the sheets. Names and numbers are invented.
var samples = []struct{ Lang, Text string }{
	{"en", "Keep out"},
	{"en", "Stay out until we have cleaned, checked and told you."},
	{"en", "AVAST! TO WAVE AWAY, TYPE “YOU” AT 14 Alder Court"},
	{"en", "Close every window and door that faces No.\u00a014, all floors. Call 555-0142 – office, first floor."},
	{"es", "No entre"},
	{"es", "No entre hasta que hayamos limpiado, revisado y le hayamos avisado."},
	{"es", "¿Tiene un niño pequeño? Llámenos: 555-0142. ¡Gracias, señor Núñez!"},
	{"es", "ÁREA DE TRABAJO: PUEDE DAÑAR LA FERTILIDAD"},
	{"vi", "Cấm vào"},
	{"vi", "Xin đừng vào cho đến khi chúng tôi đã dọn sạch, kiểm tra và báo cho quý vị."},
	{"vi", "ĐỂ Ý: SỬA NHÀ, ĐÓNG CỬA SỔ PHÍA NAM"},
	{"vi", "Gọi số 555-0142 để hỏi bằng tiếng Việt (hỏi cô Nguyễn Thị Ướt)"},
	{"vi", "Cu\u031b\u0309a so\u0302\u0309 phi\u0301a tru\u031bo\u031b\u0301c"}, // letters and accents apart
}

var sizes = []float64{14, 31.25, 96} // pt

// A request asks for the widths of the samples, for their lines in boxes, and for how far their ink reaches.
type request struct {
	Widths []widthAsked
	Lines  []linesAsked
	Ink    []inkAsked
}

type widthAsked struct {
	Font, Lang, Text string
	Size             float64
	Weight           int // 0 for the only one of a font that the page brings
}

type linesAsked struct {
	widthAsked
	Width float64
	Wrap  string // a value of CSS text-wrap-style
}

type inkAsked struct {
	Font, Text string
	Weight     int
}

// An answer has one entry for each of the request.
type answer struct {
	Widths []float64                                         // pt
	Lines  [][]string                                        // as the browser broke them
	Ink    []struct{ Above, Below, Ascent, Descent float64 } // multiples of the type size
}

// page measures, and leaves the answer as JSON in its only pre element.
const page = `<!doctype html><meta charset="utf-8">
<style>body { text-spacing-trim: space-all; font-synthesis: none } %s span { white-space: nowrap } div { text-wrap-mode: wrap }</style>
<body><script>
const asked = %s;
function put(name, a) {
  const e = document.body.appendChild(document.createElement(name));
  e.lang = a.Lang; e.textContent = a.Text; e.style.font = (a.Weight || 400) + ' ' + a.Size + 'pt ' + a.Font; e.style.position = 'absolute';
  return e;
}
function width(a) {
  const e = put('span', a), px = e.getBoundingClientRect().width;
  e.remove();
  return px * 0.75;
}
function lines(a) {
  const e = put('div', a), range = document.createRange(), lines = [];
  e.style.width = a.Width + 'pt'; e.style.textWrapStyle = a.Wrap;
  let top = -1;
  for (let i = 0; i < a.Text.length; i++) {
    range.setStart(e.firstChild, i); range.setEnd(e.firstChild, i + 1);
    const box = range.getBoundingClientRect();
    if (box.width > 0 && box.top > top + 1) { lines.push(''); top = box.top; }
    lines[lines.length - 1] += a.Text[i];
  }
  e.remove();
  return lines.map(l => l.replace(/ +$/, ''));
}
function ink(a) {
  const c = document.createElement('canvas').getContext('2d');
  c.font = (a.Weight || 400) + ' 200px ' + a.Font;
  const m = c.measureText(a.Text);
  return {Above: m.actualBoundingBoxAscent / 200, Below: m.actualBoundingBoxDescent / 200,
    Ascent: m.fontBoundingBoxAscent / 200, Descent: m.fontBoundingBoxDescent / 200};
}
Promise.all(%s.map(f => document.fonts.load('20px ' + f, 'A'))).then(loaded => {
  if (loaded.some(l => l.length != 1)) throw 'a font did not load';
  const pre = document.createElement('pre');
  pre.textContent = JSON.stringify({Widths: asked.Widths.map(width), Lines: (asked.Lines || []).map(lines), Ink: (asked.Ink || []).map(ink)});
  document.body.appendChild(pre);
});
</script>`

func pageOf(t *testing.T, r request) string {
	t.Helper()
	var css strings.Builder
	var names []string
	for name, f := range fonts {
		names = append(names, name)
		fmt.Fprintf(&css, "@font-face { font-family: %s; src: url(data:font/ttf;base64,%s) }\n", name, base64.StdEncoding.EncodeToString(f.TTF))
	}
	return fmt.Sprintf(page, css.String(), asJSON(t, r), asJSON(t, names))
}

func asJSON(t *testing.T, v any) []byte {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return text
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
	t.Skip("no Chromium in CHROME_PATH or PATH: widths are not compared with a browser")
	return ""
}

func ask(t *testing.T, r request) answer {
	t.Helper()
	dir, err := os.MkdirTemp("", "fit")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) }) // Chromium may still write to its profile, which would fail t.TempDir
	file := filepath.Join(dir, "page.html")
	path := browser(t)
	if err := os.WriteFile(file, []byte(pageOf(t, r)), 0o600); err != nil {
		t.Fatal(err)
	}
	return parse(t, dump(t, path, dir, file))
}

func dump(t *testing.T, browser, profile, file string) []byte {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+profile,
		"--virtual-time-budget=20000", "--dump-dom", "file://"+filepath.ToSlash(file))
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("%v\n%s", err, errs.Bytes())
	}
	return out.Bytes()
}

func parse(t *testing.T, dom []byte) (a answer) {
	t.Helper()
	pre := regexp.MustCompile(`(?s)<pre>(.*?)</pre>`).FindSubmatch(dom)
	if pre == nil {
		t.Fatal("the page that measures text in Chromium has no answer")
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(string(pre[1]))), &a); err != nil {
		t.Fatal(err)
	}
	return a
}

func allRequests() (r request) {
	for _, name := range []string{"regular", "bold", "condensed"} {
		for _, s := range samples {
			r.Ink = append(r.Ink, inkAsked{Font: name, Text: s.Text})
			for _, size := range sizes {
				w := widthAsked{Font: name, Lang: s.Lang, Text: s.Text, Size: size}
				r.Widths = append(r.Widths, w)
				w.Text = unbroken(s.Text)
				for _, ems := range []float64{5.5, 8, 13, 21} {
					r.Lines = append(r.Lines, linesAsked{w, ems * size, "auto"}, linesAsked{w, ems * size, "balance"})
				}
			}
		}
	}
	return r
}

func TestAgainstChromium(t *testing.T) {
	r := allRequests()
	a := ask(t, r)
	if len(a.Widths) != len(r.Widths) || len(a.Lines) != len(r.Lines) || len(a.Ink) != len(r.Ink) {
		t.Fatal("the browser did not answer everything")
	}
	t.Run("widths", func(t *testing.T) { sameWidths(t, r.Widths, a.Widths) })
	t.Run("lines", func(t *testing.T) { sameLines(t, r.Lines, a.Lines) })
	t.Run("ink", func(t *testing.T) { sameInk(t, r, a) })
}

// Half a per cent is a sixth of what Fit leaves free.
func sameWidths(t *testing.T, asked []widthAsked, widths []float64) {
	worst := 0.0
	for i, w := range asked {
		ours := fonts[w.Font].Width(w.Text, w.Size)
		off := math.Abs(ours/widths[i] - 1)
		worst = max(worst, off)
		if !(off < Spare/6) {
			t.Errorf("%s %g pt %q: %.3f pt, in Chromium %.3f pt", w.Font, w.Size, w.Text, ours, widths[i])
		}
	}
	t.Logf("%d widths, the worst off by %.4f %%", len(asked), worst*100)
}

// unbroken keeps Chromium from breaking 555-0142 after its hyphen. The known difference: rule LB25 of Unicode Standard Annex #14 forbids that
// break, Chromium makes it all the same, and we do not want it.
func unbroken(text string) string { return strings.ReplaceAll(text, "555-0142", "555-\u20600142") }

func broken(lines []string) []string {
	return strings.Split(strings.ReplaceAll(strings.Join(lines, "\n"), "\u2060", ""), "\n")
}

func sameLines(t *testing.T, asked []linesAsked, lines [][]string) {
	for i, l := range asked {
		f := fonts[l.Font]
		filled, even, theirs := broken(f.Lines(l.Text, l.Size, l.Width)), f.balanced(l.Text, l.Size, l.Width), broken(lines[i])
		if l.Wrap == "auto" && !slices.Equal(filled, theirs) {
			t.Errorf("%s %g pt in %g pt:\n%q, in Chromium\n%q", l.Font, l.Size, l.Width, filled, theirs)
		}
		if l.Wrap == "balance" && len(even) != len(theirs) {
			t.Errorf("%s %g pt in %g pt, balanced:\n%q, in Chromium\n%q", l.Font, l.Size, l.Width, even, theirs)
		}
	}
}

// Chromium draws text of 200 px, hints it to whole pixels and then rounds its ink outwards: two pixels at most.
func sameInk(t *testing.T, r request, a answer) {
	const pixels = 2.0 / 200
	for i, asked := range r.Ink {
		f, theirs := fonts[asked.Font], a.Ink[i]
		above, below := f.ink(asked.Text)
		ascent, descent := f.extents()
		for _, pair := range [][2]float64{{above, theirs.Above}, {below, theirs.Below}, {ascent, theirs.Ascent}, {descent, theirs.Descent}} {
			if math.Abs(pair[0]-pair[1]) > pixels {
				t.Errorf("%s %q: %.4f em, in Chromium %.4f em, of ink above %.4f, below %.4f", asked.Font, asked.Text, pair[0], pair[1], above, below)
			}
		}
	}
}
