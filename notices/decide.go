package notices

import "slices"

// Decide works out what a job calls for. It is pure: the same job gives the same plan, and no clock is read.
func Decide(job Job) Plan {
	job.Wipes = job.judged()
	job.Work = slices.Clone(job.Work)
	for i, w := range job.Work {
		job.Work[i] = w.WithoutLostDays()
	}
	plan := Plan{
		Programme: job.Programme, Code: job.Code, Address: job.Address, Number: job.HouseNumber(), Days: WorkDays(job.Work), Outings: outingDays(job),
		Sheets: sheets(job), Pages: pages(job), Reasons: reasons(job), Steps: steps(job),
		TakeDown: takeDown(job), Open: keeps(job), Proof: proof(job), Beside: job.besideFacts(), Rows: job.rows(),
	}
	plan.Homes = homes(job, plan.Sheets)
	if job.hasOutsideWork() {
		plan.Lot = lotOf(job)
	}
	return plan
}

// sheets come in printing order: what is handed over, in walking order, then the crew's pack, then the spares. Each kind is gone when what it says is no
// longer so: after a pass there are no letters, requests and signs for that work any more, and before it no return letter and no done note.
func sheets(job Job) []Sheet {
	all := slices.Concat(
		returnLetters(job), cleanAgainLetters(job), afterWorkNotices(job), letters(job),
		doneNotes(job), neighbourSheets(job), homePetFlyers(job), commonAreaNotices(job),
		signs(job), commonAreaSigns(job), spares(job), slips(job))
	for i := range all {
		all[i].Turns = job.turns(all[i])
	}
	return all
}

// pages keep their addresses as long as the job exists, whatever has become of the work.
func pages(job Job) []Page {
	all := []Page{signPage(job), homePage(job)}
	if job.hasOutsideWork() {
		all = append(all, windowsPage(job), nearPage(job), petsPage(job))
	}
	for i, page := range all {
		outside := page.Kind != pageSign && page.Kind != pageHome
		switch {
		case job.Closed == Yes || job.CalledOff == BeforeItBegan:
			all[i] = closedPage(job, page.Kind)
		case outside && job.windowsOver():
			all[i] = donePage(job, page.Kind)
		}
	}
	return all
}

// homes in walking order: the house itself, then its neighbours in street order; a row for each sheet to hand over.
func homes(job Job, sheets []Sheet) []Home {
	var all []Home
	visit := func(home Home) {
		for _, s := range sheets {
			if s.To.ID == home.ID && s.Kind.Traits().walked {
				home.Kind, home.Due, home.LateAfter = s.Kind, s.Due, s.LateAfter
				all = append(all, home)
			}
		}
	}
	for _, h := range job.householdsToTell() {
		visit(Home{ID: h.ID, Who: Name(h.Name), Languages: h.reads(), Doors: 1})
	}
	for _, n := range job.neighboursToTell() {
		visit(Home{ID: n.ID, Who: Address(n.Address), Languages: n.reads(), Doors: n.Homes})
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

// outsideWork is what neighbours have to do with: work outside, and new windows, for which the wall is open to the street.
func (job Job) outsideWork() []Work {
	return slices.DeleteFunc(job.leadWork(), func(w Work) bool { return !w.ReachesOutside() })
}

func (job Job) hasOutsideWork() bool { return len(job.outsideWork()) > 0 }

// readers are the languages of those who live in the house; all of the programme's when somebody's is unknown.
func (job Job) readers() []Language {
	var all []Language
	for _, h := range job.Households {
		all = append(all, job.languagesOr(h.reads())...)
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

// reads are the languages on the paper of a household: where it reads only what there is no text of ours in, English, which somebody reads out to it.
func (h Household) reads() []Language { return orEnglish(h.Languages, h.Others) }

func (n Neighbour) reads() []Language { return orEnglish(n.Languages, n.Others) }

func orEnglish(ours []Language, others []string) []Language {
	if len(ours) == 0 && len(others) > 0 {
		return []Language{English}
	}
	return ours
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
