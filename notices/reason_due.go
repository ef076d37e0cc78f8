package notices

import (
	"slices"
	"time"
)

var (
	outTalkBy       = ownText("due.talk", Day{}, SecondDay{})
	whyTalkBy       = ownText("due.talk_why", Number(0), Limit(0))
	outNeighboursBy = ownText("due.neighbours", Day{}, SecondDay{})
	whyNeighboursBy = ownText("due.neighbours_why")
	outResidentsBy  = ownText("due.residents", Day{})
	whyResidentsBy  = ownText("due.residents_why", Number(0))
	outLateAfter    = ownText("due.late_after", Day{})
	whyLateAfter    = ownText("due.late_after_why", Number(0))
	outSecondKnock  = ownText("due.second_knock", Day{})
	whySecondKnock  = ownText("due.second_knock_why")
	outSignsUp      = ownText("due.signs_up", Day{})
	whySignsUp      = ownText("due.signs_up_why")
	outCheckMissing = ownText("check.not_decided")
	whyCheckMissing = ownText("check.not_decided_why")
	wouldSayTest    = ownText("check.would_say_test")
)

func (job Job) letterDue() Date {
	due := firstDay(job.leadWork()).Plus(-int(job.rule(letterAhead).Value))
	if late := job.residentsLateAfter(); len(job.tellHome()) > 0 && due.Compare(late) > 0 {
		return late
	}
	return due
}

// residentsLateAfter is a number of business days before the first work day, where a place asks for it.
func (job Job) residentsLateAfter() Date {
	return businessDaysBefore(firstDay(job.leadWork()), int(job.rule(businessDays).Value))
}

// neighbourDue is never later than the day after which it is late.
func (job Job) neighbourDue() Date {
	due, late := firstDay(job.outsideWork()).Plus(-int(job.rule(requestAhead).Value)), job.neighbourLateAfter()
	if due.Compare(late) > 0 {
		return late
	}
	return due
}

// neighbourLateAfter is a number of business days before the first outside work day.
func (job Job) neighbourLateAfter() Date {
	return businessDaysBefore(firstDay(job.outsideWork()), int(job.rule(businessDays).Value))
}

// dueAt is the last day on which a neighbour can be told in time: of a day-care, one on which it is open.
func (n Neighbour) dueAt(day Date) Date {
	if n.Kind != DayCare {
		return day
	}
	for !n.isOpen(day) {
		day = day.Plus(-1)
	}
	return day
}

// isOpen: a day-care whose days nobody has said is open from Monday to Friday (common practice, no source).
func (n Neighbour) isOpen(day Date) bool {
	weekday := day.Weekday()
	if len(n.OpenDays) == 0 {
		return weekday != time.Saturday && weekday != time.Sunday
	}
	return slices.Contains(n.OpenDays, weekday)
}

// neighboursFrom is the first day of the time in which a neighbour is told.
func (job Job) neighboursFrom() Date {
	from := firstDay(job.outsideWork()).Plus(-int(job.rule(requestFirst).Value))
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
		talk, ahead := job.rule(talkAhead), job.rule(letterAhead)
		all = append(all, Reason{Decision: "letter_due", Outcome: outTalkBy.With(Day(first.Plus(-int(talk.Value))), SecondDay(job.letterDue())),
			Because: whyTalkBy.With(Number(talk.Value), Limit(ahead.Value)), Source: ahead.Source(), Binds: GoodPractice})
		if law := job.tellHome(); len(law) > 0 {
			all = append(all, Reason{Decision: "residents_late", Outcome: outResidentsBy.With(Day(job.residentsLateAfter())), Because: whyResidentsBy.With(Number(job.rule(businessDays).Value)), Source: law, Binds: Law})
		}
	}
	all = append(all, job.neighbourDates()...)
	all = append(all, Reason{Decision: "signs_up", Outcome: outSignsUp.With(Day(first)), Because: whySignsUp.With(), Source: job.cites(signSource), Binds: job.binds()})
	return append(all, job.pamphlets()...)
}

func (job Job) neighbourDates() []Reason {
	if len(job.neighboursToTell()) == 0 {
		return nil
	}
	first := firstDay(job.outsideWork())
	by, business := job.rule(requestAhead), job.rule(businessDays)
	late := Reason{Decision: "neighbours_late", Outcome: outLateAfter.With(Day(job.neighbourLateAfter())), Because: whyLateAfter.With(Number(business.Value)), Source: business.Source(), Binds: GoodPractice}
	if law := job.mustTell(); len(law) > 0 && business.by == byPlace {
		late.Binds = Law
	}
	return []Reason{
		{Decision: "neighbours_due", Outcome: outNeighboursBy.With(Day(job.neighboursFrom()), SecondDay(job.neighbourDue())),
			Because: whyNeighboursBy.With(), Source: by.Source(), Binds: GoodPractice},
		late,
		{Decision: "second_knock", Outcome: outSecondKnock.With(Day(first.Plus(-1))), Because: whySecondKnock.With(), Source: inPractice, Binds: GoodPractice},
	}
}

func checking(job Job) []Reason {
	if job.CheckedBy != NotDecided || len(job.leadWork()) == 0 {
		return nil
	}
	return []Reason{{Decision: "check", Outcome: outCheckMissing.With(), Because: whyCheckMissing.With(), Source: job.cites(checkSource), Binds: GoodPractice,
		Missing: []Missing{{"checked_by", wouldSayTest.With()}}}}
}
