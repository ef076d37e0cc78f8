package site

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// Build makes all files of one job, in memory. The ledger is the one that already knows this make; earlier is the job's record in the output
// folder, or the zero JobRecord. It is pure: the same input gives the same bytes, on every machine and on every day.
func Build(plan notices.Plan, ledger Ledger, kit Kit, earlier JobRecord) (Unit, error) {
	p := pressOf(plan, kit)
	remembered, _ := ledger.Job(plan.Code)
	record, err := p.record(plan)
	if err != nil {
		return Unit{}, err
	}
	files := Files{}
	record.PutRight = p.putRight(remembered)
	if err := p.steps(plan, remembered, &record, files); err != nil {
		return Unit{}, err
	}
	stacks, err := p.sheets(plan, remembered, &record, files)
	if err != nil {
		return Unit{}, err
	}
	record.Fonts = p.fontRecords()
	prints, err := p.lists(plan, stacks, &record, files)
	if err != nil {
		return Unit{}, err
	}
	if p.token != "" {
		pages, pageRecords, err := p.pages(plan, remembered, ledger.Withdrawn(plan.Code, p.addresses(plan)))
		if err != nil {
			return Unit{}, err
		}
		for path, data := range pages {
			files[path] = data
		}
		record.Pages = pageRecords
	}
	unit, err := NewUnit(record, files, earlier)
	unit.prints = prints
	return unit, err
}

func pressOf(plan notices.Plan, kit Kit) press {
	p := press{kit: kit, programme: plan.Programme, code: plan.Code, number: plan.Number, lot: plan.Lot, posters: map[string]poster{},
		names: namesOnPaper(plan), casts: map[notices.Language]fit.Cast{}}
	if kit.Key != "" {
		p.token = Token(kit.Key, plan.Code)
	}
	return p
}

// Remember is the ledger after a make of this job.
func Remember(ledger Ledger, plan notices.Plan, key Key, today notices.Date) Ledger {
	p := press{programme: plan.Programme, token: Token(key, plan.Code)}
	var facts []SheetFacts
	for _, sheet := range plan.Sheets {
		facts = append(facts, factsOf(sheet))
	}
	return ledger.With(plan.Code, p.token, p.addresses(plan), facts, datesDigest(plan), today).withBeside(plan.Code, plan.Beside)
}

// addresses are those of all pages of the plan, below the base.
func (p press) addresses(plan notices.Plan) []string {
	all := []string{address{token: p.token}.below()}
	for _, page := range plan.Pages {
		for _, l := range p.programme.Languages {
			all = append(all, address{token: p.token, language: l, page: page.Kind}.below())
		}
	}
	slices.Sort(all)
	return all
}

func (p press) record(plan notices.Plan) (JobRecord, error) {
	record := JobRecord{Code: plan.Code, Token: p.token, Address: plan.Address}
	if len(plan.Lot.Work) > 0 {
		lot := p.deskDrawing()
		record.Lot = &lot
	}
	for _, d := range plan.Days {
		record.Days = append(record.Days, d.String())
	}
	for _, door := range plan.TakeDown {
		where := fmt.Sprintf("%s, for the %s", p.word(door.Way.Word()), p.english(door.Area.Word()))
		record.TakeDown = append(record.TakeDown, DoorRecord{where, door.Signs})
	}
	var err error
	record.Reasons, err = p.kit.reasonRecords(plan.Reasons)
	return record, err
}

// A stack is leaves in printing order, as often as there are copies. Each paper has one.
type stacks map[string][]templates.Leaf

// sheets renders each sheet into a file of its own, and returns the leaves of all.
func (p press) sheets(plan notices.Plan, remembered LedgerJob, record *JobRecord, files Files) (stacks, error) {
	all := stacks{}
	for _, sheet := range plan.Sheets {
		leaves, made, err := p.sheet(sheet, remembered)
		if err != nil {
			return nil, err
		}
		data, err := templates.RenderSheet(templates.Sheet{
			Title: made.Title + ", " + made.To, Paper: made.paperSize(), Fonts: fontFaces("../fonts/"), Leaves: leaves,
		})
		if err != nil {
			return nil, err
		}
		if err := p.drawn(data); err != nil {
			return nil, fmt.Errorf("sheet %s: %w", sheet.ID, err)
		}
		files[made.Path], made.SHA256 = data, digest(data)
		record.Sheets = append(record.Sheets, made)
		all[made.paperSize()] = append(all[made.paperSize()], copies(leaves, made)...)
	}
	return all, nil
}

// copies are the leaves of a sheet as they leave the printer: each copy begins on a front, and the first has a bookmark.
func copies(leaves []templates.Leaf, sheet SheetRecord) []templates.Leaf {
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
func (p press) sheet(sheet notices.Sheet, remembered LedgerJob) ([]templates.Leaf, SheetRecord, error) {
	record := SheetRecord{
		ID: sheet.ID, Kind: string(sheet.Kind), Title: titleOf(string(sheet.Kind)), To: p.destination(sheet),
		For: sheet.To.IDs(), Copies: sheet.Copies, Paper: string(p.programme.Paper),
		Path: "print/" + p.code + "/" + sheet.ID + ".html", Due: sheet.Due.String(), Revision: 1, ReadFromFt: float64(sheet.ReadFrom),
	}
	if !sheet.LateAfter.IsZero() {
		record.LateAfter = sheet.LateAfter.String()
	}
	for _, way := range sheet.Hang {
		record.Hang = append(record.Hang, string(way))
	}
	if known, ok := remembered.Sheet(sheet.ID); ok {
		record.Revision = known.Revision
		record.Replaces, record.ReplacesDate = known.replaced()
	}
	var faces []templates.Face
	for _, f := range p.apart(sheet.Faces) {
		made, err := p.face(sheet, f, record)
		if err != nil {
			return nil, record, err
		}
		faces, record.Paper = append(faces, made.sides...), made.paper
		record.Faces = append(record.Faces, made.record)
	}
	return leaves(faces), record, nil
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
