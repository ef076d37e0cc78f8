package main

import (
	"cmp"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
)

type printed struct {
	Job   string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Sheet []string `help:"Sheet, by the id in its foot; all of the last make if you name none." placeholder:"ID"`
	On    string   `help:"Day, YYYY-MM-DD; today if you name none." placeholder:"DATE"`

	Confirm bool `help:"Note it although the day looks like a slip."`
}

func (p printed) Run(c console) error {
	_, plan, err := loadOne(p.Job)
	if err != nil {
		return err
	}
	return markOn(c, p.Job, cmp.Or(p.On, today(plan.Programme).String()), p.Confirm, func(job ledger.Job, on notices.Date) (ledger.Job, []ledger.Noted, error) {
		return job.Print(p.Sheet, on)
	}, func(_ notices.Plan, all []ledger.Noted) {
		for _, n := range all {
			c.printNoted(n, "printed on "+n.Mark.On)
		}
	})
}
