package fit

import "math"

// ReadingDistance is the distance in whole feet, rounded down, from which a line can be read whose capitals have the given height in mm:
// 300 times that height.
//
// Source: ANSI Z535.2, 9.2.3, as a sign maker's catalogue reproduces it: most letters of a message are at least distance / 300 high. Its
// table says the same of favourable conditions from 10 ft on (0.40 in; 0.80 in at 20 ft). Nearer, it asks for more (0.24 in at 5 ft, and
// never less than 0.16 in); under unfavourable conditions, for twice as much (1.68 in at 20 ft).
func ReadingDistance(capHeightMM float64) (feet float64) {
	const (
		ratio   = 300
		mmPerFt = 304.8
	)
	return math.Floor(capHeightMM*ratio/mmPerFt + rounding)
}
