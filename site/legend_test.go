package site_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

// The legend of a sign as 29 CFR 1926.62(m)(1)(i) has it, in testdata/cfr: the last line of the paragraph. The stored text lost the breaks between
// the lines of the legend, so it is compared as one run of words; the order and every letter count.
func TestLegendAgainstPublishedText(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "cfr", "29CFR1926.62.html"))
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`above the PEL\.\n(.+)</p>`).FindSubmatch(text)
	if found == nil {
		t.Fatal("the excerpt has no legend")
	}
	english, err := locales.Open("en", nil)
	if err != nil {
		t.Fatal(err)
	}
	var legend strings.Builder
	for _, line := range aSign(t).Legend {
		words, err := english.Text(line.ID, nil)
		if err != nil {
			t.Fatal(err)
		}
		legend.WriteString(words)
	}
	if legend.String() != string(found[1]) {
		t.Errorf("the legend of a sign is\n%s\nand the published one\n%s", &legend, found[1])
	}
}

func aSign(t *testing.T) notices.Face {
	t.Helper()
	for _, sheet := range notices.Decide(demoJob(t, "alder-14")).Sheets {
		if sheet.Kind == notices.WorkAreaSign {
			return sheet.Faces[0]
		}
	}
	t.Fatal("the demo job has no sign")
	return notices.Face{}
}

// A sign for outside work is easily read 20 feet from the edge of the worksite: 24 CFR 35.1345(b)(2), in testdata/cfr, where federal housing money
// is in the job. How far a legend reads is ANSI Z535.2's rule, in site/fit; that it is printed as high as the record says is measured in
// tiles_test.go. The coordinator's sheet says of each sign how far it reads.
func TestSignsOutsideReachThePublishedDistance(t *testing.T) {
	published := publishedDistance(t)
	for _, larger := range [][]notices.Paper{nil, {notices.Tabloid}} {
		folder := newFolder(t)
		alder, quarry := demoJob(t, "alder-14"), demoJob(t, "quarry-231")
		alder.Programme.LargerPaper, quarry.Programme.LargerPaper = larger, larger
		files := madeIn(t, folder, marchFirst, alder, quarry)
		records, err := record.Load(os.DirFS(folder.Out))
		if err != nil {
			t.Fatal(err)
		}
		said := textOf(parsed(t, files["print/index.html"]))
		signs, outside := 0, 0
		for _, record := range records {
			for _, sheet := range record.Sheets {
				if sheet.Kind == string(notices.WorkAreaSign) {
					signs++
				}
				if sheet.ReadFromFt > 0 {
					outside++
					checkReaches(t, sheet, published)
				}
				checkSaid(t, said, sheet)
			}
		}
		if told := strings.Count(said, "legend reads from "); told != signs || signs != 16 || outside != 8 {
			t.Errorf("the coordinator's sheet tells the distance of %d signs, and the demo has %d of 16, %d of 8 outside", told, signs, outside)
		}
	}
}

// In every language the sign reaches that far on four sheets of Letter paper at the most.
func TestSignsReachOnFourSheets(t *testing.T) {
	published := publishedDistance(t)
	for _, language := range notices.Languages {
		t.Run(language.Name, func(t *testing.T) {
			job := small(demoJob(t, "alder-14"))
			job.Programme.Languages = []notices.Language{notices.English, language.Tag}
			job.Households[0].Languages = []notices.Language{language.Tag}
			for i := range job.Neighbours {
				job.Neighbours[i].Languages = []notices.Language{language.Tag}
			}
			folder := newFolder(t)
			_, err := folder.Make(plansOf(job), func(string) {})
			skipForFonts(t, err)
			if err != nil {
				t.Fatal(err)
			}
			seen := false
			for _, sheet := range recordOf(t, filesIn(t, folder.Out), "alder-14").Sheets {
				if face := sheet.Faces[0]; sheet.ReadFromFt > 0 {
					seen = seen || face.Language == string(language.Tag)
					checkReaches(t, sheet, published)
					if face.Pages > 4 {
						t.Errorf("%s takes %d sheets", sheet.ID, face.Pages)
					}
				}
			}
			if !seen {
				t.Error("no sign outside in this language")
			}
		})
	}
}

func checkReaches(t *testing.T, sheet record.Sheet, published float64) {
	t.Helper()
	face := sheet.Faces[0]
	if sheet.ReadFromFt < published || face.ReadingDistanceFt < published {
		t.Errorf("%s reads from %v ft, and shall from the published %v ft", sheet.ID, face.ReadingDistanceFt, published)
	}
	if face.CapHeightMM < 0.80*25.4 || face.SignalHeightMM < published*304.8/150 {
		t.Errorf("%s has capitals of %.1f mm and a signal word of %.1f mm", sheet.ID, face.CapHeightMM, face.SignalHeightMM)
	}
}

func publishedDistance(t *testing.T) float64 {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "testdata", "cfr", "24CFR35.1345.html"))
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`easily read (\d+) feet`).FindSubmatch(text)
	if found == nil {
		t.Fatal("the excerpt has no distance")
	}
	feet, err := strconv.ParseFloat(string(found[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return feet
}

func checkSaid(t *testing.T, said string, sheet record.Sheet) {
	t.Helper()
	if sheet.Kind != string(notices.WorkAreaSign) {
		return
	}
	for _, want := range []string{
		fmt.Sprintf("legend reads from %.0f ft", sheet.Faces[0].ReadingDistanceFt),
		fmt.Sprintf("%.0f ft in poor light", sheet.Faces[0].PoorDistanceFt),
	} {
		if !strings.Contains(said, want) {
			t.Errorf("the coordinator's sheet does not say of %s: %s", sheet.ID, want)
		}
	}
}
