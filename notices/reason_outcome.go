package notices

import (
	"slices"
	"strings"
)

// A WorkState says how far the check of a piece of work has come.
type WorkState int

const (
	notChecked WorkState = iota
	CheckFailed
	CheckPassed
)

// Checked is the state of a piece of work: what the last check found. Numbers can only stop a letter: while a failing sample stands, the work has not
// passed, and samples alone never pass it.
func (job Job) Checked(w Work) WorkState {
	if w.checkedWith != "" {
		return CheckFailed
	}
	last, ok := job.lastCheck(w)
	if !ok {
		return notChecked
	}
	if _, stopped := job.stopping(w); stopped || last.Result != Passed {
		return CheckFailed
	}
	if len(job.objectionTo(last, w).source) > 0 {
		return notChecked
	}
	return CheckPassed
}

// lastCheck is the latest check of a piece of work; of two on one day, the one further down in the file.
func (job Job) lastCheck(w Work) (CheckResult, bool) {
	var last CheckResult
	found := false
	for _, c := range job.Checks {
		if c.Work == w.ID && (!found || c.On.Compare(last.On) >= 0) {
			last, found = c, true
		}
	}
	return last, found
}

// stopping is the failing sample that undoes the last pass of a piece of work. Where nothing has passed there is nothing to undo.
func (job Job) stopping(w Work) (Wipe, bool) {
	last, ok := job.lastCheck(w)
	if !ok || last.Result != Passed {
		return Wipe{}, false
	}
	return job.worstSample(w, func(wipe Wipe) bool { return !job.answered(wipe, last) })
}

// worstSample is the failing sample furthest above its level, among those of a piece of work that count.
func (job Job) worstSample(w Work, counts func(Wipe) bool) (worst Wipe, found bool) {
	for _, wipe := range job.Wipes {
		if wipe.Work == w.ID && wipe.fails() && counts(wipe) && (!found || wipe.share() > worst.share()) {
			worst, found = wipe, true
		}
	}
	return worst, found
}

// share is how many times the level a sample is.
func (w Wipe) share() float64 { return w.Loading / w.level() }

// answered reports whether a failing sample is older news at the last pass: the area was found dirty and cleaned again in between, or the same surface was
// sampled again and did not fail. Of things on one day nobody knows which came first, and then the sample stands.
func (job Job) answered(wipe Wipe, pass CheckResult) bool {
	return job.cleanedSince(wipe, pass) || job.sampledAgain(wipe, pass)
}

// answeredSince reports whether the last pass of the work answers a failing sample.
func (job Job) answeredSince(wipe Wipe) bool {
	w, _ := job.workOf(wipe.Work)
	last, ok := job.lastCheck(w)
	return ok && last.Result == Passed && len(job.objectionTo(last, w).source) == 0 && job.answered(wipe, last)
}

func (job Job) workOf(id string) (Work, bool) {
	i := slices.IndexFunc(job.Work, func(w Work) bool { return w.ID == id })
	if i < 0 {
		return Work{}, false
	}
	return job.Work[i], true
}

// cleanedSince: a failed check, or a day of cleaning again that it named, lies between the sample's report and the pass.
func (job Job) cleanedSince(wipe Wipe, pass CheckResult) bool {
	return slices.ContainsFunc(job.Checks, func(c CheckResult) bool {
		if c.Work != wipe.Work || c.Result != Failed || c.On.Compare(pass.On) >= 0 {
			return false
		}
		return slices.ContainsFunc(append([]Date{c.On}, c.Again...), func(day Date) bool {
			return day.Compare(wipe.Lab) >= 0 && day.Compare(pass.On) <= 0
		})
	})
}

// sampledAgain: a later sample of the same spot did not fail, and the pass came with it or after it (24 CFR 35.1340(e)).
func (job Job) sampledAgain(wipe Wipe, pass CheckResult) bool {
	return slices.ContainsFunc(job.Wipes, func(again Wipe) bool {
		return wipe.sameSpot(again) && !again.fails() &&
			again.Lab.Compare(wipe.Lab) > 0 && again.Lab.Compare(pass.On) <= 0
	})
}

// sameSpot: a spot that nobody named is like no other, for a good sample beside it does not undo a bad one.
func (w Wipe) sameSpot(other Wipe) bool {
	return w.Work == other.Work && w.Room == other.Room && w.Surface == other.Surface && w.Spot != "" && w.Spot == other.Spot
}

// inState is the lead work that is in one state, and the rooms in which a sample failed.
func (job Job) inState(state WorkState) []Work {
	return slices.DeleteFunc(job.keepOutWork(), func(w Work) bool { return job.Checked(w) != state })
}

// OpenWork is what people still have to be kept out of.
func (job Job) OpenWork() []Work {
	return slices.DeleteFunc(job.keepOutWork(), func(w Work) bool { return job.Checked(w) == CheckPassed })
}

// keepOutWork is the lead work, and the rooms in which a sample failed.
func (job Job) keepOutWork() []Work {
	all := job.leadWork()
	for _, s := range job.dirtyRooms() {
		all = append(all, s.Work)
	}
	return all
}

func (job Job) passedWork() []Work { return job.inState(CheckPassed) }

// finished: every piece of work has passed.
func (job Job) finished() bool { return len(job.leadWork()) > 0 && len(job.OpenWork()) == 0 }

var (
	outNotChecked    = ownText("outcome.not_checked", Name(""))
	outPassed        = ownText("outcome.passed", Name(""))
	outFailed        = ownText("outcome.failed", Name(""))
	outStopped       = ownText("outcome.stopped", Name(""))
	outPassCountsNot = ownText("outcome.pass_counts_not", Name(""))
	outDirtyRoom     = ownText("outcome.dirty_room", PlaceName(""))
	whyWaitsTest     = ownText("outcome.waits_for_examiner")
	whyWaitsCheck    = ownText("outcome.waits_for_check")
	whyWaitsLook     = ownText("outcome.waits_for_look")
	whyPassed        = ownText("outcome.passed_why", Name(""), Day{})
	whyFailed        = ownText("outcome.failed_why", Name(""), Day{})
	whyAtLevel       = ownText("outcome.at_level", Day{}, PlaceName(""), Reading(""), Level(0), SecondDay{})
	whyNotShown      = ownText("outcome.not_shown", Day{}, PlaceName(""), Reading(""), Level(0), SecondDay{})
	wouldSetDays     = ownText("outcome.would_set_days")
	outComesHome     = ownText("outcome.comes_home", Name(""))
	whyComesHome     = ownText("outcome.comes_home_why")
	outStaysAway     = ownText("outcome.stays_away", Name(""))
	whyStaysAway     = ownText("outcome.stays_away_why")
	outAfterWork     = ownText("after.outcome", Day{})
	whyAfterRecords  = ownText("after.records", Number(0), SecondDay{})
	whyAfterAided    = ownText("after.aided", Number(0), SecondDay{})
	outAfterShared   = ownText("after.shared")
	whyAfterShared   = ownText("after.shared_why")
	outEachHome      = ownText("common.each_home", Number(0), Day{})
	whyEachHome      = ownText("common.each_home_why")
	outSharedSigns   = ownText("common.signs", Number(0))
	whySharedSigns   = ownText("common.signs_why")
	outStatement     = ownText("common.statement")
	whyStatement     = ownText("common.statement_why")
)

// A Reading is a laboratory's result as it reported it.
type Reading string

// A Level is a dust-lead level in micrograms per square foot.
type Level float64

func (Reading) value() {}
func (Level) value()   {}

func (r Reading) String() string { return string(r) }
func (l Level) String() string   { return perSquareFoot(float64(l)) }

// outcomes are the decisions of the end of a job: each piece of work passed, failed, stopped or waiting; who comes home; what remains to be told.
func outcomes(job Job) []Reason {
	var all []Reason
	for _, w := range job.leadWork() {
		all = append(all, job.outcome(w))
	}
	for _, s := range job.dirtyRooms() {
		all = append(all, job.dirtyRoom(s))
	}
	return slices.Concat(all, job.passWarnings(), job.homecomings(), job.afterWorkReasons(), job.sharedReasons())
}

func (job Job) outcome(w Work) Reason {
	r := Reason{Decision: "outcome", About: w.ID, Source: job.cites(checkSource), Binds: job.binds()}
	last, _ := job.lastCheck(w)
	switch wipe, stopped := job.stopping(w); {
	case stopped:
		r.Outcome, r.Because, r.Source = outStopped.With(Name(w.ID)), wipe.because(), wipe.source()
	case job.Checked(w) == CheckPassed:
		r.Outcome, r.Because = outPassed.With(Name(w.ID)), whyPassed.With(Name(last.By), Day(last.On))
	case job.Checked(w) == CheckFailed:
		r.Outcome, r.Because = outFailed.With(Name(w.ID)), whyFailed.With(Name(last.By), Day(last.On))
		if len(last.Again) == 0 {
			r.Missing = []Missing{{"checks", wouldSetDays.With()}}
		}
	case hasObjection(job.objectionTo(last, w), last):
		objection := job.objectionTo(last, w)
		r.Outcome, r.Because, r.Source, r.Binds = outPassCountsNot.With(Name(w.ID)), objection.because, objection.source, objection.binds
	default:
		r.Outcome, r.Because = outNotChecked.With(Name(w.ID)), job.check().why.With()
		if wipe, bad := job.worstSample(w, func(Wipe) bool { return true }); bad {
			r.Because, r.Source = wipe.because(), wipe.source()
		}
	}
	return r
}

// dirtyRoom is a room that is shut because of a sample alone.
func (job Job) dirtyRoom(s shut) Reason {
	wipe, _ := job.worstSample(Work{ID: s.checkedWith}, func(w Wipe) bool { return w.Room == s.Area })
	return Reason{Decision: "outcome", About: s.ID, Outcome: outDirtyRoom.With(PlaceName(strings.ReplaceAll(string(s.Area), "_", " "))), Because: wipe.because(), Source: read("2026-11-25", "24 CFR 35.1340(e)").and(wipe.source()), Binds: job.binds()}
}

func hasObjection(o objection, last CheckResult) bool {
	return len(o.source) > 0 && last.Result == Passed
}

// source is the level that a sample is compared with, and what a comparison means.
func (w Wipe) source() Source {
	return levelsOn(w.Lab).source().and(read("2026-11-25", "24 CFR 35.1340(d)"))
}

// because names the sample that stops a letter, with the level of the day of its report.
func (w Wipe) because() Message {
	why := whyAtLevel
	if w.Below {
		why = whyNotShown
	}
	levels := levelsOn(w.Lab)
	return why.With(Day(w.Lab), PlaceName(strings.ReplaceAll(string(w.Surface)+", "+string(w.Room), "_", " ")), w.reading(), Level(w.level()), SecondDay(levels.from))
}

// homecomings: who sleeps elsewhere comes home when that is over, and not before.
func (job Job) homecomings() []Reason {
	var all []Reason
	for _, h := range job.householdsToTell() {
		if job.stay(h).stay != sleepElsewhere || len(job.passedWork()) == 0 {
			continue
		}
		r := Reason{Decision: "comes_home", About: h.ID, Outcome: outStaysAway.With(Name(h.Name)), Because: whyStaysAway.With(), Source: stayOutSource, Binds: job.binds()}
		if job.mayReturn(h) {
			r.Outcome, r.Because = outComesHome.With(Name(h.Name)), whyComesHome.With()
		}
		all = append(all, r)
	}
	return all
}
