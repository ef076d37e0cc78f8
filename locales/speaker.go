package locales

import (
	"cmp"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"github.com/nicksnyder/go-i18n/v2/i18n"
	"golang.org/x/text/language"
)

//go:embed bundles/*.yaml
var bundles embed.FS

// coordinator names the bundle of the coordinator's sheet.
const coordinator = "coordinator"

// A Speaker speaks one language. It is safe for use by several goroutines.
type Speaker struct {
	tag      string
	locale   *locale
	about    about
	messages map[string]message
	chooser  *i18n.Localizer // chooses the plural form and fills placeholders
}

// Tags lists the languages that [Open] knows, sorted: "ar", "en", "es" and so on.
func Tags() []string {
	var tags []string
	for _, file := range bundleFiles() {
		if tag := strings.TrimSuffix(file, ".yaml"); tag != coordinator {
			tags = append(tags, tag)
		}
	}
	return tags
}

func bundleFiles() []string {
	entries, err := bundles.ReadDir("bundles")
	if err != nil {
		panic(err) // the folder is embedded
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// Open makes the speaker of a language, such as "vi". The folder own may hold <tag>.yaml with the programme's own wording of some messages; it may be nil.
// The error lists everything wrong with the texts, one problem a line.
func Open(tag string, own fs.FS) (*Speaker, error) {
	if !slices.Contains(Tags(), tag) {
		return nil, fmt.Errorf("there are no texts in the language %q; there are texts in %s", tag, strings.Join(Tags(), ", "))
	}
	return open(tag, ours(), tag+".yaml", own)
}

// OpenCoordinator makes the speaker of the coordinator's own sheet, which is in English alone.
func OpenCoordinator() (*Speaker, error) { return open("en", ours(), coordinator+".yaml", nil) }

func ours() fs.FS {
	files, err := fs.Sub(bundles, "bundles")
	if err != nil {
		panic(err) // the folder is embedded
	}
	return files
}

func open(tag string, ours fs.FS, file string, own fs.FS) (*Speaker, error) {
	l, found := table().Languages[tag]
	if !found {
		return nil, fmt.Errorf("nobody has said how dates and numbers are written in the language %q; add it to locales/gen/cldr.mjs", tag)
	}
	b, err := load(ours, file, l.Plurals)
	if err != nil {
		return nil, inFile(file, err)
	}
	if own != nil {
		if err := b.addOwn(own, file, l.Plurals); err != nil {
			return nil, inFile("your own "+file, err)
		}
	}
	chooser, err := newChooser(tag, b.messages)
	if err != nil {
		return nil, inFile(file, err)
	}
	return &Speaker{tag: tag, locale: l, about: b.about, messages: b.messages, chooser: chooser}, nil
}

// load reads a bundle and checks all of it.
func load(files fs.FS, file string, categories []string) (bundle, error) {
	b, err := readBundle(files, file)
	return b, errors.Join(err, b.check(categories))
}

// addOwn overlays the programme's own file, if it has one.
func (b *bundle) addOwn(own fs.FS, file string, categories []string) error {
	theirs, err := load(own, file, categories)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	return b.overlay(theirs)
}

// inFile puts the file before each line of an error that may hold several.
func inFile(file string, err error) error {
	joined, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return fmt.Errorf("%s: %w", file, err)
	}
	var lines []error
	for _, e := range joined.Unwrap() {
		lines = append(lines, inFile(file, e))
	}
	return errors.Join(lines...)
}

// newChooser makes a go-i18n bundle of this one language. Of several in one bundle, go-i18n would take the nearest when it lacks the one asked for.
func newChooser(tag string, messages map[string]message) (*i18n.Localizer, error) {
	parsed, err := language.Parse(tag)
	if err != nil {
		return nil, err
	}
	b := i18n.NewBundle(parsed)
	for id, m := range messages {
		if err := b.AddMessages(parsed, m.forGoI18n(id)); err != nil {
			return nil, err
		}
	}
	return i18n.NewLocalizer(b, tag), nil
}

// forGoI18n says the text of other where the language has no such form. go-i18n 2.7.0 has a later CLDR than our table, in which Vietnamese has
// one, for 0 and 1 (CLDR-14273), and it would not answer for want of that form. UTS 35 has other stand in for what is not there.
func (m message) forGoI18n(id string) *i18n.Message {
	form := func(category string) string { return cmp.Or(m.forms[category], m.forms[other]) }
	return &i18n.Message{ID: id, Zero: form("zero"), One: form("one"), Two: form("two"), Few: form("few"), Many: form("many"), Other: form(other)}
}

// Tag is the BCP 47 tag, such as "vi".
func (s *Speaker) Tag() string { return s.tag }

// Script is the ISO 15924 code of the script, such as "Latn", "Cyrl", "Arab" or "Hans".
func (s *Speaker) Script() string { return s.locale.Script }

// Direction is the direction of the script, "ltr" or "rtl".
func (s *Speaker) Direction() string { return s.locale.Direction }

// Autonym is what the language calls itself, as it stands alone in a list of languages: "Español".
func (s *Speaker) Autonym() string { return Alone(s.NameOf(s.tag)) }

// NameOf is the name in this language of the language with a tag, as inside a sentence: "inglés", and of zh-Hans "chino", as people speak it and
// whatever its script. A language that we have no name for is its tag.
func (s *Speaker) NameOf(tag string) string {
	if name, found := s.locale.Names[tag]; found {
		return name
	}
	return tag
}

// State says whether the texts have been checked.
func (s *Speaker) State() State { return s.about.state() }

// IDs lists the messages, sorted.
func (s *Speaker) IDs() []string { return slices.Sorted(maps.Keys(s.messages)) }

// Placeholders lists the values that a message needs, sorted; none for an unknown id.
func (s *Speaker) Placeholders(id string) []string { return s.messages[id].placeholders() }
