package main

import (
	"runtime/debug"
	"strings"
	"testing"
)

// Versions and notes of checkouts have the form that "go version -m" shows of programs built by Go 1.26 in these ways.
func TestVersion(t *testing.T) {
	checkout := []string{"vcs", "git", "vcs.revision", "1a2b3c4d5e6f7a8b9c0d1e2f3a4b5c6d7e8f9a0b", "vcs.time", "2027-03-01T23:04:05Z", "vcs.modified"}
	for _, c := range []struct {
		name, version string
		notes         []string
		want          string
	}{
		{"released", "v1.2.3", nil, "v1.2.3, built with go1.26.8"},
		{"unreleased, by go install", "v0.0.0-20270301230405-1a2b3c4d5e6f", nil, "v0.0.0-20270301230405-1a2b3c4d5e6f, built with go1.26.8"},
		{"checkout", "v0.0.0-20270301230405-1a2b3c4d5e6f", append(checkout, "false"), "revision 1a2b3c4d5e6f of 2027-03-01, built with go1.26.8"},
		{"changed checkout", "v0.0.0-20270301230405-1a2b3c4d5e6f+dirty", append(checkout, "true"), "revision 1a2b3c4d5e6f of 2027-03-01, modified, built with go1.26.8"},
		{"checkout of a release", "v1.2.3", append(checkout, "false"), "v1.2.3, revision 1a2b3c4d5e6f of 2027-03-01, built with go1.26.8"},
		{"changed checkout of a release", "v1.2.3+dirty", append(checkout, "true"), "v1.2.3, revision 1a2b3c4d5e6f of 2027-03-01, modified, built with go1.26.8"},
		{"checkout after a release", "v1.2.4-0.20270301230405-1a2b3c4d5e6f", append(checkout, "false"), "revision 1a2b3c4d5e6f of 2027-03-01, built with go1.26.8"},
		{"revision without a day", "(devel)", checkout[2:4], "revision 1a2b3c4d5e6f, built with go1.26.8"},
		{"without notes", "(devel)", nil, "built with go1.26.8"},
	} {
		info := &debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Path: "example.org/doorleaf", Version: c.version}}
		for i := 0; i < len(c.notes); i += 2 {
			info.Settings = append(info.Settings, debug.BuildSetting{Key: c.notes[i], Value: c.notes[i+1]})
		}
		if got := strings.Join(builtFrom(info), ", "); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
	if got := builtFrom(new(debug.BuildInfo)); len(got) != 0 {
		t.Errorf("of nothing noted it says %q", got)
	}
}
