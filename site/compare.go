package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
)

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
