package ledger

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/doorleaf/notices"
)

// Outside references of this file: Go's time package, for which days there are.

func TestParseDay(t *testing.T) {
	for text, want := range map[string]string{
		"2027-05-03": "2027-05-03", " 2027-05-03 ": "2027-05-03", "2027/05/03": "2027-05-03", "2027-5-3": "2027-05-03", "2027.5.3": "2027-05-03", "2027/12/11": "2027-12-11",
		"May 3, 2027": "2027-05-03", "may 3, 2027": "2027-05-03", "MAY 3, 2027": "2027-05-03", "September 12, 2027": "2027-09-12", "Sep 12 2027": "2027-09-12",
		"3 May 2027": "2027-05-03", "03 June 2027": "2027-06-03", "3-May-27": "2027-05-03", "03-Jun-2027": "2027-06-03", "3 May 27": "2027-05-03",
		"5/13/2027": "2027-05-13", "13/5/2027": "2027-05-13", "13.5.2027": "2027-05-13", "13-05-2027": "2027-05-13", "5/13/27": "2027-05-13", "13.05.27": "2027-05-13",
		"5/5/2027": "2027-05-05", "05.05.2027": "2027-05-05", "12-12-27": "2027-12-12",
		"2/29/2028": "2028-02-29", "29.2.28": "2028-02-29", "5/13/72": "2072-05-13", "2/29/72": "2072-02-29", "5/13/99": "2099-05-13",
	} {
		if have, err := parseDay(text); err != nil || have.String() != want {
			t.Errorf("%q: have %v, %v, want %s", text, have, err, want)
		}
	}
}

func TestParseDayRefuses(t *testing.T) {
	both := "could be May 3 or March 5; write 2027-05-03 or 2027-03-05"
	none := "is not a day of the calendar; write YYYY-MM-DD"
	for text, want := range map[string]string{
		"5/3/2027": both, "05/03/2027": both, "5-3-2027": both, "5.3.2027": both, "5/3/27": both, " 05-03-27": both, "3.5.2027": "could be March 5 or May 3; write 2027-03-05 or 2027-05-03",
		"2/29/2027": none, "29.2.2027": none, "2027-02-29": none, "2027/02/29": none, "Feb 29, 2027": none, "29-Feb-27": none, "13/13/2027": none, "31.4.2027": none,
		"2027/13/05": none, "0/5/2027": none, "5/0/2027": none, "5/13": none, "3-May": none, "46510": none, "": none, "tomorrow": none, "5/13-2027": none, "5/13/207": none,
		"2027-05-03T00:00": none, "5/13/2027 0:00": none, "-5/13/2027": none, "May 2027": none, "Mayo 3, 2027": none,
	} {
		have, err := parseDay(text)
		if err == nil || err.Error() != fmt.Sprintf("%q %s", strings.TrimSpace(text), want) || !have.IsZero() && want == both {
			t.Errorf("%q: have %v, %v, want %s", text, have, err, want)
		}
	}
}

// wayToWrite says a day as a program might save it. Where both could be months, some ways leave open which is which.
type wayToWrite struct {
	format   func(year, month, day int) string
	exchange bool
}

func digits(format string, order ...int) wayToWrite {
	return wayToWrite{exchange: order[0] != 0, format: func(year, month, day int) string {
		parts := []int{year, month, day, year % 100}
		return fmt.Sprintf(format, parts[order[0]], parts[order[1]], parts[order[2]])
	}}
}

func layout(layout string) wayToWrite {
	return wayToWrite{format: func(year, month, day int) string {
		return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC).Format(layout)
	}}
}

var waysToWrite = []wayToWrite{
	digits("%04d-%02d-%02d", 0, 1, 2), digits("%d/%d/%d", 0, 1, 2), digits("%d.%02d.%d", 0, 1, 2),
	digits("%d/%d/%d", 1, 2, 0), digits("%02d/%02d/%d", 1, 2, 0), digits("%d-%d-%d", 1, 2, 0), digits("%d/%d/%02d", 1, 2, 3),
	digits("%d.%d.%d", 2, 1, 0), digits("%02d.%02d.%02d", 2, 1, 3), digits("%d/%d/%d", 2, 1, 0), digits("%02d-%02d-%02d", 2, 1, 3),
	layout("January 2, 2006"), layout("Jan 2, 2006"), layout("2 January 2006"), layout("2-Jan-06"), layout("02-Jan-2006"),
}

// TestDaysOfYears: every day of a year and every day that there is not, in every way.
func TestDaysOfYears(t *testing.T) {
	for _, year := range []int{2000, 2027, 2028, 2099} {
		for month := 1; month <= 12; month++ {
			for day := 1; day <= 31; day++ {
				for i, way := range waysToWrite {
					if err := readAsWritten(way, year, month, day); err != nil {
						t.Errorf("way %d: %v", i, err)
					}
				}
			}
		}
	}
}

func TestAnyDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		way := rapid.SampledFrom(waysToWrite).Draw(t, "way")
		if err := readAsWritten(way, rapid.IntRange(2000, 2099).Draw(t, "year"), rapid.IntRange(1, 12).Draw(t, "month"), rapid.IntRange(1, 31).Draw(t, "day")); err != nil {
			t.Fatal(err)
		}
	})
}

func readAsWritten(way wayToWrite, year, month, day int) error {
	text := way.format(year, month, day)
	want := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	exists := want.Day() == day
	have, err := parseDay(text)
	switch {
	case way.exchange && exists && day <= 12 && day != month:
		for _, part := range []string{fmt.Sprintf("%04d-%02d-%02d", year, month, day), fmt.Sprintf("%04d-%02d-%02d", year, day, month)} {
			if err == nil || !strings.Contains(err.Error(), part) {
				return fmt.Errorf("%q: have %v, %v, want a refusal with %s", text, have, err, part)
			}
		}
	case !exists && !strings.ContainsAny(text, "JFMASOND"): // a layout writes another day for one that there is not
		if err == nil {
			return fmt.Errorf("%q: have %v for no day", text, have)
		}
	case exists && (err != nil || have != notices.Date{Year: year, Month: time.Month(month), Day: day}):
		return fmt.Errorf("%q: have %v, %v", text, have, err)
	}
	return nil
}

// FuzzParseDay: what is read as a day is one, and says the same when written again.
func FuzzParseDay(f *testing.F) {
	for _, text := range []string{"2027-05-03", "5/13/2027", "13.5.27", "3-May-27", "May 3, 2027", "5/3/2027", "2/29/27", ""} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		day, err := parseDay(text)
		if err != nil {
			return
		}
		if again, err := parseDay(day.String()); err != nil || again != day {
			t.Fatalf("%q: have %v, then %v, %v", text, day, again, err)
		}
	})
}
