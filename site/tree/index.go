package tree

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
)

// RecordFile is the name of every record: one for each job in print/<code>/, and the index of them at the root of the output.
const RecordFile = "record.json"

// formatVersion is that of the index.
const formatVersion = 1

// An Index is the record.json at the root of the output. All paths in records have slashes and start at that root.
type Index struct {
	Doorleaf int        `json:"doorleaf"` // version of the format: 1
	Jobs     []IndexJob `json:"jobs"`     // by code
	Files    []File     `json:"files"`    // every file outside the jobs' folders that doorleaf wrote, except this one
}

// An IndexJob points to the record of one job.
type IndexJob struct {
	Code   string `json:"code"`
	Token  string `json:"token"`
	Record string `json:"record"` // print/<code>/record.json
}

// RecordPath is where the record of the job with that code lies.
func RecordPath(code string) string { return PrintPath(code, RecordFile) }

// loadIndex reads the index of an output folder. An empty folder has an empty one.
func loadIndex(output fs.FS) (Index, error) {
	data, err := fs.ReadFile(output, RecordFile)
	if errors.Is(err, fs.ErrNotExist) {
		return Index{}, nil
	}
	if err != nil {
		return Index{}, fmt.Errorf("cannot read the index of the output folder: %w", err)
	}
	var index Index
	if json.Unmarshal(data, &index) != nil || index.Doorleaf < 1 {
		return Index{}, fmt.Errorf("%s in the output folder is damaged or not doorleaf's; move it elsewhere, or choose another output folder", RecordFile)
	}
	if index.Doorleaf > formatVersion {
		return Index{}, fmt.Errorf("%s in the output folder was written by a newer doorleaf; use that one, or choose another output folder", RecordFile)
	}
	for _, job := range index.Jobs {
		if !codeForm.MatchString(job.Code) {
			return Index{}, fmt.Errorf("%s in the output folder names a job %q, which cannot be; move that file elsewhere", RecordFile, job.Code)
		}
	}
	return index, nil
}

// Codes are those of all jobs in an output folder, in order: of the index, and of folders with a record that it lost, when somebody moved it elsewhere.
func Codes(output fs.FS) ([]string, error) {
	index, err := loadIndex(output)
	if err != nil {
		return nil, err
	}
	var codes []string
	for _, job := range index.Jobs {
		codes = append(codes, job.Code)
	}
	folders, _ := fs.ReadDir(output, printFolder) // none is as good as an empty one
	for _, folder := range folders {
		if _, err := writtenOf(output, folder.Name()); err == nil && codeForm.MatchString(folder.Name()) {
			codes = append(codes, folder.Name())
		}
	}
	slices.Sort(codes)
	return slices.Compact(codes), nil
}

// next is the index after a make of units. A job whose folder somebody took away is left out. A shared file of an earlier make, such as an older font, is
// still ours and perhaps still in use, so it stays listed.
func (i Index) next(units []written, shared Files, there func(path string) bool) Index {
	index := Index{Doorleaf: formatVersion, Jobs: []IndexJob{}, Files: shared.List()}
	for _, u := range units {
		index.Jobs = append(index.Jobs, IndexJob{Code: u.Code, Token: u.Token, Record: RecordPath(u.Code)})
	}
	for _, old := range i.Jobs {
		again := slices.ContainsFunc(index.Jobs, func(job IndexJob) bool { return job.Code == old.Code })
		if !again && there(RecordPath(old.Code)) {
			index.Jobs = append(index.Jobs, old)
		}
	}
	for _, old := range i.Files {
		if _, again := shared[old.Path]; !again {
			index.Files = append(index.Files, old)
		}
	}
	slices.SortFunc(index.Jobs, func(a, b IndexJob) int { return strings.Compare(a.Code, b.Code) })
	slices.SortFunc(index.Files, byPath)
	return index
}

// written is what a record has to say of the files of its job.
type written struct {
	Code  string `json:"code"`
	Token string `json:"token"`
	Files []File `json:"files"` // every file in the job's two folders, except this one
}

// writtenOf reads the record of a job; the error of a missing one is fs.ErrNotExist.
func writtenOf(output fs.FS, code string) (written, error) {
	data, err := fs.ReadFile(output, RecordPath(code))
	if err != nil {
		return written{}, err
	}
	var w written
	if json.Unmarshal(data, &w) != nil || w.Code != code {
		return w, fmt.Errorf("%s is damaged or not doorleaf's; move the folder print/%s elsewhere and make the job again", RecordPath(code), code)
	}
	return w, nil
}
