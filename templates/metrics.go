package templates

// Type sets the running text of a letter: sizes in pt, space in mm. A roomy letter has the larger one.
type Type struct {
	Facts, Blocks float64 // pt
	BlockGap      float64 // mm above a block
	Mark          float64 // mm, side of the pictogram
	HeadGap       float64 // mm above the head and below it
	RunIn         bool    // heads and sentences run on in one paragraph
}

// Type is the type of the letter.
func (l Letter) Type() Type {
	if l.Roomy {
		return RoomyType
	}
	return PlainType
}

// What css/sheet.css sets, for whoever has to know the height of a letter before it is printed. A test compares it with a browser.
var (
	PlainType = Type{Facts: 14, Blocks: 14, BlockGap: 2.6, Mark: 26, RunIn: true}
	RoomyType = Type{Facts: 16.5, Blocks: 14.5, BlockGap: 3.4, Mark: 34, HeadGap: 1.5}
)

const (
	TextSize    = 14.0 // pt
	TextLeading = 1.28

	FromHeight  = 10.8 // mm: the line with the programme's name, its rule and the space below
	FactsAbove  = 5.0  // mm: space and rules of the tables
	FactPadding = 1.8  // mm above and below the text of a row
	GroupColumn = 31.0 // mm
	LabelColumn = 58.0 // mm
	ColumnGap   = 4.0  // mm

	DrawnFacts       = 15.0 // pt: facts beside a plan drawing
	DrawnLabelColumn = 34.0 // mm
	DrawingColumn    = 60.0 // mm: the drawing and the gap before it
	DrawingHeight    = 35.0 // mm, without its captions

	FooterAbove  = 3.0 // mm
	FooterGap    = 5.0 // mm between code and text
	SmallPrint   = 9.0 // pt
	SmallLeading = 1.25
	TypedSize    = 11.0 // pt
	PhoneSize    = 20.0 // pt
	FootRule     = 3.0  // mm: the rule above the small print and the space around it
)
