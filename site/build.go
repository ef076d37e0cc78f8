package site

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/setting"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// A Built job is all of its files but its record.json, in memory.
type Built struct {
	Record record.Job
	Files  tree.Files
	prints []printable // those that can become a PDF
}

// Build makes all files of one job, in memory. The ledger's job is the one that already knows this make. It is pure: the same input gives the same bytes, on
// every day; fonts that are not in the program are read from the computer, and the record names them.
func Build(plan notices.Plan, remembered ledger.Job, kit Kit) (Built, error) {
	p := pressOf(plan, kit)
	built := Built{Files: tree.Files{}}
	var err error
	if built.Record, err = p.record(plan); err != nil {
		return built, err
	}
	built.Record.PutRight = p.putRight(remembered)
	if err := p.steps(plan, remembered, &built.Record, built.Files); err != nil {
		return built, err
	}
	stacks, err := p.sheets(plan, remembered, &built.Record, built.Files)
	if err != nil {
		return built, err
	}
	built.Record.Fonts = p.fontRecords()
	if built.prints, err = p.lists(plan, stacks, &built.Record, built.Files); err != nil {
		return built, err
	}
	if p.token != "" {
		if err := p.pages(plan, remembered, &built.Record, built.Files); err != nil {
			return built, err
		}
	}
	return built, p.english.err
}

// newPress has all that does not depend on a job.
func newPress(kit Kit, programme notices.Programme) press {
	return press{kit: kit, programme: programme, english: kit.voice(notices.English, false), posters: setting.Posters{}, casts: map[notices.Language]fit.Cast{}}
}

func pressOf(plan notices.Plan, kit Kit) press {
	p := newPress(kit, plan.Programme)
	p.code, p.number, p.lot, p.names = plan.Code, plan.Number, plan.Lot, namesOnPaper(plan)
	if kit.key != "" {
		p.token = token(kit.key, plan.Code)
	}
	return p
}

// makeOf is what a make of the plan found, for the ledger. Without a key there are no addresses.
func makeOf(plan notices.Plan, key Key, output ledger.Output) ledger.Make {
	m := ledger.Make{Address: plan.Address, Dates: datesDigest(plan), Beside: plan.Beside, Output: output}
	for _, sheet := range plan.Sheets {
		m.Sheets = append(m.Sheets, factsOf(sheet))
	}
	if key != "" {
		m.Token = token(key, plan.Code)
		m.Pages = addresses(plan, m.Token)
	}
	return m
}

// addresses are those of all pages of the plan, below the base.
func addresses(plan notices.Plan, token string) []string {
	all := []string{address{token: token}.below()}
	for _, page := range plan.Pages {
		for _, l := range plan.Programme.Languages {
			all = append(all, address{token: token, language: l, page: page.Kind}.below())
		}
	}
	slices.Sort(all)
	return all
}

func (p press) record(plan notices.Plan) (record.Job, error) {
	made := record.Job{Code: plan.Code, Token: p.token, Address: plan.Address}
	if len(plan.Lot.Work) > 0 {
		lot := p.overviewDrawing()
		made.Lot = &lot
	}
	for _, d := range plan.Days {
		made.Days = append(made.Days, d.String())
	}
	for _, door := range plan.TakeDown {
		made.TakeDown = append(made.TakeDown, record.Door{Where: p.door(door.Way, door.Area), Signs: door.Signs})
	}
	var err error
	made.Reasons, err = p.kit.reasonRecords(plan.Reasons)
	return made, err
}

// A stack is leaves in printing order, as often as there are copies. Each paper has one.
type stacks map[string][]templates.Leaf

// sheets renders each sheet into a file of its own, and returns the leaves of all.
func (p press) sheets(plan notices.Plan, remembered ledger.Job, job *record.Job, files tree.Files) (stacks, error) {
	all := stacks{}
	for _, sheet := range plan.Sheets {
		leaves, made, err := p.sheet(sheet, remembered)
		if err != nil {
			return nil, err
		}
		data, err := templates.RenderSheet(templates.Sheet{
			Title: made.Title + ", " + made.To, Paper: made.PaperSize(), Fonts: fontFaces("../fonts/"), Leaves: leaves,
		})
		if err != nil {
			return nil, err
		}
		if err := p.drawn(data); err != nil {
			return nil, fmt.Errorf("sheet %s: %w", sheet.ID, err)
		}
		files[made.Path], made.SHA256 = data, tree.Digest(data)
		job.Sheets = append(job.Sheets, made)
		all[made.PaperSize()] = append(all[made.PaperSize()], copies(leaves, made)...)
	}
	return all, nil
}

// copies are the leaves of a sheet as they leave the printer: each copy begins on a front, and the first has a bookmark.
func copies(leaves []templates.Leaf, sheet record.Sheet) []templates.Leaf {
	var all []templates.Leaf
	for range sheet.Copies {
		all = append(all, leaves...)
	}
	for i := range all {
		all[i].PadBlank = len(all[i].Faces) == 1
	}
	if len(all) > 0 {
		all[0].Bookmark = fmt.Sprintf("%s, %s (%s)", sheet.Title, sheet.To, sheet.ID)
	}
	return all
}

// sheet lays out the faces and pairs them into leaves: a front and its back.
func (p press) sheet(sheet notices.Sheet, remembered ledger.Job) ([]templates.Leaf, record.Sheet, error) {
	made := record.Sheet{
		ID: sheet.ID, Kind: string(sheet.Kind), Title: titleOf(string(sheet.Kind)), To: p.destination(sheet),
		For: sheet.To.IDs(), Copies: sheet.Copies, Paper: string(p.programme.Paper),
		Path: tree.PrintPath(p.code, sheet.ID+".html"), Due: sheet.Due.String(), Revision: 1, ReadFromFt: float64(sheet.ReadFrom),
	}
	if !sheet.LateAfter.IsZero() {
		made.LateAfter = sheet.LateAfter.String()
	}
	for _, way := range sheet.Hang {
		made.Hang = append(made.Hang, string(way))
	}
	if known, ok := remembered.Sheet(sheet.ID); ok {
		made.Revision, made.Tag = known.Revision.Number, known.Revision.Tag
		if earlier, on := known.Replaced(); on != "" {
			made.Replaces, made.ReplacesDate = earlier.String(), on
		}
	}
	var faces []templates.Face
	for _, f := range p.apart(sheet.Faces) {
		one, err := p.face(sheet, f, made)
		if err != nil {
			return nil, made, err
		}
		faces, made.Paper = append(faces, one.sides...), one.paper
		made.Faces = append(made.Faces, one.record)
	}
	return leaves(faces), made, nil
}

// apart gives the second language of a face a face of its own in large print. What is to be filled in stays with the first.
func (p press) apart(faces []notices.Face) []notices.Face {
	if !p.programme.LargePrint {
		return faces
	}
	var all []notices.Face
	for _, f := range faces {
		all = append(all, f)
		if f.Beside != "" {
			f.Language, f.Beside, f.Blanks = f.Beside, "", nil
			all = append(all, f)
		}
	}
	return all
}

// leaves put two faces on a sheet of paper. The sheets of one sign hang side by side, so each has a front alone.
func leaves(faces []templates.Face) []templates.Leaf {
	var all []templates.Leaf
	if faces[0].Tile != nil {
		for i := range faces {
			all = append(all, templates.Leaf{Faces: faces[i : i+1]})
		}
		return all
	}
	for pair := range slices.Chunk(faces, 2) {
		all = append(all, templates.Leaf{Faces: pair})
	}
	return all
}
