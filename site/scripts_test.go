package site_test

import (
	"image"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/site/fit"
)

// Sheets in scripts beside Latin: the house of testdata/scripts, whose people read Arabic, Chinese and Russian. Outside references are those of the
// printed sheets and pages.

var scripts = &builtDemo{}

func scriptsDemo(t *testing.T) *builtDemo {
	t.Helper()
	scripts.once.Do(func() {
		if scripts.err = scripts.copyFrom("../testdata/scripts"); scripts.err == nil {
			scripts.err = scripts.make()
		}
	})
	skipForFonts(t, scripts.err)
	if scripts.err != nil {
		t.Fatal(scripts.err)
	}
	return scripts
}

// skipForFonts skips a test whose sheets need a font that this computer lacks, but not under CI.
func skipForFonts(t *testing.T, err error) {
	t.Helper()
	if err != nil && strings.Contains(err.Error(), "; install ") && os.Getenv("CI") == "" {
		t.Skip(err)
	}
}

// families are what a PDF may call fonts of the record that are not Roboto. Those of Noto Sans CJK come as outlines without a name.
func (d *builtDemo) families() (all []string) {
	for _, job := range d.jobs {
		for _, f := range job.Fonts {
			family := f.Name[:strings.LastIndex(f.Name, " ")]
			all = append(all, strings.ReplaceAll(family, " ", ""))
			if strings.Contains(family, "CJK") {
				all = append(all, "Type 3")
			}
		}
	}
	return all
}

func TestPrintedInOtherScripts(t *testing.T) {
	demo := scriptsDemo(t)
	for _, sheet := range demo.jobs[0].Sheets {
		t.Run(sheet.ID, func(t *testing.T) {
			t.Parallel()
			if isTiled(sheet) {
				checkTiles(t, demo, sheet)
			} else {
				checkSheet(t, demo, sheet)
			}
		})
	}
	t.Run("everything", func(t *testing.T) { checkEverything(t, demo, demo.jobs[0], "letter") })
}

// The letters of a sign are printed as large as the record claims, within 2 % or two dots.
func TestLettersOfOtherScriptsAsLargeAsClaimed(t *testing.T) {
	demo := scriptsDemo(t)
	measured := map[string]bool{}
	for _, sheet := range demo.jobs[0].Sheets {
		record := sheet.Faces[0]
		if record.ReadingDistanceFt == 0 || isTiled(sheet) || record.Letters == "capitals" {
			continue
		}
		measured[record.Language] = true
		t.Run(sheet.ID, func(t *testing.T) {
			b := openTab(t)
			b.openFile(demo.path(sheet.Path))
			b.asPrinted()
			lines := measuredFaces(b)[0].Fits[1].Lines
			font := signFont(t, record.Language)
			const dpi = 300
			side := painted(t, shoot(t, b.pdf(), dpi)[0])
			size := record.CapHeightMM / letterHeights[record.Letters] // mm
			for _, line := range lines {
				if strings.Contains(line.Text+" ", "ي ") {
					continue // the dots below it stand as far off as the next line
				}
				want := font.Leading([]string{line.Text, line.Text}, 0) * size // from the lowest ink of a line to the highest of the next
				if got := inkHeight(side, line.Ink, dpi/96.0) * 25.4 / dpi; math.Abs(got-want) > max(0.02*want, 2*25.4/dpi) {
					t.Errorf("the ink of %q is %.2f mm high, and the record makes it %.2f mm", line.Text, got, want)
				}
			}
		})
	}
	if !measured["ar"] || !measured["zh-Hans"] {
		t.Errorf("measured were signs in %v, want Arabic and Chinese", measured)
	}
}

// signFont is the font of signs in a language.
func signFont(t *testing.T, language string) *fit.Font {
	t.Helper()
	speaker, err := locales.Open(language, nil)
	if err != nil {
		t.Fatal(err)
	}
	cast, err := fit.NewShelf(os.ReadFile).Cast(speaker.Script(), speaker.Letters(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return cast.Sign
}

// inkHeight is that of the ink in the rows of a line, in dots, followed up and down from its middle as long as a row has ink.
func inkHeight(side *image.Gray, line box, scale float64) float64 {
	left, right := int(line.Left*scale), int(line.Right*scale)
	inked := func(y int) bool {
		for x := left; x <= right; x++ {
			if side.GrayAt(x, y).Y < 128 {
				return true
			}
		}
		return false
	}
	top := int((line.Top + line.Bottom) / 2 * scale)
	bottom := top
	for inked(top - 1) {
		top--
	}
	for inked(bottom + 1) {
		bottom++
	}
	return float64(bottom - top + 1)
}
