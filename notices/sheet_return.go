package notices

import "slices"

var (
	returnHead     = text("return.head")
	returnHeadHome = text("return.head_home")
	returnRooms    = text("return.rooms")
	returnCheckOn  = text("return.checked_on")
	returnCheckBy  = text("return.checked_by")
	returnShut     = text("return.still_shut")
	returnResults  = text("return.results")
	returnLevel    = text("return.level")
	returnHow      = text("return.how_head")
	returnTested   = text("return.tested")
	returnChecked  = text("return.checked")
	returnLooked   = text("return.looked")
	returnNext     = text("return.next_head")
	returnSigns    = text("return.signs_down")
	returnStayOut  = text("return.stay_out")
	returnOldPaint = text("return.old_paint")
)

// returnLetters tell each household where it may go again. There is none before a pass, and none for a household that still has to sleep elsewhere.
func returnLetters(job Job) []Sheet {
	var all []Sheet
	for _, h := range job.householdsToTell() {
		if job.mayReturn(h) {
			all = append(all, returnLetter(job, h))
		}
	}
	return all
}

// mayReturn: who lives at home may go into each room that has passed. Who sleeps elsewhere comes home only when no work inside is open and a door leads past
// what is open outside.
func (job Job) mayReturn(h Household) bool {
	if len(job.passedWork()) == 0 {
		return false
	}
	if job.stay(h).stay != sleepElsewhere {
		return true
	}
	rest := job
	rest.Work = job.OpenWork()
	return len(insideOf(rest.Work)) == 0 && rest.mayStay(h).stay != sleepElsewhere
}

func returnLetter(job Job, h Household) Sheet {
	passed, _ := job.passedOn(job.passedWork())
	return Sheet{
		ID:     returnID(h.ID),
		Kind:   ReturnLetter,
		To:     To{ForHousehold, h.ID, h.Name},
		Faces:  facesOf(job.faceLanguages(h.reads()), pageHome, returnContent(job, h)),
		Copies: 1,
		Due:    passed,
	}
}

func returnContent(job Job, h Household) Content {
	return Content{
		Head:  job.returnHead(h),
		For:   Name(h.Name),
		Facts: slices.Concat(job.openRooms(), job.stillShut(), job.dustFound()),
		Blocks: append(job.howWeKnow(), []Block{
			{returnNext.With(), job.fromNowOn()},
			{letterDustHead.With(), said([]Text{letterDust})},
		}...),
		Call: job.familyCall(),
	}
}

func (job Job) returnHead(h Household) Message {
	if job.stay(h).stay == sleepElsewhere {
		return returnHeadHome.With()
	}
	return returnHead.With()
}

// openRooms is a row for each area that has passed: the date of its check, and who checked.
func (job Job) openRooms() []Fact {
	facts := []Fact{{Label: returnRooms.With()}}
	for _, w := range job.passedWork() {
		facts = append(facts, Fact{w.onPaper(), job.checkCells(w)})
	}
	return facts
}

func (job Job) checkCells(w Work) []Value {
	last, _ := job.lastCheck(w)
	cells := []Value{Pair{returnCheckOn.With(), spansOf([]Date{last.On})}, Pair{returnCheckBy.With(), Name(last.By)}}
	if job.checkedInWays() > 1 {
		cells = append(cells, job.howChecked(w).With())
	}
	return cells
}

// stillShut is a row for each area that nobody may enter yet. It names no day on which that ends.
func (job Job) stillShut() []Fact {
	if len(job.OpenWork()) == 0 {
		return nil
	}
	facts := []Fact{{Label: returnShut.With()}}
	for _, w := range job.OpenWork() {
		facts = append(facts, Fact{w.onPaper(), []Value{Pair{factUntil.With(), letterUntilTold.With()}}})
	}
	return facts
}

// mostSamples is how many dust samples a letter lists; of more it shows the highest of each surface.
const mostSamples = 10

// dustFound is a row for each surface: the rooms with their results as reported, and the level that they had to be below. Of several samples of a surface in one
// room the last is listed, and only where the work has passed.
func (job Job) dustFound() []Fact {
	samples := job.lastSamples()
	if len(samples) == 0 {
		return nil
	}
	facts := []Fact{{Label: returnResults.With()}}
	for _, surface := range Surfaces {
		of := slices.DeleteFunc(slices.Clone(samples), func(w Wipe) bool { return w.Surface != surface })
		if len(of) > 0 {
			facts = append(facts, surfaceFact(surface, of, len(samples) > mostSamples))
		}
	}
	return facts
}

// surfaceFact lists samples of one surface. They share the strictest level of the days of their reports.
func surfaceFact(surface Surface, of []Wipe, highestOnly bool) Fact {
	strictest := of[0].level()
	for _, w := range of {
		strictest = min(strictest, w.level())
	}
	if highestOnly {
		of = []Wipe{slices.MaxFunc(of, func(a, b Wipe) int { return int(a.Loading*1e6) - int(b.Loading*1e6) })}
	}
	var cells []Value
	for _, w := range of {
		cells = append(cells, Pair{Message{ID: w.Room.Word()}, w.reading()})
	}
	return Fact{Words{surface.Word()}, append(cells, Pair{returnLevel.With(), Reading(perSquareFoot(strictest))})}
}

// lastSamples are the newest sample of each surface in each room, of the work that has passed.
func (job Job) lastSamples() []Wipe {
	var all []Wipe
	for _, w := range job.passedWork() {
		for _, wipe := range job.Wipes {
			if wipe.Work != w.ID || wipe.fails() || wipe.Surface == blank {
				continue // one that failed is older news: the area was cleaned again since
			}
			i := slices.IndexFunc(all, wipe.sameSurface)
			switch {
			case i < 0:
				all = append(all, wipe)
			case wipe.Lab.Compare(all[i].Lab) >= 0:
				all[i] = wipe
			}
		}
	}
	return all
}

func (w Wipe) sameSurface(other Wipe) bool {
	return w.Work == other.Work && w.Room == other.Room && w.Surface == other.Surface
}

// howChecked says only what was done at a place: a test of dust where an examiner made one, outside where a sample is noted; else a check, or the crew's look.
func (job Job) howChecked(w Work) Text {
	last, _ := job.lastCheck(w)
	switch {
	case last.Role == Examiner && (w.Where == Inside && job.CheckedBy == ClearanceTest || job.hasSample(w)):
		return returnTested
	case last.Role == Crew:
		return returnLooked
	}
	return returnChecked
}

func (job Job) hasSample(w Work) bool {
	return slices.ContainsFunc(job.Wipes, func(wipe Wipe) bool { return wipe.Work == w.ID && wipe.Surface != blank })
}

// howWeKnow is a block with what was done, where that was the same at each place; else the row of each place says it.
func (job Job) howWeKnow() []Block {
	passed := job.passedWork()
	if len(passed) == 0 || job.checkedInWays() > 1 {
		return nil
	}
	return []Block{{returnHow.With(), []Message{job.howChecked(passed[0]).With()}}}
}

// checkedInWays counts in how many ways the places that have passed were checked.
func (job Job) checkedInWays() int {
	ways := map[string]bool{}
	for _, w := range job.passedWork() {
		ways[job.howChecked(w).ID] = true
	}
	return len(ways)
}

func (job Job) fromNowOn() []Message {
	lines := said([]Text{returnSigns})
	if len(job.OpenWork()) > 0 {
		lines = append(lines, returnStayOut.With())
	}
	if job.windowsOver() {
		lines = append(lines, said([]Text{doneWindows, donePets})...)
	}
	return append(lines, returnOldPaint.With())
}
