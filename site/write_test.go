package site

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
)

// readTree is the content of every file below dir, without our lock file.
func readTree(t *testing.T, dir string) map[string]string {
	t.Helper()
	tree := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || path == lockFile {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, path))
		tree[path] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return tree
}

func treeOf(out Output) map[string]string {
	tree := map[string]string{}
	for path, data := range out.all() {
		tree[path] = string(data)
	}
	return tree
}

func mustWrite(t *testing.T, dir string, out Output) (changed []string) {
	t.Helper()
	changed, err := Write(dir, out)
	if err != nil {
		t.Fatal(err)
	}
	return changed
}

func checkTree(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	got := readTree(t, dir)
	if reflect.DeepEqual(got, want) {
		return
	}
	for path := range maps.All(want) {
		if got[path] != want[path] {
			t.Errorf("%s: %q, want %q", path, got[path], want[path])
		}
	}
	for path := range got {
		if _, ok := want[path]; !ok {
			t.Errorf("%s should not be there", path)
		}
	}
}

func put(t *testing.T, dir, path, text string) {
	t.Helper()
	name := filepath.Join(dir, filepath.FromSlash(path))
	if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o755), os.WriteFile(name, []byte(text), 0o644)); err != nil {
		t.Fatal(err)
	}
}

func indexOf(t *testing.T, dir string) Index {
	t.Helper()
	index, err := LoadIndex(os.DirFS(dir))
	if err != nil {
		t.Fatal(err)
	}
	return index
}

func TestWriteTwice(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "programme", "out")
	out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"), aUnit(t, "elm-2", "one"))
	changed := mustWrite(t, dir, out)
	if want := slices.Sorted(maps.Keys(out.all())); !slices.Equal(changed, want) {
		t.Errorf("changed %v, want %v", changed, want)
	}
	checkTree(t, dir, treeOf(out))
	if changed := mustWrite(t, dir, out); len(changed) > 0 {
		t.Errorf("the second time changed %v", changed)
	}
	checkTree(t, dir, treeOf(out))
}

func TestUnchangedFilesKeepTheirTimes(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(t, Index{}, aUnit(t, "alder-14", "one")))
	long := time.Date(2027, 4, 1, 8, 0, 0, 0, time.UTC)
	for path := range readTree(t, dir) {
		os.Chtimes(filepath.Join(dir, path), long, long)
	}
	changed := mustWrite(t, dir, anOutput(t, indexOf(t, dir), aUnit(t, "alder-14", "two")))
	token := Token("a key for tests", "alder-14")
	if want := []string{"print/alder-14/all.html", "print/alder-14/record.json", "web/" + token + "/ES/WINDOWS/index.html"}; !slices.Equal(changed, want) {
		t.Errorf("changed %v, want %v", changed, want)
	}
	for path := range readTree(t, dir) {
		kept := mustStat(t, filepath.Join(dir, path)).ModTime().Equal(long)
		if kept == slices.Contains(changed, path) {
			t.Errorf("%s keeps its time: %v", path, kept)
		}
	}
}

func TestCopyKeepsTimes(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "a", "text")
	long := time.Date(2027, 4, 1, 8, 0, 0, 0, time.UTC)
	os.Chtimes(filepath.Join(dir, "a"), long, long)
	f, err := openFolder(dir, func(string) error { return nil })
	if err != nil {
		t.Fatal(err)
	}
	defer f.close()
	if err := f.copy("a", "b"); err != nil {
		t.Fatal(err)
	}
	checkTree(t, dir, map[string]string{"a": "text", "b": "text"})
	if got := mustStat(t, filepath.Join(dir, "b")).ModTime(); !got.Equal(long) {
		t.Errorf("time %v", got)
	}
}

func TestOtherJobsAndFilesStay(t *testing.T) {
	dir := t.TempDir()
	both := anOutput(t, Index{}, aUnit(t, "alder-14", "one"), aUnit(t, "elm-2", "one"))
	mustWrite(t, dir, both)
	put(t, dir, "notes.txt", "mine")
	put(t, dir, "print/photos/porch.jpg", "mine too")
	put(t, dir, "print/elm-2/notes.txt", "in another job")
	want := readTree(t, dir)

	out := anOutput(t, indexOf(t, dir), aUnit(t, "alder-14", "two"))
	out.Shared = both.Shared // as a whole make says it, the index has both jobs
	mustWrite(t, dir, out)
	maps.Copy(want, treeOf(out))
	checkTree(t, dir, want)
}

func TestRemovedSheetGoesWithItsFile(t *testing.T) {
	dir := t.TempDir()
	first := aUnit(t, "alder-14", "one")
	mustWrite(t, dir, anOutput(t, Index{}, first))
	put(t, dir, "print/alder-14/.DS_Store", "litter")
	files := someFiles(first.Record, "one")
	delete(files, "print/alder-14/walk.html")
	second, err := NewUnit(aRecord("alder-14", first.Record.Token), files, first.Record)
	if err != nil {
		t.Fatal(err)
	}
	out := anOutput(t, indexOf(t, dir), second)
	if changed := mustWrite(t, dir, out); !slices.Equal(changed, []string{"print/alder-14/record.json", "print/alder-14/walk.html"}) {
		t.Errorf("changed %v", changed)
	}
	checkTree(t, dir, treeOf(out))
}

func TestFilesOfOthersStopTheMake(t *testing.T) {
	token := Token("a key for tests", "alder-14")
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(t, Index{}, aUnit(t, "alder-14", "one")))
	for path, what := range map[string]string{
		"print/alder-14/notes.txt":                "not written by doorleaf",
		"print/alder-14/walk.html":                "changed since doorleaf wrote it",
		"web/" + token + "/ES/photo.jpg":          "not written by doorleaf",
		"web/" + token + "/EN/WINDOWS/index.html": "changed since doorleaf wrote it",
		"print/index.html":                        "changed since doorleaf wrote it",
		"print/fonts/NotoSans.ttf":                "changed since doorleaf wrote it",
	} {
		before := readTree(t, dir)
		put(t, dir, path, "mine")
		put(t, dir, "print/alder-14/also.txt", "mine")
		want := readTree(t, dir)
		_, err := Write(dir, anOutput(t, indexOf(t, dir), aUnit(t, "alder-14", "two")))
		if err == nil || !strings.Contains(err.Error(), "\n  "+path+" ("+what+")") || !strings.Contains(err.Error(), "print/alder-14/also.txt") {
			t.Errorf("%s: error %v", path, err)
		}
		checkTree(t, dir, want)
		os.Remove(filepath.Join(dir, "print/alder-14/also.txt"))
		os.Remove(filepath.Join(dir, path))
		if text, ours := before[path]; ours {
			put(t, dir, path, text)
		}
	}
}

// Nothing is lost where the same bytes are written again, so a coordinator may throw a job's paper away and make it anew.
func TestThrownAwaySheetsAreMadeAgain(t *testing.T) {
	dir := t.TempDir()
	out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"))
	mustWrite(t, dir, out)
	if err := os.RemoveAll(filepath.Join(dir, "print/alder-14")); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, out)
	checkTree(t, dir, treeOf(out))
}

func TestIndexOfOthersStopsTheFirstMake(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "web/index.html", "my own website")
	_, err := Write(dir, anOutput(t, Index{}, aUnit(t, "alder-14", "one")))
	if err == nil || !strings.Contains(err.Error(), "web/index.html (not written by doorleaf)") {
		t.Errorf("error %v", err)
	}
	checkTree(t, dir, map[string]string{"web/index.html": "my own website"})
}

func TestLinksAreRefused(t *testing.T) {
	token := Token("a key for tests", "alder-14")
	const folder, file = " in the output folder is a link", " (not written by doorleaf)"
	for path, want := range map[string]string{
		"print": folder, "web": folder, "print/alder-14": folder, "print/fonts": folder, "web/" + token: folder, swapFolder: folder,
		"print/index.html": file, "web/" + token + "/ES": file,
	} {
		dir, elsewhere := t.TempDir(), t.TempDir()
		put(t, elsewhere, "keep.txt", "mine")
		name := filepath.Join(dir, path)
		os.MkdirAll(filepath.Dir(name), 0o755)
		if err := os.Symlink(elsewhere, name); err != nil {
			t.Skipf("this system makes no symbolic links for us: %v", err)
		}
		if _, err := Write(dir, anOutput(t, Index{}, aUnit(t, "alder-14", "one"))); err == nil || !strings.Contains(err.Error(), path+want) {
			t.Errorf("%s: error %v", path, err)
		}
		checkTree(t, elsewhere, map[string]string{"keep.txt": "mine"})
	}
}

func TestAnotherKeyIsRefused(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(t, Index{}, aUnit(t, "alder-14", "one")))
	want := readTree(t, dir)
	record := aRecord("alder-14", Token("another key", "alder-14"))
	other, err := NewUnit(record, someFiles(record, "one"), JobRecord{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Write(dir, anOutput(t, indexOf(t, dir), other)); err == nil || !strings.Contains(err.Error(), "another key") {
		t.Errorf("error %v", err)
	}
	checkTree(t, dir, want)
}

func TestPagesStayWhenPaperIsMadeWithoutCodes(t *testing.T) {
	dir := t.TempDir()
	first := aUnit(t, "alder-14", "one")
	mustWrite(t, dir, anOutput(t, Index{}, first))
	want := readTree(t, dir)

	paper := Files{"print/alder-14/all.html": []byte("phone numbers")}
	unit, err := NewUnit(aRecord("alder-14", ""), paper, first.Record)
	if err != nil {
		t.Fatal(err)
	}
	out := anOutput(t, indexOf(t, dir), unit)
	mustWrite(t, dir, out)
	maps.DeleteFunc(want, func(path, _ string) bool { return strings.HasPrefix(path, "print/alder-14/") })
	maps.Copy(want, treeOf(out))
	checkTree(t, dir, want)

	again := anOutput(t, indexOf(t, dir), aUnit(t, "alder-14", "two"))
	mustWrite(t, dir, again)
	checkTree(t, dir, treeOf(again))
}

func TestOneWriterAtATime(t *testing.T) {
	dir := t.TempDir()
	out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"))
	var second error
	_, err := write(dir, out, func(string) error {
		if second == nil {
			_, second = Write(dir, out)
		}
		return nil
	})
	if err != nil || second == nil || !strings.Contains(second.Error(), "another doorleaf is writing") {
		t.Errorf("first: %v, second: %v", err, second)
	}
	checkTree(t, dir, treeOf(out))
}

// killed ends a write at its nth step, as a kill would: nothing after it runs.
type killed struct{}

func writeUntil(dir string, out Output, n int, end func() error) (finished bool, err error) {
	defer func() {
		if r := recover(); r != nil && r != (killed{}) {
			panic(r)
		}
	}()
	step := 0
	_, err = write(dir, out, func(string) error {
		if step++; step == n {
			return end()
		}
		return nil
	})
	return true, err
}

func kill() error { panic(killed{}) }

// change is an output folder before and after a make that changes, adds and removes files, and adds a job.
func change(t *testing.T) (dir string, before, after Output) {
	t.Helper()
	dir = t.TempDir()
	first := aUnit(t, "alder-14", "one")
	before = anOutput(t, Index{}, first)
	mustWrite(t, dir, before)
	files := someFiles(first.Record, "two")
	delete(files, "print/alder-14/walk.html")
	files["print/alder-14/new.html"] = []byte("new")
	second, err := NewUnit(aRecord("alder-14", first.Record.Token), files, first.Record)
	if err != nil {
		t.Fatal(err)
	}
	return dir, before, anOutput(t, indexOf(t, dir), second, aUnit(t, "elm-2", "one"))
}

// Whatever the step at which a make is killed: the next make of the same, or of the old, or of another job, succeeds, and the output is whole.
func TestKilledMakeIsPutInOrder(t *testing.T) {
	for n := 1; ; n++ {
		dir, before, after := change(t)
		finished, err := writeUntil(dir, after, n, kill)
		if finished {
			if n < 20 || err != nil {
				t.Fatalf("only %d steps, error %v", n, err)
			}
			return
		}
		// A job that has nothing to do with the killed make shows what that left behind.
		third := anOutput(t, indexOf(t, dir), aUnit(t, "oak-3", "one"))
		third.Shared = nil
		mustWrite(t, dir, third)
		checkOldOrNew(t, n, dir, before, after, third)
		before.Shared = after.Shared // the index has the new job from now on
		for _, out := range []Output{after, before} {
			mustWrite(t, dir, out)
			for path, text := range treeOf(out) {
				if got := readTree(t, dir)[path]; got != text {
					t.Errorf("killed at step %d: %s is %q, want %q", n, path, got, text)
				}
			}
		}
	}
}

func TestRepairBeforeReading(t *testing.T) {
	if err := Repair(filepath.Join(t.TempDir(), "none")); err != nil {
		t.Errorf("no folder: %v", err)
	}
	for n := 1; ; n++ {
		dir, before, after := change(t)
		if finished, _ := writeUntil(dir, after, n, kill); finished {
			return
		}
		if err := Repair(dir); err != nil {
			t.Fatal(err)
		}
		checkOldOrNew(t, n, dir, before, after, Output{})
		records, err := LoadRecords(os.DirFS(dir))
		if err != nil || len(records) == 0 || records[0].Code != "alder-14" {
			t.Errorf("step %d: records %v, error %v", n, records, err)
		}
	}
}

// Two makes at the same time both read the records before one of them writes.
func TestIndexForgetsNoJob(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(t, Index{}, aUnit(t, "alder-14", "one")))
	want := readTree(t, dir)
	if _, err := Write(dir, anOutput(t, indexOf(t, dir), aUnit(t, "elm-2", "one"))); err == nil || !strings.Contains(err.Error(), "alder-14 came into") {
		t.Errorf("error %v", err)
	}
	checkTree(t, dir, want)
	if err := os.RemoveAll(filepath.Join(dir, "print/alder-14")); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, anOutput(t, indexOf(t, dir), aUnit(t, "elm-2", "one")))
}

// checkOldOrNew wants all of the old output or all of the new one, and nothing else of ours.
func checkOldOrNew(t *testing.T, n int, dir string, before, after, third Output) {
	t.Helper()
	got := readTree(t, dir)
	for _, out := range []Output{before, after} {
		want := treeOf(out)
		maps.Copy(want, treeOf(third))
		if reflect.DeepEqual(got, want) {
			return
		}
	}
	t.Errorf("killed at step %d, the output is neither old nor new: %v", n, slices.Sorted(maps.Keys(got)))
}

func TestFailedMakeChangesNothing(t *testing.T) {
	for n := 1; ; n++ {
		dir, before, after := change(t)
		finished, err := writeUntil(dir, after, n, func() error { return errors.New("the disk says no") })
		if finished && err == nil {
			return
		}
		if strings.Contains(err.Error(), "cannot clean up") {
			checkTreeButSwap(t, dir, after)
			continue
		}
		if !strings.Contains(err.Error(), "nothing was changed") || !strings.Contains(err.Error(), "the disk says no") {
			t.Errorf("step %d: error %v", n, err)
		}
		checkTree(t, dir, treeOf(before))
	}
}

func checkTreeButSwap(t *testing.T, dir string, want Output) {
	t.Helper()
	got := readTree(t, dir)
	maps.DeleteFunc(got, func(path, _ string) bool { return strings.HasPrefix(path, swapFolder+"/") })
	if !reflect.DeepEqual(got, treeOf(want)) {
		t.Errorf("files %v", slices.Sorted(maps.Keys(got)))
	}
}

// A make can also be killed while it goes back after a failure.
func TestKilledWhileGoingBack(t *testing.T) {
	for fail := 1; ; fail++ {
		dir, _, after := change(t)
		finished, err := writeUntil(dir, after, fail, func() error { return errors.New("the disk says no") })
		if finished && err == nil {
			return
		}
		for n := fail + 1; ; n++ {
			dir, before, after := change(t)
			if !killWhileGoingBack(dir, after, fail, n) {
				break
			}
			third := anOutput(t, indexOf(t, dir), aUnit(t, "oak-3", "one"))
			third.Shared = nil
			mustWrite(t, dir, third)
			checkOldOrNew(t, n, dir, before, after, third)
		}
	}
}

func killWhileGoingBack(dir string, out Output, fail, n int) (wasKilled bool) {
	step := 0
	defer func() { wasKilled = recover() != nil }()
	write(dir, out, func(string) error {
		switch step++; step {
		case fail:
			return errors.New("the disk says no")
		case n:
			panic(killed{})
		}
		return nil
	})
	return false
}

const writeTo = "DOORLEAF_TEST_WRITE_TO"

// The same with a process of its own that the system kills, lock and all.
func TestKilledProcess(t *testing.T) {
	if dir := os.Getenv(writeTo); dir != "" {
		writeForEver(t, dir)
	}
	dir := t.TempDir()
	one, two := anOutput(t, Index{}, aUnit(t, "alder-14", "one")), anOutput(t, Index{}, aUnit(t, "alder-14", "two"))
	mustWrite(t, dir, one)
	for n := range 8 {
		writer := exec.Command(os.Args[0], "-test.run=^TestKilledProcess$")
		writer.Env = append(os.Environ(), writeTo+"="+dir)
		out, err := writer.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := writer.Start(); err != nil {
			t.Fatal(err)
		}
		fmt.Fscanln(out) // it has begun
		time.Sleep(time.Duration(n) * 700 * time.Microsecond)
		writer.Process.Kill()
		writer.Wait()
		mustWrite(t, dir, one)
		checkTree(t, dir, treeOf(one))
		mustWrite(t, dir, two)
		checkTree(t, dir, treeOf(two))
	}
}

func writeForEver(t *testing.T, dir string) {
	one, two := anOutput(t, Index{}, aUnit(t, "alder-14", "one")), anOutput(t, Index{}, aUnit(t, "alder-14", "two"))
	fmt.Println()
	for {
		mustWrite(t, dir, one)
		mustWrite(t, dir, two)
	}
}

// Somebody may edit a file between a kill and the next make. It is not lost.
func TestEditAfterAKillIsNotLost(t *testing.T) {
	stopped := 0
	for n := 1; ; n++ {
		dir, _, after := change(t)
		if finished, _ := writeUntil(dir, after, n, kill); finished {
			break
		}
		edited := filepath.Join(dir, "print/alder-14/walk.html")
		if _, err := os.Stat(edited); err != nil {
			continue // moved away, or gone already
		}
		put(t, dir, "print/alder-14/walk.html", "mine")
		if _, err := Write(dir, after); err == nil || !strings.Contains(err.Error(), "print/alder-14/walk.html (changed") {
			t.Errorf("step %d: error %v", n, err)
		}
		if text := readTree(t, dir)["print/alder-14/walk.html"]; text != "mine" {
			t.Errorf("step %d: the file says %q", n, text)
		}
		stopped++
		if err := os.Rename(edited, filepath.Join(dir, "mine.html")); err != nil {
			t.Fatal(err)
		}
		mustWrite(t, dir, after)
		want := treeOf(after)
		want["mine.html"] = "mine"
		checkTree(t, dir, want)
	}
	if stopped < 10 {
		t.Errorf("only %d makes were stopped", stopped)
	}
}

func BenchmarkWrite(b *testing.B) {
	out := Output{Shared: Files{}}
	for n := range 200 {
		code := fmt.Sprintf("elm-%d", n)
		record := JobRecord{Code: code, Token: Token("a key", code)}
		files := Files{}
		for i := range 15 {
			files[fmt.Sprintf("web/%s/EN/PAGE%d/index.html", record.Token, i)] = fmt.Appendf(nil, "%012000d", n*100+i)
		}
		unit, err := NewUnit(record, files, JobRecord{})
		if err != nil {
			b.Fatal(err)
		}
		out.Jobs = append(out.Jobs, unit)
	}
	again := b.TempDir()
	if _, err := Write(again, out); err != nil {
		b.Fatal(err)
	}
	for name, dir := range map[string]func() string{"new": b.TempDir, "unchanged": func() string { return again }} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Write(dir(), out); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
