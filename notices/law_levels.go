package notices

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// levels are the dust-lead levels in force from a day on, in micrograms per square foot. A result equal to or above its level fails (24 CFR 35.1340(d)).
type levels struct {
	from                Date
	Floor, sill, trough float64
	citation            string
	readOn              string // YYYY-MM-DD
	sureness            Sureness
}

// DustLevels are the levels for clearance, latest last. From 12 January 2026 those of the 2024 rule hold: its figures were read in the published text,
// that day in secondary texts only.
var DustLevels = []levels{
	{Date{2001, 3, 6}, 40, 250, 400, "66 FR 1206; 24 CFR 35.1320", "2026-11-26", published},
	{Date{2021, 3, 8}, 10, 100, 400, "40 CFR 745.227(e)(8), rule of 2021", "2026-11-25", secondary},
	{Date{2026, 1, 12}, 5, 40, 100, "40 CFR 745.227(e)(8), 89 FR 89416", "2026-11-25", secondary},
}

// levelsOn are those in force on a day; before the first row, that row.
func levelsOn(day Date) levels {
	in := DustLevels[0]
	for _, l := range DustLevels {
		if l.from.Compare(day) <= 0 {
			in = l
		}
	}
	return in
}

// level is the level for a surface. A porch floor counts as a floor.
func (l levels) level(s Surface) float64 {
	switch s {
	case "sill":
		return l.sill
	case "trough":
		return l.trough
	}
	return l.Floor
}

// fails reports whether a sample that is no blank stops the letter that lets people go back: at or above the level, or reported only as below something that is itself above it.
func (w Wipe) fails() bool {
	if w.Surface == blank {
		return false
	}
	if w.Below {
		return w.Loading > w.level()
	}
	return w.Loading >= w.level()
}

// level is the one that a sample is compared with: that of the day of its report, or of the pass where that came later. A composite of n subsamples has the table value divided by half of n (24 CFR 35.1320, note 2
// of the table, as read in a summary).
func (w Wipe) level() float64 {
	return levelsOn(w.judgedOn()).level(w.Surface) / max(1, float64(w.Parts)/2)
}

// judgedOn is the later of report and pass: that the levels of 2026 hold for what is evaluated on 12 January or after it was read in secondary texts, which do not say which of the two days counts.
func (w Wipe) judgedOn() Date {
	if w.passed.Compare(w.Lab) > 0 {
		return w.passed
	}
	return w.Lab
}

// judged are the samples with the day of the pass that each came before.
func (job Job) judged() []Wipe {
	wipes := slices.Clone(job.Wipes)
	for i, wipe := range wipes {
		if last, ok := job.lastCheck(Work{ID: wipe.Work}); ok && last.Result == Passed {
			wipes[i].passed = last.On
		}
	}
	return wipes
}

// reading is the result as reported, and its loading where the laboratory gave micrograms and an area.
func (w Wipe) reading() Reading {
	if strings.Contains(w.Reported, " on ") {
		return Reading(w.Reported + " = " + w.sign() + perSquareFoot(w.Loading))
	}
	return Reading(w.Reported)
}

func (w Wipe) sign() string {
	if w.Below {
		return "<"
	}
	return ""
}

// perSquareFoot writes a loading with at most three decimals.
func perSquareFoot(loading float64) string {
	return strconv.FormatFloat(math.Round(loading*1000)/1000, 'f', -1, 64) + " µg/ft²"
}

// source is where the row stands.
func (l levels) source() Source { return Source{{l.citation, l.readOn, l.sureness}} }
