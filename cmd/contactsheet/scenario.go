package main

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"text/template"
	"time"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
)

// A printing is a way in which a programme has its sheets printed.
type printing struct {
	Name       string
	Paper      notices.Paper
	LargePrint notices.Answer
}

var printings = []printing{
	{"Letter", notices.Letter, notices.No},
	{"A4", notices.A4, notices.No},
	{"Letter, large print", notices.Letter, notices.Yes},
}

//go:embed programme.yaml jobs/*.yaml
var templates embed.FS

// A scenario is the invented programme and its jobs, for readers of one language and in one printing.
type scenario struct {
	Tag notices.Language
	printing
}

// Languages are those of the programme: English, and that of its readers.
func (s scenario) Languages() string {
	if s.Tag == notices.English {
		return string(s.Tag)
	}
	return string(notices.English) + ", " + string(s.Tag)
}

// folder is "letter-vi" or "letter-large-vi".
func (s scenario) folder() string {
	name := string(s.Paper)
	if s.LargePrint == notices.Yes {
		name += "-large"
	}
	return name + "-" + string(s.Tag)
}

// make founds the programme in a folder and makes its jobs.
func (s scenario) make(dir string) error {
	if err := site.NewProgramme(dir, s.fill); err != nil {
		return err
	}
	files := os.DirFS(dir)
	names, err := fs.Glob(files, "jobs/*.yaml")
	if err != nil {
		return err
	}
	jobs, problems := jobfile.Load(files, time.Date(2028, time.January, 1, 12, 0, 0, 0, time.UTC), names...)
	if len(problems) > 0 {
		return problems
	}
	var plans []notices.Plan
	for _, job := range jobs {
		plans = append(plans, notices.Decide(job))
	}
	day := notices.Date{Year: 2027, Month: time.April, Day: 20} // as invented as the jobs
	programme := site.Programme{Path: dir, Out: filepath.Join(dir, "out"), Writer: ledger.Writer{Laptop: "contact", Today: day}}
	_, err = programme.Make(plans, func(string) {})
	return err
}

// fill writes programme.yaml and the job files, filled in.
func (s scenario) fill(dir string) error {
	err := fs.WalkDir(templates, ".", func(path string, entry fs.DirEntry, err error) error {
		at := filepath.Join(dir, filepath.FromSlash(path))
		if err != nil || entry.IsDir() {
			return errors.Join(err, os.MkdirAll(at, 0o700))
		}
		file, err := template.ParseFS(templates, path)
		if err != nil {
			return err
		}
		var text bytes.Buffer
		if err := file.Execute(&text, s); err != nil {
			return err
		}
		return os.WriteFile(at, text.Bytes(), 0o600)
	})
	if err != nil {
		return fmt.Errorf("the invented jobs cannot be filled in: %w", err)
	}
	return nil
}
