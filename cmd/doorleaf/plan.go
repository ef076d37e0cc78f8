package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"unicode/utf8"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/record"
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
	programme, err := reading(folder, decided)
	if err != nil {
		return err
	}
	jobs, err := known(programme, decided)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		fmt.Fprintln(c.err, "doorleaf: the ledger is not there, so this does not know what is handed over")
		jobs = unknown(decided)
	case err != nil:
		return err
	}
	var all []site.Summary
	for _, one := range jobs {
		s, err := site.Summarise(one, programme.Writer.Today)
		if err != nil {
			return err
		}
		all = append(all, s)
	}
	if err := p.print(c, all); err != nil || p.JSON {
		return err
	}
	c.sayMissing(programme.MissingPages())
	return nil
}

// unknown are plans whose jobs nobody remembers.
func unknown(plans []notices.Plan) []site.Known {
	var all []site.Known
	for _, plan := range plans {
		all = append(all, site.Known{Plan: plan})
	}
	return all
}

func (p plan) print(c console, all []site.Summary) error {
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
		} else {
			c.tellShortly(s)
		}
	}
	return nil
}

// How much a short plan lists of what can be long, and how wide it is.
const nextShown, mostMissing, planWidth = 6, 12, 100

// tellShortly is a plan on one screen.
func (c console) tellShortly(s site.Summary) {
	c.part("", rulesInOneLine(s.Rules))
	c.part("Homes", homeLines(s.Homes))
	c.part("Keep in mind", s.Mind)
	c.part("Still to ask; until then the stricter answer counts", firstOf(site.JoinMissing(s.Missing), mostMissing, "more: doorleaf plan --why"))
	c.part("Next", append(firstOf(nextLines(s.Next), nextShown, "more: doorleaf due"), whatIsLate(s)...))
	c.toPrint(s.Print)
	c.part("", []string{"Why, and where it is written: doorleaf plan --why"})
}

// part is lines below a head. Lines without one stand at the margin.
func (c console) part(head string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintln(c.out)
	indent := ""
	if head != "" {
		fmt.Fprintf(c.out, "%s:\n", head)
		indent = "  "
	}
	for _, line := range lines {
		fmt.Fprintln(c.out, wrapped(strings.Fields(line), indent))
	}
}

// wrapped puts words on a line, and sets in what would make it wider than a plan.
func wrapped(words []string, indent string) string {
	text, width := indent, len(indent)
	for i, word := range words {
		wide := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case width+1+wide > planWidth:
			text += "\n" + indent + "  "
			width = len(indent) + 2
		default:
			text += " "
			width++
		}
		text += word
		width += wide
	}
	return text
}

// rulesInOneLine names the rules that bind, and those that are good practice only. What no name can say follows on lines of its own.
func rulesInOneLine(rules []site.RuleSummary) []string {
	var binding, practice, others []string
	for _, r := range rules {
		switch {
		case r.Name == "":
			others = append(others, r.Says)
		case r.Binds == string(notices.Law):
			binding = append(binding, r.Name)
		default:
			practice = append(practice, r.Name)
		}
	}
	var line []string
	if len(binding) > 0 {
		line = append(line, "By law: "+strings.Join(binding, ", ")+".")
	}
	if len(practice) > 0 {
		line = append(line, "Good practice: "+strings.Join(practice, ", ")+".")
	}
	if len(line) > 0 {
		others = append([]string{strings.Join(line, " ")}, others...)
	}
	return others
}

func homeLines(homes []site.HomeSummary) []string {
	var lines []string
	for _, h := range homes {
		line := h.Outcome
		if line == "" {
			line = h.Who + ":"
		}
		var sheets []string
		for _, sheet := range h.Sheets {
			sheets = append(sheets, brought(sheet))
		}
		if len(sheets) > 0 {
			line += " (" + strings.Join(sheets, "; ") + ")"
		}
		lines = append(lines, line)
	}
	return lines
}

// brought is a sheet for a home, and whether somebody has it.
func brought(sheet site.HomeSheet) string {
	switch {
	case sheet.Handed && sheet.Changed:
		return sheet.Title + ": handed over, and it says something else now"
	case sheet.Handed:
		return sheet.Title + ": handed over"
	}
	return sheet.Title + " by " + sheet.By
}

func nextLines(steps []site.NextStep) []string {
	var lines []string
	for _, step := range steps {
		late := ""
		if step.Urgency == site.Late {
			late = "LATE "
		}
		lines = append(lines, late+step.When+": "+step.Says)
	}
	return lines
}

func whatIsLate(s site.Summary) []string {
	late := 0
	for _, step := range s.Next {
		if step.Urgency == site.Late {
			late++
		}
	}
	if late == 0 {
		return nil
	}
	return []string{count(late, "thing is", "things are") + " late: go today, and ask for a later start if people need time"}
}

// toPrint keeps each number on one line with what it counts.
func (c console) toPrint(counts []site.Count) {
	if len(counts) == 0 {
		return
	}
	words := []string{"To print:"}
	for i, line := range counts {
		words = append(words, fmt.Sprintf("%d x %s%s", line.Copies, line.Title, map[bool]string{false: ","}[i == len(counts)-1]))
	}
	fmt.Fprintln(c.out, "\n"+wrapped(words, ""))
}

// firstOf keeps a list short, and says how much more there is and where.
func firstOf(lines []string, most int, where string) []string {
	if len(lines) <= most {
		return lines
	}
	return append(lines[:most:most], fmt.Sprintf("and %d %s", len(lines)-most, where))
}

// tellWhy is each decision: what, because, where it is written and when it was read there; then each figure, with its day.
func (c console) tellWhy(s site.Summary) {
	for _, r := range s.Reasons {
		fmt.Fprintf(c.out, "\n%s\n  because  %s\n  source   %s (%s)\n", r.Outcome, r.Because, r.Source, r.Binds)
		if len(r.Read) > 0 {
			fmt.Fprintf(c.out, "  read     %s\n", whenRead(r.Read))
		}
		for _, m := range r.Missing {
			fmt.Fprintf(c.out, "  missing  %s: %s\n", m.Field, m.Would)
		}
	}
	fmt.Fprintln(c.out, "\nFigures, and the day on which each was read, or set where no text has it:")
	for _, row := range s.Rows {
		fmt.Fprintf(c.out, "  %s  %v %s, %s: %s\n", row.ReadOn, row.Value, row.Unit, row.Name, row.Source)
	}
	fmt.Fprintf(c.out, "\nThe federal rules were read in the annual edition of %d. See whether they have changed before you lean on one.\n", notices.FederalEdition)
}

// whenRead is the day on which the passages of a source were read; one by one where they were read on different days, or not all in the published text.
func whenRead(passages []record.Reading) string {
	var all, days []string
	for _, p := range passages {
		day := strings.TrimSpace(p.ReadOn + " " + strings.TrimPrefix(p.How, "read "))
		days = append(days, day)
		all = append(all, p.Citation+": "+day)
	}
	for _, day := range days {
		if day != days[0] {
			return strings.Join(all, "; ")
		}
	}
	return days[0]
}
