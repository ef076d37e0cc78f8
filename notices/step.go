package notices

import (
	"fmt"
	"slices"
)

// A Step is one thing that has to happen in the life of a job, and by when. What is done already is known to the ledger, but for what the job file says.
//
// Steps that follow a pass exist only once the job file has it, so nobody can plan a return before the check.
type Step struct {
	ID        string // kind, what it is about, and the ordinal of a day: "letter-h1", "work_day-hall-2"; stable when days move
	Kind      StepKind
	For       Party
	About     string // id of the household, neighbour or piece of work; "" for the whole job
	First     Date   // from this day on it can be done
	Due       Date   // the last day on which it does its work
	LateAfter Date   // from the next day on it is late; zero when it is never late and the days just pass
	Says      Message
	Waits     Message // what it waits for once its days are over; its ID is "" when it waits for nobody
	Source    Source
	Binds     Binding
	Sheets    []string // ids of the sheets that are handed over, put up or taken down
	Done      Date     // from the job file; zero when only the ledger can know
}

// A StepKind says what has to happen.
type StepKind string

const (
	TalkToHousehold StepKind = "talk"
	BringLetter     StepKind = "letter"
	GivePamphlet    StepKind = "pamphlet"
	TellNeighbour   StepKind = "tell"
	KnockAgain      StepKind = "knock_again"
	TellResidents   StepKind = "tell_residents"
	ResidentSignsUp StepKind = "resident_signs_up"
	SignsUp         StepKind = "signs_up"
	BookExaminer    StepKind = "book_examiner"
	TellPresumption StepKind = "presumption"
	WorkDay         StepKind = "work_day"
	CleanAndCheck   StepKind = "check"
	SetCleanDays    StepKind = "set_clean_days"
	TellCleanAgain  StepKind = "tell_clean_again"
	CleanAgain      StepKind = "clean_again"
	SignsDown       StepKind = "signs_down"
	BringReturn     StepKind = "return"
	TellDone        StepKind = "tell_done"
	TellAfterWork   StepKind = "after_work"
	KeepFile        StepKind = "keep_file"
)

// A Party is whom a step is for.
type Party string

const (
	ForHousehold Party = "household"
	ForNeighbour Party = "neighbour"
	ForDoors     Party = "door"
	ForWork      Party = "work"
	ForOwner     Party = "owner"
	ForResidents Party = "residents" // of the other homes in a building with common areas
	ForFile      Party = "file"
)

// More come from the ledger alone: paper that is out and says something else than the last make, and a job file that says something else than that.
var (
	SayOutdated  = ownText("step.outdated", SheetID(""))
	SayTakeBack  = ownText("step.take_back", Name(""), SheetID(""))
	SayBringNew  = ownText("step.bring_new", Name(""), SheetID(""))
	SayHangNew   = ownText("step.hang_new", SheetID(""))
	SayPrintNew  = ownText("step.print_new", SheetID(""))
	SayMakeAgain = ownText("step.make_again")
	SayPlanAgain = ownText("step.plan_again")
)

// steps are everything that has to happen for a job, nearest first. What day it is changes nothing.
func steps(job Job) []Step {
	if len(job.leadWork()) == 0 {
		return nil
	}
	all := slices.Concat(job.householdSteps(), job.pamphletSteps(), job.presumptionSteps(), job.bookSteps(), job.neighbourSteps())
	for _, w := range job.leadWork() {
		all = slices.Concat(all, job.signSteps(w), job.workDays(w), job.checkSteps(w), job.signsDown(w))
	}
	all = slices.Concat(all, job.entrySteps(), job.commonAreaSteps(), job.tellCleanAgain(), job.endings(), job.afterWork())
	slices.SortStableFunc(all, func(a, b Step) int { return a.Due.Compare(b.Due) })
	return all
}

// step is one on a single day, late from the next day on.
func step(kind StepKind, party Party, about string, day Date, says Message) Step {
	id := string(kind)
	if about != "" {
		id += "-" + about
	}
	return Step{ID: id, Kind: kind, For: party, About: about, First: day, Due: day, LateAfter: day, Says: says, Source: inPractice, Binds: GoodPractice}
}

// from lets a step be done earlier.
func (s Step) from(day Date) Step {
	s.First = day
	return s
}

// numbered tells several days of one thing apart. The number, not the date, is in the id, so that a calendar moves an entry whose day changed.
func (s Step) numbered(i int) Step {
	s.ID = fmt.Sprintf("%s-%d", s.ID, i+1)
	return s
}

// neverLate is for days that just pass.
func (s Step) neverLate() Step {
	s.LateAfter = Date{}
	return s
}

func (s Step) cites(source Source, binds Binding) Step {
	s.Source, s.Binds = source, binds
	return s
}

func (s Step) with(sheets ...string) Step {
	s.Sheets = sheets
	return s
}
