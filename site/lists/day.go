package lists

import (
	"fmt"
	"strings"

	"example.org/doorleaf/notices"
)

// Day is a day as the coordinator reads it, short enough for a table: "Sat May 8".
func Day(d notices.Date) string {
	return fmt.Sprintf("%s %s %d", d.Weekday().String()[:3], d.Month.String()[:3], d.Day)
}

// LongDay is a day with its year, for what is read years later, or is years away: "Sat May 8, 2027".
func LongDay(d notices.Date) string { return fmt.Sprintf("%s, %d", Day(d), d.Year) }

// WrittenDay is LongDay for a day of a record or a ledger, YYYY-MM-DD; "" stays "".
func WrittenDay(text string) string { return written(text, LongDay) }

// days are YYYY-MM-DD days, short.
func days(all ...string) string {
	var short []string
	for _, text := range all {
		if day := written(text, Day); day != "" {
			short = append(short, day)
		}
	}
	return strings.Join(short, ", ")
}

func written(text string, write func(notices.Date) string) string {
	day, err := notices.ParseDate(text)
	if err != nil {
		return "" // a record says "" where there is no such day
	}
	return write(day)
}
