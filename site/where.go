package site

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
)

// destination is where a sheet goes, in the coordinator's words.
func (p press) destination(sheet notices.Sheet) string {
	switch {
	case sheet.Kind == notices.CommonAreaSign:
		return p.word(sheet.Hang[0].Word()) + ", where residents of all affected homes see it"
	case sheet.Kind == notices.CommonAreaNotice:
		return fmt.Sprintf("Each of the %d affected homes", sheet.Copies)
	case len(sheet.Hang) > 0:
		return p.door(sheet.Hang[0], sheet.Area)
	}
	if sheet.To.Party == notices.ForOwner {
		return "The owner"
	}
	return cmp.Or(sheet.To.Name, "To spare")
}

// door is a way in, and what it leads to.
func (p press) door(way notices.Way, area notices.Area) string {
	if area == "" {
		return p.word(way.Word())
	}
	return fmt.Sprintf("%s, for the %s", p.word(way.Word()), p.inEnglish(area.Word()))
}

// inEnglish is a word of the closed lists in the coordinator's English; word starts it with a capital.
func (p press) inEnglish(id string) string { return p.english.plain(notices.Message{ID: id}) }

func (p press) word(id string) string { return locales.Alone(p.inEnglish(id)) }

// putRight is the paper that is out and no longer right, by place.
func (p press) putRight(job ledger.Job) []record.Repair {
	var all []record.Repair
	for _, paper := range job.Wrong() {
		home, sheet := paper.Mark.Home, paper.Sheet
		repair := record.Repair{Where: p.place(sheet, home), Home: home, Sheet: sheet.ID, Title: titleOf(sheet.Kind), TakeAway: paper.Mark.Revision.String(), Since: paper.Mark.On}
		if repair.Printed = paper.Mark.Event == ledger.Printed; repair.Printed {
			repair.Where = "Printed, and not noted as given out"
		}
		if !sheet.Gone {
			repair.Bring = sheet.Revision.String()
		}
		all = append(all, repair)
	}
	slices.SortStableFunc(all, func(a, b record.Repair) int {
		return cmp.Or(cmp.Compare(a.Home, b.Home), cmp.Compare(a.Where, b.Where))
	})
	return all
}

// place is where a remembered sheet belongs, in the coordinator's words: its door, or whom it was given to.
func (p press) place(sheet ledger.Sheet, home string) string {
	if len(sheet.Hang) == 0 {
		return cmp.Or(sheet.To, home, strings.Join(sheet.For, ", "), "Anybody")
	}
	return p.door(notices.Way(sheet.Hang[0]), notices.Area(sheet.Area))
}
