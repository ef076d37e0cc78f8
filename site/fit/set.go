package fit

// Set breaks the text into even lines of type of one size, and tells whether every line is narrow enough.
func (f *Font) Set(text string, size, width float64) (lines []string, fits bool) {
	p := f.paragraph(text)
	measure := width * (1 - spare) / size
	for _, line := range p.filled(measure) {
		if p.width(line) > measure {
			return nil, false
		}
	}
	return p.lines(p.even(measure)), true
}

// Leading is the line height as a multiple of the type size at which no ink of a line comes nearer to the ink of the next than the given clearance,
// also a multiple of the type size. It is 0 for a single line. Capitals with two accents, above others with a dot below, need much.
func (f *Font) Leading(lines []string, clearance float64) float64 {
	leading := 0.0
	for i := 1; i < len(lines); i++ {
		_, below := f.ink(lines[i-1])
		above, _ := f.ink(lines[i])
		leading = max(leading, below+above+clearance)
	}
	return leading
}

// Overhang is how far ink of a text stands out of its line above or below, as a multiple of the type size, when lines are so far apart.
func (f *Font) Overhang(text string, leading float64) float64 { return f.overhang(text, leading) }
