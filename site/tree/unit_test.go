package tree

import (
	"maps"
	"slices"
	"strings"
	"testing"
)

// An output is all that one make writes.
type output struct {
	Jobs   []Unit
	Shared Files
	index  Index // before it
}

const alderToken, elmToken, oakToken = "482109371158", "771012345678", "000000000003"

var tokens = map[string]string{"alder-14": alderToken, "elm-2": elmToken, "oak-3": oakToken, "fonts": "123456789012"}

// aUnit is a job with some sheets and pages: one file that says text, and others that are always the same.
func aUnit(code, text string) Unit {
	return recorded(code, tokens[code], someFiles(code, tokens[code], text))
}

// recorded is a unit with its record.
func recorded(code, token string, files Files) Unit {
	all := maps.Clone(files)
	all[RecordPath(code)] = JSON(written{code, token, files.List()})
	return Unit{code, token, all}
}

func someFiles(code, token, text string) Files {
	sheets, pages := "print/"+code+"/", "web/"+token+"/"
	return Files{
		sheets + "all.html":              []byte(text),
		sheets + "walk.html":             []byte("the walk"),
		pages + "index.html":             []byte("languages"),
		pages + "ES/WINDOWS/index.html":  []byte("ventanas: " + text),
		pages + "EN/WINDOWS/index.html":  []byte("windows"),
		sheets + "sheets/window-12.html": []byte("window sheet"),
	}
}

func anOutput(index Index, units ...Unit) output {
	var codes []string
	for _, u := range units {
		codes = append(codes, u.Code)
	}
	return output{units, Files{
		"print/index.html":         []byte("jobs: " + strings.Join(codes, ", ")),
		"print/fonts/NotoSans.ttf": []byte("font"),
		"web/index.html":           []byte("no page here"),
		"web/404.html":             []byte("no such page"),
	}, index}
}

// all is every file that the folder has after a make of the output alone.
func (o output) all() Files {
	all := Files{}
	maps.Copy(all, o.Shared)
	var units []written
	for _, u := range o.Jobs {
		maps.Copy(all, u.Files)
		units = append(units, written{Code: u.Code, Token: tokens[u.Code]})
	}
	if o.Shared != nil {
		all[RecordFile] = JSON(o.index.next(units, o.Shared, func(string) bool { return true }))
	}
	return all
}

func TestUnitListsItsFiles(t *testing.T) {
	list := someFiles("alder-14", alderToken, "one").List()
	if len(list) != 6 || !slices.IsSortedFunc(list, byPath) || list[0].SHA256 != Digest([]byte("one")) {
		t.Errorf("got %v", list)
	}
}

func TestPlaceOfFiles(t *testing.T) {
	for name, breakIt := range map[string]func(*output){
		"code up":             func(o *output) { o.Jobs[0].Code = "../alder-14" },
		"code in capitals":    func(o *output) { o.Jobs[0].Code = "Alder-14" },
		"no code":             func(o *output) { o.Jobs[0].Code = "" },
		"short token":         func(o *output) { o.Jobs[0].Token = "4821" },
		"file beside":         func(o *output) { o.Jobs[0].Files["print/elm-2/all.html"] = nil },
		"file up":             func(o *output) { o.Jobs[0].Files["print/alder-14/../x.html"] = nil },
		"file on Windows":     func(o *output) { o.Jobs[0].Files[`print/alder-14/..\x.html`] = nil },
		"shared in a job":     func(o *output) { o.Shared["print/alder-14/x.html"] = nil },
		"shared up":           func(o *output) { o.Shared["../x.html"] = nil },
		"shared and absolute": func(o *output) { o.Shared["/x.html"] = nil },
		"shared and hidden":   func(o *output) { o.Shared[lockFile] = nil },
		"one job twice":       func(o *output) { o.Jobs = append(o.Jobs, o.Jobs[0]) },
		"a job named fonts":   func(o *output) { o.Jobs = append(o.Jobs, aUnit("fonts", "one")) },
	} {
		out := anOutput(Index{}, aUnit("alder-14", "one"))
		breakIt(&out)
		dir := t.TempDir()
		if _, err := put(dir, out); err == nil {
			t.Errorf("%s: was written", name)
		}
		if tree := readTree(t, dir); len(tree) > 0 {
			t.Errorf("%s: left %v", name, tree)
		}
	}
}

func TestIndexKeepsOlderSharedFiles(t *testing.T) {
	nowhere := func(string) bool { return false }
	first := Index{}.next(nil, Files{"print/fonts/Old.ttf": []byte("old"), "print/index.html": []byte("1")}, nowhere)
	second := first.next(nil, Files{"print/fonts/New.ttf": []byte("new"), "print/index.html": []byte("2")}, nowhere)
	want := []File{{"print/fonts/New.ttf", Digest([]byte("new"))}, {"print/fonts/Old.ttf", Digest([]byte("old"))}, {"print/index.html", Digest([]byte("2"))}}
	if !slices.Equal(second.Files, want) {
		t.Errorf("files %v", second.Files)
	}
	if text := JSON(Index{}.next(nil, nil, nowhere)); strings.Contains(string(text), "null") {
		t.Errorf("null in %s", text)
	}
}
