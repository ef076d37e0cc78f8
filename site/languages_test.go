package site_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/templates"
)

// pagesInAll are all pages of a job whose programme has every language, and its phone is answered in every one.
func pagesInAll(t *testing.T) map[string][]byte {
	t.Helper()
	job := demoJob(t, "alder-14")
	var all []notices.Language
	for _, l := range notices.Languages {
		all = append(all, l.Tag)
	}
	job.Programme.Languages, job.Programme.PhoneSpeaks = all, all
	first := job.Work[0].Days[0]
	job.Work[0].Days = []notices.Date{first, first.Plus(1), first.Plus(2)} // a span
	kit, err := site.NewKit(job.Programme, site.Key(strings.Repeat("k", 32)), os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	plan := notices.Decide(job)
	plan.Sheets = nil
	unit, err := site.Build(plan, ledger.Job{}, kit)
	if err != nil {
		t.Fatal(err)
	}
	pages := map[string][]byte{}
	for path, data := range unit.Files {
		if page, found := strings.CutPrefix(path, "web/"); found {
			pages[page] = data
		}
	}
	return pages
}

// Every page is in every language, says which and in which direction, arrives in one round trip, and names the others in themselves.
func TestPagesInEveryLanguage(t *testing.T) {
	pages, seen := pagesInAll(t), map[string]int{}
	for path, data := range pages {
		if len(data) > templates.MaxPageBytes {
			t.Errorf("%s has %d bytes, want at most %d", path, len(data), templates.MaxPageBytes)
		}
		document, err := goquery.NewDocumentFromReader(strings.NewReader(string(data)))
		if err != nil {
			t.Fatal(err)
		}
		parts := strings.Split(path, "/")
		if len(parts) < 4 {
			continue // the reader chooses here
		}
		l, known := notices.LanguageNamed(parts[1])
		speaker, err := locales.Open(string(l), nil)
		if !known || err != nil {
			t.Fatal(path, err)
		}
		root := document.Find("html")
		if root.AttrOr("lang", "") != string(l) || root.AttrOr("dir", "") != speaker.Direction() {
			t.Errorf("%s has the language %q and the direction %q", path, root.AttrOr("lang", ""), root.AttrOr("dir", ""))
		}
		if others := document.Find("nav a").Length(); others != len(notices.Languages)-1 {
			t.Errorf("%s leads to %d other languages", path, others)
		}
		if found := foreignSign(string(l), document.Find("main").Text()); found != "" {
			t.Errorf("%s has a sign of another script: %q", path, found)
		}
		seen[string(l)]++
	}
	for _, tag := range locales.Tags() {
		if seen[tag] != seen["en"] || seen[tag] < 5 {
			t.Errorf("there are %d pages in %s, and %d in English", seen[tag], tag, seen["en"])
		}
	}
}

// foreignSigns are marks of Latin text beside letters of a script that has its own, and in Chinese a space beside one of those. That Arabic has its own
// comma, semicolon and question mark, and Chinese its own full width ones, is in CLDR's punctuation of each (exemplarCharacters).
var foreignSigns = map[string]*regexp.Regexp{
	"ar":      regexp.MustCompile(`\p{Arabic}["”]?[,;?]|[,;?] *\p{Arabic}`),
	"zh-Hans": regexp.MustCompile(`\p{Han}[,.:;?!(]|[,:;?!)]\p{Han}|[，。：；？！、]  *\S|\p{Han} +\p{Han}`),
}

func foreignSign(language, text string) string {
	if pattern := foreignSigns[language]; pattern != nil {
		return pattern.FindString(text)
	}
	return ""
}

// The texts themselves have the signs of their script.
func TestTextsHaveTheirOwnSigns(t *testing.T) {
	for language := range foreignSigns {
		for id, text := range raw(t, language) {
			if found := foreignSign(language, text); found != "" {
				t.Errorf("%s in %s has a sign of another script: %q", id, language, found)
			}
		}
	}
	for text, language := range map[string]string{"بيت, باب": "ar", "أين?": "ar", "请关窗.": "zh-Hans", "说: 英语": "zh-Hans", "说： 英语": "zh-Hans", "直到 我们": "zh-Hans", "是(铅)": "zh-Hans"} {
		if foreignSign(language, text) == "" {
			t.Errorf("%q passes", text)
		}
	}
}

// The languages that the demo lacks, as a phone opens their pages. From right to left, the labels of a table stand on the right.
func TestWebPagesOfOtherLanguages(t *testing.T) {
	folder, pages := t.TempDir(), []string{}
	inDemo := demoJob(t, "alder-14").Programme.Languages
	for page, data := range pagesInAll(t) {
		at := filepath.Join(folder, filepath.FromSlash(page))
		if err := os.MkdirAll(filepath.Dir(at), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at, data, 0o600); err != nil {
			t.Fatal(err)
		}
		pages = append(pages, page)
	}
	server := servePages(t, folder, pages)
	for _, page := range pages {
		if l, known := notices.LanguageNamed(strings.Split(page, "/")[1]); known && slices.Contains(inDemo, l) {
			continue
		}
		t.Run(page, func(t *testing.T) {
			t.Parallel()
			b := openTab(t)
			openPage(b, server+address(page))
			checkPage(b)
			checkReflow(b)
			if got := evaluated[int](b, `[...document.querySelectorAll('tr')].filter(row =>
				(row.cells[0].getBoundingClientRect().left > row.cells[1].getBoundingClientRect().left) !== (document.dir === 'rtl')).length`); got > 0 {
				b.Errorf("%d labels stand on the wrong side", got)
			}
			checkAxe(b)
		})
	}
}
