package notices

import (
	"fmt"
	"maps"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

var answersDrawn = rapid.SampledFrom([]Answer{Yes, No, Unknown})

// someJob draws a job as Load would let it through: at least one piece of work, known words only, days in order.
func someJob(t *rapid.T) Job {
	place := rapid.SampledFrom([]Job{{State: "MN"}, {State: "WI"}, {State: "CA"}, {State: "CA", City: "San Francisco"}}).Draw(t, "place")
	job := Job{
		Programme: Programme{Name: "Larkfield Home Repair", Phone: "6125550118", Base: "https://leaf.example.org", Languages: someLanguages(t, "pages", English)},
		Code:      "elm-14", Address: "14 Elm Row, Larkfield", State: place.State, City: place.City,
		Built:      rapid.SampledFrom([]int{0, 1931, 1977, 1978, 2001}).Draw(t, "built"),
		Owner:      rapid.SampledFrom([]Owner{LivesHere, RentsItOut, LivesHereAndRentsOut, ""}).Draw(t, "owner"),
		AnyonePaid: answersDrawn.Draw(t, "paid"), FederalAid: answersDrawn.Draw(t, "federal aid"), Emergency: answersDrawn.Draw(t, "emergency"),
		LandlordWorks: answersDrawn.Draw(t, "landlord works"), AreasShared: answersDrawn.Draw(t, "areas shared"),
		Dwelling:  rapid.SampledFrom([]Dwelling{"", OrdinaryHome, ElderlyHousing, NoBedroom, ChildOccupied}).Draw(t, "dwelling"),
		CheckedBy: rapid.SampledFrom([]Check{ClearanceTest, CleaningCheck, CrewLook, NotDecided}).Draw(t, "checked by"),
		Entries:   rapid.SliceOfNDistinct(rapid.SampledFrom(Ways), 0, 3, rapid.ID[Way]).Draw(t, "entries"),
		OnTheDay:  Contact{Name: "Rosa", Phone: "6125550142"},
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "pieces of work") {
		job.Work = append(job.Work, someWork(t, i))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "households") {
		job.Households = append(job.Households, someHousehold(t, job, i))
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "neighbours") {
		job.Neighbours = append(job.Neighbours, someNeighbour(t, job, i))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "openings") {
		job.Openings = append(job.Openings, someOpening(t, job, i))
	}
	if rapid.Bool().Draw(t, "pamphlet given") {
		first := WorkDays(job.Work)[0]
		for _, to := range append([]string{ToOwner}, "h0", "h1")[:rapid.IntRange(1, 3).Draw(t, "to how many")] {
			job.Pamphlets = append(job.Pamphlets, Pamphlet{to, first.Plus(-rapid.IntRange(-1, 62).Draw(t, "days ago")), rapid.SampledFrom([]Delivery{Signed, Mailed, Refused, Attempted}).Draw(t, "how")})
		}
	}
	return job
}

func someOpening(t *rapid.T, job Job, i int) Opening {
	o := Opening{
		ID: fmt.Sprintf("o%d", i), What: rapid.SampledFrom(OpeningKinds).Draw(t, "opening"), Area: "kitchen", Storey: rapid.IntRange(1, 3).Draw(t, "its storey"),
		Work: rapid.SampledFrom(job.Work).Draw(t, "its work").ID,
	}
	if rapid.Bool().Draw(t, "opening measured") {
		o.Gap, o.GapKnown = Feet(rapid.Float64Range(0, 60).Draw(t, "gap of opening")), true
	}
	return o
}

// someLanguages are the given ones and some of the others.
func someLanguages(t *rapid.T, label string, always ...Language) []Language {
	languages := slices.Clone(always)
	for _, l := range Languages {
		if !slices.Contains(languages, l.Tag) && rapid.Bool().Draw(t, label+" "+l.Name) {
			languages = append(languages, l.Tag)
		}
	}
	return languages
}

// someReaders read some of the programme's languages; none stands for unknown.
func someReaders(t *rapid.T, job Job) []Language {
	return rapid.SliceOfNDistinct(rapid.SampledFrom(job.Programme.Languages), 0, len(job.Programme.Languages), rapid.ID[Language]).Draw(t, "reads")
}

func someWork(t *rapid.T, i int) Work {
	arrives := rapid.SampledFrom([]Clock{0, 20, 7*60 + 30, 8 * 60}).Draw(t, "arrives") // few, so that pieces of work share hours
	w := Work{
		ID: fmt.Sprintf("w%d", i), Where: rapid.SampledFrom([]Where{Inside, Outside}).Draw(t, "where"),
		Area: rapid.SampledFrom(Areas).Draw(t, "area"), Task: rapid.SampledFrom(Tasks).Draw(t, "task"),
		Parts: rapid.SliceOfNDistinct(rapid.SampledFrom(Parts), 0, 3, rapid.ID[Part]).Draw(t, "parts"), Storey: 1,
		Days: someDays(t), CrewArrives: arrives, CleanedBy: arrives + 60,
		WaysIn: rapid.SliceOfNDistinct(rapid.SampledFrom(Ways), 1, 3, rapid.ID[Way]).Draw(t, "ways in"),
	}
	w.CleanedBy = arrives + Clock(rapid.SampledFrom([]int{60, 8 * 60, 8*60 + 1}).Draw(t, "minutes"))
	w.Nightly = answersDrawn.Draw(t, "nightly")
	w.Storey = rapid.IntRange(1, 2).Draw(t, "storey")
	w.HowMuch = rapid.SampledFrom([]float64{0, 1, 2, 6, 20, 21}).Draw(t, "square feet")
	w.PartShare = rapid.SampledFrom([]int{0, 10, 11}).Draw(t, "share")
	w.LotLineKnown = rapid.Bool().Draw(t, "line measured")
	if w.LotLineKnown {
		w.LotLine = Feet(rapid.Float64Range(0, 20).Draw(t, "to the line"))
	}
	if rapid.IntRange(0, 3).Draw(t, "tested") == 0 {
		w.Tests = []Test{{rapid.SampledFrom(TestKinds).Draw(t, "test").Name, rapid.SampledFrom([]Covers{AllSurfaces, SomeSurfaces}).Draw(t, "covers"),
			rapid.SampledFrom([]TestResult{NoLead, LeadFound, NotClear}).Draw(t, "result")}}
	}
	if rapid.Bool().Draw(t, "has a rain day") {
		w.RainDay = w.Days[len(w.Days)-1].Plus(rapid.IntRange(1, 9).Draw(t, "rain day"))
	}
	return w
}

// someDays lie around a leap day and the turn of a year.
func someDays(t *rapid.T) []Date {
	first := rapid.SampledFrom([]Date{{2027, time.May, 8}, {2028, time.February, 27}, {2027, time.December, 30}, {2028, time.April, 27}}).Draw(t, "first")
	var days []Date
	for _, n := range rapid.SliceOfN(rapid.IntRange(0, 8), 1, 5).Draw(t, "days after it") {
		days = append(days, first.Plus(n))
	}
	return sortedDays(days)
}

func someHousehold(t *rapid.T, job Job, i int) Household {
	h := Household{ID: fmt.Sprintf("h%d", i), Name: fmt.Sprintf("Family %d", i), Languages: someReaders(t, job), ChildUnder6: answersDrawn.Draw(t, "child under 6"), Pets: somePets(t)}
	h.Usual = Usual{WaysOut: [][]Place{{"back_door"}}, Bed: "bed", Bath: "bathroom", Kitchen: "kitchen"}
	for _, w := range job.Work {
		switch rapid.IntRange(0, 5).Draw(t, "how it lives while "+w.ID+" is shut") {
		case 0:
			h.Except = append(h.Except, Exception{w.ID, "", Usual{SleepsAt: rapid.SampledFrom([]string{"her sister's", "Birch Motel"}).Draw(t, "where")}})
		case 1:
			h.Except = append(h.Except, Exception{w.ID, "", Usual{Away: Yes}})
		case 2:
			h.Except = append(h.Except, Exception{w.ID, "", Usual{WaysOut: [][]Place{{"hallway", "front_door"}, {"side_door"}}}})
		}
	}
	return h
}

func somePets(t *rapid.T) []Pet {
	return rapid.SliceOfNDistinct(rapid.SampledFrom(Pets), 0, 2, rapid.ID[Pet]).Draw(t, "pets")
}

func someNeighbour(t *rapid.T, job Job, i int) Neighbour {
	n := Neighbour{
		ID: fmt.Sprintf("n%d", i), Address: fmt.Sprintf("%d %s", rapid.IntRange(1, 40).Draw(t, "number")*10+i, rapid.SampledFrom([]string{"Elm Row", "Birch Lane"}).Draw(t, "street")),
		Near: rapid.SampledFrom([]Answer{Yes, No, NotSure}).Draw(t, "near"), Languages: someReaders(t, job), Pets: somePets(t),
		Homes: rapid.IntRange(1, 12).Draw(t, "homes"),
	}
	if rapid.Bool().Draw(t, "measured") {
		n.Gap, n.GapKnown = Feet(rapid.Float64Range(0, 60).Draw(t, "gap")), true
	}
	return n
}

func ids(plan Plan) []string {
	var all []string
	for _, sheet := range plan.Sheets {
		all = append(all, sheet.ID)
	}
	slices.Sort(all)
	return all
}

// faces counts the faces of every sheet, by sheet and language.
func faces(plan Plan) map[string]bool {
	all := map[string]bool{}
	for _, sheet := range plan.Sheets {
		for _, face := range sheet.Faces {
			all[sheet.ID+" "+string(face.Language)] = true
		}
	}
	return all
}

// lacks are the entries of want that all does not have.
func lacks[V any](all, want map[string]V) []string {
	var missing []string
	for key := range want {
		if _, there := all[key]; !there {
			missing = append(missing, key)
		}
	}
	return missing
}

// Whatever the answer turns out to be, what was made for "unknown" covers it: the request to close windows, and a face in the reader's language.
func TestUnknownIsNeverLessProtective(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		if len(job.Neighbours) == 0 {
			return
		}
		unknown := withFirstNeighbour(job, func(n *Neighbour) { n.GapKnown, n.Near, n.Languages = false, NotSure, nil })
		asked := isAskedToClose(unknown)
		for _, near := range []Answer{Yes, No, Unknown, ""} {
			known := withFirstNeighbour(job, func(n *Neighbour) { n.GapKnown, n.Near = false, near })
			if isAskedToClose(known) && !asked {
				t.Fatalf("with near %q the first neighbour is asked to close windows, with not_sure not", near)
			}
			if (near == Unknown || near == "") && isAskedToClose(known) != asked {
				t.Fatalf("near %q does not count as not_sure", near)
			}
		}
		if asked != job.hasOutsideWork() {
			t.Fatalf("a neighbour that nobody measured is asked: %v, outside work: %v", asked, job.hasOutsideWork())
		}
		checkLanguagesCovered(t, job, unknown)
	})
}

func withFirstNeighbour(job Job, change func(*Neighbour)) Job {
	job.Neighbours = slices.Clone(job.Neighbours)
	change(&job.Neighbours[0])
	return job
}

func isAskedToClose(job Job) bool {
	return slices.Contains(ids(Decide(job)), "request-"+job.Neighbours[0].ID)
}

func checkLanguagesCovered(t *rapid.T, job, unknown Job) {
	for _, l := range job.Programme.Languages {
		reader := withFirstNeighbour(unknown, func(n *Neighbour) { n.Languages = []Language{l} })
		if missing := lacks(faces(Decide(unknown)), faces(Decide(reader))); len(missing) > 0 {
			t.Fatalf("for a neighbour whose language is unknown these faces are missing: %v", missing)
		}
		for i := range job.Households {
			families := job
			families.Households = slices.Clone(job.Households)
			families.Households[i].Languages = nil
			all := faces(Decide(families))
			families.Households = slices.Clone(families.Households)
			families.Households[i].Languages = []Language{l}
			if missing := lacks(all, faces(Decide(families))); len(missing) > 0 {
				t.Fatalf("for a household whose language is unknown these faces are missing: %v", missing)
			}
		}
	}
}

// An age that nobody knows, and pay that nobody knows of, call for what the stricter answer calls for.
func TestUnknownAgeAndPayCountAsStricter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		outcomes := func(change func(*Job)) map[string]string {
			changed := job
			change(&changed)
			all := map[string]string{}
			for _, r := range Decide(changed).Reasons {
				all[r.Decision+" "+r.About] = fmt.Sprint(r.Outcome)
			}
			return all
		}
		if unknown, old := outcomes(func(j *Job) { j.Built = 0 }), outcomes(func(j *Job) { j.Built = 1977 }); !maps.Equal(unknown, old) {
			t.Fatalf("unknown age has the outcomes\n%v\nand 1977\n%v", unknown, old)
		}
		if unknown, paid := outcomes(func(j *Job) { j.AnyonePaid = Unknown }), outcomes(func(j *Job) { j.AnyonePaid = Yes }); !maps.Equal(unknown, paid) {
			t.Fatalf("unknown pay has the outcomes\n%v\nand pay\n%v", unknown, paid)
		}
	})
}

// More work never takes a sheet or a face away from anybody, but for the letter of a household that has to be asked first what it uses then. A door of the building that
// becomes a way in has the sign of its work area instead.
func TestMoreWorkLosesNoSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		more := withMoreWork(t, job)
		missing := slices.DeleteFunc(lacks(hung(Decide(more)), hung(Decide(job))), func(face string) bool {
			return slices.ContainsFunc(more.Households, func(h Household) bool {
				return len(more.unanswered(h)) > 0 && (strings.HasPrefix(face, letterID(h.ID)+" ") || strings.HasPrefix(face, receiptID(h.ID)+" "))
			})
		})
		if len(missing) > 0 {
			t.Fatalf("with more work these are missing: %v", missing)
		}
	})
}

func withMoreWork(t *rapid.T, job Job) Job {
	job.Work = append(slices.Clone(job.Work), someWork(t, len(job.Work)))
	return job
}

// hung is faces, but for the signs of the building's doors, which count by their door.
func hung(plan Plan) map[string]bool {
	all := map[string]bool{}
	for _, sheet := range plan.Sheets {
		for _, face := range sheet.Faces {
			if !strings.HasPrefix(sheet.ID, "sign-entry-") {
				all[sheet.ID+" "+string(face.Language)] = true
			}
			if sheet.Kind == WorkAreaSign {
				all[string(sheet.Hang[0])+" "+string(face.Language)] = true
			}
		}
	}
	return all
}

// The order of the entries in a file changes the order of sheets at most.
func TestOrderOfEntriesChangesNoSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		shuffled := job
		shuffled.Work = rapid.Permutation(job.Work).Draw(t, "work")
		shuffled.Neighbours = rapid.Permutation(job.Neighbours).Draw(t, "neighbours")
		shuffled.Households = rapid.Permutation(job.Households).Draw(t, "households")
		shuffled.Openings = rapid.Permutation(job.Openings).Draw(t, "openings")
		shuffled.Entries = rapid.Permutation(job.Entries).Draw(t, "entries")
		for i, h := range shuffled.Households {
			shuffled.Households[i].Except = rapid.Permutation(h.Except).Draw(t, "exceptions")
		}
		a, b := Decide(job), Decide(shuffled)
		if !slices.Equal(ids(a), ids(b)) || !maps.Equal(faces(a), faces(b)) || !maps.Equal(dues(a), dues(b)) {
			t.Fatalf("in another order of entries the sheets are\n%v\ninstead of\n%v", ids(b), ids(a))
		}
		if !reflect.DeepEqual(walkOrder(a, NeighbourNote, CloseWindowsRequest), walkOrder(b, NeighbourNote, CloseWindowsRequest)) {
			t.Fatalf("the walk depends on the order in the file:\n%v\n%v", a.Homes, b.Homes)
		}
		if decided, again := decisions(a), decisions(b); !slices.Equal(decided, again) {
			t.Fatalf("in another order of entries the decisions are\n%s\ninstead of\n%s", strings.Join(again, "\n"), strings.Join(decided, "\n"))
		}
	})
}

// decisions are all reasons, sorted.
func decisions(plan Plan) []string {
	var all []string
	for _, r := range plan.Reasons {
		all = append(all, fmt.Sprint(r.Decision, r.About, r.Outcome, r.Because, r.Source, r.Binds, sortedFields(r.Missing)))
	}
	slices.Sort(all)
	return all
}

func sortedFields(missing []Missing) []string {
	var fields []string
	for _, m := range missing {
		fields = append(fields, m.Field)
	}
	slices.Sort(fields)
	return fields
}

// walkOrder is the ids of the homes that get sheets of these kinds, in walking order.
func walkOrder(plan Plan, kinds ...Kind) []string {
	var all []string
	for _, home := range plan.Homes {
		if slices.Contains(kinds, home.Kind) {
			all = append(all, home.ID)
		}
	}
	return all
}

// dues are the days and copies of all sheets.
func dues(plan Plan) map[string]string {
	all := map[string]string{}
	for _, sheet := range plan.Sheets {
		all[sheet.ID] = fmt.Sprint(sheet.Due, sheet.Copies, sheet.Kind, sheet.Hang, sheet.To)
	}
	return all
}

// A week later, every answer is a week later, but for neighbours' days, and the last for mail, where a federal holiday or Sunday lies close. Dates of the proleptic Gregorian calendar are the time
// package's, with months and leap days.
func TestAWeekLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		now, then := Decide(job), Decide(weekLater(job))
		holiday := holidayNear(job)
		if len(now.Sheets) != len(then.Sheets) {
			t.Fatalf("a week later there are %d sheets instead of %d", len(then.Sheets), len(now.Sheets))
		}
		for i, sheet := range now.Sheets {
			days := timeOf(then.Sheets[i].Due).Sub(timeOf(sheet.Due)).Hours() / 24
			if then.Sheets[i].ID != sheet.ID || days != 7 && (sheet.LateAfter.IsZero() || !holiday) {
				t.Fatalf("%s is due on %s, and a week later %s on %s", sheet.ID, sheet.Due, then.Sheets[i].ID, then.Sheets[i].Due)
			}
		}
		for i, r := range now.Reasons {
			late := then.Reasons[i]
			if holiday && slices.Contains([]string{"neighbours_due", "neighbours_late", "residents_late", "letter_due", "long_span"}, r.Decision) {
				continue
			}
			if r.Decision == "pamphlet_due" && (mailMoves(job) || mailMoves(weekLater(job))) {
				continue
			}
			if later := shifted(r); !reflect.DeepEqual(later, late) {
				t.Fatalf("the decision\n%v\nis a week later\n%v\nwant\n%v", r, late, later)
			}
		}
	})
}

// shifted is the same decision with each day a week later.
func shifted(r Reason) Reason {
	move := func(m Message) Message {
		m.Values = slices.Clone(m.Values)
		for i, v := range m.Values {
			switch v := v.(type) {
			case Day:
				m.Values[i] = Day(Date(v).Plus(7))
			case SecondDay:
				m.Values[i] = SecondDay(Date(v).Plus(7))
			}
		}
		return m
	}
	r.Outcome, r.Because = move(r.Outcome), move(r.Because)
	return r
}

// mailMoves: the last day for mail is a Sunday or a holiday.
func mailMoves(job Job) bool {
	if len(job.leadWork()) == 0 {
		return false
	}
	last := firstDay(job.leadWork()).Plus(-int(pamphletMailed.Value))
	return mailDay(last) != last
}

// holidayNear: a weekday that is no business day lies in the two weeks before the work, or in the week after its first day.
func holidayNear(job Job) bool {
	for day := WorkDays(job.Work)[0].Plus(-14); day.Compare(WorkDays(job.Work)[len(WorkDays(job.Work))-1].Plus(8)) < 0; day = day.Plus(1) {
		if !day.isBusinessDay() && day.Weekday() != time.Saturday && day.Weekday() != time.Sunday {
			return true
		}
	}
	return false
}

func timeOf(d Date) time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

func weekLater(job Job) Job {
	job.Work = slices.Clone(job.Work)
	for i, w := range job.Work {
		job.Work[i].Days = later(w.Days)
		if !w.RainDay.IsZero() {
			job.Work[i].RainDay = w.RainDay.Plus(7)
		}
	}
	job.Pamphlets = slices.Clone(job.Pamphlets)
	for i := range job.Pamphlets {
		job.Pamphlets[i].Given = job.Pamphlets[i].Given.Plus(7)
	}
	return job
}

func later(days []Date) []Date {
	days = slices.Clone(days)
	for i := range days {
		days[i] = days[i].Plus(7)
	}
	return days
}

// timed are the kinds of values that go stale.
var timed = []reflect.Type{
	reflect.TypeFor[Date](), reflect.TypeFor[Days](), reflect.TypeFor[Span](), reflect.TypeFor[Time](), reflect.TypeFor[Clock](),
	reflect.TypeFor[Day](), reflect.TypeFor[SecondDay](), reflect.TypeFor[time.Time](),
}

// hasTime looks for a day or an hour anywhere inside a value.
func hasTime(v reflect.Value) bool {
	if !v.IsValid() {
		return false
	}
	if slices.Contains(timed, v.Type()) {
		return true
	}
	switch v.Kind() {
	case reflect.Interface, reflect.Pointer:
		return hasTime(v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			if hasTime(v.Field(i)) {
				return true
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if hasTime(v.Index(i)) {
				return true
			}
		}
	}
	return false
}

// A sign hangs until the crew takes it down, and the page of the family tells nobody when a house is empty: neither holds a day or an hour.
func TestSignsAndHomePagesHoldNoTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		plan := Decide(job)
		for _, sheet := range plan.Sheets {
			for _, face := range sheet.Faces {
				timed := hasTime(reflect.ValueOf(face.Content))
				if sheet.Kind == WorkAreaSign && timed {
					t.Fatalf("%s holds a day or an hour: %v", sheet.ID, face.Content)
				}
				if sheet.Kind == CloseWindowsRequest && !timed {
					t.Fatalf("%s holds no day, or this test finds none", sheet.ID)
				}
			}
		}
		for _, page := range plan.Pages {
			if hasTime(reflect.ValueOf(page.Content)) != slices.Contains([]PageKind{pageWindows, pageNear, pagePets}, page.Kind) {
				t.Fatalf("the page %s holds a day or an hour where it should not, or none where it should", page.Kind)
			}
		}
	})
}

// A code opens a page that exists, and a page exists in the language of every face.
func TestEveryFaceOpensAPage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		plan := Decide(job)
		exists := map[PageKind]bool{}
		for _, page := range plan.Pages {
			if exists[page.Kind] {
				t.Fatalf("there are two pages %s", page.Kind)
			}
			exists[page.Kind] = true
		}
		for _, sheet := range plan.Sheets {
			if len(sheet.Faces) == 0 || sheet.Copies < 1 || sheet.Due.IsZero() {
				t.Fatalf("%s has %d faces, %d copies and is due on %s", sheet.ID, len(sheet.Faces), sheet.Copies, sheet.Due)
			}
			for _, face := range sheet.Faces {
				if !exists[face.Opens] || !slices.Contains(job.Programme.Languages, face.Language) {
					t.Fatalf("%s opens the page %s in %s, which does not exist", sheet.ID, face.Opens, face.Language)
				}
			}
		}
	})
}

// idOfSheet is a name that a file can have on every system.
var idOfSheet = regexp.MustCompile(`^[a-z][a-z0-9_-]{0,99}$`)

func TestSheetIDsAreFileNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := ids(Decide(someJob(t)))
		for i, id := range all {
			if i > 0 && all[i-1] == id {
				t.Fatalf("two sheets have the id %s", id)
			}
			if !idOfSheet.MatchString(id) {
				t.Fatalf("%q is no name for a file", id)
			}
		}
	})
}

// Each neighbour's sheet and each page about the outside work has all of its days, and no other: none is lost when work shares a row.
func TestEveryOutsideDayIsTold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		var want []Date
		for _, w := range job.outsideWork() {
			want = append(want, w.AllDays()...)
		}
		want = sortedDays(want)
		plan := Decide(job)
		for _, sheet := range plan.Sheets {
			if slices.Contains([]Kind{CloseWindowsRequest, NeighbourNote, PetFlyer}, sheet.Kind) {
				checkDays(t, sheet.ID, sheet.Faces[0].Content, want)
			}
		}
		for _, page := range plan.Pages {
			if slices.Contains([]PageKind{pageWindows, pageNear, pagePets}, page.Kind) {
				checkDays(t, string(page.Kind), page.Content, want)
			}
		}
	})
}

func checkDays(t *rapid.T, name string, content Content, want []Date) {
	var got []Date
	for _, fact := range content.Facts {
		for _, cell := range fact.Cells {
			switch cell := cell.(type) {
			case Days:
				got = append(got, daysIn(cell)...)
			case Moment:
				got = append(got, cell.Day)
			}
		}
	}
	if got = sortedDays(got); !slices.Equal(got, want) {
		t.Fatalf("%s has the days %v, and the outside work %v", name, got, want)
	}
}

func daysIn(spans Days) []Date {
	var days []Date
	for _, s := range spans {
		for d := s.First; d.Compare(s.Last) <= 0; d = d.Plus(1) {
			days = append(days, d)
		}
	}
	return days
}
