package notices

// A Plan is what a job calls for: the sheets to print, the pages behind their codes, the homes to walk to, and why.
// It holds message ids and typed values, and no word of any language.
//
// It is complete: whatever comes after Decide reads the Plan, and never the Job.
type Plan struct {
	Programme Programme
	Code      string      // of the job
	Address   string      // of the house: private to the paper
	Number    string      // of the house
	Days      []Date      // planned work days, in order
	Outings   []OutingDay // the public dates of the outside work

	Sheets  []Sheet // in printing order
	Pages   []Page  // each exists in every language of the programme
	Homes   []Home  // in walking order
	Reasons []Reason
	Steps   []Step // nearest first
	Lot     Lot    // zero when no work is outside

	Rows     []Rule   // the figures that the decisions rest on, as they hold here, each with the day on which it was read
	Beside   []string // what other job files of the house brought into it, in order
	TakeDown []Door   // whose signs are to come down now
	Open     []Keep   // what people have to be kept out of until it passes
	Proof    Proof
}

// An OutingDay is a piece of outside work as its days and hours are public.
type OutingDay struct {
	Days      []Date
	From, End Clock
	RainDay   Date
}

// A Keep is a piece of work that has not passed, by its id and its area.
type Keep struct {
	Work string
	Area Area
}

// Proof is what the job file says for the file that is kept.
type Proof struct {
	Pamphlets  []Pamphlet
	Statement  Statement // of an emergency
	Households []string  // ids
	Checks     []ProofCheck
	Samples    []ProofSample
}

// A ProofCheck is one check of one piece of work.
type ProofCheck struct {
	Work   string // id
	Area   Area
	On     Date
	By     string
	Result Verdict
}

// A ProofSample is one dust sample.
type ProofSample struct {
	Work    string // id
	Area    Area   // of the work
	Room    Area
	Surface Surface
	Lab     Date
	Loading float64 // µg/ft²
	Below   bool    // reported as less than Loading
}

// A PageKind is the last part of a page's address: capitals, so that its code stays small.
type PageKind string

const (
	pageSign    PageKind = "SIGN"
	pageHome    PageKind = "HOME"
	pageWindows PageKind = "WIN"
	pageNear    PageKind = "NEAR"
	pagePets    PageKind = "PETS"
)

// A Sheet is one thing to print: one face or several, some copies, one place where they go.
type Sheet struct {
	ID        string // stable as long as the job keeps its ids: "sign-hall-front_door-vi"
	Kind      Kind
	To        To       // whom it is for; zero for a sign or a spare
	Turns     []string // answers of the job that choose between its texts, such as "clearance_test": with the values on its faces all that it says
	Hang      []Way    // signs only: where it hangs
	Area      Area     // signs only: what lies behind
	ReadFrom  Feet     // signs only: how far away its reader stands, in ft; 0 at the sign itself
	Faces     []Face
	Copies    int
	Due       Date // the last day on which it does its work: handed over, or hung before the crew sets up
	LateAfter Date // neighbours only: from the next day on it counts as late
}

// To is whom a sheet is for.
type To struct {
	Party Party
	ID    string // of the household or neighbour; "" for a spare and for the residents of a building
	Name  string // of the household, or the address of the neighbour; "" for the owner
}

// IDs is the id as a list; empty when the sheet is for nobody of the job file.
func (t To) IDs() []string {
	if t.ID == "" {
		return nil
	}
	return []string{t.ID}
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
	MarkKeepOut  Mark = "keep_out"
	markNoEating Mark = "no_eating_drinking_smoking"
	markWindow   Mark = "close_window"
	markPets     Mark = "pets_in"
)

// Content is what a face or a page says, in order.
type Content struct {
	Legend  []Message // signs only: the danger legend
	Head    Message   // the one main message
	Place   Places    // signs only: what lies behind, in full
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
