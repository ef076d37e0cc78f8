package notices

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices/strict"
)

// checkFacesOutsideOnly: only outside walls look at a street or a neighbour.
func checkFacesOutsideOnly(r *reader, job *Job) {
	for i, w := range job.Work {
		if w.Where == Inside && len(w.Faces) > 0 {
			r.problem(r.at("work", i, "faces"), "faces is for work outside, and this is inside", "take faces out, or write where: outside")
		}
	}
}

// checkFacesKnown: a wall faces a side of the lot or a neighbour of the list, or nobody is asked to close windows.
func checkFacesKnown(r *reader, job *Job) {
	known := slices.Clone(lotSides)
	for _, n := range job.Neighbours {
		known = append(known, n.Address)
	}
	for i, w := range job.Work {
		for _, face := range w.Faces {
			if !slices.Contains(known, face) {
				r.wrong(r.item(face, "work", i, "faces"), "is neither a side of the lot nor the address of a neighbour below", suggestion(face, "face", known))
			}
		}
	}
}

// item is the place of a text in a list.
func (r *reader) item(text string, path ...any) *strict.Node {
	list := r.at(path...)
	for _, item := range list.Items {
		if item.Text == text {
			return item
		}
	}
	return list
}

// checkDoorsWorkedOn: a door that gets a keep-out sign is no way for the family.
func checkDoorsWorkedOn(r *reader, job *Job) {
	r.eachDay(job, func(d DayAtHome, path ...any) {
		for _, w := range workOn(job, d.Day) {
			if d.UsesDoor != "" && slices.Contains(w.WaysIn, d.UsesDoor) {
				r.wrong(r.at(append(path, "uses_door")...), fmt.Sprintf("leads into the work %q on %s and gets a keep-out sign", w.ID, dayWritten(d.Day)), "choose another door, or write where they sleep (sleeps_at)")
			}
		}
	})
}

// checkRoomsWorkedOn: a room that is worked on is out of reach.
func checkRoomsWorkedOn(r *reader, job *Job) {
	r.eachDay(job, func(d DayAtHome, path ...any) {
		for _, w := range workOn(job, d.Day) {
			for _, room := range d.Reaches {
				if w.Where == Inside && areaOf(room) == w.Area && w.Area != "" {
					r.wrong(r.item(string(room), append(path, "reaches")...), fmt.Sprintf("is worked on as %q on %s", w.ID, dayWritten(d.Day)), "name a room they can reach, or write where they sleep (sleeps_at)")
				}
			}
		}
	})
}

// areaOf is where a room lies; empty when it may be anywhere.
func areaOf(room Room) Area {
	for _, r := range Rooms {
		if r.Name == room {
			return r.Area
		}
	}
	return ""
}

// eachDay visits every day of every household that could be read, with its path in the file.
func (r *reader) eachDay(job *Job, visit func(d DayAtHome, path ...any)) {
	for i, h := range job.Households {
		for j, d := range h.OnWorkDays {
			if !d.Day.IsZero() {
				visit(d, "households", i, "on_work_days", j)
			}
		}
	}
}
