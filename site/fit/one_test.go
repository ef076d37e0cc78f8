package fit

// One text alone in a box, as the tests of sizes and of lines look at it.

// A fitted text is set to fill its box: to be printed line by line, in the middle of the height of the box.
type fitted struct {
	size      float64 // pt, a multiple of 0.25
	lines     []string
	height    float64 // pt, of all lines at the leading of the box
	capHeight float64 // mm, of the capitals
}

// fit sets the text in even lines at the largest size at which it fits the box. It is an error when it does not fit at the smallest size
// of the box, and when the font lacks a character.
func (f *Font) fit(text string, box Box) (fitted, error) {
	size, lines, err := f.FitAll([]string{text}, box, 0)
	if err != nil {
		return fitted{}, err
	}
	height := float64(len(lines[0])) * box.Leading * size
	return fitted{size: size, lines: lines[0], height: height, capHeight: f.LetterHeightMM(size)}, nil
}

// balanced breaks the text into as many lines as [Font.Lines] does, as even in width as can be, and rather after a comma or a full stop than between
// words that belong together.
func (f *Font) balanced(text string, size, width float64) []string {
	p := f.paragraph(text)
	return p.lines(p.even(width / size))
}
