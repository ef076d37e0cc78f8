package main

import (
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/doorleaf/site/fit"
)

const modules = "licences/modules/"

// Outside reference: the files of the modules themselves, as go list finds those that the program has on any system that we build for.
func TestLicencesOfModules(t *testing.T) {
	want := map[string]string{}
	for _, system := range []string{"windows", "darwin", "linux"} {
		for _, line := range strings.Split(strings.TrimSpace(listed(t, system)), "\n") {
			module, root, used := fields(t, line)
			if len(licencesIn(t, root)) == 0 {
				t.Errorf("the module %s has no text in %s that says its licence", module, root)
			}
			gather(t, want, module, root, used)
		}
	}
	if *update {
		write(t, want)
		return
	}
	compare(t, want)
}

// listed has a line for each package of the program that is of another module: the module, its folder, and that of the package.
func listed(t *testing.T, system string) string {
	t.Helper()
	list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Dir}}\t{{$.Dir}}{{end}}{{end}}", ".")
	list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
	out, err := list.Output()
	check(t, err)
	return string(out)
}

func fields(t *testing.T, line string) (module, root, used string) {
	t.Helper()
	parts := strings.Split(line, "\t")
	if len(parts) != 3 || !strings.HasPrefix(parts[2], parts[1]) {
		t.Fatalf("go list says %q", line)
	}
	return parts[0], parts[1], parts[2]
}

// gather adds the texts of a package and of all folders above it in its module.
func gather(t *testing.T, texts map[string]string, module, root, used string) {
	t.Helper()
	for name, text := range licencesIn(t, used) {
		within, err := filepath.Rel(root, used)
		check(t, err)
		texts[modules+path.Join(module, filepath.ToSlash(within), name)] = text
	}
	if used != root {
		gather(t, texts, module, root, filepath.Dir(used))
	}
}

var licenceName = regexp.MustCompile(`^(?i:licen[cs]e|copying|notice)`)

// licencesIn are the texts of a folder by the names of their files.
func licencesIn(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	check(t, err)
	all := map[string]string{}
	for _, entry := range entries {
		if !entry.IsDir() && licenceName.MatchString(entry.Name()) && filepath.Ext(entry.Name()) != ".go" {
			text, err := os.ReadFile(filepath.Join(dir, entry.Name()))
			check(t, err)
			all[entry.Name()] = string(text)
		}
	}
	return all
}

func write(t *testing.T, texts map[string]string) {
	t.Helper()
	check(t, os.RemoveAll(modules))
	for file, text := range texts {
		check(t, os.MkdirAll(filepath.Dir(file), 0o755))
		check(t, os.WriteFile(file, []byte(text), 0o644))
	}
}

// compare says which texts the program lacks, which differ, and which are of nothing that is in it.
func compare(t *testing.T, want map[string]string) {
	t.Helper()
	for file, text := range want {
		got, err := licenceFiles.ReadFile(file)
		if err != nil {
			t.Errorf("the program has no text %s; licences/SOURCES.md says how to write it", file)
		} else if string(got) != text {
			t.Errorf("%s differs from the text of the module", file)
		}
	}
	check(t, fs.WalkDir(licenceFiles, strings.TrimSuffix(modules, "/"), func(file string, entry fs.DirEntry, err error) error {
		if _, used := want[file]; err == nil && !entry.IsDir() && !used {
			t.Errorf("%s is of a module that is not in the program", file)
		}
		return err
	}))
}

func check(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Some packagers leave the licence out of their Go distribution.
func TestLicencesOfTheRest(t *testing.T) {
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	check(t, err)
	for ours, original := range map[string]string{
		"licences/doorleaf/LICENSE": "../../LICENSE",
		"licences/cldr/LICENSE":     "../../testdata/cldr/cldr-core/LICENSE",
		"licences/go/LICENSE":       filepath.Join(strings.TrimSpace(string(goroot)), "LICENSE"),
	} {
		want, err := os.ReadFile(original)
		if os.IsNotExist(err) && ours == "licences/go/LICENSE" && os.Getenv("CI") == "" {
			t.Logf("skipped: there is no %s", original)
			continue
		}
		check(t, err)
		if licenceText(ours) != string(want) {
			t.Errorf("%s differs from %s", ours, original)
		}
	}
}

// All texts are printed, ours first.
func TestLicencesArePrinted(t *testing.T) {
	code, out, says := ran(false, "licences")
	if code != 0 || says != "" || !strings.HasPrefix(out, "doorleaf\n========\n\nMIT License\n") {
		t.Fatalf("licences ends with %d, says %q and begins with %.80q", code, says, out)
	}
	texts := map[string]string{}
	check(t, fs.WalkDir(licenceFiles, "licences", func(file string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			texts[file] = licenceText(file)
		}
		return err
	}))
	for _, l := range fit.Licences() {
		texts[l.File] = string(l.Text)
	}
	for file, text := range texts {
		if !strings.Contains(out, "\n\n"+strings.Trim(text, "\n")+"\n\n") {
			t.Errorf("%s is not printed whole", file)
		}
	}
}
