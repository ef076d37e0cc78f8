package notices

import (
	"slices"
	"strings"
)

// A Profile is the rules of a State or city that are stricter than the federal ones, as rows that stand in their place.
type profile struct {
	name      string
	state     string
	city      string   // "" for the whole State
	cityToo   []string // other ways in which people write the city
	tellHome  Source   // where the duty to tell residents a number of business days before stands; empty when there is none
	rows      []Rule   // each takes the place of the row of that name when it is stricter, and gives the source when it is equal
	mustTell  Source   // where the duty to tell neighbours stands; empty when there is none
	wholeSide Source   // where the duty to keep all openings on the side of outside work shut, at any distance, stands; empty when there is none
	leadOnly  Source   // where the limit to work that is done because of lead stands; empty when the rules hold for all work on old paint
	exempt    Source   // of homes that the rules leave out: for the elderly, and without a bedroom
	frontSign bool     // a sign of 24 by 32 in at the front is asked for
}

// profiles that we hold rows for. A place that is not here prints that its rules are not checked.
var profiles = []profile{
	{
		name: "Minnesota", state: "MN",
		rows: []Rule{
			{"window_reach", 20, "ft", larger, "Minnesota Rules 4761.2650", "2026-11-25", published, byPlace},
			{"ground_cover", 10, "ft", larger, "Minnesota Rules 4761.2650", "2026-11-25", published, byPlace},
		},
		mustTell:  read("2026-11-25", "Minnesota Rules 4761.2650"),
		wholeSide: read("2026-11-25", "Minnesota Rules 4761.2650"),
		leadOnly:  read("2026-11-26", "Minnesota Rules 4761.2100 subp. 2 A"),
		exempt:    read("2026-11-26", "Minnesota Rules 4761.2100 subp. 2 C and D"),
	},
	{
		name: "San Francisco", state: "CA", city: "San Francisco",
		rows: []Rule{
			{"first_year_without", 1979, "year", larger, "San Francisco Building Code 327.1", "2026-11-25", published, byPlace},
			{"business_days", 3, "business days", larger, "San Francisco Building Code 327", "2026-11-25", secondary, byPlace},
		},
		cityToo:   []string{"SF", "S.F."},
		mustTell:  second("2026-11-25", "San Francisco Building Code 327"),
		tellHome:  second("2026-11-26", "San Francisco Building Code 327, as NCHH and SFDPH read it"),
		frontSign: true,
	},
}

// tallGroundCover is Minnesota's wider ground cover for a house of more than one storey.
var tallGroundCover = Rule{"ground_cover", 20, "ft", larger, "Minnesota Rules 4761.2650", "2026-11-25", published, byPlace}

// profiles are those that hold for the job.
func (job Job) profiles() []profile {
	return slices.DeleteFunc(slices.Clone(profiles), func(p profile) bool {
		return p.state != job.State || p.city != "" && !job.isIn(p)
	})
}

// isIn: the city is given as such, or stands in the address.
func (job Job) isIn(p profile) bool {
	return slices.ContainsFunc(append([]string{p.city}, p.cityToo...), func(name string) bool {
		return strings.EqualFold(name, job.City) || strings.Contains(strings.ToLower(job.Address)+",", ", "+strings.ToLower(name)+",") ||
			strings.Contains(strings.ToLower(job.Address)+",", ", "+strings.ToLower(name)+" ")
	})
}

// cityRulesOf is the city of a State whose rules might hold, while nobody has said which city it is.
func (job Job) cityRulesOf() (city string, might bool) {
	i := slices.IndexFunc(profiles, func(p profile) bool { return p.state == job.State && p.city != "" })
	if i < 0 || job.City != "" {
		return "", false
	}
	return profiles[i].city, true
}

// rule is the strictest row for a figure: the federal one, that of a profile, or the programme's own setting.
func (job Job) rule(federal Rule) Rule {
	strictest := federal
	for _, p := range job.profiles() {
		for _, row := range p.rows {
			if row.Name == federal.Name && (strictest.IsStricter(row.Value) || row.Value == strictest.Value) {
				strictest = row
			}
		}
	}
	return job.Programme.Rule(strictest)
}

// Rule is the programme's own setting where it is stricter. Load refuses a looser one.
func (p Programme) Rule(row Rule) Rule {
	if row.Name == resultTakes.Name && p.ResultTakes > 0 {
		row.Value = float64(p.ResultTakes)
		return row
	}
	if own, set := p.Stricter[row.Name]; set && row.IsStricter(own) {
		row.Value, row.citation, row.sureness = own, "programme.yaml, stricter; otherwise "+row.Source().String(), published
	}
	return row
}

// mustTell is where a duty to tell neighbours stands; empty when no rule that we hold asks for it here.
func (job Job) mustTell() Source { return job.duty(func(p profile) Source { return p.mustTell }) }

// wholeSide is where a duty to shut all openings on the side of outside work stands; empty when no rule that we hold asks for it here.
func (job Job) wholeSide() Source { return job.duty(func(p profile) Source { return p.wholeSide }) }

// tellHome is where a duty to tell residents some business days before stands; empty when no rule that we hold asks for it here.
func (job Job) tellHome() Source { return job.duty(func(p profile) Source { return p.tellHome }) }

func (job Job) duty(of func(profile) Source) Source {
	for _, p := range job.profiles() {
		if len(of(p)) > 0 && job.lawOf(p) == Law {
			return of(p)
		}
	}
	return nil
}
