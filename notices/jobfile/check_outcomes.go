package jobfile

import (
	"fmt"

	"example.org/doorleaf/notices"
)

// checkResults: what a check found is about work of this job, and comes after it.
func checkResults(r *reader, job *notices.Job) {
	for i, c := range job.Checks {
		w, known := r.workNamed(job, c.Work, "checks", i, "work")
		if !known || c.On.IsZero() {
			continue
		}
		at := r.at("checks", i, "on")
		first, last := firstAndLast(w.Days)
		switch {
		case first.IsZero():
		case c.On.Compare(first) < 0:
			r.wrong(at, fmt.Sprintf("is before the work starts on %s", dayWritten(first)), "correct the day, or take the check out until the work is done")
		case c.Result == notices.Passed && c.On.Compare(last) < 0:
			r.wrong(at, fmt.Sprintf("is before the last day of the work, %s", dayWritten(last)), "check again after that day; or take the days that nobody needed out of the work")
		}
	}
}

// checkCleanAgain: cleaning again follows a check that failed.
func checkCleanAgain(r *reader, job *notices.Job) {
	for i, c := range job.Checks {
		if c.Result == notices.Passed && len(c.Again) > 0 {
			r.problem(r.at("checks", i, "clean_again"), "clean_again is for a check that failed, and this one passed", "take clean_again out, or write result: failed")
			continue
		}
		for _, day := range c.Again {
			if !c.On.IsZero() && day.Compare(c.On) < 0 {
				r.wrong(r.item(day.String(), "checks", i, "clean_again"), fmt.Sprintf("is before the check on %s", dayWritten(c.On)), "write a day on which you clean after the check")
			}
		}
	}
}

// checkWipes: a dust sample is about work of this job, and its report comes after the work has started.
func checkWipes(r *reader, job *notices.Job) {
	for i, wipe := range job.Wipes {
		w, known := r.workNamed(job, wipe.Work, "wipes", i, "work")
		if first, _ := firstAndLast(w.Days); known && !first.IsZero() && !wipe.Lab.IsZero() && wipe.Lab.Compare(first) < 0 {
			r.wrong(r.at("wipes", i, "lab_date"), fmt.Sprintf("is before the work starts on %s", dayWritten(first)), "correct the day; leave samples from before the work out")
		}
	}
}

// checkClosed: a job is not over while people have to be kept out of anything.
func checkClosed(r *reader, job *notices.Job) {
	if job.Closed != notices.Yes {
		return
	}
	for _, w := range job.OpenWork() {
		r.problem(r.at("closed"), fmt.Sprintf("the job cannot be closed, because the work %q has not passed its check", w.ID), "enter the check under checks, or take closed out")
	}
}

// workNamed finds the work that an entry is about.
func (r *reader) workNamed(job *notices.Job, id string, path ...any) (notices.Work, bool) {
	var ids []string
	for _, w := range job.Work {
		if w.ID == id {
			return w, true
		}
		if w.ID != "" {
			ids = append(ids, w.ID)
		}
	}
	if id != "" {
		r.wrong(r.at(path...), "is not the id of any work", suggestion(id, "work", ids))
	}
	return notices.Work{}, false
}

// firstAndLast are the first and last planned day, in whatever order the file has them; zero when there is none.
func firstAndLast(planned []notices.Date) (first, last notices.Date) {
	if days := inOrder(planned); len(days) > 0 {
		return days[0], days[len(days)-1]
	}
	return notices.Date{}, notices.Date{}
}
