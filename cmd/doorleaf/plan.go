package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"example.org/doorleaf/site"
)

type plan struct {
	Jobs []string `arg:"" name:"job" help:"Job files, such as jobs/alder-14.yaml."`
	Why  bool     `name:"why" help:"Each decision with its reason, where that is written, and when it was read there."`
	JSON bool     `name:"json" help:"All of it, as JSON."`
}

func (p plan) Run(c console) error {
	folder, decided, err := load(p.Jobs)
	if err != nil {
		return err
	}
	ledger, err := site.ReadLedger(filepath.Join(folder, site.LedgerFile))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		fmt.Fprintf(c.err, "doorleaf: %s is not there, so this does not know what is handed over\n", site.LedgerFile)
	case err != nil:
		return err
	}
	var all []site.Summary
	for _, one := range decided {
		s, err := site.Summarise(one, ledger, today())
		if err != nil {
			return err
		}
		all = append(all, s)
	}
	if p.JSON {
		out := json.NewEncoder(c.out)
		out.SetIndent("", "  ")
		return out.Encode(all)
	}
	for i, s := range all {
		if i > 0 {
			fmt.Fprintln(c.out)
		}
		fmt.Fprintf(c.out, "%s (%s)\n", s.Address, s.Code)
		if p.Why {
			c.tellWhy(s)
			continue
		}
		c.tellShortly(s)
	}
	return nil
}

// nextShown is how many steps a short plan lists, and mostMissing how many questions.
const nextShown, mostMissing = 6, 12

// tellShortly is a plan on one screen.
func (c console) tellShortly(s site.Summary) {
	c.part("Rules", s.Rules)
	fmt.Fprintln(c.out, "\nHomes:")
	for _, h := range s.Homes {
		fmt.Fprintf(c.out, "  %s%s\n", h.Outcome, broughtThere(h))
	}
	c.part("Mind", s.Mind)
	c.part("Still to ask; until then the stricter answer counts", firstOf(site.JoinMissing(s.Missing), mostMissing, "more: doorleaf plan --why"))
	var next []string
	late := 0
	for _, step := range s.Next {
		when := "by " + step.By
		if step.Late {
			when = "LATE since " + step.By
			late++
		}
		next = append(next, when+": "+step.Says)
	}
	c.part("Next", firstOf(next, nextShown, "more: doorleaf due"))
	if late > 0 {
		fmt.Fprintf(c.out, "  %s late: go today, and ask for a later start if people need time\n", count(late, "thing is", "things are"))
	}
	fmt.Fprint(c.out, "\nTo print:")
	for i, line := range s.Print {
		fmt.Fprintf(c.out, "%s %d x %s", map[bool]string{false: ","}[i == 0], line.Copies, line.Title)
	}
	fmt.Fprintln(c.out, "\nWhy, and where it is written: doorleaf plan --why")
}

// broughtThere is the sheet for a home, and whether somebody has it.
func broughtThere(h site.HomeSummary) string {
	switch {
	case h.Sheet == "":
		return ""
	case h.Handed:
		return fmt.Sprintf(" (%s: handed over)", h.Sheet)
	}
	return fmt.Sprintf(" (%s by %s)", h.Sheet, h.By)
}

func (c console) part(head string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(c.out, "\n%s:\n", head)
	for _, line := range lines {
		fmt.Fprintln(c.out, "  "+line)
	}
}

// firstOf keeps a list short, and says how much more there is and where.
func firstOf(lines []string, most int, where string) []string {
	if len(lines) <= most {
		return lines
	}
	return append(lines[:most:most], fmt.Sprintf("and %d %s", len(lines)-most, where))
}

// tellWhy is each decision: what, because, where it is written; then each figure with the day on which it was read.
func (c console) tellWhy(s site.Summary) {
	for _, r := range s.Reasons {
		fmt.Fprintf(c.out, "\n%s\n  because  %s\n  source   %s (%s)\n", r.Outcome, r.Because, r.Source, r.Binds)
		for _, m := range r.Missing {
			fmt.Fprintf(c.out, "  missing  %s: %s\n", m.Field, m.Would)
		}
	}
	fmt.Fprintln(c.out, "\nFigures, and when each was read:")
	for _, row := range s.Rows {
		fmt.Fprintf(c.out, "  %s  %v %s, %s: %s\n", row.ReadOn, row.Value, row.Unit, row.Name, row.Source)
	}
}
