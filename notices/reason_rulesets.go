package notices

import (
	"slices"
)

var (
	outRenovation      = ownText("renovation.binds")
	outNoRenovation    = ownText("renovation.practice")
	whyPaid            = ownText("renovation.paid")
	whyPaidByRent      = ownText("renovation.paid_by_rent")
	whyRentUnknown     = ownText("renovation.rent_unknown")
	wouldFreeRent      = ownText("renovation.would_free_rent")
	whyExempt          = ownText("renovation.exempt")
	whyPaidUnknown     = ownText("renovation.paid_unknown")
	whyNotPaid         = ownText("renovation.not_paid")
	whySmallRenovation = ownText("renovation.small", SquareFeet(0), Limit(0))
	whyNotOld          = ownText("renovation.not_old", Limit(0))
	whyNoLeadWork      = ownText("renovation.no_lead_work")
	wouldFreePaid      = ownText("renovation.would_free_paid")
	wouldFreeSmall     = ownText("renovation.would_free_small")

	outAided          = ownText("aided.binds")
	outNotAided       = ownText("aided.practice")
	whyAided          = ownText("aided.money")
	whyAidedUnknown   = ownText("aided.money_unknown")
	whyNotAided       = ownText("aided.no_money")
	whySmallAided     = ownText("aided.small")
	whyAidedEmergency = ownText("aided.emergency")
	wouldFreeAided    = ownText("aided.would_free")

	outProfile    = ownText("profile.holds", PlaceName(""))
	whyProfile    = ownText("profile.why")
	whyFrontSign  = ownText("profile.front_sign")
	outRepair     = ownText("profile.repair", PlaceName(""))
	whyRepair     = ownText("profile.repair_why")
	wouldBeRepair = ownText("profile.would_be_repair")
	wouldBeCity   = ownText("profile.would_be_city", PlaceName(""))
	outUnchecked  = ownText("profile.not_checked", PlaceName(""))
	whyUnchecked  = ownText("profile.not_checked_why")
)

// ruleSets say which rules bind this job, which are good practice only, and which unknown answer would change what.
func ruleSets(job Job) []Reason {
	return slices.Concat([]Reason{renovationRule(job)}, ownProgramme(job), []Reason{aidedRule(job)}, placeRules(job))
}

// renovationBinds: the federal renovation rule holds for paid work on old paint that is not a small job.
func (job Job) renovationBinds() bool {
	return job.isTargetHousing() && len(job.leadWork()) > 0 && job.isPaid() && !job.small(renovationLimits)
}

// isPaid: anybody is, or the landlord works, for rent is pay (EPA, frequent question 23002-18512, read in a copy). Unknown counts as yes.
func (job Job) isPaid() bool { return job.AnyonePaid != No || job.paidByRent() }

// rentSource is a question and its answer, read in a copy.
var rentSource = renovationSource.and(second("2026-11-26", "EPA frequent question 23002-18512"))

func (job Job) paidByRent() bool { return job.Owner != LivesHere && job.LandlordWorks != No }

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
	if row.by == byRenovation && !job.renovationBinds() {
		return GoodPractice
	}
	return job.binds()
}

// Citations of what both federal rules ask for.
var (
	signSource  = [2]Source{read("2026-11-25", "40 CFR 745.85(a)(1)"), read("2026-11-25", "24 CFR 35.1345(b)(2)")}
	checkSource = [2]Source{read("2026-11-25", "40 CFR 745.85(b)"), read("2026-11-25", "24 CFR 35.1340")}
)

// cites names only the rule that binds; where neither does, both, as good practice.
func (job Job) cites(both [2]Source) Source {
	switch paid, aided := job.renovationBinds(), job.aidedBinds(); {
	case paid && !aided:
		return both[0]
	case aided && !paid:
		return both[1]
	}
	return both[0].and(both[1])
}

func renovationRule(job Job) Reason {
	r := Reason{Decision: "renovation_rule", Outcome: outNoRenovation.With(), Source: renovationSource, Binds: GoodPractice}
	switch {
	case !job.builtBefore(firstYearWithout):
		r.Because, r.Source = whyNotOld.With(Limit(firstYearWithout.Value)), firstYearWithout.Source()
	case job.exempt():
		r.Because, r.Source = whyExempt.With(), exemptSource
	case len(job.leadWork()) == 0:
		r.Because, r.Source = whyNoLeadWork.With(), testSource
	case !job.isPaid():
		r.Because = whyNotPaid.With()
	case job.small(renovationLimits):
		r.Because, r.Source = whySmallRenovation.With(SquareFeet(smallInside.Value), Limit(smallOutside.Value)), smallInside.Source()
	default:
		r.Outcome, r.Binds = outRenovation.With(), Law
		r.Because, r.Missing = job.whoIsPaid()
		if job.AnyonePaid == No {
			r.Source = rentSource
		}
		r.Missing = slices.Concat(r.Missing, job.unmeasured(wouldFreeSmall), job.exemption())
	}
	return r
}

// whoIsPaid says why somebody is, or may be, and what could show that nobody is.
func (job Job) whoIsPaid() (Message, []Missing) {
	rent := job.paidByRent()
	var missing []Missing
	if job.AnyonePaid == Unknown {
		missing = append(missing, Missing{"anyone_paid", wouldFreePaid.With()})
	}
	if job.AnyonePaid != Yes && rent && job.LandlordWorks != Yes {
		missing = append(missing, Missing{"landlord_works", wouldFreeRent.With()})
	}
	switch {
	case job.AnyonePaid == Yes:
		return whyPaid.With(), nil
	case rent && job.LandlordWorks == Yes:
		return whyPaidByRent.With(), missing
	case job.AnyonePaid == Unknown:
		return whyPaidUnknown.With(), missing
	}
	return whyRentUnknown.With(), missing
}

func aidedRule(job Job) Reason {
	r := Reason{Decision: "housing_rule", Outcome: outNotAided.With(), Source: aidedSource, Binds: GoodPractice}
	switch {
	case !job.builtBefore(firstYearWithout):
		r.Because, r.Source = whyNotOld.With(Limit(firstYearWithout.Value)), read("2026-11-26", "24 CFR 35.115(a)(1)")
	case job.exempt():
		r.Because, r.Source = whyExempt.With(), exemptSource
	case len(job.leadWork()) == 0:
		r.Because, r.Source = whyNoLeadWork.With(), aidedTestSource
	case job.FederalAid == No:
		r.Because = whyNotAided.With()
	case job.Emergency == Yes:
		r.Because, r.Source = whyAidedEmergency.With(), read("2026-11-26", "24 CFR 35.115(a)(9)")
	case job.small(aidedLimits):
		r.Because, r.Source = whySmallAided.With(), aidedInside.Source()
	default:
		r.Outcome, r.Because, r.Binds = outAided.With(), whyAided.With(), Law
		if job.FederalAid == Unknown {
			r.Because = whyAidedUnknown.With()
			r.Missing = []Missing{{"federal_housing_money", wouldFreeAided.With()}}
		}
		r.Missing = append(r.Missing, job.exemption()...)
	}
	return r
}

// placeRules name the State and city rules that we hold, or say that nobody has checked them.
func placeRules(job Job) []Reason {
	var all []Reason
	for _, p := range job.profiles() {
		r := Reason{Decision: "place_rules", Outcome: outProfile.With(PlaceName(p.name)), Because: whyProfile.With(), Source: p.sources(), Binds: job.lawOf(p)}
		if len(p.leadOnly) > 0 && r.Binds == Law && job.LeadWork == Unknown {
			r.Missing = []Missing{{"because_of_lead", wouldBeRepair.With()}}
		}
		if len(p.leadOnly) > 0 && job.LeadWork == No {
			r.Outcome, r.Because, r.Source = outRepair.With(PlaceName(p.name)), whyRepair.With(), p.leadOnly
		}
		if len(p.leadOnly) > 0 && job.exempt() {
			r.Outcome, r.Because, r.Source = outRepair.With(PlaceName(p.name)), whyExempt.With(), p.exempt
		}
		if p.frontSign && job.hasOutsideWork() {
			r.Because = whyFrontSign.With()
		}
		all = append(all, r)
	}
	if len(all) == 0 {
		why := whyUnchecked
		if job.State == StateUnknown {
			why = whyStateUnknown
		}
		all = append(all, Reason{Decision: "place_rules", Outcome: outUnchecked.With(PlaceName(job.place())), Because: why.With(), Source: inPractice, Binds: GoodPractice, Missing: job.whichCity()})
	}
	return all
}

func (job Job) whichCity() []Missing {
	if city, might := job.cityRulesOf(); might {
		return []Missing{{"city", wouldBeCity.With(PlaceName(city))}}
	}
	return nil
}

// lawOf: the rules of a place are about old paint too, and in some places about work that is done because of lead alone,
// and not in homes that are exempt (Minnesota Rules 4761.2100 subp. 2 A, C and D). Nobody has said counts as work because of lead.
func (job Job) lawOf(p profile) Binding {
	if job.isOld() && len(job.leadWork()) > 0 && (len(p.leadOnly) == 0 || job.LeadWork != No && !job.exempt()) {
		return Law
	}
	return GoodPractice
}

func (p profile) sources() Source {
	var all Source
	for _, row := range p.rows {
		all = all.and(row.Source())
	}
	return all
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
