package lists

import (
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/templates"
)

// Contact shows every sheet and every page of all jobs small, in one view.
func Contact(records []record.Job, fonts []templates.Font) ([]byte, error) {
	view := templates.Contact{Fonts: fonts}
	for _, r := range records {
		job := templates.ContactJob{Code: r.Code, Address: r.Address}
		for _, s := range r.Sheets {
			if s.IsJoined() {
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

func contactSheet(s record.Sheet) templates.ContactItem {
	row := sheetRow(s)
	return templates.ContactItem{
		Href: row.Href, Name: s.Title, Note: s.To + " · " + row.Languages, Paper: s.PaperSize(), Sides: row.Sides,
	}
}

func contactPage(p record.Page) templates.ContactItem {
	item := templates.ContactItem{Href: "../" + p.Path, Name: "Choice of languages"}
	if p.Language != "" {
		item.Name, item.Note = p.Kind, p.LanguageName
	}
	return item
}
