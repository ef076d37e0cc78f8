package notices

var (
	doneHead      = text("done.head", HouseNumber(""))
	doneCheckedOn = text("done.checked_on")
	doneYouMay    = text("done.you_may_head")
	doneWindows   = text("done.windows")
	donePets      = text("done.pets")
	donePageHead  = text("done.page_head")
	donePageGoing = text("done.page_going_on")
	closedHead    = text("done.closed_head")
	closedLine    = text("done.closed")
)

// doneNotes tell each neighbour that the outside work on the sides that face it is over, with spares for the homes that got a spare request once all of it is.
func doneNotes(job Job) []Sheet {
	var all []Sheet
	for _, n := range job.neighboursToTell() {
		if over, ok := job.windowsOpenedOn(job.facing(n)); ok {
			all = append(all, doneNote(job, n.to(), Address(n.Address), n.reads(), n.Homes, over))
		}
	}
	if over, ok := job.windowsOpenedOn(job.outsideWork()); ok {
		all = append(all, doneNote(job, To{}, nil, nil, int(job.rule(spareCopies).Value), over))
	}
	return all
}

func doneNote(job Job, to To, who Value, languages []Language, copies int, over Date) Sheet {
	return Sheet{
		ID:     doneID(to.ID),
		Kind:   DoneNote,
		To:     to,
		Faces:  facesOf(job.faceLanguages(languages), pageWindows, doneContent(job, who, over)),
		Copies: copies,
		Due:    over,
	}
}

func doneContent(job Job, who Value, over Date) Content {
	return Content{
		Head:  doneHead.With(job.houseNumber()),
		For:   who,
		Facts: []Fact{{doneCheckedOn.With(), []Value{spansOf([]Date{over})}}},
		Blocks: []Block{
			{doneYouMay.With(), said([]Text{doneWindows, donePets})},
			{Lines: said([]Text{noteDust, requestThanks})},
		},
		Call: job.programmeCall(),
	}
}

// donePage is what each page on the outside work says when that is over: no day, no drawing.
func donePage(job Job, kind PageKind) Page {
	return Page{kind, Content{
		Head: donePageHead.With(),
		Blocks: []Block{
			{goingOnHead.With(), said([]Text{donePageGoing})},
			{doHead.With(), said([]Text{doneWindows, donePets, noteDust})},
			differBlock(),
		},
		Call: job.pageCall(),
	}}
}

// closedPage says only how to reach the programme.
func closedPage(job Job, kind PageKind) Page {
	return Page{kind, Content{Head: closedHead.With(), Blocks: []Block{{Lines: said([]Text{closedLine})}}, Call: job.pageCall()}}
}
