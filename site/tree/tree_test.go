package tree

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

func treeOf(out output) map[string]string {
	tree := map[string]string{}
	for path, data := range out.all() {
		tree[path] = string(data)
	}
	return tree
}

// put writes an output as a make does, after it has finished what an earlier one left.
func put(dir string, out output) (changed []string, err error) {
	return putWith(dir, out, func(string) error { return nil })
}

func putWith(dir string, out output, before func(string) error) (changed []string, err error) {
	f, err := open(dir, before)
	if err != nil {
		return nil, err
	}
	defer closeUnlessKilled(f)
	if err := f.Swap(); err != nil {
		return nil, err
	}
	for _, u := range out.Jobs {
		if err := f.Stage(u); err != nil {
			return nil, err
		}
	}
	if out.Shared != nil {
		if err := f.StageShared(out.Shared); err != nil {
			return nil, err
		}
	}
	if changed, err = f.Commit([]byte(`"a make"`)); err != nil {
		return nil, err
	}
	return changed, f.Swap()
}

// closeUnlessKilled leaves the disk as a kill does: all that goes is the lock.
func closeUnlessKilled(f *Folder) {
	if r := recover(); r != nil {
		f.root.Close()
		f.release()
		panic(r)
	}
	f.Close()
}

func mustWrite(t *testing.T, dir string, out output) (changed []string) {
	t.Helper()
	changed, err := put(dir, out)
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

func writeFile(t *testing.T, dir, path, text string) {
	t.Helper()
	name := filepath.Join(dir, filepath.FromSlash(path))
	if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o755), os.WriteFile(name, []byte(text), 0o644)); err != nil {
		t.Fatal(err)
	}
}

// indexOf is the index with all jobs that are there.
func indexOf(t *testing.T, dir string) Index {
	t.Helper()
	output := os.DirFS(dir)
	index, err1 := loadIndex(output)
	codes, err2 := Codes(output)
	if err := errors.Join(err1, err2); err != nil {
		t.Fatal(err)
	}
	index.Jobs = nil
	for _, code := range codes {
		known, err := writtenOf(output, code)
		if err != nil {
			continue // its folder was taken away
		}
		index.Jobs = append(index.Jobs, IndexJob{code, known.Token, RecordPath(code)})
	}
	return index
}

func TestWriteTwice(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "programme", "out")
	out := anOutput(Index{}, aUnit("alder-14", "one"), aUnit("elm-2", "one"))
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
	mustWrite(t, dir, anOutput(Index{}, aUnit("alder-14", "one")))
	long := time.Date(2027, 4, 1, 8, 0, 0, 0, time.UTC)
	for path := range readTree(t, dir) {
		os.Chtimes(filepath.Join(dir, path), long, long)
	}
	changed := mustWrite(t, dir, anOutput(indexOf(t, dir), aUnit("alder-14", "two")))
	token := alderToken
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
	writeFile(t, dir, "a", "text")
	long := time.Date(2027, 4, 1, 8, 0, 0, 0, time.UTC)
	os.Chtimes(filepath.Join(dir, "a"), long, long)
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
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
	both := anOutput(Index{}, aUnit("alder-14", "one"), aUnit("elm-2", "one"))
	mustWrite(t, dir, both)
	writeFile(t, dir, "notes.txt", "mine")
	writeFile(t, dir, "print/photos/porch.jpg", "mine too")
	writeFile(t, dir, "print/elm-2/notes.txt", "in another job")
	want := readTree(t, dir)

	out := anOutput(indexOf(t, dir), aUnit("alder-14", "two"))
	out.Shared = both.Shared // as a whole make says it, the index has both jobs
	mustWrite(t, dir, out)
	maps.Copy(want, treeOf(out))
	checkTree(t, dir, want)
}

func TestRemovedSheetGoesWithItsFile(t *testing.T) {
	dir := t.TempDir()
	first := aUnit("alder-14", "one")
	mustWrite(t, dir, anOutput(Index{}, first))
	writeFile(t, dir, "print/alder-14/.DS_Store", "litter")
	files := someFiles("alder-14", alderToken, "one")
	delete(files, "print/alder-14/walk.html")
	second := recorded("alder-14", alderToken, files)
	out := anOutput(indexOf(t, dir), second)
	if changed := mustWrite(t, dir, out); !slices.Equal(changed, []string{"print/alder-14/record.json", "print/alder-14/walk.html"}) {
		t.Errorf("changed %v", changed)
	}
	checkTree(t, dir, treeOf(out))
}

func TestFilesOfOthersStopTheMake(t *testing.T) {
	token := alderToken
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(Index{}, aUnit("alder-14", "one")))
	for path, what := range map[string]string{
		"print/alder-14/notes.txt":                "not written by doorleaf",
		"print/alder-14/walk.html":                "changed since doorleaf wrote it",
		"web/" + token + "/ES/photo.jpg":          "not written by doorleaf",
		"web/" + token + "/EN/WINDOWS/index.html": "changed since doorleaf wrote it",
		"print/index.html":                        "changed since doorleaf wrote it",
		"print/fonts/NotoSans.ttf":                "changed since doorleaf wrote it",
	} {
		before := readTree(t, dir)
		writeFile(t, dir, path, "mine")
		writeFile(t, dir, "print/alder-14/also.txt", "mine")
		want := readTree(t, dir)
		_, err := put(dir, anOutput(indexOf(t, dir), aUnit("alder-14", "two")))
		if err == nil || !strings.Contains(err.Error(), "\n  "+path+" ("+what+")") || !strings.Contains(err.Error(), "print/alder-14/also.txt") {
			t.Errorf("%s: error %v", path, err)
		}
		checkTree(t, dir, want)
		os.Remove(filepath.Join(dir, "print/alder-14/also.txt"))
		os.Remove(filepath.Join(dir, path))
		if text, ours := before[path]; ours {
			writeFile(t, dir, path, text)
		}
	}
}

// Nothing is lost where the same bytes are written again, so a coordinator may throw a job's paper away and make it anew.
func TestThrownAwaySheetsAreMadeAgain(t *testing.T) {
	dir := t.TempDir()
	out := anOutput(Index{}, aUnit("alder-14", "one"))
	mustWrite(t, dir, out)
	if err := os.RemoveAll(filepath.Join(dir, "print/alder-14")); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, out)
	checkTree(t, dir, treeOf(out))
}

func TestIndexOfOthersStopsTheFirstMake(t *testing.T) {
	dir := t.TempDir()
	writeFile(t, dir, "web/index.html", "my own website")
	_, err := put(dir, anOutput(Index{}, aUnit("alder-14", "one")))
	if err == nil || !strings.Contains(err.Error(), "web/index.html (not written by doorleaf)") {
		t.Errorf("error %v", err)
	}
	checkTree(t, dir, map[string]string{"web/index.html": "my own website"})
}

func TestLinksAreRefused(t *testing.T) {
	token := alderToken
	const folder, file = " in the output folder is a link", " (not written by doorleaf)"
	for path, want := range map[string]string{
		"print": folder, "web": folder, "print/alder-14": folder, "print/fonts": folder, "web/" + token: folder, swapFolder: folder,
		"print/index.html": file, "web/" + token + "/ES": file,
	} {
		dir, elsewhere := t.TempDir(), t.TempDir()
		writeFile(t, elsewhere, "keep.txt", "mine")
		name := filepath.Join(dir, path)
		os.MkdirAll(filepath.Dir(name), 0o755)
		if err := os.Symlink(elsewhere, name); err != nil {
			t.Skipf("this system makes no symbolic links for us: %v", err)
		}
		if _, err := put(dir, anOutput(Index{}, aUnit("alder-14", "one"))); err == nil || !strings.Contains(err.Error(), path+want) {
			t.Errorf("%s: error %v", path, err)
		}
		checkTree(t, elsewhere, map[string]string{"keep.txt": "mine"})
	}
}

func TestAnotherKeyIsRefused(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(Index{}, aUnit("alder-14", "one")))
	want := readTree(t, dir)
	other := recorded("alder-14", elmToken, someFiles("alder-14", elmToken, "one"))
	if _, err := put(dir, anOutput(indexOf(t, dir), other)); err == nil || !strings.Contains(err.Error(), "this key would put them elsewhere") {
		t.Errorf("error %v", err)
	}
	checkTree(t, dir, want)
}

func TestPagesStayWhenPaperIsMadeWithoutCodes(t *testing.T) {
	dir := t.TempDir()
	first := aUnit("alder-14", "one")
	mustWrite(t, dir, anOutput(Index{}, first))
	want := readTree(t, dir)

	paper := Files{"print/alder-14/all.html": []byte("phone numbers")}
	paper[RecordPath("alder-14")] = JSON(written{"alder-14", alderToken, append(paper.List(), first.Files.in("web/"+alderToken).List()...)})
	unit := Unit{Code: "alder-14", Files: paper}
	out := anOutput(indexOf(t, dir), unit)
	mustWrite(t, dir, out)
	maps.DeleteFunc(want, func(path, _ string) bool { return strings.HasPrefix(path, "print/alder-14/") })
	maps.Copy(want, treeOf(out))
	checkTree(t, dir, want)

	again := anOutput(indexOf(t, dir), aUnit("alder-14", "two"))
	mustWrite(t, dir, again)
	checkTree(t, dir, treeOf(again))
}

func TestOneWriterAtATime(t *testing.T) {
	dir := t.TempDir()
	out := anOutput(Index{}, aUnit("alder-14", "one"))
	var second error
	_, err := putWith(dir, out, func(string) error {
		if second == nil {
			_, second = put(dir, out)
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

func writeUntil(dir string, out output, n int, end func() error) (finished bool, err error) {
	defer func() {
		if r := recover(); r != nil && r != (killed{}) {
			panic(r)
		}
	}()
	step := 0
	_, err = putWith(dir, out, func(string) error {
		if step++; step == n {
			return end()
		}
		return nil
	})
	return true, err
}

func kill() error { panic(killed{}) }

// change is an output folder before and after a make that changes, adds and removes files, and adds a job.
func change(t *testing.T) (dir string, before, after output) {
	t.Helper()
	dir = t.TempDir()
	first := aUnit("alder-14", "one")
	before = anOutput(Index{}, first)
	mustWrite(t, dir, before)
	files := someFiles("alder-14", alderToken, "two")
	delete(files, "print/alder-14/walk.html")
	files["print/alder-14/new.html"] = []byte("new")
	second := recorded("alder-14", alderToken, files)
	return dir, before, anOutput(indexOf(t, dir), second, aUnit("elm-2", "one"))
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
		third := anOutput(indexOf(t, dir), aUnit("oak-3", "one"))
		third.Shared = nil
		mustWrite(t, dir, third)
		checkOldOrNew(t, n, dir, before, after, third)
		before.Shared = after.Shared
		for _, out := range []output{after, before} {
			out.index = indexOf(t, dir)
			mustWrite(t, dir, out)
			for path, text := range treeOf(out) {
				if got := readTree(t, dir)[path]; got != text {
					t.Errorf("killed at step %d: %s is %q, want %q", n, path, got, text)
				}
			}
		}
	}
}

// Whatever comes next finds out whether a make was left half done, before it reads anything there.
func TestWhatWasLeftIsEnded(t *testing.T) {
	left, unfinished := 0, 0
	for n := 1; ; n++ {
		dir, before, after := change(t)
		if finished, _ := writeUntil(dir, after, n, kill); finished {
			break
		}
		f, err := Open(dir)
		if err != nil {
			t.Fatal(err)
		}
		note, wasLeft, err := f.Left()
		if wasLeft {
			left++
			if err != nil || string(note) != `"a make"` {
				t.Errorf("step %d: note %s, error %v", n, note, err)
			}
			err = f.Swap()
		}
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		want := before
		if wasLeft {
			want = after
		} else if !reflect.DeepEqual(readTree(t, dir), treeOf(before)) {
			want = after // it was killed while it cleaned up
		} else {
			unfinished++
		}
		checkTree(t, dir, treeOf(want))
	}
	if left < 10 || unfinished < 5 {
		t.Errorf("%d kills left something to finish, %d nothing", left, unfinished)
	}
}

// Whoever finds that the rest of a make did not happen takes it back.
func TestDiscard(t *testing.T) {
	dir, before, after := change(t)
	_, err := putWith(dir, after, func(step string) error {
		if strings.HasPrefix(step, "rename "+oldFolder) {
			return errors.New("the disk says no")
		}
		return nil
	})
	if err == nil {
		t.Fatal("nothing was replaced")
	}
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	err = f.Discard()
	f.Close()
	if err != nil {
		t.Fatal(err)
	}
	checkTree(t, dir, treeOf(before))
}

func TestIndexForgetsNoJob(t *testing.T) {
	dir := t.TempDir()
	codes := func() (all []string) {
		for _, job := range indexOf(t, dir).Jobs {
			all = append(all, job.Code)
		}
		return all
	}
	mustWrite(t, dir, anOutput(Index{}, aUnit("alder-14", "one")))
	mustWrite(t, dir, anOutput(indexOf(t, dir), aUnit("elm-2", "one")))
	if got := codes(); !slices.Equal(got, []string{"alder-14", "elm-2"}) {
		t.Errorf("jobs %v", got)
	}
	if err := os.RemoveAll(filepath.Join(dir, "print/alder-14")); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, anOutput(indexOf(t, dir), aUnit("elm-2", "one")))
	if got := codes(); !slices.Equal(got, []string{"elm-2"}) {
		t.Errorf("jobs %v", got)
	}
}

// checkOldOrNew wants all of the old output or all of the new one, and nothing else of ours.
func checkOldOrNew(t *testing.T, n int, dir string, before, after, third output) {
	t.Helper()
	got := readTree(t, dir)
	for _, out := range []output{before, after} {
		want := treeOf(out)
		maps.Copy(want, treeOf(third))
		if reflect.DeepEqual(got, want) {
			return
		}
	}
	t.Errorf("killed at step %d, the output is neither old nor new: %v", n, slices.Sorted(maps.Keys(got)))
}

// Up to the journal a failure changes nothing; after it the next make finishes what this one began.
func TestFailedMakeChangesNothing(t *testing.T) {
	for n := 1; ; n++ {
		dir, before, after := change(t)
		committed := false
		step := 0
		_, err := putWith(dir, after, func(name string) error {
			if step++; step == n {
				return errors.New("the disk says no")
			}
			committed = committed || name == "rename "+journalFile
			return nil
		})
		if err == nil {
			if n < 20 {
				t.Errorf("only %d steps", n)
			}
			return
		}
		if !strings.Contains(err.Error(), "the disk says no") {
			t.Errorf("step %d: error %v", n, err)
		}
		if !committed {
			checkTree(t, dir, treeOf(before))
			continue
		}
		if !strings.Contains(err.Error(), "the next doorleaf command") {
			t.Errorf("step %d: error %v", n, err)
		}
		f, err := Open(dir)
		if err != nil {
			t.Fatal(err)
		}
		err = f.Swap()
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		checkTree(t, dir, treeOf(after))
	}
}

const writeTo = "DOORLEAF_TEST_WRITE_TO"

// The same with a process of its own that the system kills, lock and all.
func TestKilledProcess(t *testing.T) {
	if dir := os.Getenv(writeTo); dir != "" {
		writeForEver(t, dir)
	}
	dir := t.TempDir()
	one, two := anOutput(Index{}, aUnit("alder-14", "one")), anOutput(Index{}, aUnit("alder-14", "two"))
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
	one, two := anOutput(Index{}, aUnit("alder-14", "one")), anOutput(Index{}, aUnit("alder-14", "two"))
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
		writeFile(t, dir, "print/alder-14/walk.html", "mine")
		if _, err := put(dir, after); err == nil || !strings.Contains(err.Error(), "print/alder-14/walk.html (changed") {
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
	out := output{Shared: Files{}}
	for n := range 200 {
		code, token := fmt.Sprintf("elm-%d", n), fmt.Sprintf("%012d", n)
		files := Files{}
		for i := range 15 {
			files[fmt.Sprintf("web/%s/EN/PAGE%d/index.html", token, i)] = fmt.Appendf(nil, "%012000d", n*100+i)
		}
		out.Jobs = append(out.Jobs, recorded(code, token, files))
	}
	again := b.TempDir()
	if _, err := put(again, out); err != nil {
		b.Fatal(err)
	}
	for name, dir := range map[string]func() string{"new": b.TempDir, "unchanged": func() string { return again }} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := put(dir(), out); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func mustStat(t *testing.T, path string) os.FileInfo {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	return info
}

// An index that somebody moved away, as the advice for a damaged one says, comes back with all jobs.
func TestIndexIsMadeAgain(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, anOutput(Index{}, aUnit("alder-14", "one"), aUnit("elm-2", "one")))
	for _, path := range []string{RecordFile, "print/index.html", "print/fonts/NotoSans.ttf", "web/index.html", "web/404.html"} {
		if err := os.Remove(filepath.Join(dir, path)); err != nil {
			t.Fatal(err)
		}
	}
	mustWrite(t, dir, anOutput(indexOf(t, dir), aUnit("alder-14", "two")))
	if jobs := indexOf(t, dir).Jobs; len(jobs) != 2 || jobs[1] != (IndexJob{"elm-2", elmToken, "print/elm-2/record.json"}) {
		t.Errorf("jobs %v", jobs)
	}
}
