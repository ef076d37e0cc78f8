package site

import (
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// lists adds the walk list, and the files that print whole stacks in one go, to the files of a job. It returns what can become a PDF.
func (p press) lists(plan notices.Plan, all stacks, job *record.Job, files tree.Files) ([]printable, error) {
	folder := tree.PrintPath(p.code, "")
	job.WalkList, job.Everything = folder+"walk-list.html", folder+"everything.html"
	walk := p.walkList(plan)
	list, err := templates.RenderWalkList(walk)
	if err != nil {
		return nil, err
	}
	files[job.WalkList] = list
	everything := templates.Sheet{
		Title: "Everything to print for job " + p.code, Paper: walk.Paper, Fonts: walk.Fonts, WalkList: &walk, Leaves: all[walk.Paper],
	}
	files[folder+"walk-list.csv"] = ledger.EmptyWalkList(walkedHomes(plan))
	prints := []printable{{everything, job.Everything, folder + lists.HomePrinter}}
	if larger, ok := p.larger(all); ok {
		job.CopyShop = folder + "copy-shop.html"
		prints = append(prints, printable{larger, job.CopyShop, folder + lists.CopyShop})
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
	row := templates.WalkRow{Sheet: titleOf(string(home.Kind)), Languages: p.languages(home.Languages), Due: lists.Day(home.Due)}
	switch who := home.Who.(type) {
	case notices.Name:
		row.Who = string(who)
	case notices.Address:
		row.Who = string(who)
	}
	if !home.LateAfter.IsZero() {
		row.LateAfter = lists.Day(home.LateAfter)
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

// walkedHomes are the ids of the homes in walking order, each once.
func walkedHomes(plan notices.Plan) []string {
	var all []string
	for _, home := range plan.Homes {
		if !slices.Contains(all, home.ID) {
			all = append(all, home.ID)
		}
	}
	return all
}
