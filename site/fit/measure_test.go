package fit

import (
	"math"
	"os"
	"strings"
	"testing"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Sources of the ratios. Han: JIS Z 8513 asks for 25 minutes of arc for Han characters and 16 for Latin letters and digits, as a page of designers
// gives it; it reckons 2.2 mm and 1.4 mm at 300 mm, 3.7 mm and 2.3 mm at 500 mm, which is checked here by the formula of the visual angle.
func TestHanIsHigherThanCapitals(t *testing.T) {
	for _, row := range []struct{ distance, han, latin float64 }{{300, 2.2, 1.4}, {500, 3.7, 2.3}} {
		height := func(minutes float64) float64 { return 2 * row.distance * math.Tan(minutes/60*math.Pi/180/2) }
		if math.Abs(height(25)-row.han) > 0.1 || math.Abs(height(16)-row.latin) > 0.1 {
			t.Errorf("%g mm away: %.2f mm and %.2f mm, and the page has %g and %g", row.distance, height(25), height(16), row.han, row.latin)
		}
		if got := height(25) / height(16); math.Abs(got-han.Times) > 0.01 {
			t.Errorf("a ratio of %.3f, and ours is %.3f", got, han.Times)
		}
	}
}

// At 20 ft the table of ANSI Z535.2 asks for capitals of 0.80 in. What that makes in each script is written out here, so that a change is seen; the
// ink is compared with Chromium's in TestScriptsAgainstChromium.
func TestHeightsAtTwentyFeet(t *testing.T) {
	shelf := NewShelf(os.ReadFile)
	for _, c := range []struct {
		code   string
		inches float64
	}{{"Latn", 0.80}, {"Cyrl", 0.80}, {"Arab", 0.80 * 2.4 / 1.4}, {"Hans", 0.80 * 25 / 16}, {"Kore", 0.80 * 25 / 16}, {"Deva", 0.80}, {"Khmr", 0.80}} {
		cast, err := shelf.Cast(c.code, samplesOf[c.code], nil)
		if err != nil {
			lacking(t, err)
			continue
		}
		size := cast.Sign.SizeOf(MessageHeight(20, Good))
		if got := cast.Sign.LetterHeightMM(size) / 25.4; got < c.inches || got > c.inches+0.01 {
			t.Errorf("%s: %s of %.3f in at %g pt, want %.3f in", c.code, cast.Sign.Letters(), got, size, c.inches)
		}
		if got := ReadingDistance(cast.Sign.CapitalsMM(size), 1000, Good); got != 20 {
			t.Errorf("%s: read from %g ft", c.code, got)
		}
		if got := ReadingDistance(cast.Sign.CapitalsMM(size-0.5), 1000, Good); got != 19 {
			t.Errorf("%s, a little smaller: read from %g ft", c.code, got)
		}
	}
}

// Outside reference: golang.org/x/image/font/sfnt, another reader of font files, gives the same ink.
func TestLetterHeightsInSFNT(t *testing.T) {
	shelf := NewShelf(os.ReadFile)
	for _, row := range scripts {
		cast, err := shelf.Cast(row.code, samplesOf[row.code], nil)
		if err != nil {
			lacking(t, err)
			continue
		}
		for _, f := range []*Font{cast.Bold, cast.Sign} {
			top, bottom := row.measure.top, row.measure.bottom
			if top == 0 {
				top, bottom = 'H', 'H'
			}
			want := inkInSFNT(t, f, top).top - inkInSFNT(t, f, bottom).bottom
			if got := f.letterHeight(); math.Abs(got-want) > 0.002 {
				t.Errorf("%s: %s of %.4f em, and %.4f em by the other reader", f.Family, f.Letters(), got, want)
			}
		}
	}
}

// Edges of ink above the baseline, as multiples of the type size.
type ink struct{ top, bottom float64 }

func inkInSFNT(t *testing.T, f *Font, r rune) ink {
	t.Helper()
	collection, err := sfnt.ParseCollection(f.TTF)
	if err != nil {
		t.Fatal(err)
	}
	var buffer sfnt.Buffer
	for i := range collection.NumFonts() {
		font, err := collection.Font(i)
		if err != nil {
			t.Fatal(err)
		}
		if family, err := font.Name(&buffer, sfnt.NameIDFamily); err != nil || collection.NumFonts() > 1 && !strings.HasPrefix(family, f.Family) {
			continue
		}
		glyph, err := font.GlyphIndex(&buffer, r)
		if err != nil {
			t.Fatal(err)
		}
		const em = 4096
		bounds, _, err := font.GlyphBounds(&buffer, glyph, fixed.I(em), xfont.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		return ink{-float64(bounds.Min.Y) / 64 / em, -float64(bounds.Max.Y) / 64 / em}
	}
	t.Fatalf("the other reader finds no %s", f.Family)
	return ink{}
}
