package notices

import (
	"regexp"
	"strconv"

	"example.org/doorleaf/notices/strict"
)

// wipePattern is a loading ("3.2 ug/ft2", "<4 ug/ft2") or micrograms and the area wiped ("3 ug on 1 sq ft", "<2 ug on 36 sq in", "1.1 ug on 100 cm2").
const wipePattern = `^<? *[0-9]+(\.[0-9]+)? *(ug|µg|mcg)(/ft2|/ft²|/sq ft| on [0-9]+(\.[0-9]+)? *(sq ft|ft2|sq in|in2|cm2))$`

var wipeParts = regexp.MustCompile(`^(<?) *([0-9]+(?:\.[0-9]+)?) *(?:ug|µg|mcg)(?:/ft2|/ft²|/sq ft| on ([0-9]+(?:\.[0-9]+)?) *(sq ft|ft2|sq in|in2|cm2))$`)

// squareFeet are the units of wiped area: 144 square inches and 929.0304 square centimetres make a square foot (NIST SP 811, from memory).
var squareFeet = map[string]float64{"sq ft": 1, "ft2": 1, "sq in": 1.0 / 144, "in2": 1.0 / 144, "cm2": 1 / 929.0304}

// loading is a laboratory's result in micrograms per square foot, and whether it was reported as less than that.
func (r *reader) loading(v *strict.Node) (micrograms float64, below bool) {
	parts := wipeParts.FindStringSubmatch(v.Text)
	if parts == nil {
		r.wrong(v, "is not a laboratory result", "write micrograms per square foot, such as 3.2 ug/ft2 or <4 ug/ft2, or micrograms and the area wiped, such as 3 ug on 1 sq ft")
		return 0, false
	}
	micrograms, _ = strconv.ParseFloat(parts[2], 64)
	if parts[3] != "" {
		area, _ := strconv.ParseFloat(parts[3], 64)
		if area == 0 {
			r.wrong(v, "has no area", "write the area that was wiped")
			return 0, false
		}
		micrograms /= area * squareFeet[parts[4]]
	}
	return micrograms, parts[1] == "<"
}

// Levels are the dust-lead levels in force from a day on, in micrograms per square foot. A result equal to or above its level fails (24 CFR 35.1340(d)).
type Levels struct {
	From                Date
	Floor, Sill, Trough float64
	Citation            string
	Sureness            Sureness
}

// DustLevels are the levels for clearance, latest last. From 12 January 2026 those of the 2024 rule hold.
var DustLevels = []Levels{
	{Date{2001, 3, 6}, 40, 250, 400, "66 FR 1206; 24 CFR 35.1320", Read},
	{Date{2021, 3, 8}, 10, 100, 400, "40 CFR 745.227(e)(8), rule of 2021", Second},
	{Date{2026, 1, 12}, 5, 40, 100, "40 CFR 745.227(e)(8), 89 FR 89416", Read},
}

// levelsOn are those in force on a day.
func levelsOn(day Date) Levels {
	in := DustLevels[0]
	for _, l := range DustLevels {
		if l.From.Compare(day) <= 0 {
			in = l
		}
	}
	return in
}

// level is the level for a surface. A porch floor counts as a floor.
func (l Levels) level(s Surface) float64 {
	switch s {
	case "sill":
		return l.Sill
	case "trough":
		return l.Trough
	}
	return l.Floor
}

// fails reports whether a sample stops the letter that lets people go back: at or above the level, or reported only as below something that is itself above it.
func (w Wipe) fails() bool {
	level := levelsOn(w.Lab).level(w.Surface)
	if w.Below {
		return w.Loading > level
	}
	return w.Loading >= level
}

// A WorkState says how far the check of a piece of work has come.
type WorkState int

const (
	NotChecked WorkState = iota
	CheckFailed
	CheckPassed
)

// Checked is the state of a piece of work: what the last check found. Numbers can only stop a letter: with a failing sample on or after the check it has not passed, and
// samples alone never pass it.
func (job Job) Checked(w Work) WorkState {
	last, ok := job.lastCheck(w)
	if !ok {
		return NotChecked
	}
	if last.Result != Passed {
		return CheckFailed
	}
	for _, wipe := range job.Wipes {
		if wipe.Work == w.ID && wipe.fails() && !job.cleanedSince(w, wipe, last) {
			return CheckFailed
		}
	}
	return CheckPassed
}

// lastCheck is the latest check of a piece of work; of two on one day, the one further down in the file.
func (job Job) lastCheck(w Work) (CheckResult, bool) {
	var last CheckResult
	found := false
	for _, c := range job.Checks {
		if c.Work == w.ID && (!found || c.On.Compare(last.On) >= 0) {
			last, found = c, true
		}
	}
	return last, found
}

// cleanedSince reports whether a failing sample is older news: a failed check stands between it and the last pass.
func (job Job) cleanedSince(w Work, wipe Wipe, last CheckResult) bool {
	for _, c := range job.Checks {
		if c.Work == w.ID && c.Result == Failed && c.On.Compare(wipe.Lab) >= 0 && c.On.Compare(last.On) < 0 {
			return true
		}
	}
	return false
}
