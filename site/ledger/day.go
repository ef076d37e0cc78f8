package ledger

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/doorleaf/notices"
)

// Layouts of days as spreadsheets rewrite them when they open and save a list: by the region of the computer, or as somebody set the cells. Go reads a layout's month and day with a
// zero before them and without, and names of months in capitals and small letters. Gnumeric makes 2027/05/03 of 2027-05-03
// (testdata/SOURCES.md); the others are common practice, no source.
var (
	yearFirst  = []string{"2006-1-2", "2006/1/2", "2006.1.2"}
	monthNamed = []string{"January 2, 2006", "Jan 2, 2006", "January 2 2006", "Jan 2 2006", "2 January 2006", "2 Jan 2006", "2-January-2006", "2-Jan-2006",
		"2 January 06", "2 Jan 06", "2-Jan-06", "2-January-06"}
	monthFirst = []string{"1/2/2006", "1-2-2006", "1.2.2006", "1/2/06", "1-2-06", "1.2.06"}
	dayFirst   = []string{"2/1/2006", "2-1-2006", "2.1.2006", "2/1/06", "2-1-06", "2.1.06"}
)

// parseDay reads a day as notices.ParseDate does, and as spreadsheets rewrite it. It refuses a day that would be another one where people write the day before the month.
func parseDay(text string) (notices.Date, error) {
	text = strings.TrimSpace(text)
	if day, ok := dayIn(text, slices.Concat(yearFirst, monthNamed)); ok {
		return day, nil
	}
	american, isAmerican := dayIn(text, monthFirst)
	european, isEuropean := dayIn(text, dayFirst)
	switch {
	case isAmerican && isEuropean && american != european:
		return notices.Date{}, mistake{fmt.Sprintf("%q could be %s or %s", text, spoken(american), spoken(european)), fmt.Sprintf("write %s or %s", american, european)}
	case isAmerican:
		return american, nil
	case isEuropean:
		return european, nil
	}
	return notices.Date{}, mistake{fmt.Sprintf("%q is not a day of the calendar", text), "write YYYY-MM-DD"}
}

func spoken(d notices.Date) string { return fmt.Sprintf("%s %d", d.Month, d.Day) }

// dayIn reads a day in the first of the layouts that fits. Years of two digits are of this century; Go takes them for the last one from 69 on.
func dayIn(text string, layouts []string) (notices.Date, bool) {
	for _, layout := range layouts {
		t, err := time.Parse(layout, text)
		if err != nil {
			continue
		}
		if !strings.Contains(layout, "2006") && t.Year() < 2000 {
			t = t.AddDate(100, 0, 0)
		}
		return notices.Date{Year: t.Year(), Month: t.Month(), Day: t.Day()}, true
	}
	return notices.Date{}, false
}
