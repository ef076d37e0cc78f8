package site

import (
	"cmp"
	"slices"

	"example.org/doorleaf/notices"
)

// An Urgency sorts what is due. A smaller one comes first.
type Urgency int

const (
	Late    Urgency = iota
	Today           // its last day is today, or was, and it is not late yet
	Coming          // its last day is within the coming days
	Waiting         // its days are over, and somebody else has to do something
	Later           // its last day is after those
	notDue          // done, or over
)

// MarshalText is the urgency in a plan as JSON.
func (u Urgency) MarshalText() ([]byte, error) {
	return []byte([]string{"late", "today", "coming", "waiting", "later"}[u]), nil
}

// ComingDays is how far ahead a list of what is due looks.
const ComingDays = 14

// A DueStep is one thing to do, in the coordinator's English.
type DueStep struct {
	ID            string
	Urgency       Urgency
	Code, Address string // of the job
	First, Due    notices.Date
	When          string // the last day: "Wed May 5, 2027"
	Says          string
	Sheets        []string // ids of those that it still has to hand over, put up or take down
}

// By is "by Wed May 5, 2027", "since Wed May 5, 2027", "was due Wed May 5, 2027" for what is not late yet, or the day alone for what can be done on no other.
func (s DueStep) By(on notices.Date) string {
	switch {
	case s.Urgency == Today && s.Due.Compare(on) < 0:
		return "was due " + s.When
	case s.Urgency == Late || s.Urgency == Waiting:
		return "since " + s.When
	case s.First != s.Due:
		return "by " + s.When
	}
	return s.When
}

// Due lists what is due on a day over the plans of all jobs, nearest first. What the ledger knows to be done is not due. It is pure: the day is handed in.
func Due(plans []notices.Plan, ledger Ledger, on notices.Date) ([]DueStep, error) {
	desk, err := openDesk()
	if err != nil {
		return nil, err
	}
	v := &voice{Speaker: desk, desk: desk}
	var all []DueStep
	for _, plan := range plans {
		all = append(all, v.openSteps(plan, ledger, on, Waiting)...)
	}
	return byUrgency(all), v.err
}

// byUrgency sorts and returns steps: the most urgent first, and of those the nearest.
func byUrgency(steps []DueStep) []DueStep {
	slices.SortStableFunc(steps, func(a, b DueStep) int {
		return cmp.Or(cmp.Compare(a.Urgency, b.Urgency), a.Due.Compare(b.Due), cmp.Compare(a.Code, b.Code))
	})
	return steps
}

// openSteps are what is still to do for one job, up to an urgency, in the order of its steps.
func (v *voice) openSteps(plan notices.Plan, ledger Ledger, on notices.Date, upTo Urgency) []DueStep {
	var all []DueStep
	known, _ := ledger.Job(plan.Code)
	for _, s := range append(known.ownSteps(plan, on), plan.Steps...) {
		if urgency := known.urgency(s, on); urgency <= upTo {
			all = append(all, DueStep{s.ID, urgency, plan.Code, plan.Address, s.First, s.Due, deskDate(s.Due.String()), v.plain(asked(s, urgency)), known.unsettled(s)})
		}
	}
	return all
}

// ownSteps are those that only the ledger knows of: the sheets of the last make say something else than the job file, or something hangs that the job has no
// use for any more. What its steps take down anyway is not named twice.
func (j LedgerJob) ownSteps(plan notices.Plan, on notices.Date) []notices.Step {
	var all []notices.Step
	if len(j.Sheets) > 0 && j.isStale(plan) {
		all = append(all, notices.Step{ID: "make", First: on, Due: on, Says: notices.SayMakeAgain.With()})
	}
	if len(j.Sheets) > 0 && !slices.Equal(j.Beside, plan.Beside) {
		all = append(all, notices.Step{ID: "plan", First: on, Due: on, Says: notices.SayPlanAgain.With()})
	}
	for _, sheet := range j.Sheets {
		taken := func(s notices.Step) bool { return s.Kind == notices.SignsDown && slices.Contains(s.Sheets, sheet.ID) }
		if sheet.Gone && sheet.Hangs() && !slices.ContainsFunc(plan.Steps, taken) {
			all = append(all, notices.Step{ID: "outdated-" + sheet.ID, First: on, Due: on, Says: notices.SayOutdated.With(notices.Name(sheet.ID))})
		}
	}
	return all
}

// isStale reports whether a make would give other sheets than the last one did.
func (j LedgerJob) isStale(plan notices.Plan) bool {
	made := 0
	for _, sheet := range j.Sheets {
		if !sheet.Gone {
			made++
		}
	}
	return made != len(plan.Sheets) || slices.ContainsFunc(plan.Sheets, func(s notices.Sheet) bool {
		known, _ := j.Sheet(s.ID)
		return known.Gone || known.Digest != factsOf(s).Digest
	})
}

// asked is what to say of a step: whom it waits for, once it waits.
func asked(s notices.Step, urgency Urgency) notices.Message {
	if urgency == Waiting {
		return s.Waits
	}
	return s.Says
}

func (j LedgerJob) urgency(s notices.Step, on notices.Date) Urgency {
	past := on.Compare(s.Due) > 0
	switch {
	case j.isDone(s) || s.Kind == notices.KnockAgain && !j.leftAt(s):
		return notDue
	case past && s.Waits.ID != "":
		return Waiting
	case past && s.LateAfter.IsZero():
		return notDue
	case past && on.Compare(s.LateAfter) > 0:
		return Late
	case on.Compare(s.Due) >= 0:
		return Today
	case s.Due.Compare(on.Plus(ComingDays)) <= 0:
		return Coming
	}
	return Later
}

// isDone reports whether the job file or the ledger knows a step to be done.
func (j LedgerJob) isDone(s notices.Step) bool {
	if !s.Done.IsZero() {
		return true
	}
	return len(s.Sheets) > 0 && len(j.unsettled(s)) == 0
}

// unsettled are the sheets of a step whose marks do not say yet that it is done.
func (j LedgerJob) unsettled(s notices.Step) []string {
	return slices.DeleteFunc(slices.Clone(s.Sheets), func(id string) bool {
		sheet, known := j.Sheet(id)
		return known && sheet.settles(s)
	})
}

// settles reports whether the marks of a sheet say that its step is done: signs hang, or hang no more; the current paper is in somebody's hands; and of a
// second knock, that somebody spoke to them or knocked on two days.
func (s LedgerSheet) settles(step notices.Step) bool {
	switch step.Kind {
	case notices.SignsUp, notices.ResidentSignsUp:
		return slices.ContainsFunc(s.Posted, func(m Mark) bool { return m.Revision == s.Revision && isUp(m) })
	case notices.SignsDown:
		return len(s.Posted) > 0 && !s.Hangs()
	case notices.TellResidents: // one sheet for many homes, whose ids nobody has
		return slices.ContainsFunc(s.Handed, func(m Mark) bool { return m.Revision == s.Revision })
	case notices.KnockAgain:
		return s.spokenOrTwice(step.About)
	}
	return s.isWith(step.About)
}

// isWith reports whether a home has the current paper.
func (s LedgerSheet) isWith(home string) bool {
	return slices.ContainsFunc(s.Handed, func(m Mark) bool { return m.Revision == s.Revision && isUp(m) && m.isFor(home) })
}

// spokenOrTwice looks at the current paper only: new dates want a new knock.
func (s LedgerSheet) spokenOrTwice(home string) bool {
	first := ""
	for _, m := range s.Handed {
		if m.Revision != s.Revision || !m.isFor(home) {
			continue
		}
		if m.How == "spoke" || first != "" && m.On != first {
			return true
		}
		first = m.On
	}
	return false
}

// isFor: a mark without a home is for whom the sheet is for.
func (m Mark) isFor(home string) bool { return m.Home == "" || m.Home == home }

// leftAt reports whether paper was left at a door where nobody opened, so that a second knock makes sense.
func (j LedgerJob) leftAt(s notices.Step) bool {
	return slices.ContainsFunc(s.Sheets, func(id string) bool {
		sheet, _ := j.Sheet(id)
		return slices.ContainsFunc(sheet.Handed, func(m Mark) bool { return m.Revision == sheet.Revision && m.isFor(s.About) && m.How == "left" })
	})
}
