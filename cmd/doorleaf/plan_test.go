package main

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// A plan of a demo job fits on a screen, on every day of its life: at most 60 lines of 100 characters.
func TestPlansAreShort(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "d")
	if code := run([]string{"demo", folder}, console{io.Discard, io.Discard, false}); code != 0 {
		t.Fatal("the demo cannot be made")
	}
	defer func(kept func() time.Time) { now = kept }(now)
	for _, job := range []string{"alder-14", "quarry-231"} {
		for day := time.Date(2027, time.April, 1, 12, 0, 0, 0, time.UTC); day.Month() < time.July; day = day.AddDate(0, 0, 9) {
			now = func() time.Time { return day }
			checkShort(t, filepath.Join(folder, "jobs", job+".yaml"), day)
		}
	}
}

func checkShort(t *testing.T, job string, day time.Time) {
	t.Helper()
	var out, says bytes.Buffer
	if code := run([]string{"plan", job}, console{&out, &says, false}); code != 0 {
		t.Fatalf("the plan of %s ended with %d: %s", job, code, &says)
	}
	lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	if len(lines) > 60 || len(lines) < 10 {
		t.Errorf("%s: the plan of %s has %d lines", day.Format(time.DateOnly), job, len(lines))
	}
	for _, line := range lines {
		if utf8.RuneCountInString(line) > planWidth {
			t.Errorf("the plan of %s is wider than %d:\n%s", job, planWidth, line)
		}
	}
}

func TestLinesAreWrapped(t *testing.T) {
	long := strings.Repeat("a", planWidth+1)
	for words, want := range map[string]string{
		"":        "  ",
		"one two": "  one two",
		long:      "  " + long,
		strings.Repeat("b", 47) + " " + strings.Repeat("c", 50): "  " + strings.Repeat("b", 47) + " " + strings.Repeat("c", 50),
		strings.Repeat("b", 47) + " " + strings.Repeat("c", 51): "  " + strings.Repeat("b", 47) + "\n    " + strings.Repeat("c", 51),
		strings.Repeat("é", 98) + " d e":                        "  " + strings.Repeat("é", 98) + "\n    d e",
	} {
		if got := wrapped(strings.Fields(words), "  "); got != want {
			t.Errorf("%q becomes\n%s\nwant\n%s", words, got, want)
		}
	}
}
