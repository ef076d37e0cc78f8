package notices

import (
	"fmt"
	"slices"
)

// Limits are how much disturbed paint makes a small job.
type limits struct {
	inside, outside Rule
	together        Rule // work in the same room within a number of days counts as one job
	part            Rule // zero when the rule does not count shares of small parts
}

var (
	renovationLimits = limits{inside: smallInside, outside: smallOutside, together: sameRoomDays}
	aidedLimits      = limits{aidedInside, aidedOutside, sameRoomDays, aidedPart}
)

// small reports whether all work of the job stays within the limits: each room inside, and the outside in all. New windows and taking painted parts out are
// never small, and neither is what nobody measured. A small job changes which rule is cited, and never whether a family is told.
func (job Job) small(l limits) bool {
	work := job.leadWork()
	if len(job.BesideUnread) > 0 {
		return false
	}
	outside := 0.0
	for _, w := range work {
		if w.neverSmall() || w.sharesTooMuch(l.part) || w.Where == Inside && sameRoom(slices.Concat(work, job.Beside), w, l.together) > l.inside.Value {
			return false
		}
		if w.Where == Outside {
			outside += w.HowMuch
		}
	}
	return len(work) > 0 && outside <= l.outside.Value
}

func (w Work) neverSmall() bool {
	return w.HowMuch <= 0 || w.Task == "replace_windows" || w.Task == "replace_doors" || w.Task == "take_out"
}

// sharesTooMuch: of a small part only a share may be disturbed, and a share that nobody gave is too much. Parts that nobody named may be small ones.
func (w Work) sharesTooMuch(limit Rule) bool {
	small := len(w.Parts) == 0 || slices.ContainsFunc(w.Parts, func(p Part) bool { return slices.Contains(smallParts, p) })
	return limit.Value > 0 && small && (w.PartShare == 0 || float64(w.PartShare) > limit.Value)
}

// sameRoom sums the square feet disturbed in the room of one piece of work, by all work there within the days of the rule, whichever job file it stands in.
func sameRoom(work []Work, one Work, within Rule) float64 {
	sum := 0.0
	for _, w := range work {
		if w.Where == Inside && w.Area == one.Area && daysApart(w, one) <= int(within.Value) {
			sum += w.HowMuch
		}
	}
	return sum
}

// daysApart is the least number of days between a day of one and a day of the other, rain days among them.
func daysApart(a, b Work) int {
	least := 1 << 20
	for _, x := range a.AllDays() {
		for _, y := range b.AllDays() {
			least = min(least, abs(x.daysUntil(y)))
		}
	}
	return least
}

func abs(n int) int { return max(n, -n) }

var (
	outBeside       = ownText("beside.counts", Number(0))
	whyBeside       = ownText("beside.counts_why", Limit(0))
	outBesideUnread = ownText("beside.unread", Name(""))
	whyBesideUnread = ownText("beside.unread_why")
)

// beside says that work in other job files of the house counts as well.
func beside(job Job) []Reason {
	var all []Reason
	if near := job.nearBeside(); len(near) > 0 {
		all = append(all, Reason{Decision: "beside", Outcome: outBeside.With(Number(len(near))), Because: whyBeside.With(Limit(sameRoomDays.Value)), Source: sameRoomDays.Source(), Binds: job.renovationBinding()})
	}
	for _, file := range job.BesideUnread {
		all = append(all, Reason{Decision: "beside", Outcome: outBesideUnread.With(Name(file)), Because: whyBesideUnread.With(), Source: sameRoomDays.Source(), Binds: GoodPractice})
	}
	return all
}

// nearBeside is the work in other job files that is in a room of this job, within the days in which it counts as the same job.
func (job Job) nearBeside() []Work {
	return slices.DeleteFunc(slices.Clone(job.Beside), func(other Work) bool {
		return other.Where != Inside || !slices.ContainsFunc(job.leadWork(), func(w Work) bool {
			return w.Where == Inside && w.Area == other.Area && daysApart(w, other) <= int(sameRoomDays.Value)
		})
	})
}

// besideFacts are what a decision took from other job files: when they change, the plan is made again.
func (job Job) besideFacts() []string {
	all := slices.Clone(job.BesideUnread)
	for _, w := range job.Beside {
		all = append(all, fmt.Sprint(w.ID, " ", w.Area, " ", w.HowMuch, " ", w.AllDays()))
	}
	slices.Sort(all)
	return all
}

// unmeasured asks for square feet where they could make the job a small one.
func (job Job) unmeasured(would Text) []Missing {
	if slices.ContainsFunc(job.leadWork(), func(w Work) bool { return w.HowMuch > 0 && w.neverSmall() }) {
		return nil
	}
	var all []Missing
	for _, w := range job.leadWork() {
		if w.HowMuch <= 0 {
			all = append(all, Missing{fieldOf("work", w.ID, "how_much"), would.With()})
		}
	}
	return all
}
