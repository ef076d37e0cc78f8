package jobfile

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"example.org/doorleaf/notices"
)

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

		// 36 square inches are a quarter of a square foot; 0.3 ug on 0.06 sq ft are 5 ug/ft2, which binary fractions miss.
		{"1.25 ug on 36 sq in", 5},
		{"<1.25 ug on 36 in2", 5},
		{"<1.26 ug on 36 in2", 5.04},
		{"0.3 ug on 0.06 sq ft", 5},
		{"10 ug on 2 sq ft", 5},
	} {
		if got := readWipe(t, c.result).Loading; math.Abs(got-c.want) > 0.001*max(1, c.want)/2 || c.want == 5 && got != 5 {
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

func readWipe(t *testing.T, result string) notices.Wipe {
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
landlord_works: no
federal_housing_money: no
checked_by: clearance_test
on_the_day: {name: Rosa, phone: 612-555-0142, speaks: [en]}
work:
  - {id: hall, where: inside, area: hallway, task: sand, parts: [doors], days: [2027-05-11, 2027-05-12], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [front_door]}
households: []
`

func endOf(add string) (notices.Job, Problems) {
	jobs, problems := Load(fstest.MapFS{ProgrammeFile: {Data: []byte(endProgramme)}, "jobs/job.yaml": {Data: []byte(endJob + add)}}, afterAll, "jobs/job.yaml")
	if len(problems) > 0 {
		return notices.Job{}, problems
	}
	return jobs[0], nil
}

func wipeJob(result string) (notices.Job, Problems) {
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
		"closed: yes": `the job cannot be closed, because the work "hall" has not passed its check`,
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
