package site

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/gofrs/flock"
)

// Write puts an output into a folder, and returns the paths of the files that were added, replaced or removed, in order. It is the only code
// that writes there.
//
// It writes whole or not at all. Each folder of a job is prepared beside the old one, with unchanged files taken over as they are, times
// included; then old and new change places by renaming, and the shared files follow. A make that was killed in between is finished by the
// next Write. (A computer that loses power may still lose the last files, as nothing waits for the disk; they can be made again.)
//
// It deletes nothing that it did not write. A file that doorleaf did not write, or that somebody edited since, stops it before anything
// changes when it lies where the output goes; the error names every such file. Everything else in the folder is left alone.
func Write(dir string, out Output) (changed []string, err error) {
	return write(dir, out, func(string) error { return nil })
}

// write is Write with a function that is called before each change on the disk; its error stops the change.
func write(dir string, out Output, before func(step string) error) (changed []string, err error) {
	if err := out.check(); err != nil {
		return nil, err
	}
	f, err := openFolder(dir, before)
	if err != nil {
		return nil, err
	}
	defer f.close()
	if err := f.finishInterrupted(); err != nil {
		return nil, err
	}
	swaps, err := f.compare(out)
	if err != nil || len(swaps) == 0 {
		return nil, err
	}
	if err := f.replace(swaps); err != nil {
		return nil, err
	}
	return changes(swaps), nil
}

// Repair finishes what a killed make began in an output folder, if there is such a folder. Call it before reading the records: in between,
// the folder of a job may be missing.
func Repair(dir string) error {
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	f, err := openFolder(dir, func(string) error { return nil })
	if err != nil {
		return err
	}
	defer f.close()
	return f.finishInterrupted()
}

// Our own names at the root of the output. The swap folder exists only while something is being replaced:
//
//	new/          the folders and files to come, under their paths
//	old/          those that they replace
//	journal.json  written when new/ is complete, removed when everything is in its place
//
// So without a journal there is nothing in it that anybody misses, and with one the swap can be finished.
const (
	lockFile    = ".doorleaf-lock"
	swapFolder  = ".doorleaf-swap"
	newFolder   = swapFolder + "/new/"
	oldFolder   = swapFolder + "/old/"
	journalFile = swapFolder + "/journal.json"
)

// A folder is an output folder, open and locked. No path in it leads out of it.
type folder struct {
	*os.Root
	lock   *flock.Flock
	before func(step string) error
}

func openFolder(dir string, before func(string) error) (folder, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return folder{}, fmt.Errorf("cannot make the output folder: %w", err)
	}
	lock, locked, err := lockAt(filepath.Join(dir, lockFile))
	if err != nil {
		return folder{}, fmt.Errorf("cannot lock the output folder: %w", err)
	}
	if !locked {
		return folder{}, fmt.Errorf("another doorleaf is writing to %s; wait until it is done and try again", dir)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		lock.Close()
		return folder{}, fmt.Errorf("cannot open the output folder: %w", err)
	}
	return folder{root, lock, before}, nil
}

// lockAt takes a lock if nobody has it. The system drops it when a program dies, so a killed one leaves only an empty file.
func lockAt(path string) (lock *flock.Flock, locked bool, err error) {
	lock = flock.New(path)
	locked, err = lock.TryLock()
	if errors.Is(err, errors.ErrUnsupported) { // some network drives know no locks
		return lock, true, nil
	}
	return lock, locked, err
}

func (f folder) close() {
	f.Root.Close()
	f.lock.Close()
}
