package site_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

// How large the type is that leaves the printer, as poppler reads it from the PDF that Chromium prints. Clear print of the RNIB is 12 pt or more, and 14 pt is advised
// (as Hampshire County Council gives it, hants.gov.uk). What stands below the rule at the foot of a letter keeps the first: the caution, the state of a translation,
// which sheet it replaces, its number. Everything else keeps the second, the house numbers of a drawing too. Large print is 18 pt, as the American Printing House for
// the Blind asks for (from memory), and nothing is excepted.
const (
	adviseClear = 14.0 // pt
	leastClear  = 12.0
	leastLarge  = 18.0
)

func leastTypeOf(sheet record.Sheet) float64 {
	if sheet.Kind == string(notices.WorkAreaSign) {
		return leastClear
	}
	return adviseClear
}

const finest = 3 // the largest scale of pdftohtml, which gives sizes in whole px

var (
	pdfSide   = regexp.MustCompile(`(?s)<page .*?</page>`)
	fontSpec  = regexp.MustCompile(`<fontspec id="(\d+)" size="(-?\d+)"`)
	printedAt = regexp.MustCompile(`<text top="(-?\d+)"[^>]*font="(\d+)">(.*)</text>`)
	markup    = regexp.MustCompile(`<[^>]*>`)
)

// A printedText is a piece of a line of a PDF.
type printedText struct {
	Words string
	Top   float64 // pt from the upper edge of the paper
	Size  float64 // pt, rounded down to a third
}

// printedTexts are those of each side of a PDF.
func printedTexts(t *testing.T, pdf string) (sides [][]printedText) {
	t.Helper()
	xml := output(t, program(t, "no pdftohtml found: install poppler-utils", "pdftohtml"), "-xml", "-zoom", "3", "-i", "-stdout", pdf)
	sizes := map[string]float64{}
	for _, font := range fontSpec.FindAllStringSubmatch(xml, -1) {
		sizes[font[1]] = number(t, font[2]) / finest
	}
	for _, side := range pdfSide.FindAllString(xml, -1) {
		var texts []printedText
		for _, text := range printedAt.FindAllStringSubmatch(side, -1) {
			if words := strings.TrimSpace(markup.ReplaceAllString(text[3], "")); words != "" {
				texts = append(texts, printedText{words, number(t, text[1]) / finest, sizes[text[2]]})
			}
		}
		if len(texts) == 0 {
			t.Errorf("a side of %s is without text", filepath.Base(pdf))
		}
		sides = append(sides, texts)
	}
	return sides
}

// checkPrintedSizes compares all type of a printed sheet with the least that it may have. Below the rule at its foot, a letter may have small print.
func checkPrintedSizes(b tab, pdf string, least float64) {
	b.Helper()
	for _, fault := range typeFaults(b, pdf, least) {
		b.Error(fault)
	}
}

func typeFaults(b tab, pdf string, least float64) (faults []string) {
	b.Helper()
	feet := evaluated[[]float64](b, `[...document.querySelectorAll('section.face:not(.blank)')].map(f => f.querySelector('.foot').getBoundingClientRect().top - f.getBoundingClientRect().top)`)
	sides := printedTexts(b.T, pdf)
	if len(sides) != len(feet) {
		b.Fatalf("%d sides printed, and %d laid out", len(sides), len(feet))
	}
	for i, texts := range sides {
		for _, text := range texts {
			least := least
			if least == adviseClear && text.Top > feet[i]/pt {
				least = leastClear
			}
			if text.Size < least {
				faults = append(faults, fmt.Sprintf("%q is printed in %.2f pt, want %g at least", text.Words, text.Size, least))
			}
		}
	}
	return faults
}

// Smaller type would be found: in the small print, in the drawing, and beside larger type on a line.
func TestSmallTypeIsFound(t *testing.T) {
	demo := demoOn(t, "letter")
	html, err := os.ReadFile(demo.path("print/alder-14/request-n12.html"))
	if err != nil {
		t.Fatal(err)
	}
	path := demo.path("print/alder-14/smaller.html")
	defer os.Remove(path)
	for rule, words := range map[string]string{
		".letter .foot { font-size: 11pt; }": "Sheet alder-14 / request-n12", "svg text { font-size: 8px; }": "14", ".phone, q, td strong { font-size: 13.5pt; }": "Saturday, May 8,",
		".letter { font-size: 12pt; }": "We speak: English and Spanish",
	} {
		if err := os.WriteFile(path, []byte(strings.Replace(string(html), "</style>", rule+"</style>", 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		b := openTab(t)
		b.openFile(path)
		b.asPrinted()
		if faults := typeFaults(b, b.pdf(), adviseClear); !slices.ContainsFunc(faults, func(fault string) bool { return strings.HasPrefix(fault, fmt.Sprintf("%q", words)) }) {
			t.Errorf("with %s, %q is not among the faults %q", rule, words, faults)
		}
	}
}
