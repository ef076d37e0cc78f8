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
)

func (job Job) letterHead(h Household) Message {
	if job.stay(h).stay == SleepElsewhere {
		return letterHeadElsewhere.With()
	}
	return letterHead.With()
}

// living tells a household how to get through the work: which door, bed, bathroom and kitchen to use on each day, when to be out of the house, or where
// to sleep. It names no time to come back.
func (job Job) living(h Household) []Fact {
	var away, home []DayAtHome
	leaves := job.leavesOn(h)
	for _, d := range h.inOrder() {
		switch {
		case !leaves.IsZero() && d.Day.Compare(leaves) >= 0:
		case d.Away == Yes:
			away = append(away, d)
		default:
			home = append(home, d)
		}
	}
	return slices.Concat(daysAtHome(home), job.daysAway(away), job.nights(h, leaves))
}

// leavesOn is the first day on which a household sleeps elsewhere: a day that it named, or an earlier one on which it may not stay; zero when it stays.
func (job Job) leavesOn(h Household) Date {
	if job.stay(h).stay != SleepElsewhere {
		return Date{}
	}
	_, planned := h.plansToSleep()
	if job.mayStay(h).stay != SleepElsewhere {
		return planned
	}
	must := job.mayNotStayFrom(h)
	if planned.IsZero() || must.Compare(planned) < 0 {
		return must
	}
	return planned
}

// mayNotStayFrom is the first day of inside work, or an earlier one without a way in and out, bed, bathroom and kitchen.
func (job Job) mayNotStayFrom(h Household) Date {
	inside := insideOf(job.leadWork())
	if len(inside) == 0 {
		return firstDay(job.leadWork())
	}
	from := firstDay(inside)
	if day, reached := job.firstUnreached(h); !reached && day.Compare(from) < 0 {
		return day
	}
	return from
}

func insideOf(works []Work) []Work {
	return slices.DeleteFunc(slices.Clone(works), func(w Work) bool { return w.Where != Inside })
}

// daysAtHome is a row for each way of spending a day: which door, bed, bathroom and kitchen to use.
func daysAtHome(days []DayAtHome) []Fact {
	if len(days) == 0 {
		return nil
	}
	facts := []Fact{{Label: letterUse.With()}}
	for _, group := range alike(days, DayAtHome.usesTheSame) {
		facts = append(facts, Fact{spansOf(dates(group)), []Value{group[0].rooms()}})
	}
	return facts
}

// alike joins days that are lived in the same way, in the order of the first of each.
func alike(days []DayAtHome, same func(a, b DayAtHome) bool) [][]DayAtHome {
	var groups [][]DayAtHome
	for _, d := range days {
		i := slices.IndexFunc(groups, func(g []DayAtHome) bool { return same(g[0], d) })
		if i < 0 {
			groups = append(groups, nil)
			i = len(groups) - 1
		}
		groups[i] = append(groups[i], d)
	}
	return groups
}

func (d DayAtHome) usesTheSame(other DayAtHome) bool {
	return d.UsesDoor == other.UsesDoor && slices.Equal(d.Reaches, other.Reaches)
}

func dates(days []DayAtHome) []Date {
	var all []Date
	for _, d := range days {
		all = append(all, d.Day)
	}
	return all
}

func (d DayAtHome) rooms() Words {
	var words Words
	if d.UsesDoor != "" {
		words = append(words, d.UsesDoor.Word())
	}
	for _, r := range d.Reaches {
		words = append(words, r.Word())
	}
	return words
}

// daysAway says from when to be out; it ends when the household is told.
func (job Job) daysAway(days []DayAtHome) []Fact {
	if len(days) == 0 {
		return nil
	}
	facts := []Fact{{Label: letterBeAway.With()}}
	for _, d := range days {
		facts = append(facts, Fact{spansOf([]Date{d.Day}), []Value{
			Pair{factShutFrom.With(), Time(job.arrivesOn(d.Day))}, Pair{factUntil.With(), letterUntilTold.With()}}})
	}
	return facts
}

// arrivesOn is when the first crew of a day sets up.
func (job Job) arrivesOn(day Date) Clock {
	first := NoClock
	for _, w := range job.leadWork() {
		if slices.Contains(w.Days, day) && (first == NoClock || w.CrewArrives < first) {
			first = w.CrewArrives
		}
	}
	return first
}

// nights say from when to sleep elsewhere and what is agreed. What is not agreed yet asks the household to call.
func (job Job) nights(h Household, from Date) []Fact {
	if from.IsZero() {
		return nil
	}
	e := h.Elsewhere
	facts := []Fact{{Label: letterElsewhere.With()}, {factShutFrom.With(), []Value{spansOf([]Date{from})}}, {factUntil.With(), []Value{letterUntilTold.With()}}}
	agreed := len(h.notAgreed()) == 0
	add := func(label Text, answered bool, answer Value) {
		if answered {
			facts = append(facts, Fact{label.With(), []Value{answer}})
		}
	}
	add(letterWhere, h.sleepsAt() != "", Name(h.sleepsAt()))
	add(letterTravel, e.Travel != "", Words{e.Travel.Word()})
	add(letterPaidBy, e.PaidBy != "", Words{e.PaidBy.Word()})
	add(letterMedicineBag, e.Medicines != "", Words{e.Medicines.Word()})
	add(letterPetsGo, e.Pets != "", Words{e.Pets.Word()})
	add(letterKeys, e.Keys != "", Words{e.Keys.Word()})
	if !agreed {
		facts = append(facts, Fact{letterRest.With(), []Value{letterAskUs.With()}})
	}
	return facts
}
