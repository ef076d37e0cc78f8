package notices

var (
	outTalkBy       = deskText("due.talk", Day{}, SecondDay{})
	whyTalkBy       = deskText("due.talk_why", Number(0), Limit(0))
	outNeighboursBy = deskText("due.neighbours", Day{}, SecondDay{})
	whyNeighboursBy = deskText("due.neighbours_why")
	outLateAfter    = deskText("due.late_after", Day{})
	whyLateAfter    = deskText("due.late_after_why", Number(0))
	outSecondKnock  = deskText("due.second_knock", Day{})
	whySecondKnock  = deskText("due.second_knock_why")
	outSignsUp      = deskText("due.signs_up", Day{})
	whySignsUp      = deskText("due.signs_up_why")
	outPamphlet     = deskText("due.pamphlet", Day{}, SecondDay{})
	whyPamphlet     = deskText("due.pamphlet_why", Number(0), Limit(0))
	outPamphletDone = deskText("due.pamphlet_done", Day{})
	whyTooEarly     = deskText("due.pamphlet_too_early", Day{}, Number(0), Limit(0))
	whyMailedLate   = deskText("due.pamphlet_mailed_late", Day{}, Number(0), Limit(0))
	whyNotSigned    = deskText("due.pamphlet_not_signed", Limit(0))
	whyGivenLate    = deskText("due.pamphlet_given_late", Day{})
	wouldBeChecked  = deskText("due.would_be_checked")
	whyPamphletFree = deskText("due.pamphlet_free")
	outAttempted    = deskText("due.attempted")
	whyAttempted    = deskText("due.attempted_why")
	outTenant       = deskText("due.tenant")
	whyTenant       = deskText("due.tenant_why")
	outCheckMissing = deskText("check.not_decided")
	whyCheckMissing = deskText("check.not_decided_why")
	wouldSayTest    = deskText("check.would_say_test")
)

func (job Job) letterDue() Date {
	return firstDay(job.leadWork()).Plus(-int(job.rule(LetterAhead).Value))
}

// neighbourDue is never later than the day after which it is late.
func (job Job) neighbourDue() Date {
	due, late := firstDay(job.outsideWork()).Plus(-int(job.rule(RequestAhead).Value)), job.neighbourLateAfter()
	if due.Compare(late) > 0 {
		return late
	}
	return due
}

// neighbourLateAfter is so many business days before the first outside work day.
func (job Job) neighbourLateAfter() Date {
	return businessDaysBefore(firstDay(job.outsideWork()), int(job.rule(BusinessDays).Value))
}

// neighboursFrom is the first day of the time in which a neighbour is told.
func (job Job) neighboursFrom() Date {
	from := firstDay(job.outsideWork()).Plus(-int(job.rule(RequestFirst).Value))
	if due := job.neighbourDue(); from.Compare(due) > 0 {
		return due
	}
	return from
}

// dueDates say by when each is told, and what to do when nobody opens.
func dueDates(job Job) []Reason {
	if len(job.leadWork()) == 0 {
		return nil
	}
	var all []Reason
	first := firstDay(job.leadWork())
	if len(job.Households) > 0 {
		talk, ahead := job.rule(TalkAhead), job.rule(LetterAhead)
		all = append(all, Reason{Decision: "letter_due", Outcome: outTalkBy.With(Day(first.Plus(-int(talk.Value))), SecondDay(job.letterDue())),
			Because: whyTalkBy.With(Number(talk.Value), Limit(ahead.Value)), Source: ahead.Source(), Binds: GoodPractice})
	}
	all = append(all, job.neighbourDates()...)
	all = append(all, Reason{Decision: "signs_up", Outcome: outSignsUp.With(Day(first)), Because: whySignsUp.With(), Source: job.cites(signSource), Binds: job.binds()})
	return append(all, job.pamphlet()...)
}

func (job Job) neighbourDates() []Reason {
	if len(job.neighboursToTell()) == 0 {
		return nil
	}
	first := firstDay(job.outsideWork())
	by, business := job.rule(RequestAhead), job.rule(BusinessDays)
	late := Reason{Decision: "neighbours_late", Outcome: outLateAfter.With(Day(job.neighbourLateAfter())), Because: whyLateAfter.With(Number(business.Value)), Source: business.Source(), Binds: GoodPractice}
	if law := job.mustTell(); law != "" && business.Citation == law {
		late.Binds = Law
	}
	return []Reason{
		{Decision: "neighbours_due", Outcome: outNeighboursBy.With(Day(job.neighboursFrom()), SecondDay(job.neighbourDue())),
			Because: whyNeighboursBy.With(), Source: by.Source(), Binds: GoodPractice},
		late,
		{Decision: "second_knock", Outcome: outSecondKnock.With(Day(first.Plus(-1))), Because: whySecondKnock.With(), Source: string(Practice), Binds: GoodPractice},
	}
}

// pamphlet: not more than so many days before the work, or mailed so many days before; with a signature, or a note of why there is none. An emergency waives it.
func (job Job) pamphlet() []Reason {
	if !job.isOld() || job.Emergency == Yes {
		return nil
	}
	r := job.pamphletDue()
	if !job.renovationBinds() {
		return []Reason{r}
	}
	r.Binds = Law
	all := []Reason{r}
	if job.Pamphlet.Given.IsZero() || job.Pamphlet.How == Attempted {
		all = append(all, Reason{Decision: "attempted_delivery", Outcome: outAttempted.With(), Because: whyAttempted.With(), Source: "40 CFR 745.84(a)(2)(i)", Binds: Law})
	}
	if job.Owner != LivesHere {
		all = append(all, Reason{Decision: "tenant_too", Outcome: outTenant.With(), Because: whyTenant.With(), Source: "40 CFR 745.84(a)(2)", Binds: Law})
	}
	return all
}

func (job Job) pamphletDue() Reason {
	first := firstDay(job.leadWork())
	earliest, mailed := first.Plus(-int(PamphletEarliest.Value)), first.Plus(-int(PamphletMailed.Value))
	why := whyPamphlet.With(Number(PamphletEarliest.Value), Limit(PamphletMailed.Value))
	r := Reason{Decision: "pamphlet_due", Outcome: outPamphlet.With(Day(earliest), SecondDay(mailDay(mailed))), Because: why, Source: PamphletSource, Binds: GoodPractice}
	given := job.Pamphlet.Given
	switch {
	case given.IsZero() && !job.renovationBinds():
		r.Because = whyPamphletFree.With()
	case given.IsZero():
		r.Missing = []Missing{{"pamphlet", wouldBeChecked.With()}}
	case given.Compare(earliest) < 0:
		r.Because = whyTooEarly.With(Day(given), Number(given.daysUntil(first)), Limit(PamphletEarliest.Value))
	case job.Pamphlet.How == Mailed && given.Compare(mailed) > 0:
		r.Because = whyMailedLate.With(Day(given), Number(given.daysUntil(first)), Limit(PamphletMailed.Value))
	case given.Compare(first) >= 0:
		r.Because = whyGivenLate.With(Day(given))
	case job.Pamphlet.How == Attempted:
		r.Because = whyNotSigned.With(Limit(PamphletMailed.Value))
	default:
		r.Outcome, r.Because = outPamphletDone.With(Day(given)), why
	}
	return r
}

func checking(job Job) []Reason {
	if job.CheckedBy != NotDecided || len(job.leadWork()) == 0 {
		return nil
	}
	return []Reason{{Decision: "check", Outcome: outCheckMissing.With(), Because: whyCheckMissing.With(), Source: job.cites(checkSource), Binds: GoodPractice,
		Missing: []Missing{{"checked_by", wouldSayTest.With()}}}}
}
