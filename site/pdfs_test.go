package site_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/site"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/pdf"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

// Outside references of this file: Chromium, which prints as it does for a coordinator, and poppler, which reads sides, sizes and outline of the PDF.

// printing is a folder whose makes print PDF files too.
func printing(t *testing.T) site.Programme {
	t.Helper()
	folder := newFolder(t)
	folder.Browser = &pdf.Browser{Path: program(t, "no Chromium found: install it or set CHROME_PATH",
		os.Getenv("CHROME_PATH"), "chromium", "chromium-browser", "google-chrome")}
	return folder
}

func TestPDFForTheHomePrinter(t *testing.T) {
	folder := printing(t)
	files := madeIn(t, folder, marchFirst, demoJob(t, "alder-14"))
	job := recordOf(t, files, "alder-14")
	if len(job.PDFs) != 1 || job.PDFs[0].Path != "print/alder-14/"+lists.HomePrinter {
		t.Fatalf("the PDF files are %v, want one for the home printer", job.PDFs)
	}
	printed := filepath.Join(folder.Out, filepath.FromSlash(job.PDFs[0].Path))
	checkPaper(t, printed, "letter", job.PDFs[0].Pages)
	checkFonts(t, printed)
	if faces := documentOf(t, files[job.Everything]).Find("section.face").Length(); faces != job.PDFs[0].Pages {
		t.Errorf("%d sides in the PDF, and everything.html has %d", job.PDFs[0].Pages, faces)
	}
	checkOutline(t, printed, job)
	if !slices.ContainsFunc(job.Files, func(f tree.File) bool { return f.Path == job.PDFs[0].Path }) {
		t.Error("the PDF is not among the files of the record")
	}
	if !strings.Contains(string(files["print/index.html"]), `href="alder-14/`+lists.HomePrinter+`"`) {
		t.Error("the coordinator's sheet has no link to the PDF")
	}
	for path := range below(files, "web/") {
		if strings.HasSuffix(path, ".pdf") {
			t.Errorf("%s is for the web, and is private", path)
		}
	}
}

var outlineItem = regexp.MustCompile(`<item page="(\d+)">([^<]*)</item>`)

// checkOutline wants the walk list, then each sheet on the side on which its first copy begins, in printing order.
func checkOutline(t *testing.T, printed string, job record.Job) {
	t.Helper()
	text := output(t, program(t, "no pdftohtml found: install poppler-utils", "pdftohtml"), "-xml", "-i", "-stdout", printed)
	items := outlineItem.FindAllStringSubmatch(text, -1)
	if len(items) == 0 || items[0][2] != "Walk list" || items[0][1] != "1" {
		t.Fatalf("the outline begins with %v, want the walk list on side 1", items)
	}
	side, left := job.PDFs[0].Pages+1, items[1:]
	for _, sheet := range job.Sheets {
		side -= sheet.Copies * len(leaves(sheet))
	}
	if len(left) != len(job.Sheets) {
		t.Fatalf("%d entries in the outline for %d sheets", len(left), len(job.Sheets))
	}
	for i, sheet := range job.Sheets {
		if want := fmt.Sprintf("%s, %s (%s)", sheet.Title, sheet.To, sheet.ID); left[i][1] != fmt.Sprint(side) || left[i][2] != want {
			t.Errorf("%q on side %s, want %q on %d", left[i][2], left[i][1], want, side)
		}
		side += sheet.Copies * len(leaves(sheet))
	}
}

func recordOf(t *testing.T, files tree.Files, code string) (record record.Job) {
	t.Helper()
	if err := json.Unmarshal(files["print/"+code+"/"+tree.RecordFile], &record); err != nil {
		t.Fatal(err)
	}
	return record
}

// The same browser makes the same bytes, and leaves nothing behind. A make without it takes the PDF away, because it would say what no longer holds.
func TestPDFAgain(t *testing.T) {
	folder := printing(t)
	job := small(demoJob(t, "alder-14"))
	first := madeIn(t, folder, marchFirst, job)
	changed, err := folder.Make(plansOf(job), func(string) {})
	if err != nil || len(changed.Changed) > 0 {
		t.Errorf("a second make changed %v: %v", changed.Changed, err)
	}
	if left, _ := filepath.Glob(filepath.Join(folder.Path, "doorleaf-printing-*")); len(left) > 0 {
		t.Errorf("%v is left behind", left)
	}
	folder.Browser = nil
	without := madeIn(t, folder, marchSecond, job)
	pdfs := func(path string, _ []byte) bool { return strings.HasSuffix(path, ".pdf") }
	if record := recordOf(t, without, "alder-14"); len(record.PDFs) > 0 {
		t.Errorf("the record still has %v", record.PDFs)
	}
	differs := slices.Sorted(maps.Keys(first))
	differs = slices.DeleteFunc(differs, func(path string) bool { return bytes.Equal(first[path], without[path]) })
	want := []string{"print/alder-14/" + lists.HomePrinter, "print/alder-14/record.json", "print/index.html", "record.json"}
	maps.DeleteFunc(without, pdfs)
	if !slices.Equal(differs, want) || len(without) != len(first)-1 {
		t.Errorf("without PDF these files differ: %v, want %v", differs, want)
	}
}

// A browser that fails stops the make before anything is written.
func TestPDFThatFails(t *testing.T) {
	folder := newFolder(t)
	empty := filepath.Join(t.TempDir(), "browser.exe")
	if err := os.WriteFile(empty, nil, 0o700); err != nil {
		t.Fatal(err)
	}
	folder.Browser = &pdf.Browser{Path: empty}
	_, err := folder.Make(plansOf(small(demoJob(t, "alder-14"))), func(string) {})
	if err == nil || !strings.Contains(err.Error(), "nothing was changed: ") || !strings.Contains(err.Error(), "Make again without --pdf") {
		t.Errorf("got %v", err)
	}
	if files := filesIn(t, folder.Out); len(files) != 1 { // the lock
		t.Errorf("written all the same: %d files", len(files))
	}
}
