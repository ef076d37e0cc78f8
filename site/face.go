package site

import (
	"cmp"
	"fmt"
	"html/template"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/setting"
	"example.org/doorleaf/templates"
	"example.org/doorleaf/templates/pictograms"
)

// A press turns the faces of one job into views.
type press struct {
	kit       Kit
	programme notices.Programme
	english   *voice // of the coordinator's words about places
	code      string
	number    string // of the house
	lot       notices.Lot
	token     string // "" for sheets without codes

	posters setting.Posters
	names   []string // of the job, in any script
	casts   map[notices.Language]fit.Cast
}

// A printing is what one face prints: its sides of paper, the paper, and the record of it.
type printing struct {
	sides  []templates.Face
	paper  string // "letter", "letter x3"
	record record.Face
}

// face lays a face out on one side of paper or on several.
func (p press) face(sheet notices.Sheet, face notices.Face, paper record.Sheet) (printing, error) {
	v, err := p.paperVoice(face.Language)
	if err != nil {
		return printing{}, describe(err, sheet, face)
	}
	view := templates.Face{
		Lang: v.Tag(), Dir: v.Direction(), Fonts: families(v.cast),
		Call: p.call(v, face.Call, face.Language),
		Foot: p.foot(v, sheet, paper),
	}
	made := printing{paper: string(p.programme.Paper), record: record.Face{Language: v.Tag(), LanguageName: englishName(p.kit, face.Language), Draft: v.State().Draft}}
	err = p.addCode(v, face, sheet.Kind, &view, &made.record)
	if err == nil && sheet.Kind == notices.WorkAreaSign {
		err = p.addSign(v, sheet, face, view, &made)
	} else if err == nil {
		err = p.addLetter(v, sheet, face, view, &made)
	}
	made.record.Pages = len(made.sides)
	return made, describe(cmp.Or(err, v.err), sheet, face)
}

func (p press) addLetter(v *voice, sheet notices.Sheet, face notices.Face, view templates.Face, made *printing) error {
	letter, err := p.letterView(v, face)
	if err != nil {
		return err
	}
	view.Letter = letter
	beside, err := p.cast(face.Beside)
	if err != nil {
		return err
	}
	made.sides, err = setting.Letter(v.cast, beside, view, v.plain(face.Head), p.wish(sheet.Kind), p.blockNames(face.Content))
	if err != nil {
		return err
	}
	made.record.CapHeightMM, made.record.Letters = v.cast.Bold.LetterHeightMM(made.sides[0].Letter.Text.Head.Size), v.cast.Bold.Letters()
	return nil
}

func (p press) wish(kind notices.Kind) setting.Wish {
	return setting.Wish{Large: p.programme.LargePrint, Glance: kind.Traits().Glance}
}

func describe(err error, sheet notices.Sheet, face notices.Face) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("sheet %s in the language %s: %w", sheet.ID, face.Language, err)
}

func (p press) addCode(v *voice, face notices.Face, kind notices.Kind, view *templates.Face, made *record.Face) error {
	if p.token == "" {
		return nil
	}
	at := address{p.programme.Base, p.token, face.Language, face.Opens}
	qr, err := encode(at.code())
	if err != nil {
		return err
	}
	wish := templates.LetterCodeSize
	if kind == notices.WorkAreaSign {
		wish = templates.SignCodeSize
	}
	digits := grouped(p.token)
	view.Code = templates.Code{
		SVG: qr.svg(), Size: qr.size(wish),
		Scan: v.plain(notices.FootScan.With()), Comma: v.Comma(), OrType: v.plain(notices.FootOrType.With()),
		Host: strings.ToLower(at.host()), Digits: digits[:],
	}
	size, width := p.wish(kind).LeastType(), templates.FieldWidth-view.Code.Size-templates.FooterGap
	if kind == notices.WorkAreaSign {
		size, width = templates.SignTyped, templates.FieldWidth
	}
	if err := setting.CheckTyped(v.cast, view.Code, size, width); err != nil {
		return err
	}
	made.QR, made.Page = at.code(), at.file()
	made.QRVersion, made.QRLevel, made.QRModuleMM = qr.version, level, qr.module(view.Code.Size)
	return nil
}

// foot has the small print; a translation that nobody has signed says so. A revised sheet says which day's sheet it replaces; a sign carries no
// date, so it has only the number.
func (p press) foot(v *voice, sheet notices.Sheet, paper record.Sheet) templates.Foot {
	foot := templates.Foot{
		Sheet:   v.plain(notices.FootSheet.With()) + " " + v.Isolated(p.code+" / "+sheet.ID),
		Caution: v.plain(notices.FootCaution.With()),
	}
	if paper.Revision > 1 || paper.Tag != "" {
		foot.Revision = v.plain(notices.FootRevision.With()) + " " + ledger.Revision{Number: paper.Revision, Tag: paper.Tag}.String()
	}
	if day, err := notices.ParseDate(paper.ReplacesDate); err == nil && sheet.Kind != notices.WorkAreaSign {
		foot.Replaces, foot.ReplacesDay = v.plain(notices.FootReplaces.With()), v.day(day)
	}
	if v.State().Draft {
		foot.Draft = v.plain(notices.FootDraft.With())
	}
	return foot
}

// call is whom to ring: on the phone the programme answers in its own languages, and the reader says one sentence in English.
func (p press) call(v *voice, call notices.Call, l notices.Language) templates.Call {
	view := templates.Call{
		Head:  v.plain(notices.CallHead.With()),
		Colon: v.Colon(),
		Phone: call.Phone.Written(),
		Dial:  template.URL(call.Phone.Dial()),
	}
	if v.page {
		view.From = p.programme.Name
	}
	if call.Who != "" {
		view.AskFor = v.plain(notices.CallAskFor.With(call.Who))
	}
	if len(call.Speaks) > 0 {
		view.Speaks = speaks(v, call.Speaks)
	}
	if call.Say != nil && l != notices.English {
		view.Say = v.plain(notices.CallSay.With())
		own := &voice{Speaker: v.own, own: v.own}
		view.Words = own.plain(notices.ISpeak.With(notices.LanguageName(l), call.Say))
		v.err = cmp.Or(v.err, own.err)
	}
	return view
}

func speaks(v *voice, languages []notices.Language) string {
	var names []string
	for _, l := range languages {
		names = append(names, v.NameOf(string(l)))
	}
	label, list := v.plain(notices.CallSpeaks.With()), v.List(names)
	return label + templates.Gap(label, list) + list
}

func marks(all []notices.Mark) []template.HTML {
	var drawn []template.HTML
	for _, m := range all {
		drawn = append(drawn, pictograms.SVG(pictograms.Name(m)))
	}
	return drawn
}

// letterView is the text of everything but signs. Large print has no room for a drawing, and says all of it in words; and none for a second language, which gets its
// own side.
func (p press) letterView(v *voice, face notices.Face) (*templates.Letter, error) {
	letter := &templates.Letter{Text: p.textView(v, face.Content), Blanks: blanks(v, face.Blanks)}
	if p.programme.LargePrint {
		letter.Text.Drawing = nil
	}
	if face.Beside == "" {
		return letter, v.err
	}
	second, err := p.paperVoice(face.Beside)
	if err != nil {
		return nil, err
	}
	for i, b := range blanks(second, face.Blanks) {
		letter.Blanks[i].Beside = b.Label
	}
	if !p.programme.LargePrint {
		letter.Beside, err = p.besideView(second, face.Content)
	}
	return letter, cmp.Or(v.err, second.err, err)
}

// besideView is the text again in a second language, on the same side.
func (p press) besideView(v *voice, content notices.Content) (*templates.Text, error) {
	text := p.textView(v, content)
	text.ForLabel, text.For, text.From = "", "", ""
	head, err := setting.Headline(v.cast.Bold, v.plain(content.Head), templates.BesideBox, "the headline in the second language")
	text.Head = head
	return &text, err
}

// textView is all but the headline, whose size is found with that of the rest.
func (p press) textView(v *voice, content notices.Content) templates.Text {
	view := templates.Text{
		Lang: v.Tag(), Dir: v.Direction(), Fonts: families(v.cast),
		From:    p.programme.Name,
		Marks:   marks(content.Marks),
		Facts:   factGroups(v, content.Facts),
		Drawing: p.drawing(v, content.Drawing),
	}
	if content.For != nil {
		view.ForLabel, view.For = v.plain(notices.FootFor.With()), v.cells(content.For)[0]
	}
	for _, b := range content.Blocks {
		view.Blocks = append(view.Blocks, block(v, b))
	}
	return view
}

func block(v *voice, b notices.Block) templates.Block {
	view := templates.Block{Lines: v.htmls(b.Lines)}
	if b.Head.ID != "" {
		view.Head = v.plain(b.Head)
	}
	return view
}

// factGroups start a new group at each fact that has a label and no cells.
func factGroups(v *voice, facts []notices.Fact) []templates.FactGroup {
	var groups []templates.FactGroup
	for _, f := range facts {
		if len(f.Cells) == 0 {
			groups = append(groups, templates.FactGroup{Label: v.label(f.Label)[0]})
			continue
		}
		if len(groups) == 0 {
			groups = append(groups, templates.FactGroup{})
		}
		last := &groups[len(groups)-1]
		last.Rows = append(last.Rows, fact(v, f))
	}
	return groups
}

func fact(v *voice, f notices.Fact) templates.Fact {
	view := templates.Fact{Label: v.label(f.Label)}
	for _, value := range f.Cells {
		view.Cells = append(view.Cells, v.cells(value)...)
	}
	return view
}

func blanks(v *voice, labels []notices.Message) []templates.Blank {
	var all []templates.Blank
	for _, m := range labels {
		all = append(all, templates.Blank{Label: v.plain(m)})
	}
	return all
}

// blockNames are the blocks of a letter as the coordinator knows them, in English.
func (p press) blockNames(content notices.Content) []string {
	var names []string
	for _, b := range content.Blocks {
		name := "the text"
		if b.Head.ID != "" {
			name = fmt.Sprintf("the block %q", p.english.plain(b.Head))
		}
		names = append(names, name)
	}
	return names
}
