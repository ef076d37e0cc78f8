package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/pdf"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

// A Programme is a programme's folder on disk: programme.yaml, jobs, key and ledger, and where the output goes.
type Programme struct {
	Path, Out string
	Writer    ledger.Writer // who adds to the ledger
	Confirmed bool          // the coordinator knows better than a doubt (ledger.Doubt)
	Browser   *pdf.Browser  // prints the PDF files; nil for none
}

// Ledger is what the ledger remembers of a job.
func (p Programme) Ledger(code string) (ledger.Job, error) {
	job, err := ledger.Read(p.Path, code)
	return job.By(p.Writer), err
}

// hasLedger reports whether the ledger's folder is there.
func (p Programme) hasLedger() bool {
	_, err := os.Stat(filepath.Join(p.Path, ledger.FolderName))
	return err == nil
}

// lockFile is held by whoever is about to change the ledger.
const lockFile = ".lock"

// hold keeps every other doorleaf from changing the ledger until release is called. What a killed one left unfinished is cleared away, and a make that it left is
// ended.
func (p Programme) hold() (release func(), err error) {
	folder := filepath.Join(p.Path, ledger.FolderName)
	if !p.hasLedger() {
		_, err := p.Ledger("") // says what is missing
		return nil, err
	}
	release, err = disk.Lock(filepath.Join(folder, lockFile))
	if errors.Is(err, disk.ErrLocked) {
		return nil, fmt.Errorf("another doorleaf is working in %s; wait until it is done and try again: %w", p.Path, disk.ErrLocked)
	}
	if err != nil {
		return nil, fmt.Errorf("the ledger in %s cannot be written (%w); check who may write there", p.Path, disk.Why(err))
	}
	if err := p.endUnfinished(); err != nil {
		release()
		return nil, err
	}
	return release, nil
}

// Finish ends a make that was killed, if there is one. Every command begins with it, so that nobody reads an output that is half new and half old. When another
// doorleaf is working, it ends its make itself.
func (p Programme) Finish() error {
	if _, err := os.Stat(p.sign()); err != nil {
		return nil
	}
	release, err := p.hold()
	if errors.Is(err, disk.ErrLocked) {
		return nil
	}
	if err != nil {
		return err
	}
	release()
	return nil
}

// sign is a file that is there while a make of this laptop is under way. It holds the path of the output folder.
func (p Programme) sign() string {
	return filepath.Join(p.Path, ledger.FolderName, ".making-"+p.Writer.Laptop)
}

// endUnfinished ends a make that was killed: forwards once anything of it is in the ledger, so that ledger and output are of one make; otherwise back.
func (p Programme) endUnfinished() error {
	ledger.Tidy(p.Path)
	disk.Tidy(filepath.Dir(p.sign()), filepath.Base(p.sign()))
	out, err := os.ReadFile(p.sign())
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("the ledger in %s cannot be read (%w); check who may read it", p.Path, disk.Why(err))
	}
	if _, err := os.Stat(string(out)); len(out) > 0 && err == nil {
		if err := p.endIn(string(out)); err != nil {
			return err
		}
	}
	return os.Remove(p.sign())
}

func (p Programme) endIn(out string) error {
	folder, err := tree.Open(out)
	if err != nil {
		return err
	}
	defer folder.Close()
	return p.endLeft(folder)
}

// endLeft ends what a make left in an output folder, if it left anything.
func (p Programme) endLeft(folder *tree.Folder) error {
	note, left, err := folder.Left()
	if err != nil || !left {
		return err
	}
	var lines []ledger.Entry
	if err := json.Unmarshal(note, &lines); err != nil {
		return errors.New("the output folder holds a make that was interrupted, and what belongs to it cannot be read; move its folder .doorleaf-swap elsewhere and make all jobs again")
	}
	if len(lines) > 0 && !p.isRemembered(lines) {
		return folder.Discard()
	}
	if err := ledger.Append(p.Path, lines); err != nil {
		return err
	}
	return folder.Swap()
}

// isRemembered reports whether any of the lines is in the ledger.
func (p Programme) isRemembered(lines []ledger.Entry) bool {
	return slices.ContainsFunc(lines, func(e ledger.Entry) bool { return ledger.Has(p.Path, e) })
}

// Missing says how many pages of a job are on paper and not in the output.
type Missing struct {
	Code  string
	Pages int
}

// MissingPages are those of all jobs that the ledger knows. A job whose ledger is damaged is left out: whoever works on it hears of that.
func (p Programme) MissingPages() []Missing {
	var all []Missing
	for _, code := range ledger.Codes(p.Path) {
		job, err := p.Ledger(code)
		if err != nil {
			continue
		}
		missing := Missing{Code: code}
		for _, below := range job.Pages {
			if _, err := os.Stat(filepath.Join(p.Out, filepath.FromSlash(pageFile(below)))); errors.Is(err, fs.ErrNotExist) {
				missing.Pages++
			}
		}
		if missing.Pages > 0 {
			all = append(all, missing)
		}
	}
	return all
}

// onPaper is what the record of a job in the output says is on paper.
func onPaper(made record.Job) ledger.Output {
	output := ledger.Output{Pages: made.PagesBelow(), Revisions: map[string]int{}}
	for _, sheet := range made.Sheets {
		output.Revisions[sheet.ID] = sheet.Revision
	}
	return output
}

// lastDay is the last work day of a plan, or the zero Date.
func lastDay(plan notices.Plan) notices.Date {
	if len(plan.Days) == 0 {
		return notices.Date{}
	}
	return plan.Days[len(plan.Days)-1]
}

// recordOf is the record of a job in the output, or the zero record.Job.
func recordOf(records []record.Job, code string) record.Job {
	i := slices.IndexFunc(records, func(r record.Job) bool { return r.Code == code })
	if i < 0 {
		return record.Job{}
	}
	return records[i]
}

// Restore puts the damaged ledger of a job right, and fills in from the output what is on paper.
func (p Programme) Restore(code string) ([]ledger.Restored, error) {
	release, err := p.hold()
	if err != nil {
		return nil, err
	}
	defer release()
	var output ledger.Output
	if records, err := record.Load(os.DirFS(p.Out)); err == nil {
		output = onPaper(recordOf(records, code))
	} else if !strings.Contains(err.Error(), "record.json") {
		return nil, err
	}
	return ledger.Restore(p.Path, code, p.Writer, output)
}
