package site

import (
	"strings"
	"testing"
	"time"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// Signs on larger paper have a file of their own, padded for printing two-sided; everything else stays with the home printer. A4 stands for any paper
// that is not the programme's.
func TestFileForTheCopyShop(t *testing.T) {
	kit, err := NewKit(notices.Programme{}, "")
	if err != nil {
		t.Fatal(err)
	}
	p := press{kit: kit, programme: notices.Programme{Paper: notices.Letter}, code: "alder-14"}
	sign := templates.Leaf{Faces: []templates.Face{{Lang: "en", Sign: &templates.Sign{}}}}
	letter := templates.Leaf{Faces: []templates.Face{{Lang: "en", Letter: &templates.Letter{Text: templates.Text{For: "The Lam family"}}}}}
	all := stacks{"letter": copies([]templates.Leaf{letter}, SheetRecord{ID: "letter-h1", Title: "Letter", To: "The Lam family", Copies: 1}),
		"a4": copies([]templates.Leaf{sign}, SheetRecord{ID: "sign-porch", Title: "Sign", To: "Front door", Copies: 3})}
	job := notices.Job{Code: "alder-14", Address: "14 Alder Court", Work: []notices.Work{{Days: []notices.Date{{Year: 2027, Month: time.May, Day: 8}}}}}
	record, files := JobRecord{Code: p.code}, Files{}
	prints, err := p.lists(job, notices.Plan{Homes: []notices.Home{{Who: notices.Name("The Lam family")}}}, all, &record, files)
	if err != nil {
		t.Fatal(err)
	}
	shop := string(files[record.CopyShop])
	if record.CopyShop != "print/alder-14/copy-shop.html" || len(prints) != 2 || prints[1].pdf != "print/alder-14/copy-shop.pdf" {
		t.Fatalf("the copy shop gets %q, and to print are %v", record.CopyShop, prints)
	}
	if sides := strings.Count(shop, `<section class="face`); sides != 6 || prints[1].sheet.Sides() != 6 || !strings.Contains(shop, "size: A4") {
		t.Errorf("three copies of a sign have %d sides, want 6 on the larger paper", sides)
	}
	for _, private := range []string{"Lam", "Alder Court", "Walk list"} {
		if strings.Contains(shop, private) {
			t.Errorf("the copy shop reads %q", private)
		}
	}
	if home := string(files[record.Everything]); strings.Contains(home, "Front door") || !strings.Contains(home, "The Lam family") || !strings.Contains(home, "size: letter") {
		t.Error("the home printer has the larger signs, or not the rest")
	}
}
