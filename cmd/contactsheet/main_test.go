package main

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/site/record"
)

// Every kind of sheet is made in every language that doorleaf has texts for, in every printing; the records of what was made prove it. A language whose
// fonts are not on this computer is named instead.
func TestEveryKindInEveryLanguageOnEveryPaper(t *testing.T) {
	kinds := kindsOf(t)
	var wrong []string
	dir := filepath.Join(t.TempDir(), "contact")
	code, errs := ran(dir)
	links := linksOf(t, dir)
	for _, tag := range locales.Tags() {
		if err := fontsFor(t, tag); err != nil {
			lacking(t, tag, err)
			wrong = append(wrong, tag)
			continue
		}
		for _, p := range printings {
			s := scenario{notices.Language(tag), p}
			if !slices.Contains(links, filepath.Join(dir, s.folder(), "out", "print", "contact.html")) {
				t.Errorf("the index does not lead to %s", s.folder())
			}
			made := madeIn(t, filepath.Join(dir, s.folder(), "out"), tag, string(p.Paper))
			for _, kind := range kinds {
				if !slices.Contains(made, kind) {
					t.Errorf("%s: no %s in the language %s", s.folder(), kind, tag)
				}
			}
		}
	}
	if (code == 0) != (len(wrong) == 0) || strings.Count(errs, "\n") != len(wrong) {
		t.Errorf("exit code %d with fonts missing for %v, and says %q", code, wrong, errs)
	}
	if want := (len(locales.Tags()) - len(wrong)) * len(printings); len(links) != want {
		t.Errorf("the index has %d links, want %d", len(links), want)
	}
}

// kindsOf reads the constants of the type Kind from the source of package notices, so that a new one is missed at once.
func kindsOf(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../notices/*.go")
	if err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, file := range files {
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(parsed, func(n ast.Node) bool {
			if spec, ok := n.(*ast.ValueSpec); ok && isKind(spec) {
				kind, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
				if err != nil {
					t.Fatal(err)
				}
				kinds = append(kinds, kind)
			}
			return true
		})
	}
	if !slices.Contains(kinds, string(notices.WorkAreaSign)) {
		t.Fatalf("%v are not the kinds of sheet", kinds)
	}
	return kinds
}

func isKind(spec *ast.ValueSpec) bool {
	of, named := spec.Type.(*ast.Ident)
	return named && of.Name == "Kind" && len(spec.Values) == 1
}

// madeIn lists the kinds of sheet that have a face in the language, on the paper.
func madeIn(t *testing.T, out, tag, paper string) []string {
	t.Helper()
	records, err := record.Load(os.DirFS(out))
	if err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, job := range records {
		for _, sheet := range job.Sheets {
			size, _, _ := strings.Cut(sheet.Paper, " ")
			if size == paper && slices.ContainsFunc(sheet.Faces, func(f record.Face) bool { return f.Language == tag }) {
				kinds = append(kinds, sheet.Kind)
			}
		}
	}
	return kinds
}

func fontsFor(t *testing.T, tag string) error {
	t.Helper()
	speaker, err := locales.Open(tag, nil)
	if err != nil {
		t.Fatal(err)
	}
	_, err = fit.NewShelf(os.ReadFile).Cast(speaker.Script(), speaker.Letters(), nil)
	return err
}

// lacking is a failure under CI, where no font may be missing.
func lacking(t *testing.T, tag string, err error) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Errorf("%s: %v", tag, err)
	}
	t.Logf("left out %s: %v", tag, err)
}

// linksOf are the files that the index leads to.
func linksOf(t *testing.T, dir string) []string {
	t.Helper()
	page, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	document, err := goquery.NewDocumentFromReader(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var links []string
	for _, link := range document.Find("a").EachIter() {
		file := filepath.Join(dir, filepath.FromSlash(link.AttrOr("href", "")))
		if _, err := os.Stat(file); err != nil {
			t.Errorf("the index leads nowhere: %v", err)
		}
		links = append(links, file)
	}
	return links
}

func ran(args ...string) (code int, errs string) {
	var stdout, stderr bytes.Buffer
	code = run(args, &stdout, &stderr)
	return code, stderr.String()
}

// One language that cannot be made keeps no other from being made.
func TestTheRestIsMade(t *testing.T) {
	all := notices.Languages
	t.Cleanup(func() { notices.Languages = all })
	english, nowhere := all[0], all[0]
	english.Tag, english.Name = notices.English, "English"
	nowhere.Tag, nowhere.Name = "\x00", "Nowhere" // no system has a folder of that name
	notices.Languages = append(notices.Languages[:0:0], nowhere, english)

	dir := filepath.Join(t.TempDir(), "contact")
	code, errs := ran(dir)
	if code != 1 || !strings.HasPrefix(errs, "contactsheet: Nowhere: ") || strings.Contains(errs, "English") {
		t.Errorf("exit code %d, and says %q", code, errs)
	}
	if links := linksOf(t, dir); len(links) != len(printings) {
		t.Errorf("the index leads to %v, want the %d printings of English", links, len(printings))
	}
}

func TestRefusesAFolderWithSomethingInIt(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "diary.txt"), []byte("Dear diary\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, errs := ran(dir); code != 1 || !strings.Contains(errs, "is not empty") {
		t.Errorf("exit code %d, and says %q", code, errs)
	}
	if entries, err := os.ReadDir(dir); err != nil || len(entries) != 1 {
		t.Errorf("the folder has %v now (%v)", entries, err)
	}
	if code, errs := ran("one", "two"); code != 2 || !strings.Contains(errs, "see contactsheet --help") {
		t.Errorf("exit code %d, and says %q", code, errs)
	}
}
