package notices

import (
	"cmp"
	"slices"
)

// A Moment is a time of day on a day. Without a clock it is the whole day, from midnight on.
type Moment struct {
	Day Date
	At  Clock // NoClock: from the beginning of the day
}

func (Moment) value() {}

func (m Moment) String() string {
	if m.At == NoClock {
		return m.Day.String()
	}
	return m.Day.String() + " " + m.At.String()
}

func (m Moment) compare(other Moment) int {
	return cmp.Or(m.Day.Compare(other.Day), cmp.Compare(m.At, other.At))
}

// A shut is the time in which people are kept out of one place: from the crew's first set-up there until a written pass that counts. It has no planned end that
// anybody is told; expected is for planning alone.
type shut struct {
	Work         // the place, its ways in, and the days on which the crew is there
	from  Moment // first set-up; for a room in which a dust sample failed, the day of the report
	found bool   // it is shut because of a sample, and nobody worked there
}

// shuts are the places of all work that people have to be kept out of, and the rooms in which a dust sample failed, earliest first.
func (job Job) shuts() []shut {
	var all []shut
	for _, w := range job.leadWork() {
		if from, begun := w.firstSetUp(); begun {
			all = append(all, shut{Work: w, from: from})
		}
	}
	all = append(all, job.dirtyRooms()...)
	slices.SortStableFunc(all, func(a, b shut) int { return cmp.Or(a.from.compare(b.from), cmp.Compare(a.ID, b.ID)) })
	return all
}

// firstSetUp is when the crew first sets up. A lost day on which nothing was begun starts nothing; one of which nobody has said counts as begun.
func (w Work) firstSetUp() (Moment, bool) {
	days := slices.DeleteFunc(w.AllDays(), func(day Date) bool {
		return slices.ContainsFunc(w.Lost, func(l LostDay) bool { return l.Day == day && l.Begun == No })
	})
	if days = sortedDays(append(days, w.begunDays()...)); len(days) == 0 {
		return Moment{}, false
	}
	return Moment{days[0], w.CrewArrives}, true
}

// begunDays are lost days on which something was set up or disturbed, or nobody has said that nothing was.
func (w Work) begunDays() []Date {
	var days []Date
	for _, l := range w.Lost {
		if l.Begun != No {
			days = append(days, l.Day)
		}
	}
	return days
}

// WithoutLostDays has the days on which the crew is there: not those that were lost. The rain day is one of them once a day was lost that no other comes after.
func (w Work) WithoutLostDays() Work {
	lost := func(day Date) bool { return slices.ContainsFunc(w.Lost, func(l LostDay) bool { return l.Day == day }) }
	kept := slices.DeleteFunc(slices.Clone(w.Days), lost)
	switch last := w.Days[len(w.Days)-1]; {
	case w.RainDay.IsZero() || lost(w.RainDay):
		w.RainDay = Date{}
	case lost(last):
		kept, w.RainDay = sortedDays(append(kept, w.RainDay)), Date{}
	}
	if len(kept) > 0 {
		w.Days = kept
	}
	return w
}

// dirtyRooms are the rooms, other than those that were worked in, in which a dust sample failed that nothing has answered since.
func (job Job) dirtyRooms() []shut {
	var all []shut
	for _, wipe := range job.Wipes {
		w, known := job.workOf(wipe.Work)
		if !known || !wipe.fails() || job.shownFree(w) || job.wasWorkedIn(wipe.Room) || job.answeredSince(wipe) {
			continue
		}
		room := Work{ID: roomID(wipe.Room), Where: Inside, Area: wipe.Room, CrewArrives: NoClock, CleanedBy: NoClock, Days: []Date{wipe.Lab}, WaysIn: []Way{doorOf(wipe.Room)}, Nightly: Unknown, checkedWith: wipe.Work}
		same := slices.IndexFunc(all, func(s shut) bool { return s.ID == room.ID })
		switch {
		case same < 0:
			all = append(all, shut{Work: room, from: Moment{wipe.Lab, NoClock}, found: true})
		case wipe.Lab.Compare(all[same].from.Day) < 0:
			all[same].from.Day, all[same].Days = wipe.Lab, []Date{wipe.Lab}
		}
	}
	return all
}

func (job Job) wasWorkedIn(room Area) bool {
	return slices.ContainsFunc(job.leadWork(), func(w Work) bool { return w.Area == room })
}

// doorOf is the door of a room that nobody worked in, and so nobody has named.
func doorOf(room Area) Way {
	for _, way := range Ways {
		if way == Way(room)+"_door" {
			return way
		}
	}
	return "room_door"
}

// A state is one place that is shut, with all others that may be shut at some time of that: what holds in it holds whichever of them has passed.
type state struct {
	shut          // the place that it is about
	beside []shut // the others
}

// states has one for each place that is shut at any time, earliest first: what has passed meanwhile stays in what a household was told. A place counts as shut until its result is expected, rain day included, and without an end while nobody has decided
// who checks.
func (job Job) states() []state {
	all := job.shuts()
	var states []state
	for i, s := range all {
		now := state{shut: s}
		for j, other := range all {
			if i != j && !job.expectedBefore(other, s.from.Day) && !job.expectedBefore(s, other.from.Day) {
				now.beside = append(now.beside, other)
			}
		}
		states = append(states, now)
	}
	return states
}

// expectedBefore reports whether the result of a place is expected on an earlier day.
func (job Job) expectedBefore(s shut, day Date) bool {
	expected, known := job.expected(s)
	return known && expected.Compare(day) < 0
}

// expected is the day on which the result of a place should be there: that of the last work day, or some business days later where a laboratory has to answer first.
func (job Job) expected(s shut) (Date, bool) {
	days := sortedDays(append(s.Work.AllDays(), job.againDays(s.Work)...))
	if s.found || job.CheckedBy == NotDecided || len(days) == 0 {
		return Date{}, false
	}
	last := days[len(days)-1]
	if job.check().takesLab {
		return businessDaysAfter(last, int(job.Programme.Rule(resultTakes).Value)), true
	}
	return last, true
}

// blocks reports whether a way, an area or a piece of work is shut.
func (s shut) blocks(place string) bool {
	return place != "" && (s.ID == place || string(s.Area) == place || slices.Contains(s.WaysIn, Way(place)))
}

// isCalled reports whether an answer is about this place: by the id of its work, or by its area.
func (s shut) isCalled(name string) bool { return s.ID == name || string(s.Area) == name }
