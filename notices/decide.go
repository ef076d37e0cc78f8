package notices

import "slices"

// Decide works out what a job calls for. It is pure: the same job gives the same plan, and no clock is read.
func Decide(job Job) Plan {
	plan := Plan{
		Sheets:  sheets(job),
		Pages:   pages(job),
		Homes:   homes(job),
		Reasons: reasons(job),
	}
	if job.hasOutsideWork() {
		plan.Lot = lotOf(job)
	}
	return plan
}

// sheets come in printing order: what is handed over, in walking order, then the crew's pack, then the spares.
func sheets(job Job) []Sheet {
	return slices.Concat(letters(job), neighbourSheets(job), homePetFlyers(job), signs(job), spares(job))
}

func pages(job Job) []Page {
	all := []Page{signPage(job), homePage(job)}
	if job.hasOutsideWork() {
		all = append(all, windowsPage(job), nearPage(job), petsPage(job))
	}
	return all
}

// homes in walking order: the house itself, then its neighbours in street order.
func homes(job Job) []Home {
	var all []Home
	for _, h := range job.householdsToTell() {
		all = append(all, Home{ID: h.ID, Kind: StayOutLetter, Who: Name(h.Name), Languages: h.Languages, Doors: 1, Due: job.letterDue()})
	}
	for _, n := range job.neighboursToTell() {
		all = append(all, Home{n.ID, job.kindFor(n), Address(n.Address), n.Languages, n.Homes, job.neighbourDue(), job.neighbourLateAfter()})
	}
	return all
}

// householdsToTell is everybody who lives in the house, unless all its work is shown to be free of lead.
func (job Job) householdsToTell() []Household {
	if len(job.leadWork()) == 0 {
		return nil
	}
	return job.Households
}

func (job Job) outsideWork() []Work {
	return slices.DeleteFunc(job.leadWork(), func(w Work) bool { return w.Where != Outside })
}

func (job Job) hasOutsideWork() bool { return len(job.outsideWork()) > 0 }

// readers are the languages of those who live in the house; all of the programme's when somebody's is unknown.
func (job Job) readers() []Language {
	var all []Language
	for _, h := range job.Households {
		all = append(all, job.languagesOr(h.Languages)...)
	}
	if len(job.Households) == 0 {
		all = job.Programme.Languages
	}
	return distinct(all)
}

// languagesOr protects a reader whose language nobody knows: it stands for every language of the programme.
func (job Job) languagesOr(known []Language) []Language {
	if len(known) == 0 {
		return job.Programme.Languages
	}
	return known
}

// faceLanguages puts the reader's language in front and English behind.
func (job Job) faceLanguages(known []Language) []Language {
	return distinct(append(slices.Clone(job.languagesOr(known)), English))
}

func distinct(languages []Language) []Language {
	var once []Language
	for _, l := range languages {
		if !slices.Contains(once, l) {
			once = append(once, l)
		}
	}
	return once
}

// facesOf is the same content, a face a language.
func facesOf(languages []Language, opens PageKind, content Content) []Face {
	var faces []Face
	for _, l := range languages {
		faces = append(faces, Face{Language: l, Opens: opens, Content: content})
	}
	return faces
}
