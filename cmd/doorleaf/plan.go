package main

import (
	"fmt"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

type plan struct {
	Jobs []string `arg:"" name:"job" help:"Job files, such as jobs/alder-14.yaml."`
}

func (p plan) Run(c console) error {
	_, jobs, err := load(p.Jobs)
	if err != nil {
		return err
	}
	for i, job := range jobs {
		if i > 0 {
			fmt.Fprintln(c.out)
		}
		if err := explain(c, job); err != nil {
			return err
		}
	}
	return nil
}

// explain prints each decision as a colleague would tell it: what, because, and where it is written; then what there is to print.
func explain(c console, job notices.Job) error {
	decided := notices.Decide(job)
	reasons, err := site.Explain(decided)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.out, "%s (%s)\n", job.Address, job.Code)
	for _, r := range reasons {
		fmt.Fprintf(c.out, "\n%s\n  because  %s\n  source   %s\n", r.Outcome, r.Because, r.Source)
	}
	fmt.Fprintln(c.out, "\nTo print:")
	for _, line := range site.Tally(decided) {
		fmt.Fprintf(c.out, "  %3d  %s\n", line.Copies, line.Title)
	}
	return nil
}
