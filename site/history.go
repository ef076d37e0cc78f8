package site

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
)

// What happened to paper. Each of these functions returns the ledger with it; l stays as it is. Either everything is noted or, with an error,
// nothing.

// A Noted is what was noted about one sheet.
type Noted struct {
	Sheet    LedgerSheet // as it is now
	Mark     Mark
	Already  bool // the ledger knew it, and nothing changed
	Outdated bool // the paper says something else than the job now: Sheet.Revision has to replace it, once it is made
}

// Post notes that sheets were put up on a day: the given ones, or all signs of the last make. A new revision goes where the old one hung, so
// that one came down. A sheet that hangs already stays as it was noted.
func (l Ledger) Post(code string, ids []string, on notices.Date, by string) (Ledger, []Noted, error) {
	after, noted, err := l.note(code, ids, LedgerSheet.isSign, func(sheet LedgerSheet) (Noted, error) {
		if len(sheet.Hang) == 0 {
			return Noted{}, fmt.Errorf("%s is no sign and does not hang; note it with doorleaf handed", sheet.ID)
		}
		return sheet.post(Mark{On: on.String(), By: by}), nil
	})
	if err == nil && len(noted) == 0 {
		return l, nil, fmt.Errorf("the last make of job %s had no signs", code)
	}
	return after, noted, err
}

// TakeDown notes that sheets came down on a day, or were taken back from homes: the given ones, or all that hang.
func (l Ledger) TakeDown(code string, ids []string, on notices.Date) (Ledger, []Noted, error) {
	after, noted, err := l.note(code, ids, LedgerSheet.Hangs, func(sheet LedgerSheet) (Noted, error) { return sheet.takeDown(on.String()) })
	if err == nil && len(noted) == 0 {
		return l, nil, fmt.Errorf("as far as the ledger knows, nothing of job %s hangs; note with doorleaf posted what did", code)
	}
	return after, noted, err
}

// A Visit is a home that was told something, in whatever way.
type Visit struct {
	Sheets []string // none: what the home has not got yet; or, when it has everything, what it got last
	Mark   Mark     // without its revision
}

// HandOver notes visits.
func (l Ledger) HandOver(code string, visits ...Visit) (Ledger, []Noted, error) {
	after, all := l, []Noted{}
	for _, visit := range visits {
		job, err := after.known(code)
		if err != nil {
			return l, nil, err
		}
		if !job.forAnybody(visit.Sheets) {
			err = job.checkHome(visit.Mark.Home)
		}
		if err != nil {
			return l, nil, err
		}
		wanted := job.forVisit(visit.Mark.Home)
		with, noted, err := after.note(code, visit.Sheets, func(s LedgerSheet) bool { return slices.Contains(wanted, s.ID) },
			func(sheet LedgerSheet) (Noted, error) { return sheet.handOver(visit.Mark) })
		if err != nil {
			return l, nil, err
		}
		if len(noted) == 0 {
			return l, nil, fmt.Errorf("the last make had no sheet for the home %s; name the sheet that it got with --sheet", visit.Mark.Home)
		}
		after, all = with, append(all, noted...)
	}
	return after, all, nil
}

// note applies a change to the named sheets of a job, or else to all that are meant.
func (l Ledger) note(code string, ids []string, meant func(LedgerSheet) bool, change func(LedgerSheet) (Noted, error)) (Ledger, []Noted, error) {
	job, err := l.known(code)
	if err != nil {
		return l, nil, err
	}
	if err := job.checkIDs(ids); err != nil {
		return l, nil, err
	}
	var all []Noted
	var failed []error
	job.Sheets = slices.Clone(job.Sheets)
	for i, sheet := range job.Sheets {
		if named := slices.Contains(ids, sheet.ID); !named && (len(ids) > 0 || !meant(sheet)) {
			continue
		}
		noted, err := change(sheet)
		failed = append(failed, err)
		job.Sheets[i] = noted.Sheet
		all = append(all, noted)
	}
	if err := errors.Join(failed...); err != nil {
		return l, nil, err
	}
	return l.withJob(job), all, nil
}

func (l Ledger) known(code string) (LedgerJob, error) {
	job, _ := l.Job(code)
	if len(job.Sheets) == 0 {
		return job, fmt.Errorf("the ledger knows no sheet of job %s; run doorleaf make first, print, and note then what hangs and who was told", code)
	}
	return job, nil
}

func (j LedgerJob) checkIDs(ids []string) error {
	var known []string
	for _, sheet := range j.Sheets {
		known = append(known, sheet.ID)
	}
	var unknown []error
	for _, id := range ids {
		if !slices.Contains(known, id) {
			unknown = append(unknown, fmt.Errorf("job %s has no sheet %q; %s", j.Code, id, suggest("sheets", id, known)))
		}
	}
	return errors.Join(unknown...)
}

func (j LedgerJob) checkHome(id string) error {
	if known := j.homes(); !slices.Contains(known, id) {
		return fmt.Errorf("job %s has no sheet for a home %q; %s", j.Code, id, suggest("homes", id, known))
	}
	return nil
}

// forAnybody reports whether sheets are named that are for no home of the job file, such as a spare, or the notice for all homes around a common area. Then
// a home may be called as people call it: "unit 3".
func (j LedgerJob) forAnybody(ids []string) bool {
	named := func(id string) bool {
		sheet, _ := j.Sheet(id)
		return len(sheet.For) > 0 || len(sheet.Hang) > 0
	}
	return len(ids) > 0 && !slices.ContainsFunc(ids, named)
}

// homes are the ids of all homes that the job ever had a sheet for.
func (j LedgerJob) homes() []string {
	var all []string
	for _, sheet := range j.Sheets {
		all = append(all, sheet.For...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// suggest names the nearest of what is known, and all of it.
func suggest(noun, id string, known []string) string {
	choose := "choose one"
	if near, ok := jobfile.Nearest(id, known); ok {
		choose = "did you mean " + near + "?"
	}
	return fmt.Sprintf("%s (%s: %s)", choose, noun, strings.Join(known, ", "))
}

func (s LedgerSheet) isSign() bool { return len(s.Hang) > 0 && !s.Gone }

// Hangs reports whether paper of the sheet hangs, of whatever revision.
func (s LedgerSheet) Hangs() bool { return slices.ContainsFunc(s.Posted, isUp) }

func isUp(m Mark) bool { return m.Until == "" }

// printedBy is the revision of the paper that was there by a day, and whether the sheet says something else since. When two makes on one day
// said different things, it is the later one.
func (s LedgerSheet) printedBy(on string) (revision int, outdated bool) {
	for _, before := range s.Earlier {
		if on < before.Until {
			return before.Revision, before.Revision != s.Revision || before.Digest != s.Digest
		}
	}
	return s.Revision, s.Gone
}

// marked is the mark with its revision, and the sheet with the next one when the paper with this one turns out to say something else.
func (s LedgerSheet) marked(m Mark) (LedgerSheet, Noted) {
	noted := Noted{Mark: m}
	noted.Mark.Revision, noted.Outdated = s.printedBy(m.On)
	if noted.Outdated && noted.Mark.Revision == s.Revision && !s.Gone {
		s.Revision++
	}
	return s, noted
}

func (s LedgerSheet) post(m Mark) Noted {
	after, noted := s.marked(m)
	same := func(old Mark) bool { return old.Revision == noted.Mark.Revision && isUp(old) }
	if i := slices.IndexFunc(s.Posted, same); i >= 0 {
		return Noted{Sheet: s, Mark: s.Posted[i], Already: true, Outdated: s.outdated(s.Posted[i])}
	}
	after.Posted = oneUp(append(slices.Clone(s.Posted), noted.Mark))
	noted.Sheet = after
	return noted
}

// oneUp leaves only the highest revision hanging: it hangs where the others hung, so they came down when it went up.
func oneUp(marks []Mark) []Mark {
	newest := slices.MaxFunc(slices.DeleteFunc(slices.Clone(marks), func(m Mark) bool { return !isUp(m) }),
		func(a, b Mark) int { return cmp.Compare(a.Revision, b.Revision) })
	for i, m := range marks {
		if isUp(m) && m.Revision < newest.Revision {
			marks[i].Until = max(m.On, newest.On)
		}
	}
	return marks
}

// takeDown ends the marks of paper that is out: what hangs, or what homes have of a sheet that does not hang.
func (s LedgerSheet) takeDown(on string) (Noted, error) {
	if i := slices.IndexFunc(s.Posted, isUp); i >= 0 {
		s.Posted = slices.Clone(s.Posted)
		return s.end(s.Posted, i, on)
	}
	if i := slices.IndexFunc(s.Handed, isUp); i >= 0 {
		s.Handed = slices.Clone(s.Handed)
		noted, err := s.end(s.Handed, i, on)
		for k, m := range s.Handed {
			if isUp(m) && m.On <= on {
				s.Handed[k].Until = on
			}
		}
		return noted, err
	}
	return Noted{}, fmt.Errorf("as far as the ledger knows, %s is not out; leave it out, or note first when it went up", s.ID)
}

func (s LedgerSheet) end(marks []Mark, i int, on string) (Noted, error) {
	if on < marks[i].On {
		return Noted{}, fmt.Errorf("%s went out only on %s, so it did not come down on %s; correct the day", s.ID, marks[i].On, on)
	}
	marks[i].Until = on
	return Noted{Sheet: s, Mark: marks[i], Outdated: s.outdated(marks[i])}, nil
}

func (s LedgerSheet) handOver(m Mark) (Noted, error) {
	if len(s.Hang) > 0 {
		return Noted{}, fmt.Errorf("%s hangs at a door and is handed to nobody; note it with doorleaf posted", s.ID)
	}
	if len(s.For) > 0 && !slices.Contains(s.For, m.Home) {
		return Noted{}, fmt.Errorf("%s is not for the home %s; name a sheet that is", s.ID, m.Home)
	}
	after, noted := s.marked(m)
	if keepsMarks(s.Handed, []Mark{noted.Mark}) {
		return Noted{Sheet: s, Mark: noted.Mark, Already: true, Outdated: noted.Outdated}, nil
	}
	after.Handed = append(slices.Clone(s.Handed), noted.Mark)
	noted.Sheet = after
	return noted, nil
}

// forVisit are the sheets that a visit to a home is about: those of the last make that the home has not got, or else those that it got last. A
// receipt goes back with whoever brought it, so it is none.
func (j LedgerJob) forVisit(home string) []string {
	var missing, last []string
	latest := ""
	for _, sheet := range j.Sheets {
		if sheet.Gone || !slices.Contains(sheet.For, home) || notices.Kind(sheet.Kind).Traits().GoesBack {
			continue
		}
		mark, got := sheet.lastHanded(home)
		if !got || mark.Revision < sheet.Revision {
			missing = append(missing, sheet.ID)
			continue
		}
		if mark.On > latest {
			latest, last = mark.On, nil
		}
		if mark.On == latest {
			last = append(last, sheet.ID)
		}
	}
	if len(missing) > 0 {
		return missing
	}
	return last
}

// lastHanded is the latest mark of the highest revision that a home got.
func (s LedgerSheet) lastHanded(home string) (Mark, bool) {
	var last Mark
	for _, m := range s.Handed {
		if m.Home == home && (m.Revision > last.Revision || m.Revision == last.Revision && m.On >= last.On) {
			last = m
		}
	}
	return last, last.Revision > 0
}

func (s LedgerSheet) outdated(m Mark) bool { return s.Gone || m.Revision < s.Revision }

// replaced is the last revision below the current one whose paper went out, and the latest day on which it did; 0 and "" when none did.
func (s LedgerSheet) replaced() (revision int, on string) {
	for _, m := range slices.Concat(s.Posted, s.Handed) {
		if m.Revision >= s.Revision || m.Revision < revision {
			continue
		}
		if m.Revision > revision {
			revision, on = m.Revision, ""
		}
		on = max(on, m.On)
	}
	return revision, on
}

// A Paper is a sheet that hangs, or that a home has.
type Paper struct {
	Sheet    LedgerSheet
	Mark     Mark // Home is "" for what hangs
	Outdated bool // it says something else than the job now
}

// Out is all paper of the job that hangs or is in a home, by sheet. Of each home it is the last that it got.
func (j LedgerJob) Out() []Paper {
	var all []Paper
	for _, sheet := range j.Sheets {
		for _, m := range sheet.Posted {
			if isUp(m) {
				all = append(all, Paper{sheet, m, sheet.outdated(m)})
			}
		}
		for _, home := range sheet.homes() {
			if m, got := sheet.lastHanded(home); got && isUp(m) {
				all = append(all, Paper{sheet, m, sheet.outdated(m)})
			}
		}
	}
	return all
}

// homes are those that got the sheet, each once.
func (s LedgerSheet) homes() []string {
	var all []string
	for _, m := range s.Handed {
		if !slices.Contains(all, m.Home) {
			all = append(all, m.Home)
		}
	}
	return all
}

// putRight is the paper that is out and no longer right, by place. What a home has of a sheet that the job no longer has is settled once it got
// another: a done note, say, after a request.
func (p press) putRight(job LedgerJob) []RepairRecord {
	var all []RepairRecord
	for _, paper := range job.Out() {
		home, sheet := paper.Mark.Home, paper.Sheet
		if !paper.Outdated || sheet.Gone && home != "" && job.gotSince(home, paper.Mark.On) {
			continue
		}
		repair := RepairRecord{Where: p.place(sheet, home), Home: home, Sheet: sheet.ID, Title: titleOf(sheet.Kind), TakeAway: paper.Mark.Revision, Since: paper.Mark.On}
		if !sheet.Gone {
			repair.Bring = sheet.Revision
		}
		all = append(all, repair)
	}
	slices.SortStableFunc(all, func(a, b RepairRecord) int { return cmp.Or(cmp.Compare(a.Home, b.Home), cmp.Compare(a.Where, b.Where)) })
	return all
}

// gotSince reports whether a home got a sheet of the last make on a day or later.
func (j LedgerJob) gotSince(home, day string) bool {
	return slices.ContainsFunc(j.Sheets, func(s LedgerSheet) bool {
		m, got := s.lastHanded(home)
		return got && !s.Gone && m.Revision == s.Revision && m.On >= day
	})
}

// place is where a remembered sheet belongs, in the coordinator's words: its door, or whom it was given to.
func (p press) place(sheet LedgerSheet, home string) string {
	if len(sheet.Hang) == 0 {
		return cmp.Or(sheet.To, home, strings.Join(sheet.For, ", "), "Anybody")
	}
	door := p.word(notices.Way(sheet.Hang[0]).Word())
	if sheet.Area == "" {
		return door
	}
	return fmt.Sprintf("%s, for the %s", door, p.english(notices.Area(sheet.Area).Word()))
}

// Note changes the ledger of a programme. It holds the ledger meanwhile, so that nothing that another doorleaf notes is lost.
func (f Folder) Note(change func(Ledger) (Ledger, error)) error {
	release, err := f.hold()
	if err != nil {
		return err
	}
	defer release()
	path := filepath.Join(f.Path, LedgerFile)
	ledger, err := ReadLedger(path)
	if err != nil {
		return err
	}
	if ledger, err = change(ledger); err != nil {
		return err
	}
	return WriteLedger(path, ledger)
}

// ledgerLock is held by whoever is about to change the ledger.
const ledgerLock = ".doorleaf-ledger-lock"

// hold keeps every other doorleaf from changing the ledger until release is called. What a killed one left half written is cleared away.
func (f Folder) hold() (release func(), err error) {
	if _, err := os.Stat(f.Path); err != nil {
		return nil, fmt.Errorf("cannot open the programme folder: %w", err)
	}
	lock, locked, err := lockAt(filepath.Join(f.Path, ledgerLock))
	if err != nil {
		return nil, fmt.Errorf("cannot lock the ledger: %w", err)
	}
	if !locked {
		return nil, fmt.Errorf("another doorleaf is working in %s; wait until it is done and try again, nothing was changed", f.Path)
	}
	f.clearHalfWritten()
	return func() { lock.Close() }, nil
}

func (f Folder) clearHalfWritten() {
	entries, _ := os.ReadDir(f.Path) // what cannot be listed can stay
	for _, entry := range entries {
		for _, name := range []string{LedgerFile, LedgerFile + backupSuffix} {
			if ours, _ := filepath.Match(halfWritten(name), entry.Name()); ours {
				os.Remove(filepath.Join(f.Path, entry.Name()))
			}
		}
	}
}
