package notices

import "strings"

// The closed lists of the job file. Every entry of an area, way, room, task, part or pet has a word in every language, under the
// message id "area.hallway", "way.front_door" and so on; a coordinator cannot invent one, because nobody could translate it.
type (
	Language  string // BCP 47 tag
	Area      string
	Side      string
	Way       string
	Room      string
	Task      string
	Part      string
	Pet       string
	Where     string
	Answer    string
	Owner     string
	Dwelling  string
	CalledOff string
	Check     string
	Paper     string

	Delivery      string
	Verdict       string
	Role          string
	Surface       string
	SharedRoute   string
	TestKind      string
	Covers        string
	TestResult    string
	OpeningKind   string
	NeighbourKind string
	Travel        string
	Payer         string
	MedicinePlan  string
	PetPlan       string
	KeyPlan       string
)

// Languages are those that doorleaf has texts for, with the English name that a job file may use instead of the tag.
var Languages = []struct {
	Tag  Language
	Name string
}{
	{"ar", "Arabic"},
	{"en", "English"},
	{"es", "Spanish"},
	{"ru", "Russian"},
	{"vi", "Vietnamese"},
	{"zh-Hans", "Chinese"}, // in simplified characters
}

// LanguageNamed finds a language by its tag, its tag without the script ("zh"), or its English name, in small letters or capitals.
func LanguageNamed(text string) (Language, bool) {
	for _, l := range Languages {
		for _, name := range []string{string(l.Tag), l.Tag.withoutScript(), l.Name} {
			if strings.EqualFold(text, name) {
				return l.Tag, true
			}
		}
	}
	return "", false
}

// small is the tag in small letters, as the id of a sheet has it, which is the name of a file.
func (l Language) small() string { return strings.ToLower(string(l)) }

func (l Language) withoutScript() string {
	language, _, _ := strings.Cut(string(l), "-")
	return language
}

// English is the language behind every other on paper, and the one that the crew speaks on the phone.
const English Language = "en"

const (
	Inside  Where = "inside"
	Outside Where = "outside"
)

const (
	Yes     Answer = "yes"
	No      Answer = "no"
	Unknown Answer = "unknown"
	NotSure Answer = "not_sure" // of a neighbour's distance
)

const (
	LivesHere  Owner = "lives_here"
	RentsItOut Owner = "rents_it_out"

	LivesHereAndRentsOut Owner = "lives_here_and_rents_out" // one of several homes is the owner's
)

// What the house is. Two kinds are exempt unless a child under 6 lives there (40 CFR 745.103).
const (
	OrdinaryHome   Dwelling = "ordinary"
	ElderlyHousing Dwelling = "elderly_or_disabled"
	NoBedroom      Dwelling = "no_bedroom"
	ChildOccupied  Dwelling = "day_care" // or a school of young children: a child-occupied facility
)

const (
	BeforeItBegan CalledOff = "before_it_began"
	AfterItBegan  CalledOff = "after_it_began"
)

const (
	ClearanceTest Check = "clearance_test"
	CleaningCheck Check = "cleaning_check"
	CrewLook      Check = "crew_look"
	NotDecided    Check = "not_decided"
)

const (
	Letter Paper = "letter"
	A4     Paper = "a4"

	Tabloid Paper = "11x17" // at a copy shop
)

// Areas are the places that a sign can name.
var Areas = []Area{
	"attic", "back_bedroom", "back_porch", "basement", "bathroom", "bedroom", "back_of_house", "dining_room", "downstairs_bathroom",
	"front_bedroom", "front_of_house", "front_porch", "garage", "hallway", "kitchen", "laundry_room", "living_room", "shed",
	"side_of_house", "stairway", "upstairs_bathroom", "upstairs_bedroom",
}

// Sides of a house, by the compass.
var Sides = []Side{"north", "east", "south", "west"}

// Ways are the doors and other ways by which somebody can walk into an area or out of the house.
var Ways = []Way{
	"back_door", "basement_door", "bathroom_door", "bedroom_door", "dining_room_door", "driveway", "front_door", "front_steps", "garage_door", "gate",
	"hall_door", "kitchen_door", "living_room_door", "porch_door", "room_door", "side_door", "stairs", "yard",
}

// A Need is what nobody can do without for a day.
type Need string

const (
	NeedBed      Need = "bed"
	NeedBathroom Need = "bathroom"
	NeedKitchen  Need = "kitchen"
)

// Rooms are what a household can reach on a work day, each with the need it serves and the area it lies in ("" when any).
var Rooms = []struct {
	Name  Room
	Meets Need
	Area  Area
}{
	{"bed", NeedBed, ""},
	{"bedroom", NeedBed, "bedroom"},
	{"front_bedroom", NeedBed, "front_bedroom"},
	{"back_bedroom", NeedBed, "back_bedroom"},
	{"upstairs_bedroom", NeedBed, "upstairs_bedroom"},
	{"bathroom", NeedBathroom, "bathroom"},
	{"upstairs_bathroom", NeedBathroom, "upstairs_bathroom"},
	{"downstairs_bathroom", NeedBathroom, "downstairs_bathroom"},
	{"kitchen", NeedKitchen, "kitchen"},
}

// area is where a room lies; empty when it may be anywhere.
func (r Room) area() Area {
	for _, room := range Rooms {
		if room.Name == r {
			return room.Area
		}
	}
	return ""
}

// Tasks are what the crew does to the paint.
var Tasks = []Task{
	"scrape_and_paint", "sand", "repair", "replace_windows", "replace_doors", "take_out", "drill_and_cut",
}

// Parts are the painted parts that the work disturbs.
var Parts = []Part{
	"ceiling", "cupboards", "doors", "floor", "gutters", "porch_floor", "railings", "siding", "stairs", "trim", "walls", "windows",
}

// Pets as a family would call them; hens and outdoor cats live outside and need a call.
var Pets = []Pet{"bird", "cat", "dog", "hens", "other_pet", "outdoor_cat", "rabbit"}

// How the official pamphlet was given.
const (
	Signed    Delivery = "signed"
	Mailed    Delivery = "mailed"
	Attempted Delivery = "attempted"
	Refused   Delivery = "refused"
)

// smallParts have so little surface that the housing rule counts a share of them as well: window sills, baseboards and trim.
var smallParts = []Part{"trim", "windows"}

// Who checks that it is clean: an examiner who is licensed or certified for clearance, a certified renovator with the cleaning cards, or somebody of the crew.
const (
	Examiner  Role = "examiner"
	Renovator Role = "renovator"
	Crew      Role = "crew"
)

const (
	Passed Verdict = "passed"
	Failed Verdict = "failed"
)

// Surfaces that dust is wiped from.
var Surfaces = []Surface{"floor", "sill", "trough", "porch_floor", blank}

// blank is a wipe that touched nothing. It shows whether the sampling itself brought lead, and is never a floor.
const blank Surface = "blank"

// How the residents of a building with common areas are told (40 CFR 745.84(b)(2)).
const (
	NoticeToEach SharedRoute = "notice_to_each_home"
	SignsThere   SharedRoute = "signs_in_the_building"
)

// Kinds of test, and whether one counts before the rule: an inspector's or risk assessor's report, a recognised laboratory's analysis of chips, and a
// recognised kit, each in the hands of a certified renovator or inspector, do; chips that somebody else took, a kit in other hands and a swab from a shop do not (40 CFR 745.82(a)).
var TestKinds = []struct {
	Name   TestKind
	Counts bool
}{
	{"certified_inspector", true},
	{"laboratory_certified_sampler", true},
	{"laboratory_other_sampler", false},
	{"kit_by_certified_renovator", true},
	{"kit_by_somebody_else", false},
	{"shop_swab", false},
}

const (
	AllSurfaces  Covers = "all_surfaces"
	SomeSurfaces Covers = "some_surfaces"
)

const (
	NoLead    TestResult = "no_lead"
	LeadFound TestResult = "lead"
	NotClear  TestResult = "not_clear"
)

// OpeningKinds of the house itself.
var OpeningKinds = []OpeningKind{"window", "door", "vent", "window_air_conditioner"}

const (
	OneHome NeighbourKind = "home"
	DayCare NeighbourKind = "day_care"
)

// What is agreed with a household that sleeps elsewhere: how it gets there, who pays, and what happens to medicines, pets and keys.
var (
	Travels       = []Travel{"own_car", "we_drive_you", "bus", "taxi"}
	Payers        = []Payer{"programme", "owner", "household"}
	MedicinePlans = []MedicinePlan{"take_along", "we_fetch"}
	PetPlans      = []PetPlan{"no_pets", "with_you", "with_friends", "boarded"}
	KeyPlans      = []KeyPlan{"you_keep_them", "crew_has_one", "owner_has_one"}
)
