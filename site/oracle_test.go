package site_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/PuerkitoBio/goquery"
	"pgregory.net/rapid"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/tree"
)

// A second, naive reading of a job, hour by hour, held against the words of the sheets as they print. It shares no code with the spans of notices, and knows of a
// job only what its file says.

// house is every place that oracle jobs work in, with the words for it on paper and the words for its ways in.
var house = []struct {
	area, word string
	where      notices.Where
	ways       []notices.Way
	faces      []string
}{
	{"hallway", "Hallway", notices.Inside, []notices.Way{"front_door", "hall_door"}, nil},
	{"bathroom", "Bathroom", notices.Inside, []notices.Way{"bathroom_door"}, nil},
	{"kitchen", "Kitchen", notices.Inside, []notices.Way{"kitchen_door"}, nil},
	{"front_porch", "Front porch", notices.Outside, []notices.Way{"front_door"}, []string{"12 Elm Row"}},
	{"back_porch", "Back porch", notices.Outside, []notices.Way{"back_door"}, []string{"16 Elm Row"}},
}

var oracleStart = notices.Date{Year: 2027, Month: time.May, Day: 10}

// oracleJob draws a house with one to three pieces of work, each in a place of its own, and one family that reads English.
func oracleJob(t *rapid.T) notices.Job {
	job := notices.Job{
		Programme: notices.Programme{Name: "Larkfield Home Repair", Phone: "6125550118", PhoneSpeaks: []notices.Language{"en"}, Base: "https://example.org", Languages: []notices.Language{"en"},
			TimeZone: "America/Chicago", Paper: notices.Letter, ResultTakes: rapid.IntRange(1, 4).Draw(t, "result takes")},
		Code: "elm-14", Address: "14 Elm Row, Larkfield", State: "OH", Built: 1931, Owner: notices.LivesHere, AnyonePaid: notices.No, FederalAid: notices.No, Emergency: notices.No,
		CheckedBy: rapid.SampledFrom([]notices.Check{notices.ClearanceTest, notices.CleaningCheck, notices.CrewLook, notices.NotDecided}).Draw(t, "checked by"),
		OnTheDay:  notices.Contact{Name: "Rosa", Phone: "6125550142", Speaks: []notices.Language{"en"}},
		Neighbours: []notices.Neighbour{
			{ID: "n12", Address: "12 Elm Row", Gap: 14, GapKnown: true, Languages: []notices.Language{"en"}, Homes: 1, Kind: notices.OneHome},
			{ID: "n16", Address: "16 Elm Row", Gap: 12, GapKnown: true, Languages: []notices.Language{"en"}, Homes: 1, Kind: notices.OneHome},
		},
	}
	places := rapid.Permutation([]int{0, 1, 2, 3, 4}).Draw(t, "places")
	for _, i := range places[:rapid.IntRange(1, 3).Draw(t, "pieces of work")] {
		job.Work = append(job.Work, oracleWork(t, i))
	}
	for _, w := range job.Work {
		oracleChecks(t, &job, w)
	}
	oracleSample(t, &job)
	job.Households = []notices.Household{oracleFamily(t, job)}
	return job
}

// oracleChecks draws no check of a piece of work, a pass, a fail, or a fail and a pass in either order.
func oracleChecks(t *rapid.T, job *notices.Job, w notices.Work) {
	last := w.Days[len(w.Days)-1]
	for range rapid.IntRange(0, 2).Draw(t, "checks") {
		job.Checks = append(job.Checks, notices.CheckResult{Work: w.ID, On: last.Plus(rapid.IntRange(0, 6).Draw(t, "checked after")), By: "Jo Park", Role: notices.Examiner, Certified: notices.Yes, Independent: notices.Yes,
			Result: rapid.SampledFrom([]notices.Verdict{notices.Passed, notices.Passed, notices.Failed}).Draw(t, "result")})
	}
	slices.SortStableFunc(job.Checks, func(a, b notices.CheckResult) int { return a.On.Compare(b.On) })
}

// oracleSample draws, in some jobs without a failed check, a failing sample from a room that nobody works in. Nothing answers it, so the room stays shut.
func oracleSample(t *rapid.T, job *notices.Job) {
	if rapid.IntRange(0, 3).Draw(t, "a sample fails") > 0 || slices.ContainsFunc(job.Checks, func(c notices.CheckResult) bool { return c.Result == notices.Failed }) {
		return
	}
	room := notices.Area("laundry_room")
	w := rapid.SampledFrom(job.Work).Draw(t, "sampled with")
	job.Wipes = []notices.Wipe{{Work: w.ID, Room: room, Surface: "floor", Lab: oracleStart.Plus(rapid.IntRange(9, 14).Draw(t, "reported")), Loading: 60, Reported: "60 ug/ft2"}}
}

func oracleWork(t *rapid.T, i int) notices.Work {
	p := house[i]
	w := notices.Work{ID: fmt.Sprintf("w%d", i), Where: p.where, Area: notices.Area(p.area), Task: "sand", Parts: []notices.Part{"walls"}, Faces: p.faces, CrewArrives: 8 * 60, CleanedBy: 15 * 60, WaysIn: p.ways,
		Nightly: notices.Yes, HasWindows: notices.Unknown, HowMuch: 60}
	first := rapid.IntRange(0, 8).Draw(t, "first day")
	w.Days = []notices.Date{oracleStart.Plus(first)}
	if more := rapid.IntRange(0, 3).Draw(t, "days between"); more > 0 {
		w.Days = append(w.Days, w.Days[0].Plus(more))
	}
	if rapid.Bool().Draw(t, "rain") {
		w.RainDay = w.Days[len(w.Days)-1].Plus(rapid.IntRange(1, 4).Draw(t, "rain day"))
	}
	if rapid.IntRange(0, 3).Draw(t, "lost") == 0 {
		w.Lost = []notices.LostDay{{Day: w.Days[0], Begun: rapid.SampledFrom([]notices.Answer{notices.Yes, notices.No, notices.Unknown}).Draw(t, "begun")}}
	}
	return w
}

func oracleFamily(t *rapid.T, job notices.Job) notices.Household {
	ways := [][]notices.Place{{"laundry_room", "side_door"}, {"hallway", "front_door"}, {"kitchen", "back_door"}, {"side_door"}, {"front_door"}, {"back_door"}}
	usual := func() notices.Usual {
		return notices.Usual{WaysOut: [][]notices.Place{rapid.SampledFrom(ways).Draw(t, "way out"), rapid.SampledFrom(ways).Draw(t, "other way out")}, Bed: "bed",
			Bath: rapid.SampledFrom([]notices.Room{"bathroom", "downstairs_bathroom"}).Draw(t, "bath"), Kitchen: "kitchen"}
	}
	h := notices.Household{ID: "h1", Name: "The Lam family", Languages: []notices.Language{"en"}, ChildUnder6: notices.Unknown, Usual: usual()}
	for _, w := range job.Work {
		switch rapid.IntRange(0, 3).Draw(t, "answer for "+w.ID) {
		case 0:
			h.Except = append(h.Except, notices.Exception{While: w.ID, Usual: notices.Usual{SleepsAt: "Birch Motel"}})
		case 1:
			h.Except = append(h.Except, notices.Exception{While: w.ID, Usual: usual()})
		}
	}
	return h
}

// isShut reports whether a piece of work keeps people out of its place at an hour: since the crew first set up, and no pass has been written by then.
func isShut(job notices.Job, w notices.Work, day notices.Date, hour int) bool {
	begun := false
	days := append(slices.Clone(w.Days), w.RainDay)
	for _, d := range days {
		nothingBegun := slices.ContainsFunc(w.Lost, func(l notices.LostDay) bool { return l.Day == d && l.Begun == notices.No })
		begun = begun || !d.IsZero() && !nothingBegun && (d.Compare(day) < 0 || d == day && hour*60 >= int(w.CrewArrives))
	}
	released := job.CheckedBy != notices.NotDecided && lastResult(job, w, day) == notices.Passed && !undone(job, w)
	return begun && !released
}

// lastResult is what the last check of a piece of work before a day found; "" when there was none.
func lastResult(job notices.Job, w notices.Work, before notices.Date) (found notices.Verdict) {
	for _, c := range job.Checks { // they are in order
		if c.Work == w.ID && c.On.Compare(before) < 0 {
			found = c.Result
		}
	}
	return found
}

// undone: a failing sample stands against the work that it was taken with.
func undone(job notices.Job, w notices.Work) bool {
	return slices.ContainsFunc(job.Wipes, func(wipe notices.Wipe) bool { return wipe.Work == w.ID })
}

// never is later than anything in these jobs.
var never = notices.Date{Year: 2030, Month: time.January, Day: 1}

func hasPassed(job notices.Job, w notices.Work) bool {
	return job.CheckedBy != notices.NotDecided && lastResult(job, w, never) == notices.Passed && !undone(job, w)
}

// wordsOfShut are the words on paper of all that a piece of work shuts: its place and the ways into it.
func wordsOfShut(w notices.Work) []string {
	words := []string{strings.ReplaceAll(string(w.Area), "_", " ")}
	for _, way := range w.WaysIn {
		words = append(words, strings.ReplaceAll(string(way), "_", " "))
	}
	return words
}

// A printedRow is one row of a table on paper: the group that it stands in, its label and its cells.
type printedRow struct {
	group string
	label []string
	cells []string
}

func printedRows(t *rapid.T, page []byte) []printedRow {
	doc, err := goquery.NewDocumentFromReader(strings.NewReader(string(page)))
	if err != nil {
		t.Fatal(err)
	}
	texts := func(s *goquery.Selection) (all []string) {
		s.Each(func(_ int, cell *goquery.Selection) {
			all = append(all, strings.Join(strings.Fields(cell.Text()), " "))
		})
		return all
	}
	var rows []printedRow
	doc.Find("table.facts").Each(func(_ int, table *goquery.Selection) {
		group := strings.Join(strings.Fields(table.Find("th.group").Text()), " ")
		table.Find("tr").Each(func(_ int, tr *goquery.Selection) {
			rows = append(rows, printedRow{group, texts(tr.Find("th:not(.group) .cell")), texts(tr.Find("td .cell"))})
		})
	})
	return rows
}

// momentOf reads "Tuesday, May 11, 8:00 AM", or a day alone, which is all of it.
func momentOf(t *rapid.T, text string) (notices.Date, int) {
	if at, err := time.Parse("Monday, January 2 2006", text+" 2027"); err == nil {
		return notices.Date{Year: at.Year(), Month: at.Month(), Day: at.Day()}, 0
	}
	at, err := time.Parse("Monday, January 2, 3:04 PM 2006", strings.NewReplacer("\u202f", " ", "\u00a0", " ").Replace(text)+" 2027")
	if err != nil {
		t.Fatalf("%q is no moment: %v", text, err)
	}
	return notices.Date{Year: at.Year(), Month: at.Month(), Day: at.Day()}, at.Hour()
}

func oracleFiles(t *rapid.T, kit site.Kit, job notices.Job) tree.Files {
	plan := notices.Decide(job)
	plan.Sheets = slices.DeleteFunc(plan.Sheets, func(s notices.Sheet) bool {
		return s.Kind == notices.WorkAreaSign || s.Kind == notices.LetterReceipt || s.To.ID == ""
	})
	unit, err := site.Build(plan, ledger.Job{}, kit)
	if err != nil {
		t.Fatal(err)
	}
	return unit.Files
}

// contradictions are all that the sheets of one plan say and the job does not bear.
func contradictions(t *rapid.T, kit site.Kit, job, planned notices.Job) (all []string) {
	files := oracleFiles(t, kit, planned)
	letter := printedRows(t, files["print/elm-14/letter-h1.html"])
	for day := oracleStart.Plus(-1); day.Compare(oracleStart.Plus(30)) < 0; day = day.Plus(1) {
		for _, hour := range []int{0, 7, 8, 9, 12, 20, 23} {
			var shut []notices.Work
			for _, w := range job.Work {
				if isShut(job, w, day, hour) {
					shut = append(shut, w)
				}
			}
			for _, wipe := range job.Wipes {
				if wipe.Lab.Compare(day) <= 0 {
					shut = append(shut, notices.Work{ID: "dirty", Area: wipe.Room})
				}
			}
			for _, wrong := range letterSays(t, letter, shut, day, hour) {
				all = append(all, fmt.Sprintf("%s %d:00: %s", day, hour, wrong))
			}
		}
	}
	all = append(all, returnSays(t, job, printedRows(t, files["print/elm-14/return-h1.html"]))...)
	all = append(all, neighboursAreTold(t, job, files)...)
	all = append(all, pagesSay(t, job, files)...)
	return append(all, planSays(t, job, notices.Decide(planned))...)
}

// pagesSay: no page tells that the outside work is done, or that windows may open, while any of it is not checked; and none names a room or a way to use.
func pagesSay(t *rapid.T, job notices.Job, files tree.Files) (wrong []string) {
	open := slices.ContainsFunc(job.Work, func(w notices.Work) bool {
		return w.Where == notices.Outside && lastResult(job, w, never) != notices.Passed
	})
	for path, page := range files {
		if !strings.HasPrefix(path, "web/") {
			continue
		}
		text := strings.ToLower(string(page))
		for _, done := range []string{"the work outside is done", "you may open your windows"} {
			if open && strings.Contains(text, done) {
				wrong = append(wrong, path+" says "+done)
			}
		}
		for _, use := range []string{"hallway", "front door", "back door", "kitchen door", "you may use", "may come home"} {
			if strings.Contains(text, use) {
				wrong = append(wrong, path+" says "+use)
			}
		}
	}
	return wrong
}

// planSays holds signs, steps and reasons against what has passed: a sign at each way into what is shut; none is taken down there; nobody is told to come home, to go in or to open windows.
func planSays(t *rapid.T, job notices.Job, plan notices.Plan) (wrong []string) {
	said, err := site.Explain(plan)
	if err != nil {
		t.Fatal(err)
	}
	steps, err := site.Due([]site.Known{{Plan: plan}}, oracleStart.Plus(40))
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, r := range said {
		lines = append(lines, r.Outcome)
	}
	for _, s := range steps {
		lines = append(lines, s.Says)
	}
	text := strings.Join(lines, "\n")
	insideOpen := len(job.Wipes) > 0
	for _, w := range job.Work {
		if hasPassed(job, w) {
			continue
		}
		insideOpen = insideOpen || w.Where == notices.Inside
		for _, way := range w.WaysIn {
			if !slices.ContainsFunc(plan.Sheets, func(s notices.Sheet) bool {
				return s.Kind == notices.WorkAreaSign && slices.Contains(s.Hang, way) && s.Area == w.Area
			}) {
				wrong = append(wrong, fmt.Sprintf("no sign hangs at the %s of %s", way, w.ID))
			}
		}
		for _, tells := range []string{"Take down the signs for the work called " + w.ID, "The work called " + w.ID + " has passed"} {
			if strings.Contains(text, tells) {
				wrong = append(wrong, "the plan says: "+tells)
			}
		}
		if slices.ContainsFunc(plan.TakeDown, func(d notices.Door) bool { return d.Area == w.Area }) {
			wrong = append(wrong, "a sign of "+w.ID+" is to come down")
		}
	}
	if insideOpen && strings.Contains(text, "may come home") {
		wrong = append(wrong, "the plan lets the family come home")
	}
	for _, n := range job.Neighbours {
		open := slices.ContainsFunc(job.Work, func(w notices.Work) bool {
			return w.Where == notices.Outside && slices.Contains(w.Faces, n.Address) && lastResult(job, w, never) != notices.Passed
		})
		if tells := "Tell " + n.Address + " that they may open"; open && strings.Contains(text, tells) {
			wrong = append(wrong, "the plan says: "+tells)
		}
	}
	return wrong
}

// letterSays compares a letter with what is shut at an hour: each place is listed as shut from that hour or an earlier one, and no row that holds then names anything shut, unless
// the letter says to call first when more is shut at once.
func letterSays(t *rapid.T, letter []printedRow, shut []notices.Work, day notices.Date, hour int) (wrong []string) {
	if len(letter) == 0 {
		return nil // it is not made while an answer is missing
	}
	var closed, names []string
	for _, w := range shut {
		names = append(names, strings.ReplaceAll(string(w.Area), "_", " "))
		closed = append(closed, wordsOfShut(w)...)
	}
	listed, callFirst := map[string]bool{}, false
	for _, row := range letter {
		callFirst = callFirst || row.label[0] == "More is shut at once?"
		if row.group == "Shut from" {
			from, at := momentOf(t, row.cells[0])
			listed[strings.ToLower(row.label[0])] = from.Compare(day) < 0 || from == day && at <= hour
		}
	}
	for _, name := range names {
		if !listed[name] {
			wrong = append(wrong, "the letter does not say that this is shut: "+name)
		}
	}
	for _, row := range letter {
		if row.group != "While it is shut, use" || len(shut) > 1 && callFirst || !slices.ContainsFunc(row.label, func(l string) bool { return slices.Contains(names, strings.ToLower(l)) }) {
			continue
		}
		for _, use := range strings.FieldsFunc(strings.ToLower(strings.Join(row.cells, ", ")), func(r rune) bool { return r == ',' }) {
			if use = strings.TrimPrefix(strings.TrimSpace(use), "and "); slices.Contains(closed, use) {
				wrong = append(wrong, "the letter tells them to use what is shut: "+use)
			}
		}
	}
	return wrong
}

// returnSays: a place that the return letter gives back has passed, and none that is listed there is among those still shut.
func returnSays(_ *rapid.T, job notices.Job, rows []printedRow) (wrong []string) {
	for _, row := range rows {
		for _, w := range job.Work {
			passed := hasPassed(job, w)
			if strings.EqualFold(row.label[0], strings.ReplaceAll(string(w.Area), "_", " ")) && row.group == "You may use" && !passed {
				wrong = append(wrong, "the return letter gives back what has not passed: "+row.label[0])
			}
		}
	}
	return wrong
}

// neighboursAreTold: whoever faces outside work that is not over has a request, from no later than half an hour before the crew, and no note that it is done.
func neighboursAreTold(t *rapid.T, job notices.Job, files tree.Files) (wrong []string) {
	for _, n := range job.Neighbours {
		var open []notices.Work
		for _, w := range job.Work {
			checked := lastResult(job, w, never) == notices.Passed
			if w.Where == notices.Outside && !checked && slices.Contains(w.Faces, n.Address) {
				open = append(open, w)
			}
		}
		request, asked := files["print/elm-14/request-"+n.ID+".html"]
		if _, done := files["print/elm-14/done-"+n.ID+".html"]; len(open) > 0 && (!asked || done) {
			wrong = append(wrong, n.Address+" faces work that is not over, and is not asked or is told that it is done")
			continue
		}
		for _, w := range open {
			if !slices.ContainsFunc(printedRows(t, request), func(row printedRow) bool {
				if row.label[0] != "From" {
					return false
				}
				from, at := momentOf(t, row.cells[0])
				first := firstBegun(w)
				return from.Compare(first) < 0 || from == first && at < 8
			}) {
				wrong = append(wrong, n.Address+" is not asked from the first day of "+w.ID)
			}
		}
	}
	return wrong
}

// firstBegun is the first day on which something was or will be set up.
func firstBegun(w notices.Work) notices.Date {
	for _, d := range append(slices.Clone(w.Days), w.RainDay) {
		if !slices.ContainsFunc(w.Lost, func(l notices.LostDay) bool { return l.Day == d && l.Begun == notices.No }) && !d.IsZero() {
			return d
		}
	}
	return never
}

func oracleKit(t *testing.T) site.Kit {
	t.Helper()
	kit, err := site.NewKit(notices.Programme{}, testKey, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	return kit
}

func TestNoSheetTellsAnybodyToUseWhatIsShut(t *testing.T) {
	kit := oracleKit(t)
	letters := 0
	rapid.Check(t, func(t *rapid.T) {
		job := oracleJob(t)
		if wrong := contradictions(t, kit, job, job); len(wrong) > 0 {
			t.Fatalf("%d contradictions, first\n%s\nin %+v\nwith the household %+v", len(wrong), strings.Join(wrong[:min(3, len(wrong))], "\n"), job.Work, job.Households[0])
		}
		letters++
	})
	if letters < 50 {
		t.Errorf("only %d jobs were read", letters)
	}
}

// The reading finds faults that are made on purpose: in the plan the work is a day later, a way in is forgotten, a neighbour's side is forgotten.
func TestTheOracleFindsFaults(t *testing.T) {
	kit := oracleKit(t)
	for name, fault := range map[string]func(*notices.Job){
		"a day later": func(j *notices.Job) {
			for i := range j.Work {
				j.Work[i].Days = slices.Clone(j.Work[i].Days)
				for k := range j.Work[i].Days {
					j.Work[i].Days[k] = j.Work[i].Days[k].Plus(1)
				}
				j.Work[i].RainDay, j.Work[i].Lost = notices.Date{}, nil
			}
			j.Checks = nil
		},
		"no way in": func(j *notices.Job) {
			for i := range j.Work {
				j.Work[i].WaysIn = []notices.Way{"gate"}
			}
		},
		"a failed check forgotten": func(j *notices.Job) {
			j.Checks = slices.DeleteFunc(slices.Clone(j.Checks), func(c notices.CheckResult) bool { return c.Result == notices.Failed })
		},
		"a failing sample forgotten": func(j *notices.Job) { j.Wipes = nil },
		"a side forgotten": func(j *notices.Job) {
			for i := range j.Work {
				if len(j.Work[i].Faces) > 0 {
					j.Work[i].Faces = []string{"yard"}
				}
			}
			j.Work = append(j.Work, notices.Work{ID: "other", Where: notices.Outside, Area: "shed", Task: "sand", Days: []notices.Date{oracleStart}, CrewArrives: 480, CleanedBy: 900, WaysIn: []notices.Way{"yard"},
				Faces: []string{"12 Elm Row", "16 Elm Row"}, Storey: 1, Nightly: notices.Yes, HowMuch: 60})
			j.Checks = append(slices.Clone(j.Checks), notices.CheckResult{Work: "other", On: oracleStart, By: "Jo", Role: notices.Examiner, Certified: notices.Yes, Independent: notices.Yes, Result: notices.Passed})
		},
	} {
		t.Run(name, func(t *testing.T) {
			found := 0
			rapid.Check(t, func(t *rapid.T) {
				job := oracleJob(t)
				planned := job
				planned.Work = slices.Clone(job.Work)
				fault(&planned)
				if len(contradictions(t, kit, job, planned)) > 0 {
					found++
				}
			})
			if found == 0 {
				t.Error("in all jobs that were drawn nobody noticed")
			}
		})
	}
}
