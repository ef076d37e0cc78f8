package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

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
	// The system drops this lock when a program dies, so a killed make leaves only an empty file.
	lock := flock.New(filepath.Join(dir, lockFile))
	locked, err := lock.TryLock()
	if errors.Is(err, errors.ErrUnsupported) { // some network drives know no locks
		locked, err = true, nil
	}
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

func (f folder) close() {
	f.Root.Close()
	f.lock.Close()
}

// A swap replaces one folder of a job, or one shared file. Its maps hold digests by path.
type swap struct {
	path  string
	files Files             // to come
	want  map[string]string // of files
	have  map[string]string // of what is there now
	known map[string]string // of what doorleaf wrote there, by its own records
}

// compare finds the folders and files that differ from the output. Files that a swap would lose are an error.
func (f folder) compare(out Output) ([]swap, error) {
	if err := f.checkFolders(out.folders()); err != nil {
		return nil, err
	}
	var swaps []swap
	for _, job := range out.Jobs {
		known, err := f.knownOf(job)
		if err != nil {
			return nil, err
		}
		for _, path := range job.Folders {
			swaps = append(swaps, swap{path: path, files: job.Files.in(path), known: known})
		}
	}
	known, err := f.knownShared(out.Shared)
	if err != nil {
		return nil, err
	}
	for _, path := range sharedOrder(out.Shared) {
		swaps = append(swaps, swap{path: path, files: Files{path: out.Shared[path]}, known: known})
	}
	return f.needed(swaps)
}

// needed keeps the swaps that change anything, with what they would have to know.
func (f folder) needed(swaps []swap) ([]swap, error) {
	var needed []swap
	var losses []string
	for _, s := range swaps {
		var err error
		if s.have, err = f.scan(s.path); err != nil {
			return nil, err
		}
		s.want = digests(fileRecords(s.files))
		losses = append(losses, s.losses()...)
		if len(s.changes()) > 0 {
			needed = append(needed, s)
		}
	}
	return needed, lossError(losses)
}

// knownOf is what doorleaf wrote for the job at its last make.
func (f folder) knownOf(job Unit) (map[string]string, error) {
	code := job.Record.Code
	earlier, err := loadRecord(f.FS(), code)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if earlier.Token != "" && earlier.Token != job.Record.Token {
		return nil, fmt.Errorf("job %s was made with another key: its pages are in web/%s. Put the right %s back; or, if those addresses are on no paper"+
			" yet, move print/%s and web/%s elsewhere and run make again", code, earlier.Token, KeyFile, code, earlier.Token)
	}
	return f.withRecord(digests(earlier.Files), recordPath(code))
}

// knownShared is what doorleaf wrote outside the jobs' folders. A new index that misses a job is an error.
func (f folder) knownShared(shared Files) (map[string]string, error) {
	index, err := LoadIndex(f.FS())
	if err != nil || index.Doorleaf == 0 {
		return nil, err
	}
	for _, job := range index.Jobs {
		if data, given := shared[RecordFile]; given && f.exists(recordPath(job.Code)) && !lists(data, job.Code) {
			return nil, fmt.Errorf("job %s came into the output folder while this make ran; run make again", job.Code)
		}
	}
	return f.withRecord(digests(index.Files), RecordFile)
}

// lists reports whether an encoded index has the job.
func lists(index []byte, code string) bool {
	var decoded Index
	return json.Unmarshal(index, &decoded) == nil && slices.ContainsFunc(decoded.Jobs, func(job IndexJob) bool { return job.Code == code })
}

// withRecord adds a record that was just read to what it lists.
func (f folder) withRecord(known map[string]string, path string) (map[string]string, error) {
	data, err := f.ReadFile(path)
	known[path] = digest(data)
	return known, err
}

func digests(records []FileRecord) map[string]string {
	sums := make(map[string]string, len(records))
	for _, r := range records {
		sums[r.Path] = r.SHA256
	}
	return sums
}

// sharedOrder puts the index last, because it speaks of all others.
func sharedOrder(shared Files) []string {
	paths := slices.Sorted(maps.Keys(shared))
	if i := slices.Index(paths, RecordFile); i >= 0 {
		paths = append(slices.Delete(paths, i, i+1), RecordFile)
	}
	return paths
}

// checkFolders refuses links and files where folders of ours go, at every level.
func (f folder) checkFolders(folders []string) error {
	for _, folder := range folders {
		for ; folder != "."; folder = path.Dir(folder) {
			info, err := f.Lstat(folder)
			if err == nil && !info.IsDir() {
				return fmt.Errorf("%s in the output folder is a link or a file, and doorleaf needs a folder of its own there; move it elsewhere"+
					" and run make again", folder)
			}
			if err != nil && !errors.Is(err, fs.ErrNotExist) {
				return fmt.Errorf("cannot look at the output folder: %w", err)
			}
		}
	}
	return nil
}

const noFile = "a link or another thing that is not a file"

// scan is the digests of the file at the path, or of all files in the folder there. Links are not followed.
func (f folder) scan(at string) (map[string]string, error) {
	have := map[string]string{}
	info, err := f.Lstat(at)
	if errors.Is(err, fs.ErrNotExist) {
		return have, nil
	}
	if err == nil && !info.IsDir() {
		have[at], err = f.digest(at, info.Mode())
		return have, err
	}
	err = fs.WalkDir(f.FS(), at, func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			have[path], err = f.digest(path, entry.Type())
		}
		return err
	})
	return have, err
}

func (f folder) digest(path string, mode fs.FileMode) (string, error) {
	if !mode.IsRegular() {
		return noFile, nil
	}
	data, err := f.ReadFile(path)
	return digest(data), err
}

// changes lists the files that the swap adds, replaces or removes.
func (s swap) changes() []string {
	var changed []string
	for path, sum := range s.want {
		if s.have[path] != sum {
			changed = append(changed, path)
		}
	}
	for path := range s.have {
		if _, wanted := s.want[path]; !wanted && !isLitter(path) {
			changed = append(changed, path)
		}
	}
	return changed
}

func changes(swaps []swap) []string {
	var changed []string
	for _, s := range swaps {
		changed = append(changed, s.changes()...)
	}
	slices.Sort(changed)
	return changed
}

// losses describes the files that are there, are not as doorleaf wrote them, and would be gone after the swap.
func (s swap) losses() []string {
	var losses []string
	for path, sum := range s.have {
		known, ours := s.known[path]
		switch {
		case sum == known || sum == s.want[path] || isLitter(path):
		case ours:
			losses = append(losses, path+" (changed since doorleaf wrote it)")
		default:
			losses = append(losses, path+" (not written by doorleaf)")
		}
	}
	return losses
}

// isLitter reports whether a file is one of those that systems strew into every folder that somebody looks at.
func isLitter(file string) bool {
	name := path.Base(file)
	return name == ".DS_Store" || name == "Thumbs.db" || name == "desktop.ini" || strings.HasPrefix(name, "._")
}

func lossError(losses []string) error {
	if len(losses) == 0 {
		return nil
	}
	slices.Sort(losses)
	return fmt.Errorf("nothing was written, because these files would be lost:\n  %s\n"+
		"Move each of them to a place outside the output folder, and run make again", strings.Join(losses, "\n  "))
}

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
		return fmt.Errorf("%s in the output folder is left from an interrupted make, and its journal can not be read. What that make replaced is in"+
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
			return fmt.Errorf("an interrupted make can not be finished: %w", err)
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
