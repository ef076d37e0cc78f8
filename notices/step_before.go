package notices

var (
	sayTalk          = ownText("step.talk", Name(""))
	sayTalkIn        = ownText("step.talk_in", Name(""), SpokenLanguage(""))
	sayLetter        = ownText("step.letter", Name(""))
	sayAskFirst      = ownText("step.letter_waits", Name(""))
	sayCloseWindows  = ownText("step.close_windows", Address(""))
	sayNote          = ownText("step.note", Address(""))
	sayKnock         = ownText("step.knock_again", Address(""))
	saySignsUp       = ownText("step.signs_up", Name(""))
	sayEntrySignsUp  = ownText("step.entry_signs_up")
	sayResidents     = ownText("step.tell_residents", Number(0))
	sayResidentSigns = ownText("step.resident_signs_up")
	sayBook          = ownText("step.book_examiner", Day{})
	sayPresumption   = ownText("step.presumption", Name(""))
	sayWorkDay       = ownText("step.work_day", Name(""))
)

// talk says in which language, where the household has told one.
func (h Household) talk() Message {
	if h.PhoneLanguage != "" {
		return sayTalkIn.With(Name(h.Name), SpokenLanguage(h.PhoneLanguage))
	}
	return sayTalk.With(Name(h.Name))
}

// householdSteps come before the work; once all of it has passed nobody needs them any more.
func (job Job) householdSteps() []Step {
	if job.finished() {
		return nil
	}
	var all []Step
	talk := firstDay(job.leadWork()).Plus(-int(job.rule(talkAhead).Value))
	for _, h := range job.householdsToTell() {
		all = append(all,
			step(TalkToHousehold, ForHousehold, h.ID, talk, h.talk()).with(letterID(h.ID)).cites(job.rule(talkAhead).Source(), GoodPractice),
			job.letterStep(h).from(talk).cites(job.rule(letterAhead).Source(), GoodPractice))
	}
	return all
}

// letterStep brings the letter; while an answer is missing there is none, and asking comes first.
func (job Job) letterStep(h Household) Step {
	if len(job.unanswered(h)) > 0 {
		return step(BringLetter, ForHousehold, h.ID, job.letterDue(), sayAskFirst.With(Name(h.Name)))
	}
	return step(BringLetter, ForHousehold, h.ID, job.letterDue(), sayLetter.With(Name(h.Name))).with(letterID(h.ID))
}

func (job Job) neighbourSteps() []Step {
	var all []Step
	for _, n := range job.neighboursToTell() {
		if len(job.openFacing(n)) == 0 {
			continue
		}
		sheet, says := noteID(n.ID), sayNote
		if job.withinReach(n) {
			sheet, says = requestID(n.ID), sayCloseWindows
		}
		all = append(all, job.tellNeighbour(n, sheet, says),
			step(KnockAgain, ForNeighbour, n.ID, n.dueAt(firstDay(job.outsideWork()).Plus(-1)), sayKnock.With(Address(n.Address))).with(sheet))
	}
	return all
}

func (job Job) tellNeighbour(n Neighbour, sheet string, says Text) Step {
	s := step(TellNeighbour, ForNeighbour, n.ID, n.dueAt(job.neighbourDue()), says.With(Address(n.Address))).from(n.dueAt(job.neighboursFrom())).with(sheet)
	s.LateAfter, s.Source = n.dueAt(job.neighbourLateAfter()), job.rule(requestAhead).Source()
	if law := job.mustTell(); len(law) > 0 && job.withinReach(n) {
		s.Source, s.Binds = law, Law
	}
	return s
}

// bookSteps: an examiner has other houses too.
func (job Job) bookSteps() []Step {
	if !job.check().takesLab || job.finished() {
		return nil
	}
	days := WorkDays(job.leadWork())
	book := days[0].Plus(-int(job.rule(talkAhead).Value))
	s := step(BookExaminer, ForWork, "", book, sayBook.With(Day(days[len(days)-1]))).cites(inPractice, GoodPractice)
	if job.Booked == Yes {
		s.Done = book
	}
	return []Step{s}
}

// presumptionSteps: with federal housing money, each home gets a notice that the paint was found or presumed to be lead paint.
func (job Job) presumptionSteps() []Step {
	if !job.aidedBinds() || job.Presumed.IsZero() || job.finished() {
		return nil
	}
	var all []Step
	for _, h := range job.householdsToTell() {
		s := step(TellPresumption, ForHousehold, h.ID, job.presumptionDue(), sayPresumption.With(Name(h.Name))).from(job.Presumed).cites(presumptionNotice.Source(), Law)
		s.Done = job.PresumedTold
		all = append(all, s)
	}
	return all
}

func (job Job) presumptionDue() Date { return job.Presumed.Plus(int(presumptionNotice.Value)) }

// signSteps: the signs hang before the work begins.
func (job Job) signSteps(w Work) []Step {
	if job.Checked(w) == CheckPassed {
		return nil
	}
	return []Step{step(SignsUp, ForDoors, w.ID, w.Days[0], saySignsUp.With(Name(w.ID))).with(job.signsOf(w)...).cites(job.cites(signSource), job.binds())}
}

// signsOf are the ids of the signs at the ways into one piece of work.
func (job Job) signsOf(w Work) []string {
	var ids []string
	for _, way := range w.WaysIn {
		for _, s := range signPair(job, w, way) {
			ids = append(ids, s.ID)
		}
	}
	return ids
}

func (job Job) workDays(w Work) []Step {
	var all []Step
	for i, day := range w.Days {
		s := step(WorkDay, ForWork, w.ID, day, sayWorkDay.With(Name(w.ID))).numbered(i).neverLate().cites(signSource[0], job.binds())
		if job.Checked(w) != notChecked {
			s.Done = day
		}
		all = append(all, s)
	}
	return all
}

// entrySteps are for the signs on the doors of a house that everybody has left: up before any work, down when all work inside has passed.
func (job Job) entrySteps() []Step {
	if up := idsOf(entrySignsAround(job, job.OpenWork())); len(up) > 0 {
		return []Step{step(SignsUp, ForDoors, "", firstDay(job.leadWork()), sayEntrySignsUp.With()).with(up...).cites(job.cites(signSource), job.binds())}
	}
	passed, ok := job.passedOn(insideOf(job.leadWork()))
	if down := idsOf(entrySigns(job)); ok && len(down) > 0 {
		return []Step{step(SignsDown, ForDoors, "", passed, sayEntryDown.With()).with(down...).cites(job.cites(checkSource), job.binds())}
	}
	return nil
}

func idsOf(sheets []Sheet) []string {
	var ids []string
	for _, s := range sheets {
		ids = append(ids, s.ID)
	}
	return ids
}

// commonAreaSteps tell the other homes of the building before the work: each by a notice, or all by signs that hang until it has passed.
func (job Job) commonAreaSteps() []Step {
	var all []Step
	for _, s := range commonAreaNotices(job) {
		tell := step(TellResidents, ForResidents, "", s.Due, sayResidents.With(Number(s.Copies))).with(s.ID).cites(read("2026-11-25", "40 CFR 745.84(b)(2)(i)"), job.renovationBinding())
		tell.LateAfter = s.LateAfter
		all = append(all, tell)
	}
	if ids := idsOf(commonAreaSigns(job)); len(ids) > 0 {
		all = append(all, step(ResidentSignsUp, ForResidents, "", firstDay(job.leadWork()), sayResidentSigns.With()).with(ids...).cites(read("2026-11-25", "40 CFR 745.84(b)(2)(ii)"), job.renovationBinding()))
	}
	return all
}

// renovationBinding is for what only the renovation rule asks for.
func (job Job) renovationBinding() Binding {
	if job.renovationBinds() {
		return Law
	}
	return GoodPractice
}
