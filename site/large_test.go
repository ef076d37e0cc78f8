package site_test

import (
	"math"
	"slices"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

// Large print is 18 pt at the least: what the American Printing House for the Blind asks for (from memory).
const largeType = 18.0

func TestPrintedInLargePrint(t *testing.T) {
	demo := demoOn(t, "letter\nlarge_print: yes")
	for _, job := range demo.jobs {
		for _, sheet := range job.Sheets {
			if sheet.Kind != string(notices.WorkAreaSign) && sheet.Kind != string(notices.LetterReceipt) {
				t.Run(job.Code+"/"+sheet.ID, func(t *testing.T) { checkLarge(t, demo, sheet) })
			}
		}
		t.Run(job.Code, func(t *testing.T) { checkEverything(t, demo, job, "letter") })
	}
}

func checkLarge(t *testing.T, demo *builtDemo, sheet site.SheetRecord) {
	b := openTab(t)
	b.openFile(demo.path(sheet.Path))
	b.asPrinted()
	faces := measuredFaces(b)
	if len(faces) != sides(sheet) {
		t.Errorf("%d sides, and %d in the record", len(faces), sides(sheet))
	}
	for _, face := range faces {
		checkField(t, face)
		checkLines(t, face)
	}
	sizes := evaluated[[]float64](b, `[...document.querySelectorAll('section.face *')].filter(e => !e.closest('svg, .foot') && [...e.childNodes].some(n => n.nodeType == 3 && n.data.trim())).map(e => parseFloat(getComputedStyle(e).fontSize))`)
	if smallest := slices.Min(sizes); smallest < largeType*pt-0.02 || math.IsNaN(smallest) {
		t.Errorf("type of %.2f pt", smallest/pt)
	}
	checkPaper(t, b.pdf(), "letter", sides(sheet))
}
