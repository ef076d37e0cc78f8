package main

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"text/template"
	"time"

	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

//go:embed job.yaml
var jobText string

//go:embed programme.yaml
var programmeText []byte

var jobTemplate = template.Must(template.New("job").Parse(jobText))

const laptop = "k7qm"

// A town is a programme folder with some jobs.
type town struct {
	program, dir string
	jobs         int
	moved        int // how often the dates were changed
}

// found makes the folder, its jobs, and a first output.
func found(program, dir string, jobs int) (*town, error) {
	w := &town{program: program, dir: dir, jobs: jobs}
	settings := filepath.Join(w.home(), "doorleaf")
	if err := errors.Join(os.MkdirAll(settings, 0o700), os.WriteFile(filepath.Join(settings, "laptop"), []byte(laptop+"\n"), 0o600)); err != nil {
		return nil, err
	}
	if err := w.do("start", w.folder()); err != nil {
		return nil, err
	}
	if err := os.WriteFile(filepath.Join(w.folder(), "programme.yaml"), programmeText, 0o600); err != nil {
		return nil, err
	}
	if err := errors.Join(os.Remove(w.file("first-job")), w.change()); err != nil {
		return nil, err
	}
	return w, w.do(w.makeAll()...)
}

func (w *town) folder() string          { return filepath.Join(w.dir, "programme") }
func (w *town) home() string            { return filepath.Join(w.dir, "settings") }
func (w *town) out() string             { return filepath.Join(w.folder(), "out") }
func (w *town) file(code string) string { return filepath.Join(w.folder(), "jobs", code+".yaml") }

func (w *town) codes() (all []string) {
	for i := range w.jobs {
		all = append(all, fmt.Sprintf("elm-%d", i+1))
	}
	return all
}

func (w *town) makeAll() []string {
	args := []string{"make"}
	for _, code := range w.codes() {
		args = append(args, w.file(code))
	}
	return args
}

// change gives all jobs other days.
func (w *town) change() error {
	w.moved++
	first := time.Now().AddDate(0, 0, 90+w.moved%7)
	for i, code := range w.codes() {
		var text bytes.Buffer
		err := jobTemplate.Execute(&text, map[string]any{"Code": code, "Number": 2*i + 2, "Day": first.Format(time.DateOnly), "Rain": first.AddDate(0, 0, 2).Format(time.DateOnly)})
		if err == nil {
			err = os.WriteFile(w.file(code), text.Bytes(), 0o600)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// command is doorleaf with the settings of the town.
func (w *town) command(args ...string) *exec.Cmd {
	cmd := exec.Command(w.program, args...)
	cmd.Env = append(os.Environ(), "XDG_CONFIG_HOME="+w.home(), "HOME="+w.home(), "AppData="+w.home())
	return cmd
}

func (w *town) do(args ...string) error {
	text, err := w.command(args...).CombinedOutput()
	if err != nil {
		return fmt.Errorf("doorleaf %s: %w\n%s", args[0], err, text)
	}
	return nil
}

func (w *town) programme() site.Programme {
	return site.Programme{Path: w.folder(), Out: w.out(), Writer: ledger.Writer{Laptop: laptop}}
}

// A state is what is wrong in a town.
type state struct {
	mixed      int // jobs whose folders are not as their record lists them
	unreadable int // ledgers
	missing    int // addresses that are on paper and lead nowhere
	apart      int // jobs whose output is of another make than the last line of their ledger
	unfinished int // 1 when a make is neither done nor undone
}

func (s state) isRight() bool { return s == state{} }

// look finds what is wrong in a town.
func (w *town) look() (s state) {
	for _, code := range w.codes() {
		made, err := w.recorded(code)
		if err != nil || !w.isWhole(made) {
			s.mixed++
		}
		job, err := ledger.Read(w.folder(), code)
		if err != nil {
			s.unreadable++
			continue
		}
		if !agree(made, job) {
			s.apart++
		}
	}
	for _, m := range w.programme().MissingPages() {
		s.missing += m.Pages
	}
	signs, _ := filepath.Glob(filepath.Join(w.folder(), ledger.FolderName, ".making-*"))
	journals, _ := filepath.Glob(filepath.Join(w.out(), ".doorleaf-swap"))
	if len(signs)+len(journals) > 0 {
		s.unfinished = 1
	}
	return s
}

func (w *town) recorded(code string) (record.Job, error) {
	all, err := record.Load(os.DirFS(w.out()))
	for _, made := range all {
		if made.Code == code {
			return made, nil
		}
	}
	return record.Job{}, errors.Join(err, fs.ErrNotExist)
}

// isWhole: both folders of a job hold what its record lists, and nothing else.
func (w *town) isWhole(made record.Job) bool {
	there := map[string]bool{}
	for _, folder := range []string{"print/" + made.Code, "web/" + made.Token} {
		fs.WalkDir(os.DirFS(w.out()), folder, func(path string, entry fs.DirEntry, err error) error {
			if err == nil && !entry.IsDir() {
				there[path] = true
			}
			return nil
		})
	}
	delete(there, tree.RecordPath(made.Code))
	for _, file := range made.Files {
		data, err := os.ReadFile(filepath.Join(w.out(), filepath.FromSlash(file.Path)))
		if err != nil || tree.Digest(data) != file.SHA256 {
			return false
		}
		delete(there, file.Path)
	}
	return len(there) == 0
}

// agree: the sheets in the output have the numbers that the ledger has.
func agree(made record.Job, job ledger.Job) bool {
	for _, sheet := range made.Sheets {
		if known, _ := job.Sheet(sheet.ID); known.Gone || known.Revision.Number != sheet.Revision {
			return false
		}
	}
	return len(made.Sheets) > 0
}

// digests are those of all files below a folder but locks, as one text.
func digests(dir string) string {
	var all strings.Builder
	fs.WalkDir(os.DirFS(dir), ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || strings.HasSuffix(path, "lock") {
			return nil
		}
		data, err := os.ReadFile(filepath.Join(dir, path))
		fmt.Fprintln(&all, path, tree.Digest(data), err)
		return nil
	})
	return all.String()
}
