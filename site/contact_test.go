package site_test

import (
	"math"
	"os"
	"path"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/chromedp/chromedp"

	"example.org/doorleaf/site/record"
)

// The contact sheet shows every sheet of every job, as large as all its sides, and every page; each is a file that was made.
func TestContactSheetShowsEverything(t *testing.T) {
	folder := newFolder(t)
	files := madeIn(t, folder, marchFirst, demoJob(t, "alder-14"), demoJob(t, "quarry-231"))
	records, err := record.Load(os.DirFS(folder.Out))
	if err != nil {
		t.Fatal(err)
	}
	shown, joined := map[string]int{}, map[string]bool{}
	documentOf(t, files["print/contact.html"]).Find("figure").Each(func(_ int, figure *goquery.Selection) {
		file := path.Join("print", strings.TrimSuffix(figure.Find("iframe").AttrOr("src", ""), "#small"))
		sides, _ := strings.CutPrefix(figure.AttrOr("style", "--sides: 0"), "--sides: ")
		shown[file], _ = strconv.Atoi(sides)
		joined[file] = figure.HasClass("joined")
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
			if tiled := documentOf(t, files[sheet.Path]).Find("section.tile").Length() > 0; joined[sheet.Path] != tiled {
				t.Errorf("%s is shown joined: %t, want %t", sheet.Path, joined[sheet.Path], tiled)
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

// A frame of the contact sheet is as large as the file that it shows: nothing is cut off, and there is no more than the air around a side. A sign over several
// sheets is shown joined. Outside reference: Chromium, which lays both out.
func TestContactFramesFitTheirSheets(t *testing.T) {
	t.Parallel()
	for paper := range demos {
		t.Run(paper, func(t *testing.T) {
			demo := demoOn(t, paper)
			b := openTab(t)
			b.openFile(demo.path("print/contact.html"))
			seen := map[string]bool{}
			for _, frame := range evaluated[[]contactFrame](b, contactFrames) {
				if seen[frame.Layout] {
					continue // one of each size is enough
				}
				seen[frame.Layout] = true
				b.do(chromedp.EmulateViewport(frame.Width, frame.Height))
				b.openFile(demo.path(path.Join("print", frame.File)))
				checkFrame(b, frame)
			}
			if len(seen) < 2 {
				t.Errorf("%d frames are of different layouts: %v", len(seen), seen)
			}
		})
	}
}

type contactFrame struct {
	File, Layout  string
	Width, Height int64 // px, before it is made small
}

const contactFrames = `[...document.querySelectorAll('figure.sheet')].map(f => {
  const frame = f.querySelector('iframe');
  return {File: frame.getAttribute('src'), Layout: f.className + f.getAttribute('style'), Width: frame.offsetWidth, Height: frame.offsetHeight};
})`

func checkFrame(b tab, frame contactFrame) {
	b.Helper()
	shown := evaluated[struct {
		Width, Height float64 // of all that there is to see
		Faces, Boards []box
	}](b, `(() => {
  const boxes = what => [...document.querySelectorAll(what)].map(e => e.getBoundingClientRect()).map(r => ({Left: r.left, Top: r.top, Right: r.right, Bottom: r.bottom}));
  return {Width: document.documentElement.scrollWidth, Height: document.documentElement.scrollHeight, Faces: boxes('.face:not(.blank)'), Boards: boxes('.tile .board')};
})()`)
	right, bottom := 0.0, 0.0
	for _, face := range shown.Faces {
		right, bottom = max(right, face.Right), max(bottom, face.Bottom)
	}
	if shown.Width > float64(frame.Width) || shown.Height > float64(frame.Height) || float64(frame.Width)-right > 10*mm || float64(frame.Height)-bottom > 10*mm {
		b.Errorf("%s: %g by %g px with sides up to %.0f and %.0f, in a frame of %d by %d", frame.File, shown.Width, shown.Height, right, bottom, frame.Width, frame.Height)
	}
	for i := 1; i < len(shown.Boards); i++ {
		if gap := shown.Boards[i].Top - shown.Boards[i-1].Bottom; math.Abs(gap) > 1 {
			b.Errorf("%s: %.1f px between sheets that are joined", frame.File, gap)
		}
	}
}

func documentOf(t *testing.T, data []byte) *goquery.Document {
	t.Helper()
	return goquery.NewDocumentFromNode(parsed(t, data))
}
