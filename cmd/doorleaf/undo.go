package main

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
)

type undo struct {
	Job  string `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Mark string `help:"Mark, by the name that this command lists." placeholder:"NAME"`

	Confirm bool `help:"Strike it although the clock looks wrong."`
}

func (u undo) Run(c console) error {
	path, plan, err := loadOne(u.Job)
	if err != nil {
		return err
	}
	programme, err := writing(path, []notices.Plan{plan}, u.Confirm)
	if err != nil {
		return err
	}
	if u.Mark == "" {
		job, err := programme.Ledger(plan.Code)
		if err != nil {
			return err
		}
		u.list(c, job.Marks())
		return nil
	}
	slip, err := programme.Undo(plan, u.Mark)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.out, "struck  %s, %v\n", slip.Name, slip)
	fmt.Fprintf(c.out, "next    doorleaf make %s: brings the coordinator's sheet up to date\n", u.Job)
	return nil
}

// list has the latest mark first, as it is the one that is most often a slip.
func (u undo) list(c console, marks []ledger.Slip) {
	if len(marks) == 0 {
		fmt.Fprintln(c.out, "nothing is noted that could be struck")
		return
	}
	for _, slip := range slices.Backward(marks) {
		fmt.Fprintf(c.out, "%-10s %v\n", slip.Name, slip)
	}
	fmt.Fprintf(c.out, "strike one with doorleaf undo %s --mark NAME\n", u.Job)
}
