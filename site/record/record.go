// Package record is what was made, as documented JSON: one record.json for each job, in the folder of its sheets. Everything that is told about a job after its
// make, such as the coordinator's lists, is told from these. All paths in records have slashes and start at the root of the output.
package record

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// A Job says what was made for one job, and why.
type Job struct {
	Code       string         `json:"code"`
	Token      string         `json:"token"`      // "" when the job was never made with codes
	Address    string         `json:"address"`    // of the house; private to the paper
	Days       []string       `json:"days"`       // work days, YYYY-MM-DD, in order
	WalkList   string         `json:"walk_list"`  // path of the list to carry along the street
	Everything string         `json:"everything"` // path of the file that prints all sheets at once, but those on larger paper
	CopyShop   string         `json:"copy_shop"`  // path of the file that prints the signs on larger paper; "" when there are none
	PDFs       []PDF          `json:"pdfs"`       // for the printer; empty when the last make was without --pdf, or found no browser
	Lot        *templates.Lot `json:"lot"`        // the plan drawing of the coordinator's sheet, in ft; null when no work is outside
	Fonts      []Font         `json:"fonts"`
	Sheets     []Sheet        `json:"sheets"`
	Pages      []Page         `json:"pages"`
	PutRight   []Repair       `json:"put_right"` // paper that is out and no longer right, door by door and home by home
	Steps      []Step         `json:"steps"`     // what has to happen, nearest first
	TakeDown   []Door         `json:"take_down"` // doors whose signs are to come down now
	Reasons    []Reason       `json:"reasons"`
	Files      []tree.File    `json:"files"` // every file in the job's two folders, except its record.json
}

// A Repair is paper that hangs or was handed over, as the ledger knew at this make, and that says something else than the job now.
type Repair struct {
	Where    string `json:"where"`     // which door, or whose home
	Home     string `json:"home"`      // id of the household or neighbour; "" for a door
	Sheet    string `json:"sheet"`     // id
	Title    string `json:"title"`     // for the coordinator: "Work-area sign"
	Printed  bool   `json:"printed"`   // it was printed only
	TakeAway string `json:"take_away"` // the revision that is out: "1", or "1-K7"
	Since    string `json:"since"`     // YYYY-MM-DD
	Bring    string `json:"bring"`     // the revision that replaces it; "" when the job has no such sheet any more
}

// A Step is one thing that has to happen for a job. Days are YYYY-MM-DD.
type Step struct {
	ID        string `json:"id"` // stable when its day moves
	Kind      string `json:"kind"`
	For       string `json:"for"`        // household, neighbour, door, work, owner, residents or file
	About     string `json:"about"`      // id of the household, neighbour or piece of work; "" for the whole job
	First     string `json:"first"`      // from this day on it can be done
	Due       string `json:"due"`        // its last day
	LateAfter string `json:"late_after"` // from the next day on it is late; "" when it never is
	Says      string `json:"says"`
	Source    string `json:"source"`
	Binds     string `json:"binds"` // "law for this job" or "good practice"
	Done      bool   `json:"done"`  // as the job file and the ledger knew at this make
}

// A Door is a door whose signs are to come down, because what lies behind it has passed its check.
type Door struct {
	Where string   `json:"where"` // for the coordinator
	Signs []string `json:"signs"` // ids of the sheets
}

// A PDF is a file for the printer, made by a browser on the coordinator's computer. Another version of the browser may write other bytes.
type PDF struct {
	Path  string `json:"path"`
	Paper string `json:"paper"`
	Pages int    `json:"pages"` // sides, blank backs included
}

// A Font is a font that the sheets were measured and are printed with.
type Font struct {
	Name    string `json:"name"`
	Version string `json:"version"`
	SHA256  string `json:"sha256"`
}

// A Sheet is one sheet of paper.
type Sheet struct {
	ID           string   `json:"id"`
	Kind         string   `json:"kind"`
	Title        string   `json:"title"` // for the coordinator: "Close-windows request"
	To           string   `json:"to"`    // for the coordinator: whom it is for, or which door
	For          []string `json:"for"`   // ids of households and neighbours
	Hang         []string `json:"hang"`  // ways in, of the closed list
	Revision     int      `json:"revision"`
	Tag          string   `json:"tag"`           // tells two revisions with one number apart: "K7"; "" where there are no two
	Replaces     string   `json:"replaces"`      // the revision whose paper has to come down or be thrown away: "1", or "1-K7"; "" when there is none
	ReplacesDate string   `json:"replaces_date"` // YYYY-MM-DD, on which paper of that revision last went out; "" when there is none
	Copies       int      `json:"copies"`
	Paper        string   `json:"paper"` // "letter", "a4" or "11x17"; "letter x3" when the sign takes three sheets, joined one below the other
	Path         string   `json:"path"`
	SHA256       string   `json:"sha256"`
	Due          string   `json:"due"`          // YYYY-MM-DD; "" when there is no such day
	LateAfter    string   `json:"late_after"`   // YYYY-MM-DD; "" when there is no such day
	ReadFromFt   float64  `json:"read_from_ft"` // how far away a sign's reader stands; 0 at the sign
	Faces        []Face   `json:"faces"`
}

// PaperSize is the paper of each sheet that it takes.
func (s Sheet) PaperSize() string {
	size, _, _ := strings.Cut(s.Paper, " ")
	return size
}

// IsJoined reports whether it is a sign over several sheets of paper.
func (s Sheet) IsJoined() bool { return s.Paper != s.PaperSize() }

// A Face is one side of a sheet, in one language.
type Face struct {
	Language          string  `json:"language"`                 // BCP 47
	LanguageName      string  `json:"language_name"`            // for the coordinator: "Spanish"
	Draft             bool    `json:"draft"`                    // no fluent person had signed the translation when this was made
	Pages             int     `json:"pages"`                    // printed sides that it fills; the sheets of a sign over several are printed on fronts alone
	QR                string  `json:"qr"`                       // the exact text in the code; "" when there is none
	QRVersion         int     `json:"qr_version"`               // 1 to 40 (ISO/IEC 18004): 17 + 4 x version modules along a side; 0 when there is no code
	QRLevel           string  `json:"qr_level"`                 // of error correction: "Q", which mends about 25 % of the codewords; "" when there is no code
	QRModuleMM        float64 `json:"qr_module_mm"`             // side of a module on paper; 0 when there is no code
	Page              string  `json:"page"`                     // path of the file that the code opens; "" when there is no code
	ReadingDistanceFt float64 `json:"reading_distance_ft"`      // signs only: of the legend, in good conditions, in whole feet rounded down
	PoorDistanceFt    float64 `json:"poor_reading_distance_ft"` // signs only: the same at dusk or in rain
	CapHeightMM       float64 `json:"cap_height_mm"`            // of the message lines of a legend, or of the head of a letter; what is measured is in Letters
	Letters           string  `json:"letters"`                  // whose height counts: "capitals", and in scripts that have none "whole characters" and the like
	SignalHeightMM    float64 `json:"signal_height_mm"`         // signs only: of the signal word, at least the reading distance / 150
}

// A Page is one page of the website.
type Page struct {
	Path     string `json:"path"`
	URL      string `json:"url"`
	Kind     string `json:"kind"`
	Language string `json:"language"` // "" where the reader chooses

	LanguageName string `json:"language_name"` // for the coordinator; "" where the reader chooses
	SHA256       string `json:"sha256"`
}

// A Reason is one decision, for whoever asks why a sheet is there or not.
type Reason struct {
	Decision string `json:"decision"`
	Outcome  string `json:"outcome"`
	Because  string `json:"because"`
	Source   string `json:"source"`

	About   string    `json:"about"`   // id of the work, household, neighbour or opening; "" for the whole job
	Binds   string    `json:"binds"`   // "law for this job" or "good practice"
	Missing []Missing `json:"missing"` // answers that nobody has given
	Read    []Reading `json:"read"`    // the passages of the source; empty for common practice
}

// A Reading is a passage that a decision rests on, and when we read it there.
type Reading struct {
	Citation string `json:"citation"`
	ReadOn   string `json:"read_on"` // YYYY-MM-DD; "" when nobody looked it up
	How      string `json:"how"`     // "read in the published text", "read in a secondary text" or "from memory"
}

// A Missing is an answer that nobody has given, by the name of its field, and what it would change.
type Missing struct {
	Field string `json:"field"`
	Would string `json:"would"`
}

// Load reads the records of all jobs in an output folder, by code. An empty folder has none, and a job whose folder somebody took away is left out.
func Load(output fs.FS) ([]Job, error) {
	codes, err := tree.Codes(output)
	if err != nil {
		return nil, err
	}
	var records []Job
	for _, code := range codes {
		record, err := load(output, code)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		records = append(records, record)
	}
	slices.SortFunc(records, byCode)
	return records, nil
}

// loadRecord reads the record of one job; the error of a missing one is fs.ErrNotExist.
func load(output fs.FS, code string) (Job, error) {
	data, err := fs.ReadFile(output, tree.RecordPath(code))
	if err != nil {
		return Job{}, fmt.Errorf("cannot read the record of job %s: %w", code, err)
	}
	var record Job
	if json.Unmarshal(data, &record) != nil || record.Code != code {
		return Job{}, fmt.Errorf("%s is damaged or not doorleaf's; move the folder print/%s elsewhere and make the job again", tree.RecordPath(code), code)
	}
	return record, nil
}

// Merge is earlier with the records of the jobs made now in their place, by code.
func Merge(earlier, made []Job) []Job {
	isMade := func(old Job) bool {
		return slices.ContainsFunc(made, func(r Job) bool { return r.Code == old.Code })
	}
	all := append(slices.DeleteFunc(slices.Clone(earlier), isMade), made...)
	slices.SortFunc(all, byCode)
	return all
}

func byCode(a, b Job) int { return cmp.Compare(a.Code, b.Code) }

// withLists is the record with empty lists where it had none, so that the file says [] and never null.
func (r Job) withLists() Job {
	r.Days, r.Fonts, r.Pages, r.PDFs = list(r.Days), list(r.Fonts), list(r.Pages), list(r.PDFs)
	r.Reasons, r.Files, r.Sheets = list(slices.Clone(r.Reasons)), list(r.Files), list(slices.Clone(r.Sheets))
	for i := range r.Reasons {
		r.Reasons[i].Missing, r.Reasons[i].Read = list(r.Reasons[i].Missing), list(r.Reasons[i].Read)
	}
	if r.Lot != nil {
		lot := *r.Lot
		lot.Walls, lot.Homes = list(lot.Walls), list(lot.Homes)
		r.Lot = &lot
	}
	r.TakeDown, r.PutRight, r.Steps = list(r.TakeDown), list(r.PutRight), list(r.Steps)
	for i, sheet := range r.Sheets {
		sheet.For, sheet.Hang, sheet.Faces = list(sheet.For), list(sheet.Hang), list(sheet.Faces)
		r.Sheets[i] = sheet
	}
	return r
}

func list[T any](items []T) []T {
	if items == nil {
		return []T{}
	}
	return items
}

// Unit completes the record of a job with its files, and the files with the record. earlier is the job's record in the output folder, or the zero Job.
//
// A record without a token is that of a job made without codes. Its pages, perhaps on the web already, stay as they are: the new record keeps the token, the
// pages and their files from the earlier one.
func Unit(job Job, files tree.Files, earlier Job) (tree.Unit, Job) {
	unit := tree.Unit{Code: job.Code, Token: job.Token, Files: maps.Clone(files)}
	job.Files = files.List()
	if job.Token == "" {
		job.Token, job.Pages = earlier.Token, earlier.Pages
		for _, file := range earlier.Files {
			if tree.IsWeb(file.Path) {
				job.Files = append(job.Files, file)
			}
		}
	}
	job = job.withLists()
	unit.Files[tree.RecordPath(job.Code)] = tree.JSON(job)
	return unit, job
}

// PagesBelow are the addresses of the job's pages below the base, as a record lists their files.
func (j Job) PagesBelow() []string {
	var all []string
	for _, page := range j.Pages {
		below, _ := strings.CutSuffix(page.Path, "index.html")
		all = append(all, strings.TrimPrefix(below, tree.WebPath("")))
	}
	return all
}
