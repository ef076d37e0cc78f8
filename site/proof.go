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

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// proof is one page for the file, from what the ledger remembers of a job and what its file says of checks.
func proof(plan notices.Plan, known ledger.Job) ([]byte, error) {
	english, err1 := locales.Open(string(notices.English), nil)
	own, err2 := locales.OpenCoordinator()
	if err := cmp.Or(err1, err2); err != nil {
		return nil, err
	}
	kit := Kit{speakers: map[notices.Language]*locales.Speaker{notices.English: english}, own: own}
	p := newPress(kit, plan.Programme)
	page, err := templates.RenderProof(templates.Proof{
		Code: plan.Code, Address: plan.Address, Programme: plan.Programme.Name, Days: fileDays(plan.Days), Pamphlets: pamphlets(plan.Proof), Emergency: plan.Proof.Statement.What, NotFollowed: plan.Proof.Statement.NotFollowed,
		Told: p.told(known), Tried: tried(plan.Proof, known), Hung: p.hung(known), Checks: p.checks(plan.Proof), Samples: p.samples(plan.Proof), Open: p.open(known), Struck: p.struck(known),
	})
	return seal(page), err
}

// told is every handing over, by home and day.
func (p press) told(known ledger.Job) []templates.ProofTold {
	var rows []handedRow
	for _, sheet := range known.Sheets {
		for _, m := range sheet.Visits {
			rows = append(rows, handedRow{sheet, m})
		}
	}
	slices.SortStableFunc(rows, func(a, b handedRow) int { return cmp.Or(cmp.Compare(a.Home, b.Home), cmp.Compare(a.On, b.On)) })
	var all []templates.ProofTold
	for _, r := range rows {
		told := templates.ProofTold{Who: cmp.Or(r.sheet.To, r.Home), What: whatOf(r.sheet, r.Revision), When: lists.WrittenDay(r.On), How: howTold(r.Mark), By: r.By,
			Language: p.languageName(r.Language), Why: r.Why}
		if r.Until != "" {
			told.What += ", taken back " + lists.WrittenDay(r.Until)
		}
		all = append(all, told)
	}
	return all
}

type handedRow struct {
	sheet ledger.Sheet
	ledger.Mark
}

// tried is every visit to somebody of the house that left no signature, each once however many sheets there were.
func tried(proof notices.Proof, known ledger.Job) []templates.ProofTried {
	var all []templates.ProofTried
	for _, sheet := range known.Sheets {
		for _, m := range sheet.Visits {
			if !livesThere(proof, sheet, m.Home) || m.WasTold() && m.Why == "" {
				continue
			}
			visit := templates.ProofTried{Who: cmp.Or(sheet.To, m.Home), When: lists.WrittenDay(m.On), How: howTold(m), By: m.By, Why: m.Why}
			if !slices.Contains(all, visit) {
				all = append(all, visit)
			}
		}
	}
	return all
}

// livesThere reports whether a home is a household of the house itself, even one that the job file no longer has.
func livesThere(proof notices.Proof, sheet ledger.Sheet, home string) bool {
	return sheet.Kind == string(notices.StayOutLetter) || slices.Contains(proof.Households, home)
}

func (p press) hung(known ledger.Job) []templates.ProofHung {
	var all []templates.ProofHung
	for _, sheet := range known.Sheets {
		for _, m := range sheet.Posted {
			all = append(all, templates.ProofHung{Where: p.place(sheet, ""), What: whatOf(sheet, m.Revision),
				From: lists.WrittenDay(m.On), Until: lists.WrittenDay(m.Until), By: m.By})
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
func (p press) open(known ledger.Job) []string {
	var all []string
	for _, sheet := range known.Sheets {
		meant := len(sheet.Hang) > 0 || len(sheet.For) > 0 && !notices.Kind(sheet.Kind).Traits().GoesBack
		if meant && !sheet.Gone && !sheet.WentOut() {
			all = append(all, fmt.Sprintf("%s, %s", whatOf(sheet, sheet.Revision), p.place(sheet, "")))
		}
	}
	return all
}

// struck are the marks that were slips: they count for nothing, and stay on file.
func (p press) struck(known ledger.Job) []string {
	var all []string
	for _, s := range known.Struck {
		what := whatOf(ledger.Sheet{Facts: s.Sheet}, s.Mark.Revision)
		all = append(all, fmt.Sprintf("%s: %s, %s, struck on %s", what, howStruck(s.Mark), lists.WrittenDay(s.Mark.On), lists.WrittenDay(s.On)))
	}
	return all
}

func howStruck(m ledger.Mark) string {
	if m.Home == "" {
		return string(m.Event)
	}
	return howTold(m) + ", " + m.Home
}

// whatOf names a sheet by its title and the id in its foot.
func whatOf(sheet ledger.Sheet, revision ledger.Revision) string {
	return fmt.Sprintf("%s (%s), revision %s", titleOf(sheet.Kind), sheet.ID, revision)
}

func howTold(m ledger.Mark) string {
	switch {
	case m.Event == ledger.Phoned:
		return "told on the phone"
	case m.Event == ledger.Refused:
		return "spoken to, took nothing"
	case m.Event == ledger.Signed:
		return "receipt signed"
	case m.How == "spoke":
		return "spoken to, sheet given"
	case m.How == "left":
		return "left at the home"
	}
	return m.How
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

func fileDays(days []notices.Date) string {
	var all []string
	for _, d := range days {
		all = append(all, lists.LongDay(d))
	}
	return strings.Join(all, "; ")
}

// WriteProof writes the proof of a job to a file outside the output folder. A file that is there is replaced only when it is a proof exactly as doorleaf wrote it.
func (p Programme) WriteProof(plan notices.Plan, path string) error {
	if err := p.checkProofPath(path); err != nil {
		return err
	}
	known, err := p.Ledger(plan.Code)
	if err != nil {
		return err
	}
	if !known.IsKnown() {
		return fmt.Errorf("the ledger knows nothing of job %s; run doorleaf make first, print, and note what hangs and who was told", plan.Code)
	}
	page, err := proof(plan, known)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), disk.PrivateFolder); err != nil {
		return fmt.Errorf("the folder for the proof cannot be made (%w); name another file with --to", disk.Why(err))
	}
	return writeSealed(path, page)
}

// checkProofPath refuses the output folder: what is in it gets uploaded, or thrown away and made again.
func (p Programme) checkProofPath(path string) error {
	whole, err1 := filepath.Abs(path)
	out, err2 := filepath.Abs(p.Out)
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
		return cannotKeep(path, disk.Create(path, page))
	}
	if err != nil {
		return fmt.Errorf("%s cannot be read (%w); name another file with --to", path, disk.Why(err))
	}
	before, err := os.ReadFile(path)
	if err != nil || !info.Mode().IsRegular() || !isSealed(before) {
		return fmt.Errorf("%s is not as doorleaf wrote it, so it stays as it is; move it elsewhere, or name another file with --to", path)
	}
	if bytes.Equal(before, page) {
		return nil
	}
	return cannotKeep(path, disk.Replace(path, page))
}

func cannotKeep(path string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("the proof %s cannot be written (%w); make room on the disk, or name another file with --to", path, disk.Why(err))
}

const sealForm = "<!-- as doorleaf wrote it: sha256 %s -->\n"

// seal ends a page with its digest, so that an edit shows.
func seal(page []byte) []byte {
	return append(bytes.Clone(page), fmt.Sprintf(sealForm, tree.Digest(page))...)
}

func isSealed(file []byte) bool {
	size := len(fmt.Sprintf(sealForm, tree.Digest(nil)))
	return len(file) > size && bytes.Equal(seal(file[:len(file)-size]), file)
}
