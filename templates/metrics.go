package templates

// Type sets the running text of a letter: sizes in pt, space in mm. A roomy letter has larger type, and large print has at least 18 pt for all but its small print.
type Type struct {
	Facts, Blocks float64 // pt
	BlockGap      float64 // mm above a block
	Mark          float64 // mm, side of the pictogram
	HeadGap       float64 // mm above the head and below it
	RunIn         bool    // heads and sentences run on in one paragraph

	From        float64 // mm: the line with the names, its rule and the space below
	FromText    float64 // pt: the names of reader and programme
	Call, Phone float64 // pt
	Typed       float64 // pt: the address to type
	SmallPrint  float64 // pt: sheet number and caution
}

// Type is the type of the letter.
func (l Letter) Type() Type {
	switch {
	case l.Large:
		return LargeType
	case l.Roomy:
		return RoomyType
	}
	return PlainType
}

// What css/sheet.css sets, for whoever has to know the height of a letter before it is printed. A test compares it with a browser.
var (
	PlainType = Type{Facts: 14, Blocks: 14, BlockGap: 2.6, Mark: 26, RunIn: true, From: 10.8, FromText: 11, Call: 14, Phone: 20, Typed: 11, SmallPrint: 9}
	RoomyType = Type{Facts: 16.5, Blocks: 14.5, BlockGap: 3.4, Mark: 34, HeadGap: 1.5, From: 10.8, FromText: 11, Call: 14, Phone: 20, Typed: 11, SmallPrint: 9}
	LargeType = Type{Facts: 18, Blocks: 18, BlockGap: 3.4, Mark: 26, RunIn: true, From: 13.9, FromText: 18, Call: 18, Phone: 24, Typed: 18, SmallPrint: 12}
)

const (
	TextLeading = 1.28
	SignTyped   = 12.0 // pt: the address to type on a sign

	FactsAbove  = 5.0  // mm: space and rules of the tables
	FactPadding = 1.8  // mm above and below the text of a row
	GroupColumn = 31.0 // mm
	LabelColumn = 58.0 // mm
	ColumnGap   = 4.0  // mm
	WriteInBox  = 9.0  // mm: the height of a box to write in

	// So much above all lines to fill in, and for each.
	BlanksAbove = 8.0  // mm
	BlankHeight = 17.0 // mm

	DrawnFacts       = 15.0 // pt: facts beside a plan drawing
	DrawnLabelColumn = 34.0 // mm
	DrawingColumn    = 60.0 // mm: the drawing and the gap before it
	DrawingHeight    = 35.0 // mm, without its captions
	CaptionSize      = 14.0 // pt

	FooterAbove  = 3.0 // mm
	FooterGap    = 5.0 // mm between code and text
	SmallLeading = 1.25
	FootRule     = 3.0 // mm: the rule above the small print and the space around it
)
