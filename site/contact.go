package site

import (
	"example.org/doorleaf/templates"
)

// contact shows every sheet and every page of all jobs small, in one view. It is made from the records alone.
func contact(records []JobRecord) ([]byte, error) {
	view := templates.Contact{Fonts: fontFaces("fonts/")}
	for _, r := range records {
		job := templates.ContactJob{Code: r.Code, Address: r.Address}
		for _, s := range r.Sheets {
			if s.joined() {
				job.Joined = append(job.Joined, contactSheet(s))
			} else {
				job.Sheets = append(job.Sheets, contactSheet(s))
			}
		}
		for _, p := range r.Pages {
			job.Pages = append(job.Pages, contactPage(p))
		}
		view.Jobs = append(view.Jobs, job)
	}
	return templates.RenderContact(view)
}

func contactSheet(s SheetRecord) templates.ContactItem {
	row := deskRow(s)
	return templates.ContactItem{
		Href: row.Href, Name: s.Title, Note: s.To + " · " + row.Languages, Paper: s.paperSize(), Sides: row.Sides,
	}
}

func contactPage(p PageRecord) templates.ContactItem {
	item := templates.ContactItem{Href: "../" + p.Path, Name: "Choice of languages"}
	if p.Language != "" {
		item.Name, item.Note = p.Kind, p.LanguageName
	}
	return item
}
