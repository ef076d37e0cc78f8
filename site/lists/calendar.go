package lists

import (
	"fmt"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

// CalendarFile is the name of a calendar (RFC 5545): one for each job beside its sheets, and one of all jobs beside the coordinator's sheet. It names
// homes, so it lies under print/ and never on the web.
const CalendarFile = "calendar.ics"

// Calendar has an all-day entry for each step, on its last day. Nothing in it comes from a clock.
func Calendar(programme notices.Programme, records []record.Job) []byte {
	cal := ics.NewCalendar()
	cal.SetProductId("-//doorleaf//EN")
	cal.SetXWRCalName(programme.Name)
	for _, r := range records {
		for _, s := range r.Steps {
			addEntry(cal, entryID(programme, r.Code, s.ID), r, s)
		}
	}
	return []byte(cal.Serialize(ics.WithNewLineWindows))
}

// entryID stays the same from make to make, and when the day of a step moves, so that a calendar moves its entry. It has the form that RFC 5545 3.8.4.7
// recommends, with the host of the programme's own pages: "check-hall.alder-14@leaf.example.org".
func entryID(programme notices.Programme, code, step string) string {
	host, _, _ := strings.Cut(strings.TrimPrefix(programme.Base, "https://"), "/")
	return fmt.Sprintf("%s.%s@%s", step, code, host)
}

// addEntry stamps an entry with midnight UTC of its own day: RFC 5545 3.8.7.2 requires a stamp, and the moment of the make would change the file at
// every make.
func addEntry(cal *ics.Calendar, id string, r record.Job, s record.Step) {
	day, err := time.Parse(time.DateOnly, s.Due)
	if err != nil {
		return // a record of an older make
	}
	entry := cal.AddEvent(id)
	entry.SetDtStampTime(day)
	entry.SetAllDayStartAt(day)
	entry.SetTimeTransparency(ics.TransparencyTransparent) // the day stays free for other things
	entry.SetClass(ics.ClassificationPrivate)
	entry.SetSummary(summary(s))
	entry.SetLocation(r.Address)
	entry.SetDescription(description(r, s))
}

func summary(s record.Step) string {
	if s.Done {
		return "Done: " + s.Says
	}
	return s.Says
}

func description(r record.Job, s record.Step) string {
	text := fmt.Sprintf("Job %s. %s: %s.", r.Code, locales.Alone(s.Binds), s.Source)
	if s.First != s.Due {
		text = fmt.Sprintf("From %s to %s. ", WrittenDay(s.First), WrittenDay(s.Due)) + text
	}
	if s.LateAfter != "" && s.LateAfter != s.Due {
		text += fmt.Sprintf(" Late after %s.", WrittenDay(s.LateAfter))
	}
	return text
}
