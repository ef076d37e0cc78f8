package notices

import (
	"regexp"
	"slices"
	"time"
)

// A Programme is what stays the same from job to job: who we are, in which languages our pages exist, and on what we print.
type Programme struct {
	Name        string
	Phone       Phone      // rung by neighbours and families; stands on every sheet and page
	PhoneSpeaks []Language // languages that somebody answers it in
	Base        string     // https address under which web/ is uploaded, without a slash at the end
	Languages   []Language // every page exists in all of these, so that a page's existence tells nothing about a family
	TimeZone    string     // IANA name, such as America/Chicago
	Paper       Paper
	LargerPaper []Paper            // that a copy shop nearby prints on
	Stricter    map[string]float64 // the programme's own figures, by the name of the rule; each stricter than the rule

	ResultTakes  int  // business days from the last cleaning to the laboratory's result; 0 when nobody has said
	LargePrint   bool // everything to read in the hand is set in at least 18 pt, on as many sides as that takes
	RefuseDrafts bool // sheets in a translation that no fluent speaker has checked are refused, not printed with a mark
}

// A Job is one house, the work on it, and everyone who has to be told. It is read by Load and never changed.
type Job struct {
	Programme Programme

	File          string // path of the job file inside the programme folder, with forward slashes
	Code          string // lower-case letters, digits and hyphens; names the folder of sheets
	Address       string // "14 Alder Court, Larkfield": private to the paper, never on a page
	State         string // two capitals
	City          string // "" when not given
	Built         int    // year; 0 when unknown
	Owner         Owner  // empty when unknown
	AnyonePaid    Answer
	FederalAid    Answer // federal housing money
	CheckedBy     Check
	LandlordWorks Answer   // does the landlord, or somebody of his, do any of the work? Rent counts as pay
	Dwelling      Dwelling // empty when nobody has said
	LeadWork      Answer   // is lead the reason for the work: an order, an abatement, lead hazard control?
	Presumed      Date     // on which the paint was presumed to be lead paint, or a test report came; zero when nobody has said
	PresumedTold  Date     // on which every home had the notice of that; zero when it has not
	Booked        Answer   // is the examiner booked?
	Emergency     Answer   // work that cannot wait; unknown counts as no, which waives nothing
	Entries       []Way    // main and secondary doors of the building; none when nobody said
	OnTheDay      Contact  // at the house while the crew works
	Work          []Work
	Households    []Household
	Neighbours    []Neighbour
	Beside        []Work   // work in other job files of the same house
	BesideUnread  []string // other job files of the house that could not be read
	Asked         bool     // somebody has said which homes touch the lot, or that none does
	Openings      []Opening
	Checks        []CheckResult // what the check of each piece of work found, as it came in
	Wipes         []Wipe        // dust samples, if any
	Closed        Answer        // yes: the coordinator says that the job is over; its pages then say only how to reach the programme
	CalledOff     CalledOff     // "" while the job goes on
	AreasShared   Answer        // do several homes share an area that is worked on?
	Shared        SharedAreas   // zero when the building has no common areas or none is worked on
	Pamphlets     []Pamphlet    // the official one, as given to the owner and to an adult of each home
	Statement     Statement     // of an emergency
}

var houseNumberPattern = regexp.MustCompile(`^[0-9A-Za-z/-]*[0-9][0-9A-Za-z/-]*(?: 1/2)?`)

// HouseNumber is the number that the address starts with: "14", "14B", "12 1/2".
func (job Job) HouseNumber() string { return houseNumberPattern.FindString(job.Address) }

// Work is one task in one area: the unit that has days, hours and ways in.
type Work struct {
	ID           string
	Where        Where
	Area         Area
	Task         Task
	Parts        []Part
	HowMuch      float64  // square feet of painted surface; 0 when nobody measured
	Faces        []string // outside only: "street", "yard", "alley", or the address of a neighbour
	Side         Side     // of the house, to tell it from others; "" when nobody said
	Storey       int      // 1 is the ground floor; 0 when nobody said
	Days         []Date   // in order, each once
	CrewArrives  Clock    // set-up starts
	CleanedBy    Clock    // planned end of cleaning
	RainDay      Date     // zero when there is none
	WaysIn       []Way
	Tests        []Test
	PartShare    int    // percent of a small part, such as trim, that is disturbed; 0 when not given
	Nightly      Answer // is the area, and a strip around it, cleaned at the end of each day?
	HasWindows   Answer // has the place a window, from whose sill a clearance takes a sample?
	Lost         []LostDay
	LotLine      Feet // outside only: from the work to the property line; meaningless unless LotLineKnown
	LotLineKnown bool

	checkedWith string // id of the work whose check is about this room too; "" for work of the job file
}

// ReachesOutside reports whether dust of the work can get out to the neighbours: work outside, and new windows.
func (w Work) ReachesOutside() bool { return w.Where == Outside || w.Task == "replace_windows" }

// AllDays are those on which the work may go on, rain day last.
func (w Work) AllDays() []Date {
	days := slices.Clone(w.Days)
	if !w.RainDay.IsZero() {
		days = append(days, w.RainDay)
	}
	return days
}

// A LostDay is a work day on which the crew could not go on.
type LostDay struct {
	Day   Date
	Begun Answer // had anything been set up or disturbed by then?
}

// A CheckResult is the written word of whoever checked a piece of work: an examiner after a clearance test, else whoever looked.
type CheckResult struct {
	Work   string // id of the work
	On     Date
	By     string // name
	Role   Role
	Result Verdict

	Independent Answer // of whoever did the work
	Certified   Answer // by a State or by EPA, for what the role does
	Again       []Date // after a fail: the days on which the crew cleans again; none when not known yet
}

// A Wipe is one dust sample with its laboratory result as a loading in micrograms of lead per square foot.
type Wipe struct {
	Work     string // id of the work
	Room     Area
	Surface  Surface
	Spot     string  // where on it, as the coordinator calls it: a later sample answers the same spot only; "" when nobody said
	Parts    int     // subsamples of a composite; 0 for a single sample
	Lab      Date    // of the laboratory's report
	Loading  float64 // µg/ft²
	Below    bool    // reported as less than Loading
	Reported string  // as the laboratory wrote it: "<2 ug on 36 sq in"

	passed Date // of the pass that the report came before; Decide knows it
}

// SharedAreas are the common areas of a building with several homes (40 CFR 745.84(b)).
type SharedAreas struct {
	Route   SharedRoute
	Homes   int    // affected units
	Records string // how residents get the pamphlet and the records free of charge; a name or phone, as typed
}

// A Statement says what an emergency was, and which steps were not followed because of it (40 CFR 745.86(b)(6)). It is as typed.
type Statement struct{ What, NotFollowed string }

// ToOwner is whom a pamphlet was given to, beside the ids of households.
const ToOwner = "owner"

// A Pamphlet says to whom, when and how the official pamphlet was given.
type Pamphlet struct {
	To    string // ToOwner, or the id of a household
	Given Date
	How   Delivery
}

// A Test is what somebody found out about the paint of one piece of work.
type Test struct {
	How    TestKind
	Covers Covers
	Result TestResult
}

// An Opening is a window, door or vent of the house itself near outside work.
type Opening struct {
	ID       string
	What     OpeningKind
	Area     Area
	Storey   int    // 1 is the ground floor; 0 when nobody said
	Work     string // id of the outside work that it is near
	Gap      Feet   // along the wall, from the work to the opening; meaningless unless GapKnown
	GapKnown bool
}

// A Household lives in the house. Its name, children, pets and nights are private to its own paper.
type Household struct {
	ID                   string
	Name                 string
	Languages            []Language // none: unknown
	Others               []string   // languages that it reads and that there is no text of ours in, by their English names
	PhoneLanguage        string     // English name of the language in which it wants to be rung; may be none
	ChildUnder6          Answer
	Owns                 Answer // is it the owner's own?
	Pets                 []Pet
	Usual                Usual       // how it lives, as always
	Except               []Exception // and while a place of that is shut
	SleepsFrom, SleepsTo Clock       // as always; NoClock when nobody has said
	Leaves, Returns      Clock       // as always, on a work day; NoClock when nobody has said
	ReachAt              string      // where its letters find it while it sleeps elsewhere: a phone or an address, as typed
	Elsewhere            Elsewhere
}

// Elsewhere is what has to be agreed before a household sleeps elsewhere. It is private to the household's own paper.
type Elsewhere struct {
	Where     string
	Travel    Travel
	PaidBy    Payer
	Medicines MedicinePlan
	Pets      PetPlan
	Keys      KeyPlan
}

// A Place is one step of a way out: a door or other way, an area, or the id of a piece of work.
type Place string

// Usual is how a household comes and goes, sleeps, washes and cooks. What is zero nobody has said.
type Usual struct {
	WaysOut  [][]Place // each from its own home to the street, every door, hall and stair on the way
	Bed      Room
	Bath     Room
	Kitchen  Room
	Away     Answer // yes: out of the house while the crew works, until told
	SleepsAt string // a place elsewhere, as the household calls it; private
}

// An Exception is how a household lives while one place is shut. What it leaves out stays as usual.
type Exception struct {
	While  string // id of the work
	Agreed Answer // of another household whose place it is
	Usual
}

// A Neighbour is one address that touches the lot.
type Neighbour struct {
	ID        string
	Address   string
	Kind      NeighbourKind
	Gap       Feet // from the work to the nearest wall of that home; 0 with GapKnown false when not measured
	GapKnown  bool
	Near      Answer // asked when nobody measured: is it within 20 ft?
	Languages []Language
	Others    []string // as a household's
	Pets      []Pet
	Homes     int            // flats behind the one address, at least 1
	OpenDays  []time.Weekday // of a day-care; none when nobody has said
}

// A Contact is somebody to ask for by name.
type Contact struct {
	Name   string
	Phone  Phone
	Speaks []Language
}

// Feet is a distance in ft.
type Feet float64

// WorkDays lists the planned days of the given work, in order, each once. Rain days are not among them.
func WorkDays(works []Work) []Date {
	var days []Date
	for _, w := range works {
		days = append(days, w.Days...)
	}
	return sortedDays(days)
}
