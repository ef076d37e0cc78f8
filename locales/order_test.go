package locales

import (
	"slices"
	"testing"
	"time"

	"golang.org/x/text/unicode/bidi"
)

// TestArabicOrder puts Arabic dates and hours through the Unicode Bidirectional Algorithm (UAX #9, as golang.org/x/text has it), in a paragraph from
// right to left. Each number must run from left to right in one piece, and all else from right to left: then the eye meets the parts in the order in
// which they are said, and no mark of direction is needed.
func TestArabicOrder(t *testing.T) {
	s := speak(t, "ar", "a: A")
	for _, c := range []struct {
		text    string
		numbers []string
	}{
		{s.Day(2027, time.May, 8), []string{"8", "2027"}},
		{s.ShortDay(2027, time.May, 8), []string{"8"}},
		{s.Time(14, 5), []string{"2:05"}},
		{s.number(1234.5), []string{"1,234.5"}},
		// A phone number after an Arabic letter comes apart, and would read 0142-555-612. So values in a sentence are isolated, in bdi elements.
		{"هاتف 612-555-0142", []string{"612", "555", "0142"}},
	} {
		if got := leftToRight(t, c.text); !slices.Equal(got, c.numbers) {
			t.Errorf("of %q %q run from left to right, want %q", c.text, got, c.numbers)
		}
	}
}

// leftToRight lists the runs of a line that run from left to right, in logical order.
func leftToRight(t *testing.T, text string) []string {
	var paragraph bidi.Paragraph
	if _, err := paragraph.SetString(text, bidi.DefaultDirection(bidi.RightToLeft)); err != nil {
		t.Fatal(err)
	}
	order, err := paragraph.Order()
	if err != nil {
		t.Fatal(err)
	}
	var runs []string
	for i := range order.NumRuns() {
		if run := order.Run(i); run.Direction() == bidi.LeftToRight {
			runs = append(runs, run.String())
		}
	}
	return runs
}
