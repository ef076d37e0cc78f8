package site_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
)

func summaryOn(t *testing.T, on string, known ledger.Job, job notices.Job) site.Summary {
	t.Helper()
	s, err := site.Summarise(site.Known{Plan: notices.Decide(job), Ledger: known}, date(t, on))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The day after a neighbour had to be told, its sheet is late, unless somebody there has it; a sheet that was taken back, or that went to another home, does not count.
func TestPlanKnowsWhatIsHandedOver(t *testing.T) {
	job := dueAt(t, "elm-14", "")
	made := afterMake(t, job)["elm-14"]
	hand := func(home, on string) ledger.Job {
		after, _, err := made.HandOver(ledger.Visit{Home: home, On: date(t, on), How: "spoke", By: "RM"})
		if err != nil {
			t.Fatal(err)
		}
		return after
	}
	told := hand("n12", "2027-05-01")
	back, _, err := told.TakeDown([]string{"request-n12"}, date(t, "2027-05-02"))
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		on           string
		known        ledger.Job
		handed, late bool
	}{
		"in time":              {"2027-05-05", made, false, false},
		"nobody went":          {"2027-05-06", made, false, true},
		"no ledger yet":        {"2027-05-06", ledger.Job{}, false, true},
		"told":                 {"2027-05-06", told, true, false},
		"only the family told": {"2027-05-06", hand("h1", "2027-05-01"), false, true},
		"taken back":           {"2027-05-06", back, false, true},
	} {
		s := summaryOn(t, c.on, c.known, job)
		sheet := sheetFor(t, s, "n12")
		if late := slices.Contains(s.Late, "request-n12"); sheet.Handed != c.handed || late != c.late {
			t.Errorf("%s: handed over %v, late %v; want %v, %v", name, sheet.Handed, late, c.handed, c.late)
		}
		if sheet.ID != "request-n12" || sheet.Due != "2027-05-03" || sheet.By != "Mon May 3, 2027" {
			t.Errorf("%s: the sheet is %+v", name, sheet)
		}
	}
}

func sheetFor(t *testing.T, s site.Summary, home string) site.HomeSheet {
	t.Helper()
	i := slices.IndexFunc(s.Homes, func(h site.HomeSummary) bool { return h.ID == home })
	if i < 0 || len(s.Homes[i].Sheets) != 1 {
		t.Fatalf("%s has no one sheet in %+v", home, s.Homes)
	}
	return s.Homes[i].Sheets[0]
}

// What the plan says is next is what is due, in the same order, and after it what comes later. Nothing is there twice.
func TestPlanGoesOnWhereDueEnds(t *testing.T) {
	job := dueAt(t, "elm-14", "")
	for _, on := range []string{"2027-04-01", "2027-04-25", "2027-05-07", "2027-05-20"} {
		due := dueOn(t, date(t, on), afterMake(t, job), job)
		next := summaryOn(t, on, afterMake(t, job)["elm-14"], job).Next
		if len(next) < len(due) {
			t.Fatalf("%s: the plan has %d steps, and %d are due", on, len(next), len(due))
		}
		ids := map[string]bool{}
		for i, step := range next {
			if i < len(due) && (step.ID != due[i].ID || step.Urgency != due[i].Urgency || step.Says != due[i].Says) {
				t.Errorf("%s: step %d of the plan is %+v, and due has %+v", on, i+1, step, due[i])
			}
			if i >= len(due) && step.Urgency != site.Later || ids[step.ID] {
				t.Errorf("%s: %s comes after what is due, or twice", on, step.ID)
			}
			ids[step.ID] = true
		}
	}
}

// Whoever may come home does not have to sleep elsewhere any more, and every home has one line.
func TestPlanHasOneLineForEachHome(t *testing.T) {
	elsewhere := func(checks string) notices.Job {
		job := dueAt(t, "elm-14", checks)
		job.Households[0].Except = []notices.Exception{{While: "hall", Usual: notices.Usual{SleepsAt: "their aunt's"}}}
		return job
	}
	for name, c := range map[string]struct{ checks, want string }{
		"before":         {"", "h1: The Lam family will sleep elsewhere, n12: Ask 12 Elm Row to close"},
		"the porch":      {onlyPorch, "h1: The Lam family still sleeps elsewhere, n12: "},
		"all has passed": {allPassed, "h1: The Lam family may come home., n12: "},
	} {
		var lines []string
		for _, h := range summaryOn(t, "2027-05-14", ledger.Job{}, elsewhere(c.checks)).Homes {
			lines = append(lines, h.ID+": "+h.Outcome)
		}
		wanted := strings.Split(c.want, ", ")
		if len(lines) != len(wanted) {
			t.Errorf("%s: the homes are %q", name, lines)
			continue
		}
		for i, want := range wanted {
			if !strings.HasPrefix(lines[i], want) {
				t.Errorf("%s: it says %q, want %q", name, lines[i], want)
			}
		}
	}
}

// Each reason that cites a text says when it was read there, passage by passage, and the passages are the whole source.
func TestPlanDecisionsSayWhenTheyWereRead(t *testing.T) {
	for _, checks := range []string{"", onlyPorch, dirtyHall, allPassed, flats, flatSigns} {
		for _, r := range summaryOn(t, "2027-05-01", ledger.Job{}, dueAt(t, "elm-14", checks)).Reasons {
			var all []string
			for _, p := range r.Read {
				text := p.Citation
				if p.How != "read in the published text" {
					text += " (" + p.How + ")"
				}
				if (p.ReadOn == "") != (p.How == "from memory") {
					t.Errorf("%s: %+v", r.Decision, p)
				}
				all = append(all, text)
			}
			if got := strings.Join(all, "; "); got != r.Source && r.Source != "common practice, no source" {
				t.Errorf("%s has the source %q, and the passages %q", r.Decision, r.Source, got)
			}
		}
	}
}

func TestMissingOfOneKindIsJoined(t *testing.T) {
	got := site.JoinMissing([]record.Missing{{Field: "a", Would: "x"}, {Field: "b", Would: "y"}, {Field: "c", Would: "x"}})
	if want := []string{"a, c: x", "b: y"}; !slices.Equal(got, want) {
		t.Errorf("joined they are %q, want %q", got, want)
	}
}
