package notices

import "slices"

// A Stay is how a household lives through the work. A larger one protects more.
type Stay int

const (
	HomeOpen       Stay = iota // at home, out of the work areas until told
	AwayInHours                // out of the house while the crew works, until told
	SleepElsewhere             // elsewhere day and night, until told
)

var (
	outHomeOpen    = deskText("stay.home_open", Name(""))
	outAway        = deskText("stay.away_in_hours", Name(""))
	outElsewhere   = deskText("stay.elsewhere", Name(""))
	outTheyPlan    = deskText("stay.plan_elsewhere", Name(""))
	whyOutsideOnly = deskText("stay.outside_only")
	whyNoEntry     = deskText("stay.no_entry")
	whyOnePeriod   = deskText("stay.one_period", Length(0), Limit(0))
	whyFewDays     = deskText("stay.few_days", Number(0), Limit(0), Reach(0))
	whyTooLong     = deskText("stay.too_long", Number(0), Limit(0))
	whyNotNightly  = deskText("stay.not_nightly", Limit(0), Reach(0))
	whyNoReach     = deskText("stay.no_reach", Day{})
	whyAwayThen    = deskText("stay.away_then")
	whyTheyDoSo    = deskText("stay.they_do_so", Name(""))
	whyNothingDone = deskText("stay.no_lead_work")
	wouldStayHome  = deskText("stay.would_stay_home")
	wouldBeSaid    = deskText("stay.would_be_said")
)

// A verdict on one household: how it lives, and what decided it.
type verdict struct {
	stay    Stay
	chosen  bool // nobody asks for it: the household plans it anyway
	because Message
	source  string
	missing []Missing
}

func stays(job Job) []Reason {
	var all []Reason
	for _, h := range job.Households {
		v := job.stay(h)
		r := Reason{Decision: "household_stays", About: h.ID, Outcome: outcomeOf(v.stay).With(Name(h.Name)), Because: v.because, Source: v.source, Binds: GoodPractice, Missing: v.missing}
		switch {
		case v.chosen:
			r.Outcome = outTheyPlan.With(Name(h.Name))
		case job.aidedBinds():
			r.Binds = Law
		}
		all = append(all, r)
	}
	return all
}

func outcomeOf(s Stay) Text { return []Text{outHomeOpen, outAway, outElsewhere}[s] }

// stay decides whether a household may stay: relocation is the rule, and each exception has to be shown (24 CFR 35.1345(a)(2)). Whoever already plans to sleep
// elsewhere does so.
func (job Job) stay(h Household) verdict {
	v := job.mayStay(h)
	if at, day := h.plansToSleep(); !day.IsZero() && v.stay < SleepElsewhere && len(job.leadWork()) > 0 {
		v = verdict{stay: SleepElsewhere, chosen: true, because: whyTheyDoSo.With(Name(at)), source: RelocationSource}
	}
	if v.stay == SleepElsewhere {
		v.missing = append(v.missing, h.notAgreed()...)
	}
	return v
}

func (job Job) mayStay(h Household) verdict {
	inside := slices.DeleteFunc(job.leadWork(), func(w Work) bool { return w.Where != Inside })
	switch {
	case len(job.leadWork()) == 0:
		return verdict{because: whyNothingDone.With(), source: TestSource}
	case len(inside) == 0:
		return job.outsideOnly(h)
	}
	day, reached := job.firstUnreached(h)
	if hours, one := onePeriod(inside, job.rule(OnePeriod)); one {
		why := whyOnePeriod.With(Length(hours), Limit(job.rule(OnePeriod).Value))
		return atHomeOr(reached, verdict{because: why, source: OnePeriod.Source()}, job.awayOr(h, day))
	}
	return job.severalDays(h, inside)
}

// outsideOnly: the household may stay with an entry that does not lead through the work.
func (job Job) outsideOnly(h Household) verdict {
	for _, day := range WorkDays(job.leadWork()) {
		if d, ok := h.on(day); ok && (job.awayIsEnough(d) || d.SleepsAt != "") {
			continue
		}
		if d, ok := h.on(day); !ok || d.UsesDoor == "" || job.isWayInto(d.UsesDoor, day) {
			return verdict{stay: SleepElsewhere, because: whyNoEntry.With(), source: EntrySource}
		}
	}
	if slices.ContainsFunc(h.OnWorkDays, func(d DayAtHome) bool { return d.Away == Yes }) {
		return verdict{stay: AwayInHours, because: whyAwayThen.With(), source: EntrySource}
	}
	return verdict{because: whyOutsideOnly.With(), source: EntrySource}
}

// severalDays: few calendar days, each ended with a clean, each with a door, bed, bathroom and kitchen in reach.
func (job Job) severalDays(h Household, inside []Work) verdict {
	few, strip := job.rule(FewDays), job.rule(NightlyStrip)
	days := calendarDays(inside)
	day, reached := job.firstUnreached(h)
	elsewhere := verdict{stay: SleepElsewhere, source: RelocationSource}
	switch {
	case float64(days) > few.Value:
		elsewhere.because = whyTooLong.With(Number(days), Limit(few.Value))
	case !allNightly(inside):
		elsewhere.because = whyNotNightly.With(Limit(few.Value), Reach(strip.Value))
		elsewhere.missing = notNightly(inside)
	case !reached:
		elsewhere.because = whyNoReach.With(Day(day))
	default:
		return verdict{because: whyFewDays.With(Number(days), Limit(few.Value), Reach(strip.Value)), source: FewDays.Source()}
	}
	return elsewhere
}

func atHomeOr(reached bool, home, otherwise verdict) verdict {
	if reached {
		return home
	}
	return otherwise
}

// awayOr: whoever is out for the one period, and has a bed to come back to once told, need not sleep elsewhere.
func (job Job) awayOr(h Household, day Date) verdict {
	for _, d := range WorkDays(job.leadWork()) {
		if at, ok := h.on(d); !ok || !job.awayIsEnough(at) && at.SleepsAt == "" && !job.reachesAll(at) {
			return verdict{stay: SleepElsewhere, because: whyNoReach.With(Day(day)), source: RelocationSource}
		}
	}
	return verdict{stay: AwayInHours, because: whyAwayThen.With(), source: OnePeriod.Source()}
}

// awayIsEnough: out until told. Outside work that goes on on another day leaves an area that nobody may walk through in the night between; then an entry is
// needed all the same.
func (job Job) awayIsEnough(d DayAtHome) bool {
	goesOn := slices.ContainsFunc(job.outsideWork(), func(w Work) bool { return w.Days[0].Compare(d.Day) <= 0 && w.Days[len(w.Days)-1].Compare(d.Day) > 0 })
	return d.Away == Yes && (!goesOn || d.UsesDoor != "" && !job.isWayInto(d.UsesDoor, d.Day))
}

// firstUnreached is the first work day on which the household lacks a door, a bed, a bathroom or a kitchen; reached when there is none.
func (job Job) firstUnreached(h Household) (day Date, reached bool) {
	for _, day := range WorkDays(job.leadWork()) {
		d, ok := h.on(day)
		if d.SleepsAt == "" && (!ok || d.Away == Yes || !job.reachesAll(d)) {
			return day, false
		}
	}
	return Date{}, true
}

// reachesAll: a door that is no way into the work, and a bed, bathroom and kitchen.
func (job Job) reachesAll(d DayAtHome) bool {
	if d.UsesDoor == "" || job.isWayInto(d.UsesDoor, d.Day) {
		return false
	}
	return !slices.ContainsFunc(Needs, func(n Need) bool { return !meets(d.Reaches, n) })
}

func (job Job) isWayInto(way Way, day Date) bool {
	return slices.ContainsFunc(job.leadWork(), func(w Work) bool {
		return slices.Contains(w.Days, day) && slices.Contains(w.WaysIn, way)
	})
}

func (h Household) on(day Date) (DayAtHome, bool) {
	i := slices.IndexFunc(h.OnWorkDays, func(d DayAtHome) bool { return d.Day == day })
	if i < 0 {
		return DayAtHome{}, false
	}
	return h.OnWorkDays[i], true
}

// onePeriod is the length from set-up to the end of cleaning, when all inside work is on one day, in daytime, and no longer than the rule allows.
func onePeriod(inside []Work, longest Rule) (Clock, bool) {
	first, last := inside[0].CrewArrives, inside[0].CleanedBy
	for _, w := range inside {
		first, last = min(first, w.CrewArrives), max(last, w.CleanedBy)
	}
	daytime := first >= Clock(DayStarts.Value*60) && last <= Clock(DayEnds.Value*60)
	return last - first, len(WorkDays(inside)) == 1 && daytime && last-first <= Clock(longest.Value*60)
}

// calendarDays counts from the first day to the last, whether or not anybody works in between.
func calendarDays(works []Work) int {
	days := WorkDays(works)
	return days[0].daysUntil(days[len(days)-1]) + 1
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
func (h Household) notAgreed() []Missing {
	var all []Missing
	ask := func(field, answer string) {
		if answer == "" {
			all = append(all, Missing{fieldOf("households", h.ID, "elsewhere."+field), wouldBeSaid.With()})
		}
	}
	ask("where", h.sleepsAt())
	ask("travel", string(h.Elsewhere.Travel))
	ask("paid_by", string(h.Elsewhere.PaidBy))
	ask("medicines", string(h.Elsewhere.Medicines))
	ask("pets", string(h.Elsewhere.Pets))
	ask("keys", string(h.Elsewhere.Keys))
	return all
}

// sleepsAt is where the household sleeps elsewhere; "" when nobody has said.
func (h Household) sleepsAt() string {
	if h.Elsewhere.Where != "" {
		return h.Elsewhere.Where
	}
	at, _ := h.plansToSleep()
	return at
}

// plansToSleep is the first day on which the household plans to sleep elsewhere, and where; zero when it plans none.
func (h Household) plansToSleep() (at string, from Date) {
	for _, d := range h.inOrder() {
		if d.SleepsAt != "" {
			return d.SleepsAt, d.Day
		}
	}
	return "", Date{}
}

// inOrder are the days of the household, earliest first, however the file lists them.
func (h Household) inOrder() []DayAtHome {
	days := slices.Clone(h.OnWorkDays)
	slices.SortStableFunc(days, func(a, b DayAtHome) int { return a.Day.Compare(b.Day) })
	return days
}
