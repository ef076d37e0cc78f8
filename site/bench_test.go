package site_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/tree"
)

// testKey is the key of every folder in these tests, so that tokens are the same each time. The check is the start of
// sha256("doorleaf key 1\n" and the key), worked out with Python's hashlib.
const testKey = "key 000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f\ncheck 48d85b86\n"

var (
	marchFirst  = notices.Date{Year: 2027, Month: 3, Day: 1}
	marchSecond = notices.Date{Year: 2027, Month: 3, Day: 2}
)

// demoFolder is the folder of the demo's programme and jobs.
func demoFolder() fs.FS { return os.DirFS(filepath.Join("..", "cmd", "doorleaf", "demo")) }

// demoJob is one of the jobs that the demo comes with: a fresh one each time, so that a test may change it.
func demoJob(t testing.TB, code string) notices.Job {
	t.Helper()
	return loaded(t, demoFolder(), "jobs/"+code+".yaml")
}

// jobOf reads a job file of the demo's programme.
func jobOf(t testing.TB, text string) notices.Job {
	t.Helper()
	programme, err := fs.ReadFile(demoFolder(), jobfile.ProgrammeFile)
	if err != nil {
		t.Fatal(err)
	}
	return loaded(t, fstest.MapFS{jobfile.ProgrammeFile: {Data: programme}, "jobs/job.yaml": {Data: []byte(text)}}, "jobs/job.yaml")
}

func loaded(t testing.TB, folder fs.FS, file string) notices.Job {
	t.Helper()
	jobs, problems := jobfile.Load(folder, afterAll, file)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return jobs[0]
}

// small is a job with one way into each area, for tests that make many.
func small(job notices.Job) notices.Job {
	for i := range job.Work {
		job.Work[i].WaysIn = job.Work[i].WaysIn[:1]
	}
	return job
}

// newFolder is a programme folder with the test key and an empty ledger.
func newFolder(t testing.TB) site.Programme {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, site.KeyFile), []byte(testKey), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := ledger.Create(dir); err != nil {
		t.Fatal(err)
	}
	return site.Programme{Path: dir, Out: filepath.Join(dir, "out"), Writer: ledger.Writer{Laptop: "k7qm", Today: marchFirst}, Confirmed: true}
}

// madeIn makes jobs in a folder, and returns its output.
func madeIn(t testing.TB, folder site.Programme, today notices.Date, jobs ...notices.Job) tree.Files {
	t.Helper()
	folder.Writer.Today = today
	if _, err := folder.Make(plansOf(jobs...), func(string) {}); err != nil {
		t.Fatal(err)
	}
	return filesIn(t, folder.Out)
}

// made makes jobs in a new folder.
func made(t testing.TB, jobs ...notices.Job) tree.Files {
	t.Helper()
	return madeIn(t, newFolder(t), marchFirst, jobs...)
}

func filesIn(t testing.TB, dir string) tree.Files {
	t.Helper()
	files := tree.Files{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			files[path], err = os.ReadFile(filepath.Join(dir, path))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// below are the files under a folder of the output.
func below(files tree.Files, folder string) tree.Files {
	some := tree.Files{}
	for path, data := range files {
		if strings.HasPrefix(path, folder) {
			some[path] = data
		}
	}
	return some
}

func htmlFiles(files tree.Files) tree.Files {
	some := tree.Files{}
	for path, data := range files {
		if strings.HasSuffix(path, ".html") {
			some[path] = data
		}
	}
	return some
}

// parsed is an HTML file as a general parser (golang.org/x/net/html) reads it.
func parsed(t testing.TB, data []byte) *html.Node {
	t.Helper()
	tree, err := html.Parse(strings.NewReader(string(data)))
	if err != nil {
		t.Fatal(err)
	}
	return tree
}

// textOf is all text of a tree that a reader sees, with a space between elements that are not words of one text.
func textOf(tree *html.Node) string {
	var text strings.Builder
	for n := range tree.Descendants() {
		if n.Type == html.TextNode && n.Parent.Data != "style" {
			text.WriteString(n.Data)
			text.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(text.String()), " ")
}
