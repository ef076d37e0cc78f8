package notices

import "slices"

var (
	notDecided      = ownText("release.not_decided")
	notIndependent  = ownText("release.not_independent", Name(""))
	notSampled      = ownText("release.not_sampled", PlaceName(""))
	notCertified    = ownText("release.not_certified", Name(""))
	notAlone        = ownText("release.not_alone", Name(""))
	notTested       = ownText("release.not_tested", Name(""))
	notVerified     = ownText("release.not_verified", Name(""))
	releaseAided    = read("2026-11-25", "24 CFR 35.1340(b), (f) and (g)")
	releasePaid     = read("2026-11-25", "40 CFR 745.85(b) and (c)")
	releaseOwnWords = inPractice
)

// An objection is why a written pass releases nobody, and where that is written. Its source is empty when there is none.
type objection struct {
	because Message
	source  Source
	binds   Binding
}

// objectionTo holds a pass against the rules that bind. It asks for roles and answers, and never compares names. Federal housing money comes first: there an independent, certified
// examiner has to pass the place, inside with dust samples from it. Paid work wants a certified person. A look of the crew releases only what neither rule binds, and only where
// the job promised no more than that.
func (job Job) objectionTo(c CheckResult, w Work) objection {
	by := Name(c.By)
	switch {
	case job.CheckedBy == NotDecided:
		return objection{notDecided.With(), releaseOwnWords, GoodPractice}
	case job.besideOf(w, c.On) != "":
		return objection{notAlone.With(Name(job.besideOf(w, c.On))), stayOutSource, job.binds()}
	case job.aidedBinds() && (c.Role != Examiner || c.Independent != Yes || c.Certified != Yes):
		return objection{notIndependent.With(by), releaseAided, Law}
	case job.aidedBinds() && w.Where == Inside && job.unsampled(w) != "":
		return objection{notSampled.With(PlaceName(job.unsampled(w))), releaseAided, Law}
	case job.renovationBinds() && c.Certified != Yes:
		return objection{notCertified.With(by), releasePaid, Law}
	case job.renovationBinds() && w.Where == Inside && c.Role == Crew:
		return objection{notCertified.With(by), releasePaid, Law}
	case job.check().byLeast != nil && !slices.Contains(job.check().byLeast, c.Role):
		return objection{job.check().less.With(by), releaseOwnWords, GoodPractice}
	}
	return objection{}
}

// besideOf is other work in the same place that had begun by the day of a pass and has not passed itself: several works in one place have to pass, all of them.
func (job Job) besideOf(w Work, on Date) string {
	for _, other := range job.leadWork() {
		from, begun := other.firstSetUp()
		last, checked := job.lastCheck(other)
		if other.ID != w.ID && other.samePlace(w) && begun && from.Day.Compare(on) <= 0 && (!checked || last.Result != Passed) {
			return other.ID
		}
	}
	return ""
}

// samePlace: the same area, unless storey, side or what it faces tell them apart. What nobody has said tells nothing apart.
func (w Work) samePlace(other Work) bool {
	apart := w.Storey != other.Storey && w.Storey > 0 && other.Storey > 0 ||
		w.Side != other.Side && w.Side != "" && other.Side != "" ||
		len(w.Faces) > 0 && len(other.Faces) > 0 && !slices.ContainsFunc(w.Faces, func(face string) bool { return slices.Contains(other.Faces, face) })
	return w.Where == other.Where && w.Area == other.Area && !apart
}

// unsampled is the surface of which a clearance inside still lacks a dust sample: a floor, and a sill where the place has a window or nobody has said.
func (job Job) unsampled(w Work) Surface {
	has := func(s Surface) bool {
		return slices.ContainsFunc(job.Wipes, func(wipe Wipe) bool { return wipe.Work == w.ID && wipe.Room == w.Area && wipe.Surface == s })
	}
	switch {
	case !has("floor") && !has("porch_floor"):
		return "floor"
	case w.HasWindows != No && !has("sill"):
		return "sill"
	}
	return ""
}

// windowsShut reports whether the windows near outside work still have to be kept closed: until its final cleaning has been checked, by whomever, for that is another
// thing than releasing the ground.
func (job Job) windowsShut(w Work) bool {
	last, ok := job.lastCheck(w)
	return !ok || last.Result != Passed
}

// openWindows is the outside work near which windows still have to be kept closed.
func (job Job) openWindows() []Work {
	return slices.DeleteFunc(job.outsideWork(), func(w Work) bool { return !job.windowsShut(w) })
}

// windowsOver: there was outside work, and all of its final cleaning has been checked.
func (job Job) windowsOver() bool { return job.hasOutsideWork() && len(job.openWindows()) == 0 }

// windowsOpenedOn is the day on which the final cleaning of some outside work was checked; false while that of any is not.
func (job Job) windowsOpenedOn(works []Work) (Date, bool) {
	var day Date
	for _, w := range works {
		if job.windowsShut(w) {
			return Date{}, false
		}
		if last, _ := job.lastCheck(w); last.On.Compare(day) > 0 {
			day = last.On
		}
	}
	return day, len(works) > 0
}

var (
	outOldPass  = ownText("release.older_than_report", Name(""))
	whyOldPass  = ownText("release.older_than_report_why", Day{}, SecondDay{})
	outNoNumber = ownText("release.no_new_number", Name(""))
	outBlank    = ownText("release.blank", Name(""))
	whyBlank    = ownText("release.blank_why", Reading(""), Day{})
	whyNoNumber = ownText("release.no_new_number_why", Reading(""), Day{})
)

// passWarnings stay on the coordinator's list: a pass that is older than its laboratory report, and one after a failing number without a new one.
func (job Job) passWarnings() []Reason {
	var all []Reason
	for _, w := range job.passedWork() {
		last, _ := job.lastCheck(w)
		for _, wipe := range job.Wipes {
			if wipe.Work != w.ID {
				continue
			}
			if wipe.Surface == blank && !wipe.Below && wipe.Loading > 0 {
				all = append(all, Reason{Decision: "pass_warning", About: w.ID, Outcome: outBlank.With(Name(w.ID)), Because: whyBlank.With(wipe.reading(), Day(wipe.Lab)), Source: releaseOwnWords, Binds: GoodPractice})
			}
			if wipe.Lab.Compare(last.On) > 0 {
				all = append(all, Reason{Decision: "pass_warning", About: w.ID, Outcome: outOldPass.With(Name(w.ID)), Because: whyOldPass.With(Day(last.On), SecondDay(wipe.Lab)), Source: releaseOwnWords, Binds: GoodPractice})
			}
			if wipe.fails() && !job.sampledAgain(wipe, last) {
				all = append(all, Reason{Decision: "pass_warning", About: w.ID, Outcome: outNoNumber.With(Name(w.ID)), Because: whyNoNumber.With(wipe.reading(), Day(wipe.Lab)), Source: read("2026-11-25", "24 CFR 35.1340(e)"), Binds: GoodPractice})
			}
		}
	}
	return all
}
