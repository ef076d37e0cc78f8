package locales

import (
	"errors"
	"fmt"
	"html"
	"maps"
	"regexp"
	"slices"
	"strings"
)

var placeholder = regexp.MustCompile(`\{\{\.([A-Z][A-Za-z0-9]*)\}\}`)

// placeholdersOf lists the placeholders of a text, sorted, each once.
func placeholdersOf(text string) []string {
	var names []string
	for _, m := range placeholder.FindAllStringSubmatch(text, -1) {
		names = append(names, m[1])
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// placeholders lists those of all forms together, sorted.
func (m message) placeholders() []string {
	return placeholdersOf(strings.Join(slices.Collect(maps.Values(m.forms)), " "))
}

// check reports everything wrong with a bundle, in the order of ids. The categories are the plural categories of its language.
func (b bundle) check(categories []string) error {
	var problems []error
	for _, id := range slices.Sorted(maps.Keys(b.messages)) {
		for _, problem := range b.messages[id].problems(categories) {
			problems = append(problems, fmt.Errorf("%s: %w", id, problem))
		}
	}
	return errors.Join(problems...)
}

func (m message) problems(categories []string) []error {
	var problems []error
	for _, category := range slices.Sorted(maps.Keys(m.forms)) {
		if err := checkText(m.forms[category]); err != nil {
			problems = append(problems, err)
		}
	}
	if m.counts {
		problems = append(problems, m.pluralProblems(categories)...)
	}
	return problems
}

func (m message) pluralProblems(categories []string) []error {
	var problems []error
	for _, category := range pluralCategories {
		_, written := m.forms[category]
		switch needed := slices.Contains(categories, category); {
		case needed && !written:
			problems = append(problems, fmt.Errorf("the plural form %q is missing; this language has %s", category, strings.Join(categories, ", ")))
		case written && !needed:
			problems = append(problems, fmt.Errorf("the plural form %q is never used; this language has %s", category, strings.Join(categories, ", ")))
		}
	}
	if len(m.placeholders()) == 0 {
		problems = append(problems, errors.New("it has plural forms, but no placeholder for the number"))
	}
	// "your home" may leave out the number that "your {{.Homes}} homes" has, and nothing else.
	if dropped := m.dropped(); len(dropped) > 1 {
		problems = append(problems, fmt.Errorf("its plural forms have different placeholders: %s are not in all of them", brackets(dropped)))
	}
	return problems
}

// dropped lists the placeholders that some form has and another leaves out.
func (m message) dropped() []string {
	return slices.DeleteFunc(m.placeholders(), func(name string) bool {
		for _, text := range m.forms {
			if !slices.Contains(placeholdersOf(text), name) {
				return false
			}
		}
		return true
	})
}

// checkText looks at one text as its author wrote it, then at what becomes of it.
func checkText(text string) error {
	bare := placeholder.ReplaceAllString(text, "")
	switch {
	case text == "":
		return errors.New("the text is empty")
	case strings.Contains(text, "<"):
		return errors.New(`there is "<" in the text; HTML is not allowed, use **strong** or [words](address)`)
	case strings.Contains(bare, "{{") || strings.Contains(bare, "}}"):
		return errors.New("a placeholder is not written like {{.Name}}: two braces, a full stop, a name with a capital, two braces")
	case strings.ContainsFunc(text, isMark):
		return errors.New("there is a private-use character (U+E000 to U+F8FF) in the text; take it out")
	}
	return checkRendered(placeholder.ReplaceAllString(text, mark(0)))
}

// checkRendered takes a text with marks in the place of values and makes sure that Markdown did what its author meant.
func checkRendered(marked string) error {
	rendered, err := render(marked)
	if err != nil {
		return err
	}
	for _, t := range tag.FindAllString(rendered, -1) {
		if t == "</p>" || t == "<p>" {
			return errors.New("there is an empty line in the text; a message is one paragraph")
		}
		if !ourTags.MatchString(t) {
			return fmt.Errorf("its Markdown becomes %s; only emphasis, links and line breaks are allowed", html.UnescapeString(t))
		}
	}
	words := tag.ReplaceAllString(rendered, "")
	switch {
	case strings.Count(words, mark(0)) != strings.Count(marked, mark(0)):
		return errors.New("a placeholder is inside the address of a link, where it cannot be filled; give the address as part of the value")
	case strings.Contains(words, "**"):
		return errors.New("** stays visible in the text; set it next to the words it stresses, with punctuation outside, as in **important**: this")
	}
	return nil
}
