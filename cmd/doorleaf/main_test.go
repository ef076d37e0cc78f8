package main

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the files that scripts compare with")

// Scripts run on a day of their own, February 10, 2026, one that needs another sets NOW.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"doorleaf": func() {
		if day, err := time.Parse(time.DateOnly, os.Getenv("NOW")); err == nil {
			now = func() time.Time { return day.Add(12 * time.Hour) }
		}
		main()
	}})
}

// Each script in testdata/script is one behaviour of the command, as somebody at a keyboard meets it. Beside the usual words of testscript,
// "remember DIR" keeps what is in a folder and "unchanged DIR" fails if anything in it is not as it was, times included; $TODAY and $TOMORROW are days.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("testdata", "script"), UpdateScripts: *update, RequireExplicitExec: true, RequireUniqueNames: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("NOW", "2026-02-10")
			env.Setenv("TODAY", "2026-02-10")
			env.Setenv("TOMORROW", "2026-02-11")
			return newLaptop(env, "k7qm")
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"remember": remember, "unchanged": unchanged},
	})
}

// newLaptop gives a script settings of its own, wherever the system keeps them, in which the laptop has a name.
func newLaptop(env *testscript.Env, name string) error {
	home := filepath.Join(env.WorkDir, ".home")
	env.Setenv("HOME", home)
	env.Setenv("XDG_CONFIG_HOME", filepath.Join(home, ".config"))
	env.Setenv("AppData", filepath.Join(home, "AppData"))
	for _, settings := range []string{".config", "AppData", "Library/Application Support"} {
		folder := filepath.Join(home, filepath.FromSlash(settings), "doorleaf")
		if err := errors.Join(os.MkdirAll(folder, 0o700), os.WriteFile(filepath.Join(folder, "laptop"), []byte(name+"\n"), 0o600)); err != nil {
			return err
		}
	}
	return nil
}

// remembered holds a map from each remembered folder to its tree; scripts run at the same time.
var remembered sync.Map

func remember(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: remember DIR")
	}
	dir := ts.MkAbs(args[0])
	remembered.Store(dir, tree(ts, dir))
}

func unchanged(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: unchanged DIR")
	}
	dir := ts.MkAbs(args[0])
	before, known := remembered.Load(dir)
	if !known {
		ts.Fatalf("nobody remembers %s", args[0])
	}
	if now := tree(ts, dir); !maps.Equal(before.(map[string]string), now) {
		ts.Fatalf("%s was\n%s\nand is\n%s", args[0], before, now)
	}
}

// tree has the digest, mode and time of each file and folder. A lock file is no result.
func tree(ts *testscript.TestScript, dir string) map[string]string {
	all := map[string]string{}
	ts.Check(filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || strings.HasSuffix(entry.Name(), "lock") {
			return err
		}
		info, err := entry.Info()
		if err != nil || entry.IsDir() {
			all[path] = "folder"
			return err
		}
		data, err := os.ReadFile(path)
		all[path] = fmt.Sprintf("%x %s %s", sha256.Sum256(data), info.Mode(), info.ModTime())
		return err
	}))
	return all
}

// ran is the command run in this process.
func ran(watched bool, args ...string) (code int, out, err string) {
	var stdout, stderr bytes.Buffer
	code = run(args, console{&stdout, &stderr, watched})
	return code, stdout.String(), stderr.String()
}

// Exit codes: 0 done, 1 something went wrong, 2 the command line was not understood. Messages are lower case, one line, and say what to do.
func TestExitCodesAndMessages(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct {
		args string
		code int
		says string // a regular expression for the whole of standard error
	}{
		{"", 0, ``},
		{"--help", 0, ``},
		{"make --help", 0, ``},
		{"demo " + filepath.Join(dir, "made"), 0, ``},
		{"bogus", 2, `doorleaf: unexpected argument bogus; see doorleaf --help\n`},
		{"make", 2, `doorleaf: expected "<job> ..."; see doorleaf --help\n`},
		{"start", 2, `doorleaf: expected "<dir>"; see doorleaf --help\n`},
		{"make --without-code x.yaml", 2, `doorleaf: unknown flag --without-code, did you mean "--without-codes"\?; see doorleaf --help\n`},
		{"plan --out x y.yaml", 2, `doorleaf: unknown flag --out.*; see doorleaf --help\n`},
		{"demo one two", 2, `doorleaf: unexpected argument two; see doorleaf --help\n`},
		{"make " + filepath.Join(dir, "no.yaml"), 1, `doorleaf: there is no job file .*; check the name, or see what is in the jobs folder\n`},
		{"demo " + filepath.Join(dir, "made"), 1, `doorleaf: the folder .* is not empty; name a new one, and nothing in this one changes\n`},
	} {
		code, _, says := ran(false, strings.Fields(c.args)...)
		if code != c.code || !regexp.MustCompile(`^(?s:`+c.says+`)$`).MatchString(says) {
			t.Errorf("doorleaf %s ends with %d and says\n%swant %d and %s", c.args, code, says, c.code, c.says)
		}
		if strings.Contains(says, "*") || strings.Contains(says, "main.") || regexp.MustCompile(`^doorleaf: [A-Z]`).MatchString(says) {
			t.Errorf("doorleaf %s says something for programmers, or in capitals: %s", c.args, says)
		}
	}
}

// A person who watches sees which job is being made; a pipe gets nothing but results.
func TestProgressIsForPeople(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "watched")
	code, _, says := ran(true, "demo", dir)
	if want := "making alder-14\nmaking quarry-231\n"; code != 0 || says != want {
		t.Errorf("a person sees %q and the code %d, want %q", says, code, want)
	}
	if code, _, says := ran(false, "make", filepath.Join(dir, "jobs", "alder-14.yaml")); code != 0 || says != "" {
		t.Errorf("a pipe gets %q and the code %d, want nothing", says, code)
	}
}
