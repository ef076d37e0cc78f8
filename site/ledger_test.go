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
	"strings"
	"testing"

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

// post marks a sheet as put up today.
func (h *house) post(id string) {
	after, _, err := h.ledger.Post("alder-14", []string{id}, h.today, "")
	if err != nil {
		panic(err)
	}
	h.ledger = after
}

func TestRevisionRisesOnlyWhenPaperIsOut(t *testing.T) {
	h := house{today: aprilFirst, dates: "may", facts: []SheetFacts{{ID: "s1", Digest: "first", Hang: []string{"front_door"}}}}
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
			h.post("s1")
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
	return Ledger{}.With("alder-14", aToken, []string{page}, []SheetFacts{{ID: "s1", Digest: "a"}}, "may", aprilFirst)
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
	if err := WriteLedger(path, mine); err == nil || !strings.Contains(err.Error(), "try again") {
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
