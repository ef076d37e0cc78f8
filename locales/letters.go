package locales

import (
	"maps"
	"slices"
	"strings"
)

// Letters are all characters that texts, dates and lists of the language are written with, each once, sorted: whoever prints it needs a font that has them.
func (s *Speaker) Letters() string {
	l := s.locale
	texts := slices.Concat([]string{l.List.Two, l.List.Start, l.List.Middle, l.List.End, l.Comma, l.Colon, l.Through}, l.Months[:], l.Weekdays[:], l.AMPM[:], slices.Collect(maps.Values(l.Names)))
	for _, m := range s.messages {
		texts = append(texts, slices.Collect(maps.Values(m.forms))...)
	}
	letters := []rune(strings.Join(texts, ""))
	slices.Sort(letters)
	return string(slices.Compact(letters))
}
