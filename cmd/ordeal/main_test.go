package main

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

func builtProgram(t *testing.T) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "doorleaf.exe")
	if text, err := exec.Command("go", "build", "-buildvcs=false", "-o", program, "../doorleaf").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return program
}

// Counts of 0 mean something only when what is counted can be found.
func TestLookFindsWhatIsWrong(t *testing.T) {
	w, err := found(builtProgram(t), t.TempDir(), 2)
	if err != nil {
		t.Fatal(err)
	}
	if got := w.look(); !got.isRight() {
		t.Fatalf("in good order it finds %+v", got)
	}
	made, err := w.recorded("elm-1")
	if err != nil {
		t.Fatal(err)
	}
	page := filepath.Join(w.out(), "web", made.Token, "index.html")
	ledger := filepath.Join(w.folder(), "ledger", "elm-2", laptop+".jsonl")
	sign := filepath.Join(w.folder(), "ledger", ".making-"+laptop)
	for name, c := range map[string]struct {
		path string
		text string // "" takes the file away
		want state
	}{
		"a page is gone":          {page, "", state{mixed: 1, missing: 1}},
		"a page of another make":  {page, "another", state{mixed: 1}},
		"a file that is not ours": {filepath.Join(w.out(), "print", "elm-1", "notes.txt"), "mine", state{mixed: 1}},
		"a ledger is cut":         {ledger, `{"doorleaf":1`, state{unreadable: 1}},
		"a ledger is gone":        {ledger, "", state{apart: 1}},
		"a make is under way":     {sign, "out", state{unfinished: 1}},
	} {
		before, err := os.ReadFile(c.path)
		if c.text == "" {
			os.Remove(c.path)
		} else if err := os.WriteFile(c.path, []byte(c.text), 0o600); err != nil {
			t.Fatal(err)
		}
		if got := w.look(); got != c.want {
			t.Errorf("%s: found %+v, want %+v", name, got, c.want)
		}
		if err != nil {
			os.Remove(c.path)
		} else if err := os.WriteFile(c.path, before, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// A few kills, as a sample: the campaign itself is a command.
func TestSomeKills(t *testing.T) {
	counts, err := kills(builtProgram(t), t.TempDir(), 2, 4, rand.New(rand.NewPCG(uint64(time.Now().UnixNano()), 0)))
	if err != nil || counts.lost() > 0 || counts.makes != 4 {
		t.Errorf("%+v, error %v", counts, err)
	}
}
