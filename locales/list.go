package locales

import "strings"

// A listPattern joins items two by two, from the last to the first: UTS 35, part 2, "List Patterns".
type listPattern struct {
	Two    string `json:"two"`
	Start  string `json:"start"`
	Middle string `json:"middle"`
	End    string `json:"end"`
}

// List joins items as in a sentence: "a, b, and c". No items give "".
func (s *Speaker) List(items []string) string {
	switch len(items) {
	case 0:
		return ""
	case 1:
		return items[0]
	case 2:
		return join(s.locale.List.Two, items[0], items[1])
	}
	last := len(items) - 1
	text := join(s.locale.List.End, items[last-1], items[last])
	for i := last - 2; i > 0; i-- {
		text = join(s.locale.List.Middle, items[i], text)
	}
	return join(s.locale.List.Start, items[0], text)
}

func join(pattern, before, after string) string {
	if pattern == "{0} y {1}" && soundsLikeI(after) {
		pattern = "{0} e {1}"
	}
	return strings.NewReplacer("{0}", before, "{1}", after).Replace(pattern)
}

// soundsLikeI is the Spanish rule that turns "y" into "e": "español e inglés", "agua e hilo", but "agua y hielo". CLDR has no place for it;
// ICU has it in code (listformatter.cpp, from memory), and the test compares the two.
func soundsLikeI(word string) bool {
	word = strings.ToLower(word)
	if h, ok := strings.CutPrefix(word, "hi"); ok {
		return !strings.HasPrefix(h, "a") && !strings.HasPrefix(h, "e")
	}
	return strings.HasPrefix(word, "i")
}
