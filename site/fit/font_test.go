package fit

import (
	"encoding/binary"
	"math"
	"strings"
	"sync"
	"testing"
)

func TestFonts(t *testing.T) {
	for _, want := range []struct {
		font   *Font
		family string
		weight int
		file   string
	}{
		{robotoRegular(), "Roboto", 400, "Roboto-Regular.ttf"},
		{robotoBold(), "Roboto", 700, "Roboto-Bold.ttf"},
		{robotoCondensed(), "Roboto Condensed", 700, "RobotoCondensed-Bold.ttf"},
	} {
		f := want.font
		if f.Family != want.family || f.Weight != want.weight || f.File != want.file {
			t.Errorf("got %s %d in %s, want %+v", f.Family, f.Weight, f.File, want)
		}
		if !strings.HasPrefix(f.Version, "Version 2.") {
			t.Errorf("%s: version %q", f.File, f.Version)
		}
	}
	if first, second := robotoBold(), robotoBold(); first != second {
		t.Error("the font is loaded again at each call")
	}
}

// Source: the OpenType specification, OS/2 table: sCapHeight lies 88 bytes into a table of version 2 or later, and head: unitsPerEm lies 18
// bytes in. It says that sCapHeight may be the top of the glyph of H, which is what a reader sees.
func TestCapHeight(t *testing.T) {
	for name, f := range map[string]*Font{"regular": robotoRegular(), "bold": robotoBold(), "condensed": robotoCondensed()} {
		em := float64(binary.BigEndian.Uint16(rawTable(t, f.TTF, "head")[18:]))
		os2 := rawTable(t, f.TTF, "OS/2")
		if version := binary.BigEndian.Uint16(os2); version < 2 {
			t.Fatalf("%s: OS/2 table of version %d", name, version)
		}
		if want := float64(binary.BigEndian.Uint16(os2[88:])) / em; f.letterHeight() != want {
			t.Errorf("%s: capitals of %.4f em, want %.4f em", name, f.letterHeight(), want)
		}
		if h := topOfH(f) / em; math.Abs(f.letterHeight()-h) > 0.001 {
			t.Errorf("%s: capitals of %.4f em, but H is %.4f em high", name, f.letterHeight(), h)
		}
	}
}

func topOfH(f *Font) float64 {
	glyph, _ := f.face.NominalGlyph('H')
	extents, _ := f.face.GlyphExtents(glyph)
	return float64(extents.YBearing)
}

// rawTable finds a table by the directory at the start of the file, as the OpenType specification lays it out.
func rawTable(t *testing.T, ttf []byte, tag string) []byte {
	t.Helper()
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		record := ttf[12+16*i:]
		if string(record[:4]) == tag {
			return ttf[binary.BigEndian.Uint32(record[8:]):]
		}
	}
	t.Fatalf("no table %s", tag)
	return nil
}

func TestLetterHeightMM(t *testing.T) {
	// 72 pt is 25.4 mm.
	if got, want := robotoBold().LetterHeightMM(72), robotoBold().letterHeight()*25.4; math.Abs(got-want) > 1e-9 {
		t.Errorf("got %g mm, want %g mm", got, want)
	}
}

func TestWidthScales(t *testing.T) {
	// Whole sizes and fractions alike: the shaper itself rounds sizes up.
	text := "Gọi số 555-0142"
	for _, size := range []float64{0.25, 14, 14.25, 161.75} {
		if got, want := robotoBold().Width(text, size), robotoBold().Width(text, 1)*size; math.Abs(got-want) > 1e-9 {
			t.Errorf("%g pt: %g pt wide, want %g pt", size, got, want)
		}
	}
}

func TestMissing(t *testing.T) {
	for _, test := range []struct{ name, text, want string }{
		{"English", "Keep out – call 555-0142, “Rosa” won’t mind…", ""},
		{"Spanish", "¿Tiene un niño? ¡Llámenos!", ""},
		{"Vietnamese", "Ở nhà, đừng mở cửa sổ phía ấy. Ễ Ữ Ậ", ""},
		{"Vietnamese, accents apart", "mo\u031b\u0309 cu\u031b\u0309a", ""},
		{"nobody sees them", "a\u200e\u200f\u2066b\u2069\u2060c\u00add\ufeff", ""},
		{"white space", "a\tb\nc\u00a0d", ""},
		{"Han, once each, in order", "a 漢字 b 漢", "漢字"},
		{"Arabic, right to left", "a ممنوع", "منوع"},
		{"emoji", "dog 🐕", "🐕"},
		{"emoji, with a mark that nobody sees", "dog 🐕\ufe0f", "🐕"},
	} {
		if got := string(robotoBold().Missing(test.text)); got != test.want {
			t.Errorf("%s: missing %q, want %q", test.name, got, test.want)
		}
	}
}

func TestManyAtOnce(t *testing.T) {
	want := robotoRegular().Width("Stay out", 10)
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			if got := robotoRegular().Width("Stay out", 10); got != want {
				t.Errorf("got %g pt, want %g pt", got, want)
			}
		})
	}
	wait.Wait()
}
