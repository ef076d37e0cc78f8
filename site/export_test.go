package site

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/setting"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// WriteKey makes a key file with a given key, so that tests in a browser print the same codes each time.
func WriteKey(path string, key Key) error { return disk.Create(path, []byte(keyText(key))) }

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
		known, err := replacedPaper(plan.Code, sheet, replaced)
		if err != nil {
			return nil, err
		}
		leaves, made, err := p.sheet(sheet, known)
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
			heights = append(heights, setting.HeightMM(p.casts[notices.Language(face.Lang)], p.casts[notices.English], face))
		}
	}
	return heights
}

// FontFiles are the fonts in the program.
func FontFiles() tree.Files { return fontFiles() }

// replacedPaper is a ledger that knows a sheet whose earlier paper was handed over on a day.
func replacedPaper(code string, sheet notices.Sheet, on notices.Date) (ledger.Job, error) {
	now := factsOf(sheet)
	earlier := now
	earlier.Digest, earlier.For = "another", []string{"h1"}
	job, err1 := ledger.Job{Code: code}.By(ledger.Writer{Laptop: "k7qm", Today: on}).Made(ledger.Make{Sheets: []ledger.Facts{earlier}})
	job, _, err2 := job.HandOver(ledger.Visit{Sheets: []string{sheet.ID}, Home: "h1", On: on, How: "spoke", By: "RM"})
	job, err3 := job.Made(ledger.Make{Sheets: []ledger.Facts{now}})
	return job, errors.Join(err1, err2, err3)
}

// Remembered is the ledger's job after a make of a plan on a day.
func Remembered(job ledger.Job, plan notices.Plan, key Key, today notices.Date) (ledger.Job, error) {
	job.Code = plan.Code
	return job.By(ledger.Writer{Laptop: "k7qm", Today: today}).Made(makeOf(plan, key, ledger.Output{}))
}

// KillAt leaves a programme as a make of plans does that is killed after its journal was written: before the ledger, or right after its lines about the first plan.
func KillAt(t interface{ Fatal(...any) }, p Programme, plan notices.Plan, remembered bool, others ...notices.Plan) {
	key, err1 := readKey(filepath.Join(p.Path, KeyFile))
	kit, err2 := NewKit(plan.Programme, key, os.ReadFile)
	folder, err3 := tree.Open(p.Out)
	if err := errors.Join(err1, err2, err3, p.raiseSign()); err != nil {
		t.Fatal(err)
	}
	defer folder.Close()
	s := staging{Programme: p, folder: folder, kit: kit}
	err1 = s.stage(plan)
	first := s.lines
	for _, other := range others {
		err1 = errors.Join(err1, s.stage(other))
	}
	err2 = s.stageShared(plan.Programme)
	note, err3 := json.Marshal(s.lines)
	_, err4 := folder.Commit(note)
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		t.Fatal(err)
	}
	if remembered {
		if err := ledger.Append(p.Path, first); err != nil {
			t.Fatal(err)
		}
	}
}
