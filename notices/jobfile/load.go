package jobfile

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
	_ "time/tzdata" // so that time zones are known on every machine

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

// ProgrammeFile is the path of the programme's own file inside its folder.
const ProgrammeFile = "programme.yaml"

// jobFiles are all files in the jobs folder whose names end as IsJobFile wants.
func jobFiles(fsys fs.FS) []string {
	entries, _ := fs.ReadDir(fsys, "jobs") // none are as good as a folder that cannot be read: whoever opens a file hears of it
	var all []string
	for _, entry := range entries {
		if !entry.IsDir() && IsJobFile(entry.Name()) {
			all = append(all, "jobs/"+entry.Name())
		}
	}
	return all
}

// IsJobFile goes by the name of a file: .yaml or .yml, in small letters or capitals.
func IsJobFile(name string) bool {
	ending := strings.ToLower(path.Ext(name))
	return (ending == ".yaml" || ending == ".yml") && !strings.HasPrefix(path.Base(name), ".")
}

// Load reads the programme and the named job files, such as "jobs/alder-14.yaml", from the programme's folder. It reports every problem
// of every file, and returns the jobs that have none, in the order of the files; with a problem in programme.yaml there are none of those.
// What has happened cannot be later than now, in the programme's time zone.
// Their codes are compared with those of all files in jobs/. A code need not be the name of its file.
func Load(fsys fs.FS, now time.Time, files ...string) ([]notices.Job, Problems) {
	programme, problems := loadProgramme(fsys)
	codes, houses := codesIn(fsys)
	var jobs []notices.Job
	for _, file := range files {
		file = path.Clean(strings.ReplaceAll(file, `\`, "/"))
		job, found := loadJob(fsys, now, file, programme, codes)
		problems = append(problems, found...)
		if len(found) == 0 {
			jobs = append(jobs, besides(fsys, now, job, houses))
		}
	}
	if problems.in(ProgrammeFile) {
		jobs = nil
	}
	return jobs, problems.sorted()
}

// loadProgramme reads programme.yaml alone.
func loadProgramme(fsys fs.FS) (notices.Programme, Problems) {
	programme := notices.Programme{Paper: notices.Letter}
	r, ok := open(fsys, ProgrammeFile)
	if ok {
		readObject(r, r.root, programmeRows, &programme)
	}
	return programme, r.problems.sorted()
}

func loadJob(fsys fs.FS, now time.Time, file string, programme notices.Programme, codes map[string][]string) (notices.Job, Problems) {
	job := blankJob
	job.Programme, job.File = programme, file
	r, ok := open(fsys, file)
	if !ok {
		return job, r.problems
	}
	r.programme, r.codes, r.now = programme, codes, now
	readObject(r, r.root, jobRows, &job)
	for _, check := range checks {
		check(r, &job)
	}
	return tidied(job), r.problems
}

// besides adds the work of other job files of the same house: those whose address begins with the same number and street.
func besides(fsys fs.FS, now time.Time, job notices.Job, houses map[string][]string) notices.Job {
	for _, file := range houses[house(job.Address)] {
		if file == job.File {
			continue
		}
		other, problems := loadJob(fsys, now, file, job.Programme, nil)
		if len(problems) > 0 {
			job.BesideUnread = append(job.BesideUnread, file)
			continue
		}
		job.Beside = append(job.Beside, other.Work...)
	}
	return job
}

// house is the number and street of an address, however its letters and spaces are written.
func house(address string) string {
	street, _, _ := strings.Cut(address, ",")
	return strings.ToLower(strings.Join(strings.Fields(street), " "))
}

// tidied puts days in order. The checks come first, while every entry stands where it stands in the file.
func tidied(job notices.Job) notices.Job {
	for i := range job.Work {
		job.Work[i].Days = notices.WorkDays(job.Work[i : i+1])
	}
	return job
}

// codesIn maps each code, and each house, to the files of the folder that have it, whatever else is wrong with them.
func codesIn(fsys fs.FS) (codes, houses map[string][]string) {
	codes, houses = map[string][]string{}, map[string][]string{}
	for _, file := range jobFiles(fsys) {
		src, err := fs.ReadFile(fsys, file)
		if err != nil {
			continue
		}
		if root, _ := strict.Parse(file, src); root != nil {
			code := root.At("code").Text
			codes[code] = append(codes[code], file)
			home := house(root.At("address").Text)
			houses[home] = append(houses[home], file)
		}
	}
	return codes, houses
}

// A reader turns the tree of one file into values and collects what is wrong with it.
type reader struct {
	file      string
	root      *strict.Node
	problems  Problems
	programme notices.Programme
	codes     map[string][]string
	now       time.Time
}

// open reads the tree of a file. It reports false when there is none to go on with.
func open(fsys fs.FS, file string) (*reader, bool) {
	r := &reader{file: file}
	src, err := fs.ReadFile(fsys, file)
	if err != nil {
		r.unread(fsys, err)
		return r, false
	}
	root, found := strict.Parse(file, src)
	r.root, r.problems = root, found
	if root != nil && root.Kind == strict.Refused {
		return r, false
	}
	if root != nil && root.Kind != strict.Object {
		r.problem(root, "the file has no keys", `start it with a line such as "name: Larkfield Home Repair" or "code: alder-14"`)
		return r, false
	}
	return r, root != nil
}

func (r *reader) unread(fsys fs.FS, err error) {
	says, mend := "the file cannot be read", "check the name, and that you may open it"
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		says = "there is no such file in the programme's folder"
		mend = "check the name and the folder"
	}
	if near, ok := Nearest(r.file, jobFiles(fsys)); ok {
		mend = "did you mean " + near + "?"
	}
	r.problems = append(r.problems, Problem{File: r.file, Line: 1, Column: 1, Says: says, Mend: mend})
}

// problem reports a place in the file. The text there is quoted in what it says, unless something is missing there.
func (r *reader) problem(at *strict.Node, says, mend string) {
	r.problems = append(r.problems, Problem{File: r.file, Line: at.Line, Column: at.Column, Text: at.Text, Says: says, Mend: mend})
}

// wrong reports the text at a place: it is said to be not, or to do, something.
func (r *reader) wrong(at *strict.Node, says, mend string) {
	r.problem(at, strict.Quoted(at.Text)+" "+says, mend)
}

// at is the place of something in the file, or of what would hold it.
func (r *reader) at(path ...any) *strict.Node { return r.root.At(path...) }

func (r *reader) zone() (*time.Location, bool) {
	zone, err := time.LoadLocation(r.programme.TimeZone)
	return zone, err == nil && r.programme.TimeZone != ""
}

func (r *reader) ownCode(code string) []string {
	return slices.DeleteFunc(slices.Clone(r.codes[code]), func(file string) bool { return file == r.file })
}

// choices lists words behind a mend.
func choices(noun string, words []string) string {
	return fmt.Sprintf("(%ss: %s)", noun, strings.Join(words, ", "))
}
