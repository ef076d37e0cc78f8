package site

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// signText is what a sign says.
type signText struct {
	legend, orders, contact []string // legend: the signal word, then the message
	area                    string
	marks                   []notices.Mark
}

func (p press) signText(v *voice, face notices.Face, call templates.Call) signText {
	text := signText{area: locales.Alone(v.plain(face.Head)), contact: []string{call.AskFor, p.programme.Name, call.Speaks}, marks: face.Marks}
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
	best, err := oneSheet(view, text, made.paper)
	if err != nil {
		return err
	}
	if far, ok := p.farPoster(text.legend, float64(sheet.ReadFrom), best.reach()); ok {
		best = design{paper: far.stock.String(), size: far.size, signal: far.signal}
		best.sides, err = tiles(view, text, far)
	}
	made.sides, made.paper = best.sides, best.paper
	best.note(&made.record)
	return err
}

// A design is a sign laid out: type sizes in pt of message and signal word.
type design struct {
	sides        []templates.Face
	paper        string
	size, signal float64
}

// farPoster is the first poster that reaches so many feet, or the one that reaches farthest; it is not ok when none reaches farther than what there is.
func (p press) farPoster(legend []string, feet, reached float64) (best poster, ok bool) {
	key := fmt.Sprint(legend, feet)
	if best, ok := p.posters[key]; ok {
		return best, best.reach() > reached
	}
	var texts []fit.Text
	for _, text := range legend {
		texts = append(texts, fit.Condensed().Text(text))
	}
	for _, stock := range p.stocks() {
		if max(best.reach(), reached) >= feet {
			break
		}
		if p, ok := posterOf(texts, stock, feet); ok && p.reach() > best.reach() {
			best = p
		}
	}
	p.posters[key] = best
	return best, best.reach() > reached
}

func (d design) reach() float64 { return reach(d.size, d.signal, fit.Good) }

// reach is how far away in ft a legend is read, from its type sizes in pt.
func reach(size, signal float64, c fit.Conditions) float64 {
	return fit.ReadingDistance(fit.Condensed().CapHeightMM(size), fit.Condensed().CapHeightMM(signal), c)
}

func (d design) note(record *FaceRecord) {
	record.ReadingDistanceFt, record.PoorDistanceFt = d.reach(), reach(d.size, d.signal, fit.Poor)
	record.CapHeightMM, record.SignalHeightMM = fit.Condensed().CapHeightMM(d.size), fit.Condensed().CapHeightMM(d.signal)
}

// oneSheet fits the legend, the name of the area, the orders and whom to ask for on one sheet.
func oneSheet(view templates.Face, text signText, paper string) (design, error) {
	danger, err1 := fitted(fit.Condensed(), text.legend[:1], templates.DangerBox)
	hazards, err2 := fitted(fit.Condensed(), text.legend[1:], templates.HazardsBox)
	place, err3 := place(text, templates.AreaBox, templates.OrdersBox, templates.ContactBox)
	place.Danger, place.Hazards = danger, hazards
	view.Sign = &place
	return design{sides: []templates.Face{view}, paper: paper, size: hazards.Size, signal: danger.Size}, cmp.Or(err1, err2, err3)
}

// place is what stands below the legend.
func place(text signText, area, orders, contact templates.Box) (templates.Sign, error) {
	head, err1 := fitted(fit.Bold(), []string{text.area}, area)
	lines, err2 := fitted(fit.Bold(), text.orders, orders)
	who, err3 := fittedNames(fit.Regular(), text.contact, contact)
	return templates.Sign{Area: head, Orders: lines, Contact: who, Marks: marks(text.marks)}, cmp.Or(err1, err2, err3)
}

// A stock is so many sheets of one paper.
type stock struct {
	paper string
	parts int
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
		all = append(all, stock{string(paper), 1}, stock{string(paper), 2})
	}
	for parts := 2; parts <= templates.TileMostParts; parts++ {
		all = append(all, stock{string(p.programme.Paper), parts})
	}
	return all
}

// tiles lays a poster out, each piece on a sheet of its own, and what stands below the legend on the last.
func tiles(view templates.Face, text signText, p poster) ([]templates.Face, error) {
	below, err := place(text, templates.TileAreaBox, templates.TileOrdersBox, templates.TileContactBox)
	if err != nil {
		return nil, err
	}
	var sides []templates.Face
	for i := range p.stock.parts {
		tile := p.tile(i)
		if i == p.stock.parts-1 {
			tile.Place = &below
		}
		side := view
		side.Tile = &tile
		sides = append(sides, side)
	}
	return slices.Clip(sides), nil
}
