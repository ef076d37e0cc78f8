package notices

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices/strict"
)

// checkDaysAtHome: an entry is for a day on which somebody works or may work, each day once.
func checkDaysAtHome(r *reader, job *Job) {
	for i, h := range job.Households {
		seen := map[Date]bool{}
		for j, d := range h.OnWorkDays {
			at := r.at("households", i, "on_work_days", j, "day")
			switch {
			case d.Day.IsZero():
			case seen[d.Day]:
				r.wrong(at, "has two entries in this household", "keep one of the two")
			case len(workOn(job, d.Day)) == 0 && r.allDaysRead(job):
				r.wrong(at, "is neither a work day nor a rain day", "take the entry out, or correct the day"+workDaysWritten(job))
			}
			seen[d.Day] = true
		}
	}
}

func workDaysWritten(job *Job) string {
	text := " (work days:"
	for _, d := range WorkDays(job.Work) {
		text += " " + d.String()
	}
	return text + ")"
}

// allDaysRead is false when a day of work was not understood; then nobody knows what days the household should speak of.
func (r *reader) allDaysRead(job *Job) bool {
	for i, w := range job.Work {
		if len(w.Days) == 0 || len(w.Days) < len(r.at("work", i, "days").Items) {
			return false
		}
		if r.at("work", i).Get("rain_day") != nil && w.RainDay.IsZero() {
			return false
		}
	}
	return true
}

// checkEveryWorkDay: a household must know how it gets through each planned day.
func checkEveryWorkDay(r *reader, job *Job) {
	for i, h := range job.Households {
		if !r.allDaysAtHomeRead(h, i) {
			continue
		}
		for _, day := range WorkDays(job.Work) {
			if !slices.ContainsFunc(h.OnWorkDays, func(d DayAtHome) bool { return d.Day == day }) {
				r.missingDay(day, i)
			}
		}
	}
}

func (r *reader) missingDay(day Date, i int) {
	at := r.at("households", i, "on_work_days")
	r.problem(at, fmt.Sprintf("this household has no way out, bed, bathroom or kitchen on %s", dayWritten(day)),
		fmt.Sprintf("add under on_work_days {day: %s, uses_door: back_door, reaches: [bed, bathroom, kitchen]}, or {day: %s, sleeps_at: ...}", day, day))
}

func (r *reader) allDaysAtHomeRead(h Household, i int) bool {
	household := r.at("households", i)
	days := household.At("on_work_days")
	if household.Kind != strict.Object || days.Kind == strict.Text || days.Kind == strict.Refused {
		return false
	}
	return !slices.ContainsFunc(h.OnWorkDays, func(d DayAtHome) bool { return d.Day.IsZero() })
}

// checkWaysOut: nobody can stay in a house without a way out.
func checkWaysOut(r *reader, job *Job) {
	r.eachDay(job, func(d DayAtHome, path ...any) {
		if d.SleepsAt == "" && d.Away != Yes && d.UsesDoor == "" && !r.has("uses_door", path) {
			r.problem(r.at(path...), fmt.Sprintf("there is no way out on %s", dayWritten(d.Day)), "write the door, such as uses_door: back_door, or away: yes, or where they sleep (sleeps_at)")
		}
	})
}

// checkReach: a day at home needs a bed, a bathroom and a kitchen.
func checkReach(r *reader, job *Job) {
	r.eachDay(job, func(d DayAtHome, path ...any) {
		if d.SleepsAt != "" || r.has("reaches", path) && len(d.Reaches) < len(r.at(append(path, "reaches")...).Items) {
			return
		}
		for _, need := range needsOf(d) {
			if !meets(d.Reaches, need) {
				r.problem(r.at(append(path, "reaches")...), fmt.Sprintf("there is no %s in reach on %s", need, dayWritten(d.Day)), fmt.Sprintf("add the %s they can use to reaches, or write where they sleep (sleeps_at)", need))
			}
		}
	})
}

// needsOf: whoever is away while the crew works needs a bed to come back to, once told.
func needsOf(d DayAtHome) []Need {
	if d.Away == Yes {
		return []Need{NeedBed}
	}
	return Needs
}

// has reports whether something is written for a key, even if it was not understood.
func (r *reader) has(key string, path []any) bool {
	v := r.at(path...).Get(key)
	return v != nil && v.Kind != strict.Empty
}

func meets(reaches []Room, need Need) bool {
	for _, room := range Rooms {
		if room.Meets == need && slices.Contains(reaches, room.Name) {
			return true
		}
	}
	return false
}
