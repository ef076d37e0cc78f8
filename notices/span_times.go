package notices

import (
	"cmp"
	"slices"
)

// A Span is a run of days from First to Last, both included.
type Span struct{ First, Last Date }

// spansOf joins three or more days in a row into one span, so that a long job stays a short table.
func spansOf(days []Date) Days {
	var spans Days
	for _, d := range sortedDays(days) {
		if n := len(spans); n > 0 && spans[n-1].Last.Plus(1) == d {
			spans[n-1].Last = d
			continue
		}
		spans = append(spans, Span{d, d})
	}
	return splitPairs(spans)
}

// splitPairs shows two days in a row as two days: a range would save nothing.
func splitPairs(spans Days) Days {
	var split Days
	for _, s := range spans {
		if s.First.Plus(1) == s.Last {
			split = append(split, Span{s.First, s.First}, Span{s.Last, s.Last})
			continue
		}
		split = append(split, s)
	}
	return split
}

// An Outing is outside work as a neighbour meets it: days that share their hours and their rain day.
type outing struct {
	from          Date // the first on which anything is set up
	days          []Date
	shut, planEnd Clock
	rainDay       Date
	tasks, parts  Words
}

// outings join the outside work by hours and rain day, earliest first. Work that shares them shares a row.
func (job Job) outings(works []Work) []outing {
	var all []outing
	for _, w := range works {
		next := outing{firstDay([]Work{w}), w.Days, max(0, w.CrewArrives-Clock(job.rule(windowsBefore).Value)), w.CleanedBy, w.RainDay, Words{w.Task.Word()}, w.partWords()}
		same := slices.IndexFunc(all, next.sharesHours)
		if same < 0 {
			all = append(all, next)
			continue
		}
		if next.from.Compare(all[same].from) < 0 {
			all[same].from = next.from
		}
		all[same].days = sortedDays(append(all[same].days, next.days...))
		all[same].tasks, all[same].parts = joinWords(all[same].tasks, next.tasks), joinWords(all[same].parts, next.parts)
	}
	slices.SortStableFunc(all, func(a, b outing) int {
		return cmp.Or(a.from.Compare(b.from), cmp.Compare(a.shut, b.shut), cmp.Compare(a.planEnd, b.planEnd))
	})
	return all
}

func (o outing) sharesHours(other outing) bool {
	return o.shut == other.shut && o.planEnd == other.planEnd && o.rainDay == other.rainDay
}

func (w Work) partWords() Words {
	var words Words
	for _, p := range w.Parts {
		words = append(words, p.Word())
	}
	return words
}

// whatIsDone is the tasks, and the parts on a line of their own: in one list, as Arabic makes it, new paint and railings would both be put on.
func whatIsDone(tasks, parts Words) []Value {
	if len(parts) == 0 {
		return []Value{tasks}
	}
	return []Value{tasks, parts}
}

func (w Work) whatIsDone() []Value { return whatIsDone(Words{w.Task.Word()}, w.partWords()) }

func joinWords(a, b Words) Words {
	for _, word := range b {
		if !slices.Contains(a, word) {
			a = append(slices.Clone(a), word)
		}
	}
	return a
}

// firstDay is the first on which anything is set up or disturbed: of the planned days, or of those that were lost once begun.
func firstDay(works []Work) Date {
	days := WorkDays(works)
	for _, w := range works {
		days = append(days, w.begunDays()...)
	}
	return sortedDays(days)[0]
}
