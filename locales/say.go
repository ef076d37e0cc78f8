package locales

import (
	"errors"
	"fmt"
	"html"
	"html/template"
	"maps"
	"slices"
	"strings"

	"github.com/nicksnyder/go-i18n/v2/i18n"
	parser "github.com/nicksnyder/go-i18n/v2/i18n/template"
)

// Text is a message as plain text, for headlines and alt text, with each value isolated where that matters. It is an error if the message has Markdown, if a value is missing, or if there is
// one too many.
func (s *Speaker) Text(id string, values map[string]Value) (string, error) {
	marked, err := s.marked(id, values)
	if err != nil {
		return "", err
	}
	rendered, err := render(marked)
	if err != nil {
		return "", s.problem(id, err)
	}
	if html.UnescapeString(rendered) != marked {
		return "", s.problem(id, fmt.Errorf("it has Markdown, but is used as plain text; take the Markdown out of %q", marked))
	}
	return s.unmark(marked, values, func(v Value) string { return s.Isolated(v.text) }), nil
}

// HTML is a message as inline HTML, without a paragraph around it. Each value is escaped and set in a bdi element. It is an error if a value
// is missing, or if there is one too many.
func (s *Speaker) HTML(id string, values map[string]Value) (template.HTML, error) {
	marked, err := s.marked(id, values)
	if err != nil {
		return "", err
	}
	rendered, err := render(marked)
	if err != nil {
		return "", s.problem(id, err)
	}
	return template.HTML(s.unmark(rendered, values, Value.html)), nil
}

// strictly makes go-i18n refuse a missing value instead of printing "<no value>".
var strictly = &parser.TextParser{Option: "missingkey=error"}

// marked is the text of a message with marks in the place of values: mark(0) for the first name in sorted order, and so on.
func (s *Speaker) marked(id string, values map[string]Value) (string, error) {
	m, found := s.messages[id]
	if !found {
		return "", s.problem(id, errors.New("there is no such message"))
	}
	count, err := m.checkValues(values)
	if err != nil {
		return "", s.problem(id, err)
	}
	marks := map[string]string{}
	for i, name := range names(values) {
		marks[name] = mark(i)
	}
	text, err := s.chooser.Localize(&i18n.LocalizeConfig{MessageID: id, PluralCount: count, TemplateData: marks, TemplateParser: strictly})
	if err != nil {
		return "", s.problem(id, err)
	}
	return text, nil
}

// unmark puts the values in, all at once: a mark inside a value stays what it is.
func (s *Speaker) unmark(text string, values map[string]Value, show func(Value) string) string {
	var pairs []string
	for i, name := range names(values) {
		v := values[name]
		if v.counts {
			v.text = s.number(float64(v.number))
		}
		pairs = append(pairs, mark(i), show(v))
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// checkValues compares values with what the message needs. It returns the number that chooses the plural form, or nil for a message without forms.
func (m message) checkValues(values map[string]Value) (any, error) {
	if want, got := m.placeholders(), names(values); !slices.Equal(want, got) {
		return nil, fmt.Errorf("it needs the values %s, but was given %s", brackets(want), brackets(got))
	}
	for name, v := range values {
		if err := v.check(); err != nil {
			return nil, fmt.Errorf("%s: %w", brackets([]string{name}), err)
		}
	}
	if !m.counts {
		return nil, nil
	}
	return m.count(values)
}

// count finds the one number among the values. A form may leave out that one alone.
func (m message) count(values map[string]Value) (any, error) {
	counting := slices.DeleteFunc(names(values), func(name string) bool { return !values[name].counts })
	if len(counting) != 1 {
		return nil, fmt.Errorf("it has plural forms, so it needs one number to choose by; it was given %d", len(counting))
	}
	if dropped := m.dropped(); len(dropped) == 1 && dropped[0] != counting[0] {
		return nil, fmt.Errorf("the number is %s, but a plural form leaves out %s", brackets(counting), brackets(dropped))
	}
	return values[counting[0]].number, nil
}

func names(values map[string]Value) []string { return slices.Sorted(maps.Keys(values)) }

func (s *Speaker) problem(id string, err error) error {
	return fmt.Errorf("message %s (%s): %w", id, s.tag, err)
}
