package notices

var (
	commonHead    = text("common.head")
	commonStarts  = text("common.starts")
	commonEnds    = text("common.ends")
	commonRecords = text("common.records_head")
	commonFree    = text("common.free")
	commonCopies  = text("common.copies")
	commonAsk     = text("common.ask")
)

// commonAreaNotices are one copy for each affected home, before the work starts (40 CFR 745.84(b)(2)(i)). Nobody knows what its readers read, so there is a face
// in each language.
func commonAreaNotices(job Job) []Sheet {
	if !job.tellsResidents(NoticeToEach) || len(job.OpenWork()) == 0 {
		return nil
	}
	return []Sheet{{
		ID:        commonNoticeID,
		Kind:      CommonAreaNotice,
		Faces:     facesOf(job.faceLanguages(job.Programme.Languages), pageSign, commonNotice(job)),
		Copies:    job.Shared.Homes,
		Due:       job.letterDue(),
		LateAfter: firstDay(job.leadWork()).Plus(-1),
	}}
}

// tellsResidents reports whether the residents are told by a route. An emergency waives 40 CFR 745.84 whole (745.82(b)).
func (job Job) tellsResidents(by SharedRoute) bool {
	return job.Shared.Route == by && job.Emergency != Yes
}

// commonAreaSigns hang while the work goes on, where people from all affected homes see them (40 CFR 745.84(b)(2)(ii)). Unlike the danger sign, such a sign
// carries a date: the rule asks for the anticipated day of completion. So it is a sheet of its own, and a new day means a new sign.
func commonAreaSigns(job Job) []Sheet {
	if !job.tellsResidents(SignsThere) || len(job.OpenWork()) == 0 {
		return nil
	}
	var all []Sheet
	for _, door := range job.mainDoors() {
		for _, l := range job.faceLanguages(job.Programme.Languages) {
			all = append(all, Sheet{
				ID:     commonSignID(door, l),
				Kind:   CommonAreaSign,
				Hang:   []Way{door},
				Faces:  facesOf([]Language{l}, pageSign, commonSign(job)),
				Copies: 1,
				Due:    firstDay(job.leadWork()),
			})
		}
	}
	return all
}

// mainDoors are where everybody passes: the building's doors, or the front door when nobody has named them.
func (job Job) mainDoors() []Way {
	if len(job.Entries) > 0 {
		return job.Entries
	}
	return []Way{"front_door"}
}

// commonNotice has what the rule lists for a notice and no more: general nature and locations, expected first and last day, and how to get the pamphlet and the
// records free of charge.
func commonNotice(job Job) Content {
	days := WorkDays(job.leadWork())
	content := commonContent(job, commonFree)
	content.Facts = append(content.Facts,
		Fact{commonStarts.With(), []Value{spansOf(days[:1])}},
		Fact{commonEnds.With(), []Value{spansOf(days[len(days)-1:])}},
		job.recordsFact())
	return content
}

// commonSign has what the rule lists for a sign and no more: general nature and locations, the anticipated last day, and how to see the pamphlet and the
// records, or get a copy free of charge.
func commonSign(job Job) Content {
	days := WorkDays(job.leadWork())
	content := commonContent(job, commonCopies)
	content.Facts = append(content.Facts, Fact{commonEnds.With(), []Value{spansOf(days[len(days)-1:])}}, job.recordsFact())
	return content
}

func commonContent(job Job, how Text) Content {
	var facts []Fact
	for _, w := range job.leadWork() {
		facts = append(facts, Fact{w.onPaper(), w.whatIsDone()})
	}
	return Content{
		Head:   commonHead.With(),
		Facts:  facts,
		Blocks: []Block{{commonRecords.With(), said([]Text{how})}},
		Call:   job.programmeCall(),
	}
}

func (job Job) recordsFact() Fact { return Fact{commonAsk.With(), []Value{Name(job.Shared.Records)}} }

// sharedReasons say how the residents of a building with common areas are told.
func (job Job) sharedReasons() []Reason {
	if !job.tellsResidents(job.Shared.Route) || job.Shared.Route == "" || len(job.leadWork()) == 0 {
		return nil
	}
	binds := GoodPractice
	if job.renovationBinds() {
		binds = Law
	}
	told := Reason{Decision: "common_areas", Outcome: outEachHome.With(Number(job.Shared.Homes), Day(firstDay(job.leadWork()).Plus(-1))), Because: whyEachHome.With(), Source: job.sharedSource("40 CFR 745.84(b)(2)(i) and (4)", "40 CFR 745.84(c)(2)(i)"), Binds: binds}
	if job.Shared.Route == SignsThere {
		told.Outcome, told.Because, told.Source = outSharedSigns.With(Number(job.Shared.Homes)), whySharedSigns.With(), job.sharedSource("40 CFR 745.84(b)(2)(ii)", "40 CFR 745.84(c)(2)(ii)")
	}
	if job.Dwelling == ChildOccupied {
		told.Outcome, told.Because = outFamilies.With(Number(job.Shared.Homes)), whyFamilies.With()
	}
	statement := Reason{Decision: "common_areas_statement", Outcome: outStatement.With(), Because: whyStatement.With(), Source: job.sharedSource("40 CFR 745.84(b)(3)", "40 CFR 745.84(c)(3)"), Binds: binds}
	if job.finished() {
		return []Reason{statement}
	}
	return []Reason{told, statement}
}
