package site_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/templates"
)

// leftOver is what is left of the field in px between the text of each side and its foot.
const leftOver = `(async () => {
  await document.fonts.ready;
  return [...document.querySelectorAll('section.letter')].map(face => {
    const foot = face.querySelector('footer');
    return foot.getBoundingClientRect().top - foot.previousElementSibling.getBoundingClientRect().bottom;
  });
})()`

// What decides whether a letter fits is reckoned before any browser sees it. A browser makes no side higher, and none lower by more than a line or two, which would
// waste paper. Every sheet replaces an earlier one, so that the small print is as long as it gets.
func TestHeightsAsReckoned(t *testing.T) {
	for _, code := range []string{"alder-14", "quarry-231", "willow-5"} {
		for _, large := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s, large print %t", code, large), func(t *testing.T) {
				t.Parallel()
				job := demoOrScriptsJob(t, code)
				job.Programme.LargePrint = large
				for _, sheet := range reckoned(t, job) {
					checkReckoned(t, sheet)
				}
			})
		}
	}
}

func checkReckoned(t *testing.T, sheet site.Reckoning) {
	t.Helper()
	const rounded, wasted = 0.5, 10.0 // mm; the 3 % that stay free are 7.7 mm
	b := openTab(t)
	b.openFile(sheet.Sheet)
	b.asPrinted()
	left := evaluated[[]float64](b, leftOver)
	if len(left) != len(sheet.Heights) || len(left) == 0 {
		t.Errorf("%d sides, and %d were reckoned", len(left), len(sheet.Heights))
		return
	}
	for i, reckoned := range sheet.Heights {
		real := templates.FieldHeight - left[i]/mm
		if over := reckoned - real; over < -rounded || over > wasted {
			t.Errorf("%s, side %d is %.1f mm high, and was reckoned as %.1f mm", filepath.Base(sheet.Sheet), i+1, real, reckoned)
		}
	}
}

func demoOrScriptsJob(t *testing.T, code string) notices.Job {
	t.Helper()
	if code != "willow-5" {
		return demoJob(t, code)
	}
	scriptsDemo(t) // skips where a font is missing
	return loaded(t, os.DirFS(filepath.Join("..", "testdata", "scripts")), "jobs/willow-5.yaml")
}

// reckoned are the letters of a job as files on disk: Sheet is the path.
func reckoned(t *testing.T, job notices.Job) []site.Reckoning {
	t.Helper()
	kit, err := site.NewKit(job.Programme, printedKey, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := site.Reckon(job, kit, marchFirst)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	write := func(name string, data []byte) string {
		path := filepath.Join(folder, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	for path, data := range site.FontFiles() {
		write("fonts/"+filepath.Base(path), data)
	}
	for i, sheet := range sheets {
		sheets[i].Sheet = write(sheet.Sheet+".html", sheet.Sides)
	}
	return sheets
}
