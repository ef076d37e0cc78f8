package notices

import "slices"

var (
	againHead    = text("again.head")
	againShut    = text("again.still_shut")
	againOn      = text("again.clean_on")
	againDayOpen = text("again.day_open")
	againWhy     = text("again.why_head")
	againTested  = text("again.tested")
	againChecked = text("again.checked")
	againLooked  = text("again.looked")
	againSample  = text("again.sample")
	againSigns   = text("again.signs_stay")
)

// cleanAgainLetters tell each household that a check failed, or that a dust sample undid it: stay out, the signs stay, and the days of cleaning again.
func cleanAgainLetters(job Job) []Sheet {
	if len(job.inState(CheckFailed)) == 0 {
		return nil
	}
	var all []Sheet
	for _, h := range job.householdsToTell() {
		all = append(all, Sheet{
			ID:     againID(h.ID),
			Kind:   CleanAgainLetter,
			To:     To{ForHousehold, h.ID, h.Name},
			Faces:  facesOf(job.faceLanguages(h.reads()), HomePage, cleanAgainContent(job, h)),
			Copies: 1,
			Due:    job.lastFail(),
		})
	}
	return all
}

func cleanAgainContent(job Job, h Household) Content {
	return Content{
		Head:  againHead.With(),
		For:   Name(h.Name),
		Marks: []Mark{MarkKeepOut},
		Facts: job.cleanAgainFacts(),
		Blocks: []Block{
			{againWhy.With(), job.whyAgain()},
			{letterMeanwhile.With(), said([]Text{againSigns, letterBags, letterPets})},
			{letterAfter.With(), []Message{job.afterLine()}},
			{letterDustHead.With(), append(said([]Text{letterDust}), letterAte.With(PoisonControl))},
		},
		Call: job.familyCall(),
	}
}

// cleanAgainFacts is a row for each area that failed: the days of cleaning again, or that nobody has set them yet.
func (job Job) cleanAgainFacts() []Fact {
	facts := []Fact{{Label: againShut.With()}}
	for _, w := range job.inState(CheckFailed) {
		cells := []Value{againDayOpen.With()}
		if days := job.againDays(w); len(days) > 0 {
			cells = []Value{Pair{againOn.With(), spansOf(days)}}
		}
		facts = append(facts, Fact{w.onPaper(), cells})
	}
	return facts
}

// whyAgain says what was found: by the check, by a sample, or by both in different areas.
func (job Job) whyAgain() []Message {
	var why []Message
	for _, w := range job.inState(CheckFailed) {
		found := job.howFailed()
		if _, stopped := job.stopping(w); stopped {
			found = againSample
		}
		if !slices.ContainsFunc(why, func(m Message) bool { return m.ID == found.ID }) {
			why = append(why, found.With())
		}
	}
	return why
}

func (job Job) howFailed() Text {
	switch job.CheckedBy {
	case ClearanceTest:
		return againTested
	case CrewLook:
		return againLooked
	}
	return againChecked
}

// lastFail is the latest day on which something was found not clean.
func (job Job) lastFail() Date {
	var day Date
	for _, w := range job.inState(CheckFailed) {
		if failed := job.failedOn(w); failed.Compare(day) > 0 {
			day = failed
		}
	}
	return day
}
