package notices

import (
	"fmt"
	"slices"
	"time"
)

// A Date is a day of the Gregorian calendar, without a time zone. The zero Date is no day.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDate reads YYYY-MM-DD and refuses days that do not exist.
func ParseDate(text string) (Date, error) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return Date{}, fmt.Errorf("%q is not a day of the calendar; write YYYY-MM-DD", text)
	}
	return Date{t.Year(), t.Month(), t.Day()}, nil
}

func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day) }

// IsZero reports whether d is no day.
func (d Date) IsZero() bool { return d == Date{} }

// Weekday is the day of the week of d.
func (d Date) Weekday() time.Weekday { return d.utc().Weekday() }

// Plus is the day n days after d, or before it when n is negative.
func (d Date) Plus(n int) Date {
	t := d.utc().AddDate(0, 0, n)
	return Date{t.Year(), t.Month(), t.Day()}
}

// Compare orders days; its result is that of cmp.Compare.
func (d Date) Compare(other Date) int { return d.utc().Compare(other.utc()) }

func (d Date) utc() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

func sortedDays(days []Date) []Date {
	days = slices.Clone(days)
	slices.SortFunc(days, Date.Compare)
	return slices.Compact(days)
}

// A Clock is a time of day at the house, in minutes after midnight. NoClock is no time.
type Clock int

// NoClock stands where no time was given.
const NoClock Clock = -1

// ParseClock reads HH:MM on the 24-hour clock.
func ParseClock(text string) (Clock, error) {
	t, err := time.Parse("15:04", text)
	if err != nil {
		return NoClock, fmt.Errorf("%q is not a time of day; write HH:MM on the 24-hour clock, such as 08:00 or 16:30", text)
	}
	return Clock(t.Hour()*60 + t.Minute()), nil
}

func (c Clock) String() string { return fmt.Sprintf("%02d:%02d", c.Hour(), c.Minute()) }

// Hour is 0 to 23.
func (c Clock) Hour() int { return int(c) / 60 }

// Minute is 0 to 59.
func (c Clock) Minute() int { return int(c) % 60 }

// On is the moment at which clocks in the zone show c on day d. It reports false when clocks skip that time.
func (c Clock) On(d Date, zone *time.Location) (time.Time, bool) {
	t := time.Date(d.Year, d.Month, d.Day, c.Hour(), c.Minute(), 0, 0, zone)
	return t, t.Hour() == c.Hour() && t.Minute() == c.Minute()
}

// daysUntil is the number of days from d to other.
func (d Date) daysUntil(other Date) int { return int(other.utc().Sub(d.utc()).Hours() / 24) }
