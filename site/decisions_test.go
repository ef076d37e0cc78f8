package site_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/PuerkitoBio/goquery"
	"golang.org/x/tools/txtar"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
)

var update = flag.Bool("update", false, "rewrite the wants in testdata/decisions")

var decisionsFolder = filepath.Join("..", "testdata", "decisions")

// Each archive in testdata/decisions is one decision: a comment with the rule and its source, the job, what to show of its plan, and what is
// wanted there. The programme is testdata/decisions/programme.yaml, with the lines of a section programme behind it. To show problems is to load alone.
func TestDecisions(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(decisionsFolder, "*.txtar"))
	if err != nil || len(files) < 80 {
		t.Fatalf("there are %d archives of decisions: %v", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) { checkDecision(t, file) })
	}
}

func checkDecision(t *testing.T, file string) {
	archive, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if len(strings.TrimSpace(string(archive.Comment))) == 0 {
		t.Error("the archive does not begin with the rule and its source")
	}
	job, programme, show, want := sectionsOf(t, archive)
	got := decided(t, job, programme, show, besides(archive))
	if *update {
		writeWant(t, file, archive, got)
		return
	}
	if want == "" {
		t.Fatal("the archive has no section want; run the test with -update, and check what it writes against the rule")
	}
	if got != want {
		t.Errorf("the plan shows\n%s\nwant\n%s", got, want)
	}
}

func sectionsOf(t *testing.T, archive *txtar.Archive) (job, programme, show, want string) {
	t.Helper()
	for _, f := range archive.Files {
		switch f.Name {
		case "job.yaml":
			job = string(f.Data)
		case "programme":
			programme = string(f.Data)
		case "show":
			show = string(f.Data)
		case "want":
			want = string(f.Data)
		default:
			if !strings.HasPrefix(f.Name, "jobs/") {
				t.Errorf("the archive has a section %q, and this test knows job.yaml, programme, show, want and other job files below jobs/", f.Name)
			}
		}
	}
	if job == "" || show == "" {
		t.Fatal("the archive needs the sections job.yaml and show")
	}
	return job, programme, show, want
}

// besides are the other job files of an archive.
func besides(archive *txtar.Archive) []txtar.File {
	return slices.DeleteFunc(slices.Clone(archive.Files), func(f txtar.File) bool { return !strings.HasPrefix(f.Name, "jobs/") })
}

// decided loads a job with the programme and what the archive adds to it, and shows its plan, or the problems in the file.
func decided(t *testing.T, job, more, show string, others []txtar.File) string {
	t.Helper()
	fsys := programmeWith(t, more)
	fsys["jobs/job.yaml"] = &fstest.MapFile{Data: []byte(job)}
	for _, other := range others {
		fsys[other.Name] = &fstest.MapFile{Data: other.Data}
	}
	if strings.TrimSpace(show) == "problems" {
		_, problems := jobfile.Load(fsys, afterAll, "jobs/job.yaml")
		return problems.Error() + "\n"
	}
	return shown(t, notices.Decide(loaded(t, fsys, "jobs/job.yaml")), show)
}

// programmeWith is the folder of the cases, with what an archive adds to the programme.
func programmeWith(t *testing.T, more string) fstest.MapFS {
	t.Helper()
	programme, err := os.ReadFile(filepath.Join(decisionsFolder, jobfile.ProgrammeFile))
	if err != nil {
		t.Fatal(err)
	}
	return fstest.MapFS{jobfile.ProgrammeFile: {Data: append(programme, more...)}}
}

func writeWant(t *testing.T, file string, archive *txtar.Archive, got string) {
	t.Helper()
	archive.Files = slices.DeleteFunc(archive.Files, func(f txtar.File) bool { return f.Name == "want" })
	archive.Files = append(archive.Files, txtar.File{Name: "want", Data: []byte(got)})
	if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
		t.Fatal(err)
	}
}

// views are what a line of the section show can ask for; the words after the first are its arguments.
var views = map[string]func(t *testing.T, plan notices.Plan, args []string) []string{
	"reasons": showReasons, // of these decisions, with what binds and what is missing
	"sheets":  showSheets,  // of these kinds, or all: id, kind, copies, due day, languages
	"facts":   showFacts,   // of this sheet, in language-free form
	"lines":   showLines,   // of this sheet: the messages below the table
	"pages":   showPages,   // the kinds there are; with an argument the facts of one
	"walk":    showWalk,    // the homes in walking order
	"late":    showLate,    // sheets for neighbours: the days on which they are due and late
	"text":    showText,    // of this sheet: its English words as they print
	"steps":   showSteps,   // of these kinds, or all: from when to when, and what to do
	"signs":   showSigns,   // where each hangs and where its reader stands
}

func shown(t *testing.T, plan notices.Plan, show string) string {
	t.Helper()
	var out strings.Builder
	for line := range strings.Lines(show) {
		words := strings.Fields(line)
		view, known := views[words[0]]
		if !known {
			t.Fatalf("nobody knows how to show %q", words[0])
		}
		for _, shownLine := range view(t, plan, words[1:]) {
			fmt.Fprintln(&out, shownLine)
		}
	}
	return out.String()
}

func showReasons(t *testing.T, plan notices.Plan, decisions []string) []string {
	t.Helper()
	said, err := site.Explain(plan)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, decision := range decisions {
		before := len(lines)
		for i, r := range said {
			if r.Decision == decision {
				lines = append(lines, strings.TrimSpace(decision+" "+plan.Reasons[i].About)+": "+r.Outcome, "  because "+r.Because, "  source "+r.Source, "  binds "+r.Binds)
				for _, m := range r.Missing {
					lines = append(lines, "  missing "+m.Field+": "+m.Would)
				}
			}
		}
		if len(lines) == before {
			lines = append(lines, "no "+decision)
		}
	}
	return lines
}

func showSheets(_ *testing.T, plan notices.Plan, kinds []string) []string {
	var lines []string
	for _, s := range plan.Sheets {
		if len(kinds) == 0 || slices.Contains(kinds, string(s.Kind)) {
			lines = append(lines, fmt.Sprintf("%s %s x%d %s %s", s.ID, s.Kind, s.Copies, s.Due, languagesOf(s)))
		}
	}
	if len(lines) == 0 {
		return []string{"no sheet"}
	}
	return lines
}

// showText reads the printed file of a sheet: the headline, each row of the table, and the sentences below it.
func showText(t *testing.T, plan notices.Plan, ids []string) []string {
	t.Helper()
	plan.Sheets = slices.DeleteFunc(slices.Clone(plan.Sheets), func(s notices.Sheet) bool { return s.ID != ids[0] })
	unit, err := site.Build(plan, ledger.Job{}, readersKit(t))
	if err != nil {
		t.Fatal(err)
	}
	page, made := unit.Files["print/"+plan.Code+"/"+ids[0]+".html"]
	if !made {
		return []string{"no " + ids[0]}
	}
	doc, err := goquery.NewDocumentFromReader(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	face := doc.Find("section.face[lang=en]")
	var lines []string
	add := func(text string) {
		if text = strings.Join(strings.Fields(text), " "); text != "" {
			lines = append(lines, text)
		}
	}
	add(face.First().Find(".head").Text())
	face.Find("table.facts tr").Each(func(_ int, row *goquery.Selection) {
		var cells []string
		row.Find("th.group, .cell").Each(func(_ int, cell *goquery.Selection) {
			cells = append(cells, strings.Join(strings.Fields(cell.Text()), " "))
		})
		add(strings.Join(cells, " | "))
	})
	face.Find(".blocks p").Each(func(_ int, p *goquery.Selection) { add(p.Text()) })
	return lines
}

// readersKit has what the sheets of these cases need, read once.
var readersKit = func() func(t *testing.T) site.Kit {
	kit := sync.OnceValues(func() (site.Kit, error) { return site.NewKit(notices.Programme{}, testKey, os.ReadFile) })
	return func(t *testing.T) site.Kit {
		t.Helper()
		made, err := kit()
		if err != nil {
			t.Fatal(err)
		}
		return made
	}
}()

func showSteps(t *testing.T, plan notices.Plan, kinds []string) []string {
	t.Helper()
	var lines []string
	for _, s := range plan.Steps {
		if len(kinds) == 0 || slices.Contains(kinds, string(s.Kind)) {
			said, err := site.Explain(notices.Plan{Reasons: []notices.Reason{{Outcome: s.Says, Because: s.Says}}})
			if err != nil {
				t.Fatal(err)
			}
			lines = append(lines, fmt.Sprintf("%s from %s to %s, late after %s: %s", s.ID, s.First, s.Due, s.LateAfter, said[0].Outcome))
		}
	}
	if len(lines) == 0 {
		return []string{"no step"}
	}
	return lines
}

func showLate(_ *testing.T, plan notices.Plan, _ []string) []string {
	var lines []string
	for _, s := range plan.Sheets {
		if !s.LateAfter.IsZero() {
			lines = append(lines, fmt.Sprintf("%s due %s, late after %s", s.ID, s.Due, s.LateAfter))
		}
	}
	return lines
}

func showSigns(_ *testing.T, plan notices.Plan, _ []string) []string {
	var lines []string
	for _, s := range plan.Sheets {
		if s.Kind == notices.WorkAreaSign {
			lines = append(lines, fmt.Sprintf("%s at %s, read from %s", s.ID, s.Hang[0], s.ReadFrom))
		}
	}
	return lines
}

// languagesOf are those of the faces in order: "vi,en", and "vi+en" for both on one side.
func languagesOf(sheet notices.Sheet) string {
	var all []string
	for _, f := range sheet.Faces {
		face := string(f.Language)
		if f.Beside != "" {
			face += "+" + string(f.Beside)
		}
		all = append(all, face)
	}
	return strings.Join(all, ",")
}

func showFacts(t *testing.T, plan notices.Plan, ids []string) []string {
	return factLines(sheetOf(t, plan, ids[0]))
}

func factLines(content notices.Content) []string {
	var lines []string
	for _, fact := range content.Facts {
		line := written(fact.Label) + ":"
		for _, cell := range fact.Cells {
			line += " " + written(cell)
		}
		lines = append(lines, line)
	}
	return lines
}

func showLines(t *testing.T, plan notices.Plan, ids []string) []string {
	var lines []string
	for _, block := range sheetOf(t, plan, ids[0]).Blocks {
		line := block.Head.ID + ":"
		for _, m := range block.Lines {
			line += " " + m.ID
		}
		lines = append(lines, line)
	}
	return lines
}

func sheetOf(t *testing.T, plan notices.Plan, id string) notices.Content {
	t.Helper()
	for _, s := range plan.Sheets {
		if s.ID == id {
			return s.Faces[0].Content
		}
	}
	t.Fatalf("there is no sheet %s", id)
	return notices.Content{}
}

func showPages(_ *testing.T, plan notices.Plan, kinds []string) []string {
	line := "pages"
	for _, page := range plan.Pages {
		line += " " + string(page.Kind)
		if slices.Contains(kinds, string(page.Kind)) {
			return factLines(page.Content)
		}
	}
	return []string{line}
}

func showWalk(_ *testing.T, plan notices.Plan, _ []string) []string {
	var lines []string
	for _, home := range plan.Homes {
		lines = append(lines, fmt.Sprintf("walk to %s, %s, %d doors, by %s", home.ID, written(home.Who), home.Doors, home.Due))
	}
	return lines
}

// written is a value without any language: days as 2027-05-08..2027-05-10, hours as 07:30, words and messages by id.
func written(value notices.Value) string {
	switch v := value.(type) {
	case notices.Days:
		var spans []string
		for _, s := range v {
			spans = append(spans, spanWritten(s))
		}
		return strings.Join(spans, ",")
	case notices.Time:
		return notices.Clock(v).String()
	case notices.Words:
		return strings.Join(v, ",")
	case notices.Places:
		var places []string
		for _, ids := range v {
			places = append(places, strings.Join(ids, "+"))
		}
		return strings.Join(places, ",")
	case notices.Pair:
		return written(v.Label) + "=" + written(v.Value)
	case notices.Message:
		text := v.ID
		for _, held := range v.Values {
			text += "(" + written(held) + ")"
		}
		return text
	}
	return fmt.Sprint(value)
}

func spanWritten(s notices.Span) string {
	if s.First == s.Last {
		return s.First.String()
	}
	return s.First.String() + ".." + s.Last.String()
}

// plansOf decides each job.
func plansOf(jobs ...notices.Job) []notices.Plan {
	var plans []notices.Plan
	for _, job := range jobs {
		plans = append(plans, notices.Decide(job))
	}
	return plans
}
