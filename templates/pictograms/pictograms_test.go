package pictograms

import (
	"encoding/xml"
	"errors"
	"io"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var prohibitions = []Name{keepOut, noEatingDrinkingSmoking}

// elements of a drawing in document order. Anything but elements and white space fails the test.
func elements(t *testing.T, name Name) []xml.StartElement {
	t.Helper()
	var found []xml.StartElement
	decoder := xml.NewDecoder(strings.NewReader(string(SVG(name))))
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return found
		}
		if err != nil {
			t.Fatalf("%s is not XML: %v", name, err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			found = append(found, token.Copy())
		case xml.EndElement:
		case xml.CharData:
			if strings.TrimSpace(string(token)) != "" {
				t.Errorf("%s holds text: %q", name, token)
			}
		default:
			t.Errorf("%s holds %T; keep to elements", name, token)
		}
	}
}

func attribute(element xml.StartElement, key string) string {
	for _, a := range element.Attr {
		if a.Name.Local == key {
			return a.Value
		}
	}
	return ""
}

func number(t *testing.T, element xml.StartElement, key string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(attribute(element, key), 64)
	if err != nil {
		t.Fatalf("%s of <%s>: %v", key, element.Name.Local, err)
	}
	return n
}

func TestEveryFileHasAName(t *testing.T) {
	files, err := fs.Glob(drawings, "svg/*")
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, name := range names {
		want = append(want, "svg/"+string(name)+".svg")
	}
	slices.Sort(want)
	if !slices.Equal(files, want) {
		t.Errorf("files %q\nnames %q", files, want)
	}
}

func TestUnknownNameIsEmpty(t *testing.T) {
	for _, name := range []Name{"", "no_such", "../doc", "*"} {
		if got := SVG(name); got != "" {
			t.Errorf("SVG(%q) = %q, want nothing", name, got)
		}
	}
}

// A strict content security policy drops style attributes and elements; ids would repeat on a page that shows a drawing twice.
// What is not listed here is refused; the names are those of the shapes and presentation attributes of SVG 1.1, from memory.
func TestOnlyPlainShapesAndPresentationAttributes(t *testing.T) {
	shapes := []string{"svg", "g", "rect", "circle", "path"}
	attributes := strings.Fields(`xmlns viewBox aria-hidden focusable fill stroke stroke-width stroke-linecap stroke-linejoin
		transform x y width height rx cx cy r d`)
	paints := []string{"black", "white", "none"}
	for _, name := range names {
		for i, element := range elements(t, name) {
			if shape := element.Name.Local; !slices.Contains(shapes, shape) || (i == 0) != (shape == "svg") {
				t.Errorf("%s: <%s> is out of place", name, shape)
			}
			for _, a := range element.Attr {
				if !slices.Contains(attributes, a.Name.Local) {
					t.Errorf("%s: <%s> has the attribute %s", name, element.Name.Local, a.Name.Local)
				}
				if (a.Name.Local == "fill" || a.Name.Local == "stroke") && !slices.Contains(paints, a.Value) {
					t.Errorf("%s: %s %q; only black, white and none print alike everywhere", name, a.Name.Local, a.Value)
				}
			}
		}
	}
}

func TestCommonGrid(t *testing.T) {
	want := map[string]string{"viewBox": "0 0 96 96", "stroke-width": "6", "stroke-linecap": "round", "stroke-linejoin": "round",
		"fill": "none", "stroke": "black", "aria-hidden": "true", "focusable": "false", "xmlns": "http://www.w3.org/2000/svg"}
	for _, name := range names {
		if size := len(SVG(name)); size > 1500 {
			t.Errorf("%s has %d bytes, more than 1500", name, size)
		}
		root := elements(t, name)[0]
		for key, value := range want {
			if got := attribute(root, key); got != value {
				t.Errorf("%s: %s is %q, want %q", name, key, got, value)
			}
		}
		if attribute(root, "width") != "" || attribute(root, "height") != "" {
			t.Errorf("%s sets its own size; the page does that", name)
		}
	}
}

// Ring 0.1 and bar 0.08 of the outer diameter at 45 degrees: a published Japanese drawing template in the manner of ISO 3864; the
// standard itself was not read. Bar from upper left to lower right, and ring and bar (red on a coloured sign) at least 35 % of the sign:
// the Health and Safety Executive of the United Kingdom on prohibitory signs.
func TestProhibitions(t *testing.T) {
	for _, name := range prohibitions {
		all := elements(t, name)
		seam, bar, ring := all[len(all)-3], all[len(all)-2], all[len(all)-1]
		radius, band := number(t, ring, "r"), number(t, ring, "stroke-width")
		outer, inner := radius+band/2, radius-band/2
		if got := band / (2 * outer); math.Abs(got-0.1) > 0.001 {
			t.Errorf("%s: the ring is %.3f of the diameter, want 0.1", name, got)
		}
		width := number(t, bar, "stroke-width")
		if got := width / (2 * outer); math.Abs(got-0.08) > 0.001 {
			t.Errorf("%s: the bar is %.3f of the diameter, want 0.08", name, got)
		}
		if d := attribute(bar, "d"); d != "M20 20 76 76" || attribute(seam, "d") != d || attribute(seam, "stroke") != "white" {
			t.Errorf("%s: the bar and its seam do not run from upper left to lower right through the middle", name)
		}
		covered := math.Pi*(outer*outer-inner*inner) + 2*inner*width
		if share := covered / (math.Pi * outer * outer); share < 0.35 {
			t.Errorf("%s: ring and bar are %.2f of the sign, want at least 0.35", name, share)
		}
	}
}

func TestRequestsHaveNoRing(t *testing.T) {
	for _, name := range names {
		last := elements(t, name)
		if ringed := attribute(last[len(last)-1], "r") == "40.5"; ringed != slices.Contains(prohibitions, name) {
			t.Errorf("%s: ring %t", name, ringed)
		}
	}
}
