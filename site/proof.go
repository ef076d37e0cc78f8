package site

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// Proof is one page for the file, from what the ledger remembers of a job and what its file says of checks.
func Proof(plan notices.Plan, known LedgerJob) ([]byte, error) {
	english, err1 := locales.Open(string(notices.English), nil)
	desk, err2 := locales.OpenDesk()
	if err := cmp.Or(err1, err2); err != nil {
		return nil, err
	}
	kit := Kit{Speakers: map[notices.Language]*locales.Speaker{notices.English: english}, Desk: desk}
	p := press{kit: kit, programme: plan.Programme, code: plan.Code}
	page, err := templates.RenderProof(templates.Proof{
		Code: plan.Code, Address: plan.Address, Programme: plan.Programme.Name, Days: fileDays(plan.Days), Pamphlets: pamphlets(plan.Proof), Emergency: plan.Proof.Statement.What, NotFollowed: plan.Proof.Statement.NotFollowed,
		Told: p.told(known), Tried: tried(plan.Proof, known), Hung: p.hung(known), Checks: p.checks(plan.Proof), Samples: p.samples(plan.Proof), Open: p.open(known),
	})
	return seal(page), err
}

// told is every handing over, by home and day.
func (p press) told(known LedgerJob) []templates.ProofTold {
	var rows []handedRow
	for _, sheet := range known.Sheets {
		for _, m := range sheet.Handed {
			rows = append(rows, handedRow{sheet, m})
		}
	}
	slices.SortStableFunc(rows, func(a, b handedRow) int { return cmp.Or(cmp.Compare(a.Home, b.Home), cmp.Compare(a.On, b.On)) })
	var all []templates.ProofTold
	for _, r := range rows {
		told := templates.ProofTold{Who: cmp.Or(r.sheet.To, r.Home), What: whatOf(r.sheet, r.Revision), When: fileDay(r.On), How: howTold(r.How), By: r.By,
			Language: p.languageName(r.Language), Why: r.Why}
		if r.Until != "" {
			told.What += ", taken back " + fileDay(r.Until)
		}
		all = append(all, told)
	}
	return all
}

type handedRow struct {
	sheet LedgerSheet
	Mark
}

// tried is every visit to somebody of the house that left no signature, each once however many sheets there were.
func tried(proof notices.Proof, known LedgerJob) []templates.ProofTried {
	var all []templates.ProofTried
	for _, sheet := range known.Sheets {
		for _, m := range sheet.Handed {
			if !livesThere(proof, sheet, m.Home) || m.How == "spoke" && m.Why == "" {
				continue
			}
			visit := templates.ProofTried{Who: cmp.Or(sheet.To, m.Home), When: fileDay(m.On), How: howTold(m.How), By: m.By, Why: m.Why}
			if !slices.Contains(all, visit) {
				all = append(all, visit)
			}
		}
	}
	return all
}

// livesThere reports whether a home is a household of the house itself, even one that the job file no longer has.
func livesThere(proof notices.Proof, sheet LedgerSheet, home string) bool {
	return sheet.Kind == string(notices.StayOutLetter) || slices.Contains(proof.Households, home)
}

func (p press) hung(known LedgerJob) []templates.ProofHung {
	var all []templates.ProofHung
	for _, sheet := range known.Sheets {
		for _, m := range sheet.Posted {
			all = append(all, templates.ProofHung{Where: p.place(sheet, ""), What: whatOf(sheet, m.Revision),
				From: fileDay(m.On), Until: fileDay(m.Until), By: m.By})
		}
	}
	return all
}

func (p press) checks(proof notices.Proof) []templates.ProofCheck {
	var all []templates.ProofCheck
	for _, c := range proof.Checks {
		all = append(all, templates.ProofCheck{Work: p.workName(c.Work, c.Area), When: fileDays([]notices.Date{c.On}), By: c.By, Result: string(c.Result)})
	}
	return all
}

func (p press) samples(proof notices.Proof) []templates.ProofSample {
	var all []templates.ProofSample
	for _, w := range proof.Samples {
		result := strconv.FormatFloat(w.Loading, 'f', -1, 64) + " µg/ft²"
		if w.Below {
			result = "less than " + result
		}
		all = append(all, templates.ProofSample{Work: p.workName(w.Work, w.Area), Room: p.word(w.Room.Word()), Surface: strings.ReplaceAll(string(w.Surface), "_", " "),
			Lab: fileDays([]notices.Date{w.Lab}), Result: result})
	}
	return all
}

// workName is the area of a piece of work, with its id.
func (p press) workName(id string, area notices.Area) string {
	if area == "" {
		return id
	}
	return fmt.Sprintf("%s (%s)", p.word(area.Word()), id)
}

// open are the sheets of the last make for a door or a home of which no paper is noted.
func (p press) open(known LedgerJob) []string {
	var all []string
	for _, sheet := range known.Sheets {
		meant := len(sheet.Hang) > 0 || len(sheet.For) > 0 && !notices.Kind(sheet.Kind).Traits().GoesBack
		if meant && !sheet.Gone && !sheet.wentOut() {
			all = append(all, fmt.Sprintf("%s, %s", whatOf(sheet, sheet.Revision), p.place(sheet, "")))
		}
	}
	return all
}

// whatOf names a sheet by its title and the id in its foot.
func whatOf(sheet LedgerSheet, revision int) string {
	return fmt.Sprintf("%s (%s), revision %d", titleOf(sheet.Kind), sheet.ID, revision)
}

func howTold(how string) string {
	switch how {
	case "spoke":
		return "spoken to, sheet given"
	case "left":
		return "left at the home"
	}
	return how
}

func (p press) languageName(tag string) string {
	for _, l := range notices.Languages {
		if string(l.Tag) == tag {
			return englishName(p.kit, l.Tag)
		}
	}
	return tag
}

func pamphlets(proof notices.Proof) []string {
	var all []string
	for _, given := range proof.Pamphlets {
		all = append(all, fmt.Sprintf("%s: %s on %s", given.To, given.How, fileDays([]notices.Date{given.Given})))
	}
	return all
}

// fileDay is a day as it stands in a file that is read years later; "" stays "".
func fileDay(text string) string {
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return ""
	}
	return day.Format("Mon Jan 2, 2006")
}

func fileDays(days []notices.Date) string {
	var all []string
	for _, d := range days {
		all = append(all, fileDay(d.String()))
	}
	return strings.Join(all, "; ")
}

// WriteProof writes the proof of a job to a file outside the output folder. A file that is there is replaced only when it is a proof exactly as
// doorleaf wrote it.
func (f Folder) WriteProof(plan notices.Plan, path string) error {
	if err := f.checkProofPath(path); err != nil {
		return err
	}
	ledger, err := ReadLedger(filepath.Join(f.Path, LedgerFile))
	if err != nil {
		return err
	}
	known, err := ledger.known(plan.Code)
	if err != nil {
		return err
	}
	page, err := Proof(plan, known)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return fmt.Errorf("the folder for the proof cannot be made (%w); name another file with --to", err)
	}
	return writeSealed(path, page)
}

// checkProofPath refuses the output folder: what is in it gets uploaded, or thrown away and made again.
func (f Folder) checkProofPath(path string) error {
	whole, err1 := filepath.Abs(path)
	out, err2 := filepath.Abs(f.Out)
	if err := cmp.Or(err1, err2); err != nil {
		return err
	}
	if inside, err := filepath.Rel(out, whole); err == nil && filepath.IsLocal(inside) {
		return fmt.Errorf("%s is in the output folder, and a proof is private and for keeping; name a file elsewhere", path)
	}
	return nil
}

func writeSealed(path string, page []byte) error {
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return createPrivate(path, page)
	}
	if err != nil {
		return fmt.Errorf("cannot look at %s: %w", path, err)
	}
	before, err := os.ReadFile(path)
	if err != nil || !info.Mode().IsRegular() || !isSealed(before) {
		return fmt.Errorf("%s is not as doorleaf wrote it, so it stays as it is; move it elsewhere, or name another file with --to", path)
	}
	if bytes.Equal(before, page) {
		return nil
	}
	return replacePrivate(path, page, func(string) error { return nil })
}

const sealForm = "<!-- as doorleaf wrote it: sha256 %s -->\n"

// seal ends a page with its digest, so that an edit shows.
func seal(page []byte) []byte {
	return append(bytes.Clone(page), fmt.Sprintf(sealForm, digest(page))...)
}

func isSealed(file []byte) bool {
	size := len(fmt.Sprintf(sealForm, digest(nil)))
	return len(file) > size && bytes.Equal(seal(file[:len(file)-size]), file)
}
