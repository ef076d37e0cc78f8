package setting

import (
	"fmt"

	"example.org/doorleaf/templates"
)

// mostSides are the front and the back of two sheets, and of four in large print.
func mostSides(t templates.Type) int {
	if t.Least >= templates.LargePrint {
		return 8
	}
	return 4
}

// sides are a letter in the first look in which it needs no more sides than in the last, which takes the least room.
func (r ruler) sides(view templates.Face, looks []look, blocks []string) ([]templates.Face, error) {
	last := looks[len(looks)-1].in(view)
	all, fits := r.split(last, 1)
	if !fits {
		most := mostSides(last.Letter.Type)
		view.Foot.Side = sideOf(most, most) // measured with as much in the foot as there will be
		last.Foot = view.Foot
		if all, fits = r.split(last, most); !fits {
			return nil, r.misfit(last, blocks)
		}
	}
	for _, l := range looks {
		set := l.in(view)
		if r.tooWide(set) {
			continue
		}
		if better, fits := r.split(set, len(all)); fits {
			all = better
			break
		}
	}
	for i := range all {
		if len(all) > 1 {
			all[i].Foot.Side = sideOf(i+1, len(all))
		}
	}
	return all, nil
}

func sideOf(n, all int) string { return fmt.Sprintf("%d/%d", n, all) }

// split moves as few parts as it can to other sides, at most a given number in all. It is not ok when they do not hold the letter.
func (r ruler) split(view templates.Face, most int) (all []templates.Face, ok bool) {
	rest := r.loosened(view)
	for len(all) < most {
		if !r.tooHigh(rest) {
			return append(all, regrouped(rest)), true
		}
		stay := partsOf(rest) - 1
		for stay > 0 && r.tooHigh(firstParts(rest, stay)) {
			stay--
		}
		if stay <= 0 {
			return nil, false
		}
		all = append(all, regrouped(firstParts(rest, stay)))
		rest = otherParts(rest, stay)
	}
	return nil, false
}

// partsOf counts what can move: groups of the table, blocks, the text in a second language, and all lines to fill in as one.
func partsOf(view templates.Face) int {
	parts := len(view.Letter.Text.Facts) + len(view.Letter.Text.Blocks)
	if view.Letter.Beside != nil {
		parts++
	}
	if len(view.Letter.Blanks) > 0 {
		parts++
	}
	return parts
}

// firstParts is a letter with the first of its parts, fewer than all. The drawing stays with them.
func firstParts(view templates.Face, parts int) templates.Face {
	return with(view, func(l *templates.Letter) {
		facts := min(parts, len(l.Text.Facts))
		blocks := min(parts-facts, len(l.Text.Blocks))
		l.Text.Facts, l.Text.Blocks, l.Blanks = l.Text.Facts[:facts], l.Text.Blocks[:blocks], nil
		if parts == facts+blocks {
			l.Beside = nil
		}
	})
}

// otherParts is a letter without the first of its parts. A second language takes the place of the first when it is alone.
func otherParts(view templates.Face, parts int) templates.Face {
	return with(view, func(l *templates.Letter) {
		facts := min(parts, len(l.Text.Facts))
		blocks := min(parts-facts, len(l.Text.Blocks))
		l.Text.Facts, l.Text.Blocks, l.Text.Drawing = l.Text.Facts[facts:], l.Text.Blocks[blocks:], nil
		if parts > facts+blocks {
			l.Beside = nil
		}
		if l.Beside != nil && len(l.Text.Facts)+len(l.Text.Blocks) == 0 {
			from, label, reader := l.Text.From, l.Text.ForLabel, l.Text.For
			l.Text, l.Beside = *l.Beside, nil
			l.Text.From, l.Text.ForLabel, l.Text.For = from, label, reader
		}
	})
}

// loosened is a letter in which each row of a group of the table can move, where the group is too high for a side of its own.
func (r ruler) loosened(view templates.Face) templates.Face {
	var groups []templates.FactGroup
	for _, g := range view.Letter.Text.Facts {
		if !r.tooHigh(with(bareOf(view), func(l *templates.Letter) { l.Text.Facts = []templates.FactGroup{g} })) {
			groups = append(groups, g)
			continue
		}
		for _, row := range g.Rows {
			groups = append(groups, templates.FactGroup{Label: g.Label, Rows: []templates.Fact{row}})
		}
	}
	return with(view, func(l *templates.Letter) { l.Text.Facts = groups })
}

// regrouped is a letter in which neighbours with the same label are one group again.
func regrouped(view templates.Face) templates.Face {
	var groups []templates.FactGroup
	for _, g := range view.Letter.Text.Facts {
		if last := len(groups) - 1; last >= 0 && groups[last].Label == g.Label {
			groups[last].Rows = append(groups[last].Rows[:len(groups[last].Rows):len(groups[last].Rows)], g.Rows...)
			continue
		}
		groups = append(groups, g)
	}
	return with(view, func(l *templates.Letter) { l.Text.Facts = groups })
}
