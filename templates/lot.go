package templates

import (
	"fmt"
	"html/template"
	"math"
	"strings"
	"unicode/utf8"
)

// A Lot is a plan drawing. Lengths are in ft; Y grows away from the street.
type Lot struct {
	House  Plot      `json:"house"`
	Number string    `json:"number"` // of the house; "" on pages
	Walls  []Wall    `json:"walls"`  // worked on
	Reach  float64   `json:"reach"`
	Homes  []LotHome `json:"homes"`
}

// A Plot is a rectangle.
type Plot struct {
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
	Width float64 `json:"width"`
	Depth float64 `json:"depth"`
}

// A Wall is a line.
type Wall struct {
	FromX float64 `json:"from_x"`
	FromY float64 `json:"from_y"`
	ToX   float64 `json:"to_x"`
	ToY   float64 `json:"to_y"`
}

// A LotHome is a neighbour's home with its number; Facing is drawn when it is marked.
type LotHome struct {
	Plot   Plot   `json:"plot"`
	Number string `json:"number"`
	Facing Wall   `json:"facing"`
	Marked bool   `json:"marked"`
	Guess  bool   `json:"guess"` // its distance was not measured: drawn with a broken line
}

// How the lines of a drawing are told apart, without colour or grey. A reader's side is thick, a worked wall is striped and thicker, and the reach is a thin
// broken line. Lengths are ft, so that a sample beside a caption, drawn at the same scale, has the same line.
const (
	sideLine  = `class="side" stroke-width="3.2"`
	workLine  = `class="work" stroke-width="3.6" stroke-dasharray="1.8 1.2"`
	reachLine = `class="reach" stroke-width=".7" stroke-dasharray="2.4 2"`
)

// SVG draws the lot: the house and its neighbours by number, worked walls striped, the reach around them as a broken outline, marked sides thick. It has no
// ids and no style of its own, so that several can stand in one page with a strict policy. A caption beside it says what it shows. House numbers are at
// least a given number of ft high as type; one that is too wide for its plot is left out.
func (l Lot) SVG(leastNumber float64) template.HTML {
	var out strings.Builder
	box := l.frame()
	top := box.Y + box.Depth
	y := func(v float64) float64 { return top - v } // SVG counts downwards
	fmt.Fprintf(&out, `<svg viewBox="%s 0 %s %s" aria-hidden="true" focusable="false">`, ft(box.X), ft(box.Width), ft(box.Depth))
	for _, w := range l.Walls {
		l.drawReach(&out, y, w, l.Reach, `stroke="#fff" stroke-width="1"`) // dashes of two outlines would run together where they meet
		l.drawReach(&out, y, w, l.Reach, `stroke="#000" `+reachLine)
	}
	for _, w := range l.Walls { // hides what lies inside
		l.drawReach(&out, y, w, l.Reach-0.5, `stroke="none"`)
	}
	for _, h := range l.Homes {
		h.draw(&out, y, leastNumber)
	}
	drawPlot(&out, y, l.House, `stroke-width="1.2"`)
	drawNumber(&out, y, l.House, l.Number, leastNumber)
	for _, line := range []string{`stroke="#fff" stroke-width="3.6"`, `stroke="#000" ` + workLine} { // no outline between the stripes
		for _, w := range l.Walls {
			drawWall(&out, y, w, line)
		}
	}
	out.WriteString("</svg>")
	return template.HTML(out.String())
}

// A Sample is a piece of a line of a drawing, to stand before its caption.
type Sample string

// The lines that a caption explains.
const (
	SampleSide  Sample = sideLine
	SampleWork  Sample = workLine
	SampleReach Sample = reachLine
)

// SVG draws the sample in a place of a given size in ft.
func (s Sample) SVG(width, height float64) template.HTML {
	return template.HTML(fmt.Sprintf(`<svg viewBox="0 0 %[1]s %[2]s" aria-hidden="true" focusable="false"><path d="M0 %[3]sL%[1]s %[3]s" fill="none" stroke="#000" %[4]s/></svg>`,
		ft(width), ft(height), ft(height/2), s))
}

func (l Lot) drawReach(out *strings.Builder, y func(float64) float64, w Wall, reach float64, line string) {
	x0, x1 := min(w.FromX, w.ToX)-reach, max(w.FromX, w.ToX)+reach
	y0, y1 := y(max(w.FromY, w.ToY))-reach, y(min(w.FromY, w.ToY))+reach
	fmt.Fprintf(out, `<rect x="%s" y="%s" width="%s" height="%s" rx="%s" fill="#fff" %s/>`, ft(x0), ft(y0), ft(x1-x0), ft(y1-y0), ft(reach), line)
}

func (h LotHome) draw(out *strings.Builder, y func(float64) float64, leastNumber float64) {
	line := `stroke-width=".7"`
	if h.Guess {
		line += ` stroke-dasharray="1.2 1.2"`
	}
	drawPlot(out, y, h.Plot, line)
	drawNumber(out, y, h.Plot, h.Number, leastNumber)
	if h.Marked {
		drawWall(out, y, h.Facing, `stroke="#000" `+sideLine)
	}
}

func drawPlot(out *strings.Builder, y func(float64) float64, p Plot, line string) {
	fmt.Fprintf(out, `<rect x="%s" y="%s" width="%s" height="%s" fill="#fff" stroke="#000" %s/>`, ft(p.X), ft(y(p.Y+p.Depth)), ft(p.Width), ft(p.Depth), line)
}

func drawNumber(out *strings.Builder, y func(float64) float64, p Plot, number string, least float64) {
	const largest, narrow = 9, 1.75 // ft; type that fills a plot of 1 ft with one digit
	widest := narrow * p.Width / float64(max(1, utf8.RuneCountInString(number)))
	if number == "" || widest < least {
		return
	}
	size := max(math.Ceil(least*10)/10, min(largest, widest))
	fmt.Fprintf(out, `<text x="%s" y="%s" font-family="'Roboto Condensed', sans-serif" font-size="%s" font-weight="700" text-anchor="middle" fill="#000">%s</text>`,
		ft(p.X+p.Width/2), ft(y(p.Y+p.Depth/2)+size/3), ft(size), template.HTMLEscapeString(number))
}

func drawWall(out *strings.Builder, y func(float64) float64, w Wall, line string) {
	fmt.Fprintf(out, `<path d="M%s %sL%s %s" fill="none" %s/>`, ft(w.FromX), ft(y(w.FromY)), ft(w.ToX), ft(y(w.ToY)), line)
}

// Scale is how many mm a ft of the drawing takes when it fills a place of a given size in mm, and the size in mm that it then has.
func (l Lot) Scale(width, height float64) (scale, wide, high float64) {
	box := l.frame()
	scale = min(width/box.Width, height/box.Depth)
	return scale, scale * box.Width, scale * box.Depth
}

// frame is the rectangle around everything, with some air.
func (l Lot) frame() Plot {
	const air = 3
	x0, y0, x1, y1 := l.House.X, l.House.Y, l.House.X+l.House.Width, l.House.Y+l.House.Depth
	grow := func(p Plot) {
		x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X+p.Width), max(y1, p.Y+p.Depth)
	}
	for _, h := range l.Homes {
		grow(h.Plot)
	}
	for _, w := range l.Walls {
		grow(Plot{min(w.FromX, w.ToX) - l.Reach, min(w.FromY, w.ToY) - l.Reach, math.Abs(w.ToX-w.FromX) + 2*l.Reach, math.Abs(w.ToY-w.FromY) + 2*l.Reach})
	}
	return Plot{x0 - air, y0 - air, x1 - x0 + 2*air, y1 - y0 + 2*air}
}

// ft writes a length without needless decimals.
func ft(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }
