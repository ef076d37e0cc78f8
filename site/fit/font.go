package fit

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"sync"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/font/opentype/tables"
	"github.com/go-text/typesetting/shaping"
)

// A Font is one printing font, or, when it comes from a [Cast], one with others behind it that have what it lacks. Its methods may be called from
// several goroutines at once.
type Font struct {
	Family  string // "Roboto Condensed", as CSS calls it
	Weight  int    // 400 or 700, as CSS counts it
	File    string // "RobotoCondensed-Bold.ttf"
	Version string // as the font file says: "Version 2.138; 2017"
	TTF     []byte // the file, perhaps a collection of fonts; not to be changed
	inside  bool   // in the program; others are fonts of this computer, which a browser finds by their family

	face    *font.Face
	behind  []*Font
	measure measure

	measured  sync.Map   // widths by text
	mu        sync.Mutex // guards what shaping keeps between calls
	segmenter shaping.Segmenter
	shaper    shaping.HarfbuzzShaper
}

// Regular is Roboto, for text.
func robotoRegular() *Font { return regular() }

// Bold is Roboto Bold, for headlines and signs.
func robotoBold() *Font { return bold() }

// Condensed is Roboto Condensed Bold, for signs whose words are long.
func robotoCondensed() *Font { return condensed() }

var (
	regular   = sync.OnceValue(func() *Font { return mustLoad("Roboto-Regular.ttf") })
	bold      = sync.OnceValue(func() *Font { return mustLoad("Roboto-Bold.ttf") })
	condensed = sync.OnceValue(func() *Font { return mustLoad("RobotoCondensed-Bold.ttf") })

	arabicRegular = sync.OnceValue(func() *Font { return mustLoad("NotoSansArabic-Regular.ttf") })
	arabicBold    = sync.OnceValue(func() *Font { return mustLoad("NotoSansArabic-Bold.ttf") })
)

// inside lists the fonts in the program.
func Inside() []*Font {
	return []*Font{robotoRegular(), robotoBold(), robotoCondensed(), arabicRegular(), arabicBold()}
}

// SHA256 is the digest of the font file, in lower-case hexadecimal digits.
func (f *Font) SHA256() string {
	sum := sha256.Sum256(f.TTF)
	return hex.EncodeToString(sum[:])
}

// extents are the font's own ascent and descent, both positive, as multiples of the type size.
func (f *Font) extents() (ascent, descent float64) {
	extents, _ := f.face.FontHExtents() // load has seen that they are there
	em := float64(f.face.Upem())
	return float64(extents.Ascender) / em, -float64(extents.Descender) / em
}

// mustLoad panics when an embedded font cannot be read: the program was built wrongly.
func mustLoad(file string) *Font {
	f, err := load(embedded(file))
	if err != nil {
		panic(err)
	}
	return f
}

func load(ttf []byte) (*Font, error) {
	all, err := loadAll(ttf)
	if err != nil {
		return nil, err
	}
	all[0].inside = true
	return all[0], nil
}

// loadAll loads a font file, or all fonts of a collection in the order of the file.
func loadAll(data []byte) ([]*Font, error) {
	loaders, err := opentype.NewLoaders(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("not a font file that can be read: %w", err)
	}
	var all []*Font
	for _, loader := range loaders {
		f, err := loadOne(loader)
		if err != nil {
			return nil, err
		}
		f.TTF = data
		all = append(all, f)
	}
	return all, nil
}

func loadOne(loader *opentype.Loader) (*Font, error) {
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
		face:    face,
		measure: capitals,
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
		return tables.Name{}, fmt.Errorf("the font's name and version cannot be read: %w", err)
	}
	return names, nil
}
