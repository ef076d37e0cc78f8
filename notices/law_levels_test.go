package notices

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"
)

// A result equal to its level or above it fails (24 CFR 35.1340(d)); "less than x" shows nothing when x is above the level (our calculation from that).
// Levels: 66 FR 1206 and 24 CFR 35.1320(b)(2) for 2001; 40 CFR 745.227(e)(8) as of 2021 (secondary text); 89 FR 89416, from 12 January 2026 (day: secondary texts).
func TestWipesAgainstTheLevelOfTheirDay(t *testing.T) {
	for _, c := range []struct {
		lab, result string
		surface     Surface
		fails       bool
	}{
		{"2026-01-12", "4.9 ug/ft2", "floor", false},
		{"2026-01-12", "5 ug/ft2", "floor", true},
		{"2026-01-12", "5.0 ug/ft2", "floor", true},
		{"2026-01-12", "5.1 ug/ft2", "floor", true},
		{"2026-01-12", "<4 ug/ft2", "floor", false},
		{"2026-01-12", "<5 ug/ft2", "floor", false},
		{"2026-01-12", "<5.1 ug/ft2", "floor", true},
		{"2026-01-12", "<10 ug/ft2", "floor", true},
		{"2026-01-12", "39.9 ug/ft2", "sill", false},
		{"2026-01-12", "40 ug/ft2", "sill", true},
		{"2026-01-12", "<40 ug/ft2", "sill", false},
		{"2026-01-12", "99.9 ug/ft2", "trough", false},
		{"2026-01-12", "100 ug/ft2", "trough", true},
		{"2026-01-12", "5 ug/ft2", "porch_floor", true},
		{"2026-01-12", "4.9 ug/ft2", "porch_floor", false},

		// The day before, the levels of 2021 still hold.
		{"2026-01-11", "5 ug/ft2", "floor", false},
		{"2026-01-11", "9.9 ug/ft2", "floor", false},
		{"2026-01-11", "10 ug/ft2", "floor", true},
		{"2026-01-11", "<10 ug/ft2", "floor", false},
		{"2026-01-11", "99 ug/ft2", "sill", false},
		{"2026-01-11", "100 ug/ft2", "sill", true},
		{"2026-01-11", "399 ug/ft2", "trough", false},
		{"2026-01-11", "400 ug/ft2", "trough", true},
		{"2021-03-08", "10 ug/ft2", "floor", true},
		{"2021-03-07", "39 ug/ft2", "floor", false},
		{"2021-03-07", "40 ug/ft2", "floor", true},
		{"2021-03-07", "249 ug/ft2", "sill", false},
		{"2021-03-07", "250 ug/ft2", "sill", true},

		// 36 square inches are a quarter of a square foot: 1.25 ug on them are 5 ug/ft2.
		{"2026-01-12", "1.24 ug on 36 sq in", "floor", false},
		{"2026-01-12", "1.25 ug on 36 sq in", "floor", true},
		{"2026-01-12", "<1.25 ug on 36 in2", "floor", false},
		{"2026-01-12", "<1.26 ug on 36 in2", "floor", true},
		// 0.3 ug on 0.06 sq ft are 5 ug/ft2, which binary fractions miss.
		{"2026-01-12", "0.3 ug on 0.06 sq ft", "floor", true},
		{"2026-01-12", "10 ug on 2 sq ft", "floor", true},
		{"2026-01-12", "9.9 ug on 2 sq ft", "floor", false},
	} {
		wipe := readWipe(t, c.result)
		day, err := ParseDate(c.lab)
		if err != nil {
			t.Fatal(err)
		}
		wipe.Lab, wipe.Surface = day, c.surface
		if wipe.fails() != c.fails {
			t.Errorf("%s on a %s, reported on %s: fails %v, want %v", c.result, c.surface, c.lab, wipe.fails(), c.fails)
		}
	}
}

// Worked examples: 100 cm2 are 0.1076 ft2 and 36 sq in are 0.25 ft2 (by definition of inch and foot: 144 square inches, 929.0304 square centimetres).
func TestLoadings(t *testing.T) {
	for _, c := range []struct {
		result string
		want   float64
	}{
		{"3.2 ug/ft2", 3.2},
		{"3.2 µg/ft²", 3.2},
		{"3.2 μg/sq ft", 3.2},
		{"1 mcg on 1 sq ft", 1},
		{"1 ug on 36 sq in", 4},
		{"1 ug on 100 cm2", 1 / 0.1076},
		{"1 ug on 929.0304 cm2", 1},
		{"2 ug on 2 ft2", 1},
		{"0 ug/ft2", 0},
	} {
		if got := readWipe(t, c.result).Loading; math.Abs(got-c.want) > 0.001*max(1, c.want)/2 {
			t.Errorf("%s is %v ug/ft2, want %v", c.result, got, c.want)
		}
	}
}

func TestResultsThatAreRefused(t *testing.T) {
	for _, result := range []string{"3", "3 ug", "about 3 ug/ft2", "3 mg/ft2", "-3 ug/ft2", ">3 ug/ft2", "3 ug on 0 sq ft", "3,2 ug/ft2", "ND"} {
		if _, problems := wipeJob(result); len(problems) != 1 {
			t.Errorf("%q has %d problems, want 1: %v", result, len(problems), problems)
		}
	}
}

func TestLevelsAreInOrderAndCited(t *testing.T) {
	for i, l := range DustLevels {
		if l.Citation == "" || l.Sureness == "" {
			t.Errorf("the levels from %s have no source", l.From)
		}
		if i > 0 && (l.From.Compare(DustLevels[i-1].From) <= 0 || l.Floor > DustLevels[i-1].Floor || l.Sill > DustLevels[i-1].Sill || l.Trough > DustLevels[i-1].Trough) {
			t.Errorf("the levels from %s are not later and as strict as those before", l.From)
		}
	}
}

func readWipe(t *testing.T, result string) Wipe {
	t.Helper()
	job, problems := wipeJob(result)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if job.Wipes[0].Reported != result || job.Wipes[0].Below != strings.HasPrefix(result, "<") {
		t.Errorf("%q is reported as %+v", result, job.Wipes[0])
	}
	return job.Wipes[0]
}

const endProgramme = `name: Larkfield Home Repair Volunteers
phone: 612-555-0118
phone_speaks: [en]
base: https://leaf.example.org
languages: [en]
time_zone: America/Chicago
`

const endJob = `code: alder-14
address: 14 Alder Court, Larkfield
state: OH
built: 1931
anyone_paid: no
federal_housing_money: no
checked_by: clearance_test
on_the_day: {name: Rosa, phone: 612-555-0142, speaks: [en]}
work:
  - {id: hall, where: inside, area: hallway, task: sand, parts: [doors], days: [2027-05-11, 2027-05-12], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [front_door]}
households: []
`

func endOf(add string) (Job, Problems) {
	jobs, problems := Load(fstest.MapFS{ProgrammeFile: {Data: []byte(endProgramme)}, "jobs/job.yaml": {Data: []byte(endJob + add)}}, "jobs/job.yaml")
	if len(problems) > 0 {
		return Job{}, problems
	}
	return jobs[0], nil
}

func wipeJob(result string) (Job, Problems) {
	return endOf("wipes:\n  - {work: hall, room: hallway, surface: floor, lab_date: 2027-05-12, result: \"" + result + "\"}\n")
}

// What is wrong with checks and samples is said in the file's own words.
func TestProblemsOfTheEnd(t *testing.T) {
	for add, want := range map[string]string{
		"checks: [{work: hull, on: 2027-05-12, by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]":                            `"hull" is not the id of any work; did you mean hall?`,
		"checks: [{work: hall, on: 2027-05-10, by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]":                            `"2027-05-10" is before the work starts on Tue 2027-05-11`,
		"checks: [{work: hall, on: 2027-05-10, by: Jo, role: examiner, certified: yes, independent: yes, result: failed}]":                            `"2027-05-10" is before the work starts on Tue 2027-05-11`,
		"checks: [{work: hall, on: 2027-05-11, by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]":                            `"2027-05-11" is before the last day of the work, Wed 2027-05-12`,
		"checks: [{work: hall, on: 2027-05-12, by: Jo, role: examiner, certified: yes, independent: yes, result: failed, clean_again: [2027-05-11]}]": `"2027-05-11" is before the check on Wed 2027-05-12`,
		"checks: [{work: hall, on: 2027-05-12, by: Jo, role: examiner, certified: yes, independent: yes, result: passed, clean_again: [2027-05-13]}]": `clean_again is for a check that failed`,
		"wipes: [{work: hull, room: hallway, surface: floor, lab_date: 2027-05-12, result: 3 ug/ft2}]":                                                `"hull" is not the id of any work`,
		"wipes: [{work: hall, room: hallway, surface: floor, lab_date: 2027-05-10, result: 3 ug/ft2}]":                                                `"2027-05-10" is before the work starts`,
		"closed: yes": `the job can't be closed, because the work "hall" has not passed its check`,
	} {
		_, problems := endOf(add + "\n")
		if len(problems) != 1 || !strings.Contains(problems.Error(), want) {
			t.Errorf("%s\nhas the problems %v\nwant one with %s", add, problems, want)
		}
	}
	for _, add := range []string{
		"checks: [{work: hall, on: 2027-05-12, by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]\nclosed: yes",
		"checks: [{work: hall, on: 2027-05-11, by: Jo, role: examiner, certified: yes, independent: yes, result: failed, clean_again: [2027-05-11, 2027-05-12]}]",
		"wipes: [{work: hall, room: hallway, surface: floor, lab_date: 2027-05-11, result: 3 ug/ft2}]",
		"closed: no",
	} {
		if _, problems := endOf(add + "\n"); len(problems) > 0 {
			t.Errorf("%s\nhas the problems %v", add, problems)
		}
	}
}

// Numbers only stop: whatever the samples are, a job with them has passed no work that the same job without them has not passed, and with no pass in the
// checks nothing has passed. A return letter is there only when some work has.
func TestNumbersOnlyStop(t *testing.T) {
	base, problems := endOf("")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	base.Households = []Household{{ID: "h1", Name: "The Lam family", Languages: []Language{"en"},
		Usual: Usual{WaysOut: [][]Place{{"back_door"}}, Bed: "bed", Bath: "bathroom", Kitchen: "kitchen"}}}
	first := Date{2027, 5, 11}
	day := rapid.Custom(func(t *rapid.T) Date { return first.Plus(rapid.IntRange(0, 9).Draw(t, "day")) })
	check := rapid.Custom(func(t *rapid.T) CheckResult {
		return CheckResult{Work: "hall", On: day.Draw(t, "on"), By: "Jo", Role: Examiner, Certified: Yes, Independent: Yes, Result: rapid.SampledFrom([]Verdict{Passed, Failed}).Draw(t, "result"), Again: rapid.SliceOfN(day, 0, 2).Draw(t, "again")}
	})
	sample := rapid.Custom(func(t *rapid.T) Wipe {
		return Wipe{Work: "hall", Room: "hallway", Surface: rapid.SampledFrom(Surfaces).Draw(t, "surface"), Lab: day.Draw(t, "lab"),
			Loading: rapid.Float64Range(0, 200).Draw(t, "loading"), Below: rapid.Bool().Draw(t, "below"), Reported: "as drawn"}
	})
	rapid.Check(t, func(t *rapid.T) {
		with := base
		with.Checks, with.Wipes = rapid.SliceOfN(check, 0, 4).Draw(t, "checks"), rapid.SliceOfN(sample, 0, 4).Draw(t, "wipes")
		without := with
		without.Wipes = nil
		hall := with.Work[0]
		if with.Checked(hall) == CheckPassed && without.Checked(hall) != CheckPassed {
			t.Fatal("samples released what the checks did not")
		}
		if last, ok := with.lastCheck(hall); with.Checked(hall) == CheckPassed && (!ok || last.Result != Passed) {
			t.Fatal("it passed without a pass")
		}
		kinds := map[Kind]bool{}
		for _, s := range Decide(with).Sheets {
			kinds[s.Kind] = true
		}
		passed := with.Checked(hall) == CheckPassed
		if kinds[ReturnLetter] != passed || kinds[WorkAreaSign] == passed || kinds[StayOutLetter] == passed || kinds[CleanAgainLetter] != (with.Checked(hall) == CheckFailed) {
			t.Fatalf("the hall has state %d and the sheets %v", with.Checked(hall), kinds)
		}
	})
}

// A failing sample that comes on the day of the pass or after it always stops.
func TestAFreshFailingSampleStops(t *testing.T) {
	for offset, passed := range map[int]bool{0: false, 1: false, 30: false} {
		job, problems := endOf("checks: [{work: hall, on: 2027-05-12, by: Jo, role: examiner, certified: yes, independent: yes, result: failed}, {work: hall, on: 2027-05-14, by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]\n")
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		job.Wipes = []Wipe{{Work: "hall", Room: "hallway", Surface: "floor", Lab: Date{2027, 5, 14}.Plus(offset), Loading: 5}}
		if got := job.Checked(job.Work[0]) == CheckPassed; got != passed {
			t.Errorf("a failing sample %d days after the pass: passed %v, want %v", offset, got, passed)
		}
	}
}

// The notice after the work counts calendar days from the day of the last pass: 30 (40 CFR 745.86(c)), or 15 under the housing rule (24 CFR 35.125(b)).
func TestDaysOfTheAfterWorkNotice(t *testing.T) {
	for _, c := range []struct {
		passed, want string
		aided        Answer
	}{
		{"2027-05-12", "2027-06-11", No},
		{"2027-05-12", "2027-05-27", Yes},
		{"2027-05-12", "2027-05-27", Unknown},
		{"2028-01-30", "2028-02-29", No},
		{"2028-02-14", "2028-02-29", Yes},
		{"2027-02-14", "2027-03-01", Yes},
		{"2027-12-31", "2028-01-30", No},
		{"2027-12-31", "2028-01-15", Yes},
	} {
		job, problems := endOf("checks: [{work: hall, on: " + strings.Replace(c.passed, "2027-02", "2027-12", 1) + ", by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]\n")
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		day, err := ParseDate(c.passed)
		if err != nil {
			t.Fatal(err)
		}
		job.Checks[0].On, job.AnyonePaid, job.FederalAid = day, Yes, c.aided
		for _, surface := range []Surface{"floor", "sill"} { // without them nothing is released where federal money may be
			job.Wipes = append(job.Wipes, Wipe{Work: "hall", Room: "hallway", Surface: surface, Lab: day, Loading: 1})
		}
		if got := job.afterWorkDue().String(); got != c.want {
			t.Errorf("all passed on %s, housing money %s: due %s, want %s", c.passed, c.aided, got, c.want)
		}
	}
}
