package main

import (
	"fmt"

	"example.org/doorleaf/notices"
)

type restore struct {
	Job string `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Out string `help:"Output folder that knows what was made, instead of out in the programme folder." placeholder:"DIR"`
}

func (r restore) Run(c console) error {
	path, plan, err := loadOne(r.Job)
	if err != nil {
		return err
	}
	programme, err := writing(path, []notices.Plan{plan}, true)
	if err != nil {
		return err
	}
	if r.Out != "" {
		programme.Out = r.Out
	}
	all, err := programme.Restore(plan.Code)
	for _, one := range all {
		fmt.Fprintf(c.out, "kept    %s of a damaged file, and put the file aside as %s\n", count(one.Lines, "line", "lines"), one.File)
		if one.Lost > 0 {
			fmt.Fprintf(c.out, "lost    %s: compare with the walk lists on paper, and note again what is missing\n", count(one.Lost, "line", "lines"))
		}
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(c.out, "right   the ledger of job %s can be used again\n", plan.Code)
	fmt.Fprintf(c.out, "next    doorleaf make %s\n", r.Job)
	return nil
}
