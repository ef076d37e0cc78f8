// Command doorleaf makes the sheets that go on doors and into hands before old paint is disturbed, and the small web pages behind their codes.
//
// One file a verb: its flags, one call, and what it prints. A message is lower case and says what happened and what to try; it goes to standard
// error. The exit code is 1 when something went wrong and 2 when the command line was not understood.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/alecthomas/kong"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
)

const description = `Signs, letters and requests for work on old paint, and the pages behind their codes.

Start with "doorleaf demo" to see it all, then "doorleaf start DIR" for your own programme. A job is one YAML file in its jobs folder.

doorleaf works from dated readings of federal rules. State and city rules may ask for more; licensed or certified people decide on testing, clearance and relocation.`

type commands struct {
	Demo    demo      `cmd:"" help:"Make a programme folder with two invented jobs, their sheets and pages."`
	Start   start     `cmd:"" help:"Make a programme folder of your own, with a job file to fill in and a form for the walk round the house."`
	Plan    plan      `cmd:"" help:"Say what jobs call for and why. Writes nothing."`
	Make    makeSheet `cmd:"" help:"Make the sheets and pages of jobs."`
	Printed printed   `cmd:"" help:"Note that sheets were printed."`
	Posted  posted    `cmd:"" help:"Note that signs went up."`
	Removed removed   `cmd:"" help:"Note that signs came down."`
	Handed  handed    `cmd:"" help:"Note that a home was told: by word, by a sheet left or mailed, on the phone, or a whole walk list."`
	Undo    undo      `cmd:"" help:"Strike a mark that was a slip; without --mark, list the marks."`
	Restore restore   `cmd:"" help:"Put the damaged ledger of a job right."`
	Proof   proof     `cmd:"" help:"Write one page for the file: who was told what, when and how, and what hung where."`
	Due     due       `cmd:"" help:"Say what is late, what to do today, what comes, and what waits for whom. Writes nothing."`

	Licences licences `cmd:"" help:"Print the licences of doorleaf and of all that is in it."`

	Version kong.VersionFlag `help:"Print the version of doorleaf, and of the Go that built it."`
}

// A console is where a verb prints: results to out, and to err what happens meanwhile, when a person watches.
type console struct {
	out, err io.Writer
	watched  bool
}

func main() {
	os.Exit(run(os.Args[1:], console{os.Stdout, os.Stderr, isTerminal(os.Stderr)}))
}

func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// run is main with its surroundings handed in. It returns the exit code.
func run(args []string, c console) int {
	exited := -1
	parser := kong.Must(&commands{}, kong.Name("doorleaf"), kong.Description(description), kong.Vars{"version": version()},
		kong.Writers(c.out, c.err), kong.Exit(func(code int) { exited = code }), kong.ConfigureHelp(kong.HelpOptions{Compact: true}))
	if len(args) == 0 {
		args = []string{"--help"}
	}
	ctx, err := parser.Parse(args)
	if exited >= 0 {
		return exited
	}
	if err != nil {
		fmt.Fprintf(c.err, "doorleaf: %v; see doorleaf --help\n", err)
		return 2
	}
	if err := ctx.Run(c); err != nil {
		report(c, err)
		return 1
	}
	return 0
}

// report prints problems of files a line each, as editors expect them, and anything else as one sentence.
func report(c console, err error) {
	var problems jobfile.Problems
	if !errors.As(err, &problems) {
		fmt.Fprintf(c.err, "doorleaf: %v\n", err)
		return
	}
	for _, line := range problems.Lines() {
		fmt.Fprintln(c.err, line)
	}
	fmt.Fprintf(c.err, "doorleaf: %s to fix; nothing was written\n", count(len(problems), "problem", "problems"))
}

// progress tells a person who watches which job is being made; it is silent in a pipe.
func (c console) progress(code string) {
	if c.watched {
		fmt.Fprintf(c.err, "making %s\n", code)
	}
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// now is the clock; tests of the command set it.
var now = time.Now

// today is the day in a programme's time zone.
func today(programme notices.Programme) notices.Date {
	at := now()
	if zone, err := time.LoadLocation(programme.TimeZone); err == nil && programme.TimeZone != "" {
		at = at.In(zone)
	}
	year, month, day := at.Date()
	return notices.Date{Year: year, Month: month, Day: day}
}
