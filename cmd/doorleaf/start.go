package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
)

type start struct {
	Dir string `arg:"" help:"Folder to make for your programme."`
}

func (s start) Run(c console) error {
	form, err := lists.WalkRound()
	if err != nil {
		return err
	}
	err = site.NewProgramme(s.Dir, func(dir string) error {
		return errors.Join(
			os.Mkdir(filepath.Join(dir, "jobs"), disk.PrivateFolder),
			os.WriteFile(filepath.Join(dir, jobfile.ProgrammeFile), jobfile.ProgrammeSkeleton(), disk.Private),
			os.WriteFile(filepath.Join(dir, "jobs", "first-job.yaml"), jobfile.JobSkeleton(), disk.Private),
			os.WriteFile(filepath.Join(dir, "walk-round.html"), form, disk.Private),
		)
	})
	if err != nil {
		return err
	}
	at := func(name string) string { return filepath.Join(s.Dir, filepath.FromSlash(name)) }
	fmt.Fprintf(c.out, "fill in %s: who you are, once\n", at(jobfile.ProgrammeFile))
	fmt.Fprintf(c.out, "print   %s and take it along to the house\n", at("walk-round.html"))
	fmt.Fprintf(c.out, "fill in %s from the form, then run: doorleaf plan %s\n", at("jobs/first-job.yaml"), at("jobs/first-job.yaml"))
	fmt.Fprintf(c.out, "keep    a copy of %s and %s: without them no code on paper can be made again\n", at(site.KeyFile), at(ledger.FolderName))
	return nil
}
