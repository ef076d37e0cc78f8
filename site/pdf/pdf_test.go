package pdf

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestFindPrefersTheNamedBrowser(t *testing.T) {
	named := program(t, t.TempDir(), "my-browser")
	t.Setenv("PATH", filepath.Dir(program(t, t.TempDir(), "chromium")))
	found, err := find(func(name string) string { return map[string]string{"CHROME_PATH": named}[name] }, "linux")
	if err != nil || found.Path != named {
		t.Errorf("found %v, %v; want %s", found, err, named)
	}
}

func TestFindLooksOnPath(t *testing.T) {
	for _, name := range []string{"chromium", "google-chrome", "microsoft-edge"} {
		there := program(t, t.TempDir(), name)
		t.Setenv("PATH", filepath.Dir(there))
		if found, err := find(func(string) string { return "" }, "linux"); err != nil || found.Path != there {
			t.Errorf("found %v, %v; want %s", found, err, there)
		}
	}
}

func TestFindLooksWhereInstallersPutIt(t *testing.T) {
	t.Setenv("PATH", "")
	home := t.TempDir()
	there := program(t, home, "Applications", "Microsoft Edge.app", "Contents", "MacOS", "Microsoft Edge")
	found, err := find(func(name string) string { return map[string]string{"HOME": home}[name] }, "darwin")
	if err != nil || found.Path != there {
		t.Skipf("found %v, %v: a browser of this computer comes first", found, err)
	}
}

func TestInstalledOnWindows(t *testing.T) {
	env := map[string]string{"ProgramFiles": `C:\Program Files`, "ProgramFiles(x86)": `C:\Program Files (x86)`}
	all := installed(func(name string) string { return env[name] }, "windows")
	text := strings.ReplaceAll(strings.Join(all, "\n"), "/", `\`)
	for _, want := range []string{`C:\Program Files\Google\Chrome\Application\chrome.exe`, `C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe`} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not among\n%s", want, text)
		}
	}
}

// Without a browser one sentence says how to get one.
func TestNoBrowser(t *testing.T) {
	t.Setenv("PATH", "")
	_, err := find(func(string) string { return "" }, "linux")
	if !errors.Is(err, errNoBrowser) || !strings.Contains(err.Error(), "install") || strings.Contains(err.Error(), "\n") {
		t.Errorf("%v does not say in one sentence what to install", err)
	}
	_, err = find(func(string) string { return "nowhere" }, "linux")
	if err == nil || !strings.Contains(err.Error(), "CHROME_PATH names nowhere") {
		t.Errorf("%v does not say that CHROME_PATH is wrong", err)
	}
}

// program is an empty program at a path.
func program(t *testing.T, parts ...string) string {
	t.Helper()
	path := filepath.Join(parts...)
	if filepath.Separator == '\\' {
		path += ".exe"
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, nil, 0o700); err != nil {
		t.Fatal(err)
	}
	return path
}

// Only the two dates go, and nothing moves.
func TestTimeIsBlanked(t *testing.T) {
	const before = "<</Title (D:2027)\n/CreationDate (D:20270401120000+00'00')\n/ModDate (D:20270401120000Z)>>\nstream"
	const after = "<</Title (D:2027)\n                                       \n                            >>\nstream"
	if got := string(withoutTime([]byte(before))); got != after {
		t.Errorf("got  %q\nwant %q", got, after)
	}
}

// Names keep their order, their length and who refers to whom.
func TestCountsAreTakenOut(t *testing.T) {
	const before, after = "/ID (node00000042) /ID (node00000023) [(node00000042) (node7)]", "/ID (node00000002) /ID (node00000001) [(node00000002) (node7)]"
	if got := string(withoutCounts([]byte(before))); got != after {
		t.Errorf("got  %q\nwant %q", got, after)
	}
}

func TestFileURL(t *testing.T) {
	for path, want := range map[string]string{"/a b/ü#1.html": "file:///a%20b/%C3%BC%231.html"} {
		if got := fileURL(path); got != want {
			t.Errorf("%s is %s, want %s", path, got, want)
		}
	}
}

// A program that is no browser, or one that fails, is reported with its last words.
func TestFailureIsReported(t *testing.T) {
	dir := t.TempDir()
	_, err := Browser{program(t, dir, "empty")}.Print(filepath.Join(dir, "x.html"), dir)
	if err == nil || !strings.Contains(err.Error(), "made no PDF") {
		t.Errorf("got %v", err)
	}
}
