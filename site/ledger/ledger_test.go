package ledger

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
)

const (
	aSign    = "sign-hall-front_door-en"
	aRequest = "request-n12"
)

// newProgramme is a programme folder with an empty ledger.
func newProgramme(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := Create(dir); err != nil {
		t.Fatal(err)
	}
	return dir
}

func read(t *testing.T, dir, laptop string, today notices.Date) Job {
	t.Helper()
	job, err := Read(dir, "alder-14")
	if err != nil {
		t.Fatal(err)
	}
	return job.By(Writer{laptop, today})
}

func write(t *testing.T, dir string, job Job, err error) {
	t.Helper()
	if err == nil {
		err = Append(dir, job.Pending())
	}
	if err != nil {
		t.Fatal(err)
	}
}

// makes notes a make of a sign and a request with these facts, by a laptop.
func makes(t *testing.T, dir, laptop, digest string, today notices.Date) {
	t.Helper()
	write(t, dir, mustMake(t, read(t, dir, laptop, today), digest, aRequest, aSign), nil)
}

func hangs(t *testing.T, dir, laptop string, on notices.Date) {
	t.Helper()
	job, _, err := read(t, dir, laptop, on).Post(nil, on, "RM")
	write(t, dir, job, err)
}

func fileOf(dir, laptop string) string {
	return filepath.Join(dir, FolderName, "alder-14", laptop+ending)
}

func contents(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func put(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o700), os.WriteFile(path, data, 0o600)); err != nil {
		t.Fatal(err)
	}
}

// Two laptops that do not see each other make different sheets. Once their folders are one, whatever order the files have, the two papers with one number can be
// told apart, both are to be put right or one is, and the next number replaces both.
func TestTwoPapersWithOneNumber(t *testing.T) {
	one, two := newProgramme(t), newProgramme(t)
	makes(t, one, "k7qm", "a", aprilFirst)
	put(t, fileOf(two, "k7qm"), contents(t, fileOf(one, "k7qm")))
	makes(t, one, "k7qm", "b", aprilFirst.Plus(1))
	hangs(t, one, "k7qm", aprilFirst.Plus(1))
	makes(t, two, "q3xz", "c", aprilFirst.Plus(1))
	hangs(t, two, "q3xz", aprilFirst.Plus(1))
	put(t, fileOf(one, "q3xz"), contents(t, fileOf(two, "q3xz")))

	job := read(t, one, "bb22", aprilFirst.Plus(2))
	sheet, _ := job.Sheet(aSign)
	if got := sheet.Revision.String(); got != "2-Q3" {
		t.Errorf("the sign has the revision %s", got)
	}
	if wrong := job.Wrong(); len(wrong) != 1 || wrong[0].Mark.Revision.String() != "2-K7" {
		t.Errorf("to be put right: %+v", wrong)
	}
	after := mustMake(t, job, "d", aRequest, aSign)
	sheet, _ = after.Sheet(aSign)
	wrong := after.Wrong()
	if sheet.Revision.String() != "3" || len(wrong) != 2 || wrong[0].Mark.Revision.String() == wrong[1].Mark.Revision.String() {
		t.Errorf("the next sign has the revision %v; to be put right: %+v", sheet.Revision, wrong)
	}
	// The new sign goes up in place of both.
	hung, _, err := after.Post([]string{aSign}, aprilFirst.Plus(2), "RM")
	if err != nil || len(hung.Wrong()) != 0 {
		t.Errorf("hung, still to be put right: %+v, error %v", hung.Wrong(), err)
	}
}

// Facts that come back are right on paper too, but get a number that nobody has seen yet.
func TestFactsThatComeBack(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	hangs(t, dir, "k7qm", aprilFirst)
	makes(t, dir, "k7qm", "b", aprilFirst.Plus(1))
	if wrong := read(t, dir, "k7qm", aprilFirst).Wrong(); len(wrong) != 1 {
		t.Errorf("to be put right: %+v", wrong)
	}
	makes(t, dir, "k7qm", "a", aprilFirst.Plus(2))
	job := read(t, dir, "k7qm", aprilFirst)
	sheet, _ := job.Sheet(aSign)
	if sheet.Revision.Number != 3 || len(job.Wrong()) != 0 || !sheet.HangsNow() {
		t.Errorf("revision %v, to be put right: %+v, hangs: %v", sheet.Revision, job.Wrong(), sheet.HangsNow())
	}
}

// Noted late, an old sign came down when the new one went up; the new one hangs on.
func TestOldPaperNotedLate(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	makes(t, dir, "k7qm", "b", aprilFirst.Plus(3))
	hangs(t, dir, "k7qm", aprilFirst.Plus(4))
	job, noted, err := read(t, dir, "k7qm", aprilFirst.Plus(5)).Post(nil, aprilFirst.Plus(1), "RM")
	if err != nil {
		t.Fatal(err)
	}
	sheet, _ := job.Sheet(aSign)
	if noted[0].Mark.Until != "2027-04-05" || !sheet.HangsNow() || len(job.Wrong()) != 0 {
		t.Errorf("noted %+v; the new one hangs: %v; to be put right: %+v", noted[0].Mark, sheet.HangsNow(), job.Wrong())
	}
}

// Whatever byte of a file is cut off or turned over, the job stops and the line is named, or everything is as it was.
func TestDamageIsNamed(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	hangs(t, dir, "k7qm", aprilFirst)
	makes(t, dir, "q3xz", "b", aprilFirst.Plus(1)) // has seen both lines
	path := fileOf(dir, "k7qm")
	whole, want := contents(t, path), read(t, dir, "k7qm", aprilFirst)
	check := func(what string, at int, damaged []byte) {
		t.Helper()
		put(t, path, damaged)
		got, err := Read(dir, "alder-14")
		var bad *damage
		line := 1 + bytes.Count(whole[:min(at, len(whole)-2)], []byte("\n"))
		if what == "a cut" && whole[at] == '\n' {
			line++ // this one is whole, and the next is missing
		}
		switch {
		case err == nil && !reflect.DeepEqual(got.Sheets, want.Sheets):
			t.Errorf("%s at byte %d is taken as it is", what, at)
		case err != nil && (!errors.As(err, &bad) || bad.line != line):
			t.Errorf("%s at byte %d: %v", what, at, err)
		}
	}
	for at := range whole {
		check("a cut", at, whole[:at])
		for bit := range 8 {
			turned := bytes.Clone(whole)
			turned[at] ^= 1 << bit
			check("a turned bit", at, turned)
		}
	}
	put(t, path, bytes.ReplaceAll(whole, []byte("\n"), []byte("\r\n")))
	if got := read(t, dir, "k7qm", aprilFirst); !reflect.DeepEqual(got.Sheets, want.Sheets) {
		t.Error("line ends of another system change something")
	}
}

// Another job is not stopped by the damage of one.
func TestDamageStopsThatJobOnly(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	put(t, filepath.Join(dir, FolderName, "elm-2", "k7qm"+ending), []byte("cut"))
	read(t, dir, "k7qm", aprilFirst)
	if _, err := Read(dir, "elm-2"); err == nil || !strings.Contains(err.Error(), "elm-2/k7qm.jsonl:1: this line of the ledger is cut off or was edited") {
		t.Errorf("error %v", err)
	}
}

// A file that is missing, or that somebody brought back from an old copy, is noticed by what other laptops had seen.
func TestLostTailIsNoticed(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	old := contents(t, fileOf(dir, "k7qm"))
	hangs(t, dir, "k7qm", aprilFirst)
	makes(t, dir, "q3xz", "b", aprilFirst.Plus(1))
	const want = "is missing: laptop q3xz had read one with the number 2"
	put(t, fileOf(dir, "k7qm"), old)
	if _, err := Read(dir, "alder-14"); err == nil || !strings.Contains(err.Error(), "k7qm.jsonl:2: this line of the ledger "+want) {
		t.Errorf("an old copy: %v", err)
	}
	if err := os.Remove(fileOf(dir, "k7qm")); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(dir, "alder-14"); err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("no file: %v", err)
	}
}

// A sync service that finds two versions of a file keeps both under some name. Each line counts once, and those that only one of them has count too.
func TestConflictCopies(t *testing.T) {
	for _, name := range []string{"k7qm (conflicted copy 2027-04-01).jsonl", "k7qm.sync-conflict-20270401-120000-ABCDEFG.jsonl", "k7qm-LAPTOP.jsonl", "k7qm.jsonl.orig"} {
		dir := newProgramme(t)
		makes(t, dir, "k7qm", "a", aprilFirst)
		old := contents(t, fileOf(dir, "k7qm"))
		hangs(t, dir, "k7qm", aprilFirst)
		put(t, filepath.Join(dir, FolderName, "alder-14", name), contents(t, fileOf(dir, "k7qm")))
		put(t, fileOf(dir, "k7qm"), old)
		makes(t, dir, "k7qm", "b", aprilFirst.Plus(1))
		job := read(t, dir, "k7qm", aprilFirst)
		if wrong := job.Wrong(); len(wrong) != 1 || len(job.lines) != 3 {
			t.Errorf("%s: %d lines, to be put right %+v", name, len(job.lines), wrong)
		}
	}
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	put(t, filepath.Join(dir, FolderName, "alder-14", "notes.txt"), []byte("ring Rosa"))
	if _, err := Read(dir, "alder-14"); err == nil || !strings.Contains(err.Error(), "alder-14/notes.txt:1: ") {
		t.Errorf("a file of somebody: %v", err)
	}
}

// A text that JSON would change on the way is refused before anything is written: it would seal a line that nobody can read.
func TestTextThatWouldNotBeReadBack(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	before := contents(t, fileOf(dir, "k7qm"))
	job, noted, err := read(t, dir, "k7qm", aprilFirst).HandOver(Visit{Home: "n12", On: aprilFirst, How: "left", By: "RM", Why: "ni\xf1o"})
	if err == nil || len(job.Pending()) > 0 || len(noted) > 0 {
		t.Errorf("noted %+v, error %v", noted, err)
	}
	if !bytes.Equal(contents(t, fileOf(dir, "k7qm")), before) {
		t.Error("the file changed")
	}
}

// Lines of two jobs are written or none.
func TestAppendAllOrNone(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	before := contents(t, fileOf(dir, "k7qm"))
	alder := mustMake(t, read(t, dir, "k7qm", aprilFirst), "b", aSign)
	elm := mustMake(t, Job{Code: "elm-2"}.By(Writer{"k7qm", aprilFirst}), "a", aSign)
	put(t, filepath.Join(dir, FolderName, "elm-2"), []byte("a file where the folder goes"))
	if err := Append(dir, append(alder.Pending(), elm.Pending()...)); err == nil || !strings.Contains(err.Error(), "the ledger of job elm-2 cannot be written") {
		t.Errorf("error %v", err)
	}
	if !bytes.Equal(contents(t, fileOf(dir, "k7qm")), before) {
		t.Error("the ledger of the other job changed")
	}
	entries, _ := os.ReadDir(filepath.Join(dir, FolderName, "alder-14"))
	if len(entries) != 1 {
		t.Errorf("left behind: %v", entries)
	}
	// Written twice, lines stand there once.
	for range 2 {
		if err := Append(dir, alder.Pending()); err != nil {
			t.Fatal(err)
		}
	}
	if got := bytes.Count(contents(t, fileOf(dir, "k7qm")), []byte("\n")); got != 2 {
		t.Errorf("%d lines", got)
	}
}

// A struck mark counts for nothing, and stays on file. What it had ended is out again.
func TestStrike(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	hangs(t, dir, "k7qm", aprilFirst)
	makes(t, dir, "k7qm", "b", aprilFirst.Plus(1))
	hangs(t, dir, "k7qm", aprilFirst.Plus(2))
	job := read(t, dir, "k7qm", aprilFirst.Plus(3))
	last := job.Marks()[len(job.Marks())-1]
	after, slip, err := job.Strike(last.Name)
	write(t, dir, after, err)
	again := read(t, dir, "k7qm", aprilFirst.Plus(3))
	sheet, _ := again.Sheet(aSign)
	if slip.Name != last.Name || sheet.HangsNow() || !sheet.Hangs() || len(again.Wrong()) != 1 || len(again.Struck) != 1 || again.Struck[0].On != "2027-04-04" {
		t.Errorf("struck %+v; to be put right %+v, struck %+v", slip, again.Wrong(), again.Struck)
	}
	for _, name := range []string{last.Name, "k7qm-1", "k7qm-99"} {
		if _, _, err := again.Strike(name); err == nil || !strings.Contains(err.Error(), "no mark") {
			t.Errorf("%s could be struck: %v", name, err)
		}
	}
}

// The way back: a damaged file is put right in one step from what it has whole and from the copy beside it. No printed address is lost, nothing is deleted, and what is gone is
// accepted as gone.
func TestRestore(t *testing.T) {
	for name, c := range map[string]struct {
		damage func(data []byte) []byte
		copied bool // the copy is there
		kept   int
	}{
		"last line cut":        {func(d []byte) []byte { return d[:len(d)-9] }, true, 3},
		"no copy":              {func(d []byte) []byte { return d[:len(d)-9] }, false, 3},
		"first line edited":    {func(d []byte) []byte { return bytes.Replace(d, []byte("Alder"), []byte("Elder"), 1) }, true, 3},
		"first line, no copy":  {func(d []byte) []byte { return bytes.Replace(d, []byte("Alder"), []byte("Elder"), 1) }, false, 0},
		"second line edited":   {func(d []byte) []byte { return bytes.Replace(d, []byte("posted"), []byte("pasted"), 1) }, false, 1},
		"emptied, with a copy": {func([]byte) []byte { return nil }, true, 3},
	} {
		dir := newProgramme(t)
		makes(t, dir, "k7qm", "a", aprilFirst)
		hangs(t, dir, "k7qm", aprilFirst)
		makes(t, dir, "k7qm", "b", aprilFirst.Plus(1))
		job, err := read(t, dir, "k7qm", aprilFirst.Plus(1)).Made(Make{Token: aToken, Pages: []string{aToken + "/ES/WINDOWS/"}, Sheets: []Facts{factsFor(aSign, "c")}})
		write(t, dir, job, err)
		job, err = read(t, dir, "q3xz", aprilFirst.Plus(2)).Made(Make{Sheets: []Facts{factsFor(aSign, "d")}}) // has seen all four
		write(t, dir, job, err)
		damaged := c.damage(contents(t, fileOf(dir, "k7qm")))
		put(t, fileOf(dir, "k7qm"), damaged)
		if !c.copied {
			os.Remove(fileOf(dir, "k7qm") + copyEnding)
		}
		output := Output{Pages: []string{aToken + "/EN/HOME/"}}
		all, err := Restore(dir, "alder-14", Writer{"k7qm", aprilFirst.Plus(3)}, output)
		if err != nil || len(all) != 1 || all[0].Lines != c.kept {
			t.Errorf("%s: restored %+v, error %v", name, all, err)
			continue
		}
		if !bytes.Equal(contents(t, all[0].File), damaged) {
			t.Errorf("%s: the damaged file was not put aside as it was", name)
		}
		after := read(t, dir, "k7qm", aprilFirst.Plus(3))
		if want := aToken + "/EN/HOME/"; !slices.Contains(after.Pages, want) {
			t.Errorf("%s: the addresses are %v", name, after.Pages)
		}
		if readable := bytes.Contains(damaged, []byte("/ES/WINDOWS/")); readable && !slices.Contains(after.Pages, aToken+"/ES/WINDOWS/") {
			t.Errorf("%s: an address that stands in the damaged file is lost", name)
		}
		if sheet, _ := after.Sheet(aSign); sheet.Digest != "d" {
			t.Errorf("%s: the sign says %q", name, sheet.Digest)
		}
		makes(t, dir, "k7qm", "e", aprilFirst.Plus(3)) // and it goes on
	}
}

// A day that is more likely a slip is doubted: a clock that runs back, a year too many, a day before there was any sheet; and a code that is on paper for another house.
func TestDoubts(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	last := aprilFirst.Plus(30)
	at := func(day notices.Date) Job { return read(t, dir, "k7qm", day) }
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"on the day":               {at(aprilFirst).CheckClock(last), ""},
		"60 days after":            {at(last.Plus(60)).CheckClock(last), ""},
		"no work days":             {at(last.Plus(600)).CheckClock(notices.Date{}), ""},
		"a clock that runs back":   {at(aprilFirst.Plus(-1)).CheckClock(last), "something was noted for job alder-14 on 2027-04-01 already"},
		"61 days after":            {at(last.Plus(61)).CheckClock(last), "more than 60 days before"},
		"a mark on the day":        {at(aprilFirst).CheckDay(aprilFirst, last), ""},
		"a mark before any sheet":  {at(aprilFirst).CheckDay(notices.Date{Year: 1999, Month: 1, Day: 1}, last), "when the first sheet of job alder-14 was made"},
		"a mark in the wrong year": {at(aprilFirst).CheckDay(notices.Date{Year: 2072, Month: 4, Day: 2}, last), "more than 60 days before"},
		"the same house":           {at(aprilFirst).CheckAddress("14 Alder Court"), ""},
		"another house":            {at(aprilFirst).CheckAddress("99 Birch Road"), "is on paper for 14 Alder Court"},
	} {
		var doubt doubt
		switch {
		case c.want == "" && c.err != nil:
			t.Errorf("%s: %v", name, c.err)
		case c.want != "" && (!errors.As(c.err, &doubt) || !strings.Contains(doubt.Error(), c.want) || !strings.Contains(doubt.Error(), "--confirm")):
			t.Errorf("%s: %v", name, c.err)
		}
	}
}

// A laptop has one name, which is no word and stays.
func TestLaptopKeepsItsName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "doorleaf", "laptop")
	first, err := laptopAt(path)
	if err != nil || !laptopForm.MatchString(first) || strings.ContainsAny(first, "aeiou01l") {
		t.Errorf("name %q, error %v", first, err)
	}
	if again, err := laptopAt(path); err != nil || again != first {
		t.Errorf("the second time %q, error %v", again, err)
	}
	put(t, path, []byte("../x\n"))
	if name, err := laptopAt(path); err == nil {
		t.Errorf("the name is %q", name)
	}
}

// Who phoned, refused or signed is told; paper is in a home only when somebody gave it.
func TestWaysOfTelling(t *testing.T) {
	for how, want := range map[string]struct{ with, out, knock bool }{
		"spoke": {true, true, true}, "left": {true, true, false}, "mailed": {true, true, false},
		"phoned": {false, false, true}, "refused": {true, false, true}, "signed": {true, true, true},
	} {
		job := mustMake(t, Job{Code: "alder-14"}.By(Writer{"k7qm", aprilFirst}), "a", aRequest)
		job, _, err := job.HandOver(Visit{Home: "n12", On: aprilFirst, How: how, By: "RM"})
		if err != nil {
			t.Fatal(err)
		}
		sheet, _ := job.Sheet(aRequest)
		if got := (struct{ with, out, knock bool }{sheet.IsWith("n12"), sheet.WentOut(), sheet.SpokenOrTwice("n12")}); got != want {
			t.Errorf("%s: %+v, want %+v", how, got, want)
		}
	}
}

// Whatever way a text comes, nothing that nobody can see is noted.
func TestInvisibleTextIsRefused(t *testing.T) {
	job := mustMake(t, Job{Code: "alder-14"}.By(Writer{"k7qm", aprilFirst}), "a", aRequest)
	for _, why := range []string{"a\x1b[31m", "a\x00", "two\nlines", "Rosa\u2069\u202e", "\u200b", strings.Repeat("a", 501), "ni\xf1o"} {
		after, _, err := job.HandOver(Visit{Home: "n12", On: aprilFirst, How: "left", By: "RM", Why: why})
		if err == nil || len(after.Pending()) != len(job.Pending()) {
			t.Errorf("%.20q is noted", why)
		}
	}
	if _, _, err := job.HandOver(Visit{Home: "n12", On: aprilFirst, How: "left", By: "RM", Why: "niño, ngủ, نائم"}); err != nil {
		t.Error(err)
	}
}

// What was printed counts as out: when the facts change before anybody noted where it went, it has to be thrown away. What went on is looked for where it went.
func TestPrintedPaperIsPutRight(t *testing.T) {
	day := func(n int) Writer { return Writer{"k7qm", aprilFirst.Plus(n)} }
	job := mustMake(t, Job{Code: "alder-14"}.By(day(0)), "a", aRequest, aSign)
	job, _, err := job.Print(nil, aprilFirst)
	if err != nil {
		t.Fatal(err)
	}
	job, _, err = job.Post(nil, aprilFirst, "RM")
	if err != nil || len(job.Wrong()) != 0 {
		t.Fatalf("to be put right %+v, error %v", job.Wrong(), err)
	}
	changed := mustMake(t, job, "b", aRequest, aSign)
	wrong := changed.Wrong()
	if len(wrong) != 2 || wrong[0].Sheet.ID != aRequest || wrong[0].Mark.Event != Printed || wrong[1].Mark.Event != Posted {
		t.Errorf("to be put right: %+v", wrong)
	}
	again, _, err := changed.Print(nil, aprilFirst.Plus(1))
	if err != nil || len(again.Wrong()) != 1 {
		t.Errorf("printed again, to be put right: %+v, error %v", again.Wrong(), err)
	}
}

// A make on a laptop whose clock was years ahead does not make the paper of every later day an old one.
func TestClockThatWasAhead(t *testing.T) {
	dir := newProgramme(t)
	makes(t, dir, "k7qm", "a", aprilFirst)
	makes(t, dir, "q3xz", "b", notices.Date{Year: 2036, Month: 1, Day: 1})
	day := aprilFirst.Plus(3)
	job, noted, err := read(t, dir, "k7qm", day).HandOver(Visit{Home: "n12", On: day, How: "spoke", By: "RM"})
	if err != nil || noted[0].IsWrong() || noted[0].Mark.Revision.Number != 2 || len(job.Wrong()) != 0 {
		t.Errorf("noted %+v, error %v", noted, err)
	}
	if err := job.CheckClock(day.Plus(10)); err == nil {
		t.Error("nobody hears of the clock")
	}
}
