package notices

import (
	"fmt"
	"slices"
	"strings"
)

// A Reason is one decision with its grounds.
type Reason struct {
	Decision string  // what was decided, as an id: "household_stays"
	About    string  // id of the work, household or neighbour it is about; "" for the whole job
	Outcome  Message // in the coordinator's English
	Because  Message
	Source   Source
	Binds    Binding
	Missing  []Missing
}

// A Binding says whether a decision follows from law that holds for this job.
type Binding string

const (
	Law          Binding = "law for this job"
	GoodPractice Binding = "good practice"
)

// Missing is an answer that nobody has given, by the name of its field, and what it would change.
type Missing struct {
	Field string // "built", "work[hall].cleaned_nightly"
	Would Message
}

// reasons list every decision that still matters, in the order in which a coordinator asks: does it apply, may they stay, which doors, whose windows, who and by when, and how it ends.
func reasons(job Job) []Reason {
	if job.CalledOff == BeforeItBegan {
		return calledOff(job)
	}
	all := slices.Concat([]Reason{oldPaint(job)}, tests(job), ruleSets(job), beside(job), emergency(job), calledOff(job), job.whoShares(), job.presumption())
	if !job.finished() {
		all = slices.Concat(all, stays(job), sleepers(job), otherWays(job), longSpans(job), signPlaces(job))
		if !job.windowsOver() {
			all = slices.Concat(all, outside(job), ownOpenings(job), neighbourWindows(job))
		}
		all = slices.Concat(all, unknownLanguages(job), dueDates(job), checking(job))
	}
	return slices.Concat(all, outcomes(job), notHere(job))
}

// Values that only the coordinator's English reads, where a sentence may hold them.
type (
	Year           int
	Percent        int
	Reach          Feet // the distance that a rule sets
	Day            Date
	SecondDay      Date // a second day in the same sentence
	PlaceName      string
	SheetID        string // as it stands in the foot of the sheet
	SpokenLanguage string // by its English name
	Length         Clock  // hours and minutes
	SquareFeet     float64
	Limit          float64 // what a rule allows, in square feet or days
)

func (Year) value()           {}
func (Percent) value()        {}
func (Reach) value()          {}
func (Feet) value()           {}
func (Day) value()            {}
func (SecondDay) value()      {}
func (PlaceName) value()      {}
func (SheetID) value()        {}
func (SpokenLanguage) value() {}
func (Length) value()         {}
func (SquareFeet) value()     {}
func (Limit) value()          {}
func (Period) value()         {}

func (y Year) String() string           { return fmt.Sprintf("%d", int(y)) }
func (p Percent) String() string        { return fmt.Sprintf("%d", int(p)) }
func (r Reach) String() string          { return Feet(r).String() }
func (d Day) String() string            { return longDay(Date(d)) }
func (d SecondDay) String() string      { return longDay(Date(d)) }
func (p PlaceName) String() string      { return string(p) }
func (s SheetID) String() string        { return string(s) }
func (l SpokenLanguage) String() string { return string(l) }
func (p Period) String() string         { return string(p) }
func (s SquareFeet) String() string     { return short(float64(s)) + " sq ft" }
func (l Limit) String() string          { return short(float64(l)) }

// String writes the distance without needless decimals: "14 ft", "14.5 ft".
func (f Feet) String() string { return short(float64(f)) + " ft" }

func (l Length) String() string {
	if l%60 == 0 {
		return fmt.Sprintf("%d hours", int(l)/60)
	}
	return fmt.Sprintf("%d hours %d minutes", int(l)/60, int(l)%60)
}

func short(f float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", f), "0"), ".")
}

func longDay(d Date) string {
	return fmt.Sprintf("%s, %s %d, %d", d.Weekday(), d.Month, d.Day, d.Year)
}

func fieldOf(list, id, field string) string { return fmt.Sprintf("%s[%s].%s", list, id, field) }
