package notices

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Every day of 2026 to 2030 is a business day, or a weekend, or in the table of federal holidays with its weekday. The table and its sources:
// testdata/federal-holidays.txt. New Year's Day of 2031 is a Wednesday, so none of 2030 is missing.
func TestBusinessDaysAgainstTheFederalList(t *testing.T) {
	table, err := os.ReadFile(filepath.Join("..", "testdata", "federal-holidays.txt"))
	if err != nil {
		t.Fatal(err)
	}
	listed := map[Date]string{}
	for line := range strings.Lines(string(table)) {
		cells := strings.SplitN(strings.TrimSpace(line), " ", 3)
		if day, err := ParseDate(cells[0]); err == nil {
			if listed[day] = cells[2]; day.Weekday().String() != cells[1] {
				t.Errorf("%s is a %s, and the table has %s", day, day.Weekday(), cells[1])
			}
		}
	}
	if len(listed) != 55 { // 11 a year
		t.Errorf("the table has %d days", len(listed))
	}
	for day := (Date{2026, time.January, 1}); day.Year <= 2030; day = day.Plus(1) {
		weekend := day.Weekday() == time.Saturday || day.Weekday() == time.Sunday
		if holiday := listed[day]; day.isBusinessDay() != (!weekend && holiday == "") {
			t.Errorf("%s %s is a business day: %v; the table says %q", day.Weekday(), day, day.isBusinessDay(), holiday)
		}
	}
}

// Worked by hand on a calendar.
func TestBusinessDaysBefore(t *testing.T) {
	for _, c := range []struct{ day, want string }{
		{"2027-05-13", "2027-05-10"}, // Thursday: Wednesday, Tuesday, Monday
		{"2027-05-08", "2027-05-05"}, // Saturday: Friday, Thursday, Wednesday
		{"2027-05-09", "2027-05-05"}, // Sunday: the same
		{"2026-12-28", "2026-12-22"}, // Christmas on a Friday
		{"2027-06-21", "2027-06-15"}, // Juneteenth observed on a Friday
		{"2027-07-06", "2027-06-30"}, // Independence Day observed on a Monday
		{"2027-11-29", "2027-11-23"}, // Thanksgiving on a Thursday
		{"2028-01-03", "2027-12-28"}, // New Year's Day observed in the old year
	} {
		day, _ := ParseDate(c.day)
		if got := businessDaysBefore(day, 3); got.String() != c.want {
			t.Errorf("3 business days before %s is %s, want %s", c.day, got, c.want)
		}
	}
}

// Mail leaves by the last day on which a post office is open: Memorial Day 2027 is Monday May 31, and Christmas 2027 is observed on Friday December 24.
func TestMailDay(t *testing.T) {
	for day, want := range map[Date]Date{
		{2027, 5, 28}: {2027, 5, 28}, {2027, 5, 29}: {2027, 5, 29}, {2027, 5, 30}: {2027, 5, 29}, {2027, 5, 31}: {2027, 5, 29}, {2027, 6, 1}: {2027, 6, 1},
		{2027, 12, 24}: {2027, 12, 23},
	} {
		if got := mailDay(day); got != want {
			t.Errorf("mail that is due on %s leaves on %s, want %s", day, got, want)
		}
	}
}
