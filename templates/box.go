package templates

// A Box is the room that a layout gives to measured text. The type takes the largest size that fits.
type Box struct {
	Width, Height float64 // mm
	Leading       float64 // line height as a multiple of the type size
	Gap           float64 // between two texts in the same box, as a multiple of the type size
	Min, Max      float64 // pt
}

// The boxes of the layouts. The least size of orders is that of the floor for messages on a sign, and depends on the script. Each is also the size of its element in css/sheet.css: whoever moves one moves both.
var (
	DangerBox  = Box{Width: 166, Height: 22, Leading: 1, Min: 36, Max: 80}
	HazardsBox = Box{Width: 170, Height: 98, Leading: 1.08, Gap: 0.22, Min: 20, Max: 60}
	AreaBox    = Box{Width: 134, Height: 18, Leading: 1.15, Min: 18, Max: 48}
	OrdersBox  = Box{Width: 114, Height: 41, Leading: 1.15, Gap: 0.18, Max: 22}
	ContactBox = Box{Width: 114, Height: 20, Leading: 1.25, Min: 12, Max: 14}
	HeadBox    = Box{Width: 149, Height: 26, Leading: 1.15, Min: 20, Max: 33}
	WideBox    = Box{Width: 181, Height: 26, Leading: 1.15, Min: 20, Max: 33} // a head without a mark beside it
	RoomyBox   = Box{Width: 141, Height: 40, Leading: 1.12, Min: 22, Max: 38}
)

// A TilePlace is what stands below the legend of a sign over several sheets, and how high all of it is in mm.
type TilePlace struct {
	Height                float64
	Area, Orders, Contact Box
}

// TilePlaceOf is roomy, or compact, where the legend needs a part of the last sheet.
func TilePlaceOf(compact bool) TilePlace {
	if compact {
		return TilePlace{
			Height:  114,
			Area:    Box{Width: 186, Height: 26, Leading: 1.12, Min: 24, Max: 70},
			Orders:  Box{Width: 188, Height: 34, Leading: 1.15, Gap: 0.15, Max: 26},
			Contact: Box{Width: 188, Height: 19, Leading: 1.2, Min: 12, Max: 16},
		}
	}
	return TilePlace{
		Height:  180,
		Area:    Box{Width: 166, Height: 42, Leading: 1.12, Min: 24, Max: 110},
		Orders:  Box{Width: 188, Height: 64, Leading: 1.2, Gap: 0.2, Min: 20, Max: 40},
		Contact: Box{Width: 188, Height: 27, Leading: 1.22, Min: 14, Max: 20},
	}
}

// A TileField is what a sheet of a sign over several sheets shows, in mm. Sheets are cut at its lower edge and laid on the next at its upper one, so
// that the fields of all sheets together are the sign.
type TileField struct {
	Width, Height float64
	Turned        bool // the paper is fed upright and hung on its side
}

// TileFieldOf is the same on Letter and A4.
func TileFieldOf(paper string) TileField {
	if paper == "11x17" {
		return TileField{Width: 256, Height: 408}
	}
	return TileField{Width: 256, Height: 194, Turned: true}
}

// Parts of a tile in mm; css/tile.css has the same.
const (
	TileFrame     = 1.6  // line around the legend
	TileInside    = 250  // width of a line of the legend
	TilePadding   = 2.0  // above and below the lines of the legend, and of the signal word in its band
	TileBelow     = 4.0  // between the legend and what follows
	TileLeading   = 0.98 // at the least
	TileClearance = 0.05 // between the ink of two lines, as a multiple of the type size
	TileGap       = 0.16 // between two texts of the legend, at the least, as a multiple of the type size
	TileLargest   = 140  // pt
	TileMostParts = 5
)

// Code sizes in mm, quiet zone included. A module is never under 1 mm, so a longer address makes a larger code.
const (
	SignCodeSize   = 60.0
	LetterCodeSize = 38.0
)
