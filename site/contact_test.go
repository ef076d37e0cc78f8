package site_test

import (
	"os"
	"path"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"example.org/doorleaf/site"
)

// The contact sheet shows every sheet of every job, as large as all its sides, and every page; each is a file that was made.
func TestContactSheetShowsEverything(t *testing.T) {
	folder := newFolder(t)
	files := madeIn(t, folder, marchFirst, demoJob(t, "alder-14"), demoJob(t, "quarry-231"))
	records, err := site.LoadRecords(os.DirFS(folder.Out))
	if err != nil {
		t.Fatal(err)
	}
	shown, turned := map[string]int{}, map[string]bool{}
	documentOf(t, files["print/contact.html"]).Find("figure").Each(func(_ int, figure *goquery.Selection) {
		file := path.Join("print", figure.Find("iframe").AttrOr("src", ""))
		sides, _ := strings.CutPrefix(figure.AttrOr("style", "--sides: 0"), "--sides: ")
		shown[file], _ = strconv.Atoi(sides)
		turned[file] = figure.Find(".turned").Length() > 0
		if _, there := files[file]; !there {
			t.Errorf("%s is no file that was made", file)
		}
		if link := path.Join("print", figure.Find("a").AttrOr("href", "")); link != file {
			t.Errorf("the name of %s opens %s", file, link)
		}
	})
	wanted := 0
	for _, job := range records {
		for _, sheet := range job.Sheets {
			wanted++
			if landscape := documentOf(t, files[sheet.Path]).Find("section.turned").Length() > 0; turned[sheet.Path] != landscape {
				t.Errorf("%s is shown landscape: %t, want %t", sheet.Path, turned[sheet.Path], landscape)
			}
			if faces := documentOf(t, files[sheet.Path]).Find("section.face").Length(); shown[sheet.Path] != faces {
				t.Errorf("%s is shown with %d sides, and has %d", sheet.Path, shown[sheet.Path], faces)
			}
		}
		for _, page := range job.Pages {
			wanted++
			if _, there := shown[page.Path]; !there {
				t.Errorf("%s is not shown", page.Path)
			}
		}
	}
	if len(shown) != wanted || wanted == 0 {
		t.Errorf("%d files are shown, want %d", len(shown), wanted)
	}
}

func documentOf(t *testing.T, data []byte) *goquery.Document {
	t.Helper()
	return goquery.NewDocumentFromNode(parsed(t, data))
}
