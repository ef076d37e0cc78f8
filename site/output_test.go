package site

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// aUnit is a job with some sheets and pages: one file that says text, and others that are always the same.
func aUnit(t *testing.T, code, text string) Unit {
	t.Helper()
	record := aRecord(code, Token("a key for tests", code))
	unit, err := NewUnit(record, someFiles(record, text), JobRecord{})
	if err != nil {
		t.Fatal(err)
	}
	return unit
}

func someFiles(record JobRecord, text string) Files {
	sheets, pages := "print/"+record.Code+"/", "web/"+record.Token+"/"
	return Files{
		sheets + "all.html":              []byte(text),
		sheets + "walk.html":             []byte("the walk"),
		pages + "index.html":             []byte("languages"),
		pages + "ES/WINDOWS/index.html":  []byte("ventanas: " + text),
		pages + "EN/WINDOWS/index.html":  []byte("windows"),
		sheets + "sheets/window-12.html": []byte("window sheet"),
	}
}

func anOutput(t *testing.T, earlier Index, units ...Unit) Output {
	t.Helper()
	var records []JobRecord
	var codes []string
	for _, u := range units {
		records = append(records, u.Record)
		codes = append(codes, u.Record.Code)
	}
	files := Files{
		"print/index.html":         []byte("jobs: " + strings.Join(codes, ", ")),
		"print/fonts/NotoSans.ttf": []byte("font"),
		"web/index.html":           []byte("no page here"),
		"web/404.html":             []byte("no such page"),
	}
	return Output{Jobs: units, Shared: NewShared(files, records, earlier)}
}

func TestOutputIsAFileSystem(t *testing.T) {
	out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"))
	names := slices.Sorted(maps.Keys(out.all()))
	if len(names) != 12 {
		t.Errorf("%d files: %v", len(names), names)
	}
	if err := fstest.TestFS(out.FS(), names...); err != nil {
		t.Error(err)
	}
}

func TestUnitListsItsFiles(t *testing.T) {
	unit := aUnit(t, "alder-14", "one")
	listed := digests(unit.Record.Files)
	for path, data := range unit.Files {
		if path == recordPath("alder-14") {
			continue
		}
		if listed[path] != digest(data) {
			t.Errorf("%s is recorded as %q", path, listed[path])
		}
		delete(listed, path)
	}
	if len(listed) > 0 {
		t.Errorf("recorded, but not there: %v", listed)
	}
}

func TestPlaceOfFiles(t *testing.T) {
	for name, breakIt := range map[string]func(*Output){
		"code up":             func(o *Output) { o.Jobs[0].Record.Code = "../alder-14" },
		"code in capitals":    func(o *Output) { o.Jobs[0].Record.Code = "Alder-14" },
		"no code":             func(o *Output) { o.Jobs[0].Record.Code = "" },
		"short token":         func(o *Output) { o.Jobs[0].Record.Token = "4821" },
		"foreign folder":      func(o *Output) { o.Jobs[0].Folders[1] = "web" },
		"file beside":         func(o *Output) { o.Jobs[0].Files["print/elm-2/all.html"] = nil },
		"file up":             func(o *Output) { o.Jobs[0].Files["print/alder-14/../x.html"] = nil },
		"file on Windows":     func(o *Output) { o.Jobs[0].Files[`print/alder-14/..\x.html`] = nil },
		"shared in a job":     func(o *Output) { o.Shared["print/alder-14/x.html"] = nil },
		"shared up":           func(o *Output) { o.Shared["../x.html"] = nil },
		"shared and absolute": func(o *Output) { o.Shared["/x.html"] = nil },
		"shared and hidden":   func(o *Output) { o.Shared[lockFile] = nil },
		"one job twice":       func(o *Output) { o.Jobs = append(o.Jobs, o.Jobs[0]) },
	} {
		out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"))
		breakIt(&out)
		dir := t.TempDir()
		if _, err := Write(dir, out); err == nil {
			t.Errorf("%s: was written", name)
		}
		if tree := readTree(t, dir); len(tree) > 0 {
			t.Errorf("%s: left %v", name, tree)
		}
	}
	fonts := anOutput(t, Index{}, aUnit(t, "fonts", "one"))
	if err := fonts.check(); err == nil || !strings.Contains(err.Error(), "print/fonts") {
		t.Errorf("a job named fonts: error %v", err)
	}
}
