package notices

import (
	"fmt"
	"maps"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// protection is how much a plan protects, by what it is about: larger protects more, and 0 is not there.
//
//	stay h1                   1 home open, 2 out in hours, 3 sleeps elsewhere
//	told n12                  1 note, 2 request
//	sign front_door en        1
//	shut w1, barrier w0       1
//	cover w0                  ft
//	law pamphlet_due          1 where the decision binds by law
func protection(job Job) map[string]float64 {
	plan, all := Decide(job), map[string]float64{}
	for _, h := range job.householdsToTell() {
		all["stay "+h.ID] = float64(job.stay(h).stay) + 1
	}
	for _, home := range plan.Homes {
		all["told "+home.ID] = map[Kind]float64{NeighbourNote: 1, CloseWindowsRequest: 2}[home.Kind]
	}
	for _, s := range plan.Sheets {
		if s.Kind == WorkAreaSign {
			all[fmt.Sprint("sign ", s.Hang[0], " ", s.Faces[0].Language)] = 1
		}
	}
	for _, r := range plan.Reasons {
		protects(all, r)
	}
	return all
}

func protects(all map[string]float64, r Reason) {
	switch {
	case r.Outcome.ID == outShut.ID:
		all["shut "+r.About] = 1
	case r.Decision == "line_barrier":
		all["barrier "+r.About] = 1
	case r.Decision == "ground_cover":
		all["cover "+r.About] = float64(r.Outcome.Values[1].(Reach))
	}
	if r.Binds == Law && !slices.Contains(pricesOfAnAnswer, r.Decision) {
		all["law "+r.Decision] = 1
	}
}

// pricesOfAnAnswer bind only whoever has answered what protects less: who plans to sleep elsewhere anyway is protected more, by no law; an order of works holds for a home that uses a place
// while another is shut, and without its answer the home gets no letter; a statement is owed for what an emergency lets go; and how to note a
// try without a signature is said while a pamphlet is open, which turns with the first day.
var pricesOfAnAnswer = []string{"household_stays", "begin_after", "emergency_statement", "attempted_delivery"}

// less names what protects less in got than in want.
func less(got, want map[string]float64) []string {
	var all []string
	for key, much := range want {
		if got[key] < much {
			all = append(all, fmt.Sprintf("%s %v instead of %v", key, got[key], much))
		}
	}
	slices.Sort(all)
	return all
}

// Home open, then out in hours, then sleep elsewhere: more work never goes back in that order, never loses a neighbour, and never tells anybody later.
func TestMoreWorkNeverProtectsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		more := withMoreWork(t, job)
		if missing := less(protection(more), protection(job)); len(missing) > 0 {
			t.Fatalf("with more work: %v", missing)
		}
		checkNoLater(t, Decide(more), Decide(job))
	})
}

// A day more, a rain day, a failed check and a failing sample never protect less, and tell nobody later.
func TestADayRainOrAFailNeverProtectsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		more := job
		more.Work = slices.Clone(job.Work)
		w := &more.Work[rapid.IntRange(0, len(more.Work)-1).Draw(t, "which work")]
		last := w.Days[len(w.Days)-1]
		switch what := rapid.SampledFrom([]string{"a day", "rain", "a fail", "a sample"}).Draw(t, "what"); what {
		case "a day":
			w.Days = append(slices.Clone(w.Days), last.Plus(rapid.IntRange(1, 4).Draw(t, "days later")))
		case "rain":
			if !w.RainDay.IsZero() {
				return
			}
			w.RainDay = last.Plus(rapid.IntRange(1, 9).Draw(t, "days later"))
		case "a fail":
			more.Checks = []CheckResult{{Work: w.ID, On: last.Plus(1), By: "Jo", Role: Examiner, Certified: Yes, Independent: Yes, Result: Failed, Again: []Date{last.Plus(3)}}}
		case "a sample":
			more.Wipes = []Wipe{{Work: w.ID, Room: "laundry_room", Surface: "floor", Lab: last.Plus(2), Loading: 60}}
		}
		if missing := less(protection(more), protection(job)); len(missing) > 0 {
			t.Fatalf("%v", missing)
		}
		checkNoLater(t, Decide(more), Decide(job))
	})
}

func checkNoLater(t *rapid.T, changed, plan Plan) {
	due := map[string]Sheet{}
	for _, s := range changed.Sheets {
		due[s.ID] = s
	}
	for _, s := range plan.Sheets {
		now, there := due[s.ID]
		if there && (now.Due.Compare(s.Due) > 0 || now.Copies < s.Copies || !s.LateAfter.IsZero() && now.LateAfter.Compare(s.LateAfter) > 0) {
			t.Fatalf("%s was due on %s and late after %s, %d copies, and is now due on %s and late after %s, %d copies",
				s.ID, s.Due, s.LateAfter, s.Copies, now.Due, now.LateAfter, now.Copies)
		}
	}
}

// A programme's stricter figure never tells fewer homes, nor later, nor with less.
func TestStricterSettingsNeverProtectLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		strict := job
		strict.Programme.Stricter = map[string]float64{}
		for _, rule := range Settable {
			if rapid.Bool().Draw(t, rule.Name) {
				strict.Programme.Stricter[rule.Name] = rule.Value + float64(rapid.IntRange(0, 30).Draw(t, "more"))
			}
		}
		if missing := less(withoutOwnLate(protection(strict)), withoutOwnLate(protection(job))); len(missing) > 0 {
			t.Fatalf("with %v: %v", strict.Programme.Stricter, missing)
		}
		checkNoLater(t, Decide(strict), Decide(job))
	})
}

// withoutOwnLate: an earlier late day of the programme's own is its own rule, and not the law's.
func withoutOwnLate(all map[string]float64) map[string]float64 {
	maps.DeleteFunc(all, func(key string, _ float64) bool { return key == "law neighbours_late" })
	return all
}

// Every figure that a programme may set grows stricter upwards, as the test above supposes.
func TestSettableFiguresGrow(t *testing.T) {
	for _, rule := range Settable {
		if rule.stricter != larger {
			t.Errorf("%s is stricter when it is smaller", rule.Name)
		}
	}
}

// A question of the job file, as the change of a job to each answer. The first answer is unknown.
var questions = map[string][]func(*Job){
	"built":                 eachOf([]int{0, 1931, 1977, 1978, 1979, 2001}, func(j *Job, v int) { j.Built = v }),
	"owner":                 eachOf([]Owner{"", LivesHere, RentsItOut, LivesHereAndRentsOut}, func(j *Job, v Owner) { j.Owner = v }),
	"anyone_paid":           eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.AnyonePaid = v }),
	"federal_housing_money": eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.FederalAid = v }),
	"because_of_lead":       eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.LeadWork = v }),
	"emergency":             eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.Emergency = v }),
	"cleaned_nightly":       eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.Work[0].Nightly = v }),
	"how_much":              eachOf([]float64{0, 1, 2, 2.1, 6, 6.1, 20, 20.1, 60}, func(j *Job, v float64) { j.Work[0].HowMuch = v }),
	"share_of_part":         eachOf([]int{0, 1, 10, 11, 100}, func(j *Job, v int) { j.Work[0].PartShare = v }),
	"parts":                 eachOf([][]Part{nil, {"trim"}, {"walls"}, {"windows", "floor"}}, func(j *Job, v []Part) { j.Work[0].Parts = v }),
	"lot_line": eachOf([]Feet{-1, 0, 10, 10.1, 50}, func(j *Job, v Feet) {
		j.Work[0].LotLine, j.Work[0].LotLineKnown = max(v, 0), v >= 0
	}),
	"tests": eachOf([]TestResult{"", NoLead, LeadFound, NotClear}, func(j *Job, v TestResult) {
		j.Work[0].Tests = nil
		if v != "" {
			j.Work[0].Tests = []Test{{"certified_inspector", AllSurfaces, v}}
		}
	}),
	"near": eachOf([]Answer{NotSure, Yes, No}, func(j *Job, v Answer) {
		for i := range j.Neighbours {
			j.Neighbours[i].GapKnown, j.Neighbours[i].Near = false, v
		}
	}),
	"gap of neighbours": eachOf([]Feet{-1, 0, 20, 20.1, 50}, func(j *Job, v Feet) {
		for i := range j.Neighbours {
			j.Neighbours[i].Gap, j.Neighbours[i].GapKnown, j.Neighbours[i].Near = max(v, 0), v >= 0, NotSure
		}
	}),
	"gap of openings": eachOf([]Feet{-1, 0, 20, 20.1, 50}, func(j *Job, v Feet) {
		for i := range j.Openings {
			j.Openings[i].Gap, j.Openings[i].GapKnown = max(v, 0), v >= 0
		}
	}),
	"way out": eachOf([]Place{"", "back_door", "gate"}, func(j *Job, v Place) {
		for i := range j.Households {
			j.Households[i].Except, j.Households[i].Usual.WaysOut = nil, nil
			if v != "" {
				j.Households[i].Usual.WaysOut = [][]Place{{v}}
			}
		}
	}),
	"bed": eachOf([]Room{"", "bed", "bedroom"}, func(j *Job, v Room) {
		for i := range j.Households {
			j.Households[i].Except, j.Households[i].Usual.Bed = nil, v
		}
	}),
	"has_windows": eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.Work[0].HasWindows = v }),
	"begun":       eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.Work[0].Lost = []LostDay{{j.Work[0].Days[0], v}} }),
	"checked_by":  eachOf([]Check{NotDecided, ClearanceTest, CleaningCheck, CrewLook}, func(j *Job, v Check) { j.CheckedBy = v }),
	"pamphlet": eachOf([]Delivery{"", Signed, Mailed, Refused, Attempted}, func(j *Job, v Delivery) {
		j.Pamphlets = nil
		if v != "" {
			j.Pamphlets = []Pamphlet{{ToOwner, WorkDays(j.Work)[0].Plus(-30), v}}
		}
	}),
	"landlord_works": eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.LandlordWorks = v }),
	"dwelling":       eachOf([]Dwelling{"", OrdinaryHome, ElderlyHousing, NoBedroom}, func(j *Job, v Dwelling) { j.Dwelling = v }),
	"areas_shared":   eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) { j.AreasShared = v }),
	"child_under_6": eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) {
		for i := range j.Households {
			j.Households[i].ChildUnder6 = v
		}
	}),
	"owns_it": eachOf([]Answer{Unknown, Yes, No}, func(j *Job, v Answer) {
		for i := range j.Households {
			j.Households[i].Owns = No
		}
		if len(j.Households) > 0 {
			j.Households[0].Owns = v
		}
	}),
	"lead_presumed": eachOf([]Date{{}, {2027, 4, 20}}, func(j *Job, v Date) { j.Presumed = v }),
	"open_days": eachOf([][]time.Weekday{nil, {time.Monday, time.Friday}}, func(j *Job, v []time.Weekday) {
		for i := range j.Neighbours {
			j.Neighbours[i].Kind, j.Neighbours[i].OpenDays = DayCare, v
		}
	}),
}

func eachOf[V any](answers []V, set func(*Job, V)) []func(*Job) {
	var all []func(*Job)
	for _, v := range answers {
		all = append(all, func(j *Job) { set(j, v) })
	}
	return all
}

func answered(job Job, set func(*Job)) Job {
	job.Work, job.Neighbours, job.Openings, job.Households = slices.Clone(job.Work), slices.Clone(job.Neighbours), slices.Clone(job.Openings), slices.Clone(job.Households)
	set(&job)
	return job
}

// Whatever the answer turns out to be, unknown protects as much. Which doors the building has is left out: nobody can hang a sign on a door that nobody has
// named. So are plans of a household to be out or to sleep elsewhere, which are no facts about the work.
func TestNoAnswerProtectsMoreThanUnknown(t *testing.T) {
	for question, answers := range questions {
		t.Run(question, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				job := someJob(t)
				unknown := protection(answered(job, answers[0]))
				for i, set := range answers[1:] {
					if missing := less(unknown, protection(answered(job, set))); len(missing) > 0 {
						t.Fatalf("unknown protects less than answer %d: %v", i+1, missing)
					}
				}
			})
		})
	}
}
