package jobfile

import (
	"math"
	"regexp"
	"strconv"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

// wipePattern is a loading ("3.2 ug/ft2", "<4 ug/ft2") or micrograms and the area wiped ("3 ug on 1 sq ft", "<2 ug on 36 sq in", "1.1 ug on 100 cm2").
const wipePattern = `^<? *[0-9]+(\.[0-9]+)? *(ug|µg|μg|mcg)(/ft2|/ft²|/sq ft| on [0-9]+(\.[0-9]+)? *(sq ft|ft2|sq in|in2|cm2))$`

var wipeParts = regexp.MustCompile(`^(<?) *([0-9]+(?:\.[0-9]+)?) *(?:ug|µg|μg|mcg)(?:/ft2|/ft²|/sq ft| on ([0-9]+(?:\.[0-9]+)?) *(sq ft|ft2|sq in|in2|cm2))$`)

// inSquareFoot is how many of a unit of wiped area make a square foot: 144 square inches; 929.0304 square centimetres, because the international foot
// is 30.48 cm by definition (NIST SP 811, from memory).
var inSquareFoot = map[string]float64{"sq ft": 1, "ft2": 1, "sq in": 144, "in2": 144, "cm2": 929.0304}

// result reads a laboratory's result into a sample.
func (r *reader) result(v *strict.Node, w *notices.Wipe) {
	parts := wipeParts.FindStringSubmatch(v.Text)
	if parts == nil {
		r.wrong(v, "is not a laboratory result", "write micrograms per square foot, such as 3.2 ug/ft2 or <4 ug/ft2, or micrograms and the area wiped, such as 3 ug on 1 sq ft")
		return
	}
	micrograms, _ := strconv.ParseFloat(parts[2], 64)
	area, unit := 1.0, "sq ft"
	if parts[3] != "" {
		area, _ = strconv.ParseFloat(parts[3], 64)
		unit = parts[4]
	}
	if area == 0 {
		r.wrong(v, "has no area", "write the area that was wiped")
		return
	}
	w.Reported, w.Below, w.Loading = v.Text, parts[1] == "<", loading(micrograms, area, unit)
}

// loading is micrograms per square foot, from the micrograms on a wiped area in a unit. It is rounded to a millionth, because binary fractions would
// let 0.3 ug on 0.06 sq ft fall below 5.
func loading(micrograms, area float64, unit string) float64 {
	return math.Round(micrograms*inSquareFoot[unit]/area*1e6) / 1e6
}
