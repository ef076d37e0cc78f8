package jobfile

import "example.org/doorleaf/notices"

// checks compare keys of a job with each other, after all have been read. What could not be read is zero and has been reported, so each
// check passes over it. Add a rule as a small function and a row here.
var checks = []func(*reader, *notices.Job){
	checkCode,
	checkIDs,
	checkBuilt,
	checkHours,
	checkHoursExist,
	checkRainDays,
	checkFacesOutsideOnly,
	checkFacesKnown,
	checkExceptions,
	checkWaysOut,
	checkLostDays,
	checkAddressesOnce,
	checkOpenings,
	checkLotLines,
	checkGaps,
	checkLines,
	checkResults,
	checkCleanAgain,
	checkWipes,
	checkClosed,
	checkCalledOff,
	checkHappened,
	checkPamphlets,
	checkShared,
	checkStatement,
	checkOwner,
}

// dayWritten is a day with its weekday, which is how people check a calendar.
func dayWritten(d notices.Date) string { return d.Weekday().String()[:3] + " " + d.String() }
