package site

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// paperVoice speaks a language on paper, in its fonts.
func (p press) paperVoice(l notices.Language) (*voice, error) {
	v := p.kit.voice(l, false)
	var err error
	v.cast, err = p.cast(l)
	return v, err
}

// cast are the fonts of a language, chosen once for all sheets of a job; "" has none.
func (p press) cast(l notices.Language) (fit.Cast, error) {
	if cast, known := p.casts[l]; known || l == "" {
		return cast, nil
	}
	speaker := p.kit.speakers[l]
	cast, err := p.kit.shelf.Cast(speaker.Script(), speaker.Letters(), p.names)
	if err == nil {
		p.casts[l] = cast
	}
	return cast, err
}

// fonts are all that the job's paper is set in, sorted.
func (p press) fonts() []*fit.Font {
	var all []*fit.Font
	for _, cast := range p.casts {
		for _, f := range cast.Fonts() {
			if !slices.ContainsFunc(all, func(g *fit.Font) bool { return fontName(g) == fontName(f) }) {
				all = append(all, f)
			}
		}
	}
	slices.SortFunc(all, func(a, b *fit.Font) int { return cmp.Or(cmp.Compare(a.Family, b.Family), a.Weight-b.Weight) })
	return all
}

func fontName(f *fit.Font) string { return fmt.Sprintf("%s %d", f.Family, f.Weight) }

func (p press) fontRecords() []record.Font {
	var all []record.Font
	for _, f := range p.fonts() {
		all = append(all, record.Font{Name: fontName(f), Version: f.Version, SHA256: f.SHA256()})
	}
	return all
}

// drawn is an error when no font of the job has a character of a sheet, which would print as a box.
func (p press) drawn(sheet []byte) error {
	fonts, seen := p.fonts(), map[rune]bool{}
	for _, r := range templates.PlainText(string(sheet)) {
		if seen[r] {
			continue
		}
		seen[r] = true
		if !slices.ContainsFunc(fonts, func(f *fit.Font) bool { return len(f.Missing(string(r))) == 0 }) {
			return fmt.Errorf("no font of the job has %q (%U), which would print as an empty box; write it in other characters", r, r)
		}
	}
	return nil
}

// families are the fonts of a language as CSS lists them. A browser on another computer may lack those that are not in the program.
func families(c fit.Cast) templates.Families {
	return templates.Families{Text: familyList(c.Bold), Sign: familyList(c.Sign)}
}

func familyList(f *fit.Font) template.CSS {
	var quoted []string
	for _, name := range f.Families() {
		quoted = append(quoted, "'"+strings.NewReplacer("'", "", `\`, "").Replace(name)+"'")
	}
	return template.CSS(strings.Join(quoted, ", ") + ", sans-serif")
}

// fontFaces are the fonts in the program as they lie in a folder beside sheets and lists.
func fontFaces(folder string) []templates.Font {
	var all []templates.Font
	for _, f := range fit.Inside() {
		all = append(all, templates.Font{Family: f.Family, Weight: f.Weight, Path: folder + f.File})
	}
	return all
}

// fontFiles are the fonts in the program, and the licences that have to go with them.
func fontFiles() tree.Files {
	files := tree.Files{}
	for _, f := range fit.Inside() {
		files[tree.FontFolder+"/"+f.File] = f.TTF
	}
	for _, l := range fit.Licences() {
		files[tree.FontFolder+"/"+l.File] = l.Text
	}
	return files
}

// namesOnPaper are the texts of a job that may be in any script.
func namesOnPaper(plan notices.Plan) []string {
	all := []string{plan.Programme.Name, plan.Address}
	for _, sheet := range plan.Sheets {
		for _, face := range sheet.Faces {
			all = append(all, namesOnFace(face.Content)...)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func namesOnFace(c notices.Content) []string {
	values := []notices.Value{c.Head, c.For, c.Call.Who, c.Call.Say}
	for _, f := range c.Facts {
		values = append(append(values, f.Label), f.Cells...)
	}
	for _, b := range c.Blocks {
		for _, m := range append(b.Lines, b.Head) {
			values = append(values, m)
		}
	}
	var all []string
	for _, v := range values {
		all = append(all, namesOf(v)...)
	}
	return all
}

func namesOf(v notices.Value) []string {
	switch v := v.(type) {
	case notices.Name:
		return []string{string(v)}
	case notices.Address:
		return []string{string(v)}
	case notices.Pair:
		return append(namesOf(v.Label), namesOf(v.Value)...)
	case notices.Message:
		var all []string
		for _, held := range v.Values {
			all = append(all, namesOf(held)...)
		}
		return all
	}
	return nil
}
