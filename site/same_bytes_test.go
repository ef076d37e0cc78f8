package site_test

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/tree"
)

// The output depends on the folder alone: not on the zone of the computer, the day or the hour, and not on what was built before.
func TestSameFolderSameBytes(t *testing.T) {
	zone := time.Local
	t.Cleanup(func() { time.Local = zone })
	jobs := []notices.Job{demoJob(t, "alder-14"), demoJob(t, "quarry-231")}
	one, two := newFolder(t), newFolder(t)
	time.Local = time.FixedZone("Kiritimati", 14*60*60)
	first := madeIn(t, one, marchFirst, jobs...)
	time.Local = time.FixedZone("Baker", -12*60*60)
	second := madeIn(t, two, notices.Date{Year: 2031, Month: 12, Day: 31}, jobs...)
	compareFiles(t, "in another zone on another day", second, first)
}

func ledgerOf(t *testing.T, folder site.Programme) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(folder.Path, ledger.FolderName, "alder-14", "k7qm.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// A second make of the same jobs changes no file and not the ledger, on any later day. The order in which jobs are named counts for nothing.
func TestMakeAgainChangesNothing(t *testing.T) {
	alder, quarry := small(demoJob(t, "alder-14")), small(demoJob(t, "quarry-231"))
	folder := newFolder(t)
	first := madeIn(t, folder, marchFirst, alder, quarry)
	before := ledgerOf(t, folder)
	folder.Writer.Today = marchSecond
	done, err := folder.Make(plansOf(quarry, alder), func(string) {})
	if err != nil || len(done.Changed) > 0 {
		t.Errorf("a second make changed %v: %v", done.Changed, err)
	}
	compareFiles(t, "made twice", filesIn(t, folder.Out), first)
	if !bytes.Equal(ledgerOf(t, folder), before) {
		t.Error("a second make changed the ledger")
	}
}

// addresses are the paths of the pages of jobs: what is on paper as a code.
func addresses(files tree.Files) []string {
	return slices.Sorted(maps.Keys(below(files, "web/")))
}

// page is the text of a page of the one job that has been made.
func page(t *testing.T, files tree.Files, language, kind string) string {
	t.Helper()
	data, there := files["web/"+tokenOf(t, files, "alder-14")+"/"+language+"/"+kind+"/index.html"]
	if !there {
		t.Fatalf("there is no page %s in %s", kind, language)
	}
	return textOf(parsed(t, data))
}

// said is one of our texts, which holds no values, as its language says it.
func said(t *testing.T, language string, text notices.Text) string {
	t.Helper()
	speaker, err := locales.Open(language, nil)
	if err != nil {
		t.Fatal(err)
	}
	words, err := speaker.Text(text.ID, nil)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

// New dates show on the pages with the day of the change, in each language, and every address stays.
func TestChangedDatesAreDated(t *testing.T) {
	folder := newFolder(t)
	job := small(demoJob(t, "alder-14"))
	before := madeIn(t, folder, marchFirst, job)
	for _, kind := range []string{"WIN", "NEAR", "PETS"} {
		if text := page(t, before, "EN", kind); !strings.Contains(text, "Dates last changed No change so far") {
			t.Errorf("before any change %s says %s", kind, text)
		}
	}
	rained := small(demoJob(t, "alder-14"))
	rained.Work[0].Days = []notices.Date{rained.Work[0].RainDay}
	rained.Work[0].RainDay = notices.Date{}
	after := madeIn(t, folder, marchSecond, rained)
	for _, kind := range []string{"WIN", "NEAR", "PETS"} {
		for language, day := range map[string]string{"EN": "Tuesday, March 2, 2027", "ES": "Martes, 2 de marzo de 2027", "VI": "2 tháng 3, 2027"} {
			changed := said(t, strings.ToLower(language), notices.DatesChanged)
			if text := page(t, after, language, kind); !strings.Contains(text, changed) || !strings.Contains(text, day) {
				t.Errorf("%s %s does not say %q with %q: %s", language, kind, changed, day, text)
			}
		}
		if text := page(t, after, "EN", kind); !strings.Contains(text, "Saturday, May 15, 2027") || strings.Contains(text, "May 8") {
			t.Errorf("%s has not the new day alone: %s", kind, text)
		}
	}
	if !slices.Equal(addresses(before), addresses(after)) {
		t.Errorf("the addresses were\n%v\nand are\n%v", addresses(before), addresses(after))
	}
	later := madeIn(t, folder, notices.Date{Year: 2027, Month: 3, Day: 9}, rained)
	compareFiles(t, "made again a week later", later, after)
}

// Dates inside are nobody's business: their change shows nowhere on the web.
func TestChangedDatesInsideShowNowhere(t *testing.T) {
	folder := newFolder(t)
	job := small(demoJob(t, "alder-14"))
	before := madeIn(t, folder, marchFirst, job)
	job.Work[1].Days = []notices.Date{{Year: 2027, Month: 5, Day: 12}}
	job.Work[1].CrewArrives += 60
	after := madeIn(t, folder, marchSecond, job)
	compareFiles(t, "with other days inside", below(after, "web/"), below(before, "web/"))
	if sameFiles(before, after) {
		t.Error("other days inside do not show on paper either, so this test compares nothing")
	}
}

// Without outside work the pages for neighbours have no more to say. They are still in codes on paper, and say so.
func TestPagesNoLongerNeededSaySo(t *testing.T) {
	folder := newFolder(t)
	job := small(demoJob(t, "alder-14"))
	before := madeIn(t, folder, marchFirst, job)
	job.Work = job.Work[1:]
	after := madeIn(t, folder, marchSecond, job)
	for _, l := range []string{"EN", "ES", "VI"} {
		for _, kind := range []string{"WIN", "NEAR", "PETS"} {
			checkWithdrawn(t, after, l, kind)
		}
		for _, kind := range []string{"SIGN", "HOME"} {
			if strings.Contains(page(t, after, l, kind), said(t, strings.ToLower(l), notices.WithdrawnHead)) {
				t.Errorf("%s %s says that it is no longer needed", l, kind)
			}
		}
	}
	if !slices.Equal(addresses(before), addresses(after)) {
		t.Errorf("the addresses were\n%v\nand are\n%v", addresses(before), addresses(after))
	}
	back := madeIn(t, folder, marchSecond, small(demoJob(t, "alder-14")))
	if strings.Contains(page(t, back, "EN", "WIN"), said(t, "en", notices.WithdrawnHead)) {
		t.Error("with outside work again, the page for windows still says that it is no longer needed")
	}
}

// checkWithdrawn wants a page that says in its language that it is no longer needed, whom to call, and nothing of the days it once had.
func checkWithdrawn(t *testing.T, files tree.Files, language, kind string) {
	t.Helper()
	text := page(t, files, language, kind)
	for _, wanted := range []string{said(t, strings.ToLower(language), notices.WithdrawnHead), said(t, strings.ToLower(language), notices.WithdrawnWhy), "(612) 555-0118"} {
		if !strings.Contains(text, wanted) {
			t.Errorf("%s %s does not say %q: %s", language, kind, wanted, text)
		}
	}
	if strings.Contains(text, "2027") {
		t.Errorf("%s %s still has a date: %s", language, kind, text)
	}
}

// A programme that drops a language keeps the addresses of its pages, and each says in that language that it is no longer needed.
func TestDroppedLanguageSaysSo(t *testing.T) {
	folder := newFolder(t)
	job := small(demoJob(t, "alder-14"))
	before := madeIn(t, folder, marchFirst, job)
	job.Programme.Languages = []notices.Language{"en", "vi"}
	job.Neighbours[0].Languages = []notices.Language{"en"}
	after := madeIn(t, folder, marchSecond, job)
	for _, kind := range []string{"SIGN", "HOME", "WIN", "NEAR", "PETS"} {
		checkWithdrawn(t, after, "ES", kind)
	}
	if !slices.Equal(addresses(before), addresses(after)) {
		t.Errorf("the addresses were\n%v\nand are\n%v", addresses(before), addresses(after))
	}
	for _, kind := range []string{"SIGN", "HOME", "WIN"} {
		if text := page(t, after, "VI", kind); strings.Contains(text, said(t, "vi", notices.WithdrawnHead)) || strings.Contains(text, "Español") {
			t.Errorf("the page %s in a language that stays is withdrawn, or offers the dropped one: %s", kind, text)
		}
	}
}
