package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/doorleaf/notices"
)

const aSign = "sign-hall-front_door-en"

// aMadeJob is a ledger after the first make of a job with a letter, a request and a sign.
func aMadeJob(facts string) Ledger {
	return remade(Ledger{}, facts, aprilFirst)
}

func remade(ledger Ledger, facts string, on notices.Date) Ledger {
	var all []SheetFacts
	for _, id := range someSheets[:3] {
		all = append(all, factsFor(id, facts))
	}
	return ledger.With("alder-14", aToken, []string{aToken + "/EN/WIN/"}, all, facts, on)
}

func mustPost(t *testing.T, ledger Ledger, on notices.Date, ids ...string) Ledger {
	t.Helper()
	after, _, err := ledger.Post("alder-14", ids, on, "RM")
	if err != nil {
		t.Fatal(err)
	}
	return after
}

func mustHand(t *testing.T, ledger Ledger, home string, on notices.Date, ids ...string) Ledger {
	t.Helper()
	after, _, err := ledger.HandOver("alder-14", Visit{ids, Mark{Home: home, On: on.String(), How: "left", By: "RM"}})
	if err != nil {
		t.Fatal(err)
	}
	return after
}

func sheetOf(ledger Ledger, id string) LedgerSheet {
	job, _ := ledger.Job("alder-14")
	sheet, _ := job.Sheet(id)
	return sheet
}

func TestANewRevisionHangsInThePlaceOfTheOld(t *testing.T) {
	ledger := mustPost(t, aMadeJob("may"), aprilFirst.Plus(2))
	ledger = mustPost(t, remade(ledger, "june", aprilFirst.Plus(4)), aprilFirst.Plus(6))
	want := []Mark{{Revision: 1, On: "2027-04-03", Until: "2027-04-07", By: "RM"}, {Revision: 2, On: "2027-04-07", By: "RM"}}
	if got := sheetOf(ledger, aSign).Posted; !slices.Equal(got, want) {
		t.Errorf("marks %+v, want %+v", got, want)
	}
	late := mustPost(t, ledger, aprilFirst.Plus(1))
	want = append(want, Mark{Revision: 1, On: "2027-04-02", Until: "2027-04-07", By: "RM"})
	if got := sheetOf(late, aSign).Posted; !slices.Equal(got, want) {
		t.Errorf("noted late: %+v, want %+v", got, want)
	}
}

func TestPaperOfAnEarlierDayIsReplaced(t *testing.T) {
	ledger := remade(aMadeJob("may"), "june", aprilFirst.Plus(4))
	for _, c := range []struct {
		day                    int
		wantMark, wantRevision int
		wantOutdated           bool
	}{{3, 1, 2, true}, {4, 1, 1, false}, {5, 1, 1, false}} {
		after, noted, err := ledger.Post("alder-14", nil, aprilFirst.Plus(c.day), "")
		sheet := sheetOf(after, aSign)
		if err != nil || len(noted) != 1 || noted[0].Mark.Revision != c.wantMark || sheet.Revision != c.wantRevision || noted[0].Outdated != c.wantOutdated {
			t.Errorf("hung %d days after the first make: %+v, revision %d, error %v", c.day, noted, sheet.Revision, err)
		}
		if again := remade(after, "june", aprilFirst.Plus(9)); sheetOf(again, aSign).Revision != c.wantRevision {
			t.Errorf("made again, the revision is %d", sheetOf(again, aSign).Revision)
		}
	}
	back := remade(ledger, "may", aprilFirst.Plus(5))
	if _, noted, err := back.Post("alder-14", nil, aprilFirst.Plus(1), ""); err != nil || noted[0].Outdated {
		t.Errorf("the job says again what that paper says: %+v, error %v", noted, err)
	}
}

func TestReplacedNamesTheLastDay(t *testing.T) {
	ledger := mustHand(t, aMadeJob("may"), "n12", aprilFirst.Plus(2))
	ledger = mustHand(t, ledger, "n12", aprilFirst.Plus(3))
	ledger = remade(ledger, "june", aprilFirst.Plus(4))
	for id, want := range map[string]struct {
		revision int
		on       string
	}{"request-n12": {1, "2027-04-04"}, "letter-h1": {0, ""}, aSign: {0, ""}} {
		if revision, on := sheetOf(ledger, id).replaced(); revision != want.revision || on != want.on {
			t.Errorf("%s replaces revision %d of %q, want %v", id, revision, on, want)
		}
	}
}

// Door by door and home by home, until it is done.
func TestPutRight(t *testing.T) {
	ledger := mustPost(t, aMadeJob("may"), aprilFirst)
	ledger = mustHand(t, mustHand(t, ledger, "n12", aprilFirst), "h1", aprilFirst)
	check := func(what string, want ...string) {
		t.Helper()
		var got []string
		job, _ := ledger.Job("alder-14")
		for _, r := range deskPress(t).putRight(job) {
			got = append(got, fmt.Sprintf("%s|%s|%s %d %s %d", r.Where, r.Home, r.Sheet, r.TakeAway, r.Since, r.Bring))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", what, got, want)
		}
	}
	check("nothing changed")
	ledger = remade(ledger, "june", aprilFirst.Plus(1))
	sign, letter, request := "Front door, for the hallway||sign-hall-front_door-en 1 2027-04-01 2", "The Lam family|h1|letter-h1 1 2027-04-01 2", "12 Alder Court|n12|request-n12 1 2027-04-01 2"
	check("everything changed", sign, letter, request)
	ledger = mustHand(t, ledger, "n12", aprilFirst.Plus(2))
	check("the neighbour is told", sign, letter)
	ledger = mustPost(t, ledger, aprilFirst.Plus(2))
	check("the sign hangs", letter)
	done := SheetFacts{ID: "done-n12", Digest: "x", Kind: "done_note", For: []string{"n12"}, To: "12 Alder Court"}
	ledger = ledger.With("alder-14", aToken, nil, []SheetFacts{done, factsFor("letter-h1", "june")}, "june", aprilFirst.Plus(3))
	check("after the pass", "Front door, for the hallway||sign-hall-front_door-en 2 2027-04-03 0", letter, "12 Alder Court|n12|request-n12 2 2027-04-03 0")
	ledger = mustHand(t, ledger, "n12", aprilFirst.Plus(4), "done-n12")
	after, _, err := ledger.TakeDown("alder-14", nil, aprilFirst.Plus(4))
	if err != nil {
		t.Fatal(err)
	}
	ledger = after
	check("the done note is there and the sign is down", letter)
	if after, _, err = ledger.TakeDown("alder-14", []string{"letter-h1"}, aprilFirst.Plus(4)); err != nil {
		t.Fatal(err)
	}
	ledger = after
	check("the letter is taken back")
}

func deskPress(t *testing.T) press {
	t.Helper()
	kit, err := NewKit(notices.Programme{}, "", os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	return press{kit: kit}
}

func TestRefusedNotesChangeNothing(t *testing.T) {
	ledger := mustPost(t, aMadeJob("may"), aprilFirst.Plus(1))
	text := string(encodeLedger(ledger))
	visit := func(home string, ids ...string) Visit {
		return Visit{ids, Mark{Home: home, On: "2027-04-01", How: "left", By: "RM"}}
	}
	for want, err := range map[string]error{
		`no sheet "sign-hall-frontdoor-en"; did you mean sign-hall-front_door-en?`: third(ledger.Post("alder-14", []string{aSign, "sign-hall-frontdoor-en"}, aprilFirst, "")),
		"knows no sheet of job elm-2":   third(ledger.Post("elm-2", nil, aprilFirst, "")),
		"letter-h1 is no sign":          third(ledger.Post("alder-14", []string{"letter-h1"}, aprilFirst, "")),
		"went out only on 2027-04-02":   third(ledger.TakeDown("alder-14", nil, aprilFirst)),
		"letter-h1 is not out":          third(ledger.TakeDown("alder-14", []string{"letter-h1"}, aprilFirst)),
		`no sheet for a home "n21"`:     third(ledger.HandOver("alder-14", visit("n12"), visit("n21"))),
		"is not for the home h1":        third(ledger.HandOver("alder-14", visit("h1", "request-n12"))),
		"is handed to nobody":           third(ledger.HandOver("alder-14", visit("h1", aSign))),
		"had no sheet for the home n12": third(ledger.With("alder-14", aToken, nil, nil, "", aprilFirst).HandOver("alder-14", visit("n12"))),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %q", err, want)
		}
	}
	if string(encodeLedger(ledger)) != text {
		t.Error("the ledger changed")
	}
}

func third(after Ledger, noted []Noted, err error) error { return err }

// A ledger of before paper had places is read, kept, and filled in by the next make.
func TestLedgerOfBeforeStillCounts(t *testing.T) {
	jobs := `[{"code":"alder-14","token":"482109371158","pages":["482109371158/EN/WIN/"],"dates_digest":"may","dates_changed_on":"","sheets":[` +
		`{"id":"sign-hall-front_door-en","digest":"may","revision":1,"posted":[{"revision":1,"on":"2027-04-01"}],"handed":[]}]}]`
	ledger, err := decodeLedger(fmt.Appendf(nil, `{"doorleaf": 1, "note": "", "sha256": %q, "jobs": %s}`, digest([]byte(jobs)), jobs))
	if err != nil {
		t.Fatal(err)
	}
	if sheet := sheetOf(remade(ledger, "june", aprilFirst.Plus(3)), aSign); sheet.Revision != 2 || !sheet.Hangs() || sheet.Area != "hallway" {
		t.Errorf("sheet %+v", sheet)
	}
}

// Whatever the step at which a note is killed, the ledger is the old one or the new one, whole, and the next note works and leaves nothing behind.
func TestKilledNote(t *testing.T) {
	before := aMadeJob("may")
	after := mustPost(t, before, aprilFirst)
	steps := 0
	for n := 1; ; n++ {
		path := newLedger(t)
		if err := WriteLedger(path, before); err != nil {
			t.Fatal(err)
		}
		if finished := noteUntil(t, path, after, n, func() error { panic(killed{}) }); finished {
			break
		}
		steps++
		if got, err := ReadLedger(path); err != nil || !reflect.DeepEqual(got, before) {
			t.Errorf("killed at step %d: %+v, error %v", n, got, err)
		}
		folder := Folder{Path: filepath.Dir(path)}
		if err := folder.Note(func(Ledger) (Ledger, error) { return after, nil }); err != nil {
			t.Errorf("killed at step %d, the next note: %v", n, err)
		}
		if got, err := ReadLedger(path); err != nil || !reflect.DeepEqual(got, after) {
			t.Errorf("killed at step %d, the next note left %+v, error %v", n, got, err)
		}
		if backup, err := ReadLedger(path + backupSuffix); err != nil || !reflect.DeepEqual(backup, before) {
			t.Errorf("killed at step %d, the backup is %+v, error %v", n, backup, err)
		}
		if left := namesIn(t, folder.Path); !slices.Equal(left, []string{ledgerLock, LedgerFile, LedgerFile + backupSuffix}) {
			t.Errorf("killed at step %d, there is %v", n, left)
		}
	}
	if steps != 4 {
		t.Errorf("%d steps, want 4: write and rename of backup and ledger", steps)
	}
}

func noteUntil(t *testing.T, path string, ledger Ledger, n int, end func() error) (finished bool) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil && r != (killed{}) {
			panic(r)
		}
	}()
	step := 0
	if err := writeLedger(path, ledger, func(string) error {
		if step++; step == n {
			return end()
		}
		return nil
	}); err != nil {
		t.Error(err)
	}
	return true
}

func namesIn(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, entry := range entries {
		names = append(names, entry.Name())
	}
	return names
}

// A disk that fails at any step leaves the ledger as it was.
func TestFailedNoteChangesNothing(t *testing.T) {
	before := aMadeJob("may")
	for n := 1; n <= 4; n++ {
		path := newLedger(t)
		if err := WriteLedger(path, before); err != nil {
			t.Fatal(err)
		}
		step := 0
		err := writeLedger(path, mustPost(t, before, aprilFirst), func(string) error {
			if step++; step == n {
				return errors.New("the disk says no")
			}
			return nil
		})
		if err == nil || !strings.Contains(err.Error(), "the disk says no") {
			t.Errorf("step %d: error %v", n, err)
		}
		if got, err := ReadLedger(path); err != nil || !reflect.DeepEqual(got, before) {
			t.Errorf("step %d: %+v, error %v", n, got, err)
		}
	}
}

func TestOneNoteAtATime(t *testing.T) {
	path := newLedger(t)
	folder := Folder{Path: filepath.Dir(path)}
	var second error
	err := folder.Note(func(ledger Ledger) (Ledger, error) {
		second = folder.Note(func(Ledger) (Ledger, error) { return aMadeJob("may"), nil })
		return ledger, nil
	})
	if err != nil || second == nil || !strings.Contains(second.Error(), "another doorleaf is working in "+folder.Path) {
		t.Errorf("first: %v, second: %v", err, second)
	}
	if got, err := ReadLedger(path); err != nil || len(got.Jobs) > 0 {
		t.Errorf("the second note came through: %+v, %v", got, err)
	}
	if err := folder.Note(func(Ledger) (Ledger, error) { return aMadeJob("may"), nil }); err != nil {
		t.Errorf("afterwards: %v", err)
	}
}

const noteIn = "DOORLEAF_TEST_NOTE_IN"

// The same with a process of its own that the system kills, lock and all.
func TestKilledNotingProcess(t *testing.T) {
	if dir := os.Getenv(noteIn); dir != "" {
		noteForEver(t, dir)
	}
	path := newLedger(t)
	folder := Folder{Path: filepath.Dir(path)}
	for n := range 8 {
		noter := exec.Command(os.Args[0], "-test.run=^TestKilledNotingProcess$")
		noter.Env = append(os.Environ(), noteIn+"="+folder.Path)
		out, err := noter.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := noter.Start(); err != nil {
			t.Fatal(err)
		}
		fmt.Fscanln(out) // it has begun
		time.Sleep(time.Duration(n) * 700 * time.Microsecond)
		noter.Process.Kill()
		noter.Wait()
		var before Ledger
		if err := folder.Note(func(ledger Ledger) (Ledger, error) { before = ledger; return ledger, nil }); err != nil {
			t.Fatalf("after kill %d: %v", n, err)
		}
		if err := folder.Note(func(ledger Ledger) (Ledger, error) {
			return ledger.With(fmt.Sprintf("elm-%d", n), aToken, nil, nil, "", aprilFirst), nil
		}); err != nil {
			t.Fatalf("after kill %d: %v", n, err)
		}
		got, err := ReadLedger(path)
		if code, forgets := got.forgets(before); err != nil || forgets {
			t.Fatalf("after kill %d: %v, forgotten %q", n, err, code)
		}
	}
}

func noteForEver(t *testing.T, dir string) {
	fmt.Println()
	for day := 0; ; day++ {
		err := Folder{Path: dir}.Note(func(ledger Ledger) (Ledger, error) {
			ledger = remade(ledger, fmt.Sprint(day), aprilFirst.Plus(day))
			ledger, _, err := ledger.Post("alder-14", nil, aprilFirst.Plus(day), "")
			return ledger, err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

// A proof that somebody wrote on, cut off or linked elsewhere is never replaced.
func TestWriteSealed(t *testing.T) {
	page, newer := seal([]byte("<p>one</p>\n")), seal([]byte("<p>two</p>\n"))
	for name, c := range map[string]struct {
		there string
		kept  bool
	}{
		"ours":          {string(page), false},
		"edited":        {strings.Replace(string(page), "one", "1", 1), true},
		"written below": {string(page) + "<p>signed</p>", true},
		"cut off":       {string(page[:len(page)-1]), true},
		"seal alone":    {string(seal(nil)), true},
		"empty":         {"", true},
	} {
		path := filepath.Join(t.TempDir(), "alder-14.html")
		if err := os.WriteFile(path, []byte(c.there), 0o600); err != nil {
			t.Fatal(err)
		}
		err := writeSealed(path, newer)
		got, _ := os.ReadFile(path)
		if kept := string(got) == c.there; kept != c.kept || (err != nil) != c.kept {
			t.Errorf("%s: kept %v, error %v", name, kept, err)
		}
	}
}

// What noting is for stays in its documented form.
func TestMarksHaveTheDocumentedKeys(t *testing.T) {
	ledger := mustHand(t, mustPost(t, aMadeJob("may"), aprilFirst), "n12", aprilFirst)
	var text struct {
		Jobs []struct {
			Sheets []map[string]any `json:"sheets"`
		} `json:"jobs"`
	}
	if err := json.Unmarshal(encodeLedger(ledger), &text); err != nil {
		t.Fatal(err)
	}
	for _, sheet := range text.Jobs[0].Sheets {
		if sheet["id"] == nil || sheet["kind"] == nil || sheet["digest"] == nil || sheet["revision"] == nil || sheet["posted"] == nil || sheet["handed"] == nil {
			t.Errorf("sheet %v", sheet)
		}
	}
}
