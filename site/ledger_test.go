package site

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/doorleaf/notices"
)

var aprilFirst = notices.Date{Year: 2027, Month: 4, Day: 1}

const aToken = "482109371158"

// A house is what a history changes between makes: what a job says, and where its paper is.
type house struct {
	ledger Ledger
	pages  []string
	facts  []SheetFacts
	dates  string
	today  notices.Date
}

func (h *house) make() {
	h.ledger = h.ledger.With("alder-14", aToken, h.pages, h.facts, h.dates, h.today)
}

// post marks a sheet as put up today, as a later verb will.
func (h *house) post(sheet int) {
	job, _ := h.ledger.Job("alder-14")
	job.Sheets = slices.Clone(job.Sheets)
	s := &job.Sheets[sheet]
	s.Posted = append(slices.Clone(s.Posted), Mark{s.Revision, h.today.String()})
	h.ledger = h.ledger.withJob(job)
}

func drawHouse(t *rapid.T, h house) house {
	page := rapid.SampledFrom([]string{"ES/WINDOWS", "EN/WINDOWS", "VI/PETS", "EN/STAYOUT", "ES/PETS"})
	h.pages, h.facts = nil, nil
	for _, p := range rapid.SliceOfDistinct(page, rapid.ID).Draw(t, "pages") {
		h.pages = append(h.pages, aToken+"/"+p+"/")
	}
	for _, id := range rapid.SliceOfDistinct(rapid.SampledFrom([]string{"s1", "s2", "s3"}), rapid.ID).Draw(t, "sheets") {
		h.facts = append(h.facts, SheetFacts{id, rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "facts of "+id)})
	}
	h.dates = rapid.SampledFrom([]string{"may", "june"}).Draw(t, "dates")
	h.today = h.today.Plus(rapid.IntRange(0, 9).Draw(t, "days later"))
	return h
}

func TestLedgerOnlyGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := house{today: aprilFirst}
		for range rapid.IntRange(1, 8).Draw(t, "steps") {
			before := h.ledger
			job, _ := before.Job("alder-14")
			if len(job.Sheets) > 0 && rapid.Bool().Draw(t, "post") {
				h.post(rapid.IntRange(0, len(job.Sheets)-1).Draw(t, "sheet"))
				before = h.ledger
			}
			text := encodeLedger(before)
			h = drawHouse(t, h)
			h.make()
			checkGrowth(t, before, h)
			if !bytes.Equal(text, encodeLedger(before)) {
				t.Fatal("a make changed the ledger before it")
			}
		}
	})
}

func checkGrowth(t *rapid.T, before Ledger, h house) {
	was, _ := before.Job("alder-14")
	is, _ := h.ledger.Job("alder-14")
	for _, address := range slices.Concat(was.Pages, h.pages) {
		if !slices.Contains(is.Pages, address) {
			t.Fatalf("the address %s is lost", address)
		}
		if withdrawn := slices.Contains(h.ledger.Withdrawn("alder-14", h.pages), address); withdrawn == slices.Contains(h.pages, address) {
			t.Fatalf("%s is withdrawn: %v", address, withdrawn)
		}
	}
	for _, old := range was.Sheets {
		sheet, _ := is.Sheet(old.ID)
		posted := slices.ContainsFunc(old.Posted, func(m Mark) bool { return m.Revision == old.Revision })
		want := old.Revision
		if posted && sheet.Digest != old.Digest {
			want++
		}
		if sheet.Revision != want || !slices.Equal(sheet.Posted, old.Posted) {
			t.Fatalf("sheet was %+v and is %+v", old, sheet)
		}
	}
	if changed := is.DatesChangedOn == h.today.String(); was.DatesDigest != "" && was.DatesDigest != h.dates && !changed {
		t.Fatalf("dates changed on %s, but the ledger says %q", h.today, is.DatesChangedOn)
	}
	again := h
	again.today = h.today.Plus(1)
	again.make()
	if !reflect.DeepEqual(again.ledger, h.ledger) {
		t.Fatalf("the same facts a day later changed the ledger")
	}
	if back, err := decodeLedger(encodeLedger(h.ledger)); err != nil || !reflect.DeepEqual(back, h.ledger) {
		t.Fatalf("read back: %+v, %v", back, err)
	}
}

func TestRevisionRisesOnlyWhenPaperIsOut(t *testing.T) {
	h := house{today: aprilFirst, dates: "may", facts: []SheetFacts{{"s1", "first"}}}
	revision := func() int {
		job, _ := h.ledger.Job("alder-14")
		sheet, _ := job.Sheet("s1")
		return sheet.Revision
	}
	for _, step := range []struct {
		facts string
		post  bool
		want  int
	}{{"first", false, 1}, {"second", true, 1}, {"third", false, 2}, {"fourth", true, 2}, {"fourth", false, 2}, {"first", false, 3}} {
		h.facts[0].Digest = step.facts
		h.make()
		if revision() != step.want {
			t.Errorf("after %q: revision %d, want %d", step.facts, revision(), step.want)
		}
		if step.post {
			h.post(0)
		}
	}
}

func TestDatesChangedOn(t *testing.T) {
	h := house{today: aprilFirst}
	for i, step := range []struct{ dates, want string }{{"may", ""}, {"may", ""}, {"june", "2027-04-03"}, {"june", "2027-04-03"}, {"may", "2027-04-05"}} {
		h.today, h.dates = aprilFirst.Plus(i), step.dates
		h.make()
		if job, _ := h.ledger.Job("alder-14"); job.DatesChangedOn != step.want {
			t.Errorf("make %d: %q, want %q", i+1, job.DatesChangedOn, step.want)
		}
	}
}

func someLedger(page string) Ledger {
	return Ledger{}.With("alder-14", aToken, []string{page}, []SheetFacts{{"s1", "a"}}, "may", aprilFirst)
}

func newLedger(t *testing.T) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), LedgerFile)
	if err := MakeLedger(path); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestLedgerIsReadAsWritten(t *testing.T) {
	path := newLedger(t)
	first := someLedger("482109371158/ES/WINDOWS/")
	second := first.With("elm-2", "000000000017", nil, nil, "", aprilFirst)
	for _, ledger := range []Ledger{first, second} {
		if err := WriteLedger(path, ledger); err != nil {
			t.Fatal(err)
		}
		if got, err := ReadLedger(path); err != nil || !reflect.DeepEqual(got, ledger) {
			t.Errorf("got %+v, error %v", got, err)
		}
	}
	if backup, err := ReadLedger(path + ".bak"); err != nil || !reflect.DeepEqual(backup, first) {
		t.Errorf("backup %+v, error %v", backup, err)
	}
}

func TestUnchangedLedgerIsNotWritten(t *testing.T) {
	path := newLedger(t)
	ledger := someLedger("482109371158/ES/WINDOWS/")
	if err := WriteLedger(path, ledger); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(path + ".bak"); err != nil {
		t.Fatal(err)
	}
	before := mustStat(t, path)
	if err := WriteLedger(path, ledger); err != nil {
		t.Fatal(err)
	}
	if !os.SameFile(before, mustStat(t, path)) {
		t.Error("the file was replaced")
	}
	if _, err := os.Stat(path + ".bak"); err == nil {
		t.Error("a backup of the same ledger was written")
	}
}

func mustStat(t *testing.T, path string) fs.FileInfo {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	return info
}

func TestMissingLedgerIsNeverReplaced(t *testing.T) {
	path := filepath.Join(t.TempDir(), LedgerFile)
	if _, err := ReadLedger(path); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), ".bak") {
		t.Errorf("read: %v", err)
	}
	if err := WriteLedger(path, someLedger("x")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("write: %v", err)
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("a ledger was made")
	}
}

func TestMakeLedgerKeepsAnExistingLedger(t *testing.T) {
	path := newLedger(t)
	ledger := someLedger("482109371158/ES/WINDOWS/")
	if err := WriteLedger(path, ledger); err != nil {
		t.Fatal(err)
	}
	if err := MakeLedger(path); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if got, err := ReadLedger(path); err != nil || !reflect.DeepEqual(got, ledger) {
		t.Errorf("got %+v, error %v", got, err)
	}
}

func TestDamagedLedgerIsRefused(t *testing.T) {
	good := string(encodeLedger(someLedger("482109371158/ES/WINDOWS/")))
	for name, c := range map[string]struct{ text, want string }{
		"empty":   {"", "rename doorleaf.ledger.json.bak"},
		"cut off": {good[:len(good)-9], "rename doorleaf.ledger.json.bak"},
		"edited":  {strings.Replace(good, "ES/WINDOWS", "VI/WINDOWS", 1), "rename doorleaf.ledger.json.bak"},
		"no jobs": {`{"doorleaf": 1, "sha256": "", "jobs": []}`, "rename doorleaf.ledger.json.bak"},
		"newer":   {strings.Replace(good, `"doorleaf": 1`, `"doorleaf": 2`, 1), "newer doorleaf"},
	} {
		path := newLedger(t)
		os.WriteFile(path, []byte(c.text), 0o600)
		_, err := ReadLedger(path)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v", name, err)
		}
		if err := WriteLedger(path, someLedger("x")); err == nil {
			t.Errorf("%s: was overwritten", name)
		}
	}
	var compact bytes.Buffer
	if err := json.Compact(&compact, []byte(good)); err != nil {
		t.Fatal(err)
	}
	if _, err := decodeLedger(compact.Bytes()); err != nil {
		t.Errorf("another layout of the same ledger: %v", err)
	}
}

func TestWriteLedgerForgetsNothing(t *testing.T) {
	path := newLedger(t)
	mine, theirs := someLedger("482109371158/ES/WINDOWS/"), someLedger("482109371158/VI/WINDOWS/")
	if err := WriteLedger(path, theirs); err != nil {
		t.Fatal(err)
	}
	if err := WriteLedger(path, mine); err == nil || !strings.Contains(err.Error(), "run make again") {
		t.Errorf("error %v", err)
	}
	if got, err := ReadLedger(path); err != nil || !reflect.DeepEqual(got, theirs) {
		t.Errorf("got %+v, error %v", got, err)
	}
}

func ExampleLedger_With() {
	ledger := Ledger{}.With("alder-14", "482109371158", []string{"482109371158/ES/WINDOWS/"}, nil, "may", aprilFirst)
	ledger = ledger.With("alder-14", "482109371158", []string{"482109371158/EN/WINDOWS/"}, nil, "may", aprilFirst.Plus(3))
	fmt.Println(ledger.Withdrawn("alder-14", []string{"482109371158/EN/WINDOWS/"}))
	// Output: [482109371158/ES/WINDOWS/]
}
