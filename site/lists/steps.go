package lists

import (
	"fmt"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/templates"
)

// partyNames are the parties of a step as the coordinator calls them.
var partyNames = map[notices.Party]string{
	notices.ForHousehold: "household", notices.ForNeighbour: "neighbor", notices.ForDoors: "doors", notices.ForWork: "work area", notices.ForOwner: "owner", notices.ForResidents: "residents", notices.ForFile: "your file",
}

// steps are the steps of a record for the coordinator's sheet. It says no "today" and no "late": no clock may enter a file.
func steps(r record.Job) []templates.OverviewStep {
	var all []templates.OverviewStep
	for _, s := range r.Steps {
		view := templates.OverviewStep{Says: s.Says, Due: WrittenDay(s.Due), For: locales.Alone(partyNames[notices.Party(s.For)]), Source: fmt.Sprintf("%s: %s", locales.Alone(s.Binds), s.Source), Done: s.Done}
		if s.First != s.Due {
			view.First = WrittenDay(s.First)
		}
		if s.LateAfter != s.Due {
			view.LateAfter = WrittenDay(s.LateAfter)
		}
		all = append(all, view)
	}
	return all
}
