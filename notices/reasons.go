package notices

import (
	"fmt"
	"strings"
)

var (
	whyApplies      = deskText("applies.before", Year(0))
	whyAppliesAge   = deskText("applies.age_unknown")
	whyAppliesNewer = deskText("applies.newer", Year(0))
	outTreatAsLead  = deskText("applies.treat_as_lead")
	outGoodPractice = deskText("applies.good_practice")
	whyPaid         = deskText("paid.yes")
	whyPaidUnknown  = deskText("paid.unknown")
	whyPaidNo       = deskText("paid.no")
	outRuleBinds    = deskText("paid.rule_binds")
	outRulePractice = deskText("paid.practice_only")
	outStay         = deskText("stay.rooms_shut", Name(""))
	whyStay         = deskText("stay.reaches_all")
	outElsewhere    = deskText("stay.elsewhere", Name(""))
	whyElsewhere    = deskText("stay.sleeps_at", Name(""))
	outSigns        = deskText("signs.count", Number(0), Name(""))
	whySigns        = deskText("signs.each_way")
	outWindows      = deskText("windows.close", Address(""))
	outNote         = deskText("windows.note_only", Address(""))
	whyWithin       = deskText("windows.within", Feet(0), Reach(0))
	whyBeyond       = deskText("windows.beyond", Feet(0), Reach(0))
	whySaidNear     = deskText("windows.said_near", Reach(0))
	whySaidFar      = deskText("windows.said_far", Reach(0))
	whyNotSure      = deskText("windows.not_sure", Reach(0))
	outHouseWindows = deskText("windows.own_house", Reach(0))
	whyHouseWindows = deskText("windows.own_house_why")
	outLetterBy     = deskText("due.letter", Day{})
	whyLetterBy     = deskText("due.letter_why", Number(0))
	outNeighboursBy = deskText("due.neighbours", Day{})
	whyNeighboursBy = deskText("due.neighbours_why", Number(0))
	outPamphlet     = deskText("due.pamphlet", Day{}, DayMailed{})
	whyPamphlet     = deskText("due.pamphlet_why")
	outLanguages    = deskText("languages.unknown", Name(""))
	whyLanguages    = deskText("languages.unknown_why")
	outStateRules   = deskText("state.not_checked", StateName(""))
	whyStateRules   = deskText("state.not_checked_why")
	outCheckMissing = deskText("check.not_decided")
	whyCheckMissing = deskText("check.not_decided_why")
)

// Values that only the coordinator's English reads, where a sentence may hold them.
type (
	Year      int
	Reach     Feet // the distance that a rule sets
	Day       Date
	DayMailed Date
	StateName string
)

func (Year) value()      {}
func (Reach) value()     {}
func (Feet) value()      {}
func (Day) value()       {}
func (DayMailed) value() {}
func (StateName) value() {}

func (r Reach) String() string     { return Feet(r).String() }
func (d Day) String() string       { return longDay(Date(d)) }
func (d DayMailed) String() string { return longDay(Date(d)) }

// String writes the distance without needless decimals: "14 ft", "14.5 ft".
func (f Feet) String() string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", float64(f)), ".0") + " ft"
}

func longDay(d Date) string {
	return fmt.Sprintf("%s, %s %d, %d", d.Weekday(), d.Month, d.Day, d.Year)
}

// reasons list every decision in the order in which a coordinator asks.
func reasons(job Job) []Reason {
	all := []Reason{applies(job), paid(job)}
	for _, h := range job.Households {
		all = append(all, stays(h))
	}
	for _, w := range job.Work {
		all = append(all, signCount(job, w))
	}
	if job.hasOutsideWork() {
		all = append(all, ownWindows())
	}
	for _, n := range job.neighboursToTell() {
		all = append(all, windows(n))
	}
	all = append(all, unknownLanguages(job)...)
	all = append(all, dueDates(job)...)
	return append(all, cautions(job)...)
}

func applies(job Job) Reason {
	r := Reason{Decision: "old_paint_rules", Outcome: outTreatAsLead.With(), Source: FirstYearWithout.Source()}
	switch {
	case job.Built == 0:
		r.Because = whyAppliesAge.With()
	case job.isOld():
		r.Because = whyApplies.With(Year(job.Built))
	default:
		r.Outcome, r.Because = outGoodPractice.With(), whyAppliesNewer.With(Year(job.Built))
	}
	return r
}

// isOld reports whether the rules for old paint bind the house. A house of unknown age is old.
func (job Job) isOld() bool { return float64(job.Built) < FirstYearWithout.Value }

func paid(job Job) Reason {
	r := Reason{Decision: "paid_work", Outcome: outRuleBinds.With(), Because: whyPaid.With(), Source: PaidSource}
	switch {
	case job.AnyonePaid == No:
		r.Outcome, r.Because = outRulePractice.With(), whyPaidNo.With()
	case !job.isOld():
		r.Outcome, r.Because = outRulePractice.With(), whyAppliesNewer.With(Year(job.Built))
	case job.AnyonePaid == Unknown:
		r.Because = whyPaidUnknown.With()
	}
	return r
}

func stays(h Household) Reason {
	for _, d := range h.OnWorkDays {
		if d.SleepsAt != "" {
			return Reason{"household_stays", h.ID, outElsewhere.With(Name(h.Name)), whyElsewhere.With(Name(d.SleepsAt)), RelocationSource}
		}
	}
	return Reason{"household_stays", h.ID, outStay.With(Name(h.Name)), whyStay.With(), StayOutSource}
}

func signCount(job Job, w Work) Reason {
	languages := len(distinct(append([]Language{English}, job.readers()...)))
	return Reason{"signs", w.ID, outSigns.With(Number(len(w.WaysIn)*languages), Name(w.ID)), whySigns.With(), SignSource}
}

func ownWindows() Reason {
	return Reason{"own_windows", "", outHouseWindows.With(Reach(WindowReach.Value)), whyHouseWindows.With(), WindowReach.Source()}
}

func windows(n Neighbour) Reason {
	outcome := outNote
	if withinReach(n) {
		outcome = outWindows
	}
	return Reason{"neighbour_windows", n.ID, outcome.With(Address(n.Address)), whyReach(n), WindowReach.Source() + "; " + NoNeighbourSource}
}

func whyReach(n Neighbour) Message {
	reach := Reach(WindowReach.Value)
	switch {
	case n.GapKnown && withinReach(n):
		return whyWithin.With(n.Gap, reach)
	case n.GapKnown:
		return whyBeyond.With(n.Gap, reach)
	case n.Near == Yes:
		return whySaidNear.With(reach)
	case n.Near == No:
		return whySaidFar.With(reach)
	}
	return whyNotSure.With(reach)
}

func unknownLanguages(job Job) []Reason {
	var all []Reason
	add := func(id, who string, languages []Language) {
		if len(languages) == 0 {
			all = append(all, Reason{"language_unknown", id, outLanguages.With(Name(who)), whyLanguages.With(), LanguageSource})
		}
	}
	for _, h := range job.Households {
		add(h.ID, h.Name, h.Languages)
	}
	for _, n := range job.neighboursToTell() {
		add(n.ID, n.Address, n.Languages)
	}
	return all
}

func dueDates(job Job) []Reason {
	var all []Reason
	if len(job.Households) > 0 {
		all = append(all, Reason{"letter_due", "", outLetterBy.With(Day(job.letterDue())), whyLetterBy.With(Number(LetterAhead.Value)), LetterAhead.Source()})
	}
	if len(job.neighboursToTell()) > 0 {
		all = append(all, Reason{"neighbours_due", "", outNeighboursBy.With(Day(job.neighbourDue())), whyNeighboursBy.With(Number(RequestAhead.Value)), RequestAhead.Source()})
	}
	if job.AnyonePaid != No && job.isOld() {
		first := firstDay(job.Work)
		earliest, mailed := first.Plus(-int(PamphletEarliest.Value)), first.Plus(-int(PamphletMailed.Value))
		all = append(all, Reason{"pamphlet_due", "", outPamphlet.With(Day(earliest), DayMailed(mailed)), whyPamphlet.With(), PamphletEarliest.Source() + "; " + PamphletMailed.Source()})
	}
	return all
}

func cautions(job Job) []Reason {
	var all []Reason
	if job.CheckedBy == NotDecided {
		all = append(all, Reason{"check", "", outCheckMissing.With(), whyCheckMissing.With(), "40 CFR 745.85(b); 24 CFR 35.1340"})
	}
	return append(all, Reason{"state_rules", "", outStateRules.With(StateName(job.State)), whyStateRules.With(), string(Practice)})
}
