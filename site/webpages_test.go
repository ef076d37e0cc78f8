package site_test

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/PuerkitoBio/goquery"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/templates"
)

// Outside references of this file: axe-core, with the rules of WCAG 2.0, 2.1 and 2.2 at levels A and AA; html-validate, with the element data of
// the HTML Living Standard; and Chromium, under a server of plain files like that of the programme.

// webPages are the paths of all pages of the demo, below the folder web.
func webPages(t *testing.T, demo *builtDemo) []string {
	t.Helper()
	var pages []string
	err := fs.WalkDir(os.DirFS(demo.path("web")), ".", func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			pages = append(pages, path)
		}
		return err
	})
	if err != nil || len(pages) == 0 {
		t.Fatal("no pages", err)
	}
	return pages
}

// address is where a server of plain files shows a page.
func address(page string) string { return "/" + strings.TrimSuffix(page, "index.html") }

// Every page of the demo, as a phone opens it.
func TestWebPages(t *testing.T) {
	demo := demoOn(t, "letter")
	pages := webPages(t, demo)
	server := servePages(t, demo.path("web"), pages)
	for _, page := range pages {
		t.Run(page, func(t *testing.T) {
			t.Parallel()
			b := openTab(t)
			requests := openPage(b, server+address(page))
			checkPage(b)
			checkReflow(b)
			checkAxe(b)
			if got := requests(); !slices.Equal(got, []string{server + address(page)}) {
				t.Errorf("the page asks for %q, want itself alone", got)
			}
		})
	}
}

// servePages serves a folder until the test ends. Whoever asks for anything but a page, such as an icon, fails the test.
func servePages(t *testing.T, folder string, pages []string) string {
	t.Helper()
	var lock sync.Mutex
	files := http.FileServer(http.Dir(folder))
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !slices.ContainsFunc(pages, func(page string) bool { return address(page) == r.URL.Path }) {
			lock.Lock()
			defer lock.Unlock()
			t.Errorf("a page asks the server for %s", r.URL.Path)
		}
		files.ServeHTTP(w, r)
	}))
	t.Cleanup(server.Close)
	return server.URL
}

// openPage opens a page on a small phone. The function that it returns lists all that the browser has asked for.
func openPage(b tab, at string) (requests func() []string) {
	b.Helper()
	var lock sync.Mutex
	var all []string
	if _, err := chromedp.Call(b.ctx, network.Enable, network.EnableParams{}); err != nil {
		b.Fatal(err)
	}
	err := chromedp.Listen(b.ctx, func(event any) {
		if sent, ok := event.(*network.EventRequestWillBeSent); ok && !strings.HasPrefix(sent.Request.URL, "data:") {
			lock.Lock()
			defer lock.Unlock()
			all = append(all, sent.Request.URL)
		}
	})
	if err != nil {
		b.Fatal(err)
	}
	b.do(chromedp.EmulateViewport(320, 640), chromedp.Navigate(at))
	return func() []string {
		lock.Lock()
		defer lock.Unlock()
		return slices.Clone(all)
	}
}

// checkPage looks for what a page does without, and for what it needs: a policy that lets its own style through, and a phone to ring.
func checkPage(b tab) {
	b.Helper()
	page := evaluated[struct {
		Scripts, Phones, Broken int // Broken are phone numbers on two lines
		Cookie, Policy, Icon    string
		Width                   string // of the body at most, from the style
	}](b, `({
		Scripts: document.scripts.length, Phones: document.querySelectorAll('a[href^="tel:"]').length,
		Broken: [...document.querySelectorAll('a[href^="tel:"]:not(:has(bdi)), a[href^="tel:"] bdi')].filter(e => e.getClientRects().length > 1).length, Cookie: document.cookie,
		Icon: document.querySelector('link[rel="icon"]')?.href ?? '',
		Policy: document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.content ?? '',
		Width: getComputedStyle(document.body).maxWidth})`)
	if page.Scripts != 0 || page.Cookie != "" {
		b.Errorf("%d scripts and the cookie %q, want none", page.Scripts, page.Cookie)
	}
	if !strings.Contains(page.Policy, "default-src 'none'") {
		b.Errorf("the policy %q does not forbid everything first", page.Policy)
	}
	if !strings.HasPrefix(page.Icon, "data:") {
		b.Errorf("the icon is %q: without one of its own the page makes browsers ask the server for one, though not a browser without a window", page.Icon)
	}
	if !strings.HasSuffix(page.Width, "px") {
		b.Errorf("the body is at most %q wide: its style is not applied", page.Width)
	}
	if page.Phones == 0 || page.Broken > 0 {
		b.Errorf("%d phone numbers to press, %d of them on two lines; want at least one on one line", page.Phones, page.Broken)
	}
}

// checkReflow looks for scrolling sideways: at 320 px, which is 1280 px at 400 % (WCAG 2.2, 1.4.10), and with text of twice its size (1.4.4).
func checkReflow(b tab) {
	b.Helper()
	const width = `document.documentElement.scrollWidth`
	if got := evaluated[int](b, width); got > 320 {
		b.Errorf("%d px wide on a screen of 320", got)
	}
	b.do(chromedp.EmulateViewport(640, 640))
	got := evaluated[[2]float64](b, `(() => {
		const root = document.documentElement, size = () => parseFloat(getComputedStyle(document.querySelector('p')).fontSize), before = size();
		root.style.fontSize = 2 * parseFloat(getComputedStyle(root).fontSize) + 'px';
		const result = [`+width+`, size() / before];
		root.style.fontSize = '';
		return result;
	})()`)
	if got[0] > 640 || got[1] != 2 {
		b.Errorf("%g px wide on a screen of 640, with text of %g times its size; want at most 640 with 2", got[0], got[1])
	}
	b.do(chromedp.EmulateViewport(320, 640))
}

var axeSource = sync.OnceValues(func() (string, error) {
	source, err := os.ReadFile(filepath.Join("..", ".ci", "node_modules", axeFile))
	return string(source), err
})

const axeFile = "axe-core/axe.min.js"

// checkAxe runs axe. That a rule which every page has to meet was passed shows that it did run.
func checkAxe(b tab) {
	b.Helper()
	checker(b.T, axeFile)
	source, err := axeSource()
	if err != nil {
		b.Fatal(err)
	}
	b.do(chromedp.Evaluate[chromedp.Void](source))
	found := evaluated[struct {
		Violations []string
		Passes     []string
	}](b, `axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}).then(r => ({
		Violations: r.violations.map(v => v.id + ': ' + v.help + ': ' + v.nodes.map(n => n.html).join(' | ')),
		Passes: r.passes.map(p => p.id)}))`)
	for _, violation := range found.Violations {
		b.Error("axe: ", violation)
	}
	for _, rule := range []string{"color-contrast", "html-has-lang", "html-lang-valid", "target-size"} {
		if !slices.Contains(found.Passes, rule) && len(found.Violations) == 0 {
			b.Errorf("axe did not look at %s; it passed %v", rule, found.Passes)
		}
	}
}

// The coordinator's sheet and the contact sheet are read on a screen too.
func TestOverviewIsAccessible(t *testing.T) {
	demo := demoOn(t, "letter")
	for _, path := range []string{"print/index.html", "print/contact.html"} {
		t.Run(path, func(t *testing.T) {
			b := openTab(t)
			b.openFile(demo.path(path))
			checkAxe(b)
		})
	}
}

// A page arrives in one round trip, and every link on it leads to a page or rings a phone.
func TestWebLinks(t *testing.T) {
	demo := demoOn(t, "letter")
	pages := webPages(t, demo)
	for _, page := range pages {
		data, err := os.ReadFile(filepath.Join(demo.path("web"), filepath.FromSlash(page)))
		if err != nil {
			t.Fatal(err)
		}
		if len(data) > templates.MaxPageBytes {
			t.Errorf("%s has %d bytes, want at most %d", page, len(data), templates.MaxPageBytes)
		}
		document, err := goquery.NewDocumentFromReader(strings.NewReader(string(data)))
		if err != nil {
			t.Fatal(err)
		}
		for _, link := range document.Find("a").EachIter() {
			if err := checkLink(pages, page, document, link.AttrOr("href", "")); err != nil {
				t.Errorf("%s: %v", page, err)
			}
		}
	}
}

func checkLink(pages []string, page string, document *goquery.Document, href string) error {
	link, err := url.Parse(href)
	switch {
	case err != nil:
		return err
	case link.Scheme == "tel":
		return nil
	case link.IsAbs() || link.Host != "" || href == "":
		return fmt.Errorf("the link %q leads elsewhere", href)
	case link.Path == "":
		if document.Find("[id]").FilterFunction(func(_ int, e *goquery.Selection) bool { return e.AttrOr("id", "") == link.Fragment }).Length() != 1 {
			return fmt.Errorf("the link %q leads to no place on the page", href)
		}
		return nil
	}
	target := (&url.URL{Path: address(page)}).ResolveReference(link).Path
	if !slices.ContainsFunc(pages, func(p string) bool { return address(p) == target }) {
		return fmt.Errorf("the link %q leads to %s, and there is no such page", href, target)
	}
	return nil
}

// A problem of html-validate.
type problem struct {
	FilePath string
	Messages []struct {
		RuleID, Message string
		Line            int
	}
}

// All files of the output are valid HTML. An invalid file among them shows that the checker did look. Three rules are off in
// .ci/htmlvalidate.json: measured type needs inline styles (no-inline-style); a style keeps phone numbers on one line, which checkPage looks for
// (tel-non-breaking); and a title is the head of its page, not a line for search engines (long-title).
func TestValidHTML(t *testing.T) {
	demo := demoOn(t, "letter")
	bad := filepath.Join(t.TempDir(), "bad.html")
	if err := os.WriteFile(bad, []byte("<!DOCTYPE html>\n<html lang=\"en\"><head><title>Bad</title></head><body><p><div></div></p></body></html>\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	noticed := false
	for _, file := range validate(t, demo.path("web"), demo.path("print"), bad) {
		if filepath.Base(file.FilePath) == filepath.Base(bad) {
			noticed = true
			continue
		}
		for _, m := range file.Messages {
			t.Errorf("%s:%d: %s (%s)", file.FilePath, m.Line, m.Message, m.RuleID)
		}
	}
	if !noticed {
		t.Error("html-validate found nothing wrong with an invalid file")
	}
}

// validate has html-validate write its findings to a file, because Node cuts off what it prints to a pipe.
func validate(t *testing.T, paths ...string) []problem {
	t.Helper()
	node := program(t, "no node found: install Node", "node")
	report := filepath.Join(t.TempDir(), "report.json")
	args := append([]string{checker(t, "html-validate/bin/html-validate.mjs"),
		"--config", filepath.Join("..", ".ci", "htmlvalidate.json"), "--formatter", "json=" + report}, paths...)
	printed, _ := exec.CommandContext(t.Context(), node, args...).CombinedOutput() // fails whenever it finds anything
	data, err := os.ReadFile(report)
	if err != nil {
		t.Fatalf("html-validate wrote no report:\n%s", printed)
	}
	var found []problem
	if err := json.Unmarshal(data, &found); err != nil {
		t.Fatal(err)
	}
	return found
}

// A page of many dates still arrives in one round trip, and one of too many is refused with what to do about it.
func TestManyDates(t *testing.T) {
	job, kit := jobWithKit(t, 12)
	plan := notices.Decide(job)
	plan.Sheets = nil // paper has room for fewer
	unit, err := site.Build(plan, ledger.Job{}, kit)
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for path, data := range unit.Files {
		rows = max(rows, strings.Count(string(data), "<tr>"))
		if strings.HasPrefix(path, "web/") && len(data) > templates.MaxPageBytes {
			t.Errorf("%s has %d bytes, want at most %d", path, len(data), templates.MaxPageBytes)
		}
	}
	if rows < 12 {
		t.Errorf("the longest table has %d rows, want 12 days at the least", rows)
	}
}

func TestTooManyDates(t *testing.T) {
	for what, sheets := range map[string]bool{"page": false, "paper": true} {
		t.Run(what, func(t *testing.T) {
			job, kit := jobWithKit(t, 60)
			plan := notices.Decide(job)
			if !sheets {
				plan.Sheets = nil
			}
			_, err := site.Build(plan, ledger.Job{}, kit)
			if err == nil || !strings.Contains(err.Error(), "split the job in two") {
				t.Errorf("60 days at different hours: %v, want advice to split the job", err)
			}
		})
	}
}

func jobWithKit(t *testing.T, days int) (notices.Job, site.Kit) {
	t.Helper()
	programme, err := os.ReadFile("../cmd/doorleaf/demo/" + jobfile.ProgrammeFile)
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{jobfile.ProgrammeFile: {Data: programme}, "jobs/days.yaml": {Data: []byte(jobOnDays(days))}}
	jobs, problems := jobfile.Load(files, afterAll, "jobs/days.yaml")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	kit, err := site.NewKit(jobs[0].Programme, site.Key(strings.Repeat("k", 32)), os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	return jobs[0], kit
}

// jobOnDays is a job with outside work on a number of days, at another hour each.
func jobOnDays(days int) string {
	var work strings.Builder
	for i := range days {
		fmt.Fprintf(&work, "  - {id: w%d, where: outside, area: front_porch, task: scrape_and_paint, parts: [railings], how_much: 60 sq ft, faces: [street],"+
			" days: [2027-%02d-%02d], crew_arrives: 08:%02d, cleaned_by: 16:%02d, ways_in: [front_door]}\n", i, 5+i/28, 1+i%28, i, i)
	}
	return `code: many-days
address: 14 Alder Court, Larkfield
state: MN
built: 1931
owner: lives_here
anyone_paid: no
federal_housing_money: no
checked_by: crew_look
on_the_day: {name: Rosa, phone: 612-555-0142, speaks: [en]}
work:
` + work.String() + `households: []
neighbours:
  - {id: n12, address: 12 Alder Court, gap: 14 ft, languages: [es]}
`
}
