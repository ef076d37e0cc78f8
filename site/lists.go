package site

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// destination is where a sheet goes, in the coordinator's words.
func (p press) destination(sheet notices.Sheet) string {
	switch {
	case sheet.Kind == notices.CommonAreaSign:
		return p.word(sheet.Hang[0].Word()) + ", where residents of all affected homes see it"
	case sheet.Kind == notices.CommonAreaNotice:
		return fmt.Sprintf("Each of the %d affected homes", sheet.Copies)
	case len(sheet.Hang) > 0:
		return fmt.Sprintf("%s, for the %s", p.word(sheet.Hang[0].Word()), p.english(sheet.Area.Word()))
	}
	if sheet.To.Party == notices.ForOwner {
		return "The owner"
	}
	return cmp.Or(sheet.To.Name, "To spare")
}

// english is a word of the closed lists in the coordinator's English; word starts it with a capital.
func (p press) english(id string) string {
	v := p.kit.voice(notices.English, false)
	return v.plain(notices.Message{ID: id})
}

func (p press) word(id string) string { return locales.Alone(p.english(id)) }

// lists adds the walk list, and the files that print whole stacks in one go, to the files of a job. It returns what can become a PDF.
func (p press) lists(plan notices.Plan, all stacks, record *JobRecord, files Files) ([]printable, error) {
	folder := "print/" + p.code + "/"
	record.WalkList, record.Everything = folder+"walk-list.html", folder+"everything.html"
	walk := p.walkList(plan)
	list, err := templates.RenderWalkList(walk)
	if err != nil {
		return nil, err
	}
	files[record.WalkList] = list
	everything := templates.Sheet{
		Title: "Everything to print for job " + p.code, Paper: walk.Paper, Fonts: walk.Fonts, WalkList: &walk, Leaves: all[walk.Paper],
	}
	files[folder+"walk-list.csv"] = emptyVisits(plan)
	prints := []printable{{everything, record.Everything, folder + HomePrinter}}
	if larger, ok := p.larger(all); ok {
		record.CopyShop = folder + "copy-shop.html"
		prints = append(prints, printable{larger, record.CopyShop, folder + copyShop})
	}
	for _, one := range prints {
		if files[one.html], err = templates.RenderSheet(one.sheet); err != nil {
			return nil, err
		}
	}
	return prints, nil
}

// larger is all signs on paper for the copy shop, if there are any. Signs alone are on it, so nothing on it is private.
func (p press) larger(all stacks) (templates.Sheet, bool) {
	paper := string(notices.Tabloid)
	return templates.Sheet{Title: "Signs to print for job " + p.code, Paper: paper, Fonts: fontFaces("../fonts/"), Leaves: all[paper]}, len(all[paper]) > 0
}

func (p press) walkList(plan notices.Plan) templates.WalkList {
	list := templates.WalkList{Code: p.code, Address: plan.Address, Paper: string(p.programme.Paper), Fonts: fontFaces("../fonts/")}
	var rows []templates.WalkRow
	for _, home := range plan.Homes {
		rows = append(rows, p.walkRow(home))
	}
	list.Pages = slices.Collect(slices.Chunk(rows, templates.WalkRowsPerPage))
	return list
}

func (p press) walkRow(home notices.Home) templates.WalkRow {
	row := templates.WalkRow{Sheet: titleOf(string(home.Kind)), Languages: p.languages(home.Languages), Due: deskDay(home.Due)}
	switch who := home.Who.(type) {
	case notices.Name:
		row.Who = string(who)
	case notices.Address:
		row.Who = string(who)
	}
	if !home.LateAfter.IsZero() {
		row.LateAfter = deskDay(home.LateAfter)
	}
	if home.Doors > 1 {
		row.Who += fmt.Sprintf(" (%d homes)", home.Doors)
	}
	return row
}

func (p press) languages(known []notices.Language) string {
	if len(known) == 0 {
		return "language not known"
	}
	var names []string
	for _, l := range known {
		names = append(names, englishName(p.kit, l))
	}
	return strings.Join(names, ", ")
}

// deskDay is a day as the coordinator reads it, short enough for a table.
func deskDay(d notices.Date) string {
	return fmt.Sprintf("%s %s %d", d.Weekday().String()[:3], d.Month.String()[:3], d.Day)
}

// reasonRecords says the reasons of a plan in the coordinator's English.
func (kit Kit) reasonRecords(reasons []notices.Reason) ([]ReasonRecord, error) {
	v := &voice{Speaker: kit.Desk, desk: kit.Desk}
	var all []ReasonRecord
	for _, r := range reasons {
		record := ReasonRecord{Decision: r.Decision, Outcome: v.plain(r.Outcome), Because: v.plain(r.Because), Source: r.Source.String(), About: r.About, Binds: string(r.Binds), Missing: []MissingRecord{}, Read: readings(r.Source)}
		for _, m := range r.Missing {
			record.Missing = append(record.Missing, MissingRecord{m.Field, v.plain(m.Would)})
		}
		all = append(all, record)
	}
	return all, v.err
}

// readings are the passages of a source that stand in a text.
func readings(source notices.Source) []ReadingRecord {
	all := []ReadingRecord{}
	for _, p := range source {
		if p.Citation != "" {
			all = append(all, ReadingRecord{p.Citation, p.ReadOn, string(p.Sureness)})
		}
	}
	return all
}

// desk is the coordinator's sheet, made from the records alone.
func desk(records []JobRecord) ([]byte, error) {
	view := templates.Desk{Fonts: fontFaces("fonts/")}
	for _, r := range records {
		view.Jobs = append(view.Jobs, deskJob(r))
	}
	return templates.RenderDesk(view)
}

func deskJob(r JobRecord) templates.DeskJob {
	job := templates.DeskJob{
		Code: r.Code, Address: r.Address, Days: days(r.Days), Draft: drafts(r),
		Everything: belowPrint(r.Everything), WalkList: belowPrint(r.WalkList), CopyShop: belowPrint(r.CopyShop), PDFs: pdfLinks(r.PDFs),
		Piles: pilesOf(r), PutRight: putRightRows(r), TakeDown: takeDown(r), TakeDownNow: takeDownNow(r), Steps: deskSteps(r),
	}
	if r.Lot != nil {
		job.Drawing = r.Lot.SVG(0)
	}
	for _, reason := range r.Reasons {
		job.Reasons = append(job.Reasons, deskReason(reason))
	}
	return job
}

// pdfLinks says on the link which file is for whom.
func pdfLinks(all []PDFRecord) []templates.DeskLink {
	var links []templates.DeskLink
	for _, r := range all {
		name := "PDF of everything"
		if strings.HasSuffix(r.Path, "/"+copyShop) {
			name = "PDF for the copy shop"
		}
		links = append(links, templates.DeskLink{Href: belowPrint(r.Path), Name: name, Note: fmt.Sprintf("%d sides on %s", r.Pages, paperNames[r.Paper])})
	}
	return links
}

func deskReason(r ReasonRecord) templates.DeskReason {
	view := templates.DeskReason{Outcome: r.Outcome, Because: r.Because, Source: r.Source, Binds: locales.Alone(r.Binds)}
	for _, m := range r.Missing {
		view.Missing = append(view.Missing, templates.DeskMissing{Field: m.Field, Would: m.Would})
	}
	return view
}

// A pile is sheets that are carried together.
var piles = []struct {
	name, note string
	holds      func(SheetRecord) bool
}{
	{"Letters", "Speak to each household, leave the letter, take the receipt back.", carried(notices.ToHousehold)},
	{"Neighbors, in street order", "Knock, explain, leave the sheet.", func(s SheetRecord) bool {
		return !isSpare(s) && (carried(notices.ToNeighbour)(s) || carried(notices.ToResidents)(s))
	}},
	{"The crew's door pack", "With tape and a clear sleeve for each sign. Up before the crew sets up; down only when the area is cleaned and checked.", carried(notices.AtDoor)},
	{"To spare", "For a home that nobody listed, and slips for the day when the dates change and nobody can print.", isSpare},
}

func carried(how notices.Carriage) func(SheetRecord) bool {
	return func(s SheetRecord) bool { return notices.Kind(s.Kind).Traits().Carried == how }
}

func isSpare(s SheetRecord) bool { return len(s.For) == 0 && notices.Kind(s.Kind).Traits().MaySpare }

func pilesOf(r JobRecord) []templates.DeskPile {
	var all []templates.DeskPile
	for _, p := range piles {
		pile := templates.DeskPile{Name: p.name, Note: p.note}
		for _, s := range r.Sheets {
			if p.holds(s) {
				pile.Rows = append(pile.Rows, deskRow(s))
			}
		}
		if len(pile.Rows) > 0 {
			all = append(all, pile)
		}
	}
	return all
}

func deskRow(s SheetRecord) templates.DeskRow {
	row := templates.DeskRow{Href: belowPrint(s.Path), Title: s.Title, To: s.To, Due: days([]string{s.Due}), LateAfter: days([]string{s.LateAfter}), Copies: s.Copies}
	var names []string
	for _, f := range s.Faces {
		row.Sides += f.Pages
		names = append(names, f.LanguageName)
	}
	row.Languages = strings.Join(names, ", ")
	if s.Kind == string(notices.WorkAreaSign) && len(s.Faces) > 0 {
		row.ReadFrom = readFrom(s)
	}
	return row
}

// readFrom says how far the legend reads, how many sheets that takes and how to join them, and what to do when it should read from farther.
func readFrom(s SheetRecord) string {
	face := s.Faces[0]
	text := fmt.Sprintf("legend reads from %.0f ft, %.0f ft in poor light; code from about 2 ft", face.ReadingDistanceFt, face.PoorDistanceFt)
	if face.Pages > 1 {
		text += fmt.Sprintf(". %d sheets of %s, because one cannot carry letters that read from %.0f ft: cut each but the last along the dashed line, lay it on the next, tape",
			face.Pages, paperNames[s.paperSize()], s.ReadFromFt)
	}
	if s.ReadFromFt > face.ReadingDistanceFt {
		text += fmt.Sprintf(". It has to be read from %.0f ft, and its words do not fit larger on so many sheets: hang it where people have to pass it", s.ReadFromFt)
	}
	return text
}

// putRightRows groups what is no longer right by door and by home.
func putRightRows(r JobRecord) []templates.DeskRepair {
	var rows []templates.DeskRepair
	last := RepairRecord{}
	for _, repair := range r.PutRight {
		if repair.Where != last.Where || repair.Home != last.Home {
			rows = append(rows, templates.DeskRepair{Where: repair.Where})
		}
		last = repair
		row := &rows[len(rows)-1]
		row.Sheets = append(row.Sheets, templates.DeskRepairSheet{Title: repair.Title, Sheet: repair.Sheet, Since: days([]string{repair.Since}),
			TakeAway: repair.TakeAway, Bring: repair.Bring, Hangs: repair.Home == ""})
	}
	return rows
}

// paperNames are what the coordinator calls paper.
var paperNames = map[string]string{"letter": "Letter paper", "a4": "A4 paper", "11x17": "11 x 17 in paper, from the copy shop"}

// takeDown lists each door with the number of its signs.
func takeDown(r JobRecord) []templates.DeskTick {
	var ticks []templates.DeskTick
	for _, s := range r.Sheets {
		if s.Kind != string(notices.WorkAreaSign) {
			continue
		}
		i := slices.IndexFunc(ticks, func(t templates.DeskTick) bool { return t.Where == s.To })
		if i < 0 {
			ticks = append(ticks, templates.DeskTick{Where: s.To})
			i = len(ticks) - 1
		}
		ticks[i].Signs += s.Copies
	}
	return ticks
}

// takeDownNow lists the doors whose signs are no longer called for.
func takeDownNow(r JobRecord) []templates.DeskTick {
	var ticks []templates.DeskTick
	for _, d := range r.TakeDown {
		ticks = append(ticks, templates.DeskTick{Where: d.Where, Signs: len(d.Signs)})
	}
	return ticks
}

// drafts are the languages on the sheets of a job that no fluent person had signed when they were made.
func drafts(r JobRecord) []string {
	var names []string
	for _, s := range r.Sheets {
		for _, f := range s.Faces {
			if f.Draft && !slices.Contains(names, f.LanguageName) {
				names = append(names, f.LanguageName)
			}
		}
	}
	slices.Sort(names)
	return names
}

func belowPrint(path string) string { return strings.TrimPrefix(path, "print/") }

// days writes YYYY-MM-DD days as the coordinator reads them.
func days(all []string) string {
	var written []string
	for _, text := range all {
		day, err := time.Parse(time.DateOnly, text)
		if err != nil {
			continue
		}
		written = append(written, day.Format("Mon Jan 2"))
	}
	return strings.Join(written, ", ")
}
