package site_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

// Outside references of this file: Chromium and poppler, as in pdfs_test.go. The size of 11 x 17 in paper is that of ANSI/ASME Y14.1.

// Signs on larger paper have files of their list, padded for printing two-sided; everything else stays with the home printer.
func TestFilesForTheCopyShop(t *testing.T) {
	folder := printing(t)
	job := small(demoJob(t, "alder-14"))
	job.Programme.LargerPaper = []notices.Paper{notices.Tabloid}
	files := madeIn(t, folder, marchFirst, job)
	record := recordOf(t, files, "alder-14")
	larger, others := 0, 0
	for _, sheet := range record.Sheets {
		if strings.HasPrefix(sheet.Paper, "11x17") {
			larger += sheet.Copies * len(leaves(sheet))
		} else {
			others += sheet.Copies * len(leaves(sheet))
		}
	}
	if larger == 0 || others == 0 {
		t.Fatalf("%d sides on 11 x 17 in paper, and %d on other paper", larger, others)
	}
	if record.CopyShop != "print/alder-14/copy-shop.html" || len(record.PDFs) != 2 {
		t.Fatalf("the copy shop gets %q, and the PDF files are %v", record.CopyShop, record.PDFs)
	}
	checkCopyShopPDF(t, folder, record.PDFs[1], larger)
	walk := documentOf(t, files[record.WalkList]).Find("section.face").Length()
	if home := record.PDFs[0]; home.Paper != "letter" || home.Pages != others+(walk+1)/2*2 {
		t.Errorf("the home printer gets %v, want %d sides of Letter and the walk list", home, others)
	}
	checkNothingPrivate(t, files, record, job)
	list := string(files["print/index.html"])
	for _, link := range []string{`href="alder-14/copy-shop.html"`, `href="alder-14/copy-shop.pdf"`} {
		if !strings.Contains(list, link) {
			t.Errorf("the coordinator's sheet has no %s", link)
		}
	}
}

func checkCopyShopPDF(t *testing.T, folder site.Programme, shop record.PDF, sides int) {
	t.Helper()
	if want := (record.PDF{Path: "print/alder-14/copy-shop.pdf", Paper: "11x17", Pages: sides}); shop != want {
		t.Errorf("for the copy shop %v, want %v", shop, want)
	}
	printed := filepath.Join(folder.Out, filepath.FromSlash(shop.Path))
	checkPaper(t, printed, "11x17", sides)
	checkFonts(t, printed)
	text := output(t, program(t, "no pdftotext found: install poppler-utils", "pdftotext"), printed, "-")
	for _, private := range []string{"Lam", "Alder Court", "Walk list"} {
		if strings.Contains(text, private) {
			t.Errorf("the copy shop reads %q", private)
		}
	}
}

// checkNothingPrivate compares what the copy shop gets, its source included, with what the home printer gets.
func checkNothingPrivate(t *testing.T, files tree.Files, record record.Job, job notices.Job) {
	t.Helper()
	shop, home := string(files[record.CopyShop]), string(files[record.Everything])
	private := []string{"Alder Court", "Walk list"}
	for _, household := range job.Households {
		private = append(private, household.Name)
	}
	for _, text := range slices.Compact(private) {
		if strings.Contains(shop, text) {
			t.Errorf("the copy shop reads %q", text)
		}
		if !strings.Contains(home, text) {
			t.Errorf("the home printer has no %q, so looking for it says nothing", text)
		}
	}
	if strings.Contains(home, "sign-porch") || !strings.Contains(shop, "sign-porch") {
		t.Error("the home printer has the larger signs, or the copy shop has none")
	}
}
