package main

import (
	"fmt"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

type posted struct {
	Job   string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Sheet []string `help:"Sheet, by the id in its foot; all signs of the last make if you name none." placeholder:"ID"`
	On    string   `required:"" help:"Day on which it went up, YYYY-MM-DD." placeholder:"DATE"`
	By    string   `help:"Initials of whoever hung it." placeholder:"INITIALS"`
}

func (p posted) Run(c console) error {
	return note(c, p.Job, p.On, func(ledger site.Ledger, plan notices.Plan, on notices.Date) (site.Ledger, []site.Noted, error) {
		return ledger.Post(plan.Code, p.Sheet, on, p.By)
	}, func(_ notices.Plan, all []site.Noted) {
		for _, n := range all {
			c.printNoted(n, "has hung since "+n.Mark.On)
		}
	})
}

// loadOne reads one job file and decides it.
func loadOne(file string) (folder string, plan notices.Plan, err error) {
	folder, plans, err := load([]string{file})
	if err != nil {
		return "", notices.Plan{}, err
	}
	return folder, plans[0], nil
}

// note writes what happened on a day into the ledger of a job's programme, and says it.
func note(c console, file, on string, change func(site.Ledger, notices.Plan, notices.Date) (site.Ledger, []site.Noted, error), say func(notices.Plan, []site.Noted)) error {
	path, plan, err := loadOne(file)
	if err != nil {
		return err
	}
	day, err := notices.ParseDate(on)
	if err != nil {
		return err
	}
	var all []site.Noted
	err = folderOf(path).Note(func(ledger site.Ledger) (site.Ledger, error) {
		ledger, all, err = change(ledger, plan, day)
		return ledger, err
	})
	if err != nil {
		return err
	}
	say(plan, all)
	c.warnOfDays(all)
	c.printNext(file, all)
	return nil
}

func folderOf(path string) site.Folder {
	return site.Folder{Path: path, Out: filepath.Join(path, "out")}
}

// printNoted is one line: what was noted, or that it was known.
func (c console) printNoted(n site.Noted, what string) {
	word := "noted"
	if n.Already {
		word = "known"
	}
	fmt.Fprintf(c.out, "%-7s %s, revision %d: %s\n", word, n.Sheet.ID, n.Mark.Revision, what)
}

// warnOfDays says which noted day is still to come: a slip, or somebody who writes ahead.
func (c console) warnOfDays(all []site.Noted) {
	for _, n := range all {
		if day, err := notices.ParseDate(n.Mark.On); err == nil && day.Compare(today()) > 0 {
			fmt.Fprintf(c.err, "doorleaf: %s is still to come; it is noted all the same, so check the day\n", n.Mark.On)
			return
		}
	}
}

// printNext says what follows from what was noted.
func (c console) printNext(file string, all []site.Noted) {
	for _, n := range all {
		if n.Outdated && n.Mark.Until == "" && n.Sheet.Gone {
			fmt.Fprintf(c.out, "but     %s: the job has no such sheet any more, so this paper has to go\n", n.Sheet.ID)
		} else if n.Outdated && n.Mark.Until == "" {
			fmt.Fprintf(c.out, "but     %s: the job has changed since, so revision %d has to replace this paper\n", n.Sheet.ID, n.Sheet.Revision)
		}
	}
	fmt.Fprintf(c.out, "next    doorleaf make %s: brings the coordinator's sheet up to date\n", file)
}
