package templates

import "html/template"

// Fitted is texts with their measured lines, at one size. Each line is set as it was measured and never wraps.
type Fitted struct {
	Size    float64 // pt
	Leading float64
	Gap     float64    // between texts, as a multiple of the size
	Edge    float64    // pt above the first line and below the last, for accents and dots that stand out of a line
	Texts   [][]string // the lines of each text
}

// A Sheet is a file to print.
type Sheet struct {
	Title    string
	Paper    string // "letter", "a4" or "11x17"
	Fonts    []Font
	WalkList *WalkList // in front of everything, when all is printed in one go
	Leaves   []Leaf
}

// A Font is a printing font beside the sheets.
type Font struct {
	Family string
	Weight int
	Path   string // relative to the sheet's file
}

// A Leaf is one sheet of paper as it leaves the printer: a front, and a back unless it is blank.
type Leaf struct {
	Bookmark string // names the sheet in the outline of a PDF; "" for none
	Faces    []Face
	PadBlank bool // a blank back keeps the next leaf on a front when everything is printed in one go
}

// Families are the fonts of a language as CSS lists them: of text and headlines, and of the legends of signs.
type Families struct{ Text, Sign template.CSS }

// A Face is one side of paper. Exactly one of Sign, Tile and Letter is set.
type Face struct {
	Lang, Dir string
	Fonts     Families
	Sign      *Sign
	Tile      *Tile
	Letter    *Letter
	Call      Call
	Code      Code
	Foot      Foot
}

// A Sign is a danger legend, the area's name, a few lines and two marks.
type Sign struct {
	Danger  Fitted // the signal word
	Hazards Fitted // the message lines of the legend, at one size
	Area    Fitted
	Orders  Fitted
	Contact Fitted // whom to ask for, who they belong to, what they speak
	Marks   []template.HTML
}

// A Tile is one sheet of a sign over several, which are joined one below the other: a piece of the legend, what stands below the legend, or both.
type Tile struct {
	Turned        bool // landscape on paper that is fed upright
	Part, Parts   int  // 1 of 3
	Opens, Closes bool // the legend's frame begins or ends here
	Compact       bool // what stands below the legend is smaller
	Danger        Lines
	Hazards       Lines
	Place         *Sign // without its legend; nil when this sheet has only a piece of the legend
}

// Lines are texts at one size that fill the height they are given, from edge to edge.
type Lines struct {
	Size, Leading float64 // pt, and as a multiple of it
	Edge          float64 // pt above the first line and below the last, for accents
	Texts         [][]string
}

// A Letter is a head, a table of facts, short blocks, and lines to fill in.
type Letter struct {
	Type   Type
	Text   Text
	Beside *Text // the same in a second language, below the first
	Blanks []Blank
}

// A Text is what a letter says in one language.
type Text struct {
	Lang, Dir string
	Fonts     Families
	From      string // the programme
	For       template.HTML
	ForLabel  string
	Head      Fitted
	Marks     []template.HTML
	Facts     []FactGroup
	Drawing   *Drawing // beside the facts; nil when there is none
	Blocks    []Block
}

// A Drawing is a plan drawing with what it shows in words.
type Drawing struct {
	SVG           template.HTML
	Width, Height float64 // mm on paper
	Captions      []Caption
}

// A Caption says what a line of the drawing means, behind a sample of it; Sample is "" when it is about the whole drawing.
type Caption struct {
	Sample template.HTML
	Text   string
}

// A FactGroup is rows of a table under one label; Label is "" when the rows speak for themselves.
type FactGroup struct {
	Label template.HTML
	Above bool // the label has a row of its own, instead of a column
	Rows  []Fact
}

// WriteIn is a cell that is a box to write in by hand.
const WriteIn template.HTML = `<span class="write-in"></span>`

// A Fact is one row: a label and cells, each on lines below each other.
type Fact struct {
	Label []template.HTML
	Cells []template.HTML
}

// A Block is a few sentences under a small head; Head is "" when there is none.
type Block struct {
	Head  string
	Lines []template.HTML
}

// A Blank is a line to fill in by hand, labelled in one language or two.
type Blank struct{ Label, Beside string }

// A Call is whom to ring, and what to say.
type Call struct {
	From         string       // the programme; "" where a letterhead names it
	Head, AskFor string       // AskFor is "" when nobody is named
	Colon        string       // between Head and Phone, with its space
	Phone        string       // as written: "(612) 555-0142"
	Dial         template.URL // the same as a tel: address, for pages
	Speaks       string       // "We speak: English and Spanish"
	Say, Words   string       // Words are English; "" when the reader's language is English
}

// A Code is a QR code of a given size in mm with the address that it opens, to type. Nothing is set when sheets carry phones only.
type Code struct {
	SVG    template.HTML
	Size   float64 // mm, quiet zone included
	Scan   string
	Comma  string // between Scan and OrType, with its space
	OrType string
	Host   string   // "leaf.example.org/"
	Digits []string // the 12 digits of the address in groups
}

// A Foot is the small print below.
type Foot struct {
	Sheet    string // "Sheet alder-14 / letter-h1"
	Side     string // "1/2"; "" when the face has one side
	Revision string // "Revised 2"; "" for a first one
	Replaces string // "Replaces the sheet of:"; "" when the sheet replaces none, or carries no date
	Caution  string
	Draft    string // "" when a fluent person has signed the translation

	ReplacesDay string
}

// Sides counts the sides of paper, blank backs included.
func (s Sheet) Sides() int {
	sides := 0
	if s.WalkList != nil {
		sides = (len(s.WalkList.Pages) + 1) / 2 * 2
	}
	for _, leaf := range s.Leaves {
		sides += len(leaf.Faces)
		if leaf.PadBlank {
			sides++
		}
	}
	return sides
}
