package notices

import (
	"time"

	"github.com/rickar/cal/v2"
	"github.com/rickar/cal/v2/us"
)

// holidays are the federal ones (5 U.S.C. 6103), on the days on which they are observed.
var holidays = func() *cal.BusinessCalendar {
	c := cal.NewBusinessCalendar()
	c.AddHoliday(us.NewYear, us.MlkDay, us.PresidentsDay, us.MemorialDay, us.Juneteenth, us.IndependenceDay, us.LaborDay, us.ColumbusDay, us.VeteransDay, us.ThanksgivingDay, us.ChristmasDay)
	return c
}()

// isBusinessDay: Monday to Friday, but for federal holidays.
func (d Date) isBusinessDay() bool {
	return holidays.IsWorkday(time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC))
}

// mailDay is the day itself or the last one before it on which a post office takes mail: not on a Sunday, and not on a federal holiday.
func mailDay(d Date) Date {
	for d.Weekday() == time.Sunday || d.Weekday() != time.Saturday && !d.isBusinessDay() {
		d = d.Plus(-1)
	}
	return d
}

// businessDaysBefore goes back from d by n business days. The result is one.
func businessDaysBefore(d Date, n int) Date {
	for n > 0 {
		d = d.Plus(-1)
		if d.isBusinessDay() {
			n--
		}
	}
	return d
}

// businessDaysAfter goes on from d by n business days.
func businessDaysAfter(d Date, n int) Date {
	for n > 0 {
		d = d.Plus(1)
		if d.isBusinessDay() {
			n--
		}
	}
	return d
}
