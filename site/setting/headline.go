package setting

import (
	"strings"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// clearance is between the ink of two lines, as a multiple of the type size.
const clearance = 0.05

// Headline sets a headline in a box of the layout. Part is how the error calls it.
func Headline(font *fit.Font, text string, box templates.Box, part string) (templates.Fitted, error) {
	set, err := fitted(font, []string{text}, box)
	return set, inPart(part, err)
}

// fitted sets large texts in a box of the layout. Where ink of one line would come too near to that of the next, as between Vietnamese capitals with two accents
// or in Arabic, lines stand farther apart than the box says.
func fitted(font *fit.Font, texts []string, box templates.Box) (templates.Fitted, error) {
	leading := box.Leading
	for {
		set, err := setAt(font, texts, box, leading)
		if err != nil || apart(font, set) <= leading+1e-9 {
			return set, err
		}
		leading = apart(font, set) // more, so that this ends
	}
}

// setAt sets texts in lines that are so far apart, as a multiple of the type size.
func setAt(font *fit.Font, texts []string, box templates.Box, leading float64) (templates.Fitted, error) {
	size, lines, err := font.FitAll(texts, fit.Box{
		Width: fit.Points(box.Width), Height: fit.Points(box.Height), Leading: leading, Min: box.Min, Max: box.Max,
	}, box.Gap)
	edge := font.Overhang(strings.Join(texts, " "), leading) * size
	return templates.Fitted{Size: size, Leading: leading, Gap: box.Gap, Edge: edge, Texts: lines}, err
}

// apart is the leading that the lines need.
func apart(font *fit.Font, set templates.Fitted) (leading float64) {
	last := ""
	for _, lines := range set.Texts {
		leading = max(leading, font.Leading(lines, clearance))
		if last != "" {
			leading = max(leading, font.Leading([]string{last, lines[0]}, clearance)-set.Gap)
		}
		last = lines[len(lines)-1]
	}
	return leading
}
