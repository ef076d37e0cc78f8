package site

import (
	"slices"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
)

// Explain says the reasons of a plan in the coordinator's English.
func Explain(plan notices.Plan) ([]ReasonRecord, error) {
	desk, err := locales.OpenDesk()
	if err != nil {
		return nil, err
	}
	return Kit{Desk: desk}.reasonRecords(plan.Reasons)
}

// A Count is how many copies of one kind of sheet there are to print.
type Count struct {
	Title  string `json:"title"`
	Copies int    `json:"copies"`
}

// Tally counts the sheets of a plan by kind, in printing order.
func Tally(plan notices.Plan) []Count {
	var all []Count
	for _, sheet := range plan.Sheets {
		title := titles[sheet.Kind]
		i := slices.IndexFunc(all, func(c Count) bool { return c.Title == title })
		if i < 0 {
			all = append(all, Count{Title: title})
			i = len(all) - 1
		}
		all[i].Copies += sheet.Copies
	}
	return all
}
