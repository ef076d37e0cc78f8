package main

import (
	"runtime/debug"
	"strings"
)

// version says what this program was built from and with, as far as the build noted it.
func version() string {
	info, noted := debug.ReadBuildInfo()
	if !noted {
		info = new(debug.BuildInfo)
	}
	return strings.TrimSpace("doorleaf " + strings.Join(builtFrom(info), ", "))
}

func builtFrom(info *debug.BuildInfo) []string {
	notes := map[string]string{}
	for _, s := range info.Settings {
		notes[s.Key] = s.Value
	}
	revision := notes["vcs.revision"][:min(12, len(notes["vcs.revision"]))]
	var parts []string
	if v := strings.TrimSuffix(info.Main.Version, "+dirty"); v != "" && v != "(devel)" && (revision == "" || !strings.HasSuffix(v, "-"+revision)) {
		parts = append(parts, v)
	}
	if revision != "" {
		day, _, _ := strings.Cut(notes["vcs.time"], "T")
		parts = append(parts, strings.TrimSuffix("revision "+revision+" of "+day, " of "))
	}
	if notes["vcs.modified"] == "true" {
		parts = append(parts, "modified")
	}
	if info.GoVersion != "" {
		parts = append(parts, "built with "+info.GoVersion)
	}
	return parts
}
