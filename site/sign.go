package site

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/templates"
)

// signText is what a sign says.
type signText struct {
	legend, orders, contact []string // legend: the signal word, then the message
	area                    string
	marks                   []notices.Mark
}

func (p press) signText(v *voice, face notices.Face, call templates.Call) signText {
	text := signText{area: strings.Join(v.places(face.Place), " "), contact: []string{call.AskFor, p.programme.Name, call.Speaks}, marks: face.Marks}
	for _, m := range face.Legend {
		text.legend = append(text.legend, v.plain(m))
	}
	for _, m := range face.Blocks[0].Lines {
		text.orders = append(text.orders, v.plain(m))
	}
	return text
}

// addSign lays a sign out on the least paper on which its legend reaches its reader: one sheet of the usual paper; larger paper, where the programme has
// it; the usual paper several times. When none reaches, it takes the one that reaches farthest.
func (p press) addSign(v *voice, sheet notices.Sheet, face notices.Face, view templates.Face, made *printing) error {
	text := p.signText(v, face, view.Call)
	if v.err != nil {
		return v.err
	}
	best, err := oneSheet(v.cast, view, text, made.paper)
	if err != nil {
		return err
	}
	if far, ok := p.farPoster(v.cast.Sign, text.legend, float64(sheet.ReadFrom), best.reach()); ok {
		best = design{paper: far.stock.String(), font: far.font, size: far.size, signal: far.signal}
		best.sides, err = tiles(v.cast, view, text, far)
	}
	made.sides, made.paper = best.sides, best.paper
	best.note(&made.record)
	return err
}

// A design is a sign laid out: type sizes in pt of message and signal word.
type design struct {
	sides        []templates.Face
	paper        string
	font         *fit.Font
	size, signal float64
}

// farPoster is the first poster that reaches so many feet, or the one that reaches farthest; it is not ok when none reaches farther than what there is.
func (p press) farPoster(font *fit.Font, legend []string, feet, reached float64) (best poster, ok bool) {
	key := fmt.Sprint(font.Family, legend, feet, reached)
	if best, known := p.posters[key]; known {
		return best, best.font != nil
	}
	var texts []fit.Text
	for _, text := range legend {
		texts = append(texts, font.Text(text))
	}
	for _, stock := range p.stocks() {
		if reached >= feet {
			break
		}
		if p, ok := posterOf(font, texts, stock, feet); ok && p.reach() > reached {
			best, reached = p, p.reach()
		}
	}
	p.posters[key] = best
	return best, best.font != nil
}

func (d design) reach() float64 { return reach(d.font, d.size, d.signal, fit.Good) }

// reach is how far away in ft a legend is read, from its type sizes in pt.
func reach(font *fit.Font, size, signal float64, c fit.Conditions) float64 {
	return fit.ReadingDistance(font.CapitalsMM(size), font.CapitalsMM(signal), c)
}

func (d design) note(face *record.Face) {
	face.ReadingDistanceFt, face.PoorDistanceFt = d.reach(), reach(d.font, d.size, d.signal, fit.Poor)
	face.CapHeightMM, face.SignalHeightMM = d.font.LetterHeightMM(d.size), d.font.LetterHeightMM(d.signal)
	face.Letters = d.font.Letters()
}

// oneSheet fits the legend, the name of the area, the orders and whom to ask for on one sheet.
func oneSheet(cast fit.Cast, view templates.Face, text signText, paper string) (design, error) {
	danger, err1 := fitted(cast.Sign, text.legend[:1], templates.DangerBox)
	hazards, err2 := fitted(cast.Sign, text.legend[1:], templates.HazardsBox)
	place, err3 := place(cast, text, templates.AreaBox, templates.OrdersBox, templates.ContactBox)
	place.Danger, place.Hazards = danger, hazards
	view.Sign = &place
	return design{sides: []templates.Face{view}, paper: paper, font: cast.Sign, size: hazards.Size, signal: danger.Size},
		cmp.Or(inPart("the signal word", err1), inPart("the legend", err2), err3)
}

// place is what stands below the legend.
func place(cast fit.Cast, text signText, area, orders, contact templates.Box) (templates.Sign, error) {
	head, err1 := fitted(cast.Bold, []string{text.area}, area)
	orders.Min = cast.Bold.SizeOf(fit.MessageHeight(0, fit.Good))
	lines, err2 := setAt(cast.Bold, text.orders, orders, orders.Leading)
	who, err3 := setAt(cast.Text, text.contact, contact, contact.Leading)
	return templates.Sign{Area: head, Orders: lines, Contact: who, Marks: marks(text.marks)},
		cmp.Or(inPart("the name of the area", err1), inPart("what to do and not to do", err2), inPart("whom to ask for", err3))
}

// inPart names the part of a sheet that does not fit.
func inPart(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: %w", name, err)
}

// A stock is so many sheets of one paper.
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
func (p press) stocks() []stock {
	var all []stock
	for _, paper := range p.programme.LargerPaper {
		for parts := 1; parts <= 2; parts++ {
			all = append(all, stock{string(paper), parts, false}, stock{string(paper), parts, true})
		}
	}
	for parts := 2; parts <= templates.TileMostParts; parts++ {
		all = append(all, stock{string(p.programme.Paper), parts, false}, stock{string(p.programme.Paper), parts, true})
	}
	return all
}

// tiles lays a poster out, each piece on a sheet of its own, and what stands below the legend on the last.
func tiles(cast fit.Cast, view templates.Face, text signText, p poster) ([]templates.Face, error) {
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
