package fit

import (
	"slices"

	"github.com/go-text/typesetting/font"
)

// A measure is which height of a script's letters decides from how far they are read, and how many times as high as capitals it has to be.
type measure struct {
	What        string // "capitals", as the record says it
	Times       float64
	top, bottom rune   // from the top of the ink of one letter to the foot of the other; 0 for the height that the font gives its capitals
	Source      string // of Times
}

// The heights that the published tables ask for are those of Latin capitals. Where a source compares a script without capitals with them, its ratio
// counts. Where none does, the least letter without marks has to be as high as a capital: the tables allow small letters beside capitals, and
// those are lower by a quarter.
var (
	capitals = measure{What: "capitals", Times: 1, Source: "ANSI Z535.2, 9.2.3, as a sign maker's catalogue reproduces it: the height of capital H"}
	han      = measure{What: "whole characters", Times: 25.0 / 16, top: '国', bottom: '国',
		Source: "JIS Z 8513, as a page of designers gives it (unix-d.co.jp, GUI Tips 1-1-01, read 2026-11-25): at least 25 minutes of arc for Han characters where Latin letters and digits need 16"}
	hangul = measure{What: "whole syllables", Times: han.Times, top: '를', bottom: '를', Source: "no source found: as Han, whose characters are as dense"}
	arabic = measure{What: "letters from the top of alef to the tail of ain", Times: 2.4 / 1.4, top: 'ا', bottom: 'ع',
		Source: "Lebanese rules for road signs, as a maker gives them (agev.com, read 2026-11-25): Arabic is 2.4 times as high as the small Latin letters, whose capitals are 1.4 times"}
	consonant = func(r rune) measure {
		return measure{What: "consonants without marks", Times: 1, top: r, bottom: r, Source: "no source found: our reckoning, above"}
	}
)

// letterHeight is the height, as a fraction of the type size, of the letters that decide from how far text is read. For Latin, Cyrillic and Greek
// these are the capitals without accents (sCapHeight of the OS/2 table).
func (f *Font) letterHeight() float64 {
	if f.measure.top == 0 {
		return f.capHeight()
	}
	return f.top(f.measure.top) - f.foot(f.measure.bottom)
}

// LetterHeightMM is the same in mm, of type of the given size in pt.
func (f *Font) LetterHeightMM(size float64) float64 { return f.letterHeight() * size / 72 * mmPerInch }

// Letters says in words what LetterHeight measures: "capitals", "whole characters".
func (f *Font) Letters() string { return f.measure.What }

// CapitalsMM is how high in mm capitals are that can be read from as far as type of the given size in pt. Distances are reckoned from it.
func (f *Font) CapitalsMM(size float64) float64 { return f.LetterHeightMM(size) / f.measure.Times }

func (f *Font) capHeight() float64 { return float64(f.face.LineMetric(font.CapHeight)) / f.em() }

func (f *Font) em() float64 { return float64(f.face.Upem()) }

// top and foot are the edges of the ink of a letter, as multiples of the type size above the baseline.
func (f *Font) top(r rune) float64 {
	glyph, _ := f.face.NominalGlyph(r)
	extents, _ := f.face.GlyphExtents(glyph)
	return float64(extents.YBearing) / f.em()
}

func (f *Font) foot(r rune) float64 {
	glyph, _ := f.face.NominalGlyph(r)
	extents, _ := f.face.GlyphExtents(glyph)
	return float64(extents.YBearing+extents.Height) / f.em()
}

// with is a copy of the font whose letters are measured so, with others behind it.
func (f *Font) with(m measure, behind []*Font) *Font {
	return &Font{
		Family: f.Family, Weight: f.Weight, File: f.File, Version: f.Version, TTF: f.TTF, inside: f.inside,
		face: f.face, behind: slices.Clone(behind), measure: m,
	}
}
