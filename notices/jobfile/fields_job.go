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
	{Field{Key: "code", Holds: HoldsOneLine, Required: true, Question: "Under which short name do you file this house?", Example: "alder-14", Pattern: codePattern},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Code = r.code(v) }},
	{Field{Key: "address", Holds: HoldsOneLine, Required: true, Question: "What is the address of the house, number first?", Example: "14 Alder Court, Larkfield"},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Address = r.address(v) }},
	{Field{Key: "state", Holds: HoldsOneLine, Required: true, Question: "Which state is it in, in two capitals? Write unknown when nobody knows, and on tribal land.", Example: "MN",
		Noun: "state", Words: append(slices.Clone(states), notices.StateUnknown)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.State = v.Text }},
	{Field{Key: "city", Holds: HoldsOneLine, Question: "Which city is it in, if the city has rules of its own?", Example: "San Francisco"},
		func(r *reader, v *strict.Node, j *notices.Job) { j.City = r.name(v) }},
	{Field{Key: "built", Holds: HoldsNumber, Required: true, Question: "In which year was the house built? Write unknown when nobody knows.", Example: "1931",
		Words: []string{"unknown"}, Min: 1600, Max: 2100},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Built = number(v) }},
	{Field{Key: "owner", Holds: HoldsOneLine, Question: "Does the owner live here, rent it out, or both?", Example: "lives_here",
		Noun: "answer", Words: wordsOf([]notices.Owner{notices.LivesHere, notices.RentsItOut, notices.LivesHereAndRentsOut, ownerUnknown})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Owner = ownerOf(v.Text) }},
	{Field{Key: "anyone_paid", Holds: HoldsOneLine, Question: "Is anyone paid for this work?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.AnyonePaid = notices.Answer(v.Text) }},
	{Field{Key: "landlord_works", Holds: HoldsOneLine, Question: "In a rented home: does the landlord, or somebody of theirs, do any of the work? Rent counts as pay.", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.LandlordWorks = notices.Answer(v.Text) }},
	{Field{Key: "dwelling", Holds: HoldsOneLine, Question: "Is it an ordinary home, housing for older people or people with disabilities, a home without a bedroom, or a day-care?", Example: "ordinary",
		Noun: "answer", Words: wordsOf([]notices.Dwelling{notices.OrdinaryHome, notices.ElderlyHousing, notices.NoBedroom, notices.ChildOccupied, dwellingUnknown})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Dwelling = dwellingOf(v.Text) }},
	{Field{Key: "federal_housing_money", Holds: HoldsOneLine, Question: "Is federal housing money in the job or the house?", Example: "unknown", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.FederalAid = notices.Answer(v.Text) }},
	{Field{Key: "checked_by", Holds: HoldsOneLine, Question: "Who decides at the end that it is clean enough?", Example: "clearance_test",
		Noun: "check", Words: wordsOf([]notices.Check{notices.ClearanceTest, notices.CleaningCheck, notices.CrewLook, notices.NotDecided})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.CheckedBy = notices.Check(v.Text) }},
	{Field{Key: "because_of_lead", Holds: HoldsOneLine, Question: "Is lead the reason for the work: an order, an abatement, lead hazard control?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.LeadWork = notices.Answer(v.Text) }},
	{Field{Key: "lead_presumed", Holds: HoldsOneLine, Question: "With federal housing money: on which day was the paint presumed to be lead paint, or did a test report come?", Example: "2027-04-20", Pattern: datePattern},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Presumed = r.date(v) }},
	{Field{Key: "presumption_told", Later: true, Holds: HoldsOneLine, Question: "On which day had every home the notice of that?", Example: "2027-04-28", Pattern: datePattern},
		func(r *reader, v *strict.Node, j *notices.Job) { j.PresumedTold = r.date(v) }},
	{Field{Key: "examiner_booked", Later: true, Holds: HoldsOneLine, Question: "For a clearance test: is the examiner booked?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Booked = notices.Answer(v.Text) }},
	{Field{Key: "emergency", Holds: HoldsOneLine, Question: "Is it an emergency, such as a burst pipe, that cannot wait?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Emergency = notices.Answer(v.Text) }},
	{Field{Key: "emergency_statement", Later: true, Holds: HoldsObject, Question: "In an emergency: what was it, and what was not done because of it?", Fields: fieldsOf(statementRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { readObject(r, v, statementRows, &j.Statement) }},
	{Field{Key: "entries", Holds: HoldsList, Question: "Which doors lead into the building, front, back and side?", Example: "[front_door, back_door]", Noun: "way", Words: wordsOf(notices.Ways)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Entries = listOf[notices.Way](v) }},
	{Field{Key: "on_the_day", Holds: HoldsObject, Required: true, Question: "Who is at the house while the crew works?", Example: "{name: Rosa, phone: 555-0142, speaks: [en, es]}",
		Fields: fieldsOf(contactRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { readObject(r, v, contactRows, &j.OnTheDay) }},
	{Field{Key: "pamphlets", Holds: HoldsObjects, Question: "Who has been given the official lead pamphlet: the owner, and an adult of each home?", Fields: fieldsOf(pamphletRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Pamphlets = readObjects(r, v, pamphletRows, notices.Pamphlet{})
		}},
	{Field{Key: "work", Holds: HoldsObjects, Required: true, Min: 1, Question: "What will you do, area by area?", Fields: fieldsOf(workRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Work = readObjects(r, v, workRows, blankWork) }},
	{Field{Key: "households", Holds: HoldsObjects, Required: true, Question: "Who lives in the house? Write [] when it stands empty.", Fields: fieldsOf(householdRows)},
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
	{Field{Key: "closed", Later: true, Holds: HoldsOneLine, Question: "Is the job over, so that its pages say only how to reach you?", Example: "yes", Noun: "answer", Words: wordsOf([]notices.Answer{notices.Yes, notices.No})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.Closed = notices.Answer(v.Text) }},
	{Field{Key: "called_off", Later: true, Holds: HoldsOneLine, Question: "Is the job called off, and had anything been set up or disturbed by then?", Example: "before_it_began", Noun: "answer",
		Words: wordsOf([]notices.CalledOff{notices.BeforeItBegan, notices.AfterItBegan})},
		func(r *reader, v *strict.Node, j *notices.Job) { j.CalledOff = notices.CalledOff(v.Text) }},
	{Field{Key: "areas_shared", Holds: HoldsOneLine, Question: "Do several homes share an area that you work on, such as a hall, a porch or the outside? In a day-care, answer for the families.", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, j *notices.Job) { j.AreasShared = notices.Answer(v.Text) }},
	{Field{Key: "common_areas", Holds: HoldsObject, Question: "If they do: how are they told?", Fields: fieldsOf(sharedRows)},
		func(r *reader, v *strict.Node, j *notices.Job) { readObject(r, v, sharedRows, &j.Shared) }},
	{Field{Key: "openings", Holds: HoldsObjects, Question: "Which windows, doors and vents of the house are near outside work?", Fields: fieldsOf(openingRows)},
		func(r *reader, v *strict.Node, j *notices.Job) {
			j.Openings = readObjects(r, v, openingRows, notices.Opening{})
		}},
}

var checkRows = []row[notices.CheckResult]{
	{Field{Key: "work", Holds: HoldsOneLine, Required: true, Question: "Which work, by its id?", Example: "hall", Pattern: idPattern},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Work = r.id(v) }},
	{Field{Key: "on", Holds: HoldsOneLine, Required: true, Question: "On which day?", Example: "2027-05-11", Pattern: datePattern},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.On = r.date(v) }},
	{Field{Key: "by", Holds: HoldsOneLine, Required: true, Question: "Who checked?", Example: "Jo Park"},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.By = r.name(v) }},
	{Field{Key: "role", Holds: HoldsOneLine, Required: true, Question: "As what: an examiner for clearance, a renovator with the cleaning cards, or somebody of the crew?", Example: "examiner",
		Noun: "role", Words: wordsOf([]notices.Role{notices.Examiner, notices.Renovator, notices.Crew})},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Role = notices.Role(v.Text) }},
	{Field{Key: "certified", Holds: HoldsOneLine, Question: "Are they certified or licensed for that?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Certified = notices.Answer(v.Text) }},
	{Field{Key: "independent", Holds: HoldsOneLine, Question: "Are they independent of whoever did the work?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Independent = notices.Answer(v.Text) }},
	{Field{Key: "result", Holds: HoldsOneLine, Required: true, Question: "Did it pass, in writing?", Example: "passed",
		Noun: "result", Words: wordsOf([]notices.Verdict{notices.Passed, notices.Failed})},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Result = notices.Verdict(v.Text) }},
	{Field{Key: "clean_again", Holds: HoldsList, Question: "If it failed: on which days do you clean again?", Example: "[2027-05-13]", Pattern: datePattern},
		func(r *reader, v *strict.Node, c *notices.CheckResult) { c.Again = r.dates(v) }},
}

var wipeRows = []row[notices.Wipe]{
	{Field{Key: "work", Holds: HoldsOneLine, Required: true, Question: "Which work, by its id?", Example: "hall", Pattern: idPattern},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Work = r.id(v) }},
	{Field{Key: "room", Holds: HoldsOneLine, Required: true, Question: "In which room or area?", Example: "hallway", Noun: "area", Words: wordsOf(notices.Areas)},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Room = notices.Area(v.Text) }},
	{Field{Key: "surface", Holds: HoldsOneLine, Required: true, Question: "From which surface?", Example: "floor", Noun: "surface", Words: wordsOf(notices.Surfaces)},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Surface = notices.Surface(v.Text) }},
	{Field{Key: "spot", Holds: HoldsOneLine, Question: "Where on it? A later sample answers the same spot only.", Example: "by the door"},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Spot = r.name(v) }},
	{Field{Key: "subsamples", Holds: HoldsNumber, Question: "If it is a composite: of how many subsamples?", Example: "4", Min: 2, Max: 4},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Parts = number(v) }},
	{Field{Key: "lab_date", Holds: HoldsOneLine, Required: true, Question: "What is the date of the report?", Example: "2027-05-12", Pattern: datePattern},
		func(r *reader, v *strict.Node, w *notices.Wipe) { w.Lab = r.date(v) }},
	{Field{Key: "result", Holds: HoldsOneLine, Required: true, Question: "What did the laboratory find, in micrograms per square foot, or in micrograms and the area wiped?", Example: "<4 ug/ft2",
		Pattern: wipePattern},
		func(r *reader, v *strict.Node, w *notices.Wipe) { r.result(v, w) }},
}

var sharedRows = []row[notices.SharedAreas]{
	{Field{Key: "told_by", Holds: HoldsOneLine, Required: true, Question: "A notice to each home, or signs in the building?", Example: "notice_to_each_home",
		Noun: "way", Words: wordsOf([]notices.SharedRoute{notices.NoticeToEach, notices.SignsThere})},
		func(r *reader, v *strict.Node, s *notices.SharedAreas) { s.Route = notices.SharedRoute(v.Text) }},
	{Field{Key: "homes", Holds: HoldsNumber, Required: true, Question: "How many homes are affected?", Example: "6", Min: 1, Max: 500},
		func(r *reader, v *strict.Node, s *notices.SharedAreas) { s.Homes = number(v) }},
	{Field{Key: "records_from", Holds: HoldsOneLine, Required: true, Question: "Who gives residents the pamphlet and the records, free of charge?", Example: "Larkfield office, 612-555-0118"},
		func(r *reader, v *strict.Node, s *notices.SharedAreas) { s.Records = r.name(v) }},
}

var statementRows = []row[notices.Statement]{
	{Field{Key: "what", Holds: HoldsOneLine, Required: true, Question: "What was the emergency?", Example: "a burst pipe in the ceiling"},
		func(r *reader, v *strict.Node, s *notices.Statement) { s.What = r.name(v) }},
	{Field{Key: "not_followed", Holds: HoldsOneLine, Required: true, Question: "Which steps were not followed because of it?", Example: "no pamphlet before the work"},
		func(r *reader, v *strict.Node, s *notices.Statement) { s.NotFollowed = r.name(v) }},
}

var pamphletRows = []row[notices.Pamphlet]{
	{Field{Key: "to", Holds: HoldsOneLine, Required: true, Question: "To whom: owner, or which household, by its id?", Example: "h1", Pattern: idPattern},
		func(r *reader, v *strict.Node, p *notices.Pamphlet) { p.To = r.id(v) }},
	{Field{Key: "given", Holds: HoldsOneLine, Required: true, Question: "On which day?", Example: "2027-04-20", Pattern: datePattern},
		func(r *reader, v *strict.Node, p *notices.Pamphlet) { p.Given = r.date(v) }},
	{Field{Key: "how", Holds: HoldsOneLine, Required: true, Question: "Did they sign, did you mail it, did they take it and not sign, or was nobody there?", Example: "signed",
		Noun: "way", Words: wordsOf([]notices.Delivery{notices.Signed, notices.Mailed, notices.Refused, notices.Attempted})},
		func(r *reader, v *strict.Node, p *notices.Pamphlet) { p.How = notices.Delivery(v.Text) }},
}

var contactRows = []row[notices.Contact]{
	{Field{Key: "name", Holds: HoldsOneLine, Required: true, Question: "Whom shall people ask for?", Example: "Rosa"},
		func(r *reader, v *strict.Node, c *notices.Contact) { c.Name = r.name(v) }},
	{Field{Key: "phone", Holds: HoldsOneLine, Required: true, Question: "Which phone do they carry?", Example: "555-0142"},
		func(r *reader, v *strict.Node, c *notices.Contact) { c.Phone = r.phone(v) }},
	{Field{Key: "speaks", Holds: HoldsList, Required: true, Min: 1, Question: "Which languages do they speak?", Example: "[en, es]",
		Noun: "language", Words: languageWords(), Pattern: languagePattern()},
		func(r *reader, v *strict.Node, c *notices.Contact) { c.Speaks = r.languages(v) }},
}

var workRows = []row[notices.Work]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this piece of work, in one short word?", Example: "porch", Pattern: idPattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.ID = r.id(v) }},
	{Field{Key: "where", Holds: HoldsOneLine, Required: true, Question: "Is it inside or outside?", Example: "inside",
		Noun: "place", Words: wordsOf([]notices.Where{notices.Inside, notices.Outside})},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Where = notices.Where(v.Text) }},
	{Field{Key: "area", Holds: HoldsOneLine, Required: true, Question: "Which area is it?", Example: "hallway", Noun: "area", Words: wordsOf(notices.Areas)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Area = notices.Area(v.Text) }},
	{Field{Key: "task", Holds: HoldsOneLine, Required: true, Question: "What does the crew do to the paint?", Example: "sand", Noun: "task", Words: wordsOf(notices.Tasks)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Task = notices.Task(v.Text) }},
	{Field{Key: "parts", Holds: HoldsList, Question: "Which painted parts does it touch?", Example: "[doors, trim]", Noun: "part", Words: wordsOf(notices.Parts)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Parts = listOf[notices.Part](v) }},
	{Field{Key: "how_much", Holds: HoldsOneLine, Question: "How much painted surface, in square feet? A part that is taken out whole counts with all of its surface. Write unknown when nobody measured.", Example: "60 sq ft",
		Words: []string{"unknown"}, Pattern: `^[0-9]+(\.[0-9]+)? *(sq\.? *ft\.?|ft2|ft²|square feet)$`},
		func(r *reader, v *strict.Node, w *notices.Work) { w.HowMuch = r.amount(v) }},
	{Field{Key: "share_of_part", Holds: HoldsNumber, Question: "Of a small part, such as trim: what share of it, in percent?", Example: "8", Min: 1, Max: 100},
		func(r *reader, v *strict.Node, w *notices.Work) { w.PartShare = number(v) }},
	{Field{Key: "faces", Holds: HoldsList, Question: "Outside: what does this side of the house look at? Neighbours by their address.", Example: "[street, 12 Alder Court]",
		Words: lotSides, Pattern: "."},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Faces = listOf[string](v) }},
	{Field{Key: "side", Holds: HoldsOneLine, Question: "On which side of the house, by the compass? It tells one side or room from another on paper.", Example: "north", Noun: "side", Words: wordsOf(notices.Sides)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Side = notices.Side(v.Text) }},
	{Field{Key: "storey", Holds: HoldsNumber, Question: "On which storey? The ground floor is 1.", Example: "1", Min: 1, Max: 40},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Storey = number(v) }},
	{Field{Key: "days", Holds: HoldsList, Required: true, Min: 1, Question: "On which days?", Example: "[2027-05-08]", Pattern: datePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Days = r.dates(v) }},
	{Field{Key: "crew_arrives", Holds: HoldsOneLine, Required: true, Question: "When does the crew arrive to set up?", Example: "08:00", Pattern: timePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.CrewArrives = r.clock(v) }},
	{Field{Key: "cleaned_by", Holds: HoldsOneLine, Required: true, Question: "By when will they have cleaned up?", Example: "16:30", Pattern: timePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.CleanedBy = r.clock(v) }},
	{Field{Key: "rain_day", Holds: HoldsOneLine, Question: "Which day instead, if it rains?", Example: "2027-05-15", Pattern: datePattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.RainDay = r.date(v) }},
	{Field{Key: "ways_in", Holds: HoldsList, Required: true, Min: 1, Question: "By which doors, stairs or gates could somebody walk in? Each gets a sign.", Example: "[front_door]",
		Noun: "way", Words: wordsOf(notices.Ways)},
		func(r *reader, v *strict.Node, w *notices.Work) { w.WaysIn = listOf[notices.Way](v) }},
	{Field{Key: "cleaned_nightly", Holds: HoldsOneLine, Question: fmt.Sprintf("Do you clean the area, and %v around it, at the end of each day?", notices.Feet(notices.NightlyStrip.Value)), Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, w *notices.Work) { w.Nightly = notices.Answer(v.Text) }},
	{Field{Key: "has_windows", Holds: HoldsOneLine, Question: "Inside: has this place a window?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, w *notices.Work) { w.HasWindows = notices.Answer(v.Text) }},
	{Field{Key: "lost_days", Later: true, Holds: HoldsObjects, Question: "Could the crew not go on, on some day?", Fields: fieldsOf(lostRows)},
		func(r *reader, v *strict.Node, w *notices.Work) {
			w.Lost = readObjects(r, v, lostRows, notices.LostDay{Begun: notices.Unknown})
		}},
	{Field{Key: "lot_line", Holds: HoldsOneLine, Question: "Outside: how far is it from the work to the property line?", Example: "6 ft", Pattern: lengthPattern},
		func(r *reader, v *strict.Node, w *notices.Work) { w.LotLine, w.LotLineKnown = r.gap(v) }},
	{Field{Key: "tests", Holds: HoldsObjects, Question: "Has anyone tested this paint for lead?", Fields: fieldsOf(testRows)},
		func(r *reader, v *strict.Node, w *notices.Work) {
			w.Tests = readObjects(r, v, testRows, notices.Test{})
		}},
}

var householdRows = slices.Concat([]row[notices.Household]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this household, in one short word?", Example: "h1", Pattern: idPattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.ID = r.id(v) }},
	{Field{Key: "name", Holds: HoldsOneLine, Required: true, Question: "How shall the letter address them?", Example: "The Lam family"},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Name = r.name(v) }},
	{Field{Key: "languages", Holds: HoldsListOrUnknown, Required: true, Min: 1, Question: "Which languages do they read? Write unknown when nobody asked.", Example: "[vi]",
		Noun: "language", Words: languageWords(), Pattern: anyLanguage},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Languages, h.Others = r.readerLanguages(v) }},
	{Field{Key: "phone_language", Holds: HoldsOneLine, Question: "Which language do they want to be rung in?", Example: "vi",
		Noun: "language", Words: languageWords(), Pattern: anyLanguage},
		func(r *reader, v *strict.Node, h *notices.Household) { h.PhoneLanguage = r.spoken(v) }},
	{Field{Key: "owns_it", Holds: HoldsOneLine, Question: "Is it the owner's own household?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Owns = notices.Answer(v.Text) }},
	{Field{Key: "child_under_6", Holds: HoldsOneLine, Question: "Does a child under 6 live there or come often?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, h *notices.Household) { h.ChildUnder6 = notices.Answer(v.Text) }},
	{Field{Key: "pets", Holds: HoldsList, Question: "Which animals do they keep?", Example: "[cat]", Noun: "pet", Words: wordsOf(notices.Pets)},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Pets = listOf[notices.Pet](v) }},
}, lifeRows(func(h *notices.Household) *notices.Usual { return &h.Usual }), []row[notices.Household]{
	{Field{Key: "except", Holds: HoldsObjects, Question: "Where a place that they use gets shut: how do they live until it has passed?", Fields: fieldsOf(exceptRows)},
		func(r *reader, v *strict.Node, h *notices.Household) {
			h.Except = readObjects(r, v, exceptRows, notices.Exception{Agreed: notices.Unknown})
		}},
	{Field{Key: "sleeps_from", Holds: HoldsOneLine, Question: "Does anybody sleep by day? From when?", Example: "08:00", Pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.SleepsFrom = r.clock(v) }},
	{Field{Key: "sleeps_to", Holds: HoldsOneLine, Question: "And until when?", Example: "15:00", Pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.SleepsTo = r.clock(v) }},
	{Field{Key: "leaves", Holds: HoldsOneLine, Question: "When does the last of them leave home in the morning, if all do?", Example: "07:15", Pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Leaves = r.clock(v) }},
	{Field{Key: "returns", Holds: HoldsOneLine, Question: "And when does the first of them come home?", Example: "15:30", Pattern: timePattern},
		func(r *reader, v *strict.Node, h *notices.Household) { h.Returns = r.clock(v) }},
	{Field{Key: "reach_at", Holds: HoldsOneLine, Question: "If they sleep elsewhere: where does a letter find them?", Example: "612-555-0188"},
		func(r *reader, v *strict.Node, h *notices.Household) { h.ReachAt = r.name(v) }},
	{Field{Key: "elsewhere", Holds: HoldsObject, Question: "If they sleep elsewhere, what is agreed?", Fields: fieldsOf(elsewhereRows)},
		func(r *reader, v *strict.Node, h *notices.Household) { readObject(r, v, elsewhereRows, &h.Elsewhere) }},
})

var exceptRows = append([]row[notices.Exception]{
	{Field{Key: "while", Holds: HoldsOneLine, Required: true, Question: "While which work is shut, by its id?", Example: "hall", Pattern: idPattern},
		func(r *reader, v *strict.Node, e *notices.Exception) { e.While = r.id(v) }},
	{Field{Key: "agreed", Holds: HoldsOneLine, Question: "If that is another household's room: have they agreed?", Example: "yes", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, e *notices.Exception) { e.Agreed = notices.Answer(v.Text) }},
}, lifeRows(func(e *notices.Exception) *notices.Usual { return &e.Usual })...)

// lifeRows ask how a household lives: as always, or while a place is shut.
func lifeRows[T any](of func(*T) *notices.Usual) []row[T] {
	return []row[T]{
		{Field{Key: "ways_out", Holds: HoldsLists, Question: "By which doors, halls and stairs do they get from their own home to the street? Each way a list of its own.", Example: "[[kitchen_door, back_door], [front_door]]",
			Noun: "step", Words: append(wordsOf(notices.Ways), wordsOf(notices.Areas)...)},
			func(r *reader, v *strict.Node, t *T) { of(t).WaysOut = waysOf(v) }},
		{Field{Key: "bed", Holds: HoldsOneLine, Question: "Which bed do they sleep in?", Example: "bed", Noun: "bed", Words: rooms(notices.NeedBed)},
			func(r *reader, v *strict.Node, t *T) { of(t).Bed = notices.Room(v.Text) }},
		{Field{Key: "bath", Holds: HoldsOneLine, Question: "Which bathroom do they use?", Example: "bathroom", Noun: "bathroom", Words: rooms(notices.NeedBathroom)},
			func(r *reader, v *strict.Node, t *T) { of(t).Bath = notices.Room(v.Text) }},
		{Field{Key: "kitchen", Holds: HoldsOneLine, Question: "Which kitchen do they use?", Example: "kitchen", Noun: "kitchen", Words: rooms(notices.NeedKitchen)},
			func(r *reader, v *strict.Node, t *T) { of(t).Kitchen = notices.Room(v.Text) }},
		{Field{Key: "away", Holds: HoldsOneLine, Question: "Are they out of the house while the crew works?", Example: "yes", Noun: "answer", Words: answers},
			func(r *reader, v *strict.Node, t *T) { of(t).Away = notices.Answer(v.Text) }},
		{Field{Key: "sleeps_at", Holds: HoldsOneLine, Question: "Or where do they sleep instead?", Example: "Grandma Tran's"},
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
	{Field{Key: "where", Holds: HoldsOneLine, Question: "Where do they sleep?", Example: "Lakeside Inn, 40 Shore Road"},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Where = r.name(v) }},
	{Field{Key: "travel", Holds: HoldsOneLine, Question: "How do they get there?", Example: "we_drive_you", Noun: "way to travel", Words: wordsOf(notices.Travels)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Travel = notices.Travel(v.Text) }},
	{Field{Key: "paid_by", Holds: HoldsOneLine, Question: "Who pays for it?", Example: "programme", Noun: "payer", Words: wordsOf(notices.Payers)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.PaidBy = notices.Payer(v.Text) }},
	{Field{Key: "medicines", Holds: HoldsOneLine, Question: "What about medicines they need?", Example: "take_along", Noun: "plan", Words: wordsOf(notices.MedicinePlans)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Medicines = notices.MedicinePlan(v.Text) }},
	{Field{Key: "pets", Holds: HoldsOneLine, Question: "Where do the pets go?", Example: "with_you", Noun: "plan", Words: wordsOf(notices.PetPlans)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Pets = notices.PetPlan(v.Text) }},
	{Field{Key: "keys", Holds: HoldsOneLine, Question: "Who has the keys?", Example: "crew_has_one", Noun: "plan", Words: wordsOf(notices.KeyPlans)},
		func(r *reader, v *strict.Node, e *notices.Elsewhere) { e.Keys = notices.KeyPlan(v.Text) }},
}

var lostRows = []row[notices.LostDay]{
	{Field{Key: "day", Holds: HoldsOneLine, Required: true, Question: "Which day was lost?", Example: "2027-05-08", Pattern: datePattern},
		func(r *reader, v *strict.Node, l *notices.LostDay) { l.Day = r.date(v) }},
	{Field{Key: "begun", Holds: HoldsOneLine, Question: "Had anything been set up or disturbed by then?", Example: "no", Noun: "answer", Words: answers},
		func(r *reader, v *strict.Node, l *notices.LostDay) { l.Begun = notices.Answer(v.Text) }},
}

var testRows = []row[notices.Test]{
	{Field{Key: "how", Holds: HoldsOneLine, Required: true, Question: "Who tested, and how? In a recognized laboratory: who took the chips?", Example: "laboratory_certified_sampler", Noun: "kind of test", Words: testKinds()},
		func(r *reader, v *strict.Node, t *notices.Test) { t.How = notices.TestKind(v.Text) }},
	{Field{Key: "covers", Holds: HoldsOneLine, Required: true, Question: "Did they test every surface that you will disturb?", Example: "all_surfaces",
		Noun: "answer", Words: wordsOf([]notices.Covers{notices.AllSurfaces, notices.SomeSurfaces})},
		func(r *reader, v *strict.Node, t *notices.Test) { t.Covers = notices.Covers(v.Text) }},
	{Field{Key: "result", Holds: HoldsOneLine, Required: true, Question: "What did they find?", Example: "no_lead",
		Noun: "result", Words: wordsOf([]notices.TestResult{notices.NoLead, notices.LeadFound, notices.NotClear})},
		func(r *reader, v *strict.Node, t *notices.Test) { t.Result = notices.TestResult(v.Text) }},
}

var openingRows = []row[notices.Opening]{
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this opening, in one short word?", Example: "w1", Pattern: idPattern},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.ID = r.id(v) }},
	{Field{Key: "what", Holds: HoldsOneLine, Required: true, Question: "What is it?", Example: "window", Noun: "opening", Words: wordsOf(notices.OpeningKinds)},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.What = notices.OpeningKind(v.Text) }},
	{Field{Key: "area", Holds: HoldsOneLine, Required: true, Question: "Which room or area is it in?", Example: "kitchen", Noun: "area", Words: wordsOf(notices.Areas)},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Area = notices.Area(v.Text) }},
	{Field{Key: "storey", Holds: HoldsNumber, Question: "On which storey? The ground floor is 1.", Example: "1", Min: 1, Max: 40},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Storey = number(v) }},
	{Field{Key: "work", Holds: HoldsOneLine, Required: true, Question: "Which outside work is it near, by its id?", Example: "porch", Pattern: idPattern},
		func(r *reader, v *strict.Node, o *notices.Opening) { o.Work = r.id(v) }},
	{Field{Key: "gap", Holds: HoldsOneLine, Question: "How far is it from the work, along the wall?", Example: "12 ft", Pattern: lengthPattern},
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
	{Field{Key: "id", Holds: HoldsOneLine, Required: true, Question: "What do you call this neighbour, in one short word?", Example: "n12", Pattern: idPattern},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.ID = r.id(v) }},
	{Field{Key: "address", Holds: HoldsOneLine, Required: true, Question: "What is their address?", Example: "12 Alder Court"},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Address = r.name(v) }},
	{Field{Key: "kind", Holds: HoldsOneLine, Question: "Is it a home or a day-care?", Example: "home", Noun: "kind", Words: wordsOf([]notices.NeighbourKind{notices.OneHome, notices.DayCare})},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Kind = notices.NeighbourKind(v.Text) }},
	{Field{Key: "open_days", Holds: HoldsList, Question: "A day-care: on which days is it open?", Example: "[mon, tue, wed, thu, fri]", Noun: "day", Words: weekdayWords},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.OpenDays = weekdaysOf(v) }},
	{Field{Key: "gap", Holds: HoldsOneLine, Question: "How far is it from the work to their nearest wall?", Example: "14 ft",
		Pattern: lengthPattern},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Gap, n.GapKnown = r.gap(v) }},
	{Field{Key: "near", Holds: HoldsOneLine, Question: fmt.Sprintf("When nobody measured: is that within %v?", notices.Feet(notices.WindowReach.Value)), Example: "not_sure",
		Noun: "answer", Words: wordsOf([]notices.Answer{notices.Yes, notices.No, notices.NotSure})},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Near = notices.Answer(v.Text) }},
	{Field{Key: "languages", Holds: HoldsListOrUnknown, Min: 1, Question: "Which languages do they read?", Example: "[es]",
		Noun: "language", Words: languageWords(), Pattern: anyLanguage},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Languages, n.Others = r.readerLanguages(v) }},
	{Field{Key: "pets", Holds: HoldsList, Question: "Which animals do they keep?", Example: "[dog]", Noun: "pet", Words: wordsOf(notices.Pets)},
		func(r *reader, v *strict.Node, n *notices.Neighbour) { n.Pets = listOf[notices.Pet](v) }},
	{Field{Key: "homes", Holds: HoldsNumber, Question: "How many homes are behind this one address?", Example: "1", Min: 1, Max: 500},
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
