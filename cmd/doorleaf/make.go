package main

import (
	"cmp"
	"fmt"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/pdf"
)

type makeSheet struct {
	Jobs         []string `arg:"" name:"job" help:"Job files, such as jobs/alder-14.yaml."`
	PDF          bool     `name:"pdf" help:"PDF files as well, for the printer and the copy shop. Chrome, Chromium or Edge makes them."`
	Out          string   `help:"Folder to write to, instead of out in the programme folder." placeholder:"DIR"`
	WithoutCodes bool     `help:"Sheets with phone numbers only, for the night when the key is on another laptop."`
}

func (m makeSheet) Run(c console) error {
	path, plans, err := load(m.Jobs)
	if err != nil {
		return err
	}
	folder := site.Folder{Path: path, Out: cmp.Or(m.Out, filepath.Join(path, "out"))}
	if m.PDF {
		folder.Browser = browser(c)
	}
	changed, err := m.make(folder, plans, c)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.out, "made %s in %s; %s\n", count(len(plans), "job", "jobs"), folder.Out, changedFiles(changed))
	wrong, err := folder.OutdatedPaper(plans)
	if err != nil {
		return err
	}
	if wrong > 0 {
		fmt.Fprintf(c.out, "bring  %s of paper that is out %s wrong now: see \"Put right\" on the list, and tell people today\n", count(wrong, "piece", "pieces"), isAre(wrong))
	}
	fmt.Fprintf(c.out, "open   %s\n", filepath.Join(folder.Out, "print", "index.html"))
	if folder.Browser != nil {
		for _, plan := range plans {
			fmt.Fprintf(c.out, "print  %s, two-sided: all sheets of %s\n", filepath.Join(folder.Out, "print", plan.Code, site.HomePrinter), plan.Code)
		}
	}
	if !m.WithoutCodes {
		fmt.Fprintf(c.out, "upload %s\n", filepath.Join(folder.Out, "web"))
	}
	return nil
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

func (m makeSheet) make(folder site.Folder, plans []notices.Plan, c console) ([]string, error) {
	if m.WithoutCodes {
		return folder.MakeWithoutCodes(plans, c.progress)
	}
	return folder.Make(plans, today(), c.progress)
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
