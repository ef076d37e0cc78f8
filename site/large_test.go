package site_test

import (
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

func TestPrintedInLargePrint(t *testing.T) {
	t.Parallel()
	demo := demoOn(t, "letter\nlarge_print: yes")
	for _, job := range demo.jobs {
		for _, sheet := range job.Sheets {
			if sheet.Kind != string(notices.WorkAreaSign) {
				t.Run(job.Code+"/"+sheet.ID, func(t *testing.T) { checkLarge(t, demo, sheet) })
			}
		}
		t.Run(job.Code, func(t *testing.T) { checkEverything(t, demo, job, "letter") })
	}
}

func checkLarge(t *testing.T, demo *builtDemo, sheet record.Sheet) {
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
	checkSigning(b, sheet)
	printed := b.pdf()
	checkPaper(t, printed, "letter", sides(sheet))
	checkPrintedSizes(b, printed, leastLarge)
}

// checkSigning makes sure that all lines to fill in of a receipt, with their labels, stand on one side of paper, in the language of its reader.
func checkSigning(b tab, sheet record.Sheet) {
	b.Helper()
	if sheet.Kind != string(notices.LetterReceipt) {
		return
	}
	blanks := evaluated[[]string](b, `[...document.querySelectorAll('.blanks')].map(all => all.closest('.face').lang + ' ' + all.querySelectorAll('dt').length + ' ' + all.querySelectorAll('dd').length)`)
	if len(blanks) != 1 || blanks[0] != sheet.Faces[0].Language+" 5 5" {
		b.Errorf("the lines to fill in are %q", blanks)
	}
}
