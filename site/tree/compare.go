package tree

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"example.org/doorleaf/site/disk"
)

// A swap replaces one folder of a job, or one shared file. Its maps hold digests by path.
type swap struct {
	path  string
	want  map[string]string // of what is to come
	have  map[string]string // of what is there now
	known map[string]string // of what doorleaf wrote there, by its own records
}

// Stage prepares one job beside what is there.
func (f *Folder) Stage(u Unit) error {
	if err := u.check(); err != nil {
		return err
	}
	for _, folder := range u.folders() {
		if other, taken := f.owner[folder]; taken {
			return fmt.Errorf("job %s needs the folder %s, which belongs to %s; give one of them another code", u.Code, folder, other)
		}
		f.owner[folder] = "job " + u.Code
	}
	if err := f.checkFolders(append(u.folders(), FontFolder, webFolder)); err != nil {
		return err
	}
	known, token, err := f.knownOf(u)
	if err != nil {
		return err
	}
	f.units = append(f.units, written{Code: u.Code, Token: token})
	for _, folder := range u.folders() {
		if err := f.stage(swap{path: folder, known: known}, u.Files.in(folder)); err != nil {
			return err
		}
	}
	return nil
}

// StageShared prepares the files outside the jobs' folders, with the index of all jobs that the folder will hold. It comes after all jobs.
func (f *Folder) StageShared(files Files) error {
	for path := range files {
		if !isShared(path) {
			return fmt.Errorf("%q is no place for a file outside the folders of jobs", path)
		}
	}
	known, err := f.knownShared()
	if err != nil {
		return err
	}
	all := maps.Clone(files)
	all[RecordFile] = JSON(f.index.next(f.units, files, f.exists))
	for _, path := range append(slices.Sorted(maps.Keys(files)), RecordFile) { // the index last, because it speaks of all others
		if err := f.stage(swap{path: path, known: known}, Files{path: all[path]}); err != nil {
			return err
		}
	}
	return nil
}

// stage keeps a swap that changes anything, and its files. Of one that would lose a file it keeps which.
func (f *Folder) stage(s swap, files Files) error {
	var err error
	if s.have, err = f.scan(s.path); err != nil {
		return err
	}
	s.want = digests(files.List())
	f.losses = append(f.losses, s.losses()...)
	if len(s.changes()) == 0 {
		return nil
	}
	f.swaps = append(f.swaps, s)
	for path, data := range files {
		if err := f.stageFile(path, data, s.have[path] == s.want[path]); err != nil {
			return cannotWrite(err)
		}
	}
	return nil
}

// knownOf is what doorleaf wrote for the job at its last make, and the token under which its pages lie.
func (f *Folder) knownOf(u Unit) (known map[string]string, token string, err error) {
	earlier, err := writtenOf(f.FS(), u.Code)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, u.Token, nil
	}
	if err != nil {
		return nil, "", err
	}
	if earlier.Token != "" && u.Token != "" && earlier.Token != u.Token {
		return nil, "", fmt.Errorf("the pages of job %s are in web/%s, and this key would put them elsewhere. Put the right key back; or, if those"+
			" addresses are on no paper yet, move print/%s and web/%s elsewhere and run make again", u.Code, earlier.Token, u.Code, earlier.Token)
	}
	if token = u.Token; token == "" {
		token = earlier.Token
	}
	known, err = f.withRecord(digests(earlier.Files), RecordPath(u.Code))
	return known, token, err
}

// knownShared is what doorleaf wrote outside the jobs' folders.
func (f *Folder) knownShared() (known map[string]string, err error) {
	if f.index, err = loadIndex(f.FS()); err != nil {
		return nil, err
	}
	isNew := f.index.Doorleaf == 0
	if f.index.Jobs, err = f.jobs(); err != nil || isNew {
		return nil, err
	}
	return f.withRecord(digests(f.index.Files), RecordFile)
}

// jobs are all jobs in the folder.
func (f *Folder) jobs() (all []IndexJob, err error) {
	codes, err := Codes(f.FS())
	for _, code := range codes {
		if known, err := writtenOf(f.FS(), code); err == nil {
			all = append(all, IndexJob{Code: code, Token: known.Token, Record: RecordPath(code)})
		}
	}
	return all, err
}

// withRecord adds a record that was just read to what it lists.
func (f *Folder) withRecord(known map[string]string, path string) (map[string]string, error) {
	data, err := f.root.ReadFile(path)
	known[path] = Digest(data)
	return known, err
}

func digests(files []File) map[string]string {
	sums := make(map[string]string, len(files))
	for _, file := range files {
		sums[file.Path] = file.SHA256
	}
	return sums
}

// checkFolders refuses links and files where folders of ours go, at every level, the outermost first.
func (f *Folder) checkFolders(folders []string) error {
	for _, folder := range folders {
		for _, level := range levels(folder) {
			info, err := f.root.Lstat(level)
			if err == nil && !info.IsDir() {
				return fmt.Errorf("%s in the output folder is a link or a file, and doorleaf needs a folder of its own there; move it elsewhere"+
					" and run make again", level)
			}
			if err != nil && !errors.Is(err, fs.ErrNotExist) {
				return fmt.Errorf("the output folder cannot be read (%w); check who may read it", disk.Why(err))
			}
		}
	}
	return nil
}

// levels are a folder and those around it: "web", "web/482109371158".
func levels(folder string) (all []string) {
	for ; folder != "."; folder = path.Dir(folder) {
		all = append([]string{folder}, all...)
	}
	return all
}

const noFile = "a link or another thing that is not a file"

// scan is the digests of the file at the path, or of all files in the folder there. Links are not followed.
func (f *Folder) scan(at string) (map[string]string, error) {
	have := map[string]string{}
	info, err := f.root.Lstat(at)
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

func (f *Folder) digest(path string, mode fs.FileMode) (string, error) {
	if !mode.IsRegular() {
		return noFile, nil
	}
	data, err := f.root.ReadFile(path)
	return Digest(data), err
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

// lossError is what happened, the files, and what to do once they are moved.
func lossError(losses []string, happened, then string) error {
	if len(losses) == 0 {
		return nil
	}
	slices.Sort(losses)
	return fmt.Errorf("%s:\n  %s\nMove each of them to a place outside the output folder, and %s", happened, strings.Join(losses, "\n  "), then)
}
