package ledger

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/doorleaf/site/disk"
)

// FolderName is that of the ledger's folder. It lies beside programme.yaml and the key, and is as private as they are.
const FolderName = "ledger"

const (
	ending     = ".jsonl"
	copyEnding = ".bak"     // of a file before its last change
	badEnding  = ".damaged" // of a file that was put right
	note       = "READ-ME.txt"
	noteText   = `What is on paper already: addresses, revisions, days. Private. Keep a copy of this folder with the key.
One folder a job, one file a laptop. Lines are only ever added; do not edit them, or doorleaf would refuse them.
`
)

// Create makes an empty ledger in a programme folder.
func Create(programme string) error {
	dir := filepath.Join(programme, FolderName)
	if err := os.MkdirAll(dir, disk.PrivateFolder); err != nil {
		return err
	}
	return disk.Create(filepath.Join(dir, note), []byte(noteText))
}

// Read is what all files of a job come to. A job without files is one that was never made. A damaged file is an error that names the line and what to do, and so
// is a line that another laptop had seen and that is not there.
func Read(programme, code string) (Job, error) {
	dir := filepath.Join(programme, FolderName)
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		return Job{}, fmt.Errorf("the folder %s is missing. It remembers which addresses and revisions are on paper already, and without it those pages could vanish."+
			" Copy it from the laptop or the backup that has the newest one: %w", filepath.ToSlash(dir), fs.ErrNotExist)
	}
	files, err := filesOf(filepath.Join(dir, code))
	if err != nil {
		return Job{}, err
	}
	var all []line
	ends := map[string]string{}
	for _, file := range files {
		lines, bad, err := readFile(file, code)
		if err != nil {
			return Job{}, err
		}
		if bad != nil {
			return Job{}, bad
		}
		all = append(all, lines...)
		if laptop, ok := strings.CutSuffix(filepath.Base(file), ending); ok {
			ends[laptop] = lines[len(lines)-1].seal
		}
	}
	job := fold(code, all)
	job.ends = ends
	return job, job.checkNothingLost()
}

// Codes are those of all jobs that the ledger of a programme knows, in order.
func Codes(programme string) []string {
	var all []string
	entries, _ := os.ReadDir(filepath.Join(programme, FolderName)) // Read says what is wrong with it
	for _, entry := range entries {
		if entry.IsDir() {
			all = append(all, entry.Name())
		}
	}
	return all
}

// filesOf are the files of a job, whatever a sync service made of their names. What doorleaf put aside is none, and neither is what systems strew about.
func filesOf(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("the ledger cannot be read (%w); check who may read it", disk.Why(err))
	}
	var files []string
	for _, entry := range entries {
		name := entry.Name()
		if !entry.IsDir() && !strings.HasPrefix(name, ".") && !strings.Contains(name, copyEnding) && !strings.Contains(name, badEnding) && name != "desktop.ini" && name != "Thumbs.db" {
			files = append(files, filepath.Join(dir, name))
		}
	}
	return files, nil
}

// Tidy removes what a killed program left of files that it was about to put in their place.
func Tidy(programme string) {
	for _, code := range Codes(programme) {
		for _, kind := range []string{ending, ending + copyEnding} {
			disk.Tidy(filepath.Join(programme, FolderName, code), kind)
		}
	}
}

// A Damage is a line that is not as doorleaf wrote it, or that is missing.
type damage struct {
	code, file string
	line       int // counted from 1
	says       string
}

func (d damage) Error() string {
	return fmt.Sprintf("%s:%d: this line of the ledger %s. Copy that file from the laptop or the backup that has the newest one; or run doorleaf restore with the job file of %s,"+
		" which keeps what can be read", filepath.ToSlash(d.file), d.line, d.says, d.code)
}

// readFile reads the lines of a file up to the first that is damaged.
func readFile(path, code string) (lines []line, bad *damage, err error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, fmt.Errorf("the ledger cannot be read (%w); check who may read it", disk.Why(err))
	}
	before := ""
	for i, text := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n") {
		text = strings.TrimSuffix(text, "\r") // whoever sent it from one system to another may have changed line ends
		if i == 0 {
			before = root(code, laptopIn(text))
		}
		l, err := unseal(text, before)
		if err != nil {
			return lines, &damage{code, path, i + 1, err.Error()}, nil
		}
		lines, before = append(lines, l), l.seal
	}
	return lines, nil, nil
}

// laptopIn is the laptop that a line names, for the first of a file, which a sync service may have given another name.
func laptopIn(text string) string {
	_, rest, _ := strings.Cut(text, `"laptop":"`)
	name, _, _ := strings.Cut(rest, `"`)
	return name
}

// checkNothingLost finds lines that some laptop had seen and that are in no file.
func (j Job) checkNothingLost() error {
	there := map[string]map[int]bool{}
	accepted := map[string]int{}
	for _, l := range j.lines {
		if there[l.Laptop] == nil {
			there[l.Laptop] = map[int]bool{}
		}
		there[l.Laptop][l.N] = true
		for laptop, n := range l.Without {
			accepted[laptop] = max(accepted[laptop], n)
		}
	}
	for _, l := range j.lines {
		for laptop, n := range l.Seen {
			if !there[laptop][n] && n > accepted[laptop] {
				return &damage{j.Code, filepath.Join(FolderName, j.Code, laptop+ending), len(there[laptop]) + 1,
					fmt.Sprintf("is missing: laptop %s had read one with the number %d", l.Laptop, n)}
			}
		}
	}
	return nil
}

// An Entry is a line on its way to the disk.
type Entry struct {
	Code   string `json:"code"`
	Laptop string `json:"laptop"`
	Text   string `json:"text"`
}

// Pending are the lines of a job that are not on the disk yet, in order.
func (j Job) Pending() []Entry { return j.pending }

// Append writes lines, all or none: nothing is in its place before all is on the disk. Lines that are there already stay as they are.
func Append(programme string, entries []Entry) error {
	var prepared []disk.Prepared
	drop := func() {
		for _, p := range prepared {
			p.Drop()
		}
	}
	for _, file := range byFile(programme, entries) {
		both, err := file.prepare()
		prepared = append(prepared, both...)
		if err != nil {
			drop()
			return err
		}
	}
	for _, p := range prepared {
		if err := p.Put(); err != nil {
			drop()
			return fmt.Errorf("the ledger cannot be written (%w); check who may write there", disk.Why(err))
		}
	}
	return nil
}

// Has reports whether a line is on the disk.
func Has(programme string, e Entry) bool {
	data, err := os.ReadFile(e.path(programme))
	return err == nil && slices.Contains(strings.Split(strings.ReplaceAll(string(data), "\r", ""), "\n"), e.Text)
}

func (e Entry) path(programme string) string {
	return filepath.Join(programme, FolderName, e.Code, e.Laptop+ending)
}

// An addition is what goes to one file.
type addition struct {
	path, code, laptop string
	texts              []string
}

func byFile(programme string, entries []Entry) []addition {
	var all []addition
	for _, e := range entries {
		path := e.path(programme)
		i := slices.IndexFunc(all, func(a addition) bool { return a.path == path })
		if i < 0 {
			i, all = len(all), append(all, addition{path: path, code: e.Code, laptop: e.Laptop})
		}
		if !Has(programme, e) {
			all[i].texts = append(all[i].texts, e.Text)
		}
	}
	return slices.DeleteFunc(all, func(a addition) bool { return len(a.texts) == 0 })
}

// prepare writes the file as it will be, and the copy of it as it is, beside it. What is about to be written is read back first.
func (a addition) prepare() (all []disk.Prepared, err error) {
	if err := os.MkdirAll(filepath.Dir(a.path), disk.PrivateFolder); err != nil {
		return nil, a.cannot(err)
	}
	data, err := os.ReadFile(a.path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, a.cannot(err)
	}
	isNew := err != nil
	if len(data) > 0 && data[len(data)-1] != '\n' {
		data = append(data, '\n')
	}
	after, err := disk.Prepare(a.path, append(slices.Clip(data), strings.Join(a.texts, "\n")+"\n"...))
	if err != nil {
		return nil, a.cannot(err)
	}
	all = append(all, after)
	if _, bad, err := readFile(after.Name(), a.code); err != nil || bad != nil {
		return all, fmt.Errorf("the ledger %s was changed by somebody else meanwhile; try again", filepath.ToSlash(a.path))
	}
	if isNew {
		return all, nil
	}
	before, err := disk.Prepare(a.path+copyEnding, data)
	if err != nil {
		return all, a.cannot(err)
	}
	return append([]disk.Prepared{before}, all...), nil
}

func (a addition) cannot(err error) error {
	return fmt.Errorf("the ledger of job %s cannot be written (%w); make room on the disk, or check who may write there", a.code, disk.Why(err))
}
