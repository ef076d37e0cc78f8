package site_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/tools/txtar"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

var outcomesFolder = filepath.Join("..", "testdata", "outcomes")

// Each archive in testdata/outcomes is one way in which a job can end or wait: a comment with the rule and its source; what is added to
// testdata/outcomes/job.yaml, or another job; what to show of the plan, and what is wanted there.
func TestOutcomes(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(outcomesFolder, "*.txtar"))
	if err != nil || len(files) < 45 {
		t.Fatalf("there are %d archives of outcomes: %v", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) { checkOutcome(t, file) })
	}
}

func checkOutcome(t *testing.T, file string) {
	archive, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(archive.Comment), "Source: ") {
		t.Error("the archive does not begin with the rule and its source")
	}
	parts := map[string]string{}
	for _, f := range archive.Files {
		parts[f.Name] = string(f.Data)
	}
	got := shownAtTheEnd(t, notices.Decide(outcomeJob(t, parts["job.yaml"], parts["add"])), parts["show"])
	if *update {
		writeWant(t, file, archive, got)
		return
	}
	if parts["want"] == "" {
		t.Fatal("the archive has no section want; run the test with -update, and check what it writes against the rule")
	}
	if got != parts["want"] {
		t.Errorf("the plan shows\n%s\nwant\n%s", got, parts["want"])
	}
}

// outcomeJob is a job of its own, or the common one, with some keys added.
func outcomeJob(t *testing.T, own, add string) notices.Job {
	t.Helper()
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(outcomesFolder, name))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	if own == "" {
		own = string(read("job.yaml"))
	}
	return loaded(t, fstest.MapFS{jobfile.ProgrammeFile: {Data: read(jobfile.ProgrammeFile)}, "jobs/job.yaml": {Data: []byte(own + add)}}, "jobs/job.yaml")
}

// endViews are what an outcome can show beside what a decision can.
var endViews = map[string]func(t *testing.T, plan notices.Plan, args []string) []string{
	"takedown": showTakeDown, // the doors whose signs come down now
	"page":     showPage,     // head, facts and messages of a page
	"heads":    showHead,     // the head of a sheet
	"blanks":   showBlanks,   // the lines to fill in of a sheet
	"walk":     showRounds,   // what is handed over where, and by when
}

func shownAtTheEnd(t *testing.T, plan notices.Plan, show string) string {
	t.Helper()
	known := maps.Clone(views)
	maps.Copy(known, endViews)
	var out strings.Builder
	for line := range strings.Lines(show) {
		words := strings.Fields(line)
		view, ok := known[words[0]]
		if !ok {
			t.Fatalf("nobody knows how to show %q", words[0])
		}
		for _, shownLine := range view(t, plan, words[1:]) {
			fmt.Fprintln(&out, shownLine)
		}
	}
	return out.String()
}

func showTakeDown(_ *testing.T, plan notices.Plan, _ []string) []string {
	lines := []string{"take down nothing"}
	for i, door := range plan.TakeDown {
		lines = append(lines[:i], fmt.Sprintf("take down at %s, %s: %s", door.Way, door.Area, strings.Join(door.Signs, " ")))
	}
	return lines
}

func showPage(t *testing.T, plan notices.Plan, kinds []string) []string {
	for _, page := range plan.Pages {
		if string(page.Kind) == kinds[0] {
			lines := []string{"page " + kinds[0] + " " + written(page.Head)}
			return append(append(lines, factLines(page.Content)...), blockLines(page.Content)...)
		}
	}
	t.Fatalf("there is no page %s", kinds[0])
	return nil
}

func blockLines(content notices.Content) []string {
	var lines []string
	for _, block := range content.Blocks {
		line := block.Head.ID + ":"
		for _, m := range block.Lines {
			line += " " + m.ID
		}
		lines = append(lines, line)
	}
	return lines
}

func showHead(t *testing.T, plan notices.Plan, ids []string) []string {
	return []string{written(sheetOf(t, plan, ids[0]).Head)}
}

func showBlanks(t *testing.T, plan notices.Plan, ids []string) []string {
	line := "to fill in:"
	for _, m := range sheetOf(t, plan, ids[0]).Blanks {
		line += " " + m.ID
	}
	return []string{line}
}

func showRounds(_ *testing.T, plan notices.Plan, _ []string) []string {
	var lines []string
	for _, home := range plan.Homes {
		lines = append(lines, fmt.Sprintf("walk to %s with %s, %d doors, by %s", home.ID, home.Kind, home.Doors, home.Due))
	}
	return lines
}

const (
	porchWasPassed = "  - {work: porch, on: 2027-05-08, by: Jo Park, role: examiner, certified: yes, independent: yes, result: passed}\n"
	hallWasPassed  = "  - {work: hall, on: 2027-05-12, by: Jo Park, role: examiner, certified: yes, independent: yes, result: passed}\n"
	hallWasFailed  = "  - {work: hall, on: 2027-05-12, by: Jo Park, role: examiner, certified: yes, independent: yes, result: failed}\n"
	ruled          = "anyone_paid: yes\nfederal_housing_money: yes\nowner: rents_it_out\nchecked_by: clearance_test\n"
	sampled        = "wipes:\n  - {work: hall, room: hallway, surface: floor, lab_date: 2027-05-12, result: 1 ug on 36 sq in}\n" +
		"  - {work: hall, room: hallway, surface: sill, lab_date: 2027-05-12, result: <4 ug/ft2}\n"
)

// endings are a job in each state, by name.
func endings(t *testing.T) map[string]notices.Job {
	all := map[string]notices.Job{}
	for name, add := range map[string]string{
		"before":       "",
		"hall passed":  "checks:\n" + hallWasPassed + sampled,
		"hall failed":  "checks:\n" + hallWasFailed,
		"porch passed": "checks:\n" + porchWasPassed,
		"one of each":  "checks:\n" + porchWasPassed + hallWasFailed,
		"all passed":   "checks:\n" + porchWasPassed + hallWasPassed + sampled,
		"closed":       "closed: yes\nchecks:\n" + porchWasPassed + hallWasPassed + sampled,
	} {
		all[name] = outcomeJob(t, "", ruled+add)
	}
	for _, check := range []string{"cleaning_check", "crew_look", "not_decided"} {
		words := strings.Replace(ruled, "clearance_test", check, 1)
		all["all passed, "+check] = outcomeJob(t, "", words+"checks:\n"+porchWasPassed+hallWasPassed+sampled)
		all["hall failed, "+check] = outcomeJob(t, "", words+"checks:\n"+hallWasFailed)
	}
	for _, route := range []string{"notice_to_each_home", "signs_in_the_building"} {
		all[route] = outcomeJob(t, "", ruled+"common_areas: {told_by: "+route+", homes: 6, records_from: Larkfield office}\n")
	}
	return all
}

// What releases is in the output only once the pass is in the job file; what keeps people out is there until then.
func TestNothingOfTheEndIsMadeBefore(t *testing.T) {
	of := map[string][]string{
		"return-h1":   {"hall passed", "porch passed", "one of each", "all passed", "closed"},
		"done-n12":    {"porch passed", "one of each", "all passed", "closed"},
		"done-spare":  {"porch passed", "one of each", "all passed", "closed"},
		"after-h1":    {"all passed", "closed"},
		"after-owner": {"all passed", "closed"},
		"again-h1":    {"hall failed", "one of each"},
		"letter-h1":   {"before", "hall passed", "hall failed", "porch passed", "one of each"},
		"slip":        {"before", "hall passed", "hall failed", "porch passed", "one of each"},
		"request-n12": {"before", "hall passed", "hall failed"},
		"note-n21":    {"before", "hall passed", "hall failed"},
		"pets-h1":     {"before", "hall passed", "hall failed"},

		"sign-hall-stairs-en":       {"before", "hall failed", "porch passed", "one of each"},
		"sign-porch-front_steps-vi": {"before", "hall passed", "hall failed"},
	}
	for _, state := range []string{"before", "hall passed", "hall failed", "porch passed", "one of each", "all passed", "closed"} {
		job := endings(t)[state]
		files := built(t, job, notices.Decide(job)).Files
		for sheet, states := range of {
			_, there := files["print/alder-14/"+sheet+".html"]
			if wanted := slices.Contains(states, state); there != wanted {
				t.Errorf("%s: the output has %s: %v, want %v", state, sheet, there, wanted)
			}
		}
	}
}

// webOf is what a job has under web/. The pages are made without the sheets, which take longer.
func webOf(t *testing.T, job notices.Job) tree.Files {
	t.Helper()
	plan := notices.Decide(job)
	plan.Sheets = nil
	return below(built(t, job, plan).Files, "web/")
}

func built(t *testing.T, job notices.Job, plan notices.Plan) site.Built {
	t.Helper()
	kit, err := site.NewKit(job.Programme, testKey, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	unit, err := site.Build(plan, ledger.Job{}, kit)
	if err != nil {
		t.Fatal(err)
	}
	return unit
}

// Nothing under web/ tells one family from another, in any state of a job: not who lives there, who checked on which day, or which rule binds.
func TestPagesAreTheSameForEveryFamilyToTheEnd(t *testing.T) {
	t.Parallel()
	changes := maps.Clone(otherFamilies)
	maps.DeleteFunc(changes, func(name string, _ func(*notices.Job)) bool {
		// They change the work that has been checked, or, here, the outside work, whose side a page shows.
		return name == "another side, higher" || name == "no work inside" || name == "another area, higher"
	})
	changes["somebody else checked, later"] = func(j *notices.Job) {
		for i := range j.Checks {
			j.Checks[i].By, j.Checks[i].On = "Canary", j.Checks[i].On.Plus(20)
		}
	}
	for state, job := range endings(t) {
		want := webOf(t, job)
		if len(want) < 16 {
			t.Fatalf("%s has only %d pages", state, len(want))
		}
		for name, change := range changes {
			other := endings(t)[state] // its own copy, because the change reaches into it
			change(&other)
			compareFiles(t, state+", "+name, webOf(t, other), want)
		}
	}
}

// How the work inside ended shows nowhere; that the outside work is over, or the job, shows on the pages.
func TestOnlyOutsideWorkShowsItsEnd(t *testing.T) {
	all := endings(t)
	web := map[string]tree.Files{}
	for state, job := range all {
		web[state] = webOf(t, job)
	}
	compareFiles(t, "the hall passed", web["hall passed"], web["before"])
	compareFiles(t, "the hall failed", web["hall failed"], web["before"])
	compareFiles(t, "the hall failed beside the porch", web["one of each"], web["all passed"])
	compareFiles(t, "the hall is open beside the porch", web["porch passed"], web["all passed"])
	if sameFiles(web["porch passed"], web["before"]) || sameFiles(web["closed"], web["all passed"]) {
		t.Error("the end of the outside work, or of the job, does not show on the pages")
	}
	for path, page := range web["all passed"] {
		if strings.Contains(path, "/EN/") && strings.Contains(string(page), "May 8, 2027") {
			t.Errorf("%s still has a day of the work", path)
		}
	}
}

// Every page keeps its address to the end.
func TestAddressesStayToTheEnd(t *testing.T) {
	all := endings(t)
	want := slices.Sorted(maps.Keys(webOf(t, all["before"])))
	for name, job := range all {
		if got := slices.Sorted(maps.Keys(webOf(t, job))); !slices.Equal(got, want) {
			t.Errorf("%s has the pages %v, and before any check there were %v", name, got, want)
		}
	}
}

// newKinds are those that come with the end of a job, and those for its common areas.
var newKinds = []string{
	string(notices.ReturnLetter), string(notices.CleanAgainLetter), string(notices.DoneNote), string(notices.AfterWorkNotice), string(notices.DatesChangedSlip),
	string(notices.CommonAreaNotice), string(notices.CommonAreaSign),
}

// Every sheet of the end is printed by a browser: nothing cut off, no line wrapped, type of the size in the record, its code read back by zbar, and as many sides
// as the record says.
func TestPrintedOutcomes(t *testing.T) {
	t.Parallel()
	folder := newFolder(t)
	var jobs []notices.Job
	for i, state := range []string{"one of each", "all passed", "notice_to_each_home", "signs_in_the_building"} {
		job := endings(t)[state]
		job.Code = fmt.Sprintf("end-%d", i+1)
		large := job
		large.Code, large.Programme.LargePrint = fmt.Sprintf("large-%d", i+1), true
		jobs = append(jobs, job, large)
	}
	madeIn(t, folder, marchFirst, jobs...)
	records, err := record.Load(os.DirFS(folder.Out))
	if err != nil {
		t.Fatal(err)
	}
	for _, record := range records {
		for _, sheet := range record.Sheets {
			if slices.Contains(newKinds, sheet.Kind) {
				t.Run(record.Code+"/"+sheet.ID, func(t *testing.T) {
					if made := (&builtDemo{programme: folder.Path}); strings.HasPrefix(record.Code, "large") {
						checkLarge(t, made, sheet)
					} else {
						checkPrinted(t, made, sheet)
					}
				})
			}
		}
	}
}

// checkPrinted is checkSheet for a sheet with one side in each language; of one with more it measures every side.
func checkPrinted(t *testing.T, made *builtDemo, sheet record.Sheet) {
	if sides(sheet) == len(sheet.Faces) {
		checkSheet(t, made, sheet)
		return
	}
	b := openTab(t)
	b.openFile(made.path(sheet.Path))
	b.asPrinted()
	printed := b.pdf()
	checkPaper(t, printed, sheet.Paper, sides(sheet))
	checkPrintedSizes(b, printed, leastTypeOf(sheet))
	for _, face := range measuredFaces(b) {
		checkField(t, face)
		checkLines(t, face)
	}
}

// What is read in ten seconds, hangs, or tells a family where it may go is one side in each language. The notice after the work has lines to fill in and may take
// the back as well.
func TestSheetsOfTheEndAreOneSide(t *testing.T) {
	t.Parallel()
	for name, job := range endings(t) {
		for _, sheet := range built(t, job, notices.Decide(job)).Record.Sheets {
			for _, face := range sheet.Faces {
				most := 1
				switch sheet.Kind {
				case string(notices.AfterWorkNotice):
					most = 2
				case string(notices.WorkAreaSign):
					continue // an outside sign is joined from several sheets
				}
				if face.Pages > most {
					t.Errorf("%s: %s takes %d sides in %s", name, sheet.ID, face.Pages, face.Language)
				}
			}
		}
	}
}
