package notices

import "strings"

var (
	requestHead      = text("request.head", HouseNumber(""))
	requestDo        = text("request.do_head")
	requestFloors    = text("request.all_floors")
	requestFans      = text("request.fans_off")
	requestBring     = text("request.bring_in")
	requestPets      = text("request.pets")
	requestWhyHead   = text("request.why_head")
	requestWhy       = text("request.why")
	requestCallHead  = text("request.call_head")
	requestCall      = text("request.call_first")
	requestThanks    = text("request.thanks")
	requestPageHead  = text("request.page_head")
	requestPageGoing = text("request.page_going_on")
	requestPageAfter = text("request.page_after")

	noteHead      = text("note.head", HouseNumber(""))
	noteNothing   = text("note.nothing_to_do")
	noteTape      = text("note.stay_behind_tape")
	noteDust      = text("note.dust")
	notePageHead  = text("note.page_head")
	notePageGoing = text("note.page_going_on")
)

// neighbourSheets are a request for each home within reach or not sure, and a note for the others that touch the lot, each followed by its pet flyer, until all outside
// work has passed.
func neighbourSheets(job Job) []Sheet {
	var all []Sheet
	for _, n := range job.neighboursToTell() {
		if len(job.openFacing(n)) == 0 {
			continue
		}
		all = append(all, n.onOpenDays(neighbourSheet(job, n)))
		if len(n.Pets) > 0 {
			all = append(all, n.onOpenDays(petFlyer(job, n.to(), Address(n.Address), n.reads(), n.Pets, n.Homes, job.openFacing(n))))
		}
	}
	return all
}

// onOpenDays moves a sheet's last day to one on which somebody is there to take it.
func (n Neighbour) onOpenDays(s Sheet) Sheet {
	s.Due, s.LateAfter = n.dueAt(s.Due), n.dueAt(s.LateAfter)
	return s
}

func neighbourSheet(job Job, n Neighbour) Sheet {
	if job.withinReach(n) {
		return request(job, n.to(), n.reads(), n.Homes, requestContent(job, Address(n.Address), n.ID, job.openFacing(n)))
	}
	return Sheet{
		ID:        noteID(n.ID),
		Kind:      NeighbourNote,
		To:        n.to(),
		Faces:     facesOf(job.faceLanguages(n.reads()), pageNear, noteContent(job, n)),
		Copies:    n.Homes,
		Due:       job.neighbourDue(),
		LateAfter: job.neighbourLateAfter(),
	}
}

func request(job Job, to To, languages []Language, copies int, content Content) Sheet {
	return Sheet{
		ID:        requestID(to.ID),
		Kind:      CloseWindowsRequest,
		To:        to,
		Faces:     facesOf(job.faceLanguages(languages), pageWindows, content),
		Copies:    copies,
		Due:       job.neighbourDue(),
		LateAfter: job.neighbourLateAfter(),
	}
}

func requestContent(job Job, to Value, home string, works []Work) Content {
	return Content{
		Head:    requestHead.With(job.houseNumber()),
		For:     to,
		Marks:   []Mark{markWindow},
		Facts:   append(job.timeFacts(works), newDay()),
		Drawing: Drawing{ReadersHome, home},
		Blocks: []Block{
			{requestDo.With(), said([]Text{requestFloors, requestFans, requestBring, requestPets})},
			{requestCallHead.With(), said([]Text{requestCall})},
			{requestWhyHead.With(), said([]Text{requestWhy, requestThanks})},
		},
		Call: job.programmeCall(),
	}
}

func noteContent(job Job, n Neighbour) Content {
	return Content{
		Head:  noteHead.With(job.houseNumber()),
		For:   Address(n.Address),
		Facts: append(job.outingFacts(job.openFacing(n)), newDay()),
		Blocks: []Block{
			{Lines: said([]Text{noteNothing, noteTape, requestPets})},
			{requestWhyHead.With(), said([]Text{requestWhy, noteDust, requestThanks})},
		},
		Call: job.programmeCall(),
	}
}

func windowsPage(job Job) Page {
	return Page{pageWindows, Content{
		Head:    requestPageHead.With(),
		Marks:   []Mark{markWindow},
		Facts:   job.outingFacts(job.openWindows()),
		Drawing: Drawing{Of: NobodysHome},
		Blocks: []Block{
			{goingOnHead.With(), said([]Text{requestPageGoing, requestWhy})},
			{doHead.With(), said([]Text{requestFloors, requestFans, requestBring, requestPets})},
			{requestCallHead.With(), said([]Text{requestCall})},
			{afterHead.With(), said([]Text{requestPageAfter, requestThanks})},
			differBlock(),
		},
		Call: job.pageCall(),
	}}
}

func nearPage(job Job) Page {
	return Page{pageNear, Content{
		Head:  notePageHead.With(),
		Facts: job.outingFacts(job.openWindows()),
		Blocks: []Block{
			{goingOnHead.With(), said([]Text{notePageGoing, requestWhy})},
			{doHead.With(), said([]Text{noteNothing, noteTape, requestPets, noteDust})},
			{afterHead.With(), said([]Text{requestPageAfter, requestThanks})},
			differBlock(),
		},
		Call: job.pageCall(),
	}}
}

// programmeCall is for neighbours: they ring the programme and name the house that the work is at.
func (job Job) programmeCall() Call {
	call := job.Programme.Call()
	call.Say = job.street()
	return call
}

func (n Neighbour) to() To { return To{ForNeighbour, n.ID, n.Address} }

// street is what to say on the phone: "14 Alder Court".
func (job Job) street() Address {
	street, _, _ := strings.Cut(job.Address, ",")
	return Address(street)
}

func (job Job) houseNumber() HouseNumber { return HouseNumber(job.HouseNumber()) }
