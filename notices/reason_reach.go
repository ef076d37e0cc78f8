package notices

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

var (
	outWindows     = ownText("windows.close", Address(""))
	outNote        = ownText("windows.note_only", Address(""))
	whyWithin      = ownText("windows.within", Feet(0), Reach(0))
	whyBeyond      = ownText("windows.beyond", Feet(0), Reach(0))
	whySaidNear    = ownText("windows.said_near", Reach(0))
	whySaidFar     = ownText("windows.said_far", Reach(0))
	whyNotSure     = ownText("windows.not_sure", Reach(0))
	wouldBeNote    = ownText("windows.would_be_note")
	outNobodyAsked = ownText("windows.nobody_asked")
	whyNobodyAsked = ownText("windows.nobody_asked_why")
	wouldBeAsked   = ownText("windows.would_be_asked")
	outDayCare     = ownText("windows.day_care", Address(""))
	whyDayCare     = ownText("windows.day_care_why")
	outLanguages   = ownText("languages.unknown", Name(""))
	outNoText      = ownText("languages.no_text", Name(""), SpokenLanguage(""))
	whyNoText      = ownText("languages.no_text_why", SpokenLanguage(""))
	whyLanguages   = ownText("languages.unknown_why")
	wouldBeOneFace = ownText("languages.would_be_one")
)

// withinReach decides whether a neighbour's windows must close. What nobody measured and nobody answered counts as near. The answer no is about the reach of
// the rule, and says nothing of a wider one.
func (job Job) withinReach(n Neighbour) bool {
	reach := job.rule(WindowReach).Value
	if n.GapKnown {
		return float64(n.Gap) <= reach
	}
	return n.Near != No || WindowReach.IsStricter(reach)
}

// facing is the outside work that a neighbour has to do with: that on the sides that face it, where the file says what a side faces; else all of it. Window work inside reaches
// everybody.
func (job Job) facing(n Neighbour) []Work {
	named := slices.ContainsFunc(job.outsideWork(), func(w Work) bool { return slices.Contains(w.Faces, n.Address) })
	return slices.DeleteFunc(job.outsideWork(), func(w Work) bool {
		return named && len(w.Faces) > 0 && !slices.Contains(w.Faces, n.Address)
	})
}

// openFacing is what of it is not over: until its final cleaning has been checked.
func (job Job) openFacing(n Neighbour) []Work {
	return slices.DeleteFunc(job.facing(n), func(w Work) bool { return !job.windowsShut(w) })
}

func neighbourWindows(job Job) []Reason {
	var all []Reason
	if job.hasOutsideWork() && !job.Asked && len(job.Neighbours) == 0 {
		all = append(all, Reason{Decision: "neighbours_unknown", Outcome: outNobodyAsked.With(), Because: whyNobodyAsked.With(), Source: noNeighbourSource, Binds: GoodPractice,
			Missing: []Missing{{"neighbours", wouldBeAsked.With()}}})
	}
	for _, n := range job.neighboursToTell() {
		all = append(all, job.windows(n))
		if n.Kind == DayCare {
			all = append(all, Reason{Decision: "day_care", About: n.ID, Outcome: outDayCare.With(Address(n.Address)), Because: whyDayCare.With(), Source: inPractice, Binds: GoodPractice})
		}
	}
	return all
}

func (job Job) windows(n Neighbour) Reason {
	r := Reason{Decision: "neighbour_windows", About: n.ID, Outcome: outNote.With(Address(n.Address)), Because: job.whyReach(n), Binds: GoodPractice}
	r.Source = job.rule(WindowReach).Source().and(noNeighbourSource)
	if job.withinReach(n) {
		r.Outcome = outWindows.With(Address(n.Address))
		if law := job.mustTell(); len(law) > 0 {
			r.Source, r.Binds = law, Law
		}
		if !n.GapKnown && n.Near != Yes {
			r.Missing = []Missing{{fieldOf("neighbours", n.ID, "gap"), wouldBeNote.With()}}
		}
	}
	return r
}

func (job Job) whyReach(n Neighbour) Message {
	reach := Reach(job.rule(WindowReach).Value)
	switch {
	case n.GapKnown && job.withinReach(n):
		return whyWithin.With(n.Gap, reach)
	case n.GapKnown:
		return whyBeyond.With(n.Gap, reach)
	case n.Near == Yes:
		return whySaidNear.With(reach)
	case n.Near == No && !job.withinReach(n):
		return whySaidFar.With(reach)
	}
	return whyNotSure.With(reach)
}

func unknownLanguages(job Job) []Reason {
	var all []Reason
	add := func(list, id, who string, languages []Language, others []string) {
		for _, other := range others {
			all = append(all, Reason{Decision: "language_without_text", About: id, Outcome: outNoText.With(Name(who), SpokenLanguage(other)), Because: whyNoText.With(SpokenLanguage(other)), Source: languageSource, Binds: GoodPractice})
		}
		if len(languages) == 0 && len(others) == 0 {
			all = append(all, Reason{Decision: "language_unknown", About: id, Outcome: outLanguages.With(Name(who)), Because: whyLanguages.With(), Source: languageSource, Binds: GoodPractice,
				Missing: []Missing{{fieldOf(list, id, "languages"), wouldBeOneFace.With()}}})
		}
	}
	for _, h := range job.Households {
		add("households", h.ID, h.Name, h.Languages, h.Others)
	}
	for _, n := range job.neighboursToTell() {
		add("neighbours", n.ID, n.Address, n.Languages, n.Others)
	}
	return all
}

// neighboursToTell are the homes that touch the lot, in street order, when any work is outside.
func (job Job) neighboursToTell() []Neighbour {
	if !job.hasOutsideWork() {
		return nil
	}
	return inStreetOrder(job.Neighbours)
}

// inStreetOrder sorts by street, then even and odd side apart, then house number: the order of a walk.
func inStreetOrder(neighbours []Neighbour) []Neighbour {
	sorted := slices.Clone(neighbours)
	slices.SortStableFunc(sorted, func(a, b Neighbour) int {
		numberA, streetA := splitAddress(a.Address)
		numberB, streetB := splitAddress(b.Address)
		return cmp.Or(
			strings.Compare(streetA, streetB),
			cmp.Compare(numberA%2, numberB%2),
			cmp.Compare(numberA, numberB),
			strings.Compare(a.Address, b.Address))
	})
	return sorted
}

// splitAddress parts "12 Alder Court" into 12 and "Alder Court"; the number is 0 when the address does not start with one.
func splitAddress(address string) (number int, street string) {
	first, rest, _ := strings.Cut(address, " ")
	digits := strings.TrimRightFunc(first, func(r rune) bool { return r < '0' || r > '9' })
	number, err := strconv.Atoi(digits)
	if err != nil {
		return 0, address
	}
	return number, rest
}
