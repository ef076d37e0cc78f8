package main

import (
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
)

type removed struct {
	Job   string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Sheet []string `help:"Sheet, by the id in its foot; all that hangs if you name none. A sheet that a home has can be noted as taken back." placeholder:"ID"`
	On    string   `required:"" help:"Day on which it came down, YYYY-MM-DD." placeholder:"DATE"`

	Confirm bool `help:"Note it although the day looks like a slip."`
}

func (r removed) Run(c console) error {
	return markOn(c, r.Job, r.On, r.Confirm, func(job ledger.Job, on notices.Date) (ledger.Job, []ledger.Noted, error) {
		return job.TakeDown(r.Sheet, on)
	}, func(plan notices.Plan, all []ledger.Noted) {
		for _, n := range all {
			c.printNoted(n, "out from "+n.Mark.On+" to "+n.Mark.Until)
		}
		c.warnTooSoon(plan, all)
	})
}

// warnTooSoon: that a sign came down is a fact and is noted; that it came down before the check is a danger, and is said.
func (c console) warnTooSoon(plan notices.Plan, all []ledger.Noted) {
	var early []string
	for _, n := range all {
		for _, keep := range behind(plan, n.Sheet) {
			if !n.Sheet.Hangs() && !slices.Contains(early, keep.Work) {
				early = append(early, keep.Work)
			}
		}
	}
	if len(early) == 0 {
		return
	}
	fmt.Fprintf(c.err, "doorleaf: WARNING: signs are down, and no passed check is noted for the work called %s. Signs stay until cleaning and checking are done"+
		" (40 CFR 745.85(a)(1)); hang them again now, or enter the pass under checks in the job file\n", strings.Join(early, ", "))
}

// behind is what a sign warns of and has not passed: the work in its area, or all of it when the sign is for the whole house.
func behind(plan notices.Plan, sheet ledger.Sheet) []notices.Keep {
	switch sheet.Area {
	case "":
		return nil
	case string(notices.WholeHouse):
		return plan.Open
	}
	return slices.DeleteFunc(slices.Clone(plan.Open), func(k notices.Keep) bool { return string(k.Area) != sheet.Area })
}
