package notices

import "slices"

var (
	whyManyHomes     = ownText("applies.many_homes", Year(0), Period(""), Percent(0))
	whyAgeUnknown    = ownText("applies.age_unknown", Limit(0))
	whyNewer         = ownText("applies.newer", Year(0), Limit(0))
	whyOldThere      = ownText("applies.old_there", Year(0), Limit(0), PlaceName(""))
	outTreatAsLead   = ownText("applies.treat_as_lead")
	outAllFree       = ownText("applies.shown_free")
	outNotOld        = ownText("applies.not_old")
	wouldExempt      = ownText("applies.would_exempt")
	wouldHaveNoChild = ownText("applies.would_have_no_child")
	wouldTakeAway    = ownText("applies.would_take_away", Limit(0))
	outShownFree     = ownText("tests.shown_free", Name(""))
	whyShownFree     = ownText("tests.shown_free_why")
	outStillLead     = ownText("tests.still_lead", Name(""))
	whyLeadFound     = ownText("tests.lead_found")
	whyNotCounted    = ownText("tests.not_counted")
	whyKitNotAided   = ownText("tests.not_counted_aided")
	whyNotAll        = ownText("tests.not_all")
	whyNotClear      = ownText("tests.not_clear")
	wouldCount       = ownText("tests.would_count")
	outEmergency     = ownText("emergency.outcome")
	outStated        = ownText("emergency.stated")
	wouldBeKept      = ownText("emergency.would_be_kept")
	outStateIt       = ownText("emergency.statement")
	whyStateIt       = ownText("emergency.statement_why")
	whyEmergency     = ownText("emergency.why")
)

// isOld reports whether the rules for old paint may hold, the federal ones or those of the place: unknown counts as before 1978.
func (job Job) isOld() bool { return job.builtBefore(job.rule(firstYearWithout)) }

// isTargetHousing reports whether the federal rules may hold. They do in a child-occupied facility as well (40 CFR 745.83, 745.103).
func (job Job) isTargetHousing() bool { return job.builtBefore(firstYearWithout) && !job.exempt() }

// exempt: housing for the elderly or for people with disabilities, and a home without a bedroom, unless a child under 6 lives there. The published text of 2015 knows that condition for
// the first of the two alone; that the rule of 2024 has it for both is from memory, and it is the stricter reading.
func (job Job) exempt() bool {
	return (job.Dwelling == ElderlyHousing || job.Dwelling == NoBedroom) && len(job.mayHaveChild()) == 0
}

// mayHaveChild are the households in which a child under 6 lives, or of which nobody has said that none does.
func (job Job) mayHaveChild() []Household {
	return slices.DeleteFunc(slices.Clone(job.Households), func(h Household) bool { return h.ChildUnder6 == No })
}

var exemptSource = read("2026-11-25", "40 CFR 745.103").and(read("2026-11-26", "24 CFR 35.115(a)(2) and (3)")).and(remembered("89 FR 89416"))

// exemption asks what could take the federal rules away: what the house is, and then whether a child under 6 lives there.
func (job Job) exemption() []Missing {
	switch {
	case job.Dwelling == "":
		return []Missing{{"dwelling", wouldExempt.With()}}
	case job.Dwelling == ElderlyHousing || job.Dwelling == NoBedroom:
		var all []Missing
		for _, h := range job.mayHaveChild() {
			if h.ChildUnder6 != Yes {
				all = append(all, Missing{fieldOf("households", h.ID, "child_under_6"), wouldHaveNoChild.With()})
			}
		}
		return all
	}
	return nil
}

func (job Job) builtBefore(year Rule) bool { return job.Built == 0 || float64(job.Built) < year.Value }

func oldPaint(job Job) Reason {
	r := Reason{Decision: "old_paint", Outcome: outTreatAsLead.With(), Source: firstYearWithout.Source(), Binds: GoodPractice}
	firstYear := Limit(firstYearWithout.Value)
	switch {
	case job.Built == 0:
		r.Because = whyAgeUnknown.With(firstYear)
		r.Missing = []Missing{{"built", wouldTakeAway.With(firstYear)}}
	case job.isTargetHousing():
		r.Because = manyHomes(job.Built)
		r.Source = r.Source.and(eraSource)
	case job.isOld():
		r.Because, r.Source = whyOldThere.With(Year(job.Built), firstYear, PlaceName(job.place())), job.rule(firstYearWithout).Source()
	default:
		r.Outcome, r.Because = outNotOld.With(), whyNewer.With(Year(job.Built), firstYear)
	}
	if job.isOld() && len(job.Work) > 0 && len(job.leadWork()) == 0 {
		r.Outcome = outAllFree.With()
	}
	return r
}

var eraSource = second("2026-11-25", "HUD survey of 1998 to 2000, as EPA publishes it")

// manyHomes says how many homes of that age were found to have lead paint, and nothing of this house.
func manyHomes(built int) Message {
	i := slices.IndexFunc(eras, func(e era) bool { return built < e.before })
	return whyManyHomes.With(Year(built), eras[i].built, eras[i].percent)
}

// shownFree reports whether tests that count cover every surface of the work and found no lead, and none that counts found some. Where federal housing
// money is in the job, or may be, only an inspector's report can show it (24 CFR 35.110, paint testing).
func (job Job) shownFree(w Work) bool {
	free := false
	for _, t := range w.Tests {
		if !t.counts() {
			continue
		}
		if t.Result != NoLead {
			return false
		}
		free = free || t.Covers == AllSurfaces && job.showsFree(t)
	}
	return free
}

// counts: the test says something under the renovation rule.
func (t Test) counts() bool {
	return slices.ContainsFunc(TestKinds, func(k struct {
		Name   TestKind
		Counts bool
	}) bool {
		return k.Name == t.How && k.Counts
	})
}

// showsFree: the test is of a kind that every rule of the job takes as proof.
func (job Job) showsFree(t Test) bool {
	return t.counts() && (job.FederalAid == No || t.How == "certified_inspector")
}

// leadWork is the work that everybody has to be kept out of: all of it, but for what tests have shown to be free of lead; none of a job that never began.
func (job Job) leadWork() []Work {
	if job.CalledOff == BeforeItBegan {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(job.Work), job.shownFree)
}

func tests(job Job) []Reason {
	var all []Reason
	for _, w := range job.Work {
		if len(w.Tests) > 0 {
			all = append(all, job.tested(w))
		}
	}
	return all
}

func (job Job) tested(w Work) Reason {
	r := Reason{Decision: "tests", About: w.ID, Outcome: outShownFree.With(Name(w.ID)), Because: whyShownFree.With(), Source: testSource, Binds: GoodPractice}
	if job.shownFree(w) {
		return r
	}
	var aidedOnly bool
	r.Outcome = outStillLead.With(Name(w.ID))
	if r.Because, aidedOnly = job.whyStillLead(w); aidedOnly {
		r.Source = aidedTestSource
		if job.FederalAid == Unknown {
			r.Missing = []Missing{{"federal_housing_money", wouldCount.With()}}
		}
	}
	return r
}

// whyStillLead names the strongest ground, and reports whether only the housing rule has it.
func (job Job) whyStillLead(w Work) (because Message, aidedOnly bool) {
	has := func(holds func(Test) bool) bool { return slices.ContainsFunc(w.Tests, holds) }
	switch {
	case has(func(t Test) bool { return t.Result == LeadFound }):
		return whyLeadFound.With(), false
	case !has(Test.counts):
		return whyNotCounted.With(), false
	case has(func(t Test) bool { return t.counts() && t.Result == NotClear }):
		return whyNotClear.With(), false
	case !has(func(t Test) bool { return t.counts() && t.Covers == AllSurfaces }):
		return whyNotAll.With(), false
	case !has(job.showsFree):
		return whyKitNotAided.With(), true
	}
	return whyNotAll.With(), false
}

func emergency(job Job) []Reason {
	if job.Emergency != Yes {
		return nil
	}
	return []Reason{
		{Decision: "emergency", Outcome: outEmergency.With(), Because: whyEmergency.With(), Source: emergencySource, Binds: GoodPractice},
		job.statement(),
	}
}

// statement is what an emergency is paid with. Once it is written, it is kept.
func (job Job) statement() Reason {
	r := Reason{Decision: "emergency_statement", Outcome: outStateIt.With(), Because: whyStateIt.With(), Source: read("2026-11-25", "40 CFR 745.86(b)(6)"), Binds: job.renovationBinding()}
	if job.Statement.What == "" {
		r.Missing = []Missing{{"emergency_statement", wouldBeKept.With()}}
	} else {
		r.Outcome = outStated.With()
	}
	return r
}
