package jobfile

import (
	"fmt"
	"slices"
	"time"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

// JobFields are the keys of a job file.
var JobFields = fieldsOf(jobRows)

var jobRows = []row[notices.Job]{
	{Field{Key: "code", Holds: HoldsOneLine, required: true, Question: "Under which short name do you file this house?", example: "alder-14", pattern: codePattern},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Code = r.code(v) }},
	{Field{Key: "address", Holds: HoldsOneLine, required: true, Question: "What is the address of the house, number first?", example: "14 Alder Court, Larkfield"},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Address = r.address(v) }},
	{Field{Key: "state", Holds: HoldsOneLine, required: true, Question: "Which state is it in, in two capitals? Write unknown when nobody knows, and on tribal land.", example: "MN",
		noun: "state", words: append(slices.Clone(states), notices.StateUnknown)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.State = v.Text }},
	{Field{Key: "city", Holds: HoldsOneLine, Question: "Which city is it in, if the city has rules of its own?", example: "San Francisco"},
		func(r *reader, v *strict.Node, j *notices.Job) { j.City = r.name(v) }},
	{Field{Key: "built", Holds: HoldsNumber, required: true, Question: "In which year was the house built? Write unknown when nobody knows.", example: "1931",
		words: []string{"unknown"}, min_: 1600, max_: 2100},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Built = number(v) }},
	{Field{Key: "owner", Holds: HoldsOneLine, Question: "Does the owner live here, rent it out, or both?", example: "lives_here",
		noun: "answer", words: wordsOf([]notices.Owner{notices.LivesHere, notices.RentsItOut, notices.LivesHereAndRentsOut, ownerUnknown})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Owner = ownerOf(v.Text) }},
	{Field{Key: "anyone_paid", Holds: HoldsOneLine, Question: "Is anyone paid for this work?", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.AnyonePaid = notices.Answer(v.Text) }},
	{Field{Key: "landlord_works", Holds: HoldsOneLine, Question: "In a rented home: does the landlord, or somebody of theirs, do any of the work? Rent counts as pay.", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.LandlordWorks = notices.Answer(v.Text) }},
	{Field{Key: "dwelling", Holds: HoldsOneLine, Question: "Is it an ordinary home, housing for older people or people with disabilities, a home without a bedroom, or a day-care?", example: "ordinary",
		noun: "answer", words: wordsOf([]notices.Dwelling{notices.OrdinaryHome, notices.ElderlyHousing, notices.NoBedroom, notices.ChildOccupied, dwellingUnknown})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Dwelling = dwellingOf(v.Text) }},
	{Field{Key: "federal_housing_money", Holds: HoldsOneLine, Question: "Is federal housing money in the job or the house?", example: "unknown", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.FederalAid = notices.Answer(v.Text) }},
	{Field{Key: "checked_by", Holds: HoldsOneLine, Question: "Who decides at the end that it is clean enough?", example: "clearance_test",
		noun: "check", words: wordsOf([]notices.Check{notices.ClearanceTest, notices.CleaningCheck, notices.CrewLook, notices.NotDecided})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.CheckedBy = notices.Check(v.Text) }},
	{Field{Key: "because_of_lead", Holds: HoldsOneLine, Question: "Is lead the reason for the work: an order, an abatement, lead hazard control?", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.LeadWork = notices.Answer(v.Text) }},
	{Field{Key: "lead_presumed", Holds: HoldsOneLine, Question: "With federal housing money: on which day was the paint presumed to be lead paint, or did a test report come?", example: "2027-04-20", pattern: datePattern},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Presumed = r.date(v) }},
	{Field{Key: "presumption_told", Later: true, Holds: HoldsOneLine, Question: "On which day had every home the notice of that?", example: "2027-04-28", pattern: datePattern},
		func(r *reader, v *strict.Node, j *notices.Job) { j.PresumedTold = r.date(v) }},
	{Field{Key: "examiner_booked", Later: true, Holds: HoldsOneLine, Question: "For a clearance test: is the examiner booked?", example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Booked = notices.Answer(v.Text) }},
	{Field{Key: "emergency", Holds: HoldsOneLine, Question: "Is it an emergency, such as a burst pipe, that cannot wait?", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Emergency = notices.Answer(v.Text) }},
	{Field{Key: "emergency_statement", Later: true, Holds: HoldsObject, Question: "In an emergency: what was it, and what was not done because of it?", Fields: fieldsOf(statementRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { readObject(r, v, statementRows, &j.Statement) }},
	{Field{Key: "entries", Holds: HoldsList, Question: "Which doors lead into the building, front, back and side?", example: "[front_door, back_door]", noun: "way", words: wordsOf(notices.Ways)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Entries = listOf[notices.Way](v) }},
	{Field{Key: "on_the_day", Holds: HoldsObject, required: true, Question: "Who is at the house while the crew works?", example: "{name: Rosa, phone: 555-0142, speaks: [en, es]}",
		Fields: fieldsOf(contactRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { readObject(r, v, contactRows, &j.OnTheDay) }},
	{Field{Key: "pamphlets", Holds: HoldsObjects, Question: "Who has been given the official lead pamphlet: the owner, and an adult of each home?", Fields: fieldsOf(pamphletRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Pamphlets = readObjects(r, v, pamphletRows, notices.Pamphlet{})
		}},
	{Field{Key: "work", Holds: HoldsObjects, required: true, min_: 1, Question: "What will you do, area by area?", Fields: fieldsOf(workRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Work = readObjects(r, v, workRows, blankWork) }},
	{Field{Key: "households", Holds: HoldsObjects, required: true, Question: "Who lives in the house? Write [] when it stands empty.", Fields: fieldsOf(householdRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Households = readObjects(r, v, householdRows, blankHousehold)
		}},
	{Field{Key: "neighbours", Holds: HoldsObjects, Question: "Which homes touch the lot? Write [] when none does.", Fields: fieldsOf(neighbourRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Neighbours, j.Asked = readObjects(r, v, neighbourRows, blankNeighbour), true
		}},
	{Field{Key: "checks", Later: true, Holds: HoldsObjects, Question: "After the work: what did the check find?", Fields: fieldsOf(checkRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Checks = readObjects(r, v, checkRows, notices.CheckResult{Certified: notices.Unknown, Independent: notices.Unknown})
		}},
	{Field{Key: "wipes", Later: true, Holds: HoldsObjects, Question: "After the work: which dust samples came back from the laboratory?", Fields: fieldsOf(wipeRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Wipes = readObjects(r, v, wipeRows, notices.Wipe{}) }},
	{Field{Key: "closed", Later: true, Holds: HoldsOneLine, Question: "Is the job over, so that its pages say only how to reach you?", example: "yes", noun: "answer", words: wordsOf([]notices.Answer{notices.Yes, notices.No})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Closed = notices.Answer(v.Text) }},
	{Field{Key: "called_off", Later: true, Holds: HoldsOneLine, Question: "Is the job called off, and had anything been set up or disturbed by then?", example: "before_it_began", noun: "answer",
		words: wordsOf([]notices.CalledOff{notices.BeforeItBegan, notices.AfterItBegan})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.CalledOff = notices.CalledOff(v.Text) }},
	{Field{Key: "areas_shared", Holds: HoldsOneLine, Question: "Do several homes share an area that you work on, such as a hall, a porch or the outside? In a day-care, answer for the families.", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.AreasShared = notices.Answer(v.Text) }},
	{Field{Key: "common_areas", Holds: HoldsObject, Question: "If they do: how are they told?", Fields: fieldsOf(sharedRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { readObject(r, v, sharedRows, &j.Shared) }},
	{Field{Key: "openings", Holds: HoldsObjects, Question: "Which windows, doors and vents of the house are near outside work?", Fields: fieldsOf(openingRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Openings = readObjects(r, v, openingRows, notices.Opening{})
		}},
}

var checkRows = []row[notices.CheckResult]{
	{Field{Key: "work", Holds: HoldsOneLine, required: true, Question: "Which work, by its id?", example: "hall", pattern: idPattern},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Work = r.id(v) }},
	{Field{Key: "on", Holds: HoldsOneLine, required: true, Question: "On which day?", example: "2027-05-11", pattern: datePattern},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.On = r.date(v) }},
	{Field{Key: "by", Holds: HoldsOneLine, required: true, Question: "Who checked?", example: "Jo Park"},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.By = r.name(v) }},
	{Field{Key: "role", Holds: HoldsOneLine, required: true, Question: "As what: an examiner for clearance, a renovator with the cleaning cards, or somebody of the crew?", example: "examiner",
		noun: "role", words: wordsOf([]notices.Role{notices.Examiner, notices.Renovator, notices.Crew})},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Role = notices.Role(v.Text) }},
	{Field{Key: "certified", Holds: HoldsOneLine, Question: "Are they certified or licensed for that?", example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Certified = notices.Answer(v.Text) }},
	{Field{Key: "independent", Holds: HoldsOneLine, Question: "Are they independent of whoever did the work?", example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Independent = notices.Answer(v.Text) }},
	{Field{Key: "result", Holds: HoldsOneLine, required: true, Question: "Did it pass, in writing?", example: "passed",
		noun: "result", words: wordsOf([]notices.Verdict{notices.Passed, notices.Failed})},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Result = notices.Verdict(v.Text) }},
	{Field{Key: "clean_again", Holds: HoldsList, Question: "If it failed: on which days do you clean again?", example: "[2027-05-13]", pattern: datePattern},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Again = r.dates(v) }},
}

var wipeRows = []row[notices.Wipe]{
	{Field{Key: "work", Holds: HoldsOneLine, required: true, Question: "Which work, by its id?", example: "hall", pattern: idPattern},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Work = r.id(v) }},
	{Field{Key: "room", Holds: HoldsOneLine, required: true, Question: "In which room or area?", example: "hallway", noun: "area", words: wordsOf(notices.Areas)},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Room = notices.Area(v.Text) }},
	{Field{Key: "surface", Holds: HoldsOneLine, required: true, Question: "From which surface?", example: "floor", noun: "surface", words: wordsOf(notices.Surfaces)},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Surface = notices.Surface(v.Text) }},
	{Field{Key: "spot", Holds: HoldsOneLine, Question: "Where on it? A later sample answers the same spot only.", example: "by the door"},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Spot = r.name(v) }},
	{Field{Key: "subsamples", Holds: HoldsNumber, Question: "If it is a composite: of how many subsamples?", example: "4", min_: 2, max_: 4},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Parts = number(v) }},
	{Field{Key: "lab_date", Holds: HoldsOneLine, required: true, Question: "What is the date of the report?", example: "2027-05-12", pattern: datePattern},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Lab = r.date(v) }},
	{Field{Key: "result", Holds: HoldsOneLine, required: true, Question: "What did the laboratory find, in micrograms per square foot, or in micrograms and the area wiped?", example: "<4 ug/ft2",
		pattern: wipePattern},
		func(r *reader, v *strict.Node, w *notices.Wipe) { r.result(v, w) }},
}

var sharedRows = []row[notices.SharedAreas]{
	{Field{Key: "told_by", Holds: HoldsOneLine, required: true, Question: "A notice to each home, or signs in the building?", example: "notice_to_each_home",
		noun: "way", words: wordsOf([]notices.SharedRoute{notices.NoticeToEach, notices.SignsThere})},
		func(r *reader, v *strict.Node, s *notices.SharedAreas) { s.Route = notices.SharedRoute(v.Text) }},
	{Field{Key: "homes", Holds: HoldsNumber, required: true, Question: "How many homes are affected?", example: "6", min_: 1, max_: 500},
		func(r *reader, v *strict.Node, s *notices.SharedAreas) { s.Homes = number(v) }},
	{Field{Key: "records_from", Holds: HoldsOneLine, required: true, Question: "Who gives residents the pamphlet and the records, free of charge?", example: "Larkfield office, 612-555-0118"},
		func(r *reader, v *strict.Node, s *notices.SharedAreas) { s.Records = r.name(v) }},
}

var statementRows = []row[notices.Statement]{
	{Field{Key: "what", Holds: HoldsOneLine, required: true, Question: "What was the emergency?", example: "a burst pipe in the ceiling"},
		func(r *reader, v *strict.Node, s *notices.Statement) { s.What = r.name(v) }},
	{Field{Key: "not_followed", Holds: HoldsOneLine, required: true, Question: "Which steps were not followed because of it?", example: "no pamphlet before the work"},
		func(r *reader, v *strict.Node, s *notices.Statement) { s.NotFollowed = r.name(v) }},
}

var pamphletRows = []row[notices.Pamphlet]{
	{Field{Key: "to", Holds: HoldsOneLine, required: true, Question: "To whom: owner, or which household, by its id?", example: "h1", pattern: idPattern},
		func(r *reader, v *strict.Node, p *notices.Pamphlet) { p.To = r.id(v) }},
	{Field{Key: "given", Holds: HoldsOneLine, required: true, Question: "On which day?", example: "2027-04-20", pattern: datePattern},
		func(r *reader, v *strict.Node, p *notices.Pamphlet) { p.Given = r.date(v) }},
	{Field{Key: "how", Holds: HoldsOneLine, required: true, Question: "Did they sign, did you mail it, did they take it and not sign, or was nobody there?", example: "signed",
		noun: "way", words: wordsOf([]notices.Delivery{notices.Signed, notices.Mailed, notices.Refused, notices.Attempted})},
		func(r *reader, v *strict.Node, p *notices.Pamphlet) { p.How = notices.Delivery(v.Text) }},
}

var contactRows = []row[notices.Contact]{
	{Field{Key: "name", Holds: HoldsOneLine, required: true, Question: "Whom shall people ask for?", example: "Rosa"},
		func(r *reader, v *strict.Node, c *notices.Contact) { c.Name = r.name(v) }},
	{Field{Key: "phone", Holds: HoldsOneLine, required: true, Question: "Which phone do they carry?", example: "555-0142"},
		func(r *reader, v *strict.Node, c *notices.Contact) { c.Phone = r.phone(v) }},
	{Field{Key: "speaks", Holds: HoldsList, required: true, min_: 1, Question: "Which languages do they speak?", example: "[en, es]",
		noun: "language", words: languageWords(), pattern: languagePattern()},
		func(r *reader, v *strict.Node, c *notices.Contact) { c.Speaks = r.languages(v) }},
}

var workRows = []row[notices.Work]{
	{Field{Key: "id", Holds: HoldsOneLine, required: true, Question: "What do you call this piece of work, in one short word?", example: "porch", pattern: idPattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.ID = r.id(v) }},
	{Field{Key: "where", Holds: HoldsOneLine, required: true, Question: "Is it inside or outside?", example: "inside",
		noun: "place", words: wordsOf([]notices.Where{notices.Inside, notices.Outside})},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Where = notices.Where(v.Text) }},
	{Field{Key: "area", Holds: HoldsOneLine, required: true, Question: "Which area is it?", example: "hallway", noun: "area", words: wordsOf(notices.Areas)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Area = notices.Area(v.Text) }},
	{Field{Key: "task", Holds: HoldsOneLine, required: true, Question: "What does the crew do to the paint?", example: "sand", noun: "task", words: wordsOf(notices.Tasks)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Task = notices.Task(v.Text) }},
	{Field{Key: "parts", Holds: HoldsList, Question: "Which painted parts does it touch?", example: "[doors, trim]", noun: "part", words: wordsOf(notices.Parts)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Parts = listOf[notices.Part](v) }},
	{Field{Key: "how_much", Holds: HoldsOneLine, Question: "How much painted surface, in square feet? A part that is taken out whole counts with all of its surface. Write unknown when nobody measured.", example: "60 sq ft",
		words: []string{"unknown"}, pattern: `^[0-9]+(\.[0-9]+)? *(sq\.? *ft\.?|ft2|ft²|square feet)$`},
		func(r *reader, v *strict.Node, w *notices.Work) { w.HowMuch = r.amount(v) }},
	{Field{Key: "share_of_part", Holds: HoldsNumber, Question: "Of a small part, such as trim: what share of it, in percent?", example: "8", min_: 1, max_: 100},
		func(r *reader, v *strict.Node, w *notices.Work) { w.PartShare = number(v) }},
	{Field{Key: "faces", Holds: HoldsList, Question: "Outside: what does this side of the house look at? Neighbours by their address.", example: "[street, 12 Alder Court]",
		words: lotSides, pattern: "."},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Faces = listOf[string](v) }},
	{Field{Key: "side", Holds: HoldsOneLine, Question: "On which side of the house, by the compass? It tells one side or room from another on paper.", example: "north", noun: "side", words: wordsOf(notices.Sides)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Side = notices.Side(v.Text) }},
	{Field{Key: "storey", Holds: HoldsNumber, Question: "On which storey? The ground floor is 1.", example: "1", min_: 1, max_: 40},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Storey = number(v) }},
	{Field{Key: "days", Holds: HoldsList, required: true, min_: 1, Question: "On which days?", example: "[2027-05-08]", pattern: datePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Days = r.dates(v) }},
	{Field{Key: "crew_arrives", Holds: HoldsOneLine, required: true, Question: "When does the crew arrive to set up?", example: "08:00", pattern: timePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.CrewArrives = r.clock(v) }},
	{Field{Key: "cleaned_by", Holds: HoldsOneLine, required: true, Question: "By when will they have cleaned up?", example: "16:30", pattern: timePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.CleanedBy = r.clock(v) }},
	{Field{Key: "rain_day", Holds: HoldsOneLine, Question: "Which day instead, if it rains?", example: "2027-05-15", pattern: datePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.RainDay = r.date(v) }},
	{Field{Key: "ways_in", Holds: HoldsList, required: true, min_: 1, Question: "By which doors, stairs or gates could somebody walk in? Each gets a sign.", example: "[front_door]",
		noun: "way", words: wordsOf(notices.Ways)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.WaysIn = listOf[notices.Way](v) }},
	{Field{Key: "cleaned_nightly", Holds: HoldsOneLine, Question: fmt.Sprintf("Do you clean the area, and %v around it, at the end of each day?", notices.Feet(notices.NightlyStrip.Value)), example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Nightly = notices.Answer(v.Text) }},
	{Field{Key: "has_windows", Holds: HoldsOneLine, Question: "Inside: has this place a window?", example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, w *notices.Work) { w.HasWindows = notices.Answer(v.Text) }},
	{Field{Key: "lost_days", Later: true, Holds: HoldsObjects, Question: "Could the crew not go on, on some day?", Fields: fieldsOf(lostRows)},
		func(r *reader, v *strict.Node, w *notices.Work) {
			w.Lost = readObjects(r, v, lostRows, notices.LostDay{Begun: notices.Unknown})
		}},
	{Field{Key: "lot_line", Holds: HoldsOneLine, Question: "Outside: how far is it from the work to the property line?", example: "6 ft", pattern: lengthPattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.LotLine, w.LotLineKnown = r.gap(v) }},
	{Field{Key: "tests", Holds: HoldsObjects, Question: "Has anyone tested this paint for lead?", Fields: fieldsOf(testRows)},
		func(r *reader, v *strict.Node, w *notices.Work) {
			w.Tests = readObjects(r, v, testRows, notices.Test{})
		}},
}

var householdRows = slices.Concat([]row[notices.Household]{
	{Field{Key: "id", Holds: HoldsOneLine, required: true, Question: "What do you call this household, in one short word?", example: "h1", pattern: idPattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.ID = r.id(v) }},
	{Field{Key: "name", Holds: HoldsOneLine, required: true, Question: "How shall the letter address them?", example: "The Lam family"},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Name = r.name(v) }},
	{Field{Key: "languages", Holds: HoldsListOrUnknown, required: true, min_: 1, Question: "Which languages do they read? Write unknown when nobody asked.", example: "[vi]",
		noun: "language", words: languageWords(), pattern: anyLanguage},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Languages, h.Others = r.readerLanguages(v) }},
	{Field{Key: "phone_language", Holds: HoldsOneLine, Question: "Which language do they want to be rung in?", example: "vi",
		noun: "language", words: languageWords(), pattern: anyLanguage},
		func(r *reader, v *strict.Node, h *notices.Household) { h.PhoneLanguage = r.spoken(v) }},
	{Field{Key: "owns_it", Holds: HoldsOneLine, Question: "Is it the owner's own household?", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Owns = notices.Answer(v.Text) }},
	{Field{Key: "child_under_6", Holds: HoldsOneLine, Question: "Does a child under 6 live there or come often?", example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, h *notices.Household) { h.ChildUnder6 = notices.Answer(v.Text) }},
	{Field{Key: "pets", Holds: HoldsList, Question: "Which animals do they keep?", example: "[cat]", noun: "pet", words: wordsOf(notices.Pets)},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Pets = listOf[notices.Pet](v) }},
}, lifeRows(func(h *notices.Household) *notices.Usual { return &h.Usual }), []row[notices.Household]{
	{Field{Key: "except", Holds: HoldsObjects, Question: "Where a place that they use gets shut: how do they live until it has passed?", Fields: fieldsOf(exceptRows)},
		func(r *reader, v *strict.Node, h *notices.Household) {
			h.Except = readObjects(r, v, exceptRows, notices.Exception{Agreed: notices.Unknown})
		}},
	{Field{Key: "sleeps_from", Holds: HoldsOneLine, Question: "Does anybody sleep by day? From when?", example: "08:00", pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.SleepsFrom = r.clock(v) }},
	{Field{Key: "sleeps_to", Holds: HoldsOneLine, Question: "And until when?", example: "15:00", pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.SleepsTo = r.clock(v) }},
	{Field{Key: "leaves", Holds: HoldsOneLine, Question: "When does the last of them leave home in the morning, if all do?", example: "07:15", pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Leaves = r.clock(v) }},
	{Field{Key: "returns", Holds: HoldsOneLine, Question: "And when does the first of them come home?", example: "15:30", pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Returns = r.clock(v) }},
	{Field{Key: "reach_at", Holds: HoldsOneLine, Question: "If they sleep elsewhere: where does a letter find them?", example: "612-555-0188"},
		func(r *reader, v *strict.Node, h *notices.Household) { h.ReachAt = r.name(v) }},
	{Field{Key: "elsewhere", Holds: HoldsObject, Question: "If they sleep elsewhere, what is agreed?", Fields: fieldsOf(elsewhereRows)},
		func(r *reader, v *strict.Node, h *notices.Household) { readObject(r, v, elsewhereRows, &h.Elsewhere) }},
})

var exceptRows = append([]row[notices.Exception]{
	{Field{Key: "while", Holds: HoldsOneLine, required: true, Question: "While which work is shut, by its id?", example: "hall", pattern: idPattern},
		func(r *reader, v *strict.Node, e *notices.Exception) { e.While = r.id(v) }},
	{Field{Key: "agreed", Holds: HoldsOneLine, Question: "If that is another household's room: have they agreed?", example: "yes", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, e *notices.Exception) { e.Agreed = notices.Answer(v.Text) }},
}, lifeRows(func(e *notices.Exception) *notices.Usual { return &e.Usual })...)

// lifeRows ask how a household lives: as always, or while a place is shut.
func lifeRows[T any](of func(*T) *notices.Usual) []row[T] {
	return []row[T]{
		{Field{Key: "ways_out", Holds: HoldsLists, Question: "By which doors, halls and stairs do they get from their own home to the street? Each way a list of its own.", example: "[[kitchen_door, back_door], [front_door]]",
			noun: "step", words: append(wordsOf(notices.Ways), wordsOf(notices.Areas)...)},
			func(r *reader, v *strict.Node, t *T) { of(t).WaysOut = waysOf(v) }},
		{Field{Key: "bed", Holds: HoldsOneLine, Question: "Which bed do they sleep in?", example: "bed", noun: "bed", words: rooms(notices.NeedBed)},
			func(r *reader, v *strict.Node, t *T) { of(t).Bed = notices.Room(v.Text) }},
		{Field{Key: "bath", Holds: HoldsOneLine, Question: "Which bathroom do they use?", example: "bathroom", noun: "bathroom", words: rooms(notices.NeedBathroom)},
			func(r *reader, v *strict.Node, t *T) { of(t).Bath = notices.Room(v.Text) }},
		{Field{Key: "kitchen", Holds: HoldsOneLine, Question: "Which kitchen do they use?", example: "kitchen", noun: "kitchen", words: rooms(notices.NeedKitchen)},
			func(r *reader, v *strict.Node, t *T) { of(t).Kitchen = notices.Room(v.Text) }},
		{Field{Key: "away", Holds: HoldsOneLine, Question: "Are they out of the house while the crew works?", example: "yes", noun: "answer", words: answers},
			func(r *reader, v *strict.Node, t *T) { of(t).Away = notices.Answer(v.Text) }},
		{Field{Key: "sleeps_at", Holds: HoldsOneLine, Question: "Or where do they sleep instead?", example: "Grandma Tran's"},
			func(r *reader, v *strict.Node, t *T) { of(t).SleepsAt = r.name(v) }},
	}
}

func waysOf(v *strict.Node) [][]notices.Place {
	var all [][]notices.Place
	for _, way := range v.Items {
		all = append(all, listOf[notices.Place](way))
	}
	return all
}

var elsewhereRows = []row[notices.Elsewhere]{
	{Field{Key: "where", Holds: HoldsOneLine, Question: "Where do they sleep?", example: "Lakeside Inn, 40 Shore Road"},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Where = r.name(v) }},
	{Field{Key: "travel", Holds: HoldsOneLine, Question: "How do they get there?", example: "we_drive_you", noun: "way to travel", words: wordsOf(notices.Travels)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Travel = notices.Travel(v.Text) }},
	{Field{Key: "paid_by", Holds: HoldsOneLine, Question: "Who pays for it?", example: "programme", noun: "payer", words: wordsOf(notices.Payers)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.PaidBy = notices.Payer(v.Text) }},
	{Field{Key: "medicines", Holds: HoldsOneLine, Question: "What about medicines they need?", example: "take_along", noun: "plan", words: wordsOf(notices.MedicinePlans)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Medicines = notices.MedicinePlan(v.Text) }},
	{Field{Key: "pets", Holds: HoldsOneLine, Question: "Where do the pets go?", example: "with_you", noun: "plan", words: wordsOf(notices.PetPlans)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Pets = notices.PetPlan(v.Text) }},
	{Field{Key: "keys", Holds: HoldsOneLine, Question: "Who has the keys?", example: "crew_has_one", noun: "plan", words: wordsOf(notices.KeyPlans)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Keys = notices.KeyPlan(v.Text) }},
}

var lostRows = []row[notices.LostDay]{
	{Field{Key: "day", Holds: HoldsOneLine, required: true, Question: "Which day was lost?", example: "2027-05-08", pattern: datePattern},
		func(r *reader, v *strict.Node, l *notices.LostDay) { l.Day = r.date(v) }},
	{Field{Key: "begun", Holds: HoldsOneLine, Question: "Had anything been set up or disturbed by then?", example: "no", noun: "answer", words: answers},
		func(r *reader, v *strict.Node, l *notices.LostDay) { l.Begun = notices.Answer(v.Text) }},
}

var testRows = []row[notices.Test]{
	{Field{Key: "how", Holds: HoldsOneLine, required: true, Question: "Who tested, and how? In a recognized laboratory: who took the chips?", example: "laboratory_certified_sampler", noun: "kind of test", words: testKinds()},
		func(r *reader, v *strict.Node, t *notices.Test) { t.How = notices.TestKind(v.Text) }},
	{Field{Key: "covers", Holds: HoldsOneLine, required: true, Question: "Did they test every surface that you will disturb?", example: "all_surfaces",
		noun: "answer", words: wordsOf([]notices.Covers{notices.AllSurfaces, notices.SomeSurfaces})},
		func(r *reader, v *strict.Node, t *notices.Test) { t.Covers = notices.Covers(v.Text) }},
	{Field{Key: "result", Holds: HoldsOneLine, required: true, Question: "What did they find?", example: "no_lead",
		noun: "result", words: wordsOf([]notices.TestResult{notices.NoLead, notices.LeadFound, notices.NotClear})},
		func(r *reader, v *strict.Node, t *notices.Test) { t.Result = notices.TestResult(v.Text) }},
}

var openingRows = []row[notices.Opening]{
	{Field{Key: "id", Holds: HoldsOneLine, required: true, Question: "What do you call this opening, in one short word?", example: "w1", pattern: idPattern},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.ID = r.id(v) }},
	{Field{Key: "what", Holds: HoldsOneLine, required: true, Question: "What is it?", example: "window", noun: "opening", words: wordsOf(notices.OpeningKinds)},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.What = notices.OpeningKind(v.Text) }},
	{Field{Key: "area", Holds: HoldsOneLine, required: true, Question: "Which room or area is it in?", example: "kitchen", noun: "area", words: wordsOf(notices.Areas)},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Area = notices.Area(v.Text) }},
	{Field{Key: "storey", Holds: HoldsNumber, Question: "On which storey? The ground floor is 1.", example: "1", min_: 1, max_: 40},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Storey = number(v) }},
	{Field{Key: "work", Holds: HoldsOneLine, required: true, Question: "Which outside work is it near, by its id?", example: "porch", pattern: idPattern},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Work = r.id(v) }},
	{Field{Key: "gap", Holds: HoldsOneLine, Question: "How far is it from the work, along the wall?", example: "12 ft", pattern: lengthPattern},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Gap, o.GapKnown = r.gap(v) }},
}

const lengthPattern = `^[0-9]+(\.[0-9]+)? *(ft|feet|m)$`

func testKinds() []string {
	var names []string
	for _, k := range notices.TestKinds {
		names = append(names, string(k.Name))
	}
	return names
}

var neighbourRows = []row[notices.Neighbour]{
	{Field{Key: "id", Holds: HoldsOneLine, required: true, Question: "What do you call this neighbour, in one short word?", example: "n12", pattern: idPattern},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.ID = r.id(v) }},
	{Field{Key: "address", Holds: HoldsOneLine, required: true, Question: "What is their address?", example: "12 Alder Court"},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Address = r.name(v) }},
	{Field{Key: "kind", Holds: HoldsOneLine, Question: "Is it a home or a day-care?", example: "home", noun: "kind", words: wordsOf([]notices.NeighbourKind{notices.OneHome, notices.DayCare})},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Kind = notices.NeighbourKind(v.Text) }},
	{Field{Key: "open_days", Holds: HoldsList, Question: "A day-care: on which days is it open?", example: "[mon, tue, wed, thu, fri]", noun: "day", words: weekdayWords},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.OpenDays = weekdaysOf(v) }},
	{Field{Key: "gap", Holds: HoldsOneLine, Question: "How far is it from the work to their nearest wall?", example: "14 ft",
		pattern: lengthPattern},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Gap, n.GapKnown = r.gap(v) }},
	{Field{Key: "near", Holds: HoldsOneLine, Question: fmt.Sprintf("When nobody measured: is that within %v?", notices.Feet(notices.WindowReach.Value)), example: "not_sure",
		noun: "answer", words: wordsOf([]notices.Answer{notices.Yes, notices.No, notices.NotSure})},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Near = notices.Answer(v.Text) }},
	{Field{Key: "languages", Holds: HoldsListOrUnknown, min_: 1, Question: "Which languages do they read?", example: "[es]",
		noun: "language", words: languageWords(), pattern: anyLanguage},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Languages, n.Others = r.readerLanguages(v) }},
	{Field{Key: "pets", Holds: HoldsList, Question: "Which animals do they keep?", example: "[dog]", noun: "pet", words: wordsOf(notices.Pets)},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Pets = listOf[notices.Pet](v) }},
	{Field{Key: "homes", Holds: HoldsNumber, Question: "How many homes are behind this one address?", example: "1", min_: 1, max_: 500},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Homes = number(v) }},
}

var weekdayWords = []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

func weekdaysOf(v *strict.Node) []time.Weekday {
	var days []time.Weekday
	for _, item := range v.Items {
		if i := slices.Index(weekdayWords, item.Text); i >= 0 {
			days = append(days, time.Weekday(i))
		}
	}
	return days
}

// What stands where a key is left out. Unknown protects.
var (
	blankJob       = notices.Job{AnyonePaid: notices.Unknown, FederalAid: notices.Unknown, CheckedBy: notices.NotDecided, LeadWork: notices.Unknown, Emergency: notices.Unknown, LandlordWorks: notices.Unknown, AreasShared: notices.Unknown, Booked: notices.Unknown}
	blankWork      = notices.Work{CrewArrives: notices.NoClock, CleanedBy: notices.NoClock, Nightly: notices.Unknown, HasWindows: notices.Unknown}
	blankHousehold = notices.Household{ChildUnder6: notices.Unknown, Owns: notices.Unknown, SleepsFrom: notices.NoClock, SleepsTo: notices.NoClock, Leaves: notices.NoClock, Returns: notices.NoClock}
	blankNeighbour = notices.Neighbour{Near: notices.NotSure, Homes: 1, Kind: notices.OneHome}
)

// dwellingUnknown may be written; a Job then has no Dwelling.
const dwellingUnknown notices.Dwelling = "unknown"

func dwellingOf(text string) notices.Dwelling {
	if notices.Dwelling(text) == dwellingUnknown {
		return ""
	}
	return notices.Dwelling(text)
}

// ownerUnknown may be written; a Job then has no Owner.
const ownerUnknown notices.Owner = "unknown"

func ownerOf(text string) notices.Owner {
	if notices.Owner(text) == ownerUnknown {
		return ""
	}
	return notices.Owner(text)
}

// lotSides are what an outside wall may face apart from neighbours.
var lotSides = []string{"street", "yard", "alley"}

// states are the postal abbreviations of states, the District of Columbia and territories (USPS Publication 28, appendix B; from memory).
var states = []string{
	"AL", "AK", "AS", "AZ", "AR", "CA", "CO", "CT", "DE", "DC", "FL", "GA", "GU", "HI", "ID", "IL", "IN", "IA", "KS", "KY", "LA", "ME", "MD", "MA",
	"MI", "MN", "MS", "MO", "MP", "MT", "NE", "NV", "NH", "NJ", "NM", "NY", "NC", "ND", "OH", "OK", "OR", "PA", "PR", "RI", "SC", "SD", "TN", "TX",
	"UT", "VT", "VA", "VI", "WA", "WV", "WI", "WY",
}
