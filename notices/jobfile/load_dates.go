package jobfile

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

var (
	datedPattern   = regexp.MustCompile(`^(?:([A-Za-z]+) +)?([0-9]{4}-[0-9]{2}-[0-9]{2})(?: +([A-Za-z]+))?$`)
	loosePattern   = regexp.MustCompile(`^([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})$`)
	slashedPattern = regexp.MustCompile(`^([0-9]{1,2})[-/.]([0-9]{1,2})[-/.]([0-9]{4}|[0-9]{2})$`)
)

const dateAdvice = "write year, month and day as YYYY-MM-DD, such as 2027-05-08"

func (r *reader) dates(v *strict.Node) []notices.Date {
	var days []notices.Date
	for _, item := range v.Items {
		if d := r.date(item); !d.IsZero() {
			days = append(days, d)
		}
	}
	return days
}

// date is YYYY-MM-DD, with a weekday before or after it as a check on the writer's calendar. It is zero when it was not understood.
func (r *reader) date(v *strict.Node) notices.Date {
	parts := datedPattern.FindStringSubmatch(v.Text)
	if parts == nil || parts[1] != "" && parts[3] != "" {
		r.wrong(v, "is not a date", otherDate(v.Text))
		return notices.Date{}
	}
	d, err := notices.ParseDate(parts[2])
	if err != nil {
		r.wrong(v, "is not in the calendar", monthAdvice(parts[2]))
		return notices.Date{}
	}
	if d.Year < 2000 || d.Year > 2100 {
		r.wrong(v, "is not in our time", "check the year")
		return notices.Date{}
	}
	r.weekday(v, d, parts[1]+parts[3])
	return d
}

func (r *reader) weekday(v *strict.Node, d notices.Date, written string) {
	right := d.Weekday().String()
	switch {
	case written == "" || strings.EqualFold(written, right) || strings.EqualFold(written, right[:3]):
	case isWeekday(written):
		r.wrong(v, fmt.Sprintf("does not fit together: %s is a %s", d, right), "look at the calendar again, and change the date or the weekday")
	default:
		r.wrong(v, "has a word that is not a weekday", fmt.Sprintf("write %s %s, or the date alone", right[:3], d))
	}
}

func isWeekday(word string) bool {
	for day := time.Sunday; day <= time.Saturday; day++ {
		if strings.EqualFold(word, day.String()) || strings.EqualFold(word, day.String()[:3]) {
			return true
		}
	}
	return false
}

// monthAdvice tells why a date of the right form does not exist.
func monthAdvice(text string) string {
	year, _ := strconv.Atoi(text[:4])
	month, _ := strconv.Atoi(text[5:7])
	if month < 1 || month > 12 {
		return "months are 01 to 12; " + dateAdvice
	}
	last := time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC)
	return fmt.Sprintf("%s %d has %d days", last.Month(), year, last.Day())
}

// otherDate proposes YYYY-MM-DD for dates of other forms, when only one day can be meant.
func otherDate(text string) string {
	if p := loosePattern.FindStringSubmatch(text); p != nil {
		return proposal(p[1], p[2], p[3])
	}
	p := slashedPattern.FindStringSubmatch(text)
	if p == nil {
		return dateAdvice
	}
	year := p[3]
	if len(year) == 2 {
		year = "20" + year
	}
	monthFirst, dayFirst := proposal(year, p[1], p[2]), proposal(year, p[2], p[1])
	switch {
	case monthFirst == dayFirst || dayFirst == dateAdvice:
		return monthFirst
	case monthFirst == dateAdvice:
		return dayFirst
	}
	return monthFirst + "; or, if the day came first, " + strings.TrimPrefix(dayFirst, "write ")
}

func proposal(year, month, day string) string {
	m, _ := strconv.Atoi(month)
	n, _ := strconv.Atoi(day)
	d, err := notices.ParseDate(fmt.Sprintf("%s-%02d-%02d", year, m, n))
	if err != nil {
		return dateAdvice
	}
	return "write " + d.String()
}

var (
	clockShape = regexp.MustCompile(timePattern)
	looseClock = regexp.MustCompile(`^(?i)([0-9]{1,2})(?:[:.]([0-9]{2}))? *([ap])?\.?(?:m\.?)?$`)
)

func (r *reader) clock(v *strict.Node) notices.Clock {
	if !clockShape.MatchString(v.Text) {
		r.wrong(v, "is not a time of day", otherClock(v.Text))
		return notices.NoClock
	}
	c, _ := notices.ParseClock(v.Text)
	return c
}

// otherClock proposes HH:MM for times of other forms: 8 am, 4:30pm, 9:05.
func otherClock(text string) string {
	const advice = "write hours and minutes of the 24-hour clock as HH:MM, such as 08:00 or 16:30"
	p := looseClock.FindStringSubmatch(text)
	if p == nil {
		return advice
	}
	hour, _ := strconv.Atoi(p[1])
	minute, _ := strconv.Atoi(p[2])
	half := strings.ToLower(p[3])
	if hour > 23 || minute > 59 || half != "" && (hour < 1 || hour > 12) {
		return advice
	}
	switch {
	case half == "" && 1 <= hour && hour <= 11:
		return fmt.Sprintf("write %02d:%02d for the morning or %02d:%02d for the afternoon", hour, minute, hour+12, minute)
	case half == "p":
		hour = hour%12 + 12
	case half == "a":
		hour %= 12
	}
	return fmt.Sprintf("write %02d:%02d", hour, minute)
}
