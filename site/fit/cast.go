package fit

import (
	"fmt"
	"slices"
	"sync"

	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
)

// A Cast is the fonts that set one language on the sheets of one job. Behind each stand others, for names in other scripts.
type Cast struct {
	Text *Font // regular
	Bold *Font // headlines
	Sign *Font // legends of signs: narrow where there is a narrow font
}

// Fonts are all fonts of the cast, each once.
func (c Cast) Fonts() []*Font {
	var all []*Font
	for _, f := range []*Font{c.Text, c.Bold, c.Sign} {
		for _, f := range append([]*Font{f}, f.behind...) {
			if !slices.ContainsFunc(all, func(g *Font) bool { return g.Family == f.Family && g.Weight == f.Weight }) {
				all = append(all, f)
			}
		}
	}
	return all
}

// Families are the font and those behind it, in the order in which a browser is to look for a character.
func (f *Font) Families() []string {
	names := []string{f.Family}
	for _, b := range f.behind {
		if !slices.Contains(names, b.Family) {
			names = append(names, b.Family)
		}
	}
	return names
}

// A Shelf has the fonts that sheets are set in: those in the program, and those of this computer, which it opens when a text needs them. It may be
// used by several goroutines at once.
type Shelf struct {
	read   func(path string) ([]byte, error)
	mu     sync.Mutex
	opened map[string][]*Font // by path; none for a file that is not there or cannot be read
}

// NewShelf reads files as os.ReadFile does.
func NewShelf(read func(path string) ([]byte, error)) *Shelf {
	return &Shelf{read: read, opened: map[string][]*Font{}}
}

// Cast finds the fonts for a language in a script, by its code in ISO 15924, and for names that may be in any script. The letters are all that
// texts of the language are written with. The error says which character no font has, and what to install.
func (s *Shelf) Cast(code, letters string, names []string) (Cast, error) {
	i := slices.IndexFunc(scripts, func(row script) bool { return row.code == code })
	if i < 0 {
		return Cast{}, fmt.Errorf("no font is known for the script %s", code)
	}
	own, err := s.find(scripts[i], letters)
	if err != nil {
		return Cast{}, err
	}
	behind := []trio{roboto()}
	for _, name := range names {
		for _, r := range name {
			if own.knows(r) || slices.ContainsFunc(behind, func(t trio) bool { return t.knows(r) }) {
				continue
			}
			more, err := s.findFor(r, name)
			if err != nil {
				return Cast{}, err
			}
			behind = append(behind, more)
		}
	}
	return cast(own, behind, scripts[i].measure), nil
}

func cast(own trio, behind []trio, m measure) Cast {
	var text, bold, sign []*Font
	for _, t := range behind {
		text, bold, sign = append(text, t.text), append(bold, t.bold), append(sign, t.sign)
	}
	return Cast{Text: own.text.with(m, text), Bold: own.bold.with(m, bold), Sign: own.sign.with(m, sign)}
}

func (t trio) knows(r rune) bool {
	return t.text.has(r) || harfbuzz.IsDefaultIgnorable(r) || isSpace(r)
}

// find gives the first fonts that have all letters of a script that a text has. Those in the program are taken as they are.
func (s *Shelf) find(row script, text string) (trio, error) {
	if row.inside != nil {
		return row.inside(), nil
	}
	missing := row.lettersOf(text)
	if len(missing) == 0 {
		return trio{}, fmt.Errorf("no letter of the script %s is in %q", row.code, text)
	}
	for _, family := range row.families {
		if own, ok := s.open(family); ok {
			if missing = own.missing(row.lettersOf(text)); len(missing) == 0 {
				return own, nil
			}
		}
	}
	return trio{}, fmt.Errorf("no font of this computer has %q (%U); install %s", missing[0], missing[0], row.install)
}

// findFor gives fonts for the script of a character of a name.
func (s *Shelf) findFor(r rune, name string) (trio, error) {
	for _, row := range scripts {
		if slices.Contains(row.letters, language.LookupScript(r)) {
			found, err := s.find(row, name)
			if err == nil && !found.knows(r) {
				err = fmt.Errorf("%s lacks %q (%U)", found.text.Family, r, r)
			}
			return found, inText(name, err)
		}
	}
	return trio{}, inText(name, fmt.Errorf("no font is known for %q (%U)", r, r))
}

func inText(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%q: %w; or write this in another script", name, err)
}

// lettersOf are the characters of a text that are of this script, each once.
func (row script) lettersOf(text string) []rune {
	var all []rune
	for _, r := range text {
		if slices.Contains(row.letters, language.LookupScript(r)) && !slices.Contains(all, r) {
			all = append(all, r)
		}
	}
	return all
}

// missing are the letters that one of the weights lacks.
func (t trio) missing(letters []rune) []rune {
	return slices.DeleteFunc(letters, func(r rune) bool { return t.text.has(r) && t.bold.has(r) })
}

// open gives the two weights of a family; the regular one serves for both where there is no bold one.
func (s *Shelf) open(f family) (trio, bool) {
	regular := nearest(s.file(f.regular), f.name, 400)
	if regular == nil {
		return trio{}, false
	}
	bold := nearest(s.file(f.bold), f.name, 700)
	if bold == nil {
		bold = regular
	}
	return trio{regular, bold, bold}, true
}

// nearest is the font of a family whose weight is nearest to the one that is wanted.
func nearest(fonts []*Font, family string, weight int) *Font {
	var best *Font
	for _, f := range fonts {
		if f.Family == family && (best == nil || away(f, weight) < away(best, weight)) {
			best = f
		}
	}
	return best
}

func away(f *Font, weight int) int { return max(f.Weight-weight, weight-f.Weight) }

func (s *Shelf) file(path string) []*Font {
	s.mu.Lock()
	defer s.mu.Unlock()
	fonts, known := s.opened[path]
	if known {
		return fonts
	}
	if data, err := s.read(path); err == nil {
		if fonts, err = loadAll(data); err != nil {
			fonts = nil
		}
	}
	s.opened[path] = fonts
	return fonts
}
