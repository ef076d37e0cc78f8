package fit

// A Text is a text to set at several sizes. It keeps what was measured, and is not for several goroutines at once.
type Text struct{ p *paragraph }

// Text prepares a text.
func (f *Font) Text(text string) Text { return Text{f.paragraph(text)} }

// Set breaks the text into even lines of type of one size in pt, and tells whether every line is narrow enough.
func (t Text) Set(size, width float64) (lines []string, fits bool) {
	measure := width * (1 - Spare) / size
	for _, line := range t.p.filled(measure) {
		if t.p.width(line) > measure {
			return nil, false
		}
	}
	return t.p.lines(t.p.even(measure)), true
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
