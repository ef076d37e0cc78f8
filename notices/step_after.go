package notices

var (
	sayCheckTest   = ownText("step.check_test", Name(""))
	sayCheckCard   = ownText("step.check_cleaning", Name(""))
	sayCheckLook   = ownText("step.check_look", Name(""))
	sayCheckOpen   = ownText("step.check_not_decided", Name(""))
	waitTest       = ownText("step.wait_test", Name(""))
	waitCheck      = ownText("step.wait_check", Name(""))
	saySetDays     = ownText("step.set_clean_days", Name(""))
	sayTellAgain   = ownText("step.tell_clean_again", Name(""))
	sayCleanAgain  = ownText("step.clean_again", Name(""))
	saySignsDown   = ownText("step.signs_down", Name(""))
	sayEntryDown   = ownText("step.entry_signs_down")
	sayReturn      = ownText("step.return", Name(""))
	sayOpenWindows = ownText("step.open_windows", Address(""))
	sayNoteDone    = ownText("step.note_done", Address(""))
	sayAfterHome   = ownText("step.after_work_home", Name(""))
	sayAfterOwner  = ownText("step.after_work_owner")
	sayKeepFile    = ownText("step.keep_file")
)

// What remains after the work, counted from the day on which the last of it passed.
var (
	AfterWork      = Rule{"after_work", 30, "days", smaller, "40 CFR 745.86(c)", "2026-11-25", published, byRenovation}
	AfterAidedWork = Rule{"after_aided_work", 15, "days", smaller, "24 CFR 35.125", "2026-11-25", published, byHousing}
	fileKept       = Rule{"file_kept", 3, "years", larger, "40 CFR 745.86(a); 24 CFR 35.175", "2026-11-25", published, byBoth}
)

// checkSteps: cleaning and check on the last day, then the days of cleaning again after a check that failed.
func (job Job) checkSteps(w Work) []Step {
	last, _ := job.lastCheck(w)
	switch job.Checked(w) {
	case CheckPassed:
		s := job.checkOn(w, w.Days[len(w.Days)-1])
		s.Done = last.On
		return []Step{s}
	case CheckFailed:
		return job.cleanAgain(w)
	}
	return []Step{job.checkOn(w, w.Days[len(w.Days)-1])}
}

// checkOn is never late: it waits until somebody has found the area clean, however long that takes.
func (job Job) checkOn(w Work, day Date) Step {
	s := step(CleanAndCheck, ForWork, w.ID, day, job.check().do.With(Name(w.ID))).neverLate().cites(job.cites(checkSource), job.binds())
	s.Waits = job.check().waits.With(Name(w.ID))
	return s
}

// cleanAgain has the new days, and the check after the last of them. While nobody has set them, setting them is what to do.
func (job Job) cleanAgain(w Work) []Step {
	days := job.againDays(w)
	if len(days) == 0 {
		return []Step{step(SetCleanDays, ForWork, w.ID, job.failedOn(w), saySetDays.With(Name(w.ID))).cites(job.cites(checkSource), job.binds())}
	}
	var all []Step
	for i, day := range days {
		all = append(all, step(CleanAgain, ForWork, w.ID, day, sayCleanAgain.With(Name(w.ID))).numbered(i).neverLate().cites(job.cites(checkSource), job.binds()))
	}
	return append(all, job.checkOn(w, days[len(days)-1]))
}

// againDays are those set after the last check that failed, in order; none after a sample that undid a pass.
func (job Job) againDays(w Work) []Date {
	if w.checkedWith != "" {
		w.ID = w.checkedWith
	}
	last, _ := job.lastCheck(w)
	if last.Result == Passed {
		return nil
	}
	return sortedDays(last.Again)
}

// failedOn is the day on which a piece of work was last found not clean: of the check, or of the sample that undid its pass.
func (job Job) failedOn(w Work) Date {
	if w.checkedWith != "" {
		return job.reportedOn(w)
	}
	last, _ := job.lastCheck(w)
	day := last.On
	for _, wipe := range job.Wipes {
		if last.Result == Passed && wipe.Work == w.ID && wipe.fails() && wipe.Lab.Compare(day) > 0 {
			day = wipe.Lab
		}
	}
	return day
}

// reportedOn is the day of the report that shut a room.
func (job Job) reportedOn(room Work) Date {
	for _, s := range job.dirtyRooms() {
		if s.ID == room.ID {
			return s.from.Day
		}
	}
	return Date{}
}

// passedOn is the day on which the last of some work passed; false while any has not, and when there is none.
func (job Job) passedOn(works []Work) (Date, bool) {
	var day Date
	for _, w := range works {
		if job.Checked(w) != CheckPassed {
			return Date{}, false
		}
		if last, _ := job.lastCheck(w); last.On.Compare(day) > 0 {
			day = last.On
		}
	}
	return day, len(works) > 0
}

func (job Job) signsDown(w Work) []Step {
	passed, ok := job.passedOn([]Work{w})
	if !ok {
		return nil
	}
	return []Step{step(SignsDown, ForDoors, w.ID, passed, saySignsDown.With(Name(w.ID))).with(job.signsOf(w)...).cites(job.cites(checkSource), job.binds())}
}

// tellCleanAgain: each household hears that it waits longer, when any check has failed.
func (job Job) tellCleanAgain() []Step {
	var all []Step
	for _, s := range cleanAgainLetters(job) {
		all = append(all, job.handOver(TellCleanAgain, s, sayTellAgain))
	}
	return all
}

// handOver is the step of a sheet for one household.
func (job Job) handOver(kind StepKind, s Sheet, says Text) Step {
	return step(kind, ForHousehold, s.To.ID, s.Due, says.With(Name(s.To.Name))).with(s.ID).cites(stayOutSource, job.binds())
}

// endings: a household hears which rooms are open again, and a neighbour may open the windows when all outside work has passed.
func (job Job) endings() []Step {
	var all []Step
	for _, s := range returnLetters(job) {
		all = append(all, job.handOver(BringReturn, s, sayReturn))
	}
	for _, n := range job.neighboursToTell() {
		over, ok := job.windowsOpenedOn(job.facing(n))
		if !ok {
			continue
		}
		says := sayNoteDone
		if job.withinReach(n) {
			says = sayOpenWindows
		}
		all = append(all, step(TellDone, ForNeighbour, n.ID, over, says.With(Address(n.Address))).with(doneID(n.ID)))
	}
	return all
}

// afterWork is what remains to be told, and the file to keep, when everything has passed.
func (job Job) afterWork() []Step {
	passed, ok := job.passedOn(job.leadWork())
	if !ok {
		return nil
	}
	var all []Step
	for _, s := range afterWorkNotices(job) {
		told := sayAfterHome.With(Name(s.To.Name))
		if s.To.Party == ForOwner {
			told = sayAfterOwner.With()
		}
		all = append(all, step(TellAfterWork, s.To.Party, s.To.ID, s.Due, told).from(passed).with(s.ID).cites(job.afterWorkRule().Source(), Law))
	}
	return append(all, step(KeepFile, ForFile, "", passed.yearsLater(int(fileKept.Value)), sayKeepFile.With()).neverLate().cites(fileKept.Source(), job.binds()))
}

// afterWorkRule: the housing rule is the stricter one where it holds.
func (job Job) afterWorkRule() Rule {
	if job.aidedBinds() {
		return AfterAidedWork
	}
	return AfterWork
}

// yearsLater is the same day n years on. A leap day becomes March 1, which keeps a file a day longer, never shorter.
func (d Date) yearsLater(n int) Date {
	t := d.utc().AddDate(n, 0, 0)
	return Date{t.Year(), t.Month(), t.Day()}
}
