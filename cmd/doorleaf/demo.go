package main

import (
	"embed"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/doorleaf/site"
)

//go:embed demo
var demoFiles embed.FS

type demo struct {
	Dir string `arg:"" optional:"" default:"doorleaf-demo" help:"Folder to make; doorleaf-demo if you name none."`
}

func (d demo) Run(c console) error {
	files, err := fs.Sub(demoFiles, "demo")
	if err != nil {
		return err
	}
	if err := site.NewProgramme(d.Dir, func(dir string) error { return os.CopyFS(dir, files) }); err != nil {
		return err
	}
	jobs, err := filepath.Glob(filepath.Join(d.Dir, "jobs", "*.yaml"))
	if err != nil {
		return err
	}
	path, loaded, err := load(jobs)
	if err != nil {
		return err
	}
	programme, err := writing(path, loaded, true) // on whatever day somebody looks at it
	if err != nil {
		return err
	}
	if _, err := programme.Make(loaded, c.progress); err != nil {
		return err
	}
	fmt.Fprintf(c.out, "open   %s in a browser: what to print, where it goes, by when and why\n", filepath.Join(programme.Out, "print", "index.html"))
	fmt.Fprintf(c.out, "print  %s, two-sided: all sheets of one job\n", filepath.Join(programme.Out, "print", loaded[0].Code, "everything.html"))
	fmt.Fprintf(c.out, "upload %s to your web space: the pages behind the codes\n", filepath.Join(programme.Out, "web"))
	fmt.Fprintf(c.out, "edit   %s, then run: doorleaf make %s\n", jobs[0], jobs[0])
	return nil
}
