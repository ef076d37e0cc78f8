package notices

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

var (
	sectionCited = regexp.MustCompile(`^(\d+) CFR (\d+\.\d+)`)
	sectionFile  = regexp.MustCompile("^\\| `(\\d+)CFR([0-9.]+)\\.html` \\|.*\\| (\\d{4}-\\d\\d-\\d\\d) \\|$")
)

// Sections that were read in full, and of which testdata/cfr keeps no piece: the same edition, the same day.
var keptNowhere = []string{"24 CFR 35.175"}

// The day on which a federal passage was read is the one that testdata/SOURCES.md has for its section, whoever cites it: a figure or a sentence of its own.
func TestReadingDaysAgainstTheSources(t *testing.T) {
	noted := readingDaysNoted(t)
	cited := 0
	for _, p := range everyPassage(t) {
		section := sectionCited.FindString(p.Citation)
		if p.Sureness != published || section == "" || slices.Contains(keptNowhere, section) {
			continue
		}
		cited++
		if noted[section] == "" {
			t.Errorf("%s is said to be read, and SOURCES.md does not know %s", p.Citation, section)
		} else if p.ReadOn != noted[section] {
			t.Errorf("%s was read on %s, and SOURCES.md has %s", p.Citation, p.ReadOn, noted[section])
		}
	}
	if cited < 50 {
		t.Errorf("only %d passages were compared", cited)
	}
}

// readingDaysNoted are the days in SOURCES.md, by section: "40 CFR 745.82".
func readingDaysNoted(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "testdata", "SOURCES.md"))
	if err != nil {
		t.Fatal(err)
	}
	days := map[string]string{}
	for line := range strings.Lines(string(text)) {
		if row := sectionFile.FindStringSubmatch(strings.TrimSpace(line)); row != nil {
			days[row[1]+" CFR "+row[2]] = row[3]
		}
	}
	return days
}

// everyPassage is each that stands in the code of this package, one by one: those of figures, and those of read and second.
func everyPassage(t *testing.T) []passage {
	t.Helper()
	var all []passage
	for _, r := range rows() {
		for c := range strings.SplitSeq(r.citation, "; ") {
			all = append(all, passage{c, r.ReadOn, r.sureness})
		}
	}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				all = append(all, passagesOf(call)...)
			}
			return true
		})
	}
	return all
}

// passagesOf are those that a call of read or second names by text.
func passagesOf(call *ast.CallExpr) []passage {
	name, ok := call.Fun.(*ast.Ident)
	if !ok || name.Name != "read" && name.Name != "second" {
		return nil
	}
	var texts []string
	for _, arg := range call.Args {
		if literal, ok := arg.(*ast.BasicLit); ok {
			text, _ := strconv.Unquote(literal.Value)
			texts = append(texts, text)
		}
	}
	if len(texts) == 0 {
		return nil
	}
	return passages(texts[0], map[string]Sureness{"read": published, "second": secondary}[name.Name], texts[1:])
}

// Whoever says that it was read says when, and whoever remembers does not.
func TestEveryPassageHasItsDay(t *testing.T) {
	for _, p := range append(everyPassage(t), slices.Concat(exemptSource, remembered("89 FR 89416"), noNeighbourSource)...) {
		_, err := time.Parse(time.DateOnly, p.ReadOn)
		if wants := p.Sureness == published || p.Sureness == secondary; wants && err != nil || p.Sureness == fromMemory && p.ReadOn != "" {
			t.Errorf("%s (%s) was read on %q", p.Citation, p.Sureness, p.ReadOn)
		}
	}
	for _, l := range DustLevels {
		if _, err := time.Parse(time.DateOnly, l.readOn); err != nil {
			t.Errorf("the levels of %s were read on %q", l.from, l.readOn)
		}
	}
}

func TestASourceSaysWhatIsNotQuiteSure(t *testing.T) {
	source := read("2026-11-25", "one", "two").and(second("2026-11-26", "three")).and(remembered("four")).and(read("2026-11-25", "two"))
	if got, want := source.String(), "one; two; three (read in a secondary text); four (from memory)"; got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	if got := inPractice.String(); got != string(inUse) {
		t.Errorf("practice says %q", got)
	}
}

// The edition that a plan names is the one that SOURCES.md has.
func TestEditionAgainstTheSources(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "SOURCES.md"))
	if err != nil {
		t.Fatal(err)
	}
	if want := strconv.Itoa(FederalEdition) + " annual edition"; !strings.Contains(string(text), want) {
		t.Errorf("SOURCES.md does not say %q", want)
	}
}
