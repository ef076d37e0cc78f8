package site

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// WriteKey makes a key file with a given key, so that tests in a browser print the same codes each time.
func WriteKey(path string, key Key) error { return createPrivate(path, []byte(keyText(key))) }

// A Reckoning is a sheet of letters, and the height in mm that was reckoned for each of its sides.
type Reckoning struct {
	Sheet   string
	Sides   []byte // HTML, with its fonts in the folder fonts
	Heights []float64
}

// Reckon lays out the letters of a job, each in place of one that was handed over on a day.
func Reckon(job notices.Job, kit Kit, replaced notices.Date) ([]Reckoning, error) {
	plan := notices.Decide(job)
	p := pressOf(plan, kit)
	var all []Reckoning
	for _, sheet := range plan.Sheets {
		if sheet.Kind == notices.WorkAreaSign {
			continue
		}
		known := LedgerSheet{SheetFacts: SheetFacts{ID: sheet.ID}, Revision: 2, Handed: []Mark{{Revision: 1, On: replaced.String()}}}
		leaves, made, err := p.sheet(sheet, LedgerJob{Sheets: []LedgerSheet{known}})
		if err != nil {
			return nil, err
		}
		sides, err := templates.RenderSheet(templates.Sheet{Paper: made.Paper, Fonts: fontFaces("fonts/"), Leaves: leaves})
		if err != nil {
			return nil, err
		}
		all = append(all, Reckoning{sheet.ID, sides, p.reckoned(leaves)})
	}
	return all, nil
}

func (p press) reckoned(leaves []templates.Leaf) (heights []float64) {
	for _, l := range leaves {
		for _, face := range l.Faces {
			r := ruler{p.casts[notices.Language(face.Lang)], p.casts[notices.English]}
			heights = append(heights, r.letterHeight(face))
		}
	}
	return heights
}

// FontFiles are the fonts in the program.
func FontFiles() Files { return fontFiles() }
