package site_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"example.org/doorleaf/site"
)

// What cannot be made whole leaves nothing behind, so that the next try finds an empty place; what is there already stays as it is.
func TestNewProgrammeIsWholeOrNotThere(t *testing.T) {
	files := func(dir string) error {
		return os.CopyFS(dir, fstest.MapFS{"programme.yaml": {Data: []byte("name: x\n")}, "z.yaml": {Data: []byte("z")}})
	}
	fullDisk := func(dir string) error { return errors.Join(files(dir), errors.New("no space left on device")) }
	parent := t.TempDir()
	dir := filepath.Join(parent, "mine")
	if err := site.NewProgramme(dir, fullDisk); err == nil {
		t.Fatal("a programme without all its files was made")
	}
	if left, _ := os.ReadDir(parent); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := site.NewProgramme(dir, files); err != nil { // into an empty folder
		t.Fatal(err)
	}
	for _, name := range []string{"programme.yaml", "z.yaml", "job.schema.json", "doorleaf.key", "ledger/READ-ME.txt"} {
		if _, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name))); err != nil {
			t.Error(err)
		}
	}
	if left, _ := os.ReadDir(parent); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
	if err := site.NewProgramme(dir, files); err == nil {
		t.Error("a folder with something in it was taken")
	}
}
