package site_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
)

// module is the path that all of our own imports start with.
const module = "example.org/doorleaf/"

// mayUse is the design of the project: imports run from cmd to site to the three rooms below it, and those know nothing of each other.
var mayUse = map[string][]string{
	"cmd":       {"cmd", "site", "notices"},
	"site":      {"site", "notices", "locales", "templates"},
	"notices":   {"notices"},
	"locales":   {"locales"},
	"templates": {"templates"},
}

// importsOf lists the imports of every file of a top-level folder, sub-folders included and tests left out, by file.
func importsOf(t *testing.T, room string) map[string][]string {
	t.Helper()
	root := os.DirFS("..")
	all := map[string][]string{}
	err := fs.WalkDir(root, room, func(file string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", filepath.FromSlash(file)), nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		all[file] = []string{}
		for _, spec := range parsed.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			all[file] = append(all[file], name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) == 0 {
		t.Fatalf("there is no Go file in %s", room)
	}
	return all
}

func TestImportsRunOneWay(t *testing.T) {
	for room, allowed := range mayUse {
		for file, imports := range importsOf(t, room) {
			for _, name := range imports {
				if ours, inside := strings.CutPrefix(name, module); inside && !slices.Contains(allowed, firstPart(ours)) {
					t.Errorf("%s imports %s; %s may use %v", file, name, room, allowed)
				}
			}
		}
	}
}

// Judging knows nothing of files: notices imports neither its reader nor YAML, and the reader imports nothing else of ours.
func TestReadingIsARoomOfItsOwn(t *testing.T) {
	mayUse := map[string][]string{"notices": nil, "notices/jobfile": {"notices", "notices/strict"}, "notices/strict": nil}
	for file, imports := range importsOf(t, "notices") {
		allowed, known := mayUse[path.Dir(file)]
		if !known {
			t.Errorf("%s is in a room that this test does not know", file)
		}
		for _, name := range imports {
			if ours, inside := strings.CutPrefix(name, module); inside && !slices.Contains(allowed, ours) {
				t.Errorf("%s imports %s; it may use %v", file, name, allowed)
			}
		}
	}
}

// Inside site, the joiner uses every room, and no room uses the joiner. What a room may use of the three below is part of what it is: setting knows no notice, tree nothing but files.
func TestNoArrowInSiteRunsBackUp(t *testing.T) {
	mayUse := map[string][]string{
		"site":         {"site/disk", "site/fit", "site/ledger", "site/lists", "site/pdf", "site/record", "site/setting", "site/tree", "notices", "notices/jobfile", "locales", "templates", "templates/pictograms"},
		"site/lists":   {"site/record", "site/tree", "notices", "notices/jobfile", "locales", "templates"},
		"site/record":  {"site/tree", "templates"},
		"site/tree":    {"site/disk"},
		"site/ledger":  {"site/disk", "notices", "notices/jobfile"},
		"site/setting": {"site/fit", "templates"},
		"site/disk":    nil,
		"site/fit":     nil,
		"site/pdf":     nil,
	}
	for file, imports := range importsOf(t, "site") {
		room := path.Dir(file)
		if strings.HasPrefix(room, "site/qrencoder") {
			continue // a library that is kept here
		}
		allowed, known := mayUse[room]
		if !known {
			t.Errorf("%s is in a room that this test does not know", file)
		}
		for _, name := range imports {
			if ours, inside := strings.CutPrefix(name, module); inside && !slices.Contains(allowed, ours) {
				t.Errorf("%s imports %s; it may use %v", file, name, allowed)
			}
		}
	}
}

func firstPart(name string) string {
	first, _, _ := strings.Cut(name, "/")
	return first
}

// Every folder with Go in it belongs to a room, or a new room could go unchecked.
func TestEveryRoomIsKnown(t *testing.T) {
	entries, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if _, known := mayUse[entry.Name()]; entry.IsDir() && !known && hasGo(t, entry.Name()) {
			t.Errorf("the folder %s has Go in it, and this test does not know what it may import", entry.Name())
		}
	}
}

func hasGo(t *testing.T, room string) bool {
	t.Helper()
	found := false
	err := fs.WalkDir(os.DirFS(".."), room, func(file string, _ fs.DirEntry, err error) error {
		found = found || path.Ext(file) == ".go"
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// notices knows no language and no HTML.
func TestNoticesKnowNoLanguageAndNoHTML(t *testing.T) {
	for file, imports := range importsOf(t, "notices") {
		for _, name := range imports {
			for _, foreign := range []string{"html", "text/template", "golang.org/x/text", "golang.org/x/net", "github.com/nicksnyder", "github.com/yuin"} {
				if name == foreign || strings.HasPrefix(name, foreign+"/") {
					t.Errorf("%s imports %s", file, name)
				}
			}
		}
	}
}

// What notices can ask for, and what the bundles say: the same ids with the same placeholders, both ways.
func TestTextsEqualTheBundles(t *testing.T) {
	english, err := locales.Open("en", nil)
	if err != nil {
		t.Fatal(err)
	}
	own, err := locales.OpenCoordinator()
	if err != nil {
		t.Fatal(err)
	}
	compareTexts(t, "en", notices.Texts(), english)
	compareTexts(t, "own", notices.OwnTexts(), own)
}

func compareTexts(t *testing.T, bundle string, texts []notices.Text, speaker *locales.Speaker) {
	t.Helper()
	asked := map[string][]string{}
	for _, text := range texts {
		if _, twice := asked[text.ID]; twice {
			t.Errorf("notices declares the text %s twice", text.ID)
		}
		asked[text.ID] = text.Holds
	}
	for _, id := range speaker.IDs() {
		holds, known := asked[id]
		if !known {
			t.Errorf("%s.yaml has %s, and notices never asks for it", bundle, id)
		} else if has := speaker.Placeholders(id); !slices.Equal(holds, has) {
			t.Errorf("%s holds %v in notices and %v in %s.yaml", id, holds, has, bundle)
		}
		delete(asked, id)
	}
	for id := range asked {
		t.Errorf("notices asks for %s, and %s.yaml has no such text", id, bundle)
	}
}

func TestEveryLanguageHasABundle(t *testing.T) {
	var tags []string
	for _, l := range notices.Languages {
		tags = append(tags, string(l.Tag))
	}
	slices.Sort(tags)
	if !slices.Equal(tags, locales.Tags()) {
		t.Errorf("notices knows the languages %v, locales %v", tags, locales.Tags())
	}
}

// The exported functions and fields of locales and templates take and give types of their own package and of the standard library only.
func TestTypesOfTheStandardLibraryOnly(t *testing.T) {
	for _, room := range []string{"locales", "templates"} {
		for file := range importsOf(t, room) {
			checkTypes(t, file)
		}
	}
}

func checkTypes(t *testing.T, file string) {
	t.Helper()
	parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", filepath.FromSlash(file)), nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	foreign := map[string]string{} // by the name that the file knows them by
	for _, spec := range parsed.Imports {
		name, _ := strconv.Unquote(spec.Path.Value)
		known := path.Base(name)
		if spec.Name != nil {
			known = spec.Name.Name
		}
		if strings.Contains(firstPart(name), ".") {
			foreign[known] = name
		}
	}
	for _, shown := range exported(parsed) {
		ast.Inspect(shown, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if from, isName := s.X.(*ast.Ident); isName && foreign[from.Name] != "" {
					t.Errorf("%s shows the type %s.%s of %s", file, from.Name, s.Sel.Name, foreign[from.Name])
				}
			}
			return true
		})
	}
}

// exported are the types of exported functions and of exported fields.
func exported(file *ast.File) []ast.Node {
	var all []ast.Node
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncDecl:
			if n.Name.IsExported() {
				all = append(all, n.Type)
			}
			return false
		case *ast.StructType:
			for _, f := range n.Fields.List {
				if len(f.Names) > 0 && f.Names[0].IsExported() {
					all = append(all, f.Type)
				}
			}
		}
		return true
	})
	return all
}
