package jobfile

import (
	"fmt"
	"slices"
	"time"

	"example.org/doorleaf/notices"
)

// checkHours: the crew arrives before it has cleaned.
func checkHours(r *reader, job *notices.Job) {
	for i, w := range job.Work {
		if w.CrewArrives != notices.NoClock && w.CleanedBy != notices.NoClock && w.CleanedBy <= w.CrewArrives {
			r.wrong(r.at("work", i, "cleaned_by"), fmt.Sprintf("is not after %s, when the crew arrives", w.CrewArrives), "write the afternoon as 13:00 and later, or correct crew_arrives")
		}
	}
}

// checkHoursExist: clocks skip an hour on one night in spring.
func checkHoursExist(r *reader, job *notices.Job) {
	zone, known := r.zone()
	for i, w := range job.Work {
		for _, d := range w.AllDays() {
			if known {
				r.exists(w.CrewArrives, d, zone, "work", i, "crew_arrives")
				r.exists(w.CleanedBy, d, zone, "work", i, "cleaned_by")
			}
		}
	}
}

func (r *reader) exists(c notices.Clock, d notices.Date, zone *time.Location, path ...any) {
	if c == notices.NoClock {
		return
	}
	if _, ok := c.On(d, zone); !ok {
		r.wrong(r.at(path...), fmt.Sprintf("does not exist on %s: clocks in %s skip it", dayWritten(d), zone), "choose an hour earlier or later")
	}
}

// checkRainDays: a rain day comes instead of the days, not among or before them.
func checkRainDays(r *reader, job *notices.Job) {
	for i, w := range job.Work {
		if w.RainDay.IsZero() || len(w.Days) == 0 {
			continue
		}
		at := r.at("work", i, "rain_day")
		first := slices.MinFunc(w.Days, notices.Date.Compare)
		switch {
		case slices.Contains(w.Days, w.RainDay):
			r.wrong(at, "is one of the days themselves", "choose a day that can stand in for a rained-out one")
		case w.RainDay.Compare(first) < 0:
			r.wrong(at, fmt.Sprintf("is before the work starts on %s", dayWritten(first)), "choose a later day")
		}
	}
}

// checkBuilt: a house is there before anybody works on it.
func checkBuilt(r *reader, job *notices.Job) {
	for _, w := range job.Work {
		for _, d := range w.Days {
			if job.Built > d.Year {
				r.wrong(r.at("built"), fmt.Sprintf("is after %s, when work begins", dayWritten(d)), "correct the year, or write unknown")
				return
			}
		}
	}
}
