package main

import (
	"cmp"
	"fmt"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/pdf"
)

type makeSheet struct {
	Jobs         []string `arg:"" name:"job" help:"Job files, such as jobs/alder-14.yaml."`
	PDF          bool     `name:"pdf" help:"PDF files as well, for the printer and the copy shop. Chrome, Chromium or Edge makes them."`
	Out          string   `help:"Folder to write to, instead of out in the programme folder." placeholder:"DIR"`
	Confirm      bool     `help:"Make them although the day or the address looks like a slip."`
	WithoutCodes bool     `help:"Sheets with phone numbers only, for the night when the key is on another laptop."`
}

func (m makeSheet) Run(c console) error {
	path, plans, err := load(m.Jobs)
	if err != nil {
		return err
	}
	programme, err := writing(path, plans, m.Confirm)
	if err != nil {
		return err
	}
	programme.Out = cmp.Or(m.Out, programme.Out)
	if m.PDF {
		programme.Browser = browser(c)
	}
	done, err := m.make(programme, plans, c)
	if err != nil {
		return err
	}
	m.sayDone(c, programme, plans, done)
	return nil
}

func (m makeSheet) sayDone(c console, programme site.Programme, plans []notices.Plan, done site.Make) {
	fmt.Fprintf(c.out, "made %s in %s; %s\n", count(len(plans), "job", "jobs"), programme.Out, changedFiles(done.Changed))
	if done.Wrong > 0 {
		fmt.Fprintf(c.out, "bring  %s of paper that is out %s wrong now: see \"Put right\" on the list, and tell people today\n", count(done.Wrong, "piece", "pieces"), isAre(done.Wrong))
	}
	if done.MaybeOut > 0 {
		fmt.Fprintf(c.out, "check  %s now: if the last version was printed, throw it away\n", count(done.MaybeOut, "sheet says something else", "sheets say something else"))
	}
	fmt.Fprintf(c.out, "open   %s\n", filepath.Join(programme.Out, "print", "index.html"))
	if programme.Browser != nil {
		for _, plan := range plans {
			fmt.Fprintf(c.out, "print  %s, two-sided: all sheets of %s\n", filepath.Join(programme.Out, "print", plan.Code, lists.HomePrinter), plan.Code)
		}
	}
	if !m.WithoutCodes {
		fmt.Fprintf(c.out, "upload %s\n", filepath.Join(programme.Out, "web"))
	}
	c.sayMissing(done.Missing)
}

// browser is the one that prints. Without one the sheets can be printed all the same, so it is no error, only a sentence.
func browser(c console) *pdf.Browser {
	found, err := pdf.Find()
	if err != nil {
		fmt.Fprintf(c.err, "doorleaf: %v; print everything.html from any browser meanwhile\n", err)
		return nil
	}
	return &found
}

func (m makeSheet) make(programme site.Programme, plans []notices.Plan, c console) (site.Make, error) {
	if m.WithoutCodes {
		return programme.MakeWithoutCodes(plans, c.progress)
	}
	return programme.Make(plans, c.progress)
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

func changedFiles(changed []string) string {
	if len(changed) == 0 {
		return "nothing changed"
	}
	return count(len(changed), "file", "files") + " changed"
}
