package notices

// A Plan is what a job calls for: the sheets to print, the pages behind their codes, the homes to walk to, and why.
// It holds message ids and typed values, and no word of any language.
type Plan struct {
	Sheets  []Sheet // in printing order
	Pages   []Page  // each exists in every language of the programme
	Homes   []Home  // in walking order
	Reasons []Reason
	Lot     Lot // zero when no work is outside

	TakeDown []Door // whose signs are to come down now
}

// A Kind is a kind of sheet.
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

// A PageKind is the last part of a page's address: capitals, so that its code stays small.
type PageKind string

const (
	SignPage    PageKind = "SIGN"
	HomePage    PageKind = "HOME"
	WindowsPage PageKind = "WIN"
	NearPage    PageKind = "NEAR"
	PetsPage    PageKind = "PETS"
)

// A Sheet is one thing to print: one face or several, some copies, one place where they go.
type Sheet struct {
	ID        string // stable as long as the job keeps its ids: "sign-hall-front_door-vi"
	Kind      Kind
	For       []string // ids of the households or neighbours that it is for; none for a sign or a spare
	Hang      []Way    // signs only: where it hangs
	Area      Area     // signs only: what lies behind
	ReadFrom  Feet     // signs only: how far away its reader stands, in ft; 0 at the sign itself
	Faces     []Face
	Copies    int
	Due       Date // the last day on which it does its work: handed over, or hung before the crew sets up
	LateAfter Date // neighbours only: from the next day on it counts as late
}

// A Face is one side of paper in one language.
type Face struct {
	Language Language
	Beside   Language // a second language on the same side, for a receipt that both sides sign; "" otherwise
	Opens    PageKind // the page behind its code
	Content
}

// A Page is one small web page behind the codes. It says nothing that differs from family to family.
type Page struct {
	Kind PageKind
	Content
}

// A Mark is a pictogram beside the head.
type Mark string

const (
	MarkKeepOut   Mark = "keep_out"
	MarkNoEating  Mark = "no_eating_drinking_smoking"
	MarkWindow    Mark = "close_window"
	MarkPets      Mark = "pets_in"
	MarkWashHands Mark = "wash_hands"
	MarkLeaveBag  Mark = "leave_bag"
	MarkCall      Mark = "call"
	MarkFanOff    Mark = "fan_off"
)

// Content is what a face or a page says, in order.
type Content struct {
	Legend  []Message // signs only: the danger legend
	Head    Message   // the one main message
	For     Value     // whom it is for, under the head: a Name or an Address; nil on pages and signs
	Marks   []Mark
	Facts   []Fact
	Drawing Drawing
	Blocks  []Block
	Blanks  []Message // labels of lines to fill in by hand
	Call    Call
}

// A Drawing says which plan drawing stands beside the facts.
type Drawing struct {
	Of   DrawingOf
	Home string // id of the home whose facing side is marked
}

// A DrawingOf is how much a plan drawing shows.
type DrawingOf string

const (
	NoDrawing   DrawingOf = ""
	ReadersHome DrawingOf = "reader" // house numbers, and the reader's facing side
	NobodysHome DrawingOf = "nobody" // the work and its reach alone, for pages
)

// A Fact is one row of the table under the head.
type Fact struct {
	Label Value
	Cells []Value // each on its own line
}

// A Block is a few short sentences under a small heading.
type Block struct {
	Head  Message
	Lines []Message
}

// Call is whom to ring. Words to say in English go with it when the reader's language is another.
type Call struct {
	Who    Name // "" on pages
	Phone  Phone
	Speaks []Language // that somebody answers it in
	Say    Value      // the address to name on the phone, after "I speak ..."; nil on pages
}

// A Home is one row of the walk list.
type Home struct {
	ID        string // of the household or neighbour
	Kind      Kind   // what is handed over there
	Who       Value  // Name or Address
	Languages []Language
	Doors     int // flats behind one address
	Due       Date
	LateAfter Date // zero for the house itself
}
