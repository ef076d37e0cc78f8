package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

// interrupted is a programme in which a make was committed and then killed: before the ledger was written, or after it.
func interrupted(t *testing.T, remembered bool) (programme site.Programme, plan notices.Plan, before tree.Files) {
	t.Helper()
	programme = newFolder(t)
	job := small(demoJob(t, "alder-14"))
	before = madeIn(t, programme, marchFirst, job)
	job.Work[0].Days = []notices.Date{date(t, "2027-05-20")}
	plan = plansOf(job)[0]
	site.KillAt(t, programme, plan, remembered)
	return programme, plan, before
}

// A make that was killed after its journal and before the ledger knows of it never happened; one that the ledger knows of is finished by the next command, whatever it is.
func TestKilledMakeIsEnded(t *testing.T) {
	for _, remembered := range []bool{false, true} {
		programme, plan, before := interrupted(t, remembered)
		if err := programme.Finish(); err != nil {
			t.Fatal(err)
		}
		files := filesIn(t, programme.Out)
		if changed := string(files["print/index.html"]) != string(before["print/index.html"]); changed != remembered {
			t.Errorf("remembered: %v, and the output changed: %v", remembered, changed)
		}
		known, err := programme.Ledger(plan.Code)
		if err != nil {
			t.Fatal(err)
		}
		sheet, _ := known.Sheet("request-n12")
		if want := map[bool]int{false: 1, true: 2}[remembered]; sheet.Revision.Number != want {
			t.Errorf("remembered: %v, and the ledger has revision %v", remembered, sheet.Revision)
		}
		left, _ := filepath.Glob(filepath.Join(programme.Path, ledger.FolderName, ".making-*"))
		if swap, _ := os.Stat(filepath.Join(programme.Out, ".doorleaf-swap")); len(left) > 0 || swap != nil {
			t.Errorf("left behind: %v %v", left, swap)
		}
	}
}

// Beside a make, one without codes waits like any other.
func TestMakesDoNotRunSideBySide(t *testing.T) {
	programme := newFolder(t)
	plans := plansOf(small(demoJob(t, "alder-14")))
	for name, second := range map[string]func() error{
		"make":               func() error { _, err := programme.Make(plans, func(string) {}); return err },
		"make without codes": func() error { _, err := programme.MakeWithoutCodes(plans, func(string) {}); return err },
		"a mark": func() error {
			_, err := programme.Mark(plans[0], func(job ledger.Job) (ledger.Job, []ledger.Noted, error) { return job.Print(nil, marchFirst) })
			return err
		},
	} {
		var refused error
		if _, err := programme.Make(plans, func(string) { refused = second() }); err != nil {
			t.Fatal(err)
		}
		if refused == nil || !strings.Contains(refused.Error(), "another doorleaf is working in") {
			t.Errorf("%s: %v", name, refused)
		}
	}
}

// Without codes paper has its revision, is remembered, and is put right like any other.
func TestPaperWithoutCodesIsRemembered(t *testing.T) {
	programme := newFolder(t)
	job := small(demoJob(t, "alder-14"))
	madeIn(t, programme, marchFirst, job)
	if _, err := programme.Mark(plansOf(job)[0], func(known ledger.Job) (ledger.Job, []ledger.Noted, error) {
		return known.HandOver(ledger.Visit{Home: "n12", On: marchFirst, How: "spoke", By: "RM"})
	}); err != nil {
		t.Fatal(err)
	}
	job.Work[0].Days = []notices.Date{date(t, "2027-05-20")}
	done, err := programme.MakeWithoutCodes(plansOf(job), func(string) {})
	if err != nil || done.Wrong == 0 {
		t.Fatalf("%d papers are to be put right, error %v", done.Wrong, err)
	}
	files := filesIn(t, programme.Out)
	if page := string(files["print/alder-14/request-n12.html"]); !strings.Contains(page, "Revised 2") {
		t.Error("the request does not say that it is another revision")
	}
	if list := string(files["print/index.html"]); !strings.Contains(list, "Put right") {
		t.Error("the coordinator's sheet does not say what to put right")
	}
}

// Of a make of two jobs one is in the ledger, and the other could not be noted: it happened, and the next command finishes it.
func TestMakeThatIsRememberedInPart(t *testing.T) {
	programme := newFolder(t)
	alder, quarry := small(demoJob(t, "alder-14")), small(demoJob(t, "quarry-231"))
	madeIn(t, programme, marchFirst, alder, quarry)
	alder.Work[0].Days = []notices.Date{date(t, "2027-05-20")}
	quarry.Work[0].Days = []notices.Date{date(t, "2027-06-21")}
	site.KillAt(t, programme, plansOf(alder)[0], true, plansOf(quarry)[0])
	if err := programme.Finish(); err != nil {
		t.Fatal(err)
	}
	for _, plan := range plansOf(alder, quarry) {
		known, err := programme.Ledger(plan.Code)
		if err != nil {
			t.Fatal(err)
		}
		made, err := record.Load(os.DirFS(programme.Out))
		if err != nil {
			t.Fatal(err)
		}
		for _, job := range made {
			for _, sheet := range job.Sheets {
				if remembered, _ := known.Sheet(sheet.ID); job.Code == plan.Code && remembered.Revision.Number != sheet.Revision {
					t.Errorf("%s of %s: the ledger has revision %v, and the paper %d", sheet.ID, plan.Code, remembered.Revision, sheet.Revision)
				}
			}
		}
	}
}
