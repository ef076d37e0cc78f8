package fit

import (
	"math"
	"testing"
)

// Source: the message letters of the table in ANSI Z535.2, 9.2.3, as a sign maker's catalogue reproduces it: feet and inches.
var published = map[Conditions]map[float64]float64{
	Good: {5: 0.24, 10: 0.40, 15: 0.60, 20: 0.80, 40: 1.60},
	Poor: {10: 0.83, 20: 1.68, 40: 3.36},
}

func TestMessageHeightTable(t *testing.T) {
	for conditions, rows := range published {
		for feet, inches := range rows {
			got := MessageHeight(feet, conditions) / 25.4
			if got < inches-1e-9 || got > inches*1.02 { // 0.83 in at 10 ft is rounded from 0.84
				t.Errorf("conditions %d, %g ft: %.3f in, want %g in", conditions, feet, got, inches)
			}
			if got := ReadingDistance(inches*25.4*1.02, 1000, conditions); got != feet {
				t.Errorf("conditions %d, capitals of %g in: %g ft, want %g ft", conditions, inches, got, feet)
			}
			if got := ReadingDistance(inches*25.4-0.01, 1000, conditions); got != feet-1 {
				t.Errorf("conditions %d, capitals a little under %g in: %g ft, want %g ft", conditions, inches, got, feet-1)
			}
		}
		if got := MessageHeight(0, conditions) / 25.4; math.Abs(got-0.16) > 1e-9 {
			t.Errorf("at the sign %g in, and the least is 0.16 in", got)
		}
	}
}

// Source: ANSI Z535.2, 9.2.3: the signal word is at least distance / 150 high; a catalogue of the edition of 2011: half as high again as the message.
func TestSignalHeight(t *testing.T) {
	for feet, inches := range map[float64]float64{10: 0.80, 20: 1.60, 40: 3.20} {
		if got := signalHeight(feet) / 25.4; math.Abs(got-inches) > 1e-9 {
			t.Errorf("%g ft: a signal word of %g in, want %g in", feet, got, inches)
		}
		if got := ReadingDistance(1000, inches*25.4-0.01, Good); got != feet-1 {
			t.Errorf("a signal word a little under %g in: %g ft, want %g ft", inches, got, feet-1)
		}
	}
	for feet := 0.0; feet < 60; feet += 0.5 {
		if signalHeight(feet) < 1.5*MessageHeight(feet, Good)-1e-9 {
			t.Errorf("%g ft: the signal word is not half as high again as the message", feet)
		}
	}
}

// The visual angle of a letter of height h seen from a distance d is a, with h = 2 d tan(a/2). An eye with 20/40 vision, which most places ask of
// drivers, needs letters of 10 minutes of arc, and one with 20/20 vision 5 (from memory; the formula is geometry). What we ask for is more, at
// every distance.
func TestHeightsAgainstVisualAngle(t *testing.T) {
	height := func(feet, minutes float64) float64 { return 2 * feet * 304.8 * math.Tan(minutes/60*math.Pi/180/2) }
	if got := height(20, 10) / 25.4; math.Abs(got-0.70) > 0.005 {
		t.Fatalf("20 ft and 10 minutes: %.3f in, want 0.70 in", got)
	}
	for feet := 1.0; feet <= 60; feet++ {
		if got := MessageHeight(feet, Good); got < height(feet, 10) || got > height(feet, 20)+0.17*25.4 {
			t.Errorf("%g ft: %.1f mm, and 10 minutes are %.1f mm", feet, got, height(feet, 10))
		}
		if got := MessageHeight(feet, Poor); got < height(feet, 20) {
			t.Errorf("%g ft in poor conditions: %.1f mm, and 20 minutes are %.1f mm", feet, got, height(feet, 20))
		}
	}
}

func TestSizeOf(t *testing.T) {
	for _, mm := range []float64{3, 20.32, 40.64} {
		size := robotoCondensed().SizeOf(mm)
		if robotoCondensed().LetterHeightMM(size) < mm-1e-6 || robotoCondensed().LetterHeightMM(size-Step) >= mm {
			t.Errorf("%g mm: %g pt", mm, size)
		}
	}
}
