package site

import (
	"slices"
	"sync"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

// Explain says the reasons of a plan in the coordinator's English.
func Explain(plan notices.Plan) ([]record.Reason, error) {
	own, err := openCoordinator()
	if err != nil {
		return nil, err
	}
	return Kit{own: own}.reasonRecords(plan.Reasons)
}

// A Count is how many copies of one kind of sheet there are to print.
type Count struct {
	Title  string `json:"title"`
	Copies int    `json:"copies"`
}

// tally counts the sheets of a plan by kind, in printing order.
func tally(plan notices.Plan) []Count {
	var all []Count
	for _, sheet := range plan.Sheets {
		title := titleOf(string(sheet.Kind))
		i := slices.IndexFunc(all, func(c Count) bool { return c.Title == title })
		if i < 0 {
			all = append(all, Count{Title: title})
			i = len(all) - 1
		}
		all[i].Copies += sheet.Copies
	}
	return all
}

// openCoordinator opens the coordinator's words once.
var openCoordinator = sync.OnceValues(locales.OpenCoordinator)

// titleOf is what the coordinator calls a kind of sheet.
func titleOf(kind string) string {
	row := notices.Kind(kind).Traits()
	own, err := openCoordinator()
	if err != nil || row.Title.ID == "" {
		return "Sheet"
	}
	v := &voice{Speaker: own, own: own}
	return v.plain(row.Title.With())
}
