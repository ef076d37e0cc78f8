package notices

import "slices"

var (
	outPamphlet          = ownText("pamphlet.give", Name(""), Day{}, SecondDay{})
	whyPamphlet          = ownText("pamphlet.give_why", Number(0), Limit(0))
	outPamphletDone      = ownText("pamphlet.done", Name(""), Day{})
	whyTooEarly          = ownText("pamphlet.too_early", Day{}, Number(0), Limit(0))
	whyMailedLate        = ownText("pamphlet.mailed_late", Day{}, Number(0), Limit(0))
	whyNotSigned         = ownText("pamphlet.not_signed", Limit(0))
	whyGivenLate         = ownText("pamphlet.given_late", Day{})
	wouldBeChecked       = ownText("pamphlet.would_be_checked")
	whyPamphletFree      = ownText("pamphlet.free")
	outAttempted         = ownText("pamphlet.attempted")
	whyAttempted         = ownText("pamphlet.attempted_why")
	outWhoOwns           = ownText("pamphlet.who_owns")
	whyWhoOwns           = ownText("pamphlet.who_owns_why")
	wouldNeedOne         = ownText("pamphlet.would_need_one")
	sayPamphlet          = ownText("step.pamphlet", Name(""), Day{}, SecondDay{})
	theOwner        Name = "the owner"
)

// A reader of the official pamphlet: the owner, or an adult of a home (40 CFR 745.84(a)(1) and (2)).
type pamphletReader struct {
	id   string // ToOwner, or that of a household
	name Name
	owns bool
}

// pamphletReaders are the owner, unless one of the homes is theirs, and an adult of each home.
func (job Job) pamphletReaders() []pamphletReader {
	var all []pamphletReader
	for _, h := range job.Households {
		all = append(all, pamphletReader{h.ID, Name(h.Name), job.isOwners(h)})
	}
	if !slices.ContainsFunc(all, func(r pamphletReader) bool { return r.owns }) {
		all = append([]pamphletReader{{ToOwner, theOwner, true}}, all...)
	}
	return all
}

// isOwners reports whether a household is known to be the owner's: it is said so, or the owner lives here and it is the only one.
func (job Job) isOwners(h Household) bool {
	return h.Owns == Yes || job.Owner == LivesHere && len(job.Households) == 1
}

// given is the pamphlet of one reader; what was given to the owner counts for the owner's own household.
func (job Job) given(r pamphletReader) Pamphlet {
	for _, p := range job.Pamphlets {
		if p.To == r.id || r.owns && p.To == ToOwner {
			return p
		}
	}
	return Pamphlet{}
}

// pamphlets are a reason for each reader. An emergency waives them all.
func (job Job) pamphlets() []Reason {
	if !job.isOld() || job.Emergency == Yes {
		return nil
	}
	var all []Reason
	tenantOpen := false
	for _, reader := range job.pamphletReaders() {
		r, open := job.pamphletDue(reader)
		tenantOpen = tenantOpen || open && !reader.owns
		all = append(all, r)
	}
	if job.Owner == "" && len(job.Households) > 0 {
		all = append(all, Reason{Decision: "who_owns", Outcome: outWhoOwns.With(), Because: whyWhoOwns.With(), Source: read("2026-11-25", "40 CFR 745.84(a)(1) and (2)"), Binds: GoodPractice, Missing: []Missing{{"owner", wouldNeedOne.With()}}})
	}
	if tenantOpen && job.renovationBinds() {
		all = append(all, Reason{Decision: "attempted_delivery", Outcome: outAttempted.With(), Because: whyAttempted.With(), Source: read("2026-11-25", "40 CFR 745.84(a)(2)(i)"), Binds: Law})
	}
	return all
}

// pamphletDue: within a number of days before the work, or mailed a number of days before; with a signature. A tenant may take it and not sign, or not be met: then a statement of that stands in
// for the signature. An owner signs, or it goes by mail. It is open while it has still to be given, or given again.
func (job Job) pamphletDue(reader pamphletReader) (r Reason, open bool) {
	first := firstDay(job.leadWork())
	earliest, mailed := first.Plus(-int(pamphletEarliest.Value)), first.Plus(-int(pamphletMailed.Value))
	why := whyPamphlet.With(Number(pamphletEarliest.Value), Limit(pamphletMailed.Value))
	r = Reason{Decision: "pamphlet_due", About: reader.id, Outcome: outPamphlet.With(reader.name, Day(earliest), SecondDay(mailDay(mailed))), Because: why, Source: pamphletSource, Binds: job.renovationBinding()}
	p := job.given(reader)
	switch {
	case p.Given.IsZero() && !job.renovationBinds():
		r.Because = whyPamphletFree.With()
	case p.Given.IsZero():
		r.Missing = []Missing{{"pamphlets", wouldBeChecked.With()}}
	case p.Given.Compare(earliest) < 0:
		r.Because = whyTooEarly.With(Day(p.Given), Number(p.Given.daysUntil(first)), Limit(pamphletEarliest.Value))
	case p.How == Mailed && p.Given.Compare(mailed) > 0:
		r.Because = whyMailedLate.With(Day(p.Given), Number(p.Given.daysUntil(first)), Limit(pamphletMailed.Value))
	case p.Given.Compare(first) > 0:
		r.Because = whyGivenLate.With(Day(p.Given))
	case reader.owns && (p.How == Attempted || p.How == Refused):
		r.Because = whyNotSigned.With(Limit(pamphletMailed.Value))
	default:
		r.Outcome = outPamphletDone.With(reader.name, Day(p.Given))
		return r, false
	}
	return r, true
}

// pamphletSteps: for each reader the days in which it can be mailed, and after them those in which only a hand and a signature will do. One that was given in time is done.
func (job Job) pamphletSteps() []Step {
	if job.finished() || !job.isOld() || job.Emergency == Yes {
		return nil
	}
	first := firstDay(job.leadWork())
	mailed, last := mailDay(first.Plus(-int(pamphletMailed.Value))), first.Plus(-1)
	var all []Step
	for _, reader := range job.pamphletReaders() {
		party := ForHousehold
		if reader.id == ToOwner {
			party = ForOwner
		}
		s := step(GivePamphlet, party, reader.id, mailed, sayPamphlet.With(reader.name, Day(mailed), SecondDay(last))).from(first.Plus(-int(pamphletEarliest.Value)))
		s.LateAfter, s.Source, s.Binds = last, pamphletSource, job.renovationBinding()
		if _, open := job.pamphletDue(reader); !open {
			s.Done = job.given(reader).Given
		}
		all = append(all, s)
	}
	return all
}
