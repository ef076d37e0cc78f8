package main

import (
	"fmt"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
)

type posted struct {
	Job   string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Sheet []string `help:"Sheet, by the id in its foot; all signs of the last make if you name none." placeholder:"ID"`
	On    string   `required:"" help:"Day on which it went up, YYYY-MM-DD." placeholder:"DATE"`
	By    string   `help:"Initials of whoever hung it." placeholder:"INITIALS"`

	Confirm bool `help:"Note it although the day looks like a slip."`
}

func (p posted) Run(c console) error {
	return markOn(c, p.Job, p.On, p.Confirm, func(job ledger.Job, on notices.Date) (ledger.Job, []ledger.Noted, error) {
		return job.Post(p.Sheet, on, p.By)
	}, func(_ notices.Plan, all []ledger.Noted) {
		for _, n := range all {
			c.printNoted(n, "has hung since "+n.Mark.On)
		}
	})
}

// markOn notes what became of sheets on a day, and says it.
func markOn(c console, file, on string, confirmed bool, mark func(ledger.Job, notices.Date) (ledger.Job, []ledger.Noted, error), say func(notices.Plan, []ledger.Noted)) error {
	path, plan, err := loadOne(file)
	if err != nil {
		return err
	}
	day, err := notices.ParseDate(on)
	if err != nil {
		return fmt.Errorf("--on %w", err)
	}
	programme, err := writing(path, []notices.Plan{plan}, confirmed)
	if err != nil {
		return err
	}
	all, err := programme.Mark(plan, func(job ledger.Job) (ledger.Job, []ledger.Noted, error) { return mark(job, day) })
	if err != nil {
		return err
	}
	say(plan, all)
	c.warnOfDays(all, programme.Writer.Today)
	c.printNext(file, all)
	return nil
}

// printNoted is one line: what was noted, or that it was known.
func (c console) printNoted(n ledger.Noted, what string) {
	word := "noted"
	if n.Already {
		word = "known"
	}
	fmt.Fprintf(c.out, "%-7s %s, revision %s: %s\n", word, n.Sheet.ID, n.Mark.Revision, what)
}

// warnOfDays says which noted day is still to come: a slip, or somebody who writes ahead.
func (c console) warnOfDays(all []ledger.Noted, today notices.Date) {
	for _, n := range all {
		if day, err := notices.ParseDate(n.Mark.On); err == nil && day.Compare(today) > 0 {
			fmt.Fprintf(c.err, "doorleaf: %s is still to come; it is noted all the same, so check the day\n", n.Mark.On)
			return
		}
	}
}

// printNext says what follows from what was noted.
func (c console) printNext(file string, all []ledger.Noted) {
	for _, n := range all {
		if n.IsWrong() && n.Mark.Until == "" && n.Sheet.Gone {
			fmt.Fprintf(c.out, "but     %s: the job has no such sheet any more, so this paper has to go\n", n.Sheet.ID)
		} else if n.IsWrong() && n.Mark.Until == "" {
			fmt.Fprintf(c.out, "but     %s: the job has changed since, so revision %s has to replace this paper\n", n.Sheet.ID, n.Sheet.Revision)
		}
	}
	fmt.Fprintf(c.out, "next    doorleaf make %s: brings the coordinator's sheet up to date\n", file)
}
