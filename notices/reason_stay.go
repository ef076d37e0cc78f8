package notices

import (
	"reflect"
	"slices"
	"strings"
)

// A Stay is how a household lives through the work. A larger one protects more.
type stay int

const (
	homeOpen       stay = iota // at home, out of the work areas until told
	awayInHours                // out of the house while the crew works, until told
	sleepElsewhere             // elsewhere day and night, until told
)

var (
	outHomeOpen    = ownText("stay.home_open", Name(""))
	outAway        = ownText("stay.away_in_hours", Name(""))
	outElsewhere   = ownText("stay.elsewhere", Name(""))
	outAskFirst    = ownText("stay.ask_first", Name(""))
	outTheyPlan    = ownText("stay.plan_elsewhere", Name(""))
	whyOutsideOnly = ownText("stay.outside_only")
	whyOnePeriod   = ownText("stay.one_period", Length(0), Limit(0))
	whyFewDays     = ownText("stay.few_days", Number(0), Limit(0), Reach(0))
	whyTooLong     = ownText("stay.too_long", Number(0), Limit(0))
	whyNotNightly  = ownText("stay.not_nightly", Limit(0), Reach(0))
	whyNoReach     = ownText("stay.no_reach", Day{}, PlaceName(""))
	outHold        = ownText("stay.begin_after", Name(""), PlaceName(""))
	whyHold        = ownText("stay.begin_after_why", Name(""))
	whyNotAgreed   = ownText("stay.not_agreed", PlaceName(""))
	whyNotSaid     = ownText("stay.not_said", Day{})
	whyAwayThen    = ownText("stay.away_then")
	whyTheyDoSo    = ownText("stay.they_do_so", Name(""))
	whyNothingDone = ownText("stay.no_lead_work")
	wouldStayHome  = ownText("stay.would_stay_home")
	wouldReach     = ownText("stay.would_reach")
	wouldBeSaid    = ownText("stay.would_be_said")
)

// mustSleepElsewhere says why the household could not stay even if it wanted to: a rule sends it out, or what it would use is shut. What nobody has said sends nobody out here,
// because it goes anyway.
func (job Job) mustSleepElsewhere(h Household) (because Message, must bool) {
	h.Usual.SleepsAt = ""
	h.Except = slices.Clone(h.Except)
	for i := range h.Except {
		h.Except[i].SleepsAt = ""
	}
	if v := job.mayStay(h); v.byRule {
		return v.because, true
	}
	for _, l := range job.lives(h) {
		if len(l.blocked) > 0 {
			return l.why(), true
		}
	}
	return Message{}, false
}

// A verdict on one household: how it lives, and what decided it.
type verdict struct {
	stay    stay
	byRule  bool // however the household lives: the work takes too long, or is not cleaned every night
	chosen  bool // nobody asks for it: the household plans it anyway
	because Message
	source  Source
	missing []Missing
}

func stays(job Job) []Reason {
	var all []Reason
	for _, h := range job.householdsToTell() {
		v := job.stay(h)
		r := Reason{Decision: "household_stays", About: h.ID, Outcome: outcomeOf(v.stay).With(Name(h.Name)), Because: v.because, Source: v.source, Binds: GoodPractice, Missing: v.missing}
		switch {
		case v.chosen:
			r.Outcome = outTheyPlan.With(Name(h.Name))
		case v.stay == sleepElsewhere && !v.byRule && len(job.unanswered(h)) > 0:
			r.Outcome = outAskFirst.With(Name(h.Name))
		}
		if job.aidedBinds() && !v.chosen {
			r.Binds = Law
		}
		all = append(all, r)
		all = append(all, job.holds(h)...)
	}
	return all
}

// holds say which work must not begin before which other has passed, because a household counts on it.
func (job Job) holds(h Household) []Reason {
	var all []Reason
	for _, l := range job.lives(h) {
		if !l.works() {
			continue
		}
		for _, other := range l.relies {
			first, then := other, l.state.shut
			if then.from.compare(first.from) < 0 {
				first, then = then, first
			}
			if job.Checked(first.Work) == CheckPassed {
				continue
			}
			r := Reason{Decision: "begin_after", About: h.ID, Outcome: outHold.With(Name(then.ID), PlaceName(first.ID)), Because: whyHold.With(Name(h.Name)), Source: stayOutSource, Binds: job.binds()}
			if !slices.ContainsFunc(all, func(known Reason) bool { return reflect.DeepEqual(known.Outcome, r.Outcome) }) {
				all = append(all, r)
			}
		}
	}
	return all
}

func outcomeOf(s stay) Text { return []Text{outHomeOpen, outAway, outElsewhere}[s] }

// stay decides whether a household may stay: relocation is the rule, and each exception has to be shown (24 CFR 35.1345(a)(2)). Whoever already plans to sleep
// elsewhere does so.
func (job Job) stay(h Household) verdict {
	v := job.mayStay(h)
	if _, plans := job.plansToSleep(h); plans && v.stay == sleepElsewhere && !v.byRule {
		because, must := job.mustSleepElsewhere(h)
		if v.chosen = !must; must {
			v.because = because
		}
	}
	if missing := job.unanswered(h); len(missing) > 0 {
		v.missing = append(v.missing, missing...)
	} else if v.stay == sleepElsewhere {
		v.missing = append(v.missing, job.notAgreed(h)...)
	}
	return v
}

func (job Job) mayStay(h Household) verdict {
	inside := insideOf(job.leadWork())
	switch {
	case len(job.leadWork()) == 0:
		return verdict{because: whyNothingDone.With(), source: testSource}
	case len(inside) == 0 && len(job.dirtyRooms()) == 0:
		return job.outsideOnly(h)
	}
	if hours, one := onePeriod(inside, job.rule(onePeriodLimit)); one && len(job.againOf(inside)) == 0 {
		home := verdict{because: whyOnePeriod.With(Length(hours), Limit(job.rule(onePeriodLimit).Value)), source: onePeriodLimit.Source()}
		return job.unlessBlocked(h, home, onePeriodLimit.Source())
	}
	return job.severalDays(h, inside)
}

// unlessBlocked is what a rule allows, when the household reaches all it needs in each state; or out in hours, when it is out for one of them.
func (job Job) unlessBlocked(h Household, home verdict, source Source) verdict {
	stay := home
	for _, l := range job.lives(h) {
		switch {
		case !l.works():
			return verdict{stay: sleepElsewhere, because: l.why(), source: relocationSource}
		case l.uses.Away == Yes:
			stay = verdict{stay: awayInHours, because: whyAwayThen.With(), source: source}
		}
	}
	return stay
}

// why says what the household lacks in a state.
func (l life) why() Message {
	if l.uses.SleepsAt != "" {
		return whyTheyDoSo.With(Name(l.uses.SleepsAt))
	}
	if len(l.borrows) > 0 {
		return whyNotAgreed.With(PlaceName(placeNames(l.borrows)))
	}
	if len(l.blocked) == 0 {
		return whyNotSaid.With(Day(l.state.from.Day))
	}
	return whyNoReach.With(Day(l.from().Day), PlaceName(placeNames(l.blocked)))
}

func placeNames(places []Place) string {
	var names []string
	for _, p := range places {
		if name := strings.ReplaceAll(string(p), "_", " "); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

// outsideOnly: the household may stay with an entry that does not lead through the work.
func (job Job) outsideOnly(h Household) verdict {
	for _, l := range job.lives(h) {
		if !l.works() {
			return verdict{stay: sleepElsewhere, because: l.why(), source: entrySource}
		}
	}
	return job.unlessBlocked(h, verdict{because: whyOutsideOnly.With(), source: entrySource}, entrySource)
}

// severalDays: few calendar days, each ended with a clean, each with a door, bed, bathroom and kitchen in reach. Rain days and days of cleaning again count; waiting for
// a laboratory does not.
func (job Job) severalDays(h Household, inside []Work) verdict {
	few, strip := job.rule(fewDays), job.rule(NightlyStrip)
	days := 0
	if len(inside) > 0 {
		days = job.calendarDays(inside)
	}
	elsewhere := verdict{stay: sleepElsewhere, source: relocationSource}
	switch {
	case float64(days) > few.Value:
		elsewhere.byRule, elsewhere.because = true, whyTooLong.With(Number(days), Limit(few.Value))
	case !allNightly(inside):
		elsewhere.byRule, elsewhere.because = true, whyNotNightly.With(Limit(few.Value), Reach(strip.Value))
		elsewhere.missing = notNightly(inside)
	default:
		for _, l := range job.lives(h) {
			if !l.works() || l.uses.Away == Yes {
				elsewhere.because = l.why()
				return elsewhere
			}
		}
		return verdict{because: whyFewDays.With(Number(days), Limit(few.Value), Reach(strip.Value)), source: fewDays.Source()}
	}
	return elsewhere
}

// onePeriod is the length from set-up to the end of cleaning, when all inside work is on one day, in daytime, and no longer than the rule allows.
func onePeriod(inside []Work, longest Rule) (Clock, bool) {
	if len(inside) == 0 {
		return 0, false
	}
	first, last := inside[0].CrewArrives, inside[0].CleanedBy
	for _, w := range inside {
		first, last = min(first, w.CrewArrives), max(last, w.CleanedBy)
	}
	daytime := first >= Clock(dayStarts.Value*60) && last <= Clock(dayEnds.Value*60)
	return last - first, len(allDaysOf(inside)) == 1 && daytime && last-first <= Clock(longest.Value*60)
}

// allDaysOf are the days of some work, rain days and days that were lost once begun among them.
func allDaysOf(works []Work) []Date {
	var days []Date
	for _, w := range works {
		days = slices.Concat(days, w.AllDays(), w.begunDays())
	}
	return sortedDays(days)
}

// calendarDays counts from the first day of work to the last cleaning, whether or not anybody works in between.
func (job Job) calendarDays(works []Work) int {
	days := sortedDays(append(job.againOf(works), allDaysOf(works)...))
	return days[0].daysUntil(days[len(days)-1]) + 1
}

// againOf are the days on which some work is cleaned again.
func (job Job) againOf(works []Work) []Date {
	var days []Date
	for _, w := range works {
		days = append(days, job.againDays(w)...)
	}
	return days
}

func allNightly(works []Work) bool {
	return !slices.ContainsFunc(works, func(w Work) bool { return w.Nightly != Yes })
}

func notNightly(works []Work) []Missing {
	var all []Missing
	for _, w := range works {
		if w.Nightly == Unknown {
			all = append(all, Missing{fieldOf("work", w.ID, "cleaned_nightly"), wouldStayHome.With()})
		}
	}
	return all
}

// notAgreed asks for what a household needs to know before it sleeps elsewhere.
func (job Job) notAgreed(h Household) []Missing {
	var all []Missing
	ask := func(field, answer string) {
		if answer == "" {
			all = append(all, Missing{fieldOf("households", h.ID, "elsewhere."+field), wouldBeSaid.With()})
		}
	}
	if h.ReachAt == "" {
		all = append(all, Missing{fieldOf("households", h.ID, "reach_at"), wouldReach.With()})
	}
	ask("where", job.sleepsAt(h))
	ask("travel", string(h.Elsewhere.Travel))
	ask("paid_by", string(h.Elsewhere.PaidBy))
	ask("medicines", string(h.Elsewhere.Medicines))
	ask("pets", string(h.Elsewhere.Pets))
	ask("keys", string(h.Elsewhere.Keys))
	return all
}

// sleepsAt is where the household sleeps elsewhere; "" when nobody has said.
func (job Job) sleepsAt(h Household) string {
	if h.Elsewhere.Where != "" {
		return h.Elsewhere.Where
	}
	at, _ := job.plansToSleep(h)
	return at
}

// plansToSleep is where the household plans to sleep elsewhere, and from when; false when it plans none.
func (job Job) plansToSleep(h Household) (at string, plans bool) {
	for _, l := range job.lives(h) {
		if l.uses.SleepsAt != "" {
			return l.uses.SleepsAt, true
		}
	}
	return "", false
}
