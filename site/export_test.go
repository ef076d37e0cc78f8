package site

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// WriteKey makes a key file with a given key, so that tests in a browser print the same codes each time.
func WriteKey(path string, key Key) error { return createPrivate(path, []byte(keyText(key))) }

// A Reckoning is a letter as its view has it, and the height in mm that was reckoned for each of its sides.
type Reckoning struct {
	Sheet   string
	HTML    []byte
	Heights []float64
}

// Reckon lays out the letters of a job.
func Reckon(job notices.Job, kit Kit) ([]Reckoning, error) {
	plan := notices.Decide(job)
	p := pressOf(job, plan, kit)
	var all []Reckoning
	for _, sheet := range plan.Sheets {
		if sheet.Kind == notices.WorkAreaSign {
			continue
		}
		leaves, made, err := p.sheet(sheet, LedgerJob{})
		if err != nil {
			return nil, err
		}
		heights := []float64{}
		for _, l := range leaves {
			for _, face := range l.Faces {
				heights = append(heights, p.reckoned(face))
			}
		}
		html, err := templates.RenderSheet(templates.Sheet{Paper: made.Paper, Fonts: fontFaces("fonts/"), Leaves: leaves})
		if err != nil {
			return nil, err
		}
		all = append(all, Reckoning{sheet.ID, html, heights})
	}
	return all, nil
}

func (p press) reckoned(face templates.Face) float64 {
	r := ruler{Cast: p.casts[notices.Language(face.Lang)], beside: p.casts[notices.English]}
	return r.letterHeight(face)
}

// FontFiles are the fonts in the program.
func FontFiles() Files { return fontFiles() }
