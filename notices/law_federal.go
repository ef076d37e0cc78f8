package notices

// Sureness says how sure we are of a figure.
type Sureness string

const (
	Read     Sureness = "read in the published text"
	Second   Sureness = "read in a secondary text"
	Practice Sureness = "common practice, no source"
	Memory   Sureness = "from memory"
)

// A Direction is the way in which a figure gets stricter.
type Direction int

const (
	Larger  Direction = iota // more distance, more notice
	Smaller                  // less work, less time
)

// A Rule is one figure that a decision rests on, with where it stands and when we read it there.
type Rule struct {
	Name     string // as programme.yaml calls it when it asks for a stricter one
	Value    float64
	Unit     string
	Stricter Direction
	Citation string
	ReadOn   string // YYYY-MM-DD
	Sureness Sureness
	By       RuleSet
}

// Rows are all figures that decisions rest on, as the federal rules or good practice have them.
func Rows() []Rule {
	return []Rule{FirstYearWithout, SmallInside, SmallOutside, SameRoom, AidedInside, AidedOutside, AidedPart, OnePeriod, FewDays, NightlyStrip, DayStarts, DayEnds, WindowReach, GroundCover, LineBarrier,
		SignReadFrom, PamphletEarliest, PamphletMailed, PresumptionNotice, AfterWork, AfterAidedWork, FileKept, TalkAhead, LetterAhead, RequestFirst, RequestAhead, BusinessDays, ResultTakes, WindowsBefore, Spares}
}

// rows are those figures as they hold for the job.
func (job Job) rows() []Rule {
	all := Rows()
	for i := range all {
		all[i] = job.rule(all[i])
	}
	return all
}

// A RuleSet says in whose text a row stands, and so whom it binds.
type RuleSet int

const (
	ByPractice   RuleSet = iota // nobody's
	ByRenovation                // 40 CFR 745
	ByHousing                   // 24 CFR 35
	ByBoth                      // of those two
	ByPlace                     // a State's or city's
)

// IsStricter reports whether value asks for more than the rule does.
func (r Rule) IsStricter(value float64) bool {
	if r.Stricter == Larger {
		return value > r.Value
	}
	return value < r.Value
}

// The federal figures, and those of good practice. A change of rule is a change of one row; profile.go has the rows of stricter places.
var (
	// Target housing was built before this year.
	FirstYearWithout = Rule{"first_year_without", 1978, "year", Larger, "40 CFR 745.103, target housing", "2026-11-25", Read, ByRenovation}

	// Small jobs: up to so much disturbed paint a room inside, and outside in all; the same room within so many days counts as one job.
	SmallInside  = Rule{"small_inside", 6, "sq ft", Smaller, "40 CFR 745.83, minor repair", "2026-11-25", Read, ByRenovation}
	SmallOutside = Rule{"small_outside", 20, "sq ft", Smaller, "40 CFR 745.83, minor repair", "2026-11-25", Read, ByRenovation}
	SameRoom     = Rule{"same_room", 30, "days", Larger, "40 CFR 745.83, minor repair", "2026-11-25", Read, ByRenovation}
	// The same under the housing rule, whose limits are stricter inside.
	AidedInside  = Rule{"aided_inside", 2, "sq ft", Smaller, "24 CFR 35.1350(d)", "2026-11-25", Read, ByHousing}
	AidedOutside = Rule{"aided_outside", 20, "sq ft", Smaller, "24 CFR 35.1350(d)", "2026-11-25", Read, ByHousing}
	AidedPart    = Rule{"aided_part", 10, "percent", Smaller, "24 CFR 35.1350(d)", "2026-11-25", Read, ByHousing}

	// A household may stay through inside work of one period so long, in daytime, or of so many calendar days with a nightly clean so far out.
	OnePeriod    = Rule{"one_period", 8, "hours", Smaller, "24 CFR 35.1345(a)(2)(iii)", "2026-11-25", Read, ByHousing}
	FewDays      = Rule{"few_days", 5, "days", Smaller, "24 CFR 35.1345(a)(2)(iv)", "2026-11-25", Read, ByHousing}
	NightlyStrip = Rule{"nightly_strip", 10, "ft", Larger, "24 CFR 35.1345(a)(2)(iv)", "2026-11-25", Read, ByHousing}
	// What counts as daytime: the rule says daylight hours and gives no clock.
	DayStarts = Rule{"day_starts", 6, "o'clock", Larger, "", "2026-11-25", Practice, ByPractice}
	DayEnds   = Rule{"day_ends", 20, "o'clock", Smaller, "", "2026-11-25", Practice, ByPractice}

	// Openings this near to outside work are kept shut; the text reads on distance and does not say whose they are.
	WindowReach = Rule{"window_reach", 20, "ft", Larger, "40 CFR 745.85(a)(2)(ii)(A)", "2026-11-25", Read, ByRenovation}
	// Ground below outside work is covered so far out.
	GroundCover = Rule{"ground_cover", 10, "ft", Larger, "40 CFR 745.85(a)(2)(ii)(C)", "2026-11-25", Read, ByRenovation}
	// Work this near to the line wants a vertical barrier.
	LineBarrier = Rule{"line_barrier", 10, "ft", Larger, "40 CFR 745.85(a)(2)(ii)(D)", "2026-11-25", Read, ByRenovation}
	// A sign outside can be read so far from the edge of the work.
	SignReadFrom = Rule{"sign_read_from", 20, "ft", Larger, "24 CFR 35.1345(b)(2)", "2026-11-25", Read, ByHousing}

	// The official pamphlet is given at most so long before the work, or mailed at least so long before.
	PamphletEarliest = Rule{"pamphlet_earliest", 60, "days", Smaller, "40 CFR 745.84(a)", "2026-11-25", Read, ByRenovation}
	PamphletMailed   = Rule{"pamphlet_mailed", 7, "days", Larger, "40 CFR 745.84(a)(1)(ii)", "2026-11-25", Read, ByRenovation}

	// A family needs time to plan its nights and to move things.
	TalkAhead   = Rule{"talk_ahead", 14, "days", Larger, "", "2026-11-25", Practice, ByPractice}
	LetterAhead = Rule{"letter_ahead", 7, "days", Larger, "", "2026-11-25", Practice, ByPractice}
	// A neighbour is told late enough to remember and early enough to ask; with fewer business days left it is late.
	RequestFirst = Rule{"request_first", 7, "days", Larger, "", "2026-11-25", Practice, ByPractice}
	RequestAhead = Rule{"request_ahead", 5, "days", Larger, "", "2026-11-25", Practice, ByPractice}
	BusinessDays = Rule{"business_days", 3, "business days", Larger, "", "2026-11-25", Practice, ByPractice}

	// A laboratory's result comes so long after the last cleaning.
	ResultTakes = Rule{"result_takes", 2, "business days", Larger, "", "2026-11-26", Practice, ByPractice}
	// Windows shut before the crew starts to set up.
	WindowsBefore = Rule{"windows_before", 30, "minutes", Larger, "", "2026-11-25", Practice, ByPractice}
	// Spare requests and flyers for a home that nobody listed.
	Spares = Rule{"spares", 2, "copies", Larger, "", "2026-11-25", Practice, ByPractice}
)

// Settable are the figures that a programme may make stricter for itself.
var Settable = []Rule{WindowReach, GroundCover, LineBarrier, LetterAhead, RequestAhead, BusinessDays, WindowsBefore, Spares}

// Sources of what is said or done without a figure.
var (
	LegendSource      = read("2026-11-25", "29 CFR 1926.62(m)(1)(i)")
	StayOutSource     = read("2026-11-25", "24 CFR 35.1345(a)(1)")
	RelocationSource  = read("2026-11-25", "24 CFR 35.1345(a)(2)")
	EntrySource       = read("2026-11-25", "24 CFR 35.1345(a)(2)(ii)")
	LanguageSource    = read("2026-11-25", "40 CFR 745.85(a)(1)", "24 CFR 35.1345(b)(2)")
	RenovationSource  = read("2026-11-26", "40 CFR 745.82(a)")
	TestSource        = read("2026-11-26", "40 CFR 745.82(a)(1)-(3)")
	AidedTestSource   = read("2026-11-25", "24 CFR 35.110, paint testing").and(read("2026-11-26", "24 CFR 35.115(a)(4)"))
	EmergencySource   = read("2026-11-26", "40 CFR 745.82(b)", "24 CFR 35.115(a)(9)")
	AidedSource       = read("2026-11-26", "24 CFR 35.115").and(read("2026-11-25", "24 CFR 35.1345"))
	PamphletSource    = read("2026-11-25", "40 CFR 745.84(a)")
	NoNeighbourSource = Source{{"good practice; no federal duty found in 40 CFR 745 subpart E", "2026-11-26", Read}}
)

// An Era is how many homes of an age were found to have lead paint somewhere.
type Era struct {
	Before  int // built before this year
	Built   Period
	Percent Percent
}

// A Period is a run of years in words.
type Period string

// Eras are EPA's published figures from HUD's survey of 1998 to 2000 (Jacobs and others, 2002), read in public summaries of it on 2026-11-25. They are
// about homes in general and say nothing of one house.
var Eras = []Era{{1940, "before 1940", 87}, {1960, "from 1940 to 1959", 69}, {1978, "from 1960 to 1977", 24}}

// PresumptionNotice: so many calendar days after the paint was found or presumed to be lead paint, each home has the notice of that, where the housing rule binds.
var PresumptionNotice = Rule{"presumption_notice", 15, "days", Smaller, "24 CFR 35.125(a)", "2026-11-26", Second, ByHousing}

// PoisonControl is the national number in the United States: from memory; check it before you rely on it.
const PoisonControl Phone = "18002221222"
