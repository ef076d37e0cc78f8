package notices

import "slices"

var (
	whyManyHomes   = deskText("applies.many_homes", Year(0), Period(""), Percent(0))
	whyAgeUnknown  = deskText("applies.age_unknown")
	whyNewer       = deskText("applies.newer", Year(0))
	outTreatAsLead = deskText("applies.treat_as_lead")
	outNotOld      = deskText("applies.not_old")
	wouldTakeAway  = deskText("applies.would_take_away")
	outShownFree   = deskText("tests.shown_free", Name(""))
	whyShownFree   = deskText("tests.shown_free_why")
	outStillLead   = deskText("tests.still_lead", Name(""))
	whyLeadFound   = deskText("tests.lead_found")
	whyNotCounted  = deskText("tests.not_counted")
	whyNotAll      = deskText("tests.not_all")
	whyNotClear    = deskText("tests.not_clear")
	outEmergency   = deskText("emergency.outcome")
	whyEmergency   = deskText("emergency.why")
)

// isOld reports whether the rules for old paint may hold: unknown counts as before 1978.
func (job Job) isOld() bool {
	return job.Built == 0 || float64(job.Built) < job.rule(FirstYearWithout).Value
}

func oldPaint(job Job) Reason {
	r := Reason{Decision: "old_paint", Outcome: outTreatAsLead.With(), Source: FirstYearWithout.Source(), Binds: GoodPractice}
	switch {
	case job.Built == 0:
		r.Because = whyAgeUnknown.With()
		r.Missing = []Missing{{"built", wouldTakeAway.With()}}
	case job.isOld():
		r.Because = manyHomes(job.Built)
		r.Source += "; " + eraSource
	default:
		r.Outcome, r.Because = outNotOld.With(), whyNewer.With(Year(job.Built))
	}
	return r
}

const eraSource = "HUD survey of 1998 to 2000, as EPA publishes it (read in a secondary text)"

// manyHomes says how many homes of that age were found to have lead paint, and nothing of this house.
func manyHomes(built int) Message {
	i := slices.IndexFunc(Eras, func(e Era) bool { return built < e.Before })
	return whyManyHomes.With(Year(built), Eras[i].Built, Eras[i].Percent)
}

// shownFree reports whether tests that count cover every surface of the work and found no lead, and none that counts found some.
func (w Work) shownFree() bool {
	free := false
	for _, t := range w.Tests {
		if !t.counts() {
			continue
		}
		if t.Result != NoLead {
			return false
		}
		free = free || t.Covers == AllSurfaces
	}
	return free
}

func (t Test) counts() bool {
	return slices.ContainsFunc(TestKinds, func(k struct {
		Name   TestKind
		Counts bool
	}) bool {
		return k.Name == t.How && k.Counts
	})
}

// leadWork is the work that everybody has to be kept out of: all of it, but for what tests have shown to be free of lead.
func (job Job) leadWork() []Work {
	return slices.DeleteFunc(slices.Clone(job.Work), Work.shownFree)
}

func tests(job Job) []Reason {
	var all []Reason
	for _, w := range job.Work {
		if len(w.Tests) > 0 {
			all = append(all, tested(w))
		}
	}
	return all
}

func tested(w Work) Reason {
	if w.shownFree() {
		return Reason{Decision: "tests", About: w.ID, Outcome: outShownFree.With(Name(w.ID)), Because: whyShownFree.With(), Source: TestSource, Binds: GoodPractice}
	}
	return Reason{Decision: "tests", About: w.ID, Outcome: outStillLead.With(Name(w.ID)), Because: whyStillLead(w), Source: TestSource, Binds: GoodPractice}
}

// whyStillLead names the strongest ground.
func whyStillLead(w Work) Message {
	has := func(holds func(Test) bool) bool { return slices.ContainsFunc(w.Tests, holds) }
	switch {
	case has(func(t Test) bool { return t.Result == LeadFound }):
		return whyLeadFound.With()
	case !has(Test.counts):
		return whyNotCounted.With()
	case has(func(t Test) bool { return t.counts() && t.Result == NotClear }):
		return whyNotClear.With()
	}
	return whyNotAll.With()
}

func emergency(job Job) []Reason {
	if job.Emergency != Yes {
		return nil
	}
	return []Reason{{Decision: "emergency", Outcome: outEmergency.With(), Because: whyEmergency.With(), Source: EmergencySource, Binds: GoodPractice}}
}
