package notices

// mostDays is how long people do without a place before the plan proposes another way (common practice, no source).
const mostDays = 3

var (
	outLong = ownText("span.long", PlaceName(""), Number(0))
	whyLong = ownText("span.long_why", Day{}, SecondDay{})
)

// longSpans propose to split or move work inside that shuts a place for long. The days are for planning alone: no sheet says the last.
func longSpans(job Job) []Reason {
	var all []Reason
	for _, s := range job.shuts() {
		expected, known := job.expected(s)
		if days := s.from.Day.daysUntil(expected) + 1; s.Where == Inside && known && days > mostDays && len(job.Households) > 0 {
			all = append(all, Reason{Decision: "long_span", About: s.ID, Outcome: outLong.With(PlaceName(placeNames([]Place{Place(s.Area)})), Number(days)), Because: whyLong.With(Day(s.from.Day), SecondDay(expected)), Source: inPractice, Binds: GoodPractice})
		}
	}
	return all
}
