package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
)

// replace carries out the swaps, all or none.
func (f folder) replace(swaps []swap) error {
	if err := f.stage(swaps); err != nil {
		return errors.Join(fmt.Errorf("nothing was changed: cannot write to the output folder: %w", err), f.RemoveAll(swapFolder))
	}
	for i, s := range swaps {
		if err := f.swapIn(s.path); err != nil {
			return f.undo(swaps[:i+1], err)
		}
	}
	return f.tidy()
}

// stage prepares everything beside the old output, the journal last.
func (f folder) stage(swaps []swap) error {
	journal := journal{Known: map[string]string{}}
	for _, s := range swaps {
		journal.Paths = append(journal.Paths, s.path)
		maps.Copy(journal.Known, s.have)
		for path, data := range s.files {
			if err := f.stageFile(path, data, s.have[path] == s.want[path]); err != nil {
				return err
			}
		}
	}
	if err := f.writeNew(journalFile+".part", encodeJSON(journal)); err != nil {
		return err
	}
	return f.rename(journalFile+".part", journalFile)
}

func (f folder) stageFile(path string, data []byte, unchanged bool) error {
	if unchanged {
		return f.duplicate(path, newFolder+path)
	}
	return f.writeNew(newFolder+path, data)
}

// A journal is what it takes to finish an interrupted swap.
type journal struct {
	Paths []string          `json:"paths"` // of all swaps, in order
	Known map[string]string `json:"known"` // digests of the files to be replaced, by path
}

// finishInterrupted puts the folder in order after a make that was killed.
func (f folder) finishInterrupted() error {
	if err := f.checkFolders([]string{swapFolder}); err != nil {
		return err
	}
	data, err := f.ReadFile(journalFile)
	if errors.Is(err, fs.ErrNotExist) {
		return f.RemoveAll(swapFolder)
	}
	var journal journal
	if err != nil || json.Unmarshal(data, &journal) != nil {
		return fmt.Errorf("%s in the output folder is left from an interrupted make, and its journal cannot be read. What that make replaced is in"+
			" its folder old; move %s elsewhere and make all jobs again", swapFolder, swapFolder)
	}
	return f.finish(journal)
}

// finish carries out the swaps of the journal that were not done, unless somebody changed files since.
func (f folder) finish(journal journal) error {
	left := slices.DeleteFunc(journal.Paths, func(path string) bool { return !f.exists(newFolder + path) })
	var losses []string
	for _, path := range left {
		have, err := f.scan(path)
		if err != nil {
			return err
		}
		losses = append(losses, swap{have: have, known: journal.Known}.losses()...)
	}
	if err := lossError(losses); err != nil {
		return err
	}
	for _, path := range left {
		if err := f.swapIn(path); err != nil {
			return fmt.Errorf("an interrupted make cannot be finished: %w", err)
		}
	}
	return f.tidy()
}

// swapIn moves the old folder or file out of the way and the new one into its place. It can go on from wherever it was interrupted.
func (f folder) swapIn(at string) error {
	err := f.retire(at)
	if err == nil {
		err = f.rename(newFolder+at, at)
	}
	if err != nil {
		return fmt.Errorf("cannot replace %s: %w; if a file in it is open in another program, close it and run make again", at, err)
	}
	return nil
}

// retire makes way: a folder moves, because nothing can be renamed onto it; a file is only kept, so that readers find one at any moment.
func (f folder) retire(at string) error {
	info, err := f.Lstat(at)
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

// undo goes back to the old output after a swap failed, and returns why.
func (f folder) undo(swaps []swap, why error) error {
	for _, s := range slices.Backward(swaps) {
		if err := f.swapOut(s.path); err != nil {
			return fmt.Errorf("%w. The output is half new and half old until the next make", why)
		}
	}
	return errors.Join(fmt.Errorf("nothing was changed: %w", why), f.tidy())
}

func (f folder) swapOut(at string) error {
	if !f.exists(newFolder + at) {
		if err := f.rename(at, newFolder+at); err != nil {
			return err
		}
	}
	if !f.exists(oldFolder + at) {
		return nil
	}
	return f.rename(oldFolder+at, at)
}

// tidy removes the journal, and with it the reason to look into the swap folder; then the folder.
func (f folder) tidy() error {
	err := f.before("remove " + journalFile)
	if err == nil {
		err = f.Remove(journalFile)
	}
	if err == nil {
		err = f.before("remove " + swapFolder)
	}
	if err == nil {
		err = f.RemoveAll(swapFolder)
	}
	if err != nil {
		return fmt.Errorf("cannot clean up in the output folder: %w; run make again", err)
	}
	return nil
}

func (f folder) exists(path string) bool {
	_, err := f.Lstat(path)
	return err == nil
}

func (f folder) rename(from, to string) error {
	if err := f.prepare("rename", to); err != nil {
		return err
	}
	return f.Rename(from, to)
}

func (f folder) writeNew(to string, data []byte) error {
	if err := f.prepare("write", to); err != nil {
		return err
	}
	return f.WriteFile(to, data, 0o644)
}

// duplicate makes a second name for a file; or, where the disk knows no such thing, a copy with the same times.
func (f folder) duplicate(from, to string) error {
	if err := f.prepare("duplicate", to); err != nil {
		return err
	}
	if f.Link(from, to) == nil {
		return nil
	}
	return f.copy(from, to)
}

func (f folder) copy(from, to string) error {
	info, err := f.Stat(from)
	if err != nil {
		return err
	}
	data, err := f.ReadFile(from)
	if err != nil {
		return err
	}
	if err := f.WriteFile(to, data, info.Mode().Perm()); err != nil {
		return err
	}
	return f.Chtimes(to, info.ModTime(), info.ModTime())
}

// prepare announces a change and makes the folders that it needs.
func (f folder) prepare(step, to string) error {
	if err := f.before(step + " " + to); err != nil {
		return err
	}
	return f.MkdirAll(path.Dir(to), 0o755)
}
