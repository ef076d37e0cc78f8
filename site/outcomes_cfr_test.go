package site_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
)

func published(t *testing.T, section string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "testdata", "cfr", section+".html"))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// The days for the notice after the work are those of 40 CFR 745.86(c)(1) and 24 CFR 35.125(b)(1), in testdata/cfr.
func TestDaysAfterTheWorkAgainstPublishedText(t *testing.T) {
	for section, c := range map[string]struct {
		pattern string
		rule    notices.Rule
	}{
		"40CFR745.86": {`within (\d+) days of the completion of the renovation`, notices.AfterWork},
		"24CFR35.125": {`not more than (\d+) calendar days after`, notices.AfterAidedWork},
	} {
		found := regexp.MustCompile(c.pattern).FindStringSubmatch(published(t, section))
		if found == nil {
			t.Fatalf("%s has no %s", section, c.pattern)
		}
		if days, _ := strconv.ParseFloat(found[1], 64); days != c.rule.Value {
			t.Errorf("%s says %v days, and the rule has %v", section, days, c.rule.Value)
		}
	}
}

// A result equal to the level stops the letter, because 24 CFR 35.1340(d) in testdata/cfr says that equal fails.
func TestEqualFailsAgainstPublishedText(t *testing.T) {
	if !strings.Contains(published(t, "24CFR35.1340"), "equal or exceed the standards") {
		t.Fatal("the published text does not say that an equal result fails")
	}
	level := notices.DustLevels[len(notices.DustLevels)-1].Floor
	job := endings(t)["all passed"]
	for loading, want := range map[float64]notices.WorkState{level: notices.CheckFailed, level - 0.1: notices.CheckPassed} {
		job.Wipes[0].Loading = loading
		if got := job.Checked(job.Work[1]); got != want {
			t.Errorf("a floor at %v, where the level is %v, has the state %d, want %d", loading, level, got, want)
		}
	}
}

// A sheet that a rule asks for carries each thing that the rule lists, and nothing else: phrase by phrase of the published text in testdata/cfr, what carries it.
func TestContentsAgainstPublishedText(t *testing.T) {
	work := []string{"area.front_porch", "task.scrape_and_paint", "part.railings", "area.hallway", "task.sand", "part.doors"}
	for _, c := range []struct {
		section, state, sheet string
		carries               map[string][]string
	}{
		{"40CFR745.84", "notice_to_each_home", "common", map[string][]string{
			"general nature and locations":                                                      work,
			"the expected starting and ending dates":                                            {"common.starts", "2027-05-08", "common.ends", "2027-05-11"},
			"a statement of how the occupant can obtain the pamphlet and a copy of the records": {"common.ask", "Larkfield office"},
			"at no cost to the occupants":                                                       {"common.records_head", "common.free"},
		}},
		{"40CFR745.84", "signs_in_the_building", "common-front_door-en", map[string][]string{
			"general nature and locations": work,
			"anticipated completion date":  {"common.ends", "2027-05-11"},
			"how interested occupants can review a copy of the pamphlet or obtain a copy": {"common.ask", "Larkfield office"},
			"how interested occupants can review a copy of the records":                   {"common.records_head", "common.copies"},
		}},
		{"24CFR35.125", "all passed", "after-h1", map[string][]string{
			"nature, dates, scope": append([]string{"after.what_we_did", "2027-05-08", "2027-05-11"}, work...),
			"results (including clearance)": {"return.checked_on", "2027-05-12", "return.checked_by", "Jo Park", "return.tested", "return.checked",
				"return.results", "surface.floor", "surface.sill", "1 ug on 36 sq in = 4 µg/ft²", "<4 ug/ft2", "return.level", "5 µg/ft²", "40 µg/ft²"},
			"A contact name, address, and telephone number": {"after.contact", "Larkfield Home Repair Volunteers", "(612) 555-0118", "after.our_address"},
			"remaining lead-based paint":                    {"after.remaining", "after.more_parts"},
			"The date of the notice":                        {"after.date"},
		}},
	} {
		text := published(t, c.section)
		said := saidOn(sheetOf(t, notices.Decide(endings(t)[c.state]), c.sheet))
		wanted := []string{"after.keep"}
		if c.section == "24CFR35.125" { // 40 CFR 745.86(c) and (d) bind that job too
			wanted = append(wanted, "after.with_head", "after.record", "after.report", "after.missing")
		}
		for phrase, carriers := range c.carries {
			if !strings.Contains(text, phrase) {
				t.Errorf("%s has no %q", c.section, phrase)
			}
			wanted = append(wanted, carriers...)
			for _, carrier := range carriers {
				if !slices.Contains(said, carrier) {
					t.Errorf("%s does not carry %q, for %q: %q", c.sheet, carrier, phrase, said)
				}
			}
		}
		for _, s := range said {
			if !slices.Contains(wanted, s) {
				t.Errorf("%s says %q, and the rule does not list it", c.sheet, s)
			}
		}
	}
}

// saidOn is every message, word, day and name of a face below its head, apart from the call.
func saidOn(content notices.Content) []string {
	var all []string
	add := func(v notices.Value) {
		if pair, ok := v.(notices.Pair); ok {
			all = append(all, written(pair.Label))
			v = pair.Value
		}
		all = append(all, strings.Split(written(v), ",")...)
	}
	for _, fact := range content.Facts {
		add(fact.Label)
		for _, cell := range fact.Cells {
			add(cell)
		}
	}
	for _, block := range content.Blocks {
		for _, m := range append([]notices.Message{block.Head}, block.Lines...) {
			if m.ID != "" {
				add(m)
			}
		}
	}
	for _, m := range content.Blanks {
		add(m)
	}
	return all
}

// The coordinator's sheet names the doors whose signs come down now, and only then.
func TestOverviewNamesTheSignsToTakeDown(t *testing.T) {
	const says = "Take these signs down now"
	if before := textOf(parsed(t, made(t, endings(t)["before"])["print/index.html"])); strings.Contains(before, says) {
		t.Error("signs are to come down before any check")
	}
	after := textOf(parsed(t, made(t, endings(t)["hall passed"])["print/index.html"]))
	if !strings.Contains(after, says) || !strings.Contains(after, "Stairs, for the hallway: 2 signs") {
		t.Error("the coordinator's sheet does not name the signs of the hallway")
	}
}
