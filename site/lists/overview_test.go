package lists

import (
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

// Every kind of sheet is carried with one pile, whether it is for somebody or to spare. A kind that nobody thought of would lie on the wrong one, or on none.
func TestEachSheetLiesOnOnePile(t *testing.T) {
	for _, kind := range notices.Kinds {
		for _, to := range [][]string{nil, {"h1"}} {
			sheet := record.Sheet{Kind: string(kind.Kind), For: to}
			var names []string
			for _, p := range piles {
				if p.holds(sheet) {
					names = append(names, p.name)
				}
			}
			if len(names) != 1 {
				t.Errorf("%s for %v lies on %q", kind.Kind, to, names)
			}
		}
	}
}

// A household's letters are no neighbour's, and what hangs goes with the crew.
func TestPilesByCarriage(t *testing.T) {
	for kind, want := range map[notices.Kind]string{
		notices.StayOutLetter: "Letters", notices.ReturnLetter: "Letters", notices.CleanAgainLetter: "Letters", notices.CloseWindowsRequest: "Neighbors, in street order",
		notices.CommonAreaNotice: "Neighbors, in street order", notices.WorkAreaSign: "The crew's door pack", notices.CommonAreaSign: "The crew's door pack",
	} {
		for _, p := range piles {
			if sheet := (record.Sheet{Kind: string(kind), For: []string{"x"}}); p.holds(sheet) && p.name != want {
				t.Errorf("%s lies on %q, want %q", kind, p.name, want)
			}
		}
	}
}

// What the list says of a draft is what the paper says: a review that came after the make changes nothing on paper.
func TestDraftsAreThoseOfThePaper(t *testing.T) {
	made := record.Job{Code: "alder-14", Address: "14 Alder Court", Sheets: []record.Sheet{{
		Kind: string(notices.StayOutLetter), Title: "Stay-out letter", To: "The Lam family", For: []string{"h1"},
		Faces: []record.Face{{Language: "vi", LanguageName: "Vietnamese", Draft: true, Pages: 1}, {Language: "en", LanguageName: "English", Pages: 1}},
	}}}
	if got := drafts(made); len(got) != 1 || got[0] != "Vietnamese" {
		t.Errorf("drafts %v", got)
	}
	page, err := Overview([]record.Job{made}, nil)
	if err != nil || !strings.Contains(string(page), "Vietnamese") {
		t.Errorf("the list does not say it: %v", err)
	}
}

func TestDays(t *testing.T) {
	day := notices.Date{Year: 2027, Month: 5, Day: 8}
	for got, want := range map[string]string{
		Day(day): "Sat May 8", LongDay(day): "Sat May 8, 2027", WrittenDay("2027-05-08"): "Sat May 8, 2027", WrittenDay(""): "", days("2027-05-08", "", "2027-05-11"): "Sat May 8, Tue May 11",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
