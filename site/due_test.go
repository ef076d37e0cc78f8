package site_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
)

// dueJob has its work on Saturday, May 8, 2027 outside and on Tuesday, May 11 inside. Its checks are filled in for %s.
const dueJob = `code: %s
address: 14 Elm Row, Larkfield
state: WA
built: 1931
owner: rents_it_out
anyone_paid: yes
federal_housing_money: no
checked_by: clearance_test
on_the_day: {name: Rosa, phone: 612-555-0142, speaks: [en]}
pamphlets: [{to: owner, given: 2027-04-20, how: signed}, {to: h1, given: 2027-04-20, how: signed}]
work:
  - {id: porch, where: outside, area: front_porch, task: sand, parts: [trim], how_much: 60 sq ft, faces: [street], days: [2027-05-08], crew_arrives: 08:00, cleaned_by: 16:30, ways_in: [front_door]}
  - {id: hall, where: inside, area: hallway, task: sand, parts: [doors], how_much: unknown, days: [2027-05-11], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [kitchen_door, stairs]}
households:
  - {id: h1, name: The Lam family, languages: [en], child_under_6: no,
     ways_out: [[back_door]], bed: bed, bath: bathroom, kitchen: kitchen}
neighbours:
  - {id: n12, address: 12 Elm Row, gap: 14 ft, languages: [en], homes: 1}
%s`

const (
	onlyPorch  = "checks: [{work: porch, on: 2027-05-09, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: passed}]"
	allPassed  = "checks: [{work: porch, on: 2027-05-09, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: passed}, {work: hall, on: 2027-05-13, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: passed}]"
	dirtyHall  = "checks: [{work: porch, on: 2027-05-09, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: passed}, {work: hall, on: 2027-05-13, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: failed, clean_again: [2027-05-17]}]"
	dirtyUnset = "checks: [{work: porch, on: 2027-05-09, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: passed}, {work: hall, on: 2027-05-13, by: Ana Ruiz, role: examiner, certified: yes, independent: yes, result: failed}]"
	flats      = "common_areas: {told_by: notice_to_each_home, homes: 6, records_from: Rosa}"
	flatSigns  = "common_areas: {told_by: signs_in_the_building, homes: 6, records_from: Rosa}"
)

// anyKey is for ledgers that meet no folder.
const anyKey site.Key = "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f"

func dueAt(t *testing.T, code, checks string) notices.Job {
	t.Helper()
	return jobOf(t, fmt.Sprintf(dueJob, code, checks))
}

func date(t *testing.T, text string) notices.Date {
	t.Helper()
	d, err := notices.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// A memory is what the ledger knows of jobs, by code.
type memory map[string]ledger.Job

func dueOn(t *testing.T, on notices.Date, m memory, jobs ...notices.Job) []site.DueStep {
	t.Helper()
	var known []site.Known
	for _, plan := range plansOf(jobs...) {
		known = append(known, site.Known{Plan: plan, Ledger: m[plan.Code]})
	}
	steps, err := site.Due(known, on)
	if err != nil {
		t.Fatal(err)
	}
	return steps
}

// urgencyOf is the urgency of what says a text, or -1 when nothing does.
func urgencyOf(steps []site.DueStep, says string) site.Urgency {
	i := slices.IndexFunc(steps, func(s site.DueStep) bool { return strings.Contains(s.Says, says) })
	if i < 0 {
		return -1
	}
	return steps[i].Urgency
}

func listed(steps []site.DueStep) string {
	names := []string{"late", "today", "coming", "waits"}
	var lines strings.Builder
	for _, s := range steps {
		fmt.Fprintf(&lines, "%s %s %s: %s\n", names[s.Urgency], s.Due, s.Code, s.Says)
	}
	return lines.String()
}

// afterMake is the ledger after a make of the jobs.
func afterMake(t *testing.T, jobs ...notices.Job) memory {
	t.Helper()
	m := memory{}
	for _, job := range jobs {
		m = madeOnce(t, m, job, marchFirst)
	}
	return m
}

// madeOnce is what is remembered after one more make of a job.
func madeOnce(t *testing.T, m memory, job notices.Job, on notices.Date) memory {
	t.Helper()
	after, err := site.Remembered(m[job.Code], notices.Decide(job), anyKey, on)
	if err != nil {
		t.Fatal(err)
	}
	m = maps.Clone(m)
	m[job.Code] = after
	return m
}

// Every step of every kind, with an empty ledger: 15 days before its last day it is not listed, from 14 days before it comes, on its last day it is for
// today, and so it stays until it is late. What is never late passes, or waits for somebody.
func TestDueTurnsWithTheDays(t *testing.T) {
	t.Parallel()
	for name, checks := range map[string]string{"before": "", "flats": flats, "signs": flatSigns, "porch": onlyPorch, "failed": dirtyHall, "unset": dirtyUnset, "over": allPassed} {
		job := dueAt(t, "elm-14", checks)
		for _, step := range notices.Decide(job).Steps {
			if !step.Done.IsZero() || step.Kind == notices.KnockAgain {
				continue
			}
			after := site.Urgency(-1)
			switch {
			case step.Waits.ID != "":
				after = site.Waiting
			case step.LateAfter.Compare(step.Due) > 0:
				after = site.Today
			case !step.LateAfter.IsZero():
				after = site.Late
			}
			checkDay(t, name, job, step, -15, -1)
			checkDay(t, name, job, step, -14, site.Coming)
			checkDay(t, name, job, step, -1, site.Coming)
			checkDay(t, name, job, step, 0, site.Today)
			checkDay(t, name, job, step, 1, after)
			if !step.LateAfter.IsZero() {
				for days := 0; ; days++ {
					if step.Due.Plus(days) == step.LateAfter {
						checkDay(t, name, job, step, days, site.Today)
						checkDay(t, name, job, step, days+1, site.Late)
						break
					}
				}
			}
		}
	}
}

// checkDay finds a step on a day some time after its last one. A step that waits says something else, so the last day tells them apart.
func checkDay(t *testing.T, name string, job notices.Job, step notices.Step, days int, want site.Urgency) {
	t.Helper()
	on := step.Due.Plus(days)
	got := site.Urgency(-1)
	for _, s := range dueOn(t, on, nil, job) {
		says := step.Says
		if s.Urgency == site.Waiting && step.Waits.ID != "" {
			says = step.Waits
		}
		if s.Due == step.Due && s.Says == inEnglish(t, says) {
			got = s.Urgency
		}
	}
	if got != want {
		t.Errorf("%s: the step %s, due on %s, has the urgency %d on %s; want %d", name, step.ID, step.Due, got, on, want)
	}
}

// inEnglish is a message of the coordinator's English.
func inEnglish(t *testing.T, m notices.Message) string {
	t.Helper()
	records, err := site.Explain(notices.Plan{Reasons: []notices.Reason{{Outcome: m, Because: m}}})
	if err != nil {
		t.Fatal(err)
	}
	return records[0].Outcome
}

// The list of two jobs as somebody reads it on the Wednesday before: late first, then today, then what comes, nearest first over both.
func TestDueOverTwoJobs(t *testing.T) {
	first, second := dueAt(t, "elm-14", ""), dueAt(t, "oak-3", "")
	second.Neighbours = nil
	second.Work[1].Days = []notices.Date{date(t, "2027-05-19")}
	const want = `late 2027-04-24 elm-14: Speak to The Lam family, and plan their days and nights together.
late 2027-04-24 elm-14: Book the examiner for Tuesday, May 11, 2027, and ask how long the laboratory takes.
late 2027-04-24 oak-3: Speak to The Lam family, and plan their days and nights together.
late 2027-04-24 oak-3: Book the examiner for Wednesday, May 19, 2027, and ask how long the laboratory takes.
late 2027-05-01 elm-14: Bring The Lam family the stay-out letter, and take the signed receipt back.
late 2027-05-01 oak-3: Bring The Lam family the stay-out letter, and take the signed receipt back.
today 2027-05-03 elm-14: Ask 12 Elm Row to close the windows that face the work, and leave the request.
coming 2027-05-08 elm-14: Put up the signs for the work called porch before the crew sets up.
coming 2027-05-08 elm-14: Work day for the work called porch. See that its signs hang and can be read.
coming 2027-05-08 elm-14: Clean up after the work called porch, and have the examiner test for dust.
`
	if got := listed(dueOn(t, date(t, "2027-05-05"), nil, second, first)); !strings.HasPrefix(got, want) {
		t.Errorf("the list is\n%s\nwant it to start with\n%s", got, want)
	}
}

// What the ledger knows to be done is not due: paper in the right hands, at its current revision, and signs that hang.
func TestMarksTakeStepsAway(t *testing.T) {
	job := dueAt(t, "elm-14", "")
	on := date(t, "2027-05-07")
	made := afterMake(t, job)
	note := func(m memory, home, how string, days ...string) memory {
		for _, d := range days {
			after, _, err := m[job.Code].HandOver(ledger.Visit{Home: home, On: date(t, d), How: how, By: "RM", Language: "en"})
			if err != nil {
				t.Fatal(err)
			}
			m = memory{job.Code: after}
		}
		return m
	}
	check := func(what string, m memory, says string, want site.Urgency) {
		t.Helper()
		if got := urgencyOf(dueOn(t, on, m, job), says); got != want {
			t.Errorf("%s: %q has the urgency %d, want %d in\n%s", what, says, got, want, listed(dueOn(t, on, m, job)))
		}
	}
	check("nothing noted", made, "stay-out letter", site.Late)
	check("nothing noted", made, "Ask 12 Elm Row", site.Late)
	check("nobody was there yet", made, "Knock at", -1)
	check("another home was told", note(made, "n12", "spoke", "2027-05-02"), "stay-out letter", site.Late)
	check("the family was told", note(made, "h1", "spoke", "2027-05-02"), "stay-out letter", -1)
	check("the family was told", note(made, "h1", "spoke", "2027-05-02"), "Speak to The Lam", -1)
	check("a sheet was left", note(made, "n12", "left", "2027-05-03"), "Ask 12 Elm Row", -1)
	check("a sheet was left", note(made, "n12", "left", "2027-05-03"), "Knock at", site.Today)
	check("left on two days", note(made, "n12", "left", "2027-05-03", "2027-05-05"), "Knock at", -1)
	check("left, then spoke", note(note(made, "n12", "left", "2027-05-03"), "n12", "spoke", "2027-05-03"), "Knock at", -1)
	check("spoke at once", note(made, "n12", "spoke", "2027-05-03"), "Knock at", -1)

	told := note(made, "h1", "spoke", "2027-05-02")
	later := dueAt(t, "elm-14", "")
	later.Work[1].Days = []notices.Date{date(t, "2027-05-12")}
	if got := urgencyOf(dueOn(t, on, told, later), "job file says something else"); got != site.Today {
		t.Errorf("the job file changed after its make, and the list does not say so (%d)", got)
	}
	again := madeOnce(t, told, later, date(t, "2027-05-06"))
	if got := urgencyOf(dueOn(t, on, again, later), "stay-out letter"); got != site.Late {
		t.Errorf("a letter with other days was made, and the family has the old one; the urgency is %d, want late", got)
	}
	if got := urgencyOf(dueOn(t, on, again, later), "job file says something else"); got != -1 {
		t.Errorf("the list asks for a make that was done (%d)", got)
	}
}

// Signs: each one of a piece of work has to hang, and to be down again after the pass. One that hangs although the job has no use for it is named.
func TestSignsInTheLedger(t *testing.T) {
	job := dueAt(t, "elm-14", "")
	made := afterMake(t, job)
	post := func(m memory, ids ...string) memory {
		after, _, err := m[job.Code].Post(ids, date(t, "2027-05-08"), "RM")
		if err != nil {
			t.Fatal(err)
		}
		return memory{job.Code: after}
	}
	on := date(t, "2027-05-11")
	const up = "Put up the signs for the work called hall"
	for _, c := range []struct {
		ids  []string
		want site.Urgency
	}{{[]string{"sign-hall-stairs-en"}, site.Today}, {[]string{"sign-hall-stairs-en", "sign-hall-kitchen_door-en"}, -1}, {nil, -1}} {
		if got := urgencyOf(dueOn(t, on, post(made, c.ids...), job), up); got != c.want {
			t.Errorf("signs %v hang: the urgency is %d, want %d", c.ids, got, c.want)
		}
	}
	hung := post(made)
	off, _, err := hung[job.Code].TakeDown([]string{"sign-hall-stairs-en"}, date(t, "2027-05-10"))
	if err != nil {
		t.Fatal(err)
	}
	if got := urgencyOf(dueOn(t, on, memory{job.Code: off}, job), up); got != site.Today {
		t.Errorf("a sign came down before the pass: the urgency is %d, want today", got)
	}
	checkSignsDown(t, hung)
}

func checkSignsDown(t *testing.T, hung memory) {
	t.Helper()
	over := dueAt(t, "elm-14", allPassed)
	on := date(t, "2027-05-13")
	const down = "Take down the signs for the work called hall"
	if got := urgencyOf(dueOn(t, on, hung, over), down); got != site.Today {
		t.Errorf("the hall passed today and its signs hang: the urgency is %d, want today", got)
	}
	made := madeOnce(t, hung, over, on)
	if got := listed(dueOn(t, on, made, over)); strings.Contains(got, "no such sheet") {
		t.Errorf("a sign that is to come down after the pass is named twice:\n%s", got)
	}
	gone, _, err := made[over.Code].TakeDown(nil, on)
	if err != nil {
		t.Fatal(err)
	}
	if got := listed(dueOn(t, on, memory{over.Code: gone}, over)); strings.Contains(got, "Take down") {
		t.Errorf("nothing hangs any more, and the list says\n%s", got)
	}
	fewer := dueAt(t, "elm-14", "")
	fewer.Work[1].WaysIn = fewer.Work[1].WaysIn[:1]
	made = madeOnce(t, hung, fewer, on)
	if got := urgencyOf(dueOn(t, on, made, fewer), "Take down the sheet sign-hall-stairs-en"); got != site.Today {
		t.Errorf("the stairs are no way in any more and their sign hangs: the urgency is %d, want today", got)
	}
}

// After its last day the work waits for the examiner, however long that takes, and nothing that follows a pass is on the list.
func TestDueWaitsForTheExaminer(t *testing.T) {
	job := dueAt(t, "elm-14", onlyPorch)
	for _, on := range []string{"2027-05-12", "2027-08-12"} {
		steps := dueOn(t, date(t, on), nil, job)
		if got := urgencyOf(steps, "The work called hall waits for the examiner's written pass."); got != site.Waiting {
			t.Errorf("%s: the urgency is %d, want waiting, in\n%s", on, got, listed(steps))
		}
		if strings.Contains(listed(steps), "notice of what was done") || strings.Contains(listed(steps), "for the work called hall. It has passed") {
			t.Errorf("%s: there is a step that needs the pass:\n%s", on, listed(steps))
		}
	}
}

// The overview shows the steps by day, ticks what the ledger knew at the make, and has no word for the day on which it is read.
func TestOverviewShowsSteps(t *testing.T) {
	folder, job := newFolder(t), dueAt(t, "elm-14", "")
	madeIn(t, folder, marchFirst, job)
	_, err := folder.Mark(notices.Decide(job), func(known ledger.Job) (ledger.Job, []ledger.Noted, error) {
		return known.HandOver(ledger.Visit{Home: "h1", On: date(t, "2027-04-28"), How: "spoke", By: "RM", Language: "en"})
	})
	if err != nil {
		t.Fatal(err)
	}
	list := string(madeIn(t, folder, marchFirst, job)["print/index.html"])
	rows := strings.Split(list[strings.Index(list, "What is due"):strings.Index(list, `<ol class="piles">`)], "<tr>")
	for says, want := range map[string][]string{
		"stay-out letter":      {"Done.", "Sat May 1, 2027", "from Sat Apr 24, 2027", "Household"},
		"Ask 12 Elm Row":       {`class="box"`, "Mon May 3, 2027", "LATE after Wed May 5, 2027", "Neighbor"},
		"official lead":        {"Done.", "40 CFR 745.84(a)", "Law for this job"},
		"the work called hall": {`class="box"`, "Tue May 11, 2027"},
	} {
		i := slices.IndexFunc(rows, func(row string) bool { return strings.Contains(row, says) })
		if i < 0 {
			t.Errorf("the sheet has no row for %q", says)
			continue
		}
		for _, part := range want {
			if !strings.Contains(rows[i], part) {
				t.Errorf("the row for %q has no %q: %s", says, part, rows[i])
			}
		}
	}
	if strings.Contains(strings.ToLower(strings.Join(rows, "")), "today") {
		t.Error("the sheet says 'today'")
	}
}
