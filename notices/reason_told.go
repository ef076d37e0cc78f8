package notices

var (
	outNotHere       = ownText("told.not_here")
	whyNotHere       = ownText("told.not_here_why")
	outPresumption   = ownText("told.presumption", Day{})
	outPresumedWhen  = ownText("told.presumed_when", Number(0))
	whyPresumption   = ownText("told.presumption_why", Number(0))
	wouldPresumption = ownText("told.would_presumption")
	outCalledOff     = ownText("told.called_off")
	whyCalledOff     = ownText("told.called_off_why")
	outStoppedShort  = ownText("told.stopped")
	whyStoppedShort  = ownText("told.stopped_why")
	outWhoShares     = ownText("told.who_shares")
	whyWhoShares     = ownText("told.who_shares_why")
	wouldShareNot    = ownText("told.would_share_not")
	wouldSayHow      = ownText("told.would_say_how")
	outFamilies      = ownText("told.families", Number(0))
	whyFamilies      = ownText("told.families_why")
)

// notHere names what belongs to the trade and not to this tool.
func notHere(job Job) []Reason {
	if len(job.leadWork()) == 0 {
		return nil
	}
	return []Reason{{Decision: "not_here", Outcome: outNotHere.With(), Because: whyNotHere.With(), Source: remembered("40 CFR 745.85(a)(2)(i), (3) and (4)", "40 CFR 745.90", "40 CFR 745.113", "29 CFR 1926.62"), Binds: GoodPractice}}
}

// presumption: the tool treats the paint as lead paint, which the housing rule counts as an event of its own.
func (job Job) presumption() []Reason {
	if !job.aidedBinds() || len(job.Households) == 0 {
		return nil
	}
	days := Number(presumptionNotice.Value)
	r := Reason{Decision: "presumption_notice", Outcome: outPresumedWhen.With(days), Because: whyPresumption.With(days), Source: presumptionNotice.Source(), Binds: Law}
	if job.Presumed.IsZero() {
		r.Missing = []Missing{{"lead_presumed", wouldPresumption.With()}}
		return []Reason{r}
	}
	r.Outcome = outPresumption.With(Day(job.presumptionDue()))
	return []Reason{r}
}

// calledOff: a job that never began keeps nobody out, and whoever was told of it is told that. What was begun stays shut until it passes.
func calledOff(job Job) []Reason {
	switch job.CalledOff {
	case BeforeItBegan:
		return []Reason{{Decision: "called_off", Outcome: outCalledOff.With(), Because: whyCalledOff.With(), Source: inPractice, Binds: GoodPractice}}
	case AfterItBegan:
		return []Reason{{Decision: "called_off", Outcome: outStoppedShort.With(), Because: whyStoppedShort.With(), Source: stayOutSource, Binds: job.binds()}}
	}
	return nil
}

// whoShares asks whether homes share an area that is worked on, for the tool cannot know how many there are; and how they are told. In a day-care the families are asked about.
func (job Job) whoShares() []Reason {
	families := job.Dwelling == ChildOccupied
	if job.Emergency == Yes || job.Shared.Route != "" || job.AreasShared == No || len(job.leadWork()) == 0 {
		return nil
	}
	r := Reason{Decision: "common_areas_unknown", Outcome: outWhoShares.With(), Because: whyWhoShares.With(), Source: read("2026-11-25", "40 CFR 745.84(b)"), Binds: job.renovationBinding(), Missing: []Missing{{"areas_shared", wouldShareNot.With()}}}
	if job.AreasShared == Yes {
		r.Missing = []Missing{{"common_areas", wouldSayHow.With()}}
	}
	if families {
		r.Because, r.Source, r.Missing = whyFamilies.With(), read("2026-11-25", "40 CFR 745.84(c)"), []Missing{{"common_areas", wouldSayHow.With()}}
	}
	return []Reason{r}
}

// sharedSource is the paragraph that holds for the homes of a building, or for the families of a day-care.
func (job Job) sharedSource(homes, families string) Source {
	if job.Dwelling == ChildOccupied {
		return read("2026-11-25", families)
	}
	return read("2026-11-25", homes)
}
