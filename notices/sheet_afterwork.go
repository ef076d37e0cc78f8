package notices

import "slices"

var (
	afterHeading   = text("after.head")
	afterDid       = text("after.what_we_did")
	afterContact   = text("after.contact")
	afterOwner     = text("after.owner")
	afterWith      = text("after.with_head")
	afterRecord    = text("after.record")
	afterReport    = text("after.report")
	afterMissing   = text("after.missing")
	afterKeep      = text("after.keep")
	afterAddress   = text("after.our_address")
	afterRemaining = text("after.remaining")
	afterMore      = text("after.more_parts")
	afterDate      = text("after.date")
)

// afterWorkNotices go to an adult of each household, and to an owner who does not live there (40 CFR 745.86(c); 24 CFR 35.125(b)), when one of those rules
// binds the job and all of its work has passed.
func afterWorkNotices(job Job) []Sheet {
	if !job.finished() || job.binds() != Law {
		return nil
	}
	var all []Sheet
	for _, h := range job.householdsToTell() {
		all = append(all, afterWorkNotice(job, To{ForHousehold, h.ID, h.Name}, Name(h.Name), h.reads()))
	}
	if job.Owner != LivesHere || len(all) == 0 {
		all = append(all, afterWorkNotice(job, To{Party: ForOwner, ID: "owner"}, afterOwner.With(), nil))
	}
	return all
}

func afterWorkNotice(job Job, to To, who Value, languages []Language) Sheet {
	return Sheet{
		ID:     afterID(to.ID),
		Kind:   AfterWorkNotice,
		To:     to,
		Faces:  facesOf(job.faceLanguages(languages), pageHome, afterContent(job, who)),
		Copies: 1,
		Due:    job.afterWorkDue(),
	}
}

// afterWorkDue is the earlier of both rules' days where both hold.
func (job Job) afterWorkDue() Date {
	passed, _ := job.passedOn(job.leadWork())
	if due := job.hazardsReduced().Plus(int(AfterAidedWork.Value)); job.aidedBinds() {
		return due
	}
	return passed.Plus(int(AfterWork.Value))
}

// hazardsReduced is the last day of work or of cleaning again: the housing rule counts from the completion of the hazard reduction. Whether that is the end of the work or the pass is not
// settled, so the earlier day is taken.
func (job Job) hazardsReduced() Date {
	days := WorkDays(job.leadWork())
	for _, w := range job.leadWork() {
		for _, c := range job.Checks {
			if c.Work == w.ID {
				days = append(days, c.Again...)
			}
		}
	}
	days = sortedDays(days)
	return days[len(days)-1]
}

// afterContent has the summary that both rules want. Where the housing rule binds it has all that 24 CFR 35.125(b)(1) lists: nature, dates, scope and results;
// whom to ask, with address and phone; the lead paint that is known to remain; the date of the notice. What no job file holds is a line to fill in.
func afterContent(job Job, who Value) Content {
	content := Content{
		Head:   afterHeading.With(),
		For:    who,
		Facts:  slices.Concat(job.summary(), job.dustFound()),
		Blocks: job.howWeKnow(),
		Call:   job.familyCall(),
	}
	if job.renovationBinds() {
		content.Blocks = append(content.Blocks, Block{afterWith.With(), job.enclosed()})
	}
	content.Blocks = append(content.Blocks, Block{Lines: said([]Text{afterKeep})})
	if job.aidedBinds() {
		content.Facts = append(content.Facts, Fact{Label: afterContact.With()}, Fact{Name(job.Programme.Name), []Value{Reading(job.Programme.Phone.Written())}})
		content.Blanks = said([]Text{afterAddress, afterRemaining, afterMore, afterDate})
	}
	return content
}

// summary is a row for each area: what was done to which parts, on which days, and who checked it when.
func (job Job) summary() []Fact {
	facts := []Fact{{Label: afterDid.With()}}
	for _, w := range job.leadWork() {
		facts = append(facts, Fact{w.onPaper(), slices.Concat(w.whatIsDone(), []Value{spansOf(w.Days)}, job.checkCells(w))})
	}
	return facts
}

// enclosed is what comes with the notice: the record of how the work was done, and the report on dust where it took the place of the cleaning check
// (40 CFR 745.86(c)(3) and (d)).
func (job Job) enclosed() []Message {
	lines := said([]Text{afterRecord})
	if job.check().takesLab {
		lines = append(lines, afterReport.With())
	}
	return append(lines, afterMissing.With())
}

func (job Job) afterWorkReasons() []Reason {
	if !job.finished() || job.binds() != Law {
		return nil
	}
	rule := job.afterWorkRule()
	passed, _ := job.passedOn(job.leadWork())
	r := Reason{Decision: "after_work", Outcome: outAfterWork.With(Day(job.afterWorkDue())), Because: whyAfterRecords.With(Number(rule.Value), SecondDay(passed)), Source: rule.Source(), Binds: Law}
	all := []Reason{r}
	if job.aidedBinds() {
		all[0].Because = whyAfterAided.With(Number(rule.Value), SecondDay(job.hazardsReduced()))
		if job.renovationBinds() {
			both := r
			both.Outcome, both.Because, both.Source = outAfterWork.With(Day(passed.Plus(int(AfterWork.Value)))), whyAfterRecords.With(Number(AfterWork.Value), SecondDay(passed)), AfterWork.Source()
			all = append(all, both)
		}
	}
	if job.Shared.Route != "" && job.renovationBinds() {
		all = append(all, Reason{Decision: "after_work_shared", Outcome: outAfterShared.With(), Because: whyAfterShared.With(), Source: read("2026-11-25", "40 CFR 745.86(c)(2) and (d)(3)"), Binds: Law})
	}
	return all
}
