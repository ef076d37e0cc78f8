package main

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// diskCounts are what came of makes on disks that were too small.
type diskCounts struct {
	tried           int
	fitted          int // disks that were large enough after all
	ledgers         int // changed
	outputs         int // changed
	silent          int // that did not say that nothing was changed
	leftovers       int // that left something behind after the next command
	notMadeInTheEnd int // that could not be made with more room
}

func (c diskCounts) lost() int {
	return c.ledgers + c.outputs + c.silent + c.leftovers + c.notMadeInTheEnd
}

func (c diskCounts) print(out io.Writer) {
	fmt.Fprintf(out, "%d disks too small for a make: %d ledgers changed, %d outputs changed, %d did not say so, %d left something behind, %d could not be made later with more room\n",
		c.tried, c.ledgers, c.outputs, c.silent, c.leftovers, c.notMadeInTheEnd)
}

// fullDisks makes two jobs, whose dates have changed, on disks that have part of the room that it takes.
func fullDisks(program, dir string, sizes int) (c diskCounts, err error) {
	w, err := found(program, filepath.Join(dir, "room"), 2)
	if err != nil {
		return c, err
	}
	need := sizeOf(w.dir) // a make keeps new and old side by side
	for i := 1; i <= sizes; i++ {
		if err := c.tryDisk(w, filepath.Join(dir, "disk"), need/4*int64(i)/int64(sizes+1)); err != nil {
			return c, err
		}
	}
	return c, nil
}

// tryDisk copies a town to a disk with a number of bytes to spare, and makes there.
func (c *diskCounts) tryDisk(from *town, at string, spare int64) error {
	if err := os.MkdirAll(at, 0o700); err != nil {
		return err
	}
	if text, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=16m", "tmpfs", at).CombinedOutput(); err != nil {
		return fmt.Errorf("a small disk cannot be mounted (%w), which needs root and Linux; leave this part out with --sizes 0: %s", err, text)
	}
	defer exec.Command("umount", at).Run()
	w := &town{program: from.program, dir: filepath.Join(at, "town"), jobs: from.jobs, moved: from.moved}
	if err := errorsOf(os.CopyFS(w.dir, os.DirFS(from.dir)), w.change()); err != nil {
		return err
	}
	ballast := filepath.Join(at, "ballast")
	if err := fill(ballast, spare); err != nil {
		return err
	}
	ledgers, output := digests(filepath.Join(w.folder(), "ledger")), digests(w.out())
	text, err := w.command(w.makeAll()...).CombinedOutput()
	if err == nil {
		c.fitted++
		return nil
	}
	c.tried++
	count(&c.silent, !strings.Contains(string(text), "nothing was changed"))
	due := w.command("due", w.file("elm-1"))
	due.Run()
	count(&c.ledgers, digests(filepath.Join(w.folder(), "ledger")) != ledgers)
	count(&c.outputs, digests(w.out()) != output)
	count(&c.leftovers, w.look().unfinished > 0)
	os.Remove(ballast)
	count(&c.notMadeInTheEnd, w.do(w.makeAll()...) != nil)
	return nil
}

func count(n *int, is bool) {
	if is {
		*n++
	}
}

// fill leaves a number of bytes free.
func fill(path string, spare int64) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	defer file.Close()
	block := make([]byte, 4096)
	size := int64(0)
	for {
		n, err := file.Write(block)
		if size += int64(n); err != nil {
			return file.Truncate(max(0, size-spare))
		}
	}
}

func sizeOf(dir string) (size int64) {
	fs.WalkDir(os.DirFS(dir), ".", func(_ string, entry fs.DirEntry, err error) error {
		if info, err2 := entry.Info(); err == nil && err2 == nil && !entry.IsDir() {
			size += (info.Size() + 4095) / 4096 * 4096
		}
		return nil
	})
	return size
}
