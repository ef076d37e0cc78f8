package notices

import "slices"

var (
	letterHeadElsewhere = text("letter.head_elsewhere")
	letterBeAway        = text("letter.be_away")
	letterUntilTold     = text("letter.until_told")
	letterElsewhere     = text("letter.sleep_elsewhere")
	letterWhere         = text("letter.where")
	letterTravel        = text("letter.travel")
	letterPaidBy        = text("letter.paid_by")
	letterMedicineBag   = text("letter.medicines")
	letterPetsGo        = text("letter.pets_go")
	letterKeys          = text("letter.keys")
	letterRest          = text("letter.the_rest")
	letterAskUs         = text("letter.ask_us")
	letterReach         = text("letter.reach_you")
	letterTogether      = text("letter.shut_together")
	letterCallFirst     = text("letter.call_first")
)

func (job Job) letterHead(h Household) Message {
	if job.stay(h).stay == sleepElsewhere {
		return letterHeadElsewhere.With()
	}
	return letterHead.With()
}

// living tells a household how to get through the work: which way, bed, bathroom and kitchen to use while which places are shut, when to be out of the house, or where to
// sleep. It names no time to come back.
func (job Job) living(h Household) []Fact {
	var away, home []life
	leaves, elsewhere := job.leaves(h)
	for _, l := range job.lives(h) {
		switch {
		case elsewhere && l.state.from.compare(leaves) >= 0 || !l.works():
		case l.uses.Away == Yes:
			away = append(away, l)
		default:
			home = append(home, l)
		}
	}
	facts := slices.Concat(livesAtHome(home), timesAway(away))
	if elsewhere {
		facts = append(facts, job.nights(h, leaves)...)
	}
	return facts
}

// leaves is the moment from which a household sleeps elsewhere: the first at which it cannot or does not live at home, or that of the first work inside when a rule sends it out;
// false when it stays.
func (job Job) leaves(h Household) (Moment, bool) {
	if job.stay(h).stay != sleepElsewhere {
		return Moment{}, false
	}
	var from Moment
	if job.mayStay(h).byRule {
		from = job.mustGoFrom()
	}
	for _, l := range job.lives(h) {
		if !l.works() && (from.Day.IsZero() || l.from().compare(from) < 0) {
			from = l.from()
		}
	}
	return from, true
}

// mustGoFrom is when the first work inside shuts something.
func (job Job) mustGoFrom() Moment {
	for _, s := range job.shuts() {
		if s.Where == Inside {
			return s.from
		}
	}
	return Moment{}
}

func insideOf(works []Work) []Work {
	return slices.DeleteFunc(slices.Clone(works), func(w Work) bool { return w.Where != Inside })
}

// livesAtHome has a row for each way of living: while which places are shut, what to use. A row that holds for more places holds for some of them too. Where one counts on another
// place having passed, the last row says what to do when it has not.
func livesAtHome(lives []life) []Fact {
	if len(lives) == 0 {
		return nil
	}
	facts := []Fact{{Label: letterUse.With()}}
	for _, group := range alike(lives) {
		var places Places
		for _, l := range group {
			for _, place := range l.state.onPaper() {
				if !slices.ContainsFunc(places, func(known []string) bool { return slices.Equal(known, place) }) {
					places = append(places, place)
				}
			}
		}
		facts = append(facts, Fact{places, []Value{group[0].rooms()}})
	}
	if slices.ContainsFunc(lives, func(l life) bool { return len(l.relies) > 0 }) {
		facts = append(facts, Fact{letterTogether.With(), []Value{letterCallFirst.With()}})
	}
	return facts
}

// alike joins states that are lived in the same way, in the order of the first of each.
func alike(lives []life) [][]life {
	var groups [][]life
	for _, l := range lives {
		i := slices.IndexFunc(groups, func(g []life) bool { return g[0].sameRow(l) })
		if i < 0 {
			groups = append(groups, nil)
			i = len(groups) - 1
		}
		groups[i] = append(groups[i], l)
	}
	return groups
}

// rooms are the way out and the rooms to use.
func (l life) rooms() Words {
	var words Words
	for _, p := range l.route {
		words = append(words, p.Word())
	}
	for _, r := range []Room{l.uses.Bed, l.uses.Bath, l.uses.Kitchen} {
		words = append(words, r.Word())
	}
	return words
}

// Word is the message id of a step of a way out: that of a door or other way, or of an area.
func (p Place) Word() string {
	if slices.Contains(Ways, Way(p)) {
		return Way(p).Word()
	}
	return Area(p).Word()
}

// timesAway say from when to be out; it ends when the household is told.
func timesAway(lives []life) []Fact {
	if len(lives) == 0 {
		return nil
	}
	facts := []Fact{{Label: letterBeAway.With()}}
	for _, l := range lives {
		facts = append(facts, Fact{spansOf([]Date{l.state.from.Day}), []Value{
			Pair{factShutFrom.With(), Time(l.state.from.At)}, Pair{factUntil.With(), letterUntilTold.With()}}})
	}
	return facts
}

// nights say from when to sleep elsewhere and what is agreed. What is not agreed yet asks the household to call.
func (job Job) nights(h Household, from Moment) []Fact {
	e := h.Elsewhere
	facts := []Fact{{Label: letterElsewhere.With()}, {factShutFrom.With(), []Value{from}}, {factUntil.With(), []Value{letterUntilTold.With()}}}
	agreed := len(job.notAgreed(h)) == 0
	add := func(label Text, answered bool, answer Value) {
		if answered {
			facts = append(facts, Fact{label.With(), []Value{answer}})
		}
	}
	add(letterWhere, job.sleepsAt(h) != "", Name(job.sleepsAt(h)))
	add(letterTravel, e.Travel != "", Words{e.Travel.Word()})
	add(letterPaidBy, e.PaidBy != "", Words{e.PaidBy.Word()})
	add(letterMedicineBag, e.Medicines != "", Words{e.Medicines.Word()})
	add(letterPetsGo, e.Pets != "", Words{e.Pets.Word()})
	add(letterReach, h.ReachAt != "", Name(h.ReachAt))
	add(letterKeys, e.Keys != "", Words{e.Keys.Word()})
	if !agreed {
		facts = append(facts, Fact{letterRest.With(), []Value{letterAskUs.With()}})
	}
	return facts
}
