package notices

import "slices"

// ownProgrammes are States that run their own renovation programme in place of EPA's: the list of 28 February 2012 (EPA's, read in a copy on 2026-11-26), and Oklahoma by 79 FR 1799 (self-certification
// of 10 January 2014, read in a copy). Delaware is from memory.
var ownProgrammes = []string{"AL", "DE", "GA", "IA", "KS", "MA", "MS", "NC", "OK", "OR", "RI", "UT", "WA", "WI"}

var (
	outOwnProgramme = ownText("profile.own_programme", PlaceName(""))
	whyOwnProgramme = ownText("profile.own_programme_why")
	whyStateUnknown = ownText("profile.state_unknown")
)

// ownProgramme says where a State's own renovation rule stands in place of the federal one.
func ownProgramme(job Job) []Reason {
	if !job.renovationBinds() || !slices.Contains(ownProgrammes, job.State) {
		return nil
	}
	return []Reason{{Decision: "state_programme", Outcome: outOwnProgramme.With(PlaceName(job.State)), Because: whyOwnProgramme.With(), Source: remembered("40 CFR 745 subpart Q").and(second("2026-11-26", "list of authorized States")), Binds: Law}}
}

// StateUnknown is the answer of whoever does not know the State, or works on tribal land, where no State's programme reaches.
const StateUnknown = "unknown"
