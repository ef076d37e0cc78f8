package site

import (
	"fmt"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// steps adds what has to happen to the record of a job, and its calendar to the files.
func (p press) steps(plan notices.Plan, remembered LedgerJob, record *JobRecord, files Files) error {
	v := &voice{Speaker: p.kit.Desk, desk: p.kit.Desk}
	for _, s := range plan.Steps {
		made := StepRecord{
			ID: s.ID, Kind: string(s.Kind), For: string(s.For), About: s.About, First: s.First.String(), Due: s.Due.String(),
			Says: v.plain(s.Says), Source: s.Source.String(), Binds: string(s.Binds), Done: remembered.isDone(s),
		}
		if !s.LateAfter.IsZero() {
			made.LateAfter = s.LateAfter.String()
		}
		record.Steps = append(record.Steps, made)
	}
	files["print/"+p.code+"/"+calendarFile] = calendar(p.programme, []JobRecord{*record})
	return v.err
}

// partyNames are the parties of a step as the coordinator calls them.
var partyNames = map[notices.Party]string{
	notices.ForHousehold: "household", notices.ForNeighbour: "neighbor", notices.ForDoors: "doors", notices.ForWork: "work area", notices.ForOwner: "owner", notices.ForResidents: "residents", notices.ForFile: "your file",
}

// deskSteps are the steps of a record for the coordinator's sheet. It says no "today" and no "late": no clock may enter a file.
func deskSteps(r JobRecord) []templates.DeskStep {
	var all []templates.DeskStep
	for _, s := range r.Steps {
		view := templates.DeskStep{Says: s.Says, Due: deskDate(s.Due), For: locales.Alone(partyNames[notices.Party(s.For)]), Source: fmt.Sprintf("%s: %s", locales.Alone(s.Binds), s.Source), Done: s.Done}
		if s.First != s.Due {
			view.First = deskDate(s.First)
		}
		if s.LateAfter != s.Due {
			view.LateAfter = deskDate(s.LateAfter)
		}
		all = append(all, view)
	}
	return all
}

// deskDate is a day with its year, because some steps are years away; "" for none.
func deskDate(text string) string {
	day, err := notices.ParseDate(text)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%s, %d", deskDay(day), day.Year)
}
