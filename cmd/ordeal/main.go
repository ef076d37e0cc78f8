// Command ordeal kills makes and fills disks, and counts what is lost. Run it from the root of the repository; it builds doorleaf and works in a folder of its own.
//
// A [town] is a programme with many small jobs, whose dates change before each make, so that every make replaces every folder. [kills] ends makes at random
// moments, or while they put things in their place, runs one other command, and looks at what is there. [fullDisks] makes on disks that are too small.
package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"

	"github.com/alecthomas/kong"
)

type arguments struct {
	Kills int    `default:"200" help:"How many makes to kill."`
	Jobs  int    `default:"20" help:"How many jobs a make has."`
	Sizes int    `default:"13" help:"How many disks that are too small to try; mounting one needs root and Linux."`
	Seed  uint64 `default:"1" help:"Of the random moments."`
}

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run is main with its surroundings handed in. It returns the exit code: 1 when something was lost or could not be tried, and 2 when the command line was not
// understood.
func run(args []string, out, errs io.Writer) int {
	exited := -1
	var given arguments
	parser := kong.Must(&given, kong.Name("ordeal"), kong.Description("Kills makes and fills disks, and counts what is lost."), kong.Writers(out, errs),
		kong.Exit(func(code int) { exited = code }))
	_, err := parser.Parse(args)
	if exited >= 0 {
		return exited
	}
	if err != nil {
		fmt.Fprintf(errs, "ordeal: %v; see ordeal --help\n", err)
		return 2
	}
	lost, err := given.undergo(out)
	if err != nil {
		fmt.Fprintf(errs, "ordeal: %v\n", err)
		return 1
	}
	if lost > 0 {
		return 1
	}
	return 0
}

func (a arguments) undergo(out io.Writer) (lost int, err error) {
	scratch, err := os.MkdirTemp("", "ordeal-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(scratch)
	program := filepath.Join(scratch, "doorleaf")
	if text, err := exec.Command("go", "build", "-buildvcs=false", "-o", program, "./cmd/doorleaf").CombinedOutput(); err != nil {
		return 0, fmt.Errorf("doorleaf cannot be built (%w); run this from the root of the repository\n%s", err, text)
	}
	random := rand.New(rand.NewPCG(a.Seed, 0))
	if a.Kills > 0 {
		counts, err := kills(program, filepath.Join(scratch, "kills"), a.Jobs, a.Kills, random)
		if err != nil {
			return 0, err
		}
		counts.print(out)
		lost += counts.lost()
	}
	if a.Sizes > 0 {
		counts, err := fullDisks(program, filepath.Join(scratch, "disks"), a.Sizes)
		if err != nil {
			return lost, err
		}
		counts.print(out)
		lost += counts.lost()
	}
	return lost, nil
}
