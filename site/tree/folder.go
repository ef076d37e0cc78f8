package tree

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/doorleaf/site/disk"
)

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

// A Folder is an output folder, open and locked. No path in it leads out of it.
type Folder struct {
	root    *os.Root
	release func()
	before  func(step string) error // is called before each change on the disk; its error stops the change

	index  Index
	owner  map[string]string // of each folder, for two jobs that would share one
	units  []written
	swaps  []swap // staged, in order
	losses []string
}

// Open opens and locks an output folder, and makes it when it is not there.
func Open(dir string) (*Folder, error) { return open(dir, func(string) error { return nil }) }

func open(dir string, before func(string) error) (*Folder, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, fmt.Errorf("the output folder %s cannot be made (%w); choose another place, or move what is there elsewhere", dir, disk.Why(err))
	}
	release, err := disk.Lock(filepath.Join(dir, lockFile))
	if errors.Is(err, disk.ErrLocked) {
		return nil, fmt.Errorf("another doorleaf is writing to %s; wait until it is done and try again", dir)
	}
	if err != nil {
		return nil, fmt.Errorf("the output folder %s cannot be written to (%w); check who may write there, or choose another with --out", dir, disk.Why(err))
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		release()
		return nil, fmt.Errorf("the output folder %s cannot be opened (%w); check who may read it", dir, disk.Why(err))
	}
	f := &Folder{root: root, release: release, before: before, owner: map[string]string{FontFolder: "the fonts"}}
	if err := f.begin(); err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// begin clears away what a make left that was killed while it prepared.
func (f *Folder) begin() error {
	if err := f.checkFolders([]string{swapFolder}); err != nil {
		return err
	}
	if !f.exists(journalFile) && f.exists(swapFolder) {
		if err := f.root.RemoveAll(swapFolder); err != nil {
			return cannotWrite(err)
		}
	}
	return nil
}

// Close unlocks the folder. What was staged and not committed is gone.
func (f *Folder) Close() {
	if !f.exists(journalFile) {
		f.root.RemoveAll(swapFolder) // what stays is cleared away the next time
	}
	f.root.Close()
	f.release()
}

// FS is for reading.
func (f *Folder) FS() fs.FS { return f.root.FS() }

func (f *Folder) exists(path string) bool {
	_, err := f.root.Lstat(path)
	return err == nil
}

func cannotWrite(err error) error {
	return fmt.Errorf("the output folder cannot be written to (%w); check the room on the disk and who may write there", disk.Why(err))
}
