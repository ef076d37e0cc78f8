package notices

import "slices"

var (
	outSleepsThen = ownText("sleep.then", Name(""))
	whySleepsThen = ownText("sleep.then_why")
	wouldSayByDay = ownText("sleep.would_say")
	outOtherWay   = ownText("life.other_way", Name(""), Day{})
	whyOtherWay   = ownText("life.other_way_why", PlaceName(""), SecondDay{})
	wouldAgree    = ownText("life.would_agree", PlaceName(""))
)

// sleepsWhile reports whether a household sleeps at an hour at which the crew works, as who works at night does.
func (h Household) sleepsWhile(w Work) bool {
	if h.SleepsFrom == h.SleepsTo || h.SleepsFrom == NoClock || h.SleepsTo == NoClock || w.CrewArrives == NoClock || w.CleanedBy == NoClock {
		return false
	}
	if h.SleepsFrom < h.SleepsTo {
		return h.SleepsFrom < w.CleanedBy && w.CrewArrives < h.SleepsTo
	}
	return w.CrewArrives < h.SleepsTo || h.SleepsFrom < w.CleanedBy
}

// sleepers tell the coordinator who sleeps while the crew works: that bed has to be in reach by day (24 CFR 35.1345(a)(2)(iv)), and quiet.
func sleepers(job Job) []Reason {
	var all []Reason
	for _, h := range job.householdsToTell() {
		if slices.ContainsFunc(job.leadWork(), h.sleepsWhile) {
			all = append(all, Reason{Decision: "sleeps_by_day", About: h.ID, Outcome: outSleepsThen.With(Name(h.Name)), Because: whySleepsThen.With(), Source: fewDays.Source(), Binds: GoodPractice})
		}
	}
	return all
}

// otherWays tell the coordinator who leaves home by a way that is shut when they come back.
func otherWays(job Job) []Reason {
	var all []Reason
	for _, h := range job.householdsToTell() {
		for _, l := range job.lives(h) {
			from := l.state.from
			if !l.works() || len(h.Usual.WaysOut) == 0 || slices.Equal(l.route, h.Usual.WaysOut[0]) || h.Leaves == NoClock || h.Leaves == h.Returns || !(h.Leaves <= from.At && from.At < h.Returns) {
				continue
			}
			all = append(all, Reason{Decision: "other_way_home", About: h.ID, Outcome: outOtherWay.With(Name(h.Name), Day(from.Day)), Because: whyOtherWay.With(PlaceName(placeNames(l.route)), SecondDay(from.Day)), Source: inPractice, Binds: GoodPractice})
		}
	}
	return all
}

// borrowed are the rooms and halls that a household uses instead of its own, and that another household uses as always.
func (job Job) borrowed(h Household, l life) []Place {
	own, theirs := h.Usual.places(), []Place{}
	for _, other := range job.Households {
		if other.ID != h.ID {
			theirs = append(theirs, other.Usual.places()...)
		}
	}
	uses := l.uses
	uses.WaysOut = [][]Place{l.route}
	return slices.DeleteFunc(uses.places(), func(p Place) bool { return slices.Contains(own, p) || !slices.Contains(theirs, p) })
}

// places are the areas of a life: those of its rooms, and those on its ways out. A door belongs to the building.
func (u Usual) places() []Place {
	var all []Place
	for _, r := range []Room{u.Bed, u.Bath, u.Kitchen} {
		if r.area() != "" {
			all = append(all, Place(r.area()))
		}
	}
	for _, way := range u.WaysOut {
		for _, p := range way {
			if slices.Contains(Areas, Area(p)) {
				all = append(all, p)
			}
		}
	}
	return all
}

// hasAgreed reports whether those whose place it is have agreed to what a household does while a place is shut.
func (h Household) hasAgreed(s shut) bool {
	return slices.ContainsFunc(h.Except, func(e Exception) bool { return s.isCalled(e.While) && e.Agreed == Yes })
}
