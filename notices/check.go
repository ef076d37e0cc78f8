package notices

import "slices"

// checks compare keys of a job with each other, after all have been read. What could not be read is zero and has been reported, so each
// check passes over it. Add a rule as a small function and a row here.
var checks = []func(*reader, *Job){
	checkCode,
	checkIDs,
	checkHours,
	checkHoursExist,
	checkRainDays,
	checkFacesOutsideOnly,
	checkFacesKnown,
	checkDaysAtHome,
	checkEveryWorkDay,
	checkWaysOut,
	checkReach,
	checkRoomsWorkedOn,
	checkDoorsWorkedOn,
	checkAddressesOnce,
	checkOpenings,
	checkLotLines,
	checkGaps,
	checkResults,
	checkCleanAgain,
	checkWipes,
	checkClosed,
}

// daysOf are the days on which a piece of work may go on, rain day last.
func daysOf(w Work) []Date {
	if w.RainDay.IsZero() {
		return w.Days
	}
	return append(slices.Clone(w.Days), w.RainDay)
}

// workOn is the work that may go on at a day.
func workOn(job *Job, day Date) []Work {
	var on []Work
	for _, w := range job.Work {
		if slices.Contains(daysOf(w), day) {
			on = append(on, w)
		}
	}
	return on
}

// dayWritten is a day with its weekday, which is how people check a calendar.
func dayWritten(d Date) string { return d.Weekday().String()[:3] + " " + d.String() }
