package fit

import "math"

// Conditions are how well a sign is seen.
type Conditions int

const (
	Good Conditions = iota // daylight, nothing in the way
	Poor                   // dusk, rain, a dirty sleeve
)

const mmPerInch = 25.4

// Points are mm in pt.
func Points(mm float64) float64 { return mm * 72 / mmPerInch }

// Millimetres are pt in mm.
func Millimetres(pt float64) float64 { return pt * mmPerInch / 72 }

// MessageHeight is the height in mm that the capitals of a message need to be read from a number of feet.
//
// Source: ANSI Z535.2, 9.2.3, as a sign maker's catalogue reproduces it: distance / 300 in good conditions (0.40 in at 10 ft, 0.80 in at
// 20 ft), distance / 150 in poor ones. Its table asks for more where people stand near in good conditions (0.24 in at 5 ft), a little more than
// distance / 150 in poor ones (0.83 in at 10 ft, 1.68 in at 20 ft, 3.36 in at 40 ft), and for 0.16 in at the least. Between two rows of the
// table we go straight from one to the other.
func MessageHeight(feet float64, c Conditions) (mm float64) {
	const floor = 0.16
	if c == Poor {
		return mmPerInch * max(floor, feet*12/150, 0.084*feet)
	}
	return mmPerInch * max(floor, feet*12/300, min(0.24+0.032*(feet-5), 0.40))
}

// signalHeight is the height in mm that the signal word of a sign needs to be read from a number of feet: distance / 150, and half as much again as
// the message. Source: ANSI Z535.2, 9.2.3, and a catalogue of the edition of 2011 for the second.
func signalHeight(feet float64) (mm float64) {
	return max(feet*12/150*mmPerInch, 1.5*MessageHeight(feet, Good))
}

// ReadingDistance is the distance in whole feet, rounded down, from which a sign can be read whose message and signal word have capitals of the
// given heights in mm. In poor conditions only the message counts: it then needs the height that the signal word has anyway.
func ReadingDistance(messageMM, signalMM float64, c Conditions) (feet float64) {
	reads := func(feet float64) bool {
		return messageMM+rounding >= MessageHeight(feet, c) && (c == Poor || signalMM+rounding >= signalHeight(feet))
	}
	for reads(feet + 1) {
		feet++
	}
	return feet
}

// SizeOf is the smallest type size in pt, a multiple of 0.25, that is read from as far as capitals of the height in mm.
func (f *Font) SizeOf(capitalsMM float64) float64 {
	return math.Ceil((capitalsMM/f.CapitalsMM(1)-rounding)/Step) * Step
}
