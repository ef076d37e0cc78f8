// Command contactsheet makes everything that doorleaf can print, for whoever reviews its looks: every kind of sheet, in every language, on every paper.
//
// A [scenario] is an invented programme with a job at each stage, filled in for one language and one [printing]. Each is made in a folder of its own, with
// the contact sheet that every make writes; an index leads to all of them.
package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"

	"github.com/alecthomas/kong"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

type arguments struct {
	Dir string `arg:"" optional:"" default:"doorleaf-contact" help:"Folder to make; doorleaf-contact if you name none."`
}

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run is main with its surroundings handed in. It returns the exit code: 1 when something was not made, and 2 when the command line was not understood.
func run(args []string, out, errs io.Writer) int {
	exited := -1
	var given arguments
	parser := kong.Must(&given, kong.Name("contactsheet"), kong.Description("Makes every kind of sheet in every language on every paper, and shows them small."),
		kong.Writers(out, errs), kong.Exit(func(code int) { exited = code }))
	_, err := parser.Parse(args)
	if exited >= 0 {
		return exited
	}
	if err != nil {
		fmt.Fprintf(errs, "contactsheet: %v; see contactsheet --help\n", err)
		return 2
	}
	if err := site.NewFolder(given.Dir); err != nil {
		fmt.Fprintf(errs, "contactsheet: %v\n", err)
		return 1
	}
	rows := makeAll(given.Dir)
	index := filepath.Join(given.Dir, "index.html")
	if err := writeIndex(index, rows); err != nil {
		fmt.Fprintf(errs, "contactsheet: the index cannot be written (%v)\n", err)
		return 1
	}
	fmt.Fprintf(out, "open %s in a browser: every kind of sheet, by language and paper\n", index)
	code := 0
	for _, r := range rows {
		if r.Wrong != nil {
			fmt.Fprintf(errs, "contactsheet: %s: %v\n", r.Language, r.Wrong)
			code = 1
		}
	}
	return code
}

// A row is what came of one language.
type row struct {
	Language string
	Contacts []contact
	Wrong    error // why the other printings are missing; nil when none is
}

// A contact is the contact sheet of one printing.
type contact struct{ Printing, Href string }

// makeAll makes all languages at the same time.
func makeAll(dir string) []row {
	rows := make([]row, len(notices.Languages))
	var wait sync.WaitGroup
	for i, language := range notices.Languages {
		wait.Go(func() {
			rows[i].Language = language.Name
			rows[i].Contacts, rows[i].Wrong = makeLanguage(dir, language.Tag)
		})
	}
	wait.Wait()
	return rows
}

// makeLanguage makes a language in each printing, until something is wrong.
func makeLanguage(dir string, tag notices.Language) ([]contact, error) {
	var made []contact
	for _, p := range printings {
		s := scenario{tag, p}
		if err := s.make(filepath.Join(dir, s.folder())); err != nil {
			return made, err
		}
		made = append(made, contact{p.Name, s.folder() + "/out/print/contact.html"})
	}
	return made, nil
}
