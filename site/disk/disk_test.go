package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func files(t *testing.T, dir string) (all []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		all = append(all, entry.Name())
	}
	return all
}

func TestCreateKeepsWhatIsThere(t *testing.T) {
	path := filepath.Join(t.TempDir(), "key")
	if err := Create(path, []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := Create(path, []byte("two")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if data, _ := os.ReadFile(path); string(data) != "one" {
		t.Errorf("the file says %q", data)
	}
}

func TestReplaceLeavesNothingElse(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "ledger.jsonl")
	for _, text := range []string{"one", "two"} {
		if err := Replace(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if data, _ := os.ReadFile(path); string(data) != text {
			t.Errorf("the file says %q", data)
		}
	}
	dropped, err := Prepare(path, []byte("three"))
	if err != nil {
		t.Fatal(err)
	}
	dropped.Drop()
	if data, _ := os.ReadFile(path); string(data) != "two" || len(files(t, dir)) != 1 {
		t.Errorf("the file says %q, and there are %v", data, files(t, dir))
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm()&0o077 != 0 && os.PathSeparator == '/' {
		t.Errorf("mode %v, error %v", info.Mode(), err)
	}
}

// What a killed program left is removed, and nothing else.
func TestTidy(t *testing.T) {
	dir := t.TempDir()
	if _, err := Prepare(filepath.Join(dir, "k7qm.jsonl"), nil); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.WriteFile(filepath.Join(dir, ".hidden"), nil, 0o600), os.WriteFile(filepath.Join(dir, "k7qm.jsonl"), nil, 0o600)); err != nil {
		t.Fatal(err)
	}
	Tidy(dir, ".jsonl")
	if got := strings.Join(files(t, dir), " "); got != ".hidden k7qm.jsonl" {
		t.Errorf("left %s", got)
	}
}

func TestLock(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, ".lock")
	release, err := Lock(path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Lock(path); !errors.Is(err, ErrLocked) {
		t.Errorf("a second lock: %v", err)
	}
	release()
	release, err = Lock(path)
	if err != nil {
		t.Fatal(err)
	}
	release()
	elsewhere := filepath.Join(t.TempDir(), "made by nobody")
	if os.Symlink(elsewhere, filepath.Join(dir, "link")) != nil {
		t.Skip("this system makes no symbolic links for us")
	}
	if _, err := Lock(filepath.Join(dir, "link")); err == nil {
		t.Error("a link is locked")
	}
	if _, err := os.Lstat(elsewhere); err == nil {
		t.Error("a lock made a file elsewhere")
	}
}

// An error is told without the names of system calls and of files that only this program knows.
func TestWhy(t *testing.T) {
	_, err := os.Open(filepath.Join(t.TempDir(), "none.yaml"))
	if got := Why(err).Error(); strings.Contains(got, "open ") || !strings.Contains(got, "none.yaml: no such file") && os.PathSeparator == '/' {
		t.Errorf("%q", got)
	}
	if !errors.Is(Why(err), fs.ErrNotExist) {
		t.Error("nobody can tell any more what it was")
	}
	hidden := &os.LinkError{Op: "renameat", Old: "a", New: "out/.doorleaf-swap/new/x", Err: errors.New("no space left on device")}
	if got := Why(hidden).Error(); got != "no space left on device" {
		t.Errorf("%q", got)
	}
}
