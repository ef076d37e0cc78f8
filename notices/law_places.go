package notices

import (
	"slices"
	"strings"
)

// A Profile is the rules of a State or city that are stricter than the federal ones, as rows that stand in their place.
type Profile struct {
	Name      string
	State     string
	City      string   // "" for the whole State
	CityToo   []string // other ways in which people write the city
	TellHome  Source   // where the duty to tell residents so many business days before stands; empty when there is none
	Rows      []Rule   // each takes the place of the row of that name when it is stricter, and gives the source when it is equal
	MustTell  Source   // where the duty to tell neighbours stands; empty when there is none
	WholeSide Source   // where the duty to keep all openings on the side of outside work shut, at any distance, stands; empty when there is none
	LeadOnly  Source   // where the limit to work that is done because of lead stands; empty when the rules hold for all work on old paint
	Exempt    Source   // of homes that the rules leave out: for the elderly, and without a bedroom
	FrontSign bool     // a sign of 24 by 32 in at the front is asked for
}

// Profiles that we hold rows for. A place that is not here prints that its rules are not checked.
var Profiles = []Profile{
	{
		Name: "Minnesota", State: "MN",
		Rows: []Rule{
			{"window_reach", 20, "ft", Larger, "Minnesota Rules 4761.2650", "2026-11-25", Read, ByPlace},
			{"ground_cover", 10, "ft", Larger, "Minnesota Rules 4761.2650", "2026-11-25", Read, ByPlace},
		},
		MustTell:  read("2026-11-25", "Minnesota Rules 4761.2650"),
		WholeSide: read("2026-11-25", "Minnesota Rules 4761.2650"),
		LeadOnly:  read("2026-11-26", "Minnesota Rules 4761.2100 subp. 2 A"),
		Exempt:    read("2026-11-26", "Minnesota Rules 4761.2100 subp. 2 C and D"),
	},
	{
		Name: "San Francisco", State: "CA", City: "San Francisco",
		Rows: []Rule{
			{"first_year_without", 1979, "year", Larger, "San Francisco Building Code 327.1", "2026-11-25", Read, ByPlace},
			{"business_days", 3, "business days", Larger, "San Francisco Building Code 327", "2026-11-25", Second, ByPlace},
		},
		CityToo:   []string{"SF", "S.F."},
		MustTell:  second("2026-11-25", "San Francisco Building Code 327"),
		TellHome:  second("2026-11-26", "San Francisco Building Code 327, as NCHH and SFDPH read it"),
		FrontSign: true,
	},
}

// tallGroundCover is Minnesota's wider ground cover for a house of more than one storey.
var tallGroundCover = Rule{"ground_cover", 20, "ft", Larger, "Minnesota Rules 4761.2650", "2026-11-25", Read, ByPlace}

// profiles are those that hold for the job.
func (job Job) profiles() []Profile {
	return slices.DeleteFunc(slices.Clone(Profiles), func(p Profile) bool {
		return p.State != job.State || p.City != "" && !job.isIn(p)
	})
}

// isIn: the city is given as such, or stands in the address.
func (job Job) isIn(p Profile) bool {
	return slices.ContainsFunc(append([]string{p.City}, p.CityToo...), func(name string) bool {
		return strings.EqualFold(name, job.City) || strings.Contains(strings.ToLower(job.Address)+",", ", "+strings.ToLower(name)+",") ||
			strings.Contains(strings.ToLower(job.Address)+",", ", "+strings.ToLower(name)+" ")
	})
}

// cityRulesOf is the city of a State whose rules might hold, while nobody has said which city it is.
func (job Job) cityRulesOf() (city string, might bool) {
	i := slices.IndexFunc(Profiles, func(p Profile) bool { return p.State == job.State && p.City != "" })
	if i < 0 || job.City != "" {
		return "", false
	}
	return Profiles[i].City, true
}

// rule is the strictest row for a figure: the federal one, that of a profile, or the programme's own setting.
func (job Job) rule(federal Rule) Rule {
	strictest := federal
	for _, p := range job.profiles() {
		for _, row := range p.Rows {
			if row.Name == federal.Name && (strictest.IsStricter(row.Value) || row.Value == strictest.Value) {
				strictest = row
			}
		}
	}
	return job.Programme.Rule(strictest)
}

// Rule is the programme's own setting where it is stricter. Load refuses a looser one.
func (p Programme) Rule(row Rule) Rule {
	if row.Name == ResultTakes.Name && p.ResultTakes > 0 {
		row.Value = float64(p.ResultTakes)
		return row
	}
	if own, set := p.Stricter[row.Name]; set && row.IsStricter(own) {
		row.Value, row.Citation, row.Sureness = own, "programme.yaml, stricter; otherwise "+row.Source().String(), Read
	}
	return row
}

// mustTell is where a duty to tell neighbours stands; empty when no rule that we hold asks for it here.
func (job Job) mustTell() Source { return job.duty(func(p Profile) Source { return p.MustTell }) }

// wholeSide is where a duty to shut all openings on the side of outside work stands; empty when no rule that we hold asks for it here.
func (job Job) wholeSide() Source { return job.duty(func(p Profile) Source { return p.WholeSide }) }

// tellHome is where a duty to tell residents some business days before stands; empty when no rule that we hold asks for it here.
func (job Job) tellHome() Source { return job.duty(func(p Profile) Source { return p.TellHome }) }

func (job Job) duty(of func(Profile) Source) Source {
	for _, p := range job.profiles() {
		if len(of(p)) > 0 && job.lawOf(p) == Law {
			return of(p)
		}
	}
	return nil
}
