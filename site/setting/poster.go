package setting

import (
	"slices"
	"sort"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// A poster is a legend over several sheets, one below the other. No line of it crosses from one sheet to the next, so that a join that is a little
// off harms no letter.
type poster struct {
	stock        stock
	font         *fit.Font
	size, signal float64 // pt, of the message and of the signal word
	leading      float64 // of the message, as a multiple of the type size
	danger       []string
	pieces       [][]posterLine // of each sheet that has a piece of the legend
}

// A posterLine is a line of one of the texts of the message, which are counted from 0.
type posterLine struct {
	text int
	line string
	edge float64 // pt that its accents need above it or below it, at the edge of a sheet
}

func (p poster) reach() float64 { return reach(p.font, p.size, p.signal, fit.Good) }

// posterOf sets a legend as large as the sheets allow. It leaves the texts of the message whole when they then reach so many ft; otherwise one text may
// begin on one sheet and end on the next. It is not ok when there is no such poster.
func posterOf(font *fit.Font, legend []fit.Text, s stock, feet float64) (poster, bool) {
	whole, ok := largest(font, legend, s, feet, true)
	if ok && whole.reach() >= feet {
		return whole, true
	}
	split, ok2 := largest(font, legend, s, feet, false)
	if ok2 && (!ok || split.reach() > whole.reach()) {
		return split, true
	}
	return whole, ok
}

// largest finds the largest size that fits. A signal word that goes on two lines at some size takes more room than it does at a larger one, so that the
// search may stop early; the size that is needed is therefore tried as well.
func largest(font *fit.Font, legend []fit.Text, s stock, feet float64, whole bool) (poster, bool) {
	steps := int(templates.TileLargest / fit.Step)
	first := sort.Search(steps, func(i int) bool {
		_, ok := posterAt(font, legend, s, float64(steps-i)*fit.Step, whole)
		return ok
	})
	size := float64(steps-first) * fit.Step
	if needed := font.SizeOf(fit.MessageHeight(feet, fit.Good)); needed > size {
		if p, ok := posterAt(font, legend, s, needed, whole); ok {
			return p, true
		}
	}
	return posterAt(font, legend, s, size, whole)
}

// posterAt sets the message at one size and the signal word at twice that: distance / 300 and distance / 150.
func posterAt(font *fit.Font, legend []fit.Text, s stock, size float64, whole bool) (poster, bool) {
	p := poster{stock: s, font: font, size: size, signal: 2 * size}
	if size == 0 {
		return p, false
	}
	var ok bool
	if p.danger, ok = legend[0].Set(p.signal, fit.Points(templates.TileInside)); !ok {
		return p, false
	}
	var lines []posterLine
	p.leading = templates.TileLeading
	for i, text := range legend[1:] {
		set, ok := text.Set(size, fit.Points(templates.TileInside))
		if !ok {
			return p, false
		}
		for _, line := range set {
			lines = append(lines, posterLine{text: i, line: line})
		}
		p.leading = max(p.leading, font.Leading(set, templates.TileClearance))
	}
	for i := range lines {
		lines[i].edge = p.edge([]string{lines[i].line}, p.size, p.leading)
	}
	p.pieces, ok = p.cut(lines, whole)
	return p, ok
}

// cut shares the lines out: first so that few texts are cut, then so that the sheets are evenly filled.
func (p poster) cut(lines []posterLine, whole bool) (best [][]posterLine, ok bool) {
	rooms := p.rooms()
	leastSplits, leastWaste := len(lines)+1, 0.0
	var try func(pieces [][]posterLine, rest []posterLine, splits int, waste float64)
	try = func(pieces [][]posterLine, rest []posterLine, splits int, waste float64) {
		at := len(pieces)
		last := at == len(rooms)-1
		for n := 1; n <= len(rest); n++ {
			left := rooms[at] - p.height(rest[:n])
			if left < 0 {
				return
			}
			filled := append(slices.Clone(pieces), rest[:n])
			if n == len(rest) {
				if s, w := splits, waste+left*left; last && (s < leastSplits || s == leastSplits && w < leastWaste) {
					best, leastSplits, leastWaste = filled, s, w
				}
				return
			}
			cuts := 0
			if rest[n-1].text == rest[n].text {
				cuts = 1
			}
			if !last && !(whole && cuts > 0) {
				try(filled, rest[n:], splits+cuts, waste+left*left)
			}
		}
	}
	try(nil, lines, 0, 0)
	return best, best != nil
}

// rooms are the heights in pt that the sheets have for lines of the message.
func (p poster) rooms() []float64 {
	field := templates.TileFieldOf(p.stock.paper)
	parts := p.stock.parts
	lastField := field.Height - templates.TilePlaceOf(p.stock.compact).Height
	if lastField < 50 { // what stands below the legend has a sheet for itself
		parts, lastField = parts-1, field.Height
	}
	rooms := make([]float64, parts)
	for i := range rooms {
		rooms[i] = fit.Points(field.Height - 2*templates.TilePadding)
	}
	if parts > 0 {
		rooms[parts-1] = fit.Points(lastField - 2*templates.TilePadding - templates.TileFrame - templates.TileBelow)
		rooms[0] -= fit.Points(templates.TileFrame+2*templates.TilePadding) + p.dangerHeight()
	}
	return rooms
}

func (p poster) dangerHeight() float64 {
	l := p.dangerLines()
	return float64(len(p.danger))*l.Leading*l.Size + 2*l.Edge
}

func (p poster) dangerLines() templates.Lines {
	leading := max(templates.TileLeading, p.font.Leading(p.danger, templates.TileClearance))
	return templates.Lines{Size: p.signal, Leading: leading, Edge: p.edge(p.danger, p.signal, leading), Texts: [][]string{p.danger}}
}

// edge is the room in pt that accents need above and below lines.
func (p poster) edge(lines []string, size, leading float64) float64 {
	most := 0.0
	for _, line := range lines {
		most = max(most, p.font.Overhang(line, leading)*size)
	}
	return most
}

// height is what the lines take on a sheet, in pt.
func (p poster) height(lines []posterLine) float64 {
	texts := lines[len(lines)-1].text - lines[0].text + 1
	return float64(len(lines))*p.leading*p.size + float64(texts-1)*templates.TileGap*p.size + 2*mostEdge(lines)
}

func mostEdge(lines []posterLine) float64 {
	most := 0.0
	for _, l := range lines {
		most = max(most, l.edge)
	}
	return most
}

// tile is one sheet of the poster, counted from 0.
func (p poster) tile(i int) templates.Tile {
	tile := templates.Tile{Turned: templates.TileFieldOf(p.stock.paper).Turned, Part: i + 1, Parts: p.stock.parts}
	if i >= len(p.pieces) {
		return tile
	}
	tile.Opens, tile.Closes = i == 0, i == len(p.pieces)-1
	if tile.Opens {
		tile.Danger = p.dangerLines()
	}
	tile.Hazards = templates.Lines{Size: p.size, Leading: p.leading, Edge: mostEdge(p.pieces[i])}
	for j, l := range p.pieces[i] {
		if j == 0 || l.text != p.pieces[i][j-1].text {
			tile.Hazards.Texts = append(tile.Hazards.Texts, nil)
		}
		last := len(tile.Hazards.Texts) - 1
		tile.Hazards.Texts[last] = append(tile.Hazards.Texts[last], l.line)
	}
	return tile
}
