package notices

// A Mark says how sure we are of a figure.
type Sureness string

const (
	Read     Sureness = "read in the published text"
	Practice Sureness = "common practice, no source"
	Memory   Sureness = "from memory"
)

// A Rule is one figure that a decision rests on, with where it stands and when we read it there.
type Rule struct {
	Value    float64
	Unit     string
	Citation string
	ReadOn   string // YYYY-MM-DD
	Sureness Sureness
}

// Source is the rule as a citation to print.
func (r Rule) Source() string {
	if r.Sureness == Read {
		return r.Citation
	}
	if r.Citation == "" {
		return string(r.Sureness)
	}
	return r.Citation + " (" + string(r.Sureness) + ")"
}

// The figures used so far. A change of rule is a change of one row.
var (
	// Openings this near to outside work are kept shut; the text reads on distance and does not say whose they are.
	WindowReach = Rule{20, "ft", "40 CFR 745.85(a)(2)(ii)(A)", "2026-11-25", Read}
	// Homes built from this year on are outside the federal rules for old paint.
	FirstYearWithout = Rule{1978, "year", "40 CFR 745.103, target housing", "2026-11-25", Read}
	// The official pamphlet is given at most so long before the work.
	PamphletEarliest = Rule{60, "days", "40 CFR 745.84(a)", "2026-11-25", Read}
	// Mailed instead, it leaves at least so long before the work.
	PamphletMailed = Rule{7, "days", "40 CFR 745.84(a)(1)(ii)", "2026-11-25", Read}
	// A family needs time to move things and plan its nights.
	LetterAhead = Rule{7, "days", "", "2026-11-25", Practice}
	// A neighbour is told late enough to remember and early enough to ask.
	RequestAhead = Rule{5, "days", "", "2026-11-25", Practice}
	// Windows shut before the crew starts to set up.
	WindowsBefore = Rule{30, "minutes", "", "2026-11-25", Practice}
	// Spare requests and flyers for a home that nobody listed.
	Spares = Rule{2, "copies", "", "2026-11-25", Practice}
)

// Sources of what is said or done without a figure.
const (
	SignSource        = "40 CFR 745.85(a)(1); 24 CFR 35.1345(b)(2)"
	LegendSource      = "29 CFR 1926.62(m)(1)(i)"
	StayOutSource     = "24 CFR 35.1345(a)(1)"
	RelocationSource  = "24 CFR 35.1345(a)(2)"
	LanguageSource    = "40 CFR 745.85(a)(1); 24 CFR 35.1345(b)(2)"
	PaidSource        = "40 CFR 745.82(a)"
	NoNeighbourSource = "good practice; no federal duty found in 40 CFR 745 subpart E"
)

// PoisonControl is the national number in the United States: from memory; check it before you rely on it.
const PoisonControl Phone = "18002221222"
