package main

import (
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

type removed struct {
	Job   string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Sheet []string `help:"Sheet, by the id in its foot; all that hangs if you name none. A sheet that a home has can be noted as taken back." placeholder:"ID"`
	On    string   `required:"" help:"Day on which it came down, YYYY-MM-DD." placeholder:"DATE"`
}

func (r removed) Run(c console) error {
	return note(c, r.Job, r.On, func(ledger site.Ledger, job notices.Job, on notices.Date) (site.Ledger, []site.Noted, error) {
		return ledger.TakeDown(job.Code, r.Sheet, on)
	}, func(job notices.Job, all []site.Noted) {
		for _, n := range all {
			c.printNoted(n, "out from "+n.Mark.On+" to "+n.Mark.Until)
		}
		c.warnTooSoon(job, all)
	})
}

// warnTooSoon: that a sign came down is a fact and is noted; that it came down before the check is a danger, and is said.
func (c console) warnTooSoon(job notices.Job, all []site.Noted) {
	var early []string
	for _, n := range all {
		for _, w := range behind(job, n.Sheet) {
			if job.Checked(w) != notices.CheckPassed && !n.Sheet.Hangs() && !slices.Contains(early, w.ID) {
				early = append(early, w.ID)
			}
		}
	}
	if len(early) == 0 {
		return
	}
	fmt.Fprintf(c.err, "doorleaf: WARNING: signs are down, and no passed check is noted for the work called %s. Signs stay until cleaning and checking are done"+
		" (40 CFR 745.85(a)(1)); hang them again now, or enter the pass under checks in the job file\n", strings.Join(early, ", "))
}

// behind is the work that a sign warns of: that in its area, or all of it when the sign is for the whole house.
func behind(job notices.Job, sheet site.LedgerSheet) []notices.Work {
	if sheet.Area == "" {
		return nil
	}
	works := slices.DeleteFunc(slices.Clone(job.Work), func(w notices.Work) bool { return string(w.Area) != sheet.Area })
	if len(works) == 0 {
		return job.Work
	}
	return works
}
