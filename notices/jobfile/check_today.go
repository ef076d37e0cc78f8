package jobfile

import (
	"fmt"

	"example.org/doorleaf/notices"
)

// checkHappened: a check, a laboratory's report and a pamphlet that was given are not still to come.
func checkHappened(r *reader, job *notices.Job) {
	for i, c := range job.Checks {
		r.happened(c.On, "checks", i, "on")
	}
	for i, w := range job.Wipes {
		r.happened(w.Lab, "wipes", i, "lab_date")
	}
	r.happened(job.Presumed, "lead_presumed")
	r.happened(job.PresumedTold, "presumption_told")
	for i, p := range job.Pamphlets {
		r.happened(p.Given, "pamphlets", i, "given")
	}
}

func (r *reader) happened(day notices.Date, path ...any) {
	if today, known := r.today(); known && day.Compare(today) > 0 {
		r.wrong(r.at(path...), fmt.Sprintf("is after today, %s", dayWritten(today)), "write it down once it has happened, or correct the day")
	}
}

// today is the day on which it is now where the programme works.
func (r *reader) today() (notices.Date, bool) {
	zone, known := r.zone()
	if !known {
		return notices.Date{}, false
	}
	year, month, day := r.now.In(zone).Date()
	return notices.Date{Year: year, Month: month, Day: day}, true
}
