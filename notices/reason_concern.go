package notices

// A Concern is where a decision stands in a short plan.
type Concern int

const (
	InDetail    Concern = iota // only with all the reasons
	WhichRules                 // which rules bind the job
	AtHome                     // what comes of it for one home
	ToMind                     // what is easily forgotten
	OnceChecked                // the same of a piece of work, once something was found there
)

// concerns has the decisions that a short plan tells.
var concerns = map[string]Concern{
	"renovation_rule": WhichRules, "state_programme": WhichRules, "housing_rule": WhichRules, "place_rules": WhichRules,
	"household_stays": AtHome, "comes_home": AtHome, "neighbour_windows": AtHome,
	"begin_after": ToMind, "sleeps_by_day": ToMind, "other_way_home": ToMind, "long_span": ToMind, "day_care": ToMind, "language_without_text": ToMind, "language_unknown": ToMind,
	"tests": ToMind, "beside": ToMind, "emergency": ToMind, "emergency_statement": ToMind, "called_off": ToMind, "common_areas": ToMind, "common_areas_unknown": ToMind,
	"presumption_notice": ToMind, "neighbours_unknown": ToMind, "outcome": OnceChecked, "pass_warning": ToMind, "check": ToMind, "after_work": ToMind, "after_work_shared": ToMind,
}

var (
	ruleRenovation = ownText("rules.renovation")
	ruleHousing    = ownText("rules.housing")
	rulePlace      = ownText("rules.place", PlaceName(""))
)

// RuleName is the set of rules that a decision of WhichRules is about; false where only its own sentence can say it, such as rules that nobody has checked.
func (r Reason) RuleName() (name Message, has bool) {
	switch r.Outcome.ID {
	case outRenovation.ID, outNoRenovation.ID:
		return ruleRenovation.With(), true
	case outAided.ID, outNotAided.ID:
		return ruleHousing.With(), true
	case outProfile.ID, outRepair.ID:
		return rulePlace.With(r.Outcome.Values...), true
	}
	return Message{}, false
}

// Concern is where the decision stands in a short plan.
func (r Reason) Concern() Concern { return concerns[r.Decision] }
