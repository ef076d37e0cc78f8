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

// pageCall rings the programme: a page names nobody.
func (job Job) pageCall() Call { return Call{Phone: job.Programme.Phone} }

// outingFacts are the public dates of the outside work: days, hours, rain day, a row each.
func (job Job) outingFacts() []Fact {
	var facts []Fact
	for _, o := range job.outings() {
		facts = append(facts,
			Fact{factDay.With(), []Value{spansOf(o.Days)}},
			Fact{factShutFrom.With(), []Value{Time(o.Shut)}},
			Fact{factUntil.With(), []Value{factUntilNote.With()}},
			Fact{factPlannedEnd.With(), []Value{Time(o.PlanEnd)}})
		if !o.RainDay.IsZero() {
			facts = append(facts, Fact{factRain.With(), []Value{spansOf([]Date{o.RainDay})}})
		}
		facts = append(facts, Fact{factWork.With(), []Value{o.Words}})
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
