package main

import (
	"cmp"
	"fmt"
	"path/filepath"

	"example.org/doorleaf/notices"
)

type proof struct {
	Job string `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	To  string `help:"File to write, instead of proof/<code>.html in the programme folder." placeholder:"FILE"`
}

func (p proof) Run(c console) error {
	path, job, err := loadOne(p.Job)
	if err != nil {
		return err
	}
	file := cmp.Or(p.To, filepath.Join(path, "proof", job.Code+".html"))
	programme, err := reading(path, []notices.Plan{job})
	if err != nil {
		return err
	}
	if err := programme.WriteProof(job, file); err != nil {
		return err
	}
	fmt.Fprintf(c.out, "wrote   %s: print it, sign it, and keep it for three years after the work is finished\n", file)
	fmt.Fprintln(c.out, "private it names homes and doors: keep it off doors, mailboxes and the web")
	return nil
}
