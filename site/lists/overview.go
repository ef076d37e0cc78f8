package lists

import (
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// Overview is the coordinator's sheet: what to print for each job, where it goes, by when and why.
func Overview(records []record.Job, fonts []templates.Font) ([]byte, error) {
	view := templates.Overview{Fonts: fonts}
	for _, r := range records {
		view.Jobs = append(view.Jobs, overviewJob(r))
	}
	return templates.RenderOverview(view)
}

func overviewJob(r record.Job) templates.OverviewJob {
	job := templates.OverviewJob{
		Code: r.Code, Address: r.Address, Days: days(r.Days...), Draft: drafts(r),
		Everything: belowPrint(r.Everything), WalkList: belowPrint(r.WalkList), CopyShop: belowPrint(r.CopyShop), PDFs: pdfLinks(r.PDFs),
		Piles: pilesOf(r), PutRight: putRightRows(r), TakeDown: takeDown(r), TakeDownNow: takeDownNow(r), Steps: steps(r),
	}
	if r.Lot != nil {
		job.Drawing = r.Lot.SVG(0)
	}
	for _, reason := range r.Reasons {
		job.Reasons = append(job.Reasons, reasonRow(reason))
	}
	return job
}

// pdfLinks says on the link which file is for whom.
func pdfLinks(all []record.PDF) []templates.OverviewLink {
	var links []templates.OverviewLink
	for _, r := range all {
		name := "PDF of everything"
		if strings.HasSuffix(r.Path, "/"+CopyShop) {
			name = "PDF for the copy shop"
		}
		links = append(links, templates.OverviewLink{Href: belowPrint(r.Path), Name: name, Note: fmt.Sprintf("%d sides on %s", r.Pages, paperNames[r.Paper])})
	}
	return links
}

func reasonRow(r record.Reason) templates.OverviewReason {
	view := templates.OverviewReason{Outcome: r.Outcome, Because: r.Because, Source: r.Source, Binds: locales.Alone(r.Binds)}
	for _, m := range r.Missing {
		view.Missing = append(view.Missing, templates.OverviewMissing{Field: m.Field, Would: m.Would})
	}
	return view
}

// A pile is sheets that are carried together.
var piles = []struct {
	name, note string
	holds      func(record.Sheet) bool
}{
	{"Letters", "Speak to each household, leave the letter, take the receipt back.", carried(notices.ToHousehold)},
	{"Neighbors, in street order", "Knock, explain, leave the sheet.", func(s record.Sheet) bool {
		return !isSpare(s) && (carried(notices.ToNeighbour)(s) || carried(notices.ToResidents)(s))
	}},
	{"The crew's door pack", "With tape and a clear sleeve for each sign. Up before the crew sets up; down only when the area is cleaned and checked.", carried(notices.AtDoor)},
	{"To spare", "For a home that nobody listed, and slips for the day when the dates change and nobody can print.", isSpare},
}

func carried(how notices.Carriage) func(record.Sheet) bool {
	return func(s record.Sheet) bool { return notices.Kind(s.Kind).Traits().Carried == how }
}

func isSpare(s record.Sheet) bool { return len(s.For) == 0 && notices.Kind(s.Kind).Traits().MaySpare }

func pilesOf(r record.Job) []templates.OverviewPile {
	var all []templates.OverviewPile
	for _, p := range piles {
		pile := templates.OverviewPile{Name: p.name, Note: p.note}
		for _, s := range r.Sheets {
			if p.holds(s) {
				pile.Rows = append(pile.Rows, sheetRow(s))
			}
		}
		if len(pile.Rows) > 0 {
			all = append(all, pile)
		}
	}
	return all
}

func sheetRow(s record.Sheet) templates.OverviewRow {
	row := templates.OverviewRow{Href: belowPrint(s.Path), Title: s.Title, To: s.To, Due: days(s.Due), LateAfter: days(s.LateAfter), Copies: s.Copies}
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
func readFrom(s record.Sheet) string {
	face := s.Faces[0]
	text := fmt.Sprintf("legend reads from %.0f ft, %.0f ft in poor light; code from about 2 ft", face.ReadingDistanceFt, face.PoorDistanceFt)
	if face.Pages > 1 {
		text += fmt.Sprintf(". %d sheets of %s, because one cannot carry letters that read from %.0f ft: cut each but the last along the dashed line, lay it on the next, tape",
			face.Pages, paperNames[s.PaperSize()], s.ReadFromFt)
	}
	if s.ReadFromFt > face.ReadingDistanceFt {
		text += fmt.Sprintf(". It has to be read from %.0f ft, and its words do not fit larger on so many sheets: hang it where people have to pass it", s.ReadFromFt)
	}
	return text
}

// putRightRows groups what is no longer right by door and by home.
func putRightRows(r record.Job) []templates.OverviewRepair {
	var rows []templates.OverviewRepair
	last := record.Repair{}
	for _, repair := range r.PutRight {
		if repair.Where != last.Where || repair.Home != last.Home {
			rows = append(rows, templates.OverviewRepair{Where: repair.Where})
		}
		last = repair
		row := &rows[len(rows)-1]
		row.Sheets = append(row.Sheets, templates.OverviewRepairSheet{Title: repair.Title, Sheet: repair.Sheet, Since: days(repair.Since),
			TakeAway: repair.TakeAway, Bring: repair.Bring, Printed: repair.Printed, Hangs: repair.Home == ""})
	}
	return rows
}

// paperNames are what the coordinator calls paper.
var paperNames = map[string]string{"letter": "Letter paper", "a4": "A4 paper", "11x17": "11 x 17 in paper, from the copy shop"}

// takeDown lists each door with the number of its signs.
func takeDown(r record.Job) []templates.OverviewTick {
	var ticks []templates.OverviewTick
	for _, s := range r.Sheets {
		if s.Kind != string(notices.WorkAreaSign) {
			continue
		}
		i := slices.IndexFunc(ticks, func(t templates.OverviewTick) bool { return t.Where == s.To })
		if i < 0 {
			ticks = append(ticks, templates.OverviewTick{Where: s.To})
			i = len(ticks) - 1
		}
		ticks[i].Signs += s.Copies
	}
	return ticks
}

// takeDownNow lists the doors whose signs are no longer called for.
func takeDownNow(r record.Job) []templates.OverviewTick {
	var ticks []templates.OverviewTick
	for _, d := range r.TakeDown {
		ticks = append(ticks, templates.OverviewTick{Where: d.Where, Signs: len(d.Signs)})
	}
	return ticks
}

// drafts are the languages on the sheets of a job that no fluent person had signed when they were made.
func drafts(r record.Job) []string {
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

// belowPrint is a path as the coordinator's lists, which lie in the folder of sheets, link to it.
func belowPrint(path string) string { return strings.TrimPrefix(path, tree.SharedPrintPath("")) }
