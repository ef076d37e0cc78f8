package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"
)

// killCounts are what came of killed makes.
type killCounts struct {
	makes, inSwap int   // killed, and of these while things were put in their place
	after         state // after one more command, whatever it was
	leftHalf      int   // kills that left anything half done
	failed        int   // commands after a kill that did not succeed
	firstFailure  error
}

func (c killCounts) lost() int {
	a := c.after
	return a.mixed + a.unreadable + a.missing + a.apart + a.unfinished + c.failed
}

func (c killCounts) print(out io.Writer) {
	fmt.Fprintf(out, "%d makes killed, %d of them in the swap; right after the kill %d had left something half done\n", c.makes, c.inSwap, c.leftHalf)
	fmt.Fprintf(out, "after the next command, whatever it was: %d folders mixed inside, %d ledgers unreadable, %d addresses missing, %d jobs with ledger and output of two makes, %d makes unfinished, %d commands failed\n",
		c.after.mixed, c.after.unreadable, c.after.missing, c.after.apart, c.after.unfinished, c.failed)
	if c.firstFailure != nil {
		fmt.Fprintf(out, "the first that failed: %v\n", c.firstFailure)
	}
}

// kills ends makes of all jobs: one half at any moment, the other half while the output is swapped.
func kills(program, dir string, jobs, most int, random *rand.Rand) (c killCounts, err error) {
	w, err := found(program, dir, jobs)
	if err != nil {
		return c, err
	}
	began := time.Now()
	if err := errorsOf(w.change(), w.do(w.makeAll()...)); err != nil {
		return c, err
	}
	whole := time.Since(began)
	for c.makes < most {
		if err := w.change(); err != nil {
			return c, err
		}
		inSwap, killed, err := w.makeAndKill(random, whole, c.makes%2 == 1)
		if err != nil {
			return c, err
		}
		if !killed {
			continue // it was quicker
		}
		c.makes++
		if inSwap {
			c.inSwap++
		}
		if left := w.look(); !left.isRight() {
			c.leftHalf++
		}
		if err := w.do(w.anyCommand(random)...); err != nil {
			c.failed++
			if c.firstFailure == nil {
				c.firstFailure = err
			}
		}
		c.after = c.after.plus(w.look())
	}
	return c, nil
}

func (s state) plus(t state) state {
	return state{s.mixed + t.mixed, s.unreadable + t.unreadable, s.missing + t.missing, s.apart + t.apart, s.unfinished + t.unfinished}
}

// makeAndKill starts a make of all jobs and kills it: at a random moment of the time that a make takes, or at one behind the moment from which a journal is there.
func (w *town) makeAndKill(random *rand.Rand, whole time.Duration, behindJournal bool) (inSwap, killed bool, err error) {
	cmd := w.command(w.makeAll()...)
	if err := cmd.Start(); err != nil {
		return false, false, err
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	journal := filepath.Join(w.out(), ".doorleaf-swap", "journal.json")
	wait := time.Duration(random.Float64() * float64(whole))
	if behindJournal {
		for !exists(journal) {
			select {
			case err := <-ended:
				return false, false, err
			default:
			}
		}
		wait = time.Duration(random.Float64() * float64(20*time.Millisecond))
	}
	select {
	case err := <-ended:
		return false, false, err
	case <-time.After(wait):
	}
	cmd.Process.Kill()
	killed = <-ended != nil
	return exists(journal), killed, nil
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// anyCommand is one that a coordinator may run next, about any job.
func (w *town) anyCommand(random *rand.Rand) []string {
	codes := w.codes()
	file := w.file(codes[random.IntN(len(codes))])
	today := time.Now().Format(time.DateOnly)
	all := [][]string{
		{"plan", file}, {"due", file}, {"proof", file}, {"undo", file}, {"restore", file}, {"make", file}, {"make", "--without-codes", file},
		{"printed", file}, {"posted", file, "--on", today}, {"handed", file, "--home", "h1", "--on", today, "--how", "spoke", "--by", "RM"},
	}
	return all[random.IntN(len(all))]
}

func errorsOf(all ...error) error {
	for _, err := range all {
		if err != nil {
			return err
		}
	}
	return nil
}
