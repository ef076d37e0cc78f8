package main

import (
	"bytes"
	_ "embed"
	"html/template"
	"os"
)

//go:embed index.html
var indexLayout string

var index = template.Must(template.New("index").Parse(indexLayout))

// writeIndex writes the page that leads to all contact sheets.
func writeIndex(path string, rows []row) error {
	var page bytes.Buffer
	if err := index.Execute(&page, rows); err != nil {
		return err
	}
	return os.WriteFile(path, page.Bytes(), 0o644)
}
