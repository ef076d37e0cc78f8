package site

import (
	"slices"
	"strings"
	"unicode"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// fittedNames sets lines with names in a box. A name may be in a script that the font lacks; a browser then draws it in another font. So each
// character of it is measured as the widest letter, and put back into its line.
func fittedNames(font *fit.Font, texts []string, box templates.Box) (templates.Fitted, error) {
	var measured []string
	for _, text := range texts {
		measured = append(measured, widened(font, text))
	}
	view, err := fitted(font, measured, box)
	for i, lines := range view.Texts {
		view.Texts[i] = putBack(lines, texts[i])
	}
	return view, err
}

// widened has a W for each character that the font lacks.
func widened(font *fit.Font, text string) string {
	missing := font.Missing(text)
	return strings.Map(func(r rune) rune {
		if slices.Contains(missing, r) {
			return 'W'
		}
		return r
	}, text)
}

// putBack fills lines with the characters of the text, as many as each has. Spaces at the end of a line are in none.
func putBack(lines []string, text string) []string {
	rest := []rune(strings.Join(strings.Fields(text), " "))
	var filled []string
	for _, line := range lines {
		for len(rest) > 0 && unicode.IsSpace(rest[0]) {
			rest = rest[1:]
		}
		n := min(len([]rune(line)), len(rest))
		filled = append(filled, string(rest[:n]))
		rest = rest[n:]
	}
	return filled
}
