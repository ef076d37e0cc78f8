package notices

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
			Faces:  facesOf(job.faceLanguages(h.reads()), pageHome, cleanAgainContent(job, h)),
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
		Blocks: append(job.whyAgain(), []Block{
			{letterMeanwhile.With(), said([]Text{againSigns, letterBags, letterPets})},
			{letterAfter.With(), []Message{job.afterLine()}},
			{letterDustHead.With(), append(said([]Text{letterDust}), letterAte.With(poisonControl))},
		}...),
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
		if job.failedInWays() > 1 {
			cells = append(cells, job.howFailed(w).With())
		}
		facts = append(facts, Fact{w.onPaper(), cells})
	}
	return facts
}

// whyAgain is a block with what was found, where that was the same at each place; else the row of each place says it.
func (job Job) whyAgain() []Block {
	if job.failedInWays() > 1 {
		return nil
	}
	return []Block{{againWhy.With(), []Message{job.howFailed(job.inState(CheckFailed)[0]).With()}}}
}

// failedInWays counts in how many ways places were found not clean.
func (job Job) failedInWays() int {
	ways := map[string]bool{}
	for _, w := range job.inState(CheckFailed) {
		ways[job.howFailed(w).ID] = true
	}
	return len(ways)
}

// howFailed says what was found at a place: by a sample, or by its check.
func (job Job) howFailed(w Work) Text {
	last, _ := job.lastCheck(w)
	_, stopped := job.stopping(w)
	switch {
	case w.checkedWith != "" || stopped:
		return againSample
	case last.Role == Examiner && w.Where == Inside && job.CheckedBy == ClearanceTest:
		return againTested
	case last.Role == Crew:
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
