package main

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"testing"
)

// A plan of a demo job fits on a screen: at most 60 lines.
func TestPlansAreShort(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "d")
	if code := run([]string{"demo", folder}, console{io.Discard, io.Discard, false}); code != 0 {
		t.Fatal("the demo can not be made")
	}
	for _, job := range []string{"alder-14", "quarry-231"} {
		var out bytes.Buffer
		if code := run([]string{"plan", filepath.Join(folder, "jobs", job+".yaml")}, console{&out, io.Discard, false}); code != 0 {
			t.Fatalf("the plan of %s ended with %d", job, code)
		}
		if lines := strings.Count(out.String(), "\n"); lines > 60 || lines < 10 {
			t.Errorf("the plan of %s has %d lines", job, lines)
		}
	}
}
