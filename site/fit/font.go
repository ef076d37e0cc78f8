package fit

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"sync"

	"eliasnaur.com/font/roboto/robotobold"
	"eliasnaur.com/font/roboto/robotocondensedbold"
	"eliasnaur.com/font/roboto/robotoregular"
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/font/opentype/tables"
	"github.com/go-text/typesetting/shaping"
)

// A Font is one printing font. Its methods may be called from several goroutines at once.
type Font struct {
	Family  string // "Roboto Condensed", as CSS calls it
	Weight  int    // 400 or 700, as CSS counts it
	File    string // "RobotoCondensed-Bold.ttf"
	Version string // as the font file says: "Version 2.138; 2017"
	TTF     []byte // the file; not to be changed

	face *font.Face

	mu        sync.Mutex // guards what shaping keeps between calls
	segmenter shaping.Segmenter
	shaper    shaping.HarfbuzzShaper
}

// Regular is Roboto, for text.
func Regular() *Font { return regular() }

// Bold is Roboto Bold, for headlines and signs.
func Bold() *Font { return bold() }

// Condensed is Roboto Condensed Bold, for signs whose words are long.
func Condensed() *Font { return condensed() }

var (
	regular   = sync.OnceValue(func() *Font { return mustLoad(robotoregular.TTF) })
	bold      = sync.OnceValue(func() *Font { return mustLoad(robotobold.TTF) })
	condensed = sync.OnceValue(func() *Font { return mustLoad(robotocondensedbold.TTF) })
)

// SHA256 is the digest of the font file, in lower-case hexadecimal digits.
func (f *Font) SHA256() string {
	sum := sha256.Sum256(f.TTF)
	return hex.EncodeToString(sum[:])
}

// CapHeight is the height of the capital letters without accents, as a fraction of the type size (sCapHeight of the OS/2 table).
func (f *Font) CapHeight() float64 {
	return float64(f.face.LineMetric(font.CapHeight)) / float64(f.face.Upem())
}

// CapHeightMM is the height in mm of the capital letters of type of the given size in pt.
func (f *Font) CapHeightMM(size float64) float64 { return f.CapHeight() * size / 72 * 25.4 }

// extents are the font's own ascent and descent, both positive, as multiples of the type size.
func (f *Font) extents() (ascent, descent float64) {
	extents, _ := f.face.FontHExtents() // load has seen that they are there
	em := float64(f.face.Upem())
	return float64(extents.Ascender) / em, -float64(extents.Descender) / em
}

// mustLoad panics when an embedded font can not be read: the program was built wrongly.
func mustLoad(ttf []byte) *Font {
	f, err := load(ttf)
	if err != nil {
		panic(err)
	}
	return f
}

func load(ttf []byte) (*Font, error) {
	loader, err := opentype.NewLoader(bytes.NewReader(ttf))
	if err != nil {
		return nil, fmt.Errorf("not a font file that can be read: %w", err)
	}
	program, err := font.NewFont(loader)
	if err != nil {
		return nil, fmt.Errorf("not a font file that can be read: %w", err)
	}
	names, err := readNames(loader)
	if err != nil {
		return nil, err
	}
	face := font.NewFace(program)
	if _, ok := face.FontHExtents(); !ok {
		return nil, errors.New("the font does not say how high its lines are")
	}
	about := program.Describe()
	return &Font{
		Family:  about.Family,
		Weight:  int(about.Aspect.Weight),
		File:    names.Name(namePostScript) + ".ttf",
		Version: names.Name(nameVersion),
		TTF:     ttf,
		face:    face,
	}, nil
}

// Entries of the name table, as the OpenType specification numbers them.
const (
	nameVersion    tables.NameID = 5
	namePostScript tables.NameID = 6
)

func readNames(loader *opentype.Loader) (tables.Name, error) {
	raw, err := loader.RawTable(opentype.MustNewTag("name"))
	if err != nil {
		return tables.Name{}, fmt.Errorf("the font does not say its name and version: %w", err)
	}
	names, _, err := tables.ParseName(raw)
	if err != nil {
		return tables.Name{}, fmt.Errorf("the font's name and version can not be read: %w", err)
	}
	return names, nil
}
