package notices

import "slices"

// A Kind is a kind of sheet. What sets kinds apart is in the table Kinds alone.
type Kind string

const (
	WorkAreaSign        Kind = "work_area_sign"
	StayOutLetter       Kind = "stay_out_letter"
	LetterReceipt       Kind = "letter_receipt"
	CloseWindowsRequest Kind = "close_windows_request"
	NeighbourNote       Kind = "neighbour_note"
	PetFlyer            Kind = "pet_flyer"
	DatesChangedSlip    Kind = "dates_changed_slip"
	CommonAreaNotice    Kind = "common_area_notice"
	CommonAreaSign      Kind = "common_area_sign"

	// These exist only once a check has been entered.
	CleanAgainLetter Kind = "clean_again_letter"
	ReturnLetter     Kind = "return_letter"
	DoneNote         Kind = "done_note"
	AfterWorkNotice  Kind = "after_work_notice"
)

// A Carriage is how a sheet leaves the coordinator's table.
type Carriage int

const (
	ToHousehold Carriage = iota // handed to a household or the owner, and explained
	ToNeighbour                 // handed over in a walk along the street
	ToResidents                 // one for each home around a common area, whose names nobody has
	AtDoor                      // hung up
)

// Traits is what sets a kind of sheet apart.
type Traits struct {
	Kind     Kind
	Title    Text // what the coordinator calls it
	Carried  Carriage
	walked   bool // it has a row in the walk list; the others go along with another sheet, or hang
	Glance   bool // read in seconds, so its type is as large as the paper allows
	GoesBack bool // goes back with whoever brought it, so no home has it
	MaySpare bool // may lie ready for a home that nobody listed
}

// Kinds has a row for each kind of sheet.
var Kinds = []Traits{
	{Kind: ReturnLetter, Title: ownText("kind.return_letter"), Carried: ToHousehold, walked: true},
	{Kind: CleanAgainLetter, Title: ownText("kind.clean_again_letter"), Carried: ToHousehold, walked: true},
	{Kind: AfterWorkNotice, Title: ownText("kind.after_work_notice"), Carried: ToHousehold, walked: true},
	{Kind: StayOutLetter, Title: ownText("kind.stay_out_letter"), Carried: ToHousehold, walked: true},
	{Kind: LetterReceipt, Title: ownText("kind.letter_receipt"), Carried: ToHousehold, GoesBack: true},
	{Kind: DoneNote, Title: ownText("kind.done_note"), Carried: ToNeighbour, walked: true, Glance: true, MaySpare: true},
	{Kind: CloseWindowsRequest, Title: ownText("kind.close_windows_request"), Carried: ToNeighbour, walked: true, Glance: true, MaySpare: true},
	{Kind: NeighbourNote, Title: ownText("kind.neighbour_note"), Carried: ToNeighbour, walked: true, Glance: true},
	{Kind: PetFlyer, Title: ownText("kind.pet_flyer"), Carried: ToNeighbour, Glance: true, MaySpare: true},
	{Kind: DatesChangedSlip, Title: ownText("kind.dates_changed_slip"), Carried: ToNeighbour, MaySpare: true},
	{Kind: CommonAreaNotice, Title: ownText("kind.common_area_notice"), Carried: ToResidents},
	{Kind: CommonAreaSign, Title: ownText("kind.common_area_sign"), Carried: AtDoor},
	{Kind: WorkAreaSign, Title: ownText("kind.work_area_sign"), Carried: AtDoor},
}

// Traits is the row of a kind. A kind that a later doorleaf dropped has a row that says nothing.
func (k Kind) Traits() Traits {
	i := slices.IndexFunc(Kinds, func(row Traits) bool { return row.Kind == k })
	if i < 0 {
		return Traits{Kind: k}
	}
	return Kinds[i]
}
