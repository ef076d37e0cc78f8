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

// figures are all rows of law_federal.go. The published ones name the paragraph in testdata/cfr that the figure comes from, as a pattern around it.
var figures = map[string]struct {
	rule          Rule
	file, pattern string
}{
	"firstYearWithout":  {firstYearWithout, "40CFR745.103.html", `housing constructed prior to (\d+),`},
	"smallInside":       {smallInside, "40CFR745.83.html", `disrupt (\d+) square feet or less of painted surface per room for interior`},
	"smallOutside":      {smallOutside, "40CFR745.83.html", `or (\d+) square feet or less of painted surface for exterior`},
	"sameRoomDays":      {sameRoomDays, "40CFR745.83.html", `in the same room within the same (\d+) days`},
	"aidedInside":       {aidedInside, "24CFR35.1350.html", `(\d+) square feet \(0\.2 square meters\) in any one interior room`},
	"aidedOutside":      {aidedOutside, "24CFR35.1350.html", `(\d+) square feet \(2 square meters\) on exterior surfaces`},
	"aidedPart":         {aidedPart, "24CFR35.1350.html", `(\d+) percent of the total surface area`},
	"onePeriodLimit":    {onePeriodLimit, "24CFR35.1345.html", `within one period of (\d+)-daytime hours`},
	"fewDays":           {fewDays, "24CFR35.1345.html", `completed within (\d+) calendar days`},
	"NightlyStrip":      {NightlyStrip, "24CFR35.1345.html", `the area within at least (\d+) feet \(3 meters\) of the containment`},
	"WindowReach":       {WindowReach, "40CFR745.85.html", `Close all doors and windows within (\d+) feet of the renovation`},
	"groundCover":       {groundCover, "40CFR745.85.html", `impermeable material extending (\d+) feet beyond the perimeter`},
	"lineBarrier":       {lineBarrier, "40CFR745.85.html", `surfaces within (\d+) feet of the property line`},
	"signReadFrom":      {signReadFrom, "24CFR35.1345.html", `easily read (\d+) feet \(6 meters\) from the edge`},
	"pamphletEarliest":  {pamphletEarliest, "40CFR745.84.html", `No more than (\d+) days before beginning renovation`},
	"pamphletMailed":    {pamphletMailed, "40CFR745.84.html", `certificate of mailing at least (\d+) days prior`},
	"dayStarts":         {rule: dayStarts},
	"dayEnds":           {rule: dayEnds},
	"talkAhead":         {rule: talkAhead},
	"letterAhead":       {rule: letterAhead},
	"resultTakes":       {rule: resultTakes},
	"requestFirst":      {rule: requestFirst},
	"requestAhead":      {rule: requestAhead},
	"businessDays":      {rule: businessDays},
	"windowsBefore":     {rule: windowsBefore},
	"spareCopies":       {rule: spareCopies},
	"presumptionNotice": {rule: presumptionNotice},
}

func TestFiguresAgainstPublishedText(t *testing.T) {
	for name, f := range figures {
		if f.file == "" {
			if f.rule.sureness == published {
				t.Errorf("%s is said to be read in a published text, and this test knows none", name)
			}
			continue
		}
		if f.rule.sureness != published {
			t.Errorf("%s stands in %s, but is marked %q", name, f.file, f.rule.sureness)
		}
		if published := publishedFigure(t, f.file, f.pattern); published != f.rule.Value {
			t.Errorf("%s is %v; %s has %v", name, f.rule.Value, f.file, published)
		}
		if section := sectionOf(f.file); !strings.HasPrefix(f.rule.citation, section) {
			t.Errorf("%s cites %q, but the figure stands in %s", name, f.rule.citation, section)
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
	units := []string{"ft", "sq ft", "percent", "hours", "o'clock", "days", "business days", "minutes", "copies", "year"}
	for name, f := range figures {
		if !slices.Contains(units, f.rule.Unit) || f.rule.Value <= 0 {
			t.Errorf("%s is %v %q", name, f.rule.Value, f.rule.Unit)
		}
		if _, err := time.Parse(time.DateOnly, f.rule.ReadOn); err != nil {
			t.Errorf("%s was read on %q", name, f.rule.ReadOn)
		}
		if len(f.rule.Source()) == 0 || f.rule.citation == "" && f.rule.sureness != inUse {
			t.Errorf("%s has no citation and is not marked %q", name, inUse)
		}
	}
}

// A row that somebody adds to law_federal.go is checked as well.
func TestEveryRowIsHere(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "law_federal.go", nil, 0)
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
		t.Errorf("law_federal.go has the rows %v, this test %v", rows, here)
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

// rows of profile.go against testdata/places.txt, which says on which public page each was read.
func TestPlacesAgainstPublishedPages(t *testing.T) {
	table, err := os.ReadFile(filepath.Join("..", "testdata", "places.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var published []string
	for line := range strings.Lines(string(table)) {
		if cells := strings.Split(line, "|"); len(cells) == 6 {
			published = append(published, strings.Join(cells[:5], "|"))
		}
	}
	ours := []string{placeRow("Minnesota", tallGroundCover, ", tall")}
	for _, p := range profiles {
		for _, row := range p.rows {
			ours = append(ours, placeRow(p.name, row, ""))
		}
	}
	slices.Sort(published)
	slices.Sort(ours)
	if !slices.Equal(ours, published) {
		t.Errorf("profile.go has\n%s\nand the pages have\n%s", strings.Join(ours, "\n"), strings.Join(published, "\n"))
	}
}

func placeRow(place string, row Rule, suffix string) string {
	return strings.Join([]string{place, row.Name + suffix, short(row.Value), string(row.sureness), row.citation}, "|")
}

// A row of a place is never looser than the federal one that it stands for, and points the same way.
func TestNoPlaceIsLooser(t *testing.T) {
	for _, p := range profiles {
		for _, row := range p.rows {
			federal, known := figureNamed(row.Name)
			if !known || row.Unit != federal.Unit || row.stricter != federal.stricter {
				t.Errorf("%s: no federal figure is like %s", p.name, row.Name)
			}
			if row.Value != federal.Value && !federal.IsStricter(row.Value) {
				t.Errorf("%s: %s is %v, looser than %v", p.name, row.Name, row.Value, federal.Value)
			}
		}
	}
}

func figureNamed(name string) (Rule, bool) {
	for _, f := range figures {
		if f.rule.Name == name {
			return f.rule, true
		}
	}
	return Rule{}, false
}

// The rule that only an inspector or risk assessor tests paint in aided housing has no figure, and its words are looked up.
func TestOnlyInspectorsTestAidedHousing(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "cfr", "24CFR35.110.html"))
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), "by a certified lead-based paint inspector or risk assessor") {
		t.Fatal("24 CFR 35.110 does not say who tests paint")
	}
	for _, k := range TestKinds {
		for aid, want := range map[Answer]bool{Yes: k.Name == "certified_inspector", Unknown: k.Name == "certified_inspector", No: k.Counts} {
			job := Job{FederalAid: aid}
			if got := job.shownFree(Work{Tests: []Test{{k.Name, AllSurfaces, NoLead}}}); got != want {
				t.Errorf("a test by %s with federal money %s shows free: %v", k.Name, aid, got)
			}
		}
	}
}
