package notices

import "slices"

var (
	outSignsInside  = ownText("signs.inside", Number(0), Name(""))
	whySignsInside  = ownText("signs.inside_why")
	outSignsOutside = ownText("signs.outside", Number(0), Name(""), Reach(0))
	whySignsOutside = ownText("signs.outside_why", Reach(0))
	outSignsEntries = ownText("signs.entries", Number(0))
	whySignsEntries = ownText("signs.entries_why")
	wouldBeEntries  = ownText("signs.would_be_entries")
)

// signs are one for each way into each work area that has not passed, in English and in each language read in the house; and, when everybody has left, one for
// each door of the building. A sign carries no date, so that it never goes stale.
func signs(job Job) []Sheet { return signsAround(job, job.OpenWork()) }

func signsAround(job Job, works []Work) []Sheet {
	var all []Sheet
	for _, w := range works {
		for _, way := range w.WaysIn {
			all = append(all, signPair(job, w, way)...)
		}
	}
	return append(all, entrySignsAround(job, works)...)
}

// entrySigns are for the building's own doors, when everybody has left: main and secondary entries.
func entrySigns(job Job) []Sheet { return entrySignsAround(job, job.leadWork()) }

func entrySignsAround(job Job, works []Work) []Sheet {
	var all []Sheet
	for _, door := range job.entriesToSign(works) {
		w := Work{ID: entryPlace, Where: Inside, Area: WholeHouse, Days: WorkDays(works)}
		all = append(all, signPair(job, w, door)...)
	}
	return all
}

// WholeHouse is the area behind a building's own door when nobody is at home.
const WholeHouse Area = "whole_house"

func signPair(job Job, w Work, way Way) []Sheet {
	var pair []Sheet
	for _, l := range job.signLanguages() {
		pair = append(pair, sign(job, w, way, l))
	}
	return pair
}

func (job Job) signLanguages() []Language {
	return distinct(append([]Language{English}, job.readers()...))
}

// everybodyLeft reports whether no household sleeps in the house while some work goes on inside.
func (job Job) everybodyLeft(works []Work) bool {
	return len(insideOf(works)) > 0 && !slices.ContainsFunc(job.Households, func(h Household) bool { return job.stay(h).stay != sleepElsewhere })
}

// entriesToSign are the building's doors that have no sign of a work area yet. Nobody has named them: then front and back door are taken.
func (job Job) entriesToSign(works []Work) []Way {
	if !job.everybodyLeft(works) {
		return nil
	}
	entries := job.Entries
	if len(entries) == 0 {
		entries = []Way{"front_door", "back_door"}
	}
	return slices.DeleteFunc(slices.Clone(entries), func(way Way) bool {
		return slices.ContainsFunc(works, func(w Work) bool { return slices.Contains(w.WaysIn, way) })
	})
}

// signPlaces say how many signs there are, where each hangs and where its reader stands.
func signPlaces(job Job) []Reason {
	var all []Reason
	for _, w := range job.OpenWork() {
		all = append(all, job.signPlace(w))
	}
	if doors := job.entriesToSign(job.OpenWork()); len(doors) > 0 {
		r := Reason{Decision: "signs", Outcome: outSignsEntries.With(Number(len(doors) * len(job.signLanguages()))), Because: whySignsEntries.With(), Source: job.cites(signSource), Binds: job.binds()}
		if len(job.Entries) == 0 {
			r.Missing = []Missing{{"entries", wouldBeEntries.With()}}
		}
		all = append(all, r)
	}
	return all
}

func (job Job) signPlace(w Work) Reason {
	count := Number(len(w.WaysIn) * len(job.signLanguages()))
	r := Reason{Decision: "signs", About: w.ID, Source: job.cites(signSource), Binds: job.binds()}
	if w.Where == Inside {
		r.Outcome, r.Because = outSignsInside.With(count, Name(w.ID)), whySignsInside.With()
		return r
	}
	from := Reach(job.rule(signReadFrom).Value)
	r.Outcome, r.Because = outSignsOutside.With(count, Name(w.ID), from), whySignsOutside.With(from)
	return r
}

func sign(job Job, w Work, way Way, l Language) Sheet {
	return Sheet{
		ID:       signID(w.ID, way, l),
		Kind:     WorkAreaSign,
		Hang:     []Way{way},
		Area:     w.Area,
		ReadFrom: job.readFrom(w),
		Faces:    facesOf([]Language{l}, pageSign, signContent(job, w)),
		Copies:   1,
		Due:      w.Days[0],
	}
}

// readFrom is how far away the reader of a sign stands: inside, at the door.
func (job Job) readFrom(w Work) Feet {
	if w.Where == Outside {
		return Feet(job.rule(signReadFrom).Value)
	}
	return 0
}
