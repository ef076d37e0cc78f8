package main

import (
	"encoding/json"
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

type plan struct {
	Jobs []string `arg:"" name:"job" help:"Job files, such as jobs/alder-14.yaml."`
	JSON bool     `name:"json" help:"The same as JSON."`
}

func (p plan) Run(c console) error {
	_, decided, err := load(p.Jobs)
	if err != nil {
		return err
	}
	var plans []explained
	for _, one := range decided {
		plan, err := explain(one)
		if err != nil {
			return err
		}
		plans = append(plans, plan)
	}
	if p.JSON {
		out := json.NewEncoder(c.out)
		out.SetIndent("", "  ")
		return out.Encode(plans)
	}
	for i, plan := range plans {
		if i > 0 {
			fmt.Fprintln(c.out)
		}
		plan.print(c)
	}
	return nil
}

// An explained plan is printed for people and as JSON from the same values.
type explained struct {
	Code    string              `json:"code"`
	Address string              `json:"address"`
	Reasons []site.ReasonRecord `json:"reasons"`
	Print   []site.Count        `json:"print"`
	Late    []string            `json:"late"` // sheets that are late today, by id
}

func explain(decided notices.Plan) (explained, error) {
	reasons, err := site.Explain(decided)
	return explained{decided.Code, decided.Address, reasons, site.Tally(decided), late(decided)}, err
}

func late(plan notices.Plan) []string {
	ids := []string{}
	for _, sheet := range plan.Sheets {
		if !sheet.LateAfter.IsZero() && today().Compare(sheet.LateAfter) > 0 {
			ids = append(ids, sheet.ID)
		}
	}
	return ids
}

// print tells each decision as a colleague would: first which answers are still missing; then what, because, where it is written; then what there is
// to print.
func (p explained) print(c console) {
	fmt.Fprintf(c.out, "%s (%s)\n", p.Address, p.Code)
	p.printQuestions(c)
	for _, r := range p.Reasons {
		fmt.Fprintf(c.out, "\n%s\n  because  %s\n  source   %s (%s)\n", r.Outcome, r.Because, r.Source, r.Binds)
		for _, m := range r.Missing {
			fmt.Fprintf(c.out, "  missing  %s: %s\n", m.Field, m.Would)
		}
	}
	fmt.Fprintln(c.out, "\nTo print:")
	for _, line := range p.Print {
		fmt.Fprintf(c.out, "  %3d  %s\n", line.Copies, line.Title)
	}
	if len(p.Late) > 0 {
		fmt.Fprintf(c.out, "\nLATE: %s to hand over; go today and ask for a later start if people need time\n", count(len(p.Late), "sheet", "sheets"))
	}
}

// printQuestions lists the answers that nobody has given yet. Each counts as the stricter one until then.
func (p explained) printQuestions(c console) {
	var missing []site.MissingRecord
	for _, r := range p.Reasons {
		for _, m := range r.Missing {
			if !slices.Contains(missing, m) {
				missing = append(missing, m)
			}
		}
	}
	if len(missing) == 0 {
		return
	}
	fmt.Fprintln(c.out, "\nStill to ask. Until then the stricter answer counts:")
	for _, m := range missing {
		fmt.Fprintf(c.out, "  %s: %s\n", m.Field, m.Would)
	}
}
