package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing/fstest"

	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
)

type start struct {
	Dir string `arg:"" help:"Folder to make for your programme."`
}

func (s start) Run(c console) error {
	files := fstest.MapFS{
		jobfile.ProgrammeFile: {Data: jobfile.ProgrammeSkeleton(), Mode: 0o644},
		"jobs/first-job.yaml": {Data: jobfile.JobSkeleton(), Mode: 0o644},
	}
	if err := site.NewProgramme(s.Dir, files); err != nil {
		return err
	}
	form, err := lists.WalkRound()
	if err != nil {
		return err
	}
	at := func(name string) string { return filepath.Join(s.Dir, filepath.FromSlash(name)) }
	if err := os.WriteFile(at("walk-round.html"), form, 0o644); err != nil {
		return fmt.Errorf("the walk-round form cannot be written (%w)", err)
	}
	fmt.Fprintf(c.out, "fill in %s: who you are, once\n", at(jobfile.ProgrammeFile))
	fmt.Fprintf(c.out, "print   %s and take it along to the house\n", at("walk-round.html"))
	fmt.Fprintf(c.out, "fill in %s from the form, then run: doorleaf plan %s\n", at("jobs/first-job.yaml"), at("jobs/first-job.yaml"))
	fmt.Fprintf(c.out, "keep    a copy of %s and %s: without them no code on paper can be made again\n", at(site.KeyFile), at(ledger.FolderName))
	return nil
}
