package templates

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"slices"
)

//go:embed html css
var files embed.FS

var layouts = template.Must(template.New("").Funcs(template.FuncMap{
	"pt":      func(size float64) template.CSS { return template.CSS(fmt.Sprintf("%.2fpt", size)) },
	"mm":      func(length float64) template.CSS { return template.CSS(fmt.Sprintf("%.2fmm", length)) },
	"add":     func(a, b int) int { return a + b },
	"odd":     func(n int) bool { return n%2 == 1 },
	"columns": func(n int) []struct{} { return make([]struct{}, n) },
	"gap":     func(before, after any) string { return Gap(fmt.Sprint(before), fmt.Sprint(after)) },
	"css":     func(name string) template.CSS { return style(name) },
}).ParseFS(files, "html/*.html"))

// RenderSheet lays the faces out, one after another, each exactly one side of paper.
func RenderSheet(s Sheet) ([]byte, error) { return render("sheet.html", s) }

// Tiled reports whether a face is a sheet of a sign over several.
func (s Sheet) Tiled() bool {
	return slices.ContainsFunc(s.Leaves, func(l Leaf) bool {
		return slices.ContainsFunc(l.Faces, func(f Face) bool { return f.Tile != nil })
	})
}

func render(name string, view any) ([]byte, error) {
	var out bytes.Buffer
	if err := layouts.ExecuteTemplate(&out, name, view); err != nil {
		return nil, fmt.Errorf("layout %s: %w", name, err)
	}
	return out.Bytes(), nil
}

func style(name string) template.CSS {
	text, err := files.ReadFile("css/" + name)
	if err != nil {
		panic(err) // embedded above: a misspelt name is a mistake of ours
	}
	return template.CSS(text)
}
