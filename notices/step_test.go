package notices_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
)

func day(t *testing.T, text string) notices.Date {
	t.Helper()
	d, err := notices.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func days(t *testing.T, texts ...string) []notices.Date {
	t.Helper()
	var all []notices.Date
	for _, text := range texts {
		all = append(all, day(t, text))
	}
	return all
}

// stepJob has outside work on Saturday May 8, 2027 and inside work on the Tuesday and Wednesday after it; nothing is paid, and no federal money is in it.
func stepJob(t *testing.T) notices.Job {
	return notices.Job{
		Programme: notices.Programme{Name: "Larkfield Home Repair", Languages: []notices.Language{"en", "es"}},
		Code:      "elm-14", Address: "14 Elm Row, Larkfield", State: "WA", Built: 1931,
		Owner: notices.LivesHere, AnyonePaid: notices.No, FederalAid: notices.No, LandlordWorks: notices.No, CheckedBy: notices.ClearanceTest, Emergency: notices.No,
		Work: []notices.Work{
			{ID: "porch", Where: notices.Outside, Area: "front_porch", Task: "scrape_and_paint", HowMuch: 60, Storey: 1, Days: days(t, "2027-05-08"), CrewArrives: 480, CleanedBy: 990, WaysIn: []notices.Way{"front_door"}},
			{ID: "hall", Where: notices.Inside, Area: "hallway", Task: "sand", Storey: 1, Days: days(t, "2027-05-11", "2027-05-12"), CrewArrives: 480, CleanedBy: 930, WaysIn: []notices.Way{"kitchen_door", "stairs"}, Nightly: notices.Yes},
		},
		Households: []notices.Household{{ID: "h1", Name: "The Lam family", Languages: []notices.Language{"es"},
			Usual: notices.Usual{WaysOut: [][]notices.Place{{"back_door"}}, Bed: "bed", Bath: "bathroom", Kitchen: "kitchen"},
		}},
		Neighbours: []notices.Neighbour{
			{ID: "n12", Address: "12 Elm Row", Gap: 14, GapKnown: true, Languages: []notices.Language{"en"}, Homes: 1},
			{ID: "n16", Address: "16 Elm Row", Gap: 46, GapKnown: true, Languages: []notices.Language{"en"}, Homes: 1},
		},
	}
}

func passed(work string, on notices.Date) notices.CheckResult {
	return notices.CheckResult{Work: work, On: on, By: "Ana Ruiz", Role: notices.Examiner, Certified: notices.Yes, Independent: notices.Yes, Result: notices.Passed}
}

func failed(work string, on notices.Date, again ...notices.Date) notices.CheckResult {
	return notices.CheckResult{Work: work, On: on, By: "Ana Ruiz", Role: notices.Examiner, Certified: notices.Yes, Independent: notices.Yes, Result: notices.Failed, Again: again}
}

// written is a line for each step: id, first day, last day, the day after which it is late ("-" when never), and "done" where the job file says so.
func written(steps []notices.Step) string {
	var lines strings.Builder
	for _, s := range steps {
		late := "-"
		if !s.LateAfter.IsZero() {
			late = s.LateAfter.String()
		}
		fmt.Fprint(&lines, s.ID, " ", s.First, " ", s.Due, " ", late)
		if !s.Done.IsZero() {
			fmt.Fprint(&lines, " done")
		}
		fmt.Fprintln(&lines)
	}
	return lines.String()
}

func compareSteps(t *testing.T, job notices.Job, want string) {
	t.Helper()
	want = strings.TrimPrefix(want, "\n")
	if got := written(notices.Decide(job).Steps); got != want {
		t.Errorf("the steps are\n%s\nwant\n%s", got, want)
	}
}

// Days: 60 days before the work and 7 for mail, 40 CFR 745.84(a); 14, 7, 7 to 5 and 3 business days are common practice, no source. May 8, 2027 is a
// Saturday, so three business days before it are Friday, Thursday and Wednesday.
func TestStepsBeforeAnyCheck(t *testing.T) {
	compareSteps(t, stepJob(t), `
talk-h1 2027-04-24 2027-04-24 2027-04-24
book_examiner 2027-04-24 2027-04-24 2027-04-24
letter-h1 2027-04-24 2027-05-01 2027-05-01
pamphlet-h1 2027-03-09 2027-05-01 2027-05-07
tell-n12 2027-05-01 2027-05-03 2027-05-05
tell-n16 2027-05-01 2027-05-03 2027-05-05
knock_again-n12 2027-05-07 2027-05-07 2027-05-07
knock_again-n16 2027-05-07 2027-05-07 2027-05-07
signs_up-porch 2027-05-08 2027-05-08 2027-05-08
work_day-porch-1 2027-05-08 2027-05-08 -
check-porch 2027-05-08 2027-05-08 -
signs_up-hall 2027-05-11 2027-05-11 2027-05-11
work_day-hall-1 2027-05-11 2027-05-11 -
work_day-hall-2 2027-05-12 2027-05-12 -
check-hall 2027-05-12 2027-05-12 -
`)
}

// Before a pass there is no step that sends anybody back, opens a window or takes a sign down: not after a failed check, and not after samples alone.
func TestNoStepBackBeforeThePass(t *testing.T) {
	back := []notices.StepKind{notices.SignsDown, notices.BringReturn, notices.TellDone, notices.TellAfterWork, notices.KeepFile}
	clean := notices.Wipe{Work: "hall", Room: "hallway", Surface: "floor", Lab: day(t, "2027-05-14"), Loading: 0.5}
	dirty := clean
	dirty.Loading = 5 // equal to the level fails: 24 CFR 35.1340(d), level of 40 CFR 745.227(e)(8)
	for name, change := range map[string]func(*notices.Job){
		"nothing entered":     func(*notices.Job) {},
		"clean samples alone": func(j *notices.Job) { j.Wipes = []notices.Wipe{clean} },
		"a failed check": func(j *notices.Job) {
			j.Checks = []notices.CheckResult{failed("hall", day(t, "2027-05-13")), failed("porch", day(t, "2027-05-09"))}
		},
		"a pass undone by samples": func(j *notices.Job) {
			j.Checks = []notices.CheckResult{passed("hall", day(t, "2027-05-13")), failed("porch", day(t, "2027-05-09"))}
			j.Wipes = []notices.Wipe{dirty}
		},
	} {
		job := stepJob(t)
		change(&job)
		for _, s := range notices.Decide(job).Steps {
			if slices.Contains(back, s.Kind) {
				t.Errorf("%s: there is a step %s", name, s.ID)
			}
		}
	}
}

// Each piece of work passes for itself: its signs come down, who lives at home hears it, and neighbours may open their windows after the last outside work.
func TestStepsAfterTheOutsidePass(t *testing.T) {
	job := stepJob(t)
	job.Checks = []notices.CheckResult{passed("porch", day(t, "2027-05-09"))}
	compareSteps(t, job, `
talk-h1 2027-04-24 2027-04-24 2027-04-24
book_examiner 2027-04-24 2027-04-24 2027-04-24
letter-h1 2027-04-24 2027-05-01 2027-05-01
pamphlet-h1 2027-03-09 2027-05-01 2027-05-07
work_day-porch-1 2027-05-08 2027-05-08 - done
check-porch 2027-05-08 2027-05-08 - done
signs_down-porch 2027-05-09 2027-05-09 2027-05-09
return-h1 2027-05-09 2027-05-09 2027-05-09
tell_done-n12 2027-05-09 2027-05-09 2027-05-09
tell_done-n16 2027-05-09 2027-05-09 2027-05-09
signs_up-hall 2027-05-11 2027-05-11 2027-05-11
work_day-hall-1 2027-05-11 2027-05-11 -
work_day-hall-2 2027-05-12 2027-05-12 -
check-hall 2027-05-12 2027-05-12 -
`)
}

// After a failed check the area is cleaned on the days that were set and checked on the last of them; nobody has set any: then that is what to do.
func TestStepsAfterAFail(t *testing.T) {
	job := stepJob(t)
	job.Checks = []notices.CheckResult{passed("porch", day(t, "2027-05-09")), failed("hall", day(t, "2027-05-13"), days(t, "2027-05-18", "2027-05-17")...)}
	after := func(job notices.Job) []notices.Step {
		return slices.DeleteFunc(notices.Decide(job).Steps, func(s notices.Step) bool { return s.Due.Compare(day(t, "2027-05-12")) <= 0 })
	}
	if got, want := written(after(job)), "tell_clean_again-h1 2027-05-13 2027-05-13 2027-05-13\nclean_again-hall-1 2027-05-17 2027-05-17 -\nclean_again-hall-2 2027-05-18 2027-05-18 -\ncheck-hall 2027-05-18 2027-05-18 -\n"; got != want {
		t.Errorf("with days:\n%s\nwant\n%s", got, want)
	}
	job.Checks[1].Again = nil
	if got, want := written(after(job)), "set_clean_days-hall 2027-05-13 2027-05-13 2027-05-13\ntell_clean_again-h1 2027-05-13 2027-05-13 2027-05-13\n"; got != want {
		t.Errorf("without days:\n%s\nwant\n%s", got, want)
	}
	job.Checks[1] = passed("hall", day(t, "2027-05-13"))
	job.Wipes = []notices.Wipe{{Work: "hall", Room: "hallway", Surface: "floor", Lab: day(t, "2027-05-20"), Loading: 5}}
	if got, want := written(after(job)), "set_clean_days-hall 2027-05-20 2027-05-20 2027-05-20\ntell_clean_again-h1 2027-05-20 2027-05-20 2027-05-20\n"; got != want {
		t.Errorf("after a sample that undid the pass:\n%s\nwant\n%s", got, want)
	}
}

// 30 days: 40 CFR 745.86(c). 15 calendar days where the housing rule holds: 24 CFR 35.125. Three years: 40 CFR 745.86(a), 24 CFR 35.175. Counted from
// a leap day by hand: February 29 and 30 days are March 30; 15 days, March 15; three years, March 1, because 2031 has no February 29.
func TestStepsAfterAllHasPassed(t *testing.T) {
	job := stepJob(t)
	job.Work[0].Days, job.Work[1].Days = days(t, "2028-02-22"), days(t, "2028-02-28")
	job.Checks = []notices.CheckResult{passed("porch", day(t, "2028-02-23")), passed("hall", day(t, "2028-02-29"))}
	job.Owner, job.AnyonePaid = notices.RentsItOut, notices.Yes
	const until = `
work_day-porch-1 2028-02-22 2028-02-22 - done
check-porch 2028-02-22 2028-02-22 - done
signs_down-porch 2028-02-23 2028-02-23 2028-02-23
tell_done-n12 2028-02-23 2028-02-23 2028-02-23
tell_done-n16 2028-02-23 2028-02-23 2028-02-23
work_day-hall-1 2028-02-28 2028-02-28 - done
check-hall 2028-02-28 2028-02-28 - done
signs_down-hall 2028-02-29 2028-02-29 2028-02-29
return-h1 2028-02-29 2028-02-29 2028-02-29
`
	compareSteps(t, job, until+`after_work-h1 2028-02-29 2028-03-30 2028-03-30
after_work-owner 2028-02-29 2028-03-30 2028-03-30
keep_file 2031-03-01 2031-03-01 -
`)
	job.AnyonePaid, job.FederalAid = notices.No, notices.Unknown // unknown counts as yes, and a clearance inside then needs its samples
	for _, surface := range []notices.Surface{"floor", "sill"} {
		job.Wipes = append(job.Wipes, notices.Wipe{Work: "hall", Room: "hallway", Surface: surface, Lab: day(t, "2028-02-29"), Loading: 1})
	}
	compareSteps(t, job, until+`after_work-h1 2028-02-29 2028-03-14 2028-03-14
after_work-owner 2028-02-29 2028-03-14 2028-03-14
keep_file 2031-03-01 2031-03-01 -
`)
	job.FederalAid = notices.No // neither rule binds, so neither asks for a notice
	compareSteps(t, job, until+"keep_file 2031-03-01 2031-03-01 -\n")
}

// Memorial Day 2027 is Monday, May 31 (5 U.S.C. 6103: the last Monday in May). Three business days before Wednesday, June 2 are then June 1, May 28 and
// May 27, and telling neighbours is due on the day after which it is late, never later.
func TestNeighbourStepsSkipAHoliday(t *testing.T) {
	job := stepJob(t)
	job.Work[0].Days = days(t, "2027-06-02")
	for _, s := range notices.Decide(job).Steps {
		if s.Kind != notices.TellNeighbour {
			continue
		}
		if got, want := written([]notices.Step{s}), s.ID+" 2027-05-26 2027-05-27 2027-05-27\n"; got != want {
			t.Errorf("got %swant %s", got, want)
		}
	}
}

// Seven days before March 4, 2028 are February 26, because of the leap day; 60 days before are January 4.
func TestStepsBeforeALeapDay(t *testing.T) {
	job := stepJob(t)
	job.Work = job.Work[:1]
	job.Work[0].Days = days(t, "2028-03-04")
	got := written(notices.Decide(job).Steps)
	for _, want := range []string{"talk-h1 2028-02-19 2028-02-19", "letter-h1 2028-02-19 2028-02-26", "pamphlet-h1 2028-01-04 2028-02-26 2028-03-03", "tell-n12 2028-02-26 2028-02-28"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
}

// The pamphlet is done when it was given in its time: 60 days before is early enough, 61 too early; mailed 7 days before, not 6 (40 CFR 745.84(a)). An
// emergency waives it (745.82(b)), and newer homes need none.
func TestPamphletStep(t *testing.T) {
	for _, c := range []struct {
		given string
		how   notices.Delivery
		done  bool
	}{
		{"2027-03-08", notices.Signed, false}, {"2027-03-09", notices.Signed, true}, {"2027-05-07", notices.Signed, true}, {"2027-05-08", notices.Signed, true}, {"2027-05-09", notices.Signed, false},
		{"2027-05-01", notices.Mailed, true}, {"2027-05-02", notices.Mailed, false},
	} {
		job := stepJob(t)
		job.AnyonePaid = notices.Yes
		job.Pamphlets = []notices.Pamphlet{{To: notices.ToOwner, Given: day(t, c.given), How: c.how}}
		steps := notices.Decide(job).Steps
		i := slices.IndexFunc(steps, func(s notices.Step) bool { return s.Kind == notices.GivePamphlet })
		if got := !steps[i].Done.IsZero(); got != c.done || steps[i].Binds != notices.Law {
			t.Errorf("given on %s, %s: done is %t, want %t; it is %s", c.given, c.how, got, c.done, steps[i].Binds)
		}
	}
	for name, change := range map[string]func(*notices.Job){"an emergency": func(j *notices.Job) { j.Emergency = notices.Yes }, "a newer home": func(j *notices.Job) { j.Built = 1978 }} {
		job := stepJob(t)
		change(&job)
		if strings.Contains(written(notices.Decide(job).Steps), "pamphlet") {
			t.Errorf("%s still asks for the pamphlet", name)
		}
	}
}

// 'Test' is said only where the job has a clearance test, and each step of each kind says where it stands.
func TestStepsSayWhoChecks(t *testing.T) {
	for check, want := range map[notices.Check]string{
		notices.ClearanceTest: "step.check_test step.wait_test", notices.CleaningCheck: "step.check_cleaning step.wait_check",
		notices.CrewLook: "step.check_look step.wait_check", notices.NotDecided: "step.check_not_decided step.wait_check",
	} {
		job := stepJob(t)
		job.CheckedBy = check
		for _, s := range notices.Decide(job).Steps {
			if got := s.Says.ID + " " + s.Waits.ID; s.Kind == notices.CleanAndCheck && got != want {
				t.Errorf("%s: it says %s, want %s", check, got, want)
			}
			if s.Source.String() == "" || s.Binds == "" {
				t.Errorf("%s has no source, or nobody says whether it binds", s.ID)
			}
		}
	}
}

// A sheet that a step hands over or hangs is one that is really made: otherwise no mark could ever settle the step. And no two steps share an id.
func TestStepsUseSheetsThatAreMade(t *testing.T) {
	kinds := map[notices.StepKind]bool{}
	for name, job := range everyEnd(t) {
		unchecked := job
		unchecked.Checks = nil // signs that come down were made when the work was open
		made := map[string]bool{}
		for _, s := range slices.Concat(notices.Decide(job).Sheets, notices.Decide(unchecked).Sheets) {
			made[s.ID] = true
		}
		ids := map[string]bool{}
		for _, s := range notices.Decide(job).Steps {
			kinds[s.Kind] = true
			for _, sheet := range s.Sheets {
				if !made[sheet] {
					t.Errorf("%s: the step %s needs the sheet %s, which is not made", name, s.ID, sheet)
				}
			}
			if ids[s.ID] {
				t.Errorf("%s: there are two steps %s", name, s.ID)
			}
			ids[s.ID] = true
		}
	}
	if len(kinds) != 20 {
		t.Errorf("these jobs have steps of %d kinds, and there are 20: %v", len(kinds), kinds)
	}
}

// everyEnd are jobs before, between and after their checks; together they have steps of all kinds.
func everyEnd(t *testing.T) map[string]notices.Job {
	before, failing, unset, over, signed := stepJob(t), stepJob(t), stepJob(t), stepJob(t), stepJob(t)
	before.FederalAid, before.Presumed = notices.Yes, day(t, "2027-04-20")
	before.Shared = notices.SharedAreas{Route: notices.NoticeToEach, Homes: 6, Records: "Rosa"}
	signed.Shared = notices.SharedAreas{Route: notices.SignsThere, Homes: 6, Records: "Rosa"}
	signed.Households[0].Usual.SleepsAt = "her sister's" // so everybody sleeps elsewhere, and the doors of the building have signs
	failing.Checks = []notices.CheckResult{passed("porch", day(t, "2027-05-09")), failed("hall", day(t, "2027-05-13"), day(t, "2027-05-17"))}
	unset.Checks = []notices.CheckResult{failed("hall", day(t, "2027-05-13"))}
	over.Owner, over.FederalAid = notices.RentsItOut, notices.Yes
	over.Checks = []notices.CheckResult{passed("porch", day(t, "2027-05-09")), passed("hall", day(t, "2027-05-13"))}
	for _, surface := range []notices.Surface{"floor", "sill"} {
		over.Wipes = append(over.Wipes, notices.Wipe{Work: "hall", Room: "hallway", Surface: surface, Lab: day(t, "2027-05-13"), Loading: 1})
	}
	return map[string]notices.Job{"before": before, "signed": signed, "failing": failing, "unset": unset, "over": over}
}

// 40 CFR 745.84(b)(2): a notice to each home before the work, or signs while it goes on. Only the renovation rule asks for them.
func TestCommonAreaSteps(t *testing.T) {
	job := stepJob(t)
	job.AnyonePaid = notices.Yes
	job.Shared = notices.SharedAreas{Route: notices.NoticeToEach, Homes: 6, Records: "Rosa"}
	for route, want := range map[notices.SharedRoute]string{
		notices.NoticeToEach: "tell_residents 2027-05-01 2027-05-01 2027-05-07\n", notices.SignsThere: "resident_signs_up 2027-05-08 2027-05-08 2027-05-08\n",
	} {
		job.Shared.Route = route
		steps := slices.DeleteFunc(notices.Decide(job).Steps, func(s notices.Step) bool { return s.For != notices.ForResidents })
		if got := written(steps); got != want || steps[0].Binds != notices.Law {
			t.Errorf("%s: got %swant %s", route, got, want)
		}
	}
}

func TestNoStepsWithoutLeadWork(t *testing.T) {
	job := stepJob(t)
	for i := range job.Work {
		job.Work[i].Tests = []notices.Test{{How: "laboratory_certified_sampler", Covers: notices.AllSurfaces, Result: notices.NoLead}}
	}
	if steps := notices.Decide(job).Steps; len(steps) > 0 {
		t.Errorf("tests show no lead, and there are steps: %s", written(steps))
	}
}
