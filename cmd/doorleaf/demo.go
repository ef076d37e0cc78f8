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
	if err := found(d.Dir, files); err != nil {
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
	folder := site.Folder{Path: path, Out: filepath.Join(path, "out")}
	if _, err := folder.Make(loaded, today(), c.progress); err != nil {
		return err
	}
	fmt.Fprintf(c.out, "open   %s in a browser: what to print, where it goes, by when and why\n", filepath.Join(folder.Out, "print", "index.html"))
	fmt.Fprintf(c.out, "print  %s, two-sided: all sheets of one job\n", filepath.Join(folder.Out, "print", loaded[0].Code, "everything.html"))
	fmt.Fprintf(c.out, "upload %s to your web space: the pages behind the codes\n", filepath.Join(folder.Out, "web"))
	fmt.Fprintf(c.out, "edit   %s, then run: doorleaf make %s\n", jobs[0], jobs[0])
	return nil
}

// found makes a new programme folder: the given files, the schemas, a key and a ledger. It refuses a folder that has anything in it.
func found(dir string, files fs.FS) error {
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return fmt.Errorf("the folder %s is not empty; name a new one, and nothing in this one changes", dir)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("the folder %s can not be made (%w); choose another place", dir, err)
	}
	if err := os.CopyFS(dir, files); err != nil {
		return fmt.Errorf("the folder %s can not be filled (%w)", dir, err)
	}
	if err := writeSchemas(dir); err != nil {
		return err
	}
	if err := site.MakeKey(filepath.Join(dir, site.KeyFile)); err != nil {
		return err
	}
	return site.MakeLedger(filepath.Join(dir, site.LedgerFile))
}
