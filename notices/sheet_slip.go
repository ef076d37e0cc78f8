package notices

var (
	slipHead = text("slip.head")
	slipRest = text("slip.rest")
	slipCall = text("slip.call")
	slipOld  = text("slip.old_day")
)

// morePaper is how many slips there are beyond one for each home.
const morePaper = 2

// slips are for the morning when nobody can print: one sheet with a face in every language, to fill in by hand. They lie ready as long as any work is open.
func slips(job Job) []Sheet {
	if len(job.OpenWork()) == 0 {
		return nil
	}
	return []Sheet{{
		ID:     slipID,
		Kind:   DatesChangedSlip,
		Faces:  facesOf(job.faceLanguages(job.Programme.Languages), job.slipOpens(), slipContent(job)),
		Copies: job.homesTold() + morePaper,
		Due:    firstDay(job.OpenWork()),
	}}
}

// homesTold counts the households, and each home behind a neighbour's address.
func (job Job) homesTold() int {
	homes := len(job.householdsToTell())
	for _, n := range job.neighboursToTell() {
		homes += n.Homes
	}
	return homes
}

// slipOpens is the page with the dates; work inside alone has none.
func (job Job) slipOpens() PageKind {
	if job.hasOutsideWork() {
		return pageWindows
	}
	return pageHome
}

func slipContent(job Job) Content {
	until := factUntilNote
	if !job.hasOutsideWork() {
		until = letterUntilTold
	}
	return Content{
		Head:   slipHead.With(),
		Facts:  []Fact{{factUntil.With(), []Value{until.With()}}},
		Blocks: []Block{{Lines: said([]Text{slipRest, slipCall})}},
		Blanks: said([]Text{slipOld, factNewDay, factShutFrom}),
		Call:   job.programmeCall(),
	}
}

var factNewDay = text("fact.new_day")

// A WriteIn is a box in a cell, to write in by hand.
type WriteIn struct{}

func (WriteIn) value()         {}
func (WriteIn) String() string { return "____" }

// newDay is the last row of an outside paper's table: room for another day.
func newDay() Fact { return Fact{factNewDay.With(), []Value{WriteIn{}}} }
