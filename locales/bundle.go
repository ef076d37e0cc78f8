package locales

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"github.com/goccy/go-yaml"
)

// other is the plural category that every language has. A message that does not count has its text there.
const other = "other"

var pluralCategories = []string{"zero", "one", "two", "few", "many", other}

// A message is one text, or one for each plural category of its language.
type message struct {
	forms  map[string]string // by plural category
	counts bool              // written as plural forms
}

// A bundle is one bundle file: messages by id.
type bundle struct {
	about    about
	messages map[string]message
}

// readBundle reads a file and checks what can be checked without knowing the language.
// Messages are not read by go-i18n: it takes ids such as "description" and "hash" for remarks and drops them without a word.
func readBundle(files fs.FS, name string) (bundle, error) {
	b := bundle{messages: map[string]message{}}
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return b, err
	}
	sections, err := decode(string(text))
	if err != nil {
		return b, err
	}
	if b.about, err = readAbout(sections["about"]); err != nil {
		return b, err
	}
	delete(sections, "about")
	return b, b.collect("", sections)
}

// decode reads the one document of a YAML file into sections by key.
func decode(text string) (map[string]any, error) {
	var file any
	documents := yaml.NewDecoder(strings.NewReader(text))
	if err := documents.Decode(&file); errors.Is(err, io.EOF) {
		return nil, errors.New("the file is empty; begin it with about: {state: draft}")
	} else if err != nil {
		return nil, err
	}
	if err := documents.Decode(new(any)); !errors.Is(err, io.EOF) {
		return nil, errors.New("a line of three hyphens starts a second document, which would be ignored; take it out")
	}
	sections, ok := file.(map[string]any)
	if !ok {
		return nil, errors.New("the file does not hold messages by name; begin it with about: {state: draft}")
	}
	return sections, nil
}

// collect adds the messages of a section whose ids start with prefix.
func (b *bundle) collect(prefix string, section map[string]any) error {
	var problems []error
	for _, key := range slices.Sorted(maps.Keys(section)) {
		id := prefix + key
		switch v := section[key].(type) {
		case string:
			b.messages[id] = message{forms: map[string]string{other: strings.TrimSpace(v)}}
		case map[string]any:
			if forms, ok := pluralForms(v); ok {
				b.messages[id] = message{forms: forms, counts: true}
			} else {
				problems = append(problems, b.collect(id+".", v))
			}
		case nil:
			problems = append(problems, fmt.Errorf("%s: there is no text", id))
		default:
			problems = append(problems, fmt.Errorf("%s: %v is no text; put it in quotes", id, v))
		}
	}
	return errors.Join(problems...)
}

// pluralForms reports whether a section is the forms of one message: all its keys are plural categories, and all its entries texts.
func pluralForms(section map[string]any) (map[string]string, bool) {
	forms := map[string]string{}
	for key, v := range section {
		text, isText := v.(string)
		if !isText || !slices.Contains(pluralCategories, key) {
			return nil, false
		}
		forms[key] = strings.TrimSpace(text)
	}
	return forms, len(forms) > 0
}

// overlay puts the programme's own messages in the place of ours. An own message must keep the placeholders: a letter whose own wording has
// lost the phone number is a mistake.
func (b *bundle) overlay(own bundle) error {
	var problems []error
	for _, id := range slices.Sorted(maps.Keys(own.messages)) {
		ours, found := b.messages[id]
		theirs := own.messages[id]
		switch {
		case !found:
			problems = append(problems, fmt.Errorf("%s: there is no such message to say otherwise; look for the id in our file", id))
		case ours.counts != theirs.counts:
			problems = append(problems, fmt.Errorf("%s: one of our text and this one has plural forms and the other has none; write it as ours is", id))
		case !slices.Equal(ours.placeholders(), theirs.placeholders()):
			problems = append(problems, fmt.Errorf("%s: it has the placeholders %s, but must have %s", id, brackets(theirs.placeholders()), brackets(ours.placeholders())))
		}
		b.messages[id] = theirs
	}
	b.about = own.about
	return errors.Join(problems...)
}

// brackets shows placeholders as they are written.
func brackets(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	return "{{." + strings.Join(names, "}}, {{.") + "}}"
}
