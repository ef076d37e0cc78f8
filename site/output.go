package site

import (
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"strings"
	"testing/fstest"
)

// Files are whole files in memory: their bytes by path. Paths have slashes and start at the root of the output.
type Files map[string][]byte

// An Output is all that one make writes, in memory. Jobs of earlier makes are not in it.
type Output struct {
	Jobs   []Unit
	Shared Files // indexes, fonts and the like; written after the jobs
}

// A Unit is one job: the unit of writing. It owns its folders whole.
type Unit struct {
	Record  JobRecord   // as it stands in the folder of sheets
	Folders []string    // print/<code> and web/<token>; only the first when the job is made without codes
	Files   Files       // all of them in the folders
	prints  []printable // those that can become a PDF
}

var (
	codeForm  = regexp.MustCompile(`^[a-z0-9][a-z0-9-]*$`)
	tokenForm = regexp.MustCompile(`^[0-9]{12}$`)
)

// fontFolder is shared by all jobs, so no job can have the code "fonts".
const fontFolder = "print/fonts"

// NewUnit completes the record of a job with its files, and the files with the record. earlier is the job's record in the output folder, or
// the zero JobRecord.
//
// A record without a token is that of a job made without codes. Its pages, perhaps on the web already, stay as they are: the new record keeps
// the token, the pages and their files from the earlier one.
func NewUnit(record JobRecord, files Files, earlier JobRecord) (Unit, error) {
	unit := Unit{Folders: []string{"print/" + record.Code}, Files: Files{}}
	maps.Copy(unit.Files, files)
	record.Files = fileRecords(files)
	if record.Token != "" {
		unit.Folders = append(unit.Folders, "web/"+record.Token)
	} else {
		record.Token, record.Pages = earlier.Token, earlier.Pages
		record.Files = append(record.Files, webFiles(earlier)...)
	}
	unit.Record = record.withLists()
	unit.Files[recordPath(record.Code)] = encodeJSON(unit.Record)
	return unit, unit.check()
}

func webFiles(record JobRecord) []FileRecord {
	var files []FileRecord
	for _, file := range record.Files {
		if strings.HasPrefix(file.Path, "web/") {
			files = append(files, file)
		}
	}
	return files
}

// NewShared completes the files outside the jobs' folders with the index. records are those of all jobs that the output folder will hold.
func NewShared(files Files, records []JobRecord, earlier Index) Files {
	shared := Files{RecordFile: encodeJSON(newIndex(earlier, records, files))}
	maps.Copy(shared, files)
	return shared
}

// FS shows the output as a folder.
func (o Output) FS() fs.FS {
	all := fstest.MapFS{}
	for path, data := range o.all() {
		all[path] = &fstest.MapFile{Data: data, Mode: 0o644}
	}
	return all
}

func (o Output) all() Files {
	all := Files{}
	maps.Copy(all, o.Shared)
	for _, job := range o.Jobs {
		maps.Copy(all, job.Files)
	}
	return all
}

// folders lists every folder that a make writes to.
func (o Output) folders() []string {
	folders := []string{"print", "web", fontFolder}
	for _, job := range o.Jobs {
		folders = append(folders, job.Folders...)
	}
	return folders
}

// check finds what would write outside the folders of jobs and indexes, or into one folder from two jobs.
func (o Output) check() error {
	owner := map[string]string{fontFolder: "the fonts"}
	for _, job := range o.Jobs {
		if err := job.check(); err != nil {
			return err
		}
		for _, folder := range job.Folders {
			if other, taken := owner[folder]; taken {
				return fmt.Errorf("job %s needs the folder %s, which belongs to %s; give one of them another code", job.Record.Code, folder, other)
			}
			owner[folder] = "job " + job.Record.Code
		}
	}
	return o.checkShared()
}

func (o Output) checkShared() error {
	for path := range o.Shared {
		if !isShared(path) {
			return fmt.Errorf("%q is no place for a file outside the folders of jobs", path)
		}
	}
	return nil
}

// isShared reports whether a path lies where no job's folder can be: at the root, in print, in print/fonts or in web.
func isShared(path string) bool {
	folder, name, nested := cutLast(path)
	place := !nested || folder == "print" || folder == "web" || folder == fontFolder
	return isPortable(path) && place && !strings.HasPrefix(name, ".")
}

// isPortable reports whether a path stays below the root and means the same on every system.
func isPortable(path string) bool {
	return fs.ValidPath(path) && !strings.ContainsAny(path, `\:`)
}

// cutLast cuts a path before its last element.
func cutLast(path string) (folder, name string, nested bool) {
	i := strings.LastIndexByte(path, '/')
	if i < 0 {
		return "", path, false
	}
	return path[:i], path[i+1:], true
}

func (u Unit) check() error {
	code, token := u.Record.Code, u.Record.Token
	if !codeForm.MatchString(code) {
		return fmt.Errorf("the job code %q cannot name a folder; use lower-case letters, digits and hyphens", code)
	}
	if token != "" && !tokenForm.MatchString(token) {
		return fmt.Errorf("the address of job %s has %q where 12 digits belong", code, token)
	}
	for _, folder := range u.Folders {
		if folder != "print/"+code && folder != "web/"+token {
			return fmt.Errorf("job %s cannot have the folder %q", code, folder)
		}
	}
	for path := range u.Files {
		if !isPortable(path) || !u.owns(path) {
			return fmt.Errorf("job %s cannot have a file %q: it is not in its folders", code, path)
		}
	}
	return nil
}

func (u Unit) owns(path string) bool {
	for _, folder := range u.Folders {
		if strings.HasPrefix(path, folder+"/") {
			return true
		}
	}
	return false
}

// in lists the files below one folder.
func (f Files) in(folder string) Files {
	inside := Files{}
	for path, data := range f {
		if strings.HasPrefix(path, folder+"/") {
			inside[path] = data
		}
	}
	return inside
}
