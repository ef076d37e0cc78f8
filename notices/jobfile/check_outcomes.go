package jobfile

import (
	"fmt"
	"slices"

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
		first, last := firstAndLast(w)
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
		if first, _ := firstAndLast(w); known && !first.IsZero() && !wipe.Lab.IsZero() && wipe.Lab.Compare(first) < 0 {
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

// checkCalledOff: a job that never began has begun nothing on a day that was lost, and nobody has checked it.
func checkCalledOff(r *reader, job *notices.Job) {
	if job.CalledOff != notices.BeforeItBegan {
		return
	}
	begun := len(job.Checks) > 0 || len(job.Wipes) > 0 || slices.ContainsFunc(job.Work, func(w notices.Work) bool {
		return slices.ContainsFunc(w.Lost, func(l notices.LostDay) bool { return l.Begun != notices.No })
	})
	if begun {
		r.wrong(r.at("called_off"), "does not fit with a check, a sample, or a lost day of which nobody has said that nothing was begun", "write after_it_began, and what was begun stays shut until it passes; or write begun: no at each lost day")
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

// firstAndLast are the first planned day and the last on which the crew is there, rain day included once it is one; zero when there is none.
func firstAndLast(w notices.Work) (first, last notices.Date) {
	planned := notices.WorkDays([]notices.Work{w})
	if len(planned) == 0 {
		return notices.Date{}, notices.Date{}
	}
	w.Days = planned
	crew := w.WithoutLostDays().Days
	return planned[0], crew[len(crew)-1]
}
