package site

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// drawing is the plan drawing that a text asks for, with its captions; nil when it asks for none.
func (p press) drawing(v *voice, asked notices.Drawing) *templates.Drawing {
	if asked.Of == notices.NoDrawing {
		return nil
	}
	lot := lotView(p.lot)
	if asked.Of == notices.NobodysHome {
		lot.Homes = nil
	} else {
		lot.Number = p.number
		lot.Homes = p.nearHomes(asked.Home)
	}
	scale, width, height := lot.Scale(templates.DrawingWidth, templates.DrawingHeight)
	view := &templates.Drawing{SVG: lot.SVG(fit.Millimetres(templates.LeastType) / scale), Width: width, Height: height}
	for _, c := range p.captions(asked) {
		caption := templates.Caption{Text: v.plain(c.text.With())}
		if c.sample != "" {
			caption.Sample = c.sample.SVG(templates.SampleWidth/scale, templates.SampleHeight/scale)
		}
		view.Captions = append(view.Captions, caption)
	}
	return view
}

// A caption explains a line of the drawing, or all of it when there is no sample.
type caption struct {
	sample templates.Sample
	text   notices.Text
}

// captions are those of all lines that the drawing has, and whether it is to scale.
func (p press) captions(asked notices.Drawing) []caption {
	all := []caption{{templates.SampleWork, notices.LotTheWork}, {templates.SampleReach, notices.LotNear}, {"", notices.LotScale}}
	if asked.Of == notices.NobodysHome || p.lot.Sketch {
		all[len(all)-1].text = notices.LotSketch
	}
	if asked.Home != "" {
		all = append([]caption{{templates.SampleSide, notices.LotYourSide}}, all...)
	}
	return all
}

// nearHomes are those that a reader needs to find their own: the reader's, marked, and the others within reach.
func (p press) nearHomes(readers string) []templates.LotHome {
	var homes []templates.LotHome
	for i, home := range lotView(p.lot).Homes {
		if known := p.lot.Homes[i]; known.Near || known.ID == readers {
			home.Marked = known.ID == readers
			homes = append(homes, home)
		}
	}
	return homes
}

// overviewDrawing shows everything: whose sides face the work and count as near.
func (p press) overviewDrawing() templates.Lot {
	lot := lotView(p.lot)
	lot.Number = p.number
	for i, home := range p.lot.Homes {
		lot.Homes[i].Marked = home.Near
	}
	return lot
}

func lotView(lot notices.Lot) templates.Lot {
	view := templates.Lot{House: plotView(lot.House), Reach: float64(lot.Reach)}
	for _, w := range lot.Work {
		view.Walls = append(view.Walls, wallView(w))
	}
	for _, h := range lot.Homes {
		view.Homes = append(view.Homes, templates.LotHome{Plot: plotView(h.Plot), Number: h.Number, Facing: wallView(h.Facing), Guess: !h.Known})
	}
	return view
}

func plotView(p notices.Plot) templates.Plot {
	return templates.Plot{X: float64(p.X), Y: float64(p.Y), Width: float64(p.Width), Depth: float64(p.Depth)}
}

func wallView(w notices.Wall) templates.Wall {
	return templates.Wall{FromX: float64(w.FromX), FromY: float64(w.FromY), ToX: float64(w.ToX), ToY: float64(w.ToY)}
}
