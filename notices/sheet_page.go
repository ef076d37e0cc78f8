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
func (job Job) outingFacts(works []Work) []Fact {
	var facts []Fact
	for _, o := range job.outings(works) {
		facts = append(facts, o.facts()...)
		facts = append(facts, Fact{factWork.With(), whatIsDone(o.tasks, o.parts)})
	}
	return facts
}

// timeFacts are the same without the work, for what is read in ten seconds.
func (job Job) timeFacts(works []Work) []Fact {
	var facts []Fact
	for _, o := range job.outings(works) {
		facts = append(facts, o.facts()...)
	}
	return facts
}

func (o outing) facts() []Fact {
	facts := []Fact{
		{factShutFrom.With(), []Value{Moment{o.from, o.shut}}},
		{factUntil.With(), []Value{factUntilNote.With()}},
	}
	if len(o.days) > 1 || o.days[0] != o.from {
		facts = append(facts, Fact{factCrew.With(), []Value{spansOf(o.days)}})
	}
	if !o.rainDay.IsZero() {
		facts = append(facts, Fact{factRain.With(), []Value{spansOf([]Date{o.rainDay})}})
	}
	return facts
}

var (
	factShutFrom  = text("fact.from")
	factUntil     = text("fact.until")
	factUntilNote = text("fact.until_note")
	factCrew      = text("fact.crew")
	factRain      = text("fact.rain_day")
	factWork      = text("fact.work")
)
