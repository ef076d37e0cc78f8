package fit

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/font/opentype/tables"
)

// Outside reference: the digests by sha256sum of the files of the module that fonts/SOURCES.md names.
func TestEmbeddedFilesAreThoseOfTheTable(t *testing.T) {
	table, err := os.ReadFile("fonts/SOURCES.md")
	if err != nil {
		t.Fatal(err)
	}
	want, got := map[string]string{}, map[string]string{}
	for _, row := range regexp.MustCompile("(?m)^\\| `([^`]+)` .* `([0-9a-f]{64})` \\|$").FindAllStringSubmatch(string(table), -1) {
		want[row[1]] = row[2]
	}
	files, err := fs.ReadDir(inside, "fonts")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		got[file.Name()] = fmt.Sprintf("%x", sha256.Sum256(embedded(file.Name())))
	}
	if !maps.Equal(got, want) {
		t.Errorf("the program has\n%v\nand the table says\n%v", got, want)
	}
	for _, f := range Inside() {
		if f.SHA256() != want[f.File] {
			t.Errorf("%s has the digest %s, and the table says %q", f.File, f.SHA256(), want[f.File])
		}
	}
}

// Each font says in its name table under which licence it is: entry 13, as the OpenType specification numbers them; entry 0 is whose it is.
func TestFontsHaveTheirLicences(t *testing.T) {
	covered := map[string]string{}
	for _, l := range Licences() {
		for _, family := range strings.Split(l.Fonts, " and ") {
			covered[family] = strings.Join(strings.Fields(string(l.Text)), " ")
		}
	}
	for _, f := range Inside() {
		about, text := described(t, f, 13), covered[f.Family]
		switch {
		case strings.Contains(about, "Apache License, Version 2.0"):
			if !strings.HasPrefix(text, "Apache License Version 2.0, January 2004") {
				t.Errorf("%s is under %q, and beside it lies %.60q", f.File, about, text)
			}
		case strings.Contains(about, "SIL Open Font License, Version 1.1"):
			if !strings.HasPrefix(text, described(t, f, 0)+" This Font Software is licensed under the SIL Open Font License, Version 1.1.") {
				t.Errorf("%s, %q, is under %q, and beside it lies %.60q", f.File, described(t, f, 0), about, text)
			}
		default:
			t.Errorf("%s is under %q, which nothing beside it is", f.File, about)
		}
	}
}

func described(t *testing.T, f *Font, entry tables.NameID) string {
	t.Helper()
	loader, err := opentype.NewLoader(bytes.NewReader(f.TTF))
	if err != nil {
		t.Fatal(err)
	}
	names, err := readNames(loader)
	if err != nil {
		t.Fatal(err)
	}
	return names.Name(entry)
}
