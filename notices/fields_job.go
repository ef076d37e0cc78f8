package notices

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices/strict"
)

// JobFields are the keys of a job file.
var JobFields = fieldsOf(jobRows)

var jobRows = []row[Job]{
	{Field{Key: "code", Holds: HoldsOneLine, Required: true, Question: "Under which short name do you file this house?", Example: "alder-14", Pattern: codePattern},
		func(r *reader, v *strict.Node, j *Job) { j.Code = r.code(v) }},
	{Field{Key: "address", Holds: HoldsOneLine, Required: true, Question: "What is the address of the house, number first?", Example: "14 Alder Court, Larkfield"},
		func(r *reader, v *strict.Node, j *Job) { j.Address = r.address(v) }},
	{Field{Key: "state", Holds: HoldsOneLine, Required: true, Question: "Which state is it in, in two capitals? Write unknown when nobody knows, and on tribal land.", Example: "MN",
		Noun: "state", Words: append(slices.Clone(states), StateUnknown)},
		func(r *reader, v *strict.Node, j *Job) { j.State = v.Text }},
	{Field{Key: "city", Holds: HoldsOneLine, Question: "Which city is it in, if the city has rules of its own?", Example: "San Francisco"},
		func(r *reader, v *strict.Node, j *Job) { j.City = r.name(v) }},
	{Field{Key: "built", Holds: HoldsNumber, Required: true, Question: "In which year was the house built? Write unknown when nobody knows.", Example: "1931",
		Words: []string{"unknown"}, Min: 1600, Max: 2100},
		func(r *reader, v *strict.Node, j *Job) { j.Built = number(v) }},
	{Field{Key: "owner", Holds: HoldsOneLine, Question: "Does the owner live here, or rent it out?", Example: "lives_here",
		Noun: "answer", Words: wordsOf([]Owner{LivesHere, RentsItOut, ownerUnknown})},
		func(r *reader, v *strict.Node, j *Job) { j.Owner = ownerOf(v.Text) }},
	{Field{Key: "anyone_paid", Holds: HoldsOneLine, Question: "Is anyone paid for this work?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *Job) { j.AnyonePaid = Answer(v.Text) }},
	{Field{Key: "federal_housing_money", Holds: HoldsOneLine, Question: "Is federal housing money in the job or the house?", Example: "unknown", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *Job) { j.FederalAid = Answer(v.Text) }},
	{Field{Key: "checked_by", Holds: HoldsOneLine, Question: "Who decides at the end that it is clean enough?", Example: "clearance_test",
		Noun: "check", Words: wordsOf([]Check{ClearanceTest, CleaningCheck, CrewLook, NotDecided})},
		func(r *reader, v *strict.Node, j *Job) { j.CheckedBy = Check(v.Text) }},
	{Field{Key: "because_of_lead", Holds: HoldsOneLine, Question: "Is lead the reason for the work: an order, an abatement, lead hazard control?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *Job) { j.LeadWork = Answer(v.Text) }},
	{Field{Key: "emergency", Holds: HoldsOneLine, Question: "Is it an emergency, such as a burst pipe, that can not wait?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *Job) { j.Emergency = Answer(v.Text) }},
	{Field{Key: "entries", Holds: HoldsList, Question: "Which doors lead into the building, front, back and side?", Example: "[front_door, back_door]", Noun: "way", Words: wordsOf(Ways)},
		func(r *reader, v *strict.Node, j *Job) { j.Entries = listOf[Way](v) }},
	{Field{Key: "on_the_day", Holds: HoldsObject, Required: true, Question: "Who is at the house while the crew works?", Example: "{name: Rosa, phone: 555-0142, speaks: [en, es]}",
		Fields: fieldsOf(contactRows)},
		func(r *reader, v *strict.Node, j *Job) { readObject(r, v, contactRows, &j.OnTheDay) }},
	{Field{Key: "pamphlet", Holds: HoldsObject, Question: "Has the official lead pamphlet been given yet?", Fields: fieldsOf(pamphletRows)},
		func(r *reader, v *strict.Node, j *Job) { readObject(r, v, pamphletRows, &j.Pamphlet) }},
	{Field{Key: "work", Holds: HoldsObjects, Required: true, Min: 1, Question: "What will you do, area by area?", Fields: fieldsOf(workRows)},
		func(r *reader, v *strict.Node, j *Job) { j.Work = readObjects(r, v, workRows, blankWork) }},
	{Field{Key: "households", Holds: HoldsObjects, Required: true, Question: "Who lives in the house? Write [] when it stands empty.", Fields: fieldsOf(householdRows)},
		func(r *reader, v *strict.Node, j *Job) {
			j.Households = readObjects(r, v, householdRows, blankHousehold)
		}},
	{Field{Key: "neighbours", Holds: HoldsObjects, Question: "Which homes touch the lot? Write [] when none does.", Fields: fieldsOf(neighbourRows)},
		func(r *reader, v *strict.Node, j *Job) {
			j.Neighbours, j.Asked = readObjects(r, v, neighbourRows, blankNeighbour), true
		}},
	{Field{Key: "checks", Later: true, Holds: HoldsObjects, Question: "After the work: what did the check find?", Fields: fieldsOf(checkRows)},
		func(r *reader, v *strict.Node, j *Job) {
			j.Checks = readObjects(r, v, checkRows, CheckResult{Certified: Unknown, Independent: Unknown})
		}},
	{Field{Key: "wipes", Later: true, Holds: HoldsObjects, Question: "After the work: which dust samples came back from the laboratory?", Fields: fieldsOf(wipeRows)},
		func(r *reader, v *strict.Node, j *Job) { j.Wipes = readObjects(r, v, wipeRows, Wipe{}) }},
	{Field{Key: "closed", Later: true, Holds: HoldsOneLine, Question: "Is the job over, so that its pages say only how to reach you?", Example: "yes", Noun: "answer", Words: wordsOf([]Answer{Yes, No})},
		func(r *reader, v *strict.Node, j *Job) { j.Closed = Answer(v.Text) }},
	{Field{Key: "common_areas", Holds: HoldsObject, Question: "Do several homes share the areas that are worked on?", Fields: fieldsOf(sharedRows)},
		func(r *reader, v *strict.Node, j *Job) { readObject(r, v, sharedRows, &j.Shared) }},
	{Field{Key: "openings", Holds: HoldsObjects, Question: "Which windows, doors and vents of the house are near outside work?", Fields: fieldsOf(openingRows)},
		func(r *reader, v *strict.Node, j *Job) {
			j.Openings = readObjects(r, v, openingRows, Opening{})
		}},
}

var checkRows = []row[CheckResult]{
	{Field{Key: "work", Holds: HoldsOneLine, Required: true, Question: "Which work, by its id?", Example: "hall", Pattern: idPattern},
		func(r *reader, v *strict.Node, c *CheckResult) { c.Work = r.id(v) }},
	{Field{Key: "on", Holds: HoldsOneLine, Required: true, Question: "On which day?", Example: "2027-05-11", Pattern: datePattern},
		func(r *reader, v *strict.Node, c *CheckResult) { c.On = r.date(v) }},
	{Field{Key: "by", Holds: HoldsOneLine, Required: true, Question: "Who checked?", Example: "Jo Park"},
		func(r *reader, v *strict.Node, c *CheckResult) { c.By = r.name(v) }},
	{Field{Key: "role", Holds: HoldsOneLine, Required: true, Question: "As what: an examiner for clearance, a renovator with the cleaning cards, or somebody of the crew?", Example: "examiner",
		Noun: "role", Words: wordsOf([]Role{Examiner, Renovator, Crew})},
		func(r *reader, v *strict.Node, c *CheckResult) { c.Role = Role(v.Text) }},
	{Field{Key: "certified", Holds: HoldsOneLine, Question: "Are they certified or licensed for that?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, c *CheckResult) { c.Certified = Answer(v.Text) }},
	{Field{Key: "independent", Holds: HoldsOneLine, Question: "Are they independent of whoever did the work?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, c *CheckResult) { c.Independent = Answer(v.Text) }},
	{Field{Key: "result", Holds: HoldsOneLine, Required: true, Question: "Did it pass, in writing?", Example: "passed",
		Noun: "result", Words: wordsOf([]Verdict{Passed, Failed})},
		func(r *reader, v *strict.Node, c *CheckResult) { c.Result = Verdict(v.Text) }},
	{Field{Key: "clean_again", Holds: HoldsList, Question: "If it failed: on which days do you clean again?", Example: "[2027-05-13]", Pattern: datePattern},
		func(r *reader, v *strict.Node, c *CheckResult) { c.Again = r.dates(v) }},
}

var wipeRows = []row[Wipe]{
	{Field{Key: "work", Holds: HoldsOneLine, Required: true, Question: "Which work, by its id?", Example: "hall", Pattern: idPattern},
		func(r *reader, v *strict.Node, w *Wipe) { w.Work = r.id(v) }},
	{Field{Key: "room", Holds: HoldsOneLine, Required: true, Question: "In which room or area?", Example: "hallway", Noun: "area", Words: wordsOf(Areas)},
		func(r *reader, v *strict.Node, w *Wipe) { w.Room = Area(v.Text) }},
	{Field{Key: "surface", Holds: HoldsOneLine, Required: true, Question: "From which surface?", Example: "floor", Noun: "surface", Words: wordsOf(Surfaces)},
		func(r *reader, v *strict.Node, w *Wipe) { w.Surface = Surface(v.Text) }},
	{Field{Key: "spot", Holds: HoldsOneLine, Question: "Where on it? A later sample answers the same spot only.", Example: "by the door"},
		func(r *reader, v *strict.Node, w *Wipe) { w.Spot = r.name(v) }},
	{Field{Key: "subsamples", Holds: HoldsNumber, Question: "If it is a composite: of how many subsamples?", Example: "4", Min: 2, Max: 4},
		func(r *reader, v *strict.Node, w *Wipe) { w.Parts = number(v) }},
	{Field{Key: "lab_date", Holds: HoldsOneLine, Required: true, Question: "What is the date of the report?", Example: "2027-05-12", Pattern: datePattern},
		func(r *reader, v *strict.Node, w *Wipe) { w.Lab = r.date(v) }},
	{Field{Key: "result", Holds: HoldsOneLine, Required: true, Question: "What did the laboratory find, in micrograms per square foot, or in micrograms and the area wiped?", Example: "<4 ug/ft2",
		Pattern: wipePattern},
		func(r *reader, v *strict.Node, w *Wipe) { r.result(v, w) }},
}

var sharedRows = []row[SharedAreas]{
	{Field{Key: "told_by", Holds: HoldsOneLine, Required: true, Question: "A notice to each home, or signs in the building?", Example: "notice_to_each_home",
		Noun: "way", Words: wordsOf([]SharedRoute{NoticeToEach, SignsThere})},
		func(r *reader, v *strict.Node, s *SharedAreas) { s.Route = SharedRoute(v.Text) }},
	{Field{Key: "homes", Holds: HoldsNumber, Required: true, Question: "How many homes are affected?", Example: "6", Min: 1, Max: 500},
		func(r *reader, v *strict.Node, s *SharedAreas) { s.Homes = number(v) }},
	{Field{Key: "records_from", Holds: HoldsOneLine, Required: true, Question: "Who gives residents the pamphlet and the records, free of charge?", Example: "Larkfield office, 612-555-0118"},
		func(r *reader, v *strict.Node, s *SharedAreas) { s.Records = r.name(v) }},
}

var pamphletRows = []row[Pamphlet]{
	{Field{Key: "given", Holds: HoldsOneLine, Required: true, Question: "On which day?", Example: "2027-04-20", Pattern: datePattern},
		func(r *reader, v *strict.Node, p *Pamphlet) { p.Given = r.date(v) }},
	{Field{Key: "how", Holds: HoldsOneLine, Required: true, Question: "Did they sign, did you mail it, or did you try and note it?", Example: "signed",
		Noun: "way", Words: wordsOf([]Delivery{Signed, Mailed, Attempted})},
		func(r *reader, v *strict.Node, p *Pamphlet) { p.How = Delivery(v.Text) }},
}

var contactRows = []row[Contact]{
	{Field{Key: "name", Holds: HoldsOneLine, Required: true, Question: "Whom shall people ask for?", Example: "Rosa"},
		func(r *reader, v *strict.Node, c *Contact) { c.Name = r.name(v) }},
	{Field{Key: "phone", Holds: HoldsOneLine, Required: true, Question: "Which phone do they carry?", Example: "555-0142"},
		func(r *reader, v *strict.Node, c *Contact) { c.Phone = r.phone(v) }},
	{Field{Key: "speaks", Holds: HoldsList, Required: true, Min: 1, Question: "Which languages do they speak?", Example: "[en, es]",
		Noun: "language", Words: languageWords(), Pattern: languagePattern()},
		func(r *reader, v *strict.Node, c *Contact) { c.Speaks = r.languages(v) }},
}

var workRows = []row[Work]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this piece of work, in one short word?", Example: "porch", Pattern: idPattern},
		func(r *reader, v *strict.Node, w *Work) { w.ID = r.id(v) }},
	{Field{Key: "where", Holds: HoldsOneLine, Required: true, Question: "Is it inside or outside?", Example: "inside",
		Noun: "place", Words: wordsOf([]Where{Inside, Outside})},
		func(r *reader, v *strict.Node, w *Work) { w.Where = Where(v.Text) }},
	{Field{Key: "area", Holds: HoldsOneLine, Required: true, Question: "Which area is it?", Example: "hallway", Noun: "area", Words: wordsOf(Areas)},
		func(r *reader, v *strict.Node, w *Work) { w.Area = Area(v.Text) }},
	{Field{Key: "task", Holds: HoldsOneLine, Required: true, Question: "What does the crew do to the paint?", Example: "sand", Noun: "task", Words: wordsOf(Tasks)},
		func(r *reader, v *strict.Node, w *Work) { w.Task = Task(v.Text) }},
	{Field{Key: "parts", Holds: HoldsList, Question: "Which painted parts does it touch?", Example: "[doors, trim]", Noun: "part", Words: wordsOf(Parts)},
		func(r *reader, v *strict.Node, w *Work) { w.Parts = listOf[Part](v) }},
	{Field{Key: "how_much", Holds: HoldsOneLine, Question: "How much painted surface, in square feet? A word will do when nobody measured.", Example: "60 sq ft",
		Words: wordsOf(Things), Pattern: `^[0-9]+(\.[0-9]+)? *(sq\.? *ft\.?|ft2|ft²|square feet)$`},
		func(r *reader, v *strict.Node, w *Work) { w.HowMuch = r.amount(v) }},
	{Field{Key: "share_of_part", Holds: HoldsNumber, Question: "Of a small part, such as trim: what share of it, in percent?", Example: "8", Min: 1, Max: 100},
		func(r *reader, v *strict.Node, w *Work) { w.PartShare = number(v) }},
	{Field{Key: "faces", Holds: HoldsList, Question: "Outside: what does this side of the house look at? Neighbours by their address.", Example: "[street, 12 Alder Court]",
		Words: lotSides, Pattern: "."},
		func(r *reader, v *strict.Node, w *Work) { w.Faces = listOf[string](v) }},
	{Field{Key: "side", Holds: HoldsOneLine, Question: "On which side of the house, by the compass? It tells one side or room from another on paper.", Example: "north", Noun: "side", Words: wordsOf(Sides)},
		func(r *reader, v *strict.Node, w *Work) { w.Side = Side(v.Text) }},
	{Field{Key: "storey", Holds: HoldsNumber, Question: "On which storey? The ground floor is 1.", Example: "1", Min: 1, Max: 40},
		func(r *reader, v *strict.Node, w *Work) { w.Storey = number(v) }},
	{Field{Key: "days", Holds: HoldsList, Required: true, Min: 1, Question: "On which days?", Example: "[2027-05-08]", Pattern: datePattern},
		func(r *reader, v *strict.Node, w *Work) { w.Days = r.dates(v) }},
	{Field{Key: "crew_arrives", Holds: HoldsOneLine, Required: true, Question: "When does the crew arrive to set up?", Example: "08:00", Pattern: timePattern},
		func(r *reader, v *strict.Node, w *Work) { w.CrewArrives = r.clock(v) }},
	{Field{Key: "cleaned_by", Holds: HoldsOneLine, Required: true, Question: "By when will they have cleaned up?", Example: "16:30", Pattern: timePattern},
		func(r *reader, v *strict.Node, w *Work) { w.CleanedBy = r.clock(v) }},
	{Field{Key: "rain_day", Holds: HoldsOneLine, Question: "Which day instead, if it rains?", Example: "2027-05-15", Pattern: datePattern},
		func(r *reader, v *strict.Node, w *Work) { w.RainDay = r.date(v) }},
	{Field{Key: "ways_in", Holds: HoldsList, Required: true, Min: 1, Question: "By which doors, stairs or gates could somebody walk in? Each gets a sign.", Example: "[front_door]",
		Noun: "way", Words: wordsOf(Ways)},
		func(r *reader, v *strict.Node, w *Work) { w.WaysIn = listOf[Way](v) }},
	{Field{Key: "cleaned_nightly", Holds: HoldsOneLine, Question: fmt.Sprintf("Do you clean the area, and %v around it, at the end of each day?", Feet(NightlyStrip.Value)), Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, w *Work) { w.Nightly = Answer(v.Text) }},
	{Field{Key: "has_windows", Holds: HoldsOneLine, Question: "Inside: has this place a window?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, w *Work) { w.HasWindows = Answer(v.Text) }},
	{Field{Key: "lost_days", Later: true, Holds: HoldsObjects, Question: "Could the crew not go on, on some day?", Fields: fieldsOf(lostRows)},
		func(r *reader, v *strict.Node, w *Work) {
			w.Lost = readObjects(r, v, lostRows, LostDay{Begun: Unknown})
		}},
	{Field{Key: "lot_line", Holds: HoldsOneLine, Question: "Outside: how far is it from the work to the property line?", Example: "6 ft", Pattern: lengthPattern},
		func(r *reader, v *strict.Node, w *Work) { w.LotLine, w.LotLineKnown = r.gap(v) }},
	{Field{Key: "tests", Holds: HoldsObjects, Question: "Has anyone tested this paint for lead?", Fields: fieldsOf(testRows)},
		func(r *reader, v *strict.Node, w *Work) { w.Tests = readObjects(r, v, testRows, Test{}) }},
}

var householdRows = slices.Concat([]row[Household]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this household, in one short word?", Example: "h1", Pattern: idPattern},
		func(r *reader, v *strict.Node, h *Household) { h.ID = r.id(v) }},
	{Field{Key: "name", Holds: HoldsOneLine, Required: true, Question: "How shall the letter address them?", Example: "The Lam family"},
		func(r *reader, v *strict.Node, h *Household) { h.Name = r.name(v) }},
	{Field{Key: "languages", Holds: HoldsListOrUnknown, Required: true, Min: 1, Question: "Which languages do they read? Write unknown when nobody asked.", Example: "[vi]",
		Noun: "language", Words: languageWords(), Pattern: languagePattern()},
		func(r *reader, v *strict.Node, h *Household) { h.Languages = r.readerLanguages(v) }},
	{Field{Key: "phone_language", Holds: HoldsOneLine, Question: "Which language do they want to be rung in?", Example: "vi",
		Noun: "language", Words: languageWords(), Pattern: languagePattern()},
		func(r *reader, v *strict.Node, h *Household) { h.PhoneLanguage, _ = r.language(v) }},
	{Field{Key: "child_under_6", Holds: HoldsOneLine, Question: "Does a child under 6 live there or come often?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, h *Household) { h.ChildUnder6 = Answer(v.Text) }},
	{Field{Key: "pets", Holds: HoldsList, Question: "Which animals do they keep?", Example: "[cat]", Noun: "pet", Words: wordsOf(Pets)},
		func(r *reader, v *strict.Node, h *Household) { h.Pets = listOf[Pet](v) }},
}, lifeRows(func(h *Household) *Usual { return &h.Usual }), []row[Household]{
	{Field{Key: "except", Holds: HoldsObjects, Question: "Where a place that they use gets shut: how do they live until it has passed?", Fields: fieldsOf(exceptRows)},
		func(r *reader, v *strict.Node, h *Household) { h.Except = readObjects(r, v, exceptRows, Exception{}) }},
	{Field{Key: "reach_at", Holds: HoldsOneLine, Question: "If they sleep elsewhere: where does a letter find them?", Example: "612-555-0188"},
		func(r *reader, v *strict.Node, h *Household) { h.ReachAt = r.name(v) }},
	{Field{Key: "elsewhere", Holds: HoldsObject, Question: "If they sleep elsewhere, what is agreed?", Fields: fieldsOf(elsewhereRows)},
		func(r *reader, v *strict.Node, h *Household) { readObject(r, v, elsewhereRows, &h.Elsewhere) }},
})

var exceptRows = append([]row[Exception]{
	{Field{Key: "while", Holds: HoldsOneLine, Required: true, Question: "While which work is shut, by its id?", Example: "hall", Pattern: idPattern},
		func(r *reader, v *strict.Node, e *Exception) { e.While = r.id(v) }},
}, lifeRows(func(e *Exception) *Usual { return &e.Usual })...)

// lifeRows ask how a household lives: as always, or while a place is shut.
func lifeRows[T any](of func(*T) *Usual) []row[T] {
	return []row[T]{
		{Field{Key: "ways_out", Holds: HoldsLists, Question: "By which doors, halls and stairs do they get from their own home to the street? Each way a list of its own.", Example: "[[kitchen_door, back_door], [front_door]]",
			Noun: "step", Words: append(wordsOf(Ways), wordsOf(Areas)...)},
			func(r *reader, v *strict.Node, t *T) { of(t).WaysOut = waysOf(v) }},
		{Field{Key: "bed", Holds: HoldsOneLine, Question: "Which bed do they sleep in?", Example: "bed", Noun: "bed", Words: rooms(NeedBed)},
			func(r *reader, v *strict.Node, t *T) { of(t).Bed = Room(v.Text) }},
		{Field{Key: "bath", Holds: HoldsOneLine, Question: "Which bathroom do they use?", Example: "bathroom", Noun: "bathroom", Words: rooms(NeedBathroom)},
			func(r *reader, v *strict.Node, t *T) { of(t).Bath = Room(v.Text) }},
		{Field{Key: "kitchen", Holds: HoldsOneLine, Question: "Which kitchen do they use?", Example: "kitchen", Noun: "kitchen", Words: rooms(NeedKitchen)},
			func(r *reader, v *strict.Node, t *T) { of(t).Kitchen = Room(v.Text) }},
		{Field{Key: "away", Holds: HoldsOneLine, Question: "Are they out of the house while the crew works?", Example: "yes", Noun: "answer", Words: answers},
			func(r *reader, v *strict.Node, t *T) { of(t).Away = Answer(v.Text) }},
		{Field{Key: "sleeps_at", Holds: HoldsOneLine, Question: "Or where do they sleep instead?", Example: "Grandma Tran's"},
			func(r *reader, v *strict.Node, t *T) { of(t).SleepsAt = r.name(v) }},
	}
}

func waysOf(v *strict.Node) [][]Place {
	var all [][]Place
	for _, way := range v.Items {
		all = append(all, listOf[Place](way))
	}
	return all
}

var elsewhereRows = []row[Elsewhere]{
	{Field{Key: "where", Holds: HoldsOneLine, Question: "Where do they sleep?", Example: "Lakeside Inn, 40 Shore Road"},
		func(r *reader, v *strict.Node, e *Elsewhere) { e.Where = r.name(v) }},
	{Field{Key: "travel", Holds: HoldsOneLine, Question: "How do they get there?", Example: "we_drive_you", Noun: "way to travel", Words: wordsOf(Travels)},
		func(r *reader, v *strict.Node, e *Elsewhere) { e.Travel = Travel(v.Text) }},
	{Field{Key: "paid_by", Holds: HoldsOneLine, Question: "Who pays for it?", Example: "programme", Noun: "payer", Words: wordsOf(Payers)},
		func(r *reader, v *strict.Node, e *Elsewhere) { e.PaidBy = Payer(v.Text) }},
	{Field{Key: "medicines", Holds: HoldsOneLine, Question: "What about medicines they need?", Example: "take_along", Noun: "plan", Words: wordsOf(MedicinePlans)},
		func(r *reader, v *strict.Node, e *Elsewhere) { e.Medicines = MedicinePlan(v.Text) }},
	{Field{Key: "pets", Holds: HoldsOneLine, Question: "Where do the pets go?", Example: "with_you", Noun: "plan", Words: wordsOf(PetPlans)},
		func(r *reader, v *strict.Node, e *Elsewhere) { e.Pets = PetPlan(v.Text) }},
	{Field{Key: "keys", Holds: HoldsOneLine, Question: "Who has the keys?", Example: "crew_has_one", Noun: "plan", Words: wordsOf(KeyPlans)},
		func(r *reader, v *strict.Node, e *Elsewhere) { e.Keys = KeyPlan(v.Text) }},
}

var lostRows = []row[LostDay]{
	{Field{Key: "day", Holds: HoldsOneLine, Required: true, Question: "Which day was lost?", Example: "2027-05-08", Pattern: datePattern},
		func(r *reader, v *strict.Node, l *LostDay) { l.Day = r.date(v) }},
	{Field{Key: "begun", Holds: HoldsOneLine, Question: "Had anything been set up or disturbed by then?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, l *LostDay) { l.Begun = Answer(v.Text) }},
}

var testRows = []row[Test]{
	{Field{Key: "how", Holds: HoldsOneLine, Required: true, Question: "Who tested, and how? In a recognized laboratory: who took the chips?", Example: "laboratory_certified_sampler", Noun: "kind of test", Words: testKinds()},
		func(r *reader, v *strict.Node, t *Test) { t.How = TestKind(v.Text) }},
	{Field{Key: "covers", Holds: HoldsOneLine, Required: true, Question: "Did they test every surface that you will disturb?", Example: "all_surfaces",
		Noun: "answer", Words: wordsOf([]Covers{AllSurfaces, SomeSurfaces})},
		func(r *reader, v *strict.Node, t *Test) { t.Covers = Covers(v.Text) }},
	{Field{Key: "result", Holds: HoldsOneLine, Required: true, Question: "What did they find?", Example: "no_lead",
		Noun: "result", Words: wordsOf([]TestResult{NoLead, LeadFound, NotClear})},
		func(r *reader, v *strict.Node, t *Test) { t.Result = TestResult(v.Text) }},
}

var openingRows = []row[Opening]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this opening, in one short word?", Example: "w1", Pattern: idPattern},
		func(r *reader, v *strict.Node, o *Opening) { o.ID = r.id(v) }},
	{Field{Key: "what", Holds: HoldsOneLine, Required: true, Question: "What is it?", Example: "window", Noun: "opening", Words: wordsOf(OpeningKinds)},
		func(r *reader, v *strict.Node, o *Opening) { o.What = OpeningKind(v.Text) }},
	{Field{Key: "area", Holds: HoldsOneLine, Required: true, Question: "Which room or area is it in?", Example: "kitchen", Noun: "area", Words: wordsOf(Areas)},
		func(r *reader, v *strict.Node, o *Opening) { o.Area = Area(v.Text) }},
	{Field{Key: "storey", Holds: HoldsNumber, Question: "On which storey? The ground floor is 1.", Example: "1", Min: 1, Max: 40},
		func(r *reader, v *strict.Node, o *Opening) { o.Storey = number(v) }},
	{Field{Key: "work", Holds: HoldsOneLine, Required: true, Question: "Which outside work is it near, by its id?", Example: "porch", Pattern: idPattern},
		func(r *reader, v *strict.Node, o *Opening) { o.Work = r.id(v) }},
	{Field{Key: "gap", Holds: HoldsOneLine, Question: "How far is it from the work, along the wall?", Example: "12 ft", Pattern: lengthPattern},
		func(r *reader, v *strict.Node, o *Opening) { o.Gap, o.GapKnown = r.gap(v) }},
}

const lengthPattern = `^[0-9]+(\.[0-9]+)? *(ft|feet|m)$`

func testKinds() []string {
	var names []string
	for _, k := range TestKinds {
		names = append(names, string(k.Name))
	}
	return names
}

var neighbourRows = []row[Neighbour]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this neighbour, in one short word?", Example: "n12", Pattern: idPattern},
		func(r *reader, v *strict.Node, n *Neighbour) { n.ID = r.id(v) }},
	{Field{Key: "address", Holds: HoldsOneLine, Required: true, Question: "What is their address?", Example: "12 Alder Court"},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Address = r.name(v) }},
	{Field{Key: "kind", Holds: HoldsOneLine, Question: "Is it a home or a day-care?", Example: "home", Noun: "kind", Words: wordsOf([]NeighbourKind{OneHome, DayCare})},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Kind = NeighbourKind(v.Text) }},
	{Field{Key: "gap", Holds: HoldsOneLine, Question: "How far is it from the work to their nearest wall?", Example: "14 ft",
		Pattern: lengthPattern},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Gap, n.GapKnown = r.gap(v) }},
	{Field{Key: "near", Holds: HoldsOneLine, Question: fmt.Sprintf("When nobody measured: is that within %v?", Feet(WindowReach.Value)), Example: "not_sure",
		Noun: "answer", Words: wordsOf([]Answer{Yes, No, NotSure})},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Near = Answer(v.Text) }},
	{Field{Key: "languages", Holds: HoldsListOrUnknown, Min: 1, Question: "Which languages do they read?", Example: "[es]",
		Noun: "language", Words: languageWords(), Pattern: languagePattern()},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Languages = r.readerLanguages(v) }},
	{Field{Key: "pets", Holds: HoldsList, Question: "Which animals do they keep?", Example: "[dog]", Noun: "pet", Words: wordsOf(Pets)},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Pets = listOf[Pet](v) }},
	{Field{Key: "homes", Holds: HoldsNumber, Question: "How many homes are behind this one address?", Example: "1", Min: 1, Max: 500},
		func(r *reader, v *strict.Node, n *Neighbour) { n.Homes = number(v) }},
}

// What stands where a key is left out. Unknown protects.
var (
	blankJob       = Job{AnyonePaid: Unknown, FederalAid: Unknown, CheckedBy: NotDecided, LeadWork: Unknown, Emergency: Unknown}
	blankWork      = Work{CrewArrives: NoClock, CleanedBy: NoClock, Nightly: Unknown, HasWindows: Unknown}
	blankHousehold = Household{ChildUnder6: Unknown}
	blankNeighbour = Neighbour{Near: NotSure, Homes: 1, Kind: OneHome}
)

// ownerUnknown may be written; a Job then has no Owner.
const ownerUnknown Owner = "unknown"

func ownerOf(text string) Owner {
	if Owner(text) == ownerUnknown {
		return ""
	}
	return Owner(text)
}

// lotSides are what an outside wall may face apart from neighbours.
var lotSides = []string{"street", "yard", "alley"}

// states are the postal abbreviations of states, the District of Columbia and territories (USPS Publication 28, appendix B; from memory).
var states = []string{
	"AL", "AK", "AS", "AZ", "AR", "CA", "CO", "CT", "DE", "DC", "FL", "GA", "GU", "HI", "ID", "IL", "IN", "IA", "KS", "KY", "LA", "ME", "MD", "MA",
	"MI", "MN", "MS", "MO", "MP", "MT", "NE", "NV", "NH", "NJ", "NM", "NY", "NC", "ND", "OH", "OK", "OR", "PA", "PR", "RI", "SC", "SD", "TN", "TX",
	"UT", "VT", "VA", "VI", "WA", "WV", "WI", "WY",
}
