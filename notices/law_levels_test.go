package notices

import (
	"testing"

	"pgregory.net/rapid"
)

// A result equal to its level or above it fails (24 CFR 35.1340(d)); "less than x" shows nothing when x is above the level (our calculation from that).
// Levels: 66 FR 1206 and 24 CFR 35.1320(b)(2) for 2001; 40 CFR 745.227(e)(8) as of 2021 (secondary text); 89 FR 89416, from 12 January 2026 (day: secondary texts).
func TestWipesAgainstTheLevelOfTheirDay(t *testing.T) {
	for _, c := range []struct {
		lab     string
		below   bool
		loading float64
		surface Surface
		fails   bool
	}{
		{"2026-01-12", false, 4.9, "floor", false},
		{"2026-01-12", false, 5, "floor", true},
		{"2026-01-12", false, 5.0, "floor", true},
		{"2026-01-12", false, 5.1, "floor", true},
		{"2026-01-12", true, 4, "floor", false},
		{"2026-01-12", true, 5, "floor", false},
		{"2026-01-12", true, 5.1, "floor", true},
		{"2026-01-12", true, 10, "floor", true},
		{"2026-01-12", false, 39.9, "sill", false},
		{"2026-01-12", false, 40, "sill", true},
		{"2026-01-12", true, 40, "sill", false},
		{"2026-01-12", false, 99.9, "trough", false},
		{"2026-01-12", false, 100, "trough", true},
		{"2026-01-12", false, 5, "porch_floor", true},
		{"2026-01-12", false, 4.9, "porch_floor", false},

		// The day before, the levels of 2021 still hold.
		{"2026-01-11", false, 5, "floor", false},
		{"2026-01-11", false, 9.9, "floor", false},
		{"2026-01-11", false, 10, "floor", true},
		{"2026-01-11", true, 10, "floor", false},
		{"2026-01-11", false, 99, "sill", false},
		{"2026-01-11", false, 100, "sill", true},
		{"2026-01-11", false, 399, "trough", false},
		{"2026-01-11", false, 400, "trough", true},
		{"2021-03-08", false, 10, "floor", true},
		{"2021-03-07", false, 39, "floor", false},
		{"2021-03-07", false, 40, "floor", true},
		{"2021-03-07", false, 249, "sill", false},
		{"2021-03-07", false, 250, "sill", true},
	} {
		day, err := ParseDate(c.lab)
		if err != nil {
			t.Fatal(err)
		}
		wipe := Wipe{Surface: c.surface, Lab: day, Loading: c.loading, Below: c.below}
		if wipe.fails() != c.fails {
			t.Errorf("%v on a %s, reported on %s, below %v: fails %v, want %v", c.loading, c.surface, c.lab, c.below, wipe.fails(), c.fails)
		}
	}
}

func TestLevelsAreInOrderAndCited(t *testing.T) {
	for i, l := range DustLevels {
		if l.citation == "" || l.sureness == "" {
			t.Errorf("the levels from %s have no source", l.from)
		}
		if i > 0 && (l.from.Compare(DustLevels[i-1].from) <= 0 || l.Floor > DustLevels[i-1].Floor || l.sill > DustLevels[i-1].sill || l.trough > DustLevels[i-1].trough) {
			t.Errorf("the levels from %s are not later and as strict as those before", l.from)
		}
	}
}

// endJob is a hallway that was sanded on two days, with what its checks found.
func endJob(checks ...CheckResult) Job {
	return Job{Code: "alder-14", Address: "14 Alder Court, Larkfield", State: "OH", Built: 1931, AnyonePaid: No, FederalAid: No, CheckedBy: ClearanceTest,
		Programme: Programme{Name: "Larkfield Home Repair Volunteers", Languages: []Language{"en"}, TimeZone: "America/Chicago"},
		Work: []Work{{ID: "hall", Where: Inside, Area: "hallway", Task: "sand", Parts: []Part{"doors"}, Days: []Date{{2027, 5, 11}, {2027, 5, 12}},
			CrewArrives: 8 * 60, CleanedBy: 15*60 + 30, WaysIn: []Way{"front_door"}, Nightly: Unknown}},
		Checks: checks}
}

func checkOn(day Date, result Verdict) CheckResult {
	return CheckResult{Work: "hall", On: day, By: "Jo", Role: Examiner, Certified: Yes, Independent: Yes, Result: result}
}

// Numbers only stop: whatever the samples are, a job with them has passed no work that the same job without them has not passed, and with no pass in the
// checks nothing has passed. A return letter is there only when some work has.
func TestNumbersOnlyStop(t *testing.T) {
	base := endJob()
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
		job := endJob(checkOn(Date{2027, 5, 12}, Failed), checkOn(Date{2027, 5, 14}, Passed))
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
		day, err := ParseDate(c.passed)
		if err != nil {
			t.Fatal(err)
		}
		job := endJob(checkOn(day, Passed))
		job.AnyonePaid, job.FederalAid = Yes, c.aided
		job.Work[0].Days = []Date{day}
		for _, surface := range []Surface{"floor", "sill"} { // without them nothing is released where federal money may be
			job.Wipes = append(job.Wipes, Wipe{Work: "hall", Room: "hallway", Surface: surface, Lab: day, Loading: 1})
		}
		if got := job.afterWorkDue().String(); got != c.want {
			t.Errorf("all passed on %s, housing money %s: due %s, want %s", c.passed, c.aided, got, c.want)
		}
	}
}
