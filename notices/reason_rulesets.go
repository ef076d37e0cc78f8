package notices

import (
	"slices"
	"strings"
)

var (
	outRenovation      = deskText("renovation.binds")
	outNoRenovation    = deskText("renovation.practice")
	whyPaid            = deskText("renovation.paid")
	whyPaidUnknown     = deskText("renovation.paid_unknown")
	whyNotPaid         = deskText("renovation.not_paid")
	whySmallRenovation = deskText("renovation.small", SquareFeet(0), Limit(0))
	whyNotOld          = deskText("renovation.not_old", Limit(0))
	whyNoLeadWork      = deskText("renovation.no_lead_work")
	wouldFreePaid      = deskText("renovation.would_free_paid")
	wouldFreeSmall     = deskText("renovation.would_free_small")

	outAided          = deskText("aided.binds")
	outNotAided       = deskText("aided.practice")
	whyAided          = deskText("aided.money")
	whyAidedUnknown   = deskText("aided.money_unknown")
	whyNotAided       = deskText("aided.no_money")
	whySmallAided     = deskText("aided.small")
	whyAidedEmergency = deskText("aided.emergency")
	wouldFreeAided    = deskText("aided.would_free")

	outProfile    = deskText("profile.holds", PlaceName(""))
	whyProfile    = deskText("profile.why")
	whyFrontSign  = deskText("profile.front_sign")
	outRepair     = deskText("profile.repair", PlaceName(""))
	whyRepair     = deskText("profile.repair_why")
	wouldBeRepair = deskText("profile.would_be_repair")
	outUnchecked  = deskText("profile.not_checked", PlaceName(""))
	whyUnchecked  = deskText("profile.not_checked_why")
)

// ruleSets say which rules bind this job, which are good practice only, and which unknown answer would change what.
func ruleSets(job Job) []Reason {
	return slices.Concat([]Reason{renovationRule(job)}, ownProgramme(job), []Reason{aidedRule(job)}, placeRules(job))
}

// renovationBinds: the federal renovation rule holds for paid work on old paint that is not a small job.
func (job Job) renovationBinds() bool {
	return job.isTargetHousing() && len(job.leadWork()) > 0 && job.AnyonePaid != No && !job.small(renovationLimits)
}

// aidedBinds: the housing rule holds where federal housing money is in the job, or may be. An emergency is exempt, as far as it reaches (24 CFR 35.115(a)(9)).
func (job Job) aidedBinds() bool {
	return job.isTargetHousing() && len(job.leadWork()) > 0 && job.FederalAid != No && job.Emergency != Yes && !job.small(aidedLimits)
}

// binds is for steps that either federal rule asks for.
func (job Job) binds() Binding {
	if job.renovationBinds() || job.aidedBinds() {
		return Law
	}
	return GoodPractice
}

// bindsBy is for a step that one row asks for: a row of the renovation rule alone binds nobody whom that rule does not bind.
func (job Job) bindsBy(row Rule) Binding {
	if strings.HasPrefix(row.Citation, "40 CFR 745") && !job.renovationBinds() {
		return GoodPractice
	}
	return job.binds()
}

// Citations of what both federal rules ask for.
var (
	signSource  = [2]string{"40 CFR 745.85(a)(1)", "24 CFR 35.1345(b)(2)"}
	checkSource = [2]string{"40 CFR 745.85(b)", "24 CFR 35.1340"}
)

// cites names only the rule that binds; where neither does, both, as good practice.
func (job Job) cites(both [2]string) string {
	switch paid, aided := job.renovationBinds(), job.aidedBinds(); {
	case paid && !aided:
		return both[0]
	case aided && !paid:
		return both[1]
	}
	return both[0] + "; " + both[1]
}

func renovationRule(job Job) Reason {
	r := Reason{Decision: "renovation_rule", Outcome: outNoRenovation.With(), Source: RenovationSource, Binds: GoodPractice}
	switch {
	case !job.isTargetHousing():
		r.Because, r.Source = whyNotOld.With(Limit(FirstYearWithout.Value)), FirstYearWithout.Source()
	case len(job.leadWork()) == 0:
		r.Because, r.Source = whyNoLeadWork.With(), TestSource
	case job.AnyonePaid == No:
		r.Because = whyNotPaid.With()
	case job.small(renovationLimits):
		r.Because, r.Source = whySmallRenovation.With(SquareFeet(SmallInside.Value), Limit(SmallOutside.Value)), SmallInside.Source()
	default:
		r.Outcome, r.Binds = outRenovation.With(), Law
		r.Because = whyPaid.With()
		if job.AnyonePaid == Unknown {
			r.Because = whyPaidUnknown.With()
			r.Missing = append(r.Missing, Missing{"anyone_paid", wouldFreePaid.With()})
		}
		r.Missing = append(r.Missing, job.unmeasured(wouldFreeSmall)...)
	}
	return r
}

func aidedRule(job Job) Reason {
	r := Reason{Decision: "housing_rule", Outcome: outNotAided.With(), Source: AidedSource, Binds: GoodPractice}
	switch {
	case !job.isTargetHousing():
		r.Because, r.Source = whyNotOld.With(Limit(FirstYearWithout.Value)), "24 CFR 35.115(a)(1)"
	case len(job.leadWork()) == 0:
		r.Because, r.Source = whyNoLeadWork.With(), AidedTestSource
	case job.FederalAid == No:
		r.Because = whyNotAided.With()
	case job.Emergency == Yes:
		r.Because, r.Source = whyAidedEmergency.With(), "24 CFR 35.115(a)(9)"
	case job.small(aidedLimits):
		r.Because, r.Source = whySmallAided.With(), AidedInside.Source()
	default:
		r.Outcome, r.Because, r.Binds = outAided.With(), whyAided.With(), Law
		if job.FederalAid == Unknown {
			r.Because = whyAidedUnknown.With()
			r.Missing = []Missing{{"federal_housing_money", wouldFreeAided.With()}}
		}
	}
	return r
}

// placeRules name the State and city rules that we hold, or say that nobody has checked them.
func placeRules(job Job) []Reason {
	var all []Reason
	for _, p := range job.profiles() {
		r := Reason{Decision: "place_rules", Outcome: outProfile.With(PlaceName(p.Name)), Because: whyProfile.With(), Source: p.sources(), Binds: job.lawOf(p)}
		if p.LeadOnly != "" && r.Binds == Law && job.LeadWork == Unknown {
			r.Missing = []Missing{{"because_of_lead", wouldBeRepair.With()}}
		}
		if p.LeadOnly != "" && job.LeadWork == No {
			r.Outcome, r.Because, r.Source = outRepair.With(PlaceName(p.Name)), whyRepair.With(), p.LeadOnly
		}
		if p.FrontSign {
			r.Because = whyFrontSign.With()
		}
		all = append(all, r)
	}
	if len(all) == 0 {
		why := whyUnchecked
		if job.State == StateUnknown {
			why = whyStateUnknown
		}
		all = append(all, Reason{Decision: "place_rules", Outcome: outUnchecked.With(PlaceName(job.place())), Because: why.With(), Source: string(Practice), Binds: GoodPractice})
	}
	return all
}

// lawOf: the rules of a place are about old paint too, and in some places about work that is done because of lead alone. Nobody has said counts as that.
func (job Job) lawOf(p Profile) Binding {
	if job.isOld() && len(job.leadWork()) > 0 && (p.LeadOnly == "" || job.LeadWork != No) {
		return Law
	}
	return GoodPractice
}

func (p Profile) sources() string {
	var all []string
	for _, row := range p.Rows {
		if !slices.Contains(all, row.Source()) {
			all = append(all, row.Source())
		}
	}
	return strings.Join(all, "; ")
}

// place is where the job is: "San Francisco, CA", or the State alone.
func (job Job) place() string {
	if job.State == StateUnknown {
		return "this place"
	}
	if job.City == "" {
		return job.State
	}
	return job.City + ", " + job.State
}
