package notices

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// figures are all rows of rules.go. The published ones name the paragraph in testdata/cfr that the figure comes from, as a pattern around it.
var figures = map[string]struct {
	rule          Rule
	file, pattern string
}{
	"WindowReach":      {WindowReach, "40CFR745.85.html", `Close all doors and windows within (\d+) feet of the renovation`},
	"FirstYearWithout": {FirstYearWithout, "40CFR745.103.html", `housing constructed prior to (\d+),`},
	"PamphletEarliest": {PamphletEarliest, "40CFR745.84.html", `No more than (\d+) days before beginning renovation`},
	"PamphletMailed":   {PamphletMailed, "40CFR745.84.html", `certificate of mailing at least (\d+) days prior`},
	"LetterAhead":      {rule: LetterAhead},
	"RequestAhead":     {rule: RequestAhead},
	"WindowsBefore":    {rule: WindowsBefore},
	"Spares":           {rule: Spares},
}

func TestFiguresAgainstPublishedText(t *testing.T) {
	for name, f := range figures {
		if f.file == "" {
			if f.rule.Sureness == Read {
				t.Errorf("%s is said to be read in a published text, and this test knows none", name)
			}
			continue
		}
		if f.rule.Sureness != Read {
			t.Errorf("%s stands in %s, but is marked %q", name, f.file, f.rule.Sureness)
		}
		if published := publishedFigure(t, f.file, f.pattern); published != f.rule.Value {
			t.Errorf("%s is %v; %s has %v", name, f.rule.Value, f.file, published)
		}
		if section := sectionOf(f.file); !strings.HasPrefix(f.rule.Citation, section) {
			t.Errorf("%s cites %q, but the figure stands in %s", name, f.rule.Citation, section)
		}
	}
}

func publishedFigure(t *testing.T, file, pattern string) float64 {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "testdata", "cfr", file))
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(pattern).FindSubmatch(text)
	if found == nil {
		t.Fatalf("%s has no text like %q", file, pattern)
	}
	figure, err := strconv.ParseFloat(string(found[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return figure
}

// sectionOf is the section that an excerpt comes from: "40 CFR 745.85" of 40CFR745.85.html.
func sectionOf(file string) string {
	return strings.Replace(strings.TrimSuffix(file, ".html"), "CFR", " CFR ", 1)
}

// Every row can be traced: what it counts, when it was read, and where it stands or that it is practice.
func TestEveryFigureCanBeTraced(t *testing.T) {
	units := []string{"ft", "days", "minutes", "copies", "year"}
	for name, f := range figures {
		if !slices.Contains(units, f.rule.Unit) || f.rule.Value <= 0 {
			t.Errorf("%s is %v %q", name, f.rule.Value, f.rule.Unit)
		}
		if _, err := time.Parse(time.DateOnly, f.rule.ReadOn); err != nil {
			t.Errorf("%s was read on %q", name, f.rule.ReadOn)
		}
		if f.rule.Source() == "" || f.rule.Citation == "" && f.rule.Sureness != Practice {
			t.Errorf("%s has no citation and is not marked %q", name, Practice)
		}
	}
}

// A row that somebody adds to rules.go is checked as well.
func TestEveryRowIsHere(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "rules.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var rows []string
	ast.Inspect(file, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if ok && len(spec.Values) == 1 && isRule(spec.Values[0]) {
			rows = append(rows, spec.Names[0].Name)
		}
		return true
	})
	slices.Sort(rows)
	if here := slices.Sorted(maps.Keys(figures)); !slices.Equal(rows, here) {
		t.Errorf("rules.go has the rows %v, this test %v", rows, here)
	}
}

func isRule(value ast.Expr) bool {
	literal, ok := value.(*ast.CompositeLit)
	if !ok {
		return false
	}
	name, ok := literal.Type.(*ast.Ident)
	return ok && name.Name == "Rule"
}
