package tree

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"example.org/doorleaf/site/disk"
)

// A journal is what it takes to finish an interrupted swap.
type journal struct {
	Paths []string          `json:"paths"` // of all swaps, in order
	Known map[string]string `json:"known"` // digests of the files to be replaced, by path
	Note  json.RawMessage   `json:"note"`  // the caller's
}

// Commit ends the preparation: it returns the paths of the files that will be added, replaced or removed, in order, and from now on Swap can be finished by
// anybody, whom the note, a JSON text, tells what else belongs to it. Files that would be lost are an error, and then nothing has changed.
func (f *Folder) Commit(note []byte) (changed []string, err error) {
	if err := lossError(f.losses, "these files would be lost", "run make again"); err != nil {
		return nil, err
	}
	j := journal{Paths: []string{}, Known: map[string]string{}, Note: note}
	for _, s := range f.swaps {
		j.Paths = append(j.Paths, s.path)
		maps.Copy(j.Known, s.have)
		changed = append(changed, s.changes()...)
	}
	if err := f.writeNew(journalFile+".part", JSON(j)); err != nil {
		return nil, cannotWrite(err)
	}
	if err := f.rename(journalFile+".part", journalFile); err != nil {
		return nil, cannotWrite(err)
	}
	slices.Sort(changed)
	return changed, nil
}

// Left is the note of a make that was committed and not finished, if there is one. Until it is ended, by Swap or by Discard, nothing can be staged.
func (f *Folder) Left() (note []byte, left bool, err error) {
	j, left, err := f.journal()
	return j.Note, left, err
}

func (f *Folder) journal() (j journal, left bool, err error) {
	data, err := f.root.ReadFile(journalFile)
	if errors.Is(err, fs.ErrNotExist) {
		return j, false, nil
	}
	if err != nil || json.Unmarshal(data, &j) != nil {
		return j, false, fmt.Errorf("%s in the output folder is left from an interrupted make, and its journal cannot be read. What that make replaced is in"+
			" its folder old; move %s elsewhere and make all jobs again", swapFolder, swapFolder)
	}
	return j, true, nil
}

// Swap puts everything that the journal names in its place, wherever somebody was interrupted. A file that somebody changed meanwhile stops it.
func (f *Folder) Swap() error {
	j, left, err := f.journal()
	if err != nil || !left {
		return err
	}
	paths := slices.DeleteFunc(j.Paths, func(path string) bool { return !f.exists(newFolder + path) })
	if err := f.checkUnchanged(paths, j.Known); err != nil {
		return err
	}
	for _, path := range paths {
		if err := f.swapIn(path); err != nil {
			return err
		}
	}
	return f.tidy()
}

func (f *Folder) checkUnchanged(paths []string, known map[string]string) error {
	var losses []string
	for _, path := range paths {
		have, err := f.scan(path)
		if err != nil {
			return err
		}
		losses = append(losses, swap{have: have, known: known}.losses()...)
	}
	return lossError(losses, "somebody changed these files while a make was putting its own in their place",
		"run any doorleaf command: it finishes the make")
}

// Discard takes back a Commit of which nothing was put in its place.
func (f *Folder) Discard() error { return f.tidy() }

// swapIn moves the old folder or file out of the way and the new one into its place. It can go on from wherever it was interrupted.
func (f *Folder) swapIn(at string) error {
	err := f.retire(at)
	if err == nil {
		err = f.rename(newFolder+at, at)
	}
	if err != nil {
		return fmt.Errorf("%s in the output folder cannot be replaced (%w). If a file in it is open in another program, close it; the next doorleaf"+
			" command of any kind then finishes this make", at, disk.Why(err))
	}
	return nil
}

// retire makes way: a folder moves, because nothing can be renamed onto it; a file is only kept, so that readers find one at any moment.
func (f *Folder) retire(at string) error {
	info, err := f.root.Lstat(at)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if info.IsDir() {
		return f.rename(at, oldFolder+at)
	}
	if f.exists(oldFolder + at) {
		return nil
	}
	return f.duplicate(at, oldFolder+at)
}

// tidy removes the journal, and with it the reason to look into the swap folder; then the folder, of which anything that stays harms nobody.
func (f *Folder) tidy() error {
	err := f.before("remove " + journalFile)
	if err == nil {
		err = f.root.Remove(journalFile)
	}
	if err != nil {
		return fmt.Errorf("the output folder cannot be cleaned up (%w); the next doorleaf command of any kind tries again", disk.Why(err))
	}
	if f.before("remove "+swapFolder) == nil {
		f.root.RemoveAll(swapFolder)
	}
	return nil
}

func (f *Folder) stageFile(path string, data []byte, unchanged bool) error {
	if unchanged {
		return f.duplicate(path, newFolder+path)
	}
	return f.writeNew(newFolder+path, data)
}

func (f *Folder) rename(from, to string) error {
	if err := f.prepare("rename", to); err != nil {
		return err
	}
	return f.root.Rename(from, to)
}

func (f *Folder) writeNew(to string, data []byte) error {
	if err := f.prepare("write", to); err != nil {
		return err
	}
	return f.root.WriteFile(to, data, modeOf(to))
}

// modeOf: only the website is for everybody; sheets and lists name homes.
func modeOf(path string) fs.FileMode {
	if IsWeb(strings.TrimPrefix(path, newFolder)) {
		return 0o644
	}
	return disk.Private
}

// duplicate makes a second name for a file; or, where the disk knows no such thing, a copy with the same times.
func (f *Folder) duplicate(from, to string) error {
	if err := f.prepare("duplicate", to); err != nil {
		return err
	}
	if f.root.Link(from, to) == nil {
		return nil
	}
	return f.copy(from, to)
}

func (f *Folder) copy(from, to string) error {
	info, err := f.root.Stat(from)
	if err != nil {
		return err
	}
	data, err := f.root.ReadFile(from)
	if err != nil {
		return err
	}
	if err := f.root.WriteFile(to, data, info.Mode().Perm()); err != nil {
		return err
	}
	return f.root.Chtimes(to, info.ModTime(), info.ModTime())
}

// prepare announces a change and makes the folders that it needs.
func (f *Folder) prepare(step, to string) error {
	if err := f.before(step + " " + to); err != nil {
		return err
	}
	return f.root.MkdirAll(path.Dir(to), 0o755)
}
