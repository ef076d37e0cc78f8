package site_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

// How large the type is that leaves the printer, as poppler reads it from the PDF that Chromium prints. Clear print of the RNIB is 12 pt or more, and 14 pt is advised
// (as Hampshire County Council gives it, hants.gov.uk): the small print below a letter keeps the first, and everything else the second, the house numbers of a
// drawing too. Large print is 18 pt, as the American Printing House for the Blind asks for (from memory), and nothing is excepted.
const (
	adviseClear = 14.0 // pt
	leastClear  = 12.0
	leastLarge  = 18.0
)

func leastTypeOf(sheet site.SheetRecord) float64 {
	if sheet.Kind == string(notices.WorkAreaSign) {
		return leastClear
	}
	return adviseClear
}

const finest = 3 // the largest scale of pdftohtml, which gives sizes in whole px

var (
	fontSpec  = regexp.MustCompile(`<fontspec id="(\d+)" size="(-?\d+)"`)
	printedAt = regexp.MustCompile(`<text [^>]*font="(\d+)">(.*)</text>`)
	markup    = regexp.MustCompile(`<[^>]*>`)
)

// printedSizes are the texts of a PDF with the size of their type in pt, rounded down to a third.
func printedSizes(t *testing.T, pdf string) map[string]float64 {
	t.Helper()
	xml := output(t, program(t, "no pdftohtml found: install poppler-utils", "pdftohtml"), "-xml", "-zoom", "3", "-i", "-stdout", pdf)
	sizes := map[string]float64{}
	for _, font := range fontSpec.FindAllStringSubmatch(xml, -1) {
		sizes[font[1]] = number(t, font[2]) / finest
	}
	all := map[string]float64{}
	for _, text := range printedAt.FindAllStringSubmatch(xml, -1) {
		if words := strings.TrimSpace(markup.ReplaceAllString(text[2], "")); words != "" {
			size, known := sizes[text[1]]
			if before, seen := all[words]; !known || !seen || size < before {
				all[words] = size
			}
		}
	}
	if len(all) == 0 {
		t.Errorf("no text in %s", filepath.Base(pdf))
	}
	return all
}

// areIn finds each word of a PDF in a text. They come with ligatures and the shapes of letters for characters, Arabic ones from left to right, and with the
// dots between parts of the small print.
func areIn(words, text string) bool {
	return !slices.ContainsFunc(strings.Fields(words), func(word string) bool {
		letters := []rune(word)
		slices.Reverse(letters)
		return !strings.Contains(bare(text), bare(word)) && !strings.Contains(bare(text), bare(string(letters)))
	})
}

func bare(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || unicode.Is(unicode.Mn, r) || r == '·' {
			return -1
		}
		return r
	}, norm.NFKD.String(text))
}

func checkPrintedSizes(b tab, pdf string, least float64) {
	b.Helper()
	small := evaluated[string](b, `[...document.querySelectorAll('.foot')].map(e => e.textContent).join(' ').replace(/\s+/g, ' ')`)
	for words, size := range printedSizes(b.T, pdf) {
		if least == adviseClear && size >= leastClear && areIn(words, small) {
			continue
		}
		if size < least {
			b.Errorf("%q is printed in %.2f pt, want %g at least", words, size, least)
		}
	}
}

// Smaller type would be found: in the small print, in the drawing, and beside larger type on a line.
func TestSmallTypeIsFound(t *testing.T) {
	demo := demoOn(t, "letter")
	html, err := os.ReadFile(demo.path("print/alder-14/request-n12.html"))
	if err != nil {
		t.Fatal(err)
	}
	for rule, words := range map[string]string{
		".letter .foot { font-size: 11pt; }": "Sheet alder-14 / request-n12", "svg text { font-size: 8px; }": "14", ".ask, q, td strong { font-size: 13.5pt; }": "Saturday, May 8",
	} {
		path := demo.path("print/alder-14/smaller.html")
		if err := os.WriteFile(path, []byte(strings.Replace(string(html), "</style>", rule+"</style>", 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		b := openTab(t)
		b.openFile(path)
		sizes := printedSizes(t, b.pdf())
		if size, there := sizes[words]; !there || size >= adviseClear || size < 6 {
			t.Errorf("with %s, %q is read as %.2f pt", rule, words, size)
		}
	}
	os.Remove(demo.path("print/alder-14/smaller.html"))
}
