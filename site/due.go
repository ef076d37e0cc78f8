package site

import (
	"cmp"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
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
	ID         string
	Urgency    Urgency
	Code       string // of the job
	first, Due notices.Date
	when       string // the last day: "Wed May 5, 2027"
	Says       string
	sheets     []string // ids of those that it still has to hand over, put up or take down
}

// By is "by Wed May 5, 2027", "since Wed May 5, 2027", "was due Wed May 5, 2027" for what is not late yet, or the day alone for what can be done on no other.
func (s DueStep) By(on notices.Date) string {
	switch {
	case s.Urgency == Today && s.Due.Compare(on) < 0:
		return "was due " + s.when
	case s.Urgency == Late || s.Urgency == Waiting:
		return "since " + s.when
	case s.first != s.Due:
		return "by " + s.when
	}
	return s.when
}

// A Known plan is one with what the ledger remembers of its job.
type Known struct {
	Plan   notices.Plan
	Ledger ledger.Job
}

// Due lists what is due on a day over all jobs, nearest first. What the ledger knows to be done is not due. It is pure: the day is handed in.
func Due(all []Known, on notices.Date) ([]DueStep, error) {
	own, err := openCoordinator()
	if err != nil {
		return nil, err
	}
	v := &voice{Speaker: own, own: own}
	var steps []DueStep
	for _, one := range all {
		steps = append(steps, v.openSteps(one, on, Waiting)...)
	}
	return byUrgency(steps), v.err
}

// byUrgency sorts and returns steps: the most urgent first, and of those the nearest.
func byUrgency(steps []DueStep) []DueStep {
	slices.SortStableFunc(steps, func(a, b DueStep) int {
		return cmp.Or(cmp.Compare(a.Urgency, b.Urgency), a.Due.Compare(b.Due), cmp.Compare(a.Code, b.Code))
	})
	return steps
}

// openSteps are what is still to do for one job, up to an urgency, in the order of its steps.
func (v *voice) openSteps(one Known, on notices.Date, upTo Urgency) []DueStep {
	var all []DueStep
	plan := one.Plan
	for _, s := range append(ownSteps(one, on), plan.Steps...) {
		if urgency := urgencyOf(one.Ledger, s, on); urgency <= upTo {
			all = append(all, DueStep{s.ID, urgency, plan.Code, s.First, s.Due, lists.LongDay(s.Due), v.plain(asked(s, urgency)), unsettled(one.Ledger, s)})
		}
	}
	return all
}

// ownSteps are those that only the ledger knows of: the sheets of the last make say something else than the job file, or paper is out that says something else
// than the last make. What the steps of the plan take down anyway is not named twice.
func ownSteps(one Known, on notices.Date) []notices.Step {
	var all []notices.Step
	own := func(id string, says notices.Message) {
		all = append(all, notices.Step{ID: id, First: on, Due: on, Says: says})
	}
	job, plan := one.Ledger, one.Plan
	if job.IsKnown() && isStale(job, plan) {
		own("make", notices.SayMakeAgain.With())
	}
	if job.IsKnown() && !slices.Equal(job.Beside, plan.Beside) {
		own("plan", notices.SayPlanAgain.With())
	}
	for _, paper := range job.Wrong() {
		sheet, mark := paper.Sheet, paper.Mark
		taken := func(s notices.Step) bool { return s.Kind == notices.SignsDown && slices.Contains(s.Sheets, sheet.ID) }
		switch where := notices.Name(cmp.Or(sheet.To, mark.Home, sheet.ID)); {
		case mark.Event == ledger.Printed:
			own("printed-"+sheet.ID, notices.SayPrintNew.With(notices.SheetID(sheet.ID)))
		case mark.Home != "" && sheet.Gone:
			own("wrong-"+sheet.ID+"-"+mark.Home, notices.SayTakeBack.With(where, notices.SheetID(sheet.ID)))
		case mark.Home != "":
			own("wrong-"+sheet.ID+"-"+mark.Home, notices.SayBringNew.With(where, notices.SheetID(sheet.ID)))
		case !sheet.Gone:
			own("wrong-"+sheet.ID, notices.SayHangNew.With(notices.SheetID(sheet.ID)))
		case !slices.ContainsFunc(plan.Steps, taken):
			own("outdated-"+sheet.ID, notices.SayOutdated.With(notices.SheetID(sheet.ID)))
		}
	}
	return all
}

// isStale reports whether a make would give other sheets than the last one did.
func isStale(job ledger.Job, plan notices.Plan) bool {
	made := 0
	for _, sheet := range job.Sheets {
		if !sheet.Gone {
			made++
		}
	}
	return made != len(plan.Sheets) || slices.ContainsFunc(plan.Sheets, func(s notices.Sheet) bool {
		known, _ := job.Sheet(s.ID)
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

func urgencyOf(job ledger.Job, s notices.Step, on notices.Date) Urgency {
	past := on.Compare(s.Due) > 0
	switch {
	case isDone(job, s) || s.Kind == notices.KnockAgain && !job.LeftAt(s.Sheets, s.About):
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
func isDone(job ledger.Job, s notices.Step) bool {
	return !s.Done.IsZero() || len(s.Sheets) > 0 && len(unsettled(job, s)) == 0
}

// unsettled are the sheets of a step whose marks do not say yet that it is done.
func unsettled(job ledger.Job, s notices.Step) []string {
	return slices.DeleteFunc(slices.Clone(s.Sheets), func(id string) bool {
		sheet, known := job.Sheet(id)
		return known && settles(sheet, s)
	})
}

// settles reports whether the marks of a sheet say that its step is done: signs hang, or hang no more; the current paper is in somebody's hands; and of a
// second knock, that somebody spoke to them or knocked on two days.
func settles(sheet ledger.Sheet, step notices.Step) bool {
	switch step.Kind {
	case notices.SignsUp, notices.ResidentSignsUp:
		return sheet.HangsNow()
	case notices.SignsDown:
		return len(sheet.Posted) > 0 && !sheet.Hangs()
	case notices.TellResidents: // one sheet for many homes, whose ids nobody has
		return sheet.IsWithAnybody()
	case notices.KnockAgain:
		return sheet.SpokenOrTwice(step.About)
	}
	return sheet.IsWith(step.About)
}
