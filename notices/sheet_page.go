package notices

// What every page has, in this order: what is going on, what you should do, what happens after, what to do when paper and page differ.
var (
	goingOnHead = text("page.going_on")
	doHead      = text("page.what_you_do")
	afterHead   = text("page.what_happens_after")
	differHead  = text("page.differ_head")
	differLine  = text("page.differ")
)

func differBlock() Block { return Block{differHead.With(), said([]Text{differLine})} }

// Call rings the programme and names nobody, as on pages.
func (p Programme) Call() Call { return Call{Phone: p.Phone, Speaks: p.PhoneSpeaks} }

func (job Job) pageCall() Call { return job.Programme.Call() }

// outingFacts are the public dates of the outside work: days, hours, rain day, a row each.
func (job Job) outingFacts() []Fact {
	var facts []Fact
	for _, o := range job.outings() {
		facts = append(facts, o.facts()...)
		facts = append(facts, Fact{factWork.With(), whatIsDone(o.Tasks, o.Parts)})
	}
	return facts
}

// timeFacts are the same without the work, for what is read in ten seconds.
func (job Job) timeFacts() []Fact {
	var facts []Fact
	for _, o := range job.outings() {
		facts = append(facts, o.facts()...)
	}
	return facts
}

func (o Outing) facts() []Fact {
	facts := []Fact{
		{factDay.With(), []Value{spansOf(o.Days)}},
		{factShutFrom.With(), []Value{Time(o.Shut)}},
		{factUntil.With(), []Value{factUntilNote.With(), Pair{factPlannedEnd.With(), Time(o.PlanEnd)}}},
	}
	if !o.RainDay.IsZero() {
		facts = append(facts, Fact{factRain.With(), []Value{spansOf([]Date{o.RainDay})}})
	}
	return facts
}

var (
	factDay        = text("fact.day")
	factShutFrom   = text("fact.from")
	factUntil      = text("fact.until")
	factUntilNote  = text("fact.until_note")
	factPlannedEnd = text("fact.planned_end")
	factRain       = text("fact.rain_day")
	factWork       = text("fact.work")
)
