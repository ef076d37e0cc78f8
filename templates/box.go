package templates

// A Box is the room that a layout gives to measured text. The type takes the largest size that fits.
type Box struct {
	Width, Height float64 // mm
	Leading       float64 // line height as a multiple of the type size
	Gap           float64 // between two texts in the same box, as a multiple of the type size
	Min, Max      float64 // pt
}

// The boxes of the layouts. Each is also the size of its element in css/sheet.css: whoever moves one moves both.
var (
	DangerBox  = Box{Width: 166, Height: 27, Leading: 1.12, Min: 40, Max: 80}
	HazardsBox = Box{Width: 170, Height: 107, Leading: 1.08, Gap: 0.22, Min: 20, Max: 60}
	AreaBox    = Box{Width: 132, Height: 20, Leading: 1.15, Min: 18, Max: 54}
	OrdersBox  = Box{Width: 114, Height: 36, Leading: 1.22, Gap: 0.2, Min: 14, Max: 22}
	ContactBox = Box{Width: 114, Height: 20, Leading: 1.25, Min: 11, Max: 14}
	HeadBox    = Box{Width: 149, Height: 26, Leading: 1.15, Min: 20, Max: 33}
	WideBox    = Box{Width: 181, Height: 26, Leading: 1.15, Min: 20, Max: 33} // a head without a mark beside it
	RoomyBox   = Box{Width: 141, Height: 40, Leading: 1.12, Min: 22, Max: 38}
)

// Code sizes in mm, quiet zone included. A module is never under 1 mm, so a longer address makes a larger code.
const (
	SignCodeSize   = 60.0
	LetterCodeSize = 38.0
)
