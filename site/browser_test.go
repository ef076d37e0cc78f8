package site_test

import (
	"context"
	"fmt"
	"log"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
)

// What the tests of printed sheets and of web pages share: the output of the demo on both papers, one Chromium with a tab for each test, and
// the programs that read what Chromium prints.

// afterAll is a moment by which everything in the tests' job files has happened.
var afterAll = time.Date(2036, time.January, 1, 12, 0, 0, 0, time.UTC)

func TestMain(m *testing.M) {
	code := m.Run()
	closeBrowser()
	for _, built := range append(slices.Collect(maps.Values(demos)), scripts) {
		os.RemoveAll(built.programme)
	}
	os.Exit(code)
}

// A built demo is the programme folder of the demo with its output, made once for all tests.
type builtDemo struct {
	once      sync.Once
	programme string
	jobs      []record.Job
	err       error
}

var demos = map[string]*builtDemo{"letter": {}, "a4": {}, "letter\nlarger_paper: [11x17]": {}, "letter\nlarge_print: yes": {}}

// out is the output folder.
func (d *builtDemo) out() string { return filepath.Join(d.programme, "out") }

// path is where a file of a record lies.
func (d *builtDemo) path(recorded string) string {
	return filepath.Join(d.out(), filepath.FromSlash(recorded))
}

func demoOn(t *testing.T, paper string) *builtDemo {
	t.Helper()
	d := demos[paper]
	d.once.Do(func() { d.err = d.build(paper) })
	if d.err != nil {
		t.Fatal(d.err)
	}
	return d
}

func (d *builtDemo) build(paper string) (err error) {
	if err := d.copyFrom("../cmd/doorleaf/demo"); err != nil {
		return err
	}
	if err := setPaper(filepath.Join(d.programme, jobfile.ProgrammeFile), paper); err != nil {
		return err
	}
	return d.make()
}

func (d *builtDemo) copyFrom(folder string) (err error) {
	if d.programme, err = os.MkdirTemp("", "doorleaf-demo"); err != nil {
		return err
	}
	return os.CopyFS(d.programme, os.DirFS(folder))
}

func (d *builtDemo) make() (err error) {
	if err := makeAll(d.programme); err != nil {
		return err
	}
	d.jobs, err = record.Load(os.DirFS(d.out()))
	return err
}

var paperLine = regexp.MustCompile(`(?m)^paper: \w+$`)

func setPaper(path, paper string) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if !paperLine.Match(text) {
		return fmt.Errorf("%s names no paper", path)
	}
	return os.WriteFile(path, paperLine.ReplaceAll(text, []byte("paper: "+paper)), 0o600)
}

// printedKey makes the codes of the demo the same in each run; readers of damaged codes are no better than the pattern that they meet.
const printedKey site.Key = "0123456789abcdef0123456789abcdef"

// makeAll makes every job of a programme folder into its folder out.
func makeAll(programme string) error {
	jobs, problems := jobfile.Load(os.DirFS(programme), afterAll, jobFiles(programme)...)
	if len(problems) > 0 {
		return problems
	}
	if err := site.WriteKey(filepath.Join(programme, site.KeyFile), printedKey); err != nil {
		return err
	}
	if err := ledger.Create(programme); err != nil {
		return err
	}
	folder := site.Programme{Path: programme, Out: filepath.Join(programme, "out"), Writer: ledger.Writer{Laptop: "k7qm", Today: notices.Date{Year: 2027, Month: time.April, Day: 1}}}
	_, err := folder.Make(plansOf(jobs...), func(string) {})
	return err
}

func jobFiles(programme string) []string {
	var names []string
	files, _ := filepath.Glob(filepath.Join(programme, "jobs", "*.yaml")) // fails on a malformed pattern alone
	for _, file := range files {
		names = append(names, "jobs/"+filepath.Base(file))
	}
	return names
}

// program is the path of the first of the programs that is there. Without one the test is skipped with the advice, but not under CI.
func program(t *testing.T, advice string, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	missing(t, advice)
	return ""
}

func missing(t *testing.T, what string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(what)
	}
	t.Skip(what)
}

// checker is the path of a file of the npm packages that .ci/package.json names.
func checker(t *testing.T, path string) string {
	t.Helper()
	full := filepath.Join("..", ".ci", "node_modules", filepath.FromSlash(path))
	if _, err := os.Stat(full); err != nil {
		missing(t, "no "+path+" found: run npm ci in the folder .ci")
	}
	return full
}

// output runs a program and returns what it prints.
func output(t *testing.T, name string, args ...string) string {
	t.Helper()
	var errs strings.Builder
	cmd := exec.CommandContext(t.Context(), name, args...)
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s%s", filepath.Base(name), strings.Join(args, " "), err, out, errs.String())
	}
	return string(out)
}

// browser is the one Chromium of all tests, once it has started.
var browser struct {
	once  sync.Once
	ctx   context.Context
	close context.CancelFunc
	err   error
}

func startBrowser(path string) {
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-quic", true))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	allocator, _ := chromedp.NewExecAllocator(context.Background(), options...)
	browser.ctx, browser.close = chromedp.NewContext(allocator)
	browser.err = chromedp.Do(browser.ctx) // starts it
}

func closeBrowser() {
	if browser.ctx == nil {
		return
	}
	ctx, cancel := context.WithTimeout(browser.ctx, 10*time.Second)
	defer cancel()
	if err := chromedp.Cancel(ctx); err != nil {
		log.Print("Chromium did not close: ", err)
	}
}

// A tab is one page in the browser.
type tab struct {
	*testing.T
	ctx context.Context
}

// openTab is an empty tab that closes with the test.
func openTab(t *testing.T) tab {
	t.Helper()
	path := chromium(t)
	browser.once.Do(func() { startBrowser(path) })
	if browser.err != nil {
		t.Fatalf("Chromium does not start: %v", browser.err)
	}
	ctx, closeTab := chromedp.NewContext(browser.ctx)
	if err := chromedp.Do(ctx); err != nil { // opens it, before any time limit
		t.Fatal(err)
	}
	limited, cancel := context.WithTimeout(ctx, time.Minute)
	t.Cleanup(func() { cancel(); closeTab() })
	return tab{t, limited}
}

// chromium is the path of the browser. Without one the test is skipped, but not under CI.
func chromium(t *testing.T) string {
	t.Helper()
	return program(t, "no Chromium found: install it or set CHROME_PATH", os.Getenv("CHROME_PATH"), "chromium", "chromium-browser", "google-chrome")
}

// painters skips a test that looks at paper where nobody can paint it.
func painters(t *testing.T) {
	t.Helper()
	chromium(t)
	program(t, "no pdftoppm found: install poppler-utils", "pdftoppm")
}

func (b tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.Fatal(err)
	}
}

// openFile opens a file on disk, as the coordinator does.
func (b tab) openFile(path string) {
	b.Helper()
	full, err := filepath.Abs(path)
	if err != nil {
		b.Fatal(err)
	}
	b.do(chromedp.Navigate("file:///" + strings.TrimPrefix(filepath.ToSlash(full), "/")))
}

// asPrinted lays the page out for paper.
func (b tab) asPrinted() {
	b.Helper()
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		b.Fatal(err)
	}
}

// pdf prints the page as a person does who leaves the margins to the page and asks for its backgrounds. It returns the path of the file.
func (b tab) pdf() string {
	b.Helper()
	data, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
	if err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(b.TempDir(), "printed.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		b.Fatal(err)
	}
	return path
}

// evaluated is the value of an expression in the page, awaited when it is a promise.
func evaluated[T any](b tab, expression string) T {
	b.Helper()
	value, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		b.Fatal(err)
	}
	return value
}
