package fit

import "testing"

// Source: the message letters of the table in ANSI Z535.2, 9.2.3, under favourable conditions, as a sign maker's catalogue reproduces it.
func TestReadingDistanceTable(t *testing.T) {
	for feet, inches := range map[float64]float64{10: 0.40, 15: 0.60, 20: 0.80, 40: 1.60} {
		if got := ReadingDistance(inches * 25.4); got != feet {
			t.Errorf("capitals of %g in: %g ft, want %g ft", inches, got, feet)
		}
		if got := ReadingDistance(inches*25.4 - 0.01); got != feet-1 {
			t.Errorf("capitals a little under %g in: %g ft, want %g ft", inches, got, feet-1)
		}
	}
}

// The known difference: the table asks for 0.24 in at 5 ft, where the rule of distance / 300 in the same clause allows 6 ft.
func TestReadingDistanceNear(t *testing.T) {
	if got := ReadingDistance(0.24 * 25.4); got != 6 {
		t.Errorf("%g ft, want 6 ft", got)
	}
}
