package templates

// A Type is how a letter is set. The sheet takes its sizes from here; a test compares the heights that are reckoned from them with a browser.
type Type struct {
	Least         float64 // pt: names, captions, labels to fill in, whom to call, the address to type
	Small         float64 // pt: the small print
	Facts, Blocks float64 // pt
	Phone         float64 // pt
	Setting       Setting
	Mark          float64 // mm, side of the pictogram
	HeadGap       float64 // mm above the head and below it
	BlockGap      float64 // mm above a block
}

// A Setting is where lines begin.
type Setting string

// From the one that is quickest to read to the one that takes the least room.
const (
	Glance        Setting = "glance"          // as the next, with a large headline and pictogram
	SentenceALine Setting = "sentence-a-line" // the head of a block, each of its sentences, and each caption
	HeadALine     Setting = "head-a-line"     // the head, the first sentence, and each caption
	RunOn         Setting = "run-on"          // the head alone, and all sentences and captions follow the first
	Tight         Setting = "run-on tight"    // as the last, with a small headline and pictogram
)

// The least type of letters, in pt. Source: clear print of the RNIB is 12 pt or more, and 14 pt is advised, as Hampshire County Council gives it
// (hants.gov.uk); large print is 18 pt, as the American Printing House for the Blind asks for (from memory).
const (
	LeastType  = 14.0
	SmallPrint = 12.0 // what stands below the rule, where nothing else saves a side of paper
	LargePrint = 18.0 // all of it
)

// TypeOf is the type with running text of a size in pt.
func TypeOf(s Setting, least, text float64) Type {
	t := Type{Least: least, Small: least, Facts: text, Blocks: text, Phone: least + 6, Setting: s, Mark: 26, BlockGap: 2.6}
	if s.SentenceALine() {
		t.Facts, t.BlockGap = text+2, 3.4
	}
	switch s {
	case Glance:
		t.Mark, t.HeadGap = 34, 1.5
	case Tight:
		t.Mark, t.BlockGap = 20, 2.2
	}
	return t
}

// SentenceALine reports whether each sentence begins a line.
func (s Setting) SentenceALine() bool { return s == Glance || s == SentenceALine }

// RunsOn reports whether heads, sentences and captions follow each other on a line.
func (s Setting) RunsOn() bool { return s == RunOn || s == Tight }

// What css/sheet.css sets, for whoever has to know the height of a letter before it is printed.
const (
	TextLeading = 1.28
	SignTyped   = 12.0 // pt: the address to type on a sign
	FromGap     = 8.0  // mm between the name of the reader and that of the programme
	BelowFrom   = 5.75 // mm: the rule below the line with the names, and the space around it

	FactsAbove         = 5.0  // mm: space and rules of the tables
	FactPadding        = 1.8  // mm above and below the text of a row
	GroupColumn        = 31.0 // mm
	LabelColumn        = 58.0 // mm
	StackedLabelColumn = 70.0 // mm, where the label of the group stands above
	ColumnGap          = 4.0  // mm
	WriteInBox         = 9.0  // mm: the height of a box to write in

	BesideAbove = 10.3 // mm: the rule above a second language, and the space around it

	BlanksAbove  = 8.0  // mm above all lines to fill in
	BlankGap     = 4.0  // mm above each
	BlankLine    = 9.0  // mm: the height of one
	BlankLabel   = 70.0 // mm: the column of the labels
	BlankLeading = 1.2

	DrawnFacts       = 15.0 // pt: facts beside a plan drawing, or less
	DrawnLabelColumn = 31.0 // mm
	DrawingWidth     = 58.0 // mm
	DrawingHeight    = 56.0 // mm, at the most
	DrawingGap       = 6.0  // mm between facts and drawing
	CaptionAbove     = 2.0  // mm
	SampleWidth      = 9.0  // mm: a sample of a line, before its caption
	SampleHeight     = 3.0  // mm
	SampleGap        = 2.0  // mm behind a sample
	CaptionGap       = 6.0  // mm behind a caption

	FooterAbove = 3.0 // mm
	FooterGap   = 5.0 // mm between code and text
	TypedAbove  = 1.0 // mm
	FootRule    = 3.0 // mm: the rule above the small print and the space around it
	FootLeading = 1.25
	FootGap     = 4.0 // mm before the number of the sheet
)

// The rooms of a small headline, and of the one in a second language on the same side.
var (
	TightBox  = Box{Width: 155, Height: 20, Leading: 1.15, Min: 20, Max: 26}
	BesideBox = Box{Width: 181, Height: 20, Leading: 1.15, Min: 16, Max: 22}
)
