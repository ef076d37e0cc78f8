package notices

import "slices"

var (
	petsHead      = text("pets.head")
	petsBefore    = text("pets.before_head")
	petsBringIn   = text("pets.bring_in")
	petsOutdoor   = text("pets.outdoor")
	petsWalk      = text("pets.walk")
	petsWhyHead   = text("pets.why_head")
	petsWhy       = text("pets.why")
	petsGotInHead = text("pets.got_in_head")
	petsWipe      = text("pets.wipe")
	petsWash      = text("pets.wash_hands")
	petsVet       = text("pets.vet")
	petsPageGoing = text("pets.page_going_on")
)

// homePetFlyers are for the households with pets, while any work outside is open; for inside work the letter's line on pets is enough.
func homePetFlyers(job Job) []Sheet {
	if len(job.openWindows()) == 0 {
		return nil
	}
	var all []Sheet
	for _, h := range job.householdsToTell() {
		if len(h.Pets) > 0 {
			all = append(all, petFlyer(job, To{ForHousehold, h.ID, h.Name}, Name(h.Name), h.reads(), h.Pets, 1, job.openWindows()))
		}
	}
	return all
}

func petFlyer(job Job, to To, who Value, languages []Language, pets []Pet, copies int, works []Work) Sheet {
	return Sheet{
		ID:        petsID(to.ID),
		Kind:      PetFlyer,
		To:        to,
		Faces:     facesOf(job.faceLanguages(languages), pagePets, petContent(job, who, pets, works)),
		Copies:    copies,
		Due:       job.neighbourDue(),
		LateAfter: job.neighbourLateAfter(),
	}
}

func petContent(job Job, who Value, pets []Pet, works []Work) Content {
	return Content{
		Head:  petsHead.With(),
		For:   who,
		Marks: []Mark{markPets},
		Facts: append(job.timeFacts(works), newDay()),
		Blocks: []Block{
			{petsBefore.With(), said(petsDo(pets))},
			{petsWhyHead.With(), said([]Text{petsWhy})},
			{petsGotInHead.With(), said([]Text{petsWipe, petsWash, petsVet})},
		},
		Call: job.programmeCall(),
	}
}

// petsDo is what to do with the animals of one home; with those of any home, when nobody has said which.
func petsDo(pets []Pet) []Text {
	has := func(kinds ...Pet) bool {
		return len(pets) == 0 || slices.ContainsFunc(pets, func(p Pet) bool { return slices.Contains(kinds, p) })
	}
	do := []Text{petsBringIn}
	if has("dog", "other_pet") {
		do = append(do, petsWalk)
	}
	if has("cat", "outdoor_cat", "hens", "rabbit", "other_pet") {
		do = append(do, petsOutdoor)
	}
	return do
}

func petsPage(job Job) Page {
	return Page{pagePets, Content{
		Head:  petsHead.With(),
		Marks: []Mark{markPets},
		Facts: job.outingFacts(job.openWindows()),
		Blocks: []Block{
			{goingOnHead.With(), said([]Text{petsPageGoing, petsWhy})},
			{doHead.With(), said([]Text{petsBringIn, petsWalk, petsOutdoor})},
			{petsGotInHead.With(), said([]Text{petsWipe, petsWash, petsVet})},
			{afterHead.With(), said([]Text{requestPageAfter})},
			differBlock(),
		},
		Call: job.pageCall(),
	}}
}
