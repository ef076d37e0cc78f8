package setting

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// A SignText is what a sign says.
type SignText struct {
	Legend  []string // the signal word, then the message
	Area    string
	Orders  []string // what to do and not to do
	Contact []string // whom to ask for
	Marks   []template.HTML
}

// Papers are what a sign may be printed on.
type Papers struct {
	Usual  string
	Larger []string // that the programme has
}

// Posters are legends over several sheets that were set already; signs of a job have the same. A nil map remembers nothing.
type Posters map[string]poster

// Sign lays a sign out on the least paper on which its legend reaches a reader who stands a number of ft away: one sheet of the usual paper; larger paper, where there is some; the
// usual paper several times. When none reaches, it takes the one that reaches farthest.
func (known Posters) Sign(cast fit.Cast, view templates.Face, text SignText, papers Papers, feet float64) (Design, error) {
	best, err := oneSheet(cast, view, text, papers.Usual)
	if err != nil {
		return best, err
	}
	if far, ok := known.far(cast.Sign, text.Legend, papers, feet, best.Reach(fit.Good)); ok {
		best = Design{Paper: far.stock.String(), font: far.font, size: far.size, signal: far.signal}
		best.Sides, err = tiles(cast, view, text, far)
	}
	return best, err
}

// A Design is a sign laid out.
type Design struct {
	Sides        []templates.Face
	Paper        string // "letter", "letter x3"
	font         *fit.Font
	size, signal float64 // pt, of the message and of the signal word
}

// far is the first poster that reaches a number of feet, or the one that reaches farthest; it is not ok when none reaches farther than what there is.
func (known Posters) far(font *fit.Font, legend []string, papers Papers, feet, reached float64) (best poster, ok bool) {
	key := fmt.Sprint(font.Family, legend, papers, feet, reached)
	if best, is := known[key]; is {
		return best, best.font != nil
	}
	var texts []fit.Text
	for _, text := range legend {
		texts = append(texts, font.Text(text))
	}
	for _, s := range papers.stocks() {
		if reached >= feet {
			break
		}
		if p, ok := posterOf(font, texts, s, feet); ok && p.reach() > reached {
			best, reached = p, p.reach()
		}
	}
	if known != nil {
		known[key] = best
	}
	return best, best.font != nil
}

// Reach is how far away in ft the legend is read.
func (d Design) Reach(c fit.Conditions) float64 { return reach(d.font, d.size, d.signal, c) }

// MessageMM is the height of the letters of the message.
func (d Design) MessageMM() float64 { return d.font.LetterHeightMM(d.size) }

// SignalMM is the height of the letters of the signal word.
func (d Design) SignalMM() float64 { return d.font.LetterHeightMM(d.signal) }

// reach is how far away in ft a legend is read, from its type sizes in pt.
func reach(font *fit.Font, size, signal float64, c fit.Conditions) float64 {
	return fit.ReadingDistance(font.CapitalsMM(size), font.CapitalsMM(signal), c)
}

// oneSheet fits the legend, the name of the area, the orders and whom to ask for on one sheet.
func oneSheet(cast fit.Cast, view templates.Face, text SignText, paper string) (Design, error) {
	danger, err1 := fitted(cast.Sign, text.Legend[:1], templates.DangerBox)
	hazards, err2 := fitted(cast.Sign, text.Legend[1:], templates.HazardsBox)
	place, err3 := place(cast, text, templates.AreaBox, templates.OrdersBox, templates.ContactBox)
	place.Danger, place.Hazards = danger, hazards
	view.Sign = &place
	return Design{Sides: []templates.Face{view}, Paper: paper, font: cast.Sign, size: hazards.Size, signal: danger.Size},
		cmp.Or(inPart("the signal word", err1), inPart("the legend", err2), err3)
}

// place is what stands below the legend.
func place(cast fit.Cast, text SignText, area, orders, contact templates.Box) (templates.Sign, error) {
	head, err1 := fitted(cast.Bold, []string{text.Area}, area)
	orders.Min = cast.Bold.SizeOf(fit.MessageHeight(0, fit.Good))
	lines, err2 := setAt(cast.Bold, text.Orders, orders, orders.Leading)
	who, err3 := setAt(cast.Text, text.Contact, contact, contact.Leading)
	return templates.Sign{Area: head, Orders: lines, Contact: who, Marks: text.Marks},
		cmp.Or(inPart("the name of the area", err1), inPart("what to do and not to do", err2), inPart("whom to ask for", err3))
}

// inPart names the part of a sheet that does not fit.
func inPart(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: %w", name, err)
}

// A stock is some sheets of one paper.
type stock struct {
	paper   string
	parts   int
	compact bool // what stands below the legend is smaller, and the legend has more of the last sheet
}

func (s stock) String() string {
	if s.parts == 1 {
		return s.paper
	}
	return fmt.Sprintf("%s x%d", s.paper, s.parts)
}

// stocks are what a sign may take when one sheet of the usual paper is too small, in the order in which they are tried.
func (p Papers) stocks() []stock {
	var all []stock
	for _, paper := range p.Larger {
		for parts := 1; parts <= 2; parts++ {
			all = append(all, stock{paper, parts, false}, stock{paper, parts, true})
		}
	}
	for parts := 2; parts <= templates.TileMostParts; parts++ {
		all = append(all, stock{p.Usual, parts, false}, stock{p.Usual, parts, true})
	}
	return all
}

// tiles lays a poster out, each piece on a sheet of its own, and what stands below the legend on the last.
func tiles(cast fit.Cast, view templates.Face, text SignText, p poster) ([]templates.Face, error) {
	room := templates.TilePlaceOf(p.stock.compact)
	below, err := place(cast, text, room.Area, room.Orders, room.Contact)
	if err != nil {
		return nil, err
	}
	var sides []templates.Face
	for i := range p.stock.parts {
		tile := p.tile(i)
		tile.Compact = p.stock.compact
		if i == p.stock.parts-1 {
			tile.Place = &below
		}
		side := view
		side.Tile = &tile
		sides = append(sides, side)
	}
	return slices.Clip(sides), nil
}
