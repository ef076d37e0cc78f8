package jobfile

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
)

// checkExceptions: an exception is for the time in which a piece of work of this job, or a room, is shut; a piece of work has one.
func checkExceptions(r *reader, job *notices.Job) {
	for i, h := range job.Households {
		seen := map[string]bool{}
		for j, e := range h.Except {
			path := []any{"households", i, "except", j, "while"}
			if slices.Contains(notices.Areas, notices.Area(e.While)) { // a room in which a sample failed
				continue
			}
			if _, known := r.workNamed(job, e.While, path...); known && seen[e.While] {
				r.wrong(r.at(path...), "has two entries in this household", "keep one of the two")
			}
			seen[e.While] = true
		}
	}
}

// checkWaysOut: a way out ends in a door of the building, or nobody gets out by it in a fire.
func checkWaysOut(r *reader, job *notices.Job) {
	for i, h := range job.Households {
		r.leadOut(job, h.Usual.WaysOut, "households", i, "ways_out")
		for j, e := range h.Except {
			r.leadOut(job, e.WaysOut, "households", i, "except", j, "ways_out")
		}
	}
}

func (r *reader) leadOut(job *notices.Job, ways [][]notices.Place, path ...any) {
	list := r.at(path...)
	if len(list.Items) != len(ways) {
		return // some were not understood, which is reported
	}
	for k, way := range ways {
		if len(way) == len(list.Items[k].Items) && !slices.ContainsFunc(way, leadsOutOf(job)) {
			r.problem(list.Items[k], "this way ends inside the house", "write every door on it up to the street"+entriesWritten(job))
		}
	}
}

// leadsOutOf: a step of a way leads out of the building when it is one of its doors; while nobody has named those, when it is no door of a room.
func leadsOutOf(job *notices.Job) func(notices.Place) bool {
	return func(p notices.Place) bool {
		if len(job.Entries) > 0 {
			return slices.Contains(job.Entries, notices.Way(p))
		}
		return slices.Contains(notices.Ways, notices.Way(p)) && !slices.Contains(innerWays, notices.Way(p))
	}
}

// innerWays lead from room to room.
var innerWays = []notices.Way{"bathroom_door", "bedroom_door", "dining_room_door", "hall_door", "living_room_door", "room_door", "stairs"}

func entriesWritten(job *notices.Job) string {
	if len(job.Entries) == 0 {
		return ", such as [hall_door, front_door]"
	}
	return " " + choices("door", wordsOf(job.Entries))
}

// checkLostDays: only a day on which the crew was to work can be lost.
func checkLostDays(r *reader, job *notices.Job) {
	for i, w := range job.Work {
		lost := func(day notices.Date) bool {
			return slices.ContainsFunc(w.Lost, func(l notices.LostDay) bool { return l.Day == day })
		}
		if len(w.Days) > 0 && !slices.ContainsFunc(w.AllDays(), func(day notices.Date) bool { return !lost(day) }) {
			r.problem(r.at("work", i, "lost_days"), "every day of this work is lost", "add the new day to days; or write called_off")
		}
		for j, l := range w.Lost {
			if !l.Day.IsZero() && len(w.Days) > 0 && !slices.Contains(w.AllDays(), l.Day) {
				r.wrong(r.at("work", i, "lost_days", j, "day"), "is neither a day of this work nor its rain day", fmt.Sprintf("keep the lost day under days as well, and add the new one%s", workDaysWritten(job)))
			}
		}
	}
}

func workDaysWritten(job *notices.Job) string {
	text := " (work days:"
	for _, d := range notices.WorkDays(job.Work) {
		text += " " + d.String()
	}
	return text + ")"
}
