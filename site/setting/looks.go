package setting

import (
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// A look is a type with the headline that goes with it.
type look struct {
	templates.Type
	head templates.Fitted
}

// A Wish is how a letter should look.
type Wish struct {
	Large  bool // large print for all of it
	Glance bool // read in seconds
}

// LeastType is the least size in pt of anything on a letter.
func (w Wish) LeastType() float64 {
	if w.Large {
		return templates.LargePrint
	}
	return templates.LeastType
}

// looks are those that a letter may have, the quickest to read first. The last is the one that takes the least room: the least type that there is, and small
// print that is smaller.
func (w Wish) looks(cast fit.Cast, text templates.Text, head string) ([]look, error) {
	least := w.LeastType()
	box := templates.HeadBox
	if len(text.Marks) == 0 {
		box = templates.WideBox
	}
	usual, err := fitted(cast.Bold, []string{head}, box)
	if err != nil {
		return nil, inPart("the headline", err)
	}
	var all []look
	if w.Glance {
		if roomy, err := fitted(cast.Bold, []string{head}, templates.RoomyBox); err == nil && len(text.Marks) > 0 {
			all = append(all, sized(templates.Glance, least, least+2.5, roomy)...)
		}
		all = append(all, sized(templates.SentenceALine, least, least+2.5, usual)...)
	}
	all = append(all, sized(templates.HeadALine, least, least+3, usual)...)
	all = append(all, sized(templates.RunOn, least, least+1, usual)...)
	small, err := fitted(cast.Bold, []string{head}, templates.TightBox)
	if err != nil {
		small = usual
	}
	tight := look{templates.TypeOf(templates.Tight, least, least), small}
	smallest := tight
	smallest.Small = templates.SmallPrint
	if w.Large {
		smallest = tight // all of it is large
	}
	return append(all, tight, smallest), nil
}

// sized are looks in falling sizes, in pt.
func sized(s templates.Setting, least, most float64, head templates.Fitted) []look {
	var all []look
	for size := most; size >= least; size -= 0.5 {
		all = append(all, look{templates.TypeOf(s, least, size), head})
	}
	return all
}

// in sets a letter in a look.
func (l look) in(view templates.Face) templates.Face {
	return with(view, func(letter *templates.Letter) {
		letter.Type, letter.Text.Head = l.Type, l.head
		if letter.Text.Drawing != nil {
			letter.Type.Facts = min(letter.Type.Facts, templates.DrawnFacts)
		}
		if l.Least >= templates.LargePrint {
			letter.Text.Facts = stacked(letter.Text.Facts)
		}
	})
}

// stacked groups have their labels above them, because words in large print are too wide for three columns.
func stacked(groups []templates.FactGroup) []templates.FactGroup {
	var all []templates.FactGroup
	for _, g := range groups {
		g.Above = g.Label != ""
		all = append(all, g)
	}
	return all
}
