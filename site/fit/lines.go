package fit

import (
	"math"
	"strings"
	"unicode/utf8"

	"github.com/go-text/typesetting/segmenter"
)

// Lines breaks the text into lines of at most the given width in pt, filling each before it starts the next, as a browser does. A word
// that is wider than that is a line of its own; [Font.Width] tells. An empty text has no lines.
func (f *Font) Lines(text string, size, width float64) []string {
	p := f.paragraph(text)
	return p.lines(p.filled(width / size))
}

// A paragraph is a text cut into pieces that no line break may cut. A piece keeps the space after it. Pieces are counted from 0;
// widths are multiples of the type size.
type paragraph struct {
	font   *Font
	text   string
	cuts   []int // offset of each piece in the text, and the end of the text
	widths map[span]float64
}

// A span is the pieces from one up to, but without, another.
type span struct{ from, to int }

func (f *Font) paragraph(text string) *paragraph {
	text = collapse(text)
	return &paragraph{font: f, text: text, cuts: cuts(text), widths: map[span]float64{}}
}

// cuts lists where lines may start, by Unicode Standard Annex #14, and the end of the text; for an empty text only that. At a soft hyphen
// no line may end, because a line is printed as it is and would lack the hyphen.
func cuts(text string) []int {
	var rules segmenter.Segmenter
	rules.Init([]rune(text))
	cuts, end := []int{0}, 0
	for pieces := rules.LineIterator(); pieces.Next(); {
		end += len(string(pieces.Line().Text))
		if end == len(text) || !strings.HasSuffix(text[:end], "\u00ad") {
			cuts = append(cuts, end)
		}
	}
	return cuts
}

func (p *paragraph) pieces() int { return len(p.cuts) - 1 }

// line is the text of the pieces, without the space at which it ends.
func (p *paragraph) line(s span) string {
	return strings.TrimSuffix(p.text[p.cuts[s.from]:p.cuts[s.to]], " ")
}

func (p *paragraph) lines(spans []span) []string {
	var lines []string
	for _, s := range spans {
		lines = append(lines, p.line(s))
	}
	return lines
}

// width is measured on the whole line, because letters kern across pieces, and kept, because Fit asks again at each size.
func (p *paragraph) width(s span) float64 {
	width, known := p.widths[s]
	if !known {
		width = p.font.ems(p.line(s))
		p.widths[s] = width
	}
	return width
}

// fits reports whether the pieces may be one line: they are narrow enough, or one piece that cannot be cut.
func (p *paragraph) fits(s span, width float64) bool { return s.to-s.from == 1 || p.width(s) <= width }

// filled are the fewest lines of at most the given width, each as full as can be.
func (p *paragraph) filled(width float64) []span {
	var lines []span
	for from := 0; from < p.pieces(); {
		line := span{from, from + 1}
		for line.to < p.pieces() && p.fits(span{from, line.to + 1}, width) {
			line.to++
		}
		lines = append(lines, line)
		from = line.to
	}
	return lines
}

// even are as many lines as filled has, with the least sum of squared widths: the widths add up to about the same however the lines
// break, so the sum is least when they are most alike. A break after punctuation outweighs a fifth of the square of an average line.
func (p *paragraph) even(width float64) []span {
	lines := p.filled(width)
	if len(lines) < 2 {
		return lines
	}
	ending := make([]setting, p.pieces()+1) // the best setting of the pieces before each, in the lines so far
	for i := range ending {
		ending[i].cost = math.Inf(1)
	}
	ending[0].cost = 0
	average := p.width(span{0, p.pieces()}) / float64(len(lines))
	for range lines {
		ending = p.addLine(ending, width, average*average/5)
	}
	if best := ending[p.pieces()]; best.lines != nil {
		return best.lines
	}
	return lines // a line grew narrower by a letter, so that bestLast gave up too early
}

// punctuated reports whether the text before a piece ends with punctuation that parts clauses, in any of our scripts.
func (p *paragraph) punctuated(piece int) bool {
	last, _ := utf8.DecodeLastRuneInString(p.line(span{0, piece}))
	return strings.ContainsRune(".,;:!?،؛؟。，、；：！？।", last)
}

// A setting is some first pieces of a paragraph set in lines; cost is the sum of their squared widths, infinite when there is none.
type setting struct {
	lines []span
	cost  float64
}

// addLine is the best settings with one line more.
func (p *paragraph) addLine(ending []setting, width, gain float64) []setting {
	longer := make([]setting, len(ending))
	for to := range longer {
		longer[to] = p.bestLast(ending, to, width)
		if to < p.pieces() && p.punctuated(to) {
			longer[to].cost -= gain
		}
	}
	return longer
}

// bestLast is the best setting whose last line ends before piece to. Lines are tried from the shortest, up to the first too wide.
func (p *paragraph) bestLast(ending []setting, to int, width float64) setting {
	best := setting{cost: math.Inf(1)}
	from := -1
	for i := to - 1; i >= 0 && p.fits(span{i, to}, width); i-- {
		w := p.width(span{i, to})
		if cost := ending[i].cost + w*w; cost < best.cost {
			best.cost, from = cost, i
		}
	}
	if from >= 0 {
		best.lines = append(append([]span{}, ending[from].lines...), span{from, to})
	}
	return best
}
