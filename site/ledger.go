package site

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
)

// LedgerFile is the name of the ledger. It lies beside programme.yaml and the key, and is as private as they are.
const LedgerFile = "doorleaf.ledger.json"

// A Ledger remembers what paper cannot take back: the addresses on it, and which revision of a sheet hangs or was handed over. It only grows.
type Ledger struct {
	Jobs []LedgerJob // by code
}

// A LedgerJob is what the ledger remembers of one job.
type LedgerJob struct {
	Code           string        `json:"code"`
	Token          string        `json:"token"`
	Pages          []string      `json:"pages"`            // every page address ever made, below the base: "482109371158/ES/WINDOWS/"; in order
	DatesDigest    string        `json:"dates_digest"`     // of the dates of the outside work
	DatesChangedOn string        `json:"dates_changed_on"` // the day on which a make last found other dates than the one before; "" when never
	Beside         []string      `json:"beside,omitempty"` // what other job files of the house brought into the last make
	Sheets         []LedgerSheet `json:"sheets"`           // every sheet ever made, by id
}

// A LedgerSheet is one sheet of paper through all its revisions.
type LedgerSheet struct {
	SheetFacts              // of the last make that had it
	Gone       bool         `json:"gone,omitempty"`    // the last make had no such sheet any more
	Earlier    []SaidBefore `json:"earlier,omitempty"` // oldest first
	Revision   int          `json:"revision"`          // 1 for the first
	Posted     []Mark       `json:"posted"`
	Handed     []Mark       `json:"handed"`
}

// SheetFacts stand for what a sheet says at a make, and say where it belongs.
type SheetFacts struct {
	ID     string   `json:"id"`
	Digest string   `json:"digest"` // of the facts, never of their looks
	Kind   string   `json:"kind,omitempty"`
	For    []string `json:"for,omitempty"`  // ids of households and neighbours
	To     string   `json:"to,omitempty"`   // their name or address
	Hang   []string `json:"hang,omitempty"` // ways in, of the closed list
	Area   string   `json:"area,omitempty"` // signs only, of the closed list
}

// SaidBefore is what a sheet said until a make found other facts. A mark noted late, for an earlier day, is about this paper.
type SaidBefore struct {
	Digest   string `json:"digest"`
	Revision int    `json:"revision"`
	Until    string `json:"until"` // YYYY-MM-DD, the day of that make
}

// A Mark says that a revision of a sheet was put up, or given to somebody, on a day.
type Mark struct {
	Revision int    `json:"revision"`
	On       string `json:"on"`                 // YYYY-MM-DD
	Until    string `json:"until,omitempty"`    // the day on which it came down, or was taken back from a home; "" while it is out
	Home     string `json:"home,omitempty"`     // handed only: id of the household or neighbour
	How      string `json:"how,omitempty"`      // handed only: spoke, left or mailed
	By       string `json:"by,omitempty"`       // initials of whoever did it
	Language string `json:"language,omitempty"` // handed only: in which it was explained
	Why      string `json:"why,omitempty"`      // handed only: why nobody signed (40 CFR 745.84(a)(2)(i))
}

// Job is what the ledger remembers of the job with that code.
func (l Ledger) Job(code string) (LedgerJob, bool) {
	i, ok := l.find(code)
	if !ok {
		return LedgerJob{Code: code}, false
	}
	return l.Jobs[i], true
}

// Sheet is what the ledger remembers of the sheet with that id.
func (j LedgerJob) Sheet(id string) (LedgerSheet, bool) {
	i, ok := findSheet(j.Sheets, id)
	if !ok {
		return LedgerSheet{SheetFacts: SheetFacts{ID: id}}, false
	}
	return j.Sheets[i], true
}

// Withdrawn lists the addresses of the job that stand on earlier paper but are not among its pages now. Each needs a page that says so.
func (l Ledger) Withdrawn(code string, pages []string) []string {
	job, _ := l.Job(code)
	return slices.DeleteFunc(slices.Clone(job.Pages), func(page string) bool { return slices.Contains(pages, page) })
}

// With returns the ledger after a make of one job; l stays as it is. Addresses and sheets are only added. A sheet gets the next revision when
// its facts changed and paper with the current revision went out. The same facts again change nothing, whatever day it is.
func (l Ledger) With(code, token string, pages []string, sheets []SheetFacts, datesDigest string, today notices.Date) Ledger {
	job, _ := l.Job(code)
	job.Token = token
	job.Pages = union(job.Pages, pages)
	if job.DatesDigest != "" && job.DatesDigest != datesDigest {
		job.DatesChangedOn = today.String()
	}
	job.DatesDigest = datesDigest
	job.Sheets = append([]LedgerSheet{}, job.Sheets...)
	for i := range job.Sheets {
		job.Sheets[i].Gone = true
	}
	for _, facts := range sheets {
		job.Sheets = withSheet(job.Sheets, facts, today)
	}
	return l.withJob(job)
}

// withBeside notes what other job files brought into a make.
func (l Ledger) withBeside(code string, beside []string) Ledger {
	job, _ := l.Job(code)
	job.Beside = beside
	return l.withJob(job)
}

func (l Ledger) withJob(job LedgerJob) Ledger {
	jobs := slices.Clone(l.Jobs)
	if i, ok := l.find(job.Code); ok {
		jobs[i] = job
	} else {
		jobs = slices.Insert(jobs, i, job)
	}
	return Ledger{Jobs: jobs}
}

func (l Ledger) find(code string) (int, bool) {
	return slices.BinarySearchFunc(l.Jobs, code, func(j LedgerJob, code string) int { return cmp.Compare(j.Code, code) })
}

func findSheet(sheets []LedgerSheet, id string) (int, bool) {
	return slices.BinarySearchFunc(sheets, id, func(s LedgerSheet, id string) int { return cmp.Compare(s.ID, id) })
}

// withSheet changes and returns sheets.
func withSheet(sheets []LedgerSheet, facts SheetFacts, today notices.Date) []LedgerSheet {
	i, ok := findSheet(sheets, facts.ID)
	if !ok {
		return slices.Insert(sheets, i, LedgerSheet{SheetFacts: facts, Revision: 1, Posted: []Mark{}, Handed: []Mark{}})
	}
	sheet := &sheets[i]
	if sheet.Digest != facts.Digest {
		sheet.Earlier = append(slices.Clone(sheet.Earlier), SaidBefore{sheet.Digest, sheet.Revision, today.String()})
		if sheet.wentOut() {
			sheet.Revision++
		}
	}
	sheet.SheetFacts, sheet.Gone = facts, false
	return sheets
}

// wentOut reports whether paper with the current revision was put up, or given to somebody.
func (s LedgerSheet) wentOut() bool {
	current := func(m Mark) bool { return m.Revision == s.Revision }
	return slices.ContainsFunc(s.Posted, current) || slices.ContainsFunc(s.Handed, current)
}

// union is all strings of both lists in order, each once; never nil.
func union(a, b []string) []string {
	all := slices.Concat([]string{}, a, b)
	slices.Sort(all)
	return slices.Compact(all)
}

// ledgerText is the file: the format's version, a note for whoever opens it, a digest that finds a cut or an edit, and the jobs.
type ledgerText struct {
	Doorleaf int         `json:"doorleaf"`
	Note     string      `json:"note"`
	SHA256   string      `json:"sha256"` // of the jobs as compact JSON
	Jobs     []LedgerJob `json:"jobs"`
}

const (
	formatVersion = 1 // of the ledger and of the records
	ledgerNote    = "What is on paper already: addresses, revisions, days. Private. Keep a copy with the key. Do not edit: doorleaf would refuse it."
	backupSuffix  = ".bak"
)

// MakeLedger makes an empty ledger in a file that must not exist yet. Only the first set-up of a programme calls it.
func MakeLedger(path string) error {
	err := createPrivate(path, encodeLedger(Ledger{}))
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s exists already and remembers what is on your paper; keep it: %w", path, fs.ErrExist)
	}
	return err
}

// ReadLedger reads the ledger file. A missing, cut off or edited ledger is an error that says how to get it back; it is never replaced by an
// empty one.
func ReadLedger(path string) (Ledger, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Ledger{}, fmt.Errorf("the ledger %s is missing. It remembers which addresses and revisions are on paper already, and without it those"+
			" pages could vanish. %s: %w", path, wayBack(path), fs.ErrNotExist)
	}
	if err != nil {
		return Ledger{}, fmt.Errorf("cannot read the ledger: %w", err)
	}
	ledger, err := decodeLedger(data)
	if errors.Is(err, errDamaged) {
		return Ledger{}, fmt.Errorf("the ledger %s %w. %s", path, err, wayBack(path))
	}
	if err != nil {
		return Ledger{}, fmt.Errorf("the ledger %s %w", path, err)
	}
	return ledger, nil
}

var errDamaged = errors.New("is cut off or was edited")

func wayBack(path string) string {
	name := filepath.Base(path)
	return fmt.Sprintf("Copy %s from the laptop or the backup that has the newest one, or rename %s, which is one change older, to %s",
		name, name+backupSuffix, name)
}

// WriteLedger replaces an existing ledger file when the ledger differs, and keeps the earlier one beside it as a backup. It refuses to forget
// what the file remembers. Write it before the output: an address too many does no harm, one too few does.
func WriteLedger(path string, ledger Ledger) error {
	return writeLedger(path, ledger, func(string) error { return nil })
}

// writeLedger is WriteLedger with a function that is called before each change on the disk; its error stops the change.
func writeLedger(path string, ledger Ledger, step func(string) error) error {
	earlier, err := ReadLedger(path)
	if err != nil {
		return err
	}
	before, after := encodeLedger(earlier), encodeLedger(ledger)
	if bytes.Equal(before, after) {
		return nil
	}
	if code, forgets := ledger.forgets(earlier); forgets {
		return fmt.Errorf("the ledger %s remembers more of job %s than this doorleaf knew, perhaps from one that ran at the same time;"+
			" try again", path, code)
	}
	if err := replacePrivate(path+backupSuffix, before, step); err != nil {
		return fmt.Errorf("cannot keep a backup of the ledger: %w", err)
	}
	if err := replacePrivate(path, after, step); err != nil {
		return fmt.Errorf("cannot write the ledger: %w", err)
	}
	return nil
}

// forgets reports whether l lacks an address, a revision or a mark of the earlier ledger, and in which job.
func (l Ledger) forgets(earlier Ledger) (code string, forgets bool) {
	for _, was := range earlier.Jobs {
		is, _ := l.Job(was.Code)
		if !containsAll(is.Pages, was.Pages) || slices.ContainsFunc(was.Sheets, is.forgetsSheet) {
			return was.Code, true
		}
	}
	return "", false
}

func (j LedgerJob) forgetsSheet(was LedgerSheet) bool {
	is, _ := j.Sheet(was.ID)
	return is.Revision < was.Revision || !keepsMarks(is.Posted, was.Posted) || !keepsMarks(is.Handed, was.Handed)
}

// keepsMarks reports whether all marks are still there. All that may happen to a mark is that its paper comes down.
func keepsMarks(is, was []Mark) bool {
	return !slices.ContainsFunc(was, func(old Mark) bool {
		return !slices.ContainsFunc(is, func(m Mark) bool {
			if old.Until == "" {
				m.Until = ""
			}
			return m == old
		})
	})
}

func containsAll[T comparable](all, some []T) bool {
	return !slices.ContainsFunc(some, func(one T) bool { return !slices.Contains(all, one) })
}

func encodeLedger(ledger Ledger) []byte {
	jobs := append([]LedgerJob{}, ledger.Jobs...)
	return encodeJSON(ledgerText{Doorleaf: formatVersion, Note: ledgerNote, SHA256: jobsDigest(jobs), Jobs: jobs})
}

func decodeLedger(data []byte) (Ledger, error) {
	var text ledgerText
	err := json.Unmarshal(data, &text)
	if err == nil && text.Doorleaf > formatVersion {
		return Ledger{}, errors.New("was written by a newer doorleaf; use that one")
	}
	if err != nil || text.Doorleaf != formatVersion || text.SHA256 != jobsDigest(text.Jobs) {
		return Ledger{}, errDamaged
	}
	return Ledger{Jobs: text.Jobs}, nil
}

func jobsDigest(jobs []LedgerJob) string {
	data, err := json.Marshal(jobs)
	if err != nil {
		panic(err) // plain strings and numbers always encode
	}
	return digest(data)
}

// digest is the SHA-256 of data in hexadecimal digits.
func digest(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// encodeJSON is v as JSON for people and programs: two spaces for each level, a newline at the end, and < > & as they are.
func encodeJSON(v any) []byte {
	var text strings.Builder
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(v); err != nil {
		panic(err) // plain strings and numbers always encode
	}
	return []byte(text.String())
}

// replacePrivate writes a file that only its owner can read, whole or not at all, and makes sure that it is on the disk.
func replacePrivate(path string, data []byte, step func(string) error) error {
	if err := step("write " + path); err != nil {
		return err
	}
	file, err := os.CreateTemp(filepath.Dir(path), halfWritten(path)) // mode 0600
	if err != nil {
		return err
	}
	err = writeSynced(file, data)
	if err == nil {
		err = step("rename " + path)
	}
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err != nil {
		os.Remove(file.Name())
	}
	return err
}

// halfWritten is the pattern of names for a file that is not whole yet.
func halfWritten(path string) string { return "." + filepath.Base(path) + "-*" }
