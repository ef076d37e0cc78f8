package main

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"example.org/doorleaf/site/fit"
)

type licences struct{}

func (licences) Run(c console) error {
	for _, l := range allLicences() {
		fmt.Fprintf(c.out, "%s\n%s\n\n%s\n\n\n", l.of, strings.Repeat("=", len(l.of)), strings.Trim(l.text, "\n"))
	}
	return nil
}

// A licence is the text that has to go with a part of the program.
type licence struct{ of, text string }

// The texts of all parts but the fonts; licences/SOURCES.md says where they come from.
//
//go:embed licences/doorleaf licences/go licences/modules licences/cldr
var licenceFiles embed.FS

// allLicences begin with our own.
func allLicences() []licence {
	all := []licence{
		{"doorleaf", licenceText("licences/doorleaf/LICENSE")},
		{"Go and its standard library", licenceText("licences/go/LICENSE")},
	}
	all = append(all, moduleLicences()...)
	for _, l := range fit.Licences() {
		all = append(all, licence{"The fonts " + l.Fonts, string(l.Text)})
	}
	return append(all, licence{"Data of the Unicode CLDR", licenceText("licences/cldr/LICENSE")})
}

// moduleLicences are sorted by module.
func moduleLicences() []licence {
	var all []licence
	err := fs.WalkDir(licenceFiles, "licences/modules", func(file string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			folder, name := path.Split(strings.TrimPrefix(file, "licences/modules/"))
			all = append(all, licence{"Module " + path.Clean(folder) + ", " + name, licenceText(file)})
		}
		return err
	})
	if err != nil {
		panic(err)
	}
	return all
}

// licenceText panics when a text is not in the program, which was built wrongly then.
func licenceText(file string) string {
	text, err := licenceFiles.ReadFile(file)
	if err != nil {
		panic(err)
	}
	return string(text)
}
