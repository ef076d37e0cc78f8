package site

import (
	"cmp"
	"fmt"
	"html/template"
	"time"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// pages are all pages of a job: each in every language of the programme, the one where a reader chooses, and those that say that they are no
// longer needed.
func (p press) pages(plan notices.Plan, remembered ledger.Job, job *record.Job, files tree.Files) error {
	add := func(below, kind string, l notices.Language, data []byte) {
		file := pageFile(below)
		files[file] = data
		made := record.Page{Path: file, URL: p.programme.Base + "/" + below, Kind: kind, Language: string(l), SHA256: tree.Digest(data)}
		if l != "" {
			made.LanguageName = englishName(p.kit, l)
		}
		job.Pages = append(job.Pages, made)
	}
	for _, page := range plan.Pages {
		for _, l := range p.programme.Languages {
			at := address{p.programme.Base, p.token, l, page.Kind}
			data, err := p.page(page, l, remembered)
			if err != nil {
				return fmt.Errorf("page %s: %w", at.below(), err)
			}
			add(at.below(), string(page.Kind), l, data)
		}
	}
	choice, err := p.jobChoice(plan)
	if err != nil {
		return err
	}
	add(address{token: p.token}.below(), "CHOICE", "", choice)
	for _, below := range remembered.Withdrawn(addresses(plan, p.token)) {
		data, l, err := p.withdrawnPage(below)
		if err != nil {
			return err
		}
		add(below, "WITHDRAWN", l, data)
	}
	return nil
}

// page is one page in one language. It is the same for every family.
func (p press) page(page notices.Page, l notices.Language, remembered ledger.Job) ([]byte, error) {
	v := p.kit.voice(l, true)
	view := p.pageFrame(v, page.Content)
	view.Facts = p.pageFacts(v, page.Facts, remembered)
	view.Drawing = p.drawing(v, page.Drawing)
	for _, b := range page.Blocks {
		view.Blocks = append(view.Blocks, block(v, b))
	}
	for _, other := range p.programme.Languages {
		if other != l {
			view.Others = append(view.Others, p.otherLanguage(other, "../../"+capitals(other)+"/"+string(page.Kind)+"/"))
		}
	}
	if v.err != nil {
		return nil, v.err
	}
	return checkedPage(templates.RenderPage(view))
}

func (p press) otherLanguage(l notices.Language, href string) templates.OtherLanguage {
	s := p.kit.speakers[l]
	return templates.OtherLanguage{Lang: s.Tag(), Dir: s.Direction(), Href: href, Name: s.Autonym()}
}

// pageFrame is what stands around the blocks of a page.
func (p press) pageFrame(v *voice, content notices.Content) templates.Page {
	view := templates.Page{
		Lang: v.Tag(), Dir: v.Direction(),
		Title:       v.plain(content.Head),
		Call:        p.call(v, content.Call, notices.Language(v.Tag())),
		OthersLabel: v.plain(notices.OtherLanguages.With()),
		Caution:     v.plain(notices.FootCaution.With()),
	}
	if len(content.Marks) > 0 {
		view.Mark = marks(content.Marks)[0]
	}
	if v.State().Draft {
		view.Draft = v.plain(notices.FootDraft.With())
	}
	return view
}

// pageFacts end with the day on which the dates last changed.
func (p press) pageFacts(v *voice, facts []notices.Fact, remembered ledger.Job) []templates.Fact {
	if len(facts) == 0 {
		return nil
	}
	var rows []templates.Fact
	for _, f := range facts {
		rows = append(rows, fact(v, f))
	}
	changed := templates.Fact{Label: v.label(notices.DatesChanged.With())}
	if day, err := time.Parse(time.DateOnly, remembered.DatesChangedOn); err == nil {
		changed.Cells = strong(locales.Alone(v.Day(day.Date())))
	} else {
		changed.Cells = []template.HTML{v.html(notices.DatesUnchanged.With())}
	}
	return append(rows, changed)
}

func checkedPage(data []byte, err error) ([]byte, error) {
	if err == nil && len(data) > templates.MaxPageBytes {
		return nil, fmt.Errorf("it has %d bytes, and %d is the most that reaches a phone in one go; split the job in two, or give work on the same days the same hours", len(data), templates.MaxPageBytes)
	}
	return data, err
}

// jobChoice greets in every language and links to every page of the job.
func (p press) jobChoice(plan notices.Plan) ([]byte, error) {
	return p.choice(notices.ChooseHead, notices.ChooseWhy, func(v *voice, l notices.Language) []templates.ChoiceLink {
		var links []templates.ChoiceLink
		for _, page := range plan.Pages {
			href := capitals(l) + "/" + string(page.Kind) + "/"
			links = append(links, templates.ChoiceLink{Href: href, Name: v.plain(page.Head)})
		}
		return links
	})
}

// withdrawnPage stands where a page of earlier paper stood.
func (p press) withdrawnPage(below string) (data []byte, l notices.Language, err error) {
	l = languageOf(below)
	v := p.kit.voice(l, true)
	view := p.pageFrame(v, notices.Content{Head: notices.WithdrawnHead.With(), Call: p.programme.Call()})
	view.Blocks = []templates.Block{{Lines: v.htmls([]notices.Message{notices.WithdrawnWhy.With()})}}
	for _, other := range p.programme.Languages {
		view.Others = append(view.Others, p.otherLanguage(other, "../../"))
	}
	data, err = templates.RenderPage(view)
	return data, l, cmp.Or(v.err, err)
}

// sharedPages are the root of the site and what a server shows for an address that is not there.
func (p press) sharedPages() (tree.Files, error) {
	none := func(*voice, notices.Language) []templates.ChoiceLink { return nil }
	root, err1 := p.choice(notices.RootHead, notices.RootWhy, none)
	missing, err2 := p.choice(notices.NotFoundHead, notices.NotFoundWhy, none)
	return tree.Files{tree.WebPath("index.html"): root, tree.WebPath("404.html"): missing}, cmp.Or(err1, err2)
}

// choice says the same in every language of the programme, one section each.
func (p press) choice(head, why notices.Text, links func(*voice, notices.Language) []templates.ChoiceLink) ([]byte, error) {
	view := templates.Choice{}
	for _, l := range p.programme.Languages {
		v := p.kit.voice(l, true)
		view.Sections = append(view.Sections, templates.ChoiceSection{
			Lang: v.Tag(), Dir: v.Direction(), Name: v.Autonym(),
			Head:  v.plain(head.With()),
			Lines: v.htmls([]notices.Message{why.With()}),
			Links: links(v, l),
			Call:  p.call(v, p.programme.Call(), l),
		})
		if v.err != nil {
			return nil, v.err
		}
	}
	view.Title = view.Sections[0].Head
	return checkedPage(templates.RenderChoice(view))
}
