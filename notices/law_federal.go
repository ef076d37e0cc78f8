package notices

// sureness says how sure we are of a figure.
type Sureness string

const (
	published  Sureness = "read in the published text"
	secondary  Sureness = "read in a secondary text"
	inUse      Sureness = "common practice, no source"
	fromMemory Sureness = "from memory"
)

// A Direction is the way in which a figure gets stricter.
type direction int

const (
	larger  direction = iota // more distance, more notice
	smaller                  // less work, less time
)

// A Rule is one figure that a decision rests on, with where it stands and when we read it there.
type Rule struct {
	Name     string // as programme.yaml calls it when it asks for a stricter one
	Value    float64
	Unit     string
	stricter direction
	citation string
	ReadOn   string // YYYY-MM-DD
	sureness Sureness
	by       ruleSet
}

// rows are all figures that decisions rest on, as the federal rules or good practice have them.
func rows() []Rule {
	return []Rule{firstYearWithout, smallInside, smallOutside, sameRoomDays, aidedInside, aidedOutside, aidedPart, onePeriodLimit, fewDays, NightlyStrip, dayStarts, dayEnds, WindowReach, groundCover, lineBarrier,
		signReadFrom, pamphletEarliest, pamphletMailed, presumptionNotice, AfterWork, AfterAidedWork, fileKept, talkAhead, letterAhead, requestFirst, requestAhead, businessDays, resultTakes, windowsBefore, spareCopies}
}

// rows are those figures as they hold for the job.
func (job Job) rows() []Rule {
	all := rows()
	for i := range all {
		all[i] = job.rule(all[i])
	}
	return all
}

// A RuleSet says in whose text a row stands, and so whom it binds.
type ruleSet int

const (
	byPractice   ruleSet = iota // nobody's
	byRenovation                // 40 CFR 745
	byHousing                   // 24 CFR 35
	byBoth                      // of those two
	byPlace                     // a State's or city's
)

// IsStricter reports whether value asks for more than the rule does.
func (r Rule) IsStricter(value float64) bool {
	if r.stricter == larger {
		return value > r.Value
	}
	return value < r.Value
}

// The federal figures, and those of good practice. A change of rule is a change of one row; profile.go has the rows of stricter places.
var (
	// Target housing was built before this year.
	firstYearWithout = Rule{"first_year_without", 1978, "year", larger, "40 CFR 745.103, target housing", "2026-11-25", published, byRenovation}

	// Small jobs: up to so much disturbed paint a room inside, and outside in all; the same room within a number of days counts as one job.
	smallInside  = Rule{"small_inside", 6, "sq ft", smaller, "40 CFR 745.83, minor repair", "2026-11-25", published, byRenovation}
	smallOutside = Rule{"small_outside", 20, "sq ft", smaller, "40 CFR 745.83, minor repair", "2026-11-25", published, byRenovation}
	sameRoomDays = Rule{"same_room", 30, "days", larger, "40 CFR 745.83, minor repair", "2026-11-25", published, byRenovation}
	// The same under the housing rule, whose limits are stricter inside.
	aidedInside  = Rule{"aided_inside", 2, "sq ft", smaller, "24 CFR 35.1350(d)", "2026-11-25", published, byHousing}
	aidedOutside = Rule{"aided_outside", 20, "sq ft", smaller, "24 CFR 35.1350(d)", "2026-11-25", published, byHousing}
	aidedPart    = Rule{"aided_part", 10, "percent", smaller, "24 CFR 35.1350(d)", "2026-11-25", published, byHousing}

	// A household may stay through inside work of at most one such period, in daytime, or of at most so few calendar days with a nightly clean so far out.
	onePeriodLimit = Rule{"one_period", 8, "hours", smaller, "24 CFR 35.1345(a)(2)(iii)", "2026-11-25", published, byHousing}
	fewDays        = Rule{"few_days", 5, "days", smaller, "24 CFR 35.1345(a)(2)(iv)", "2026-11-25", published, byHousing}
	NightlyStrip   = Rule{"nightly_strip", 10, "ft", larger, "24 CFR 35.1345(a)(2)(iv)", "2026-11-25", published, byHousing}
	// What counts as daytime: the rule says daylight hours and gives no clock.
	dayStarts = Rule{"day_starts", 6, "o'clock", larger, "", "2026-11-25", inUse, byPractice}
	dayEnds   = Rule{"day_ends", 20, "o'clock", smaller, "", "2026-11-25", inUse, byPractice}

	// Openings this near to outside work are kept shut; the text reads on distance and does not say whose they are.
	WindowReach = Rule{"window_reach", 20, "ft", larger, "40 CFR 745.85(a)(2)(ii)(A)", "2026-11-25", published, byRenovation}
	// Ground below outside work is covered so far out.
	groundCover = Rule{"ground_cover", 10, "ft", larger, "40 CFR 745.85(a)(2)(ii)(C)", "2026-11-25", published, byRenovation}
	// Work this near to the line wants a vertical barrier.
	lineBarrier = Rule{"line_barrier", 10, "ft", larger, "40 CFR 745.85(a)(2)(ii)(D)", "2026-11-25", published, byRenovation}
	// A sign outside can be read so far from the edge of the work.
	signReadFrom = Rule{"sign_read_from", 20, "ft", larger, "24 CFR 35.1345(b)(2)", "2026-11-25", published, byHousing}

	// The official pamphlet has an earliest day before the work, and a latest day when it is mailed.
	pamphletEarliest = Rule{"pamphlet_earliest", 60, "days", smaller, "40 CFR 745.84(a)", "2026-11-25", published, byRenovation}
	pamphletMailed   = Rule{"pamphlet_mailed", 7, "days", larger, "40 CFR 745.84(a)(1)(ii)", "2026-11-25", published, byRenovation}

	// A family needs time to plan its nights and to move things.
	talkAhead   = Rule{"talk_ahead", 14, "days", larger, "", "2026-11-25", inUse, byPractice}
	letterAhead = Rule{"letter_ahead", 7, "days", larger, "", "2026-11-25", inUse, byPractice}
	// A neighbour is told late enough to remember and early enough to ask; with fewer business days left it is late.
	requestFirst = Rule{"request_first", 7, "days", larger, "", "2026-11-25", inUse, byPractice}
	requestAhead = Rule{"request_ahead", 5, "days", larger, "", "2026-11-25", inUse, byPractice}
	businessDays = Rule{"business_days", 3, "business days", larger, "", "2026-11-25", inUse, byPractice}

	// A laboratory's result comes some business days after the last cleaning.
	resultTakes = Rule{"result_takes", 2, "business days", larger, "", "2026-11-26", inUse, byPractice}
	// Windows shut before the crew starts to set up.
	windowsBefore = Rule{"windows_before", 30, "minutes", larger, "", "2026-11-25", inUse, byPractice}
	// Spare requests and flyers for a home that nobody listed.
	spareCopies = Rule{"spares", 2, "copies", larger, "", "2026-11-25", inUse, byPractice}
)

// Settable are the figures that a programme may make stricter for itself.
var Settable = []Rule{WindowReach, groundCover, lineBarrier, letterAhead, requestAhead, businessDays, windowsBefore, spareCopies}

// Sources of what is said or done without a figure.
var (
	stayOutSource     = read("2026-11-25", "24 CFR 35.1345(a)(1)")
	relocationSource  = read("2026-11-25", "24 CFR 35.1345(a)(2)")
	entrySource       = read("2026-11-25", "24 CFR 35.1345(a)(2)(ii)")
	languageSource    = read("2026-11-25", "40 CFR 745.85(a)(1)", "24 CFR 35.1345(b)(2)")
	renovationSource  = read("2026-11-26", "40 CFR 745.82(a)")
	testSource        = read("2026-11-26", "40 CFR 745.82(a)(1)-(3)")
	aidedTestSource   = read("2026-11-25", "24 CFR 35.110, paint testing").and(read("2026-11-26", "24 CFR 35.115(a)(4)"))
	emergencySource   = read("2026-11-26", "40 CFR 745.82(b)", "24 CFR 35.115(a)(9)")
	aidedSource       = read("2026-11-26", "24 CFR 35.115").and(read("2026-11-25", "24 CFR 35.1345"))
	pamphletSource    = read("2026-11-25", "40 CFR 745.84(a)")
	noNeighbourSource = Source{{"good practice; no federal duty found in 40 CFR 745 subpart E", "2026-11-26", published}}
)

// An Era is how many homes of an age were found to have lead paint somewhere.
type era struct {
	before  int // built before this year
	built   Period
	percent Percent
}

// A Period is a run of years in words.
type Period string

// eras are EPA's published figures from HUD's survey of 1998 to 2000 (Jacobs and others, 2002), read in public summaries of it on 2026-11-25. They are
// about homes in general and say nothing of one house.
var eras = []era{{1940, "before 1940", 87}, {1960, "from 1940 to 1959", 69}, {1978, "from 1960 to 1977", 24}}

// presumptionNotice: within a number of calendar days after the paint was found or presumed to be lead paint, each home has the notice of that, where the housing rule binds.
var presumptionNotice = Rule{"presumption_notice", 15, "days", smaller, "24 CFR 35.125(a)", "2026-11-26", secondary, byHousing}

// poisonControl is the national number in the United States: from memory; check it before you rely on it.
const poisonControl Phone = "18002221222"
