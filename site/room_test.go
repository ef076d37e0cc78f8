package site_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"example.org/doorleaf/site"
)

// What is left of the field in px between the text of a side and its foot.
const leftOver = `(async () => {
  await document.fonts.ready;
  return [...document.querySelectorAll('section.letter')].map(face => {
    const foot = face.querySelector('footer');
    return foot.getBoundingClientRect().top - foot.previousElementSibling.getBoundingClientRect().bottom;
  });
})()`

func TestReckonedHeights(t *testing.T) {
	for name, large := range map[string]bool{"usual": false, "large": true} {
		job := loaded(t, os.DirFS("../testdata/scripts"), "jobs/willow-5.yaml")
		job.Programme.LargePrint = large
		kit, err := site.NewKit(job.Programme, site.Key("0123456789abcdef0123456789abcdef"), os.ReadFile)
		if err != nil {
			t.Fatal(err)
		}
		letters, err := site.Reckon(job, kit)
		if err != nil {
			t.Fatal(err)
		}
		_ = name
		folder := t.TempDir()
		os.MkdirAll(filepath.Join(folder, "fonts"), 0o700)
		for path, data := range site.FontFiles() {
			os.WriteFile(filepath.Join(folder, "fonts", filepath.Base(path)), data, 0o600)
		}
		for _, l := range letters {
			at := filepath.Join(folder, l.Sheet+".html")
			os.WriteFile(at, l.HTML, 0o600)
			b := openTab(t)
			b.openFile(at)
			b.asPrinted()
			for i, left := range evaluated[[]float64](b, leftOver) {
				fmt.Printf("%s %s %d reckoned %.1f real %.1f over %.1f\n", name, l.Sheet, i, l.Heights[i], 256-left/mm, l.Heights[i]-256+left/mm)
			}
		}
	}
}
