package locales

import (
	"fmt"
	"regexp"
	"strconv"
	"time"
	"unicode"
	"unicode/utf8"
)

// Day is a day in full: "Saturday, May 8, 2027", "sábado, 8 de mayo de 2027". Where it stands alone, as in a cell, pass it through [Alone].
func (s *Speaker) Day(year int, month time.Month, day int) string {
	return s.locale.write(s.locale.FullDate, date(year, month, day))
}

// ShortDay is a day without the year: "Saturday, May 8", "Thứ Bảy, 8 tháng 5". Where it stands alone, as in a cell, pass it through [Alone].
func (s *Speaker) ShortDay(year int, month time.Month, day int) string {
	return s.locale.write(s.locale.DayWithoutYear, date(year, month, day))
}

// Time is a time of day on the 12-hour clock: "2:05 PM". The hour is 0 to 23.
func (s *Speaker) Time(hour, minute int) string {
	return s.locale.write(s.locale.Time, clock(hour, minute))
}

// Alone is text that stands alone, in a cell or as a headline: its first letter is a capital. CLDR asks that of Spanish dates and language names
// (contextTransforms, titlecase-firstword); where CLDR is silent they are capitals already.
func Alone(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToTitle(first)) + text[size:]
}

func date(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

func clock(hour, minute int) time.Time {
	return time.Date(1, time.January, 1, hour, minute, 0, 0, time.UTC)
}

// half is 0 before noon and 1 from noon on.
func half(t time.Time) int { return t.Hour() / 12 }

// Text in quotes stands for itself; a run of one letter is a field. In "ah:mm" one field follows another.
var patternPart = regexp.MustCompile(`'[^']+'|E+|M+|d+|y+|h+|m+|a+`)

func (l *locale) write(pattern string, t time.Time) string {
	return patternPart.ReplaceAllStringFunc(pattern, func(part string) string {
		if part[0] == '\'' {
			return part[1 : len(part)-1]
		}
		return l.field(part, t)
	})
}

// field knows the fields that gen/cldr.mjs lets through.
func (l *locale) field(name string, t time.Time) string {
	switch name {
	case "EEEE":
		return l.Weekdays[t.Weekday()]
	case "MMMM":
		return l.Months[t.Month()-1]
	case "M":
		return strconv.Itoa(int(t.Month()))
	case "d":
		return strconv.Itoa(t.Day())
	case "y":
		return strconv.Itoa(t.Year())
	case "h":
		return strconv.Itoa((t.Hour()+11)%12 + 1)
	case "mm":
		return fmt.Sprintf("%02d", t.Minute())
	case "a":
		return l.AMPM[half(t)]
	}
	panic("cldr.json: no way to write the field " + name)
}
