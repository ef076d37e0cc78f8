package fit

import (
	"slices"
	"strings"
	"unicode"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/shaping"
	"golang.org/x/image/math/fixed"
)

// unitsPerEm is the size at which text is shaped before it is scaled. The shaper rounds sizes up to whole units, so that shaping at the
// size that prints would measure 14.25 pt as 15 pt; at this one, nothing is rounded.
const unitsPerEm = 2048

// Width is the width in pt of the text on one line, in type of the given size in pt. It means nothing when the font lacks characters of
// the text; see [Font.Missing].
func (f *Font) Width(text string, size float64) float64 { return f.ems(collapse(text)) * size }

// ems is the width of the text as a multiple of the type size. It is kept, because layouts try the same lines again and again.
func (f *Font) ems(text string) float64 {
	if known, ok := f.measured.Load(text); ok {
		return known.(float64)
	}
	width := 0.0
	for _, run := range f.shape([]rune(text)) {
		width += float64(run.Advance) / 64 / unitsPerEm
	}
	f.measured.Store(text, width)
	return width
}

// overhang is how far ink of the text stands out of its line, above or below, whichever is more, as a multiple of the type size. It is 0
// for most texts; capitals with two accents (Ể) stand out of a line of 1.1 times the type size, and a clipped box would cut them off.
// A browser puts the ascent and the descent of the font in the middle of the line.
func (f *Font) overhang(text string, leading float64) float64 {
	above, below := f.ink(collapse(text))
	ascent, descent := f.extents()
	half := (leading - ascent - descent) / 2
	return max(0, above-ascent-half, below-descent-half)
}

// ink is how far the text reaches above and below its baseline, as multiples of the type size.
func (f *Font) ink(text string) (above, below float64) {
	for _, run := range f.shape([]rune(text)) {
		above = max(above, float64(run.GlyphBounds.Ascent)/64/unitsPerEm)
		below = max(below, -float64(run.GlyphBounds.Descent)/64/unitsPerEm)
	}
	return above, below
}

// Missing lists the characters of the text that the font cannot draw, each once, in the order of the text. Characters that nobody sees,
// such as direction marks, are never missing.
func (f *Font) Missing(text string) []rune {
	runes := []rune(collapse(text))
	undrawn := f.undrawn(runes)
	var missing []rune
	for i, r := range runes {
		if undrawn[i] && !f.knows(r) && !slices.Contains(missing, r) {
			missing = append(missing, r)
		}
	}
	return missing
}

// undrawn marks the characters that ended in the glyph that stands for "not in this font". They are sought among the shaped glyphs,
// because the shaper may draw a letter and its accent by one glyph, or a letter that the font lacks by two.
func (f *Font) undrawn(text []rune) []bool {
	const notInFont font.GID = 0
	undrawn := make([]bool, len(text))
	for _, run := range f.shape(text) {
		for _, glyph := range run.Glyphs {
			for i := range glyph.RunesCount() {
				undrawn[glyph.TextIndex()+i] = undrawn[glyph.TextIndex()+i] || glyph.GlyphID == notInFont
			}
		}
	}
	return undrawn
}

func (f *Font) knows(r rune) bool {
	return f.has(r) || harfbuzz.IsDefaultIgnorable(r) || slices.ContainsFunc(f.behind, func(b *Font) bool { return b.has(r) })
}

// has tells of the font alone, without those behind it.
func (f *Font) has(r rune) bool {
	_, drawn := f.face.NominalGlyph(r)
	return drawn
}

// shape turns the text into glyphs, run by run: a run is of one script and one direction.
func (f *Font) shape(text []rune) []shaping.Output {
	f.mu.Lock()
	defer f.mu.Unlock()
	input := shaping.Input{Text: text, RunEnd: len(text), Face: f.face, Size: fixed.I(unitsPerEm)}
	var runs []shaping.Output
	for _, run := range f.segmenter.Split(input, faces{f}) {
		runs = append(runs, f.shaper.Shape(run))
	}
	return runs
}

// faces tells the shaper to draw each character with the first font that has it, as a browser does with a list of families.
type faces struct{ of *Font }

func (f faces) ResolveFace(r rune) *font.Face {
	if !f.of.has(r) {
		for _, b := range f.of.behind {
			if b.has(r) {
				return b.face
			}
		}
	}
	return f.of.face
}

// collapse makes each run of white space one space, and drops it at the ends. A no-break space is kept.
func collapse(text string) string { return strings.Join(strings.FieldsFunc(text, isSpace), " ") }

func isSpace(r rune) bool {
	return r == ' ' || unicode.IsControl(r) || r == '\u2028' || r == '\u2029'
}
