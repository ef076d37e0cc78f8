package site

import (
	"fmt"
	"html"
	"html/template"
	"regexp"
	"slices"
	"strings"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// spare is the part of a side that stays free, because a browser and a printer round where we measure.
const spare = 0.03

// mostSides are the front and the back of two sheets.
const mostSides = 4

// A ruler reckons what a letter needs, in the fonts of its language.
type ruler struct {
	fit.Cast
	beside fit.Cast // of the second language on the same side, if there is one
}

// sides lays a letter out on one side of paper, or on several when one does not hold it. Type never gets smaller than 14 pt, or 18 pt in large print:
// first a roomy letter becomes a plain one, then its last blocks move to another side. It is an error when a side can not hold even the table.
func (r ruler) sides(view templates.Face, plainHead func() (templates.Fitted, error)) ([]templates.Face, error) {
	if view.Letter.Roomy && r.tooHigh(view) {
		head, err := plainHead()
		if err != nil {
			return nil, err
		}
		letter := *view.Letter
		letter.Roomy, letter.Text.Head = false, head
		view.Letter = &letter
	}
	all, err := r.split(view, mostSides)
	if len(all) > 1 {
		for i := range all {
			all[i].Foot.Sheet += fmt.Sprintf(", %d/%d", i+1, len(all))
		}
	}
	return all, err
}

// split moves as few parts as it can to other sides, at most so many in all. Blocks are parts, and so are the groups of the table, one for each day.
func (r ruler) split(view templates.Face, most int) ([]templates.Face, error) {
	if !r.tooHigh(view) {
		return []templates.Face{view}, nil
	}
	for stay := partsOf(view) - 1; stay > 0 && most > 1; stay-- {
		first, second := cutAfter(view, stay)
		if r.tooHigh(first) {
			continue
		}
		if rest, err := r.split(second, most-1); err == nil {
			return append([]templates.Face{first}, rest...), nil
		}
	}
	if view.Code.Size > templates.LetterCodeSize {
		return nil, fmt.Errorf("the base address is so long that its code takes %.0f mm and leaves too little room on a side of paper; choose a shorter one", view.Code.Size)
	}
	table := r.tableHeight(view.Letter.Text, view.Letter.Type())
	return nil, fmt.Errorf("the table of days is %.0f mm high and leaves no room on a side of paper; give equal days equal hours and arrangements, or split the job in two", table)
}

func partsOf(view templates.Face) int {
	return len(view.Letter.Text.Facts) + len(view.Letter.Text.Blocks)
}

// cutAfter shares a letter out over two sides, after so many of its parts. The drawing stays in front.
func cutAfter(view templates.Face, parts int) (first, second templates.Face) {
	front, back := *view.Letter, *view.Letter
	facts, blocks := front.Text.Facts, front.Text.Blocks
	cut := min(parts, len(facts))
	front.Text.Facts, back.Text.Facts = facts[:cut], facts[cut:]
	front.Text.Blocks, back.Text.Blocks = blocks[:parts-cut], blocks[parts-cut:]
	back.Text.Drawing, front.Blanks = nil, nil // lines to fill in stand at the end
	first, second = view, view
	first.Letter, second.Letter = &front, &back
	return first, second
}

func (r ruler) tooHigh(view templates.Face) bool {
	return r.letterHeight(view) > templates.FieldHeight*(1-spare)
}

// letterHeight is the height in mm that a letter needs on paper.
func (r ruler) letterHeight(view templates.Face) float64 {
	t := view.Letter.Type()
	height := r.fromHeight(view.Letter.Text, t) + r.textHeight(view.Letter.Text, t) + r.footerHeight(view, t)
	if view.Letter.Beside != nil {
		height += 14.5 + ruler{Cast: r.beside}.textHeight(*view.Letter.Beside, t)
	}
	if len(view.Letter.Blanks) > 0 {
		height += templates.BlanksAbove + templates.BlankHeight*float64(len(view.Letter.Blanks))
	}
	return height
}

// fromHeight is that of the line with the reader's name and the programme's, or of more lines when they are long.
func (r ruler) fromHeight(text templates.Text, t templates.Type) float64 {
	names := plainText(template.HTML(text.ForLabel)+" "+text.For) + "  " + text.From
	more := int(r.Text.Width(names, t.FromText) / points(templates.FieldWidth-8))
	return t.From + lineHeight(t.FromText)*float64(more)
}

func (r ruler) textHeight(text templates.Text, t templates.Type) float64 {
	head := millimetres(text.Head.Size*text.Head.Leading*float64(len(text.Head.Texts[0]))+2*text.Head.Edge) + 2*t.HeadGap
	if len(text.Marks) > 0 {
		head = max(head, t.Mark)
	}
	height := head + r.tableHeight(text, t)
	for _, b := range text.Blocks {
		height += t.BlockGap + lineHeight(t.Blocks)*float64(r.blockLines(b, t))
	}
	return height
}

// tableHeight is that of the facts, or of the plan drawing beside them when it is higher.
func (r ruler) tableHeight(text templates.Text, t templates.Type) float64 {
	if text.Drawing == nil {
		return r.factsHeight(text.Facts, t.Facts, templates.LabelColumn, templates.FieldWidth)
	}
	drawing := templates.FactsAbove + templates.DrawingHeight
	for _, caption := range text.Drawing.Captions {
		drawing += lineHeight(templates.CaptionSize) * float64(len(r.Text.Lines(caption, templates.CaptionSize, points(templates.DrawingColumn-6))))
	}
	return max(drawing, r.factsHeight(text.Facts, templates.DrawnFacts, templates.DrawnLabelColumn, templates.FieldWidth-templates.DrawingColumn))
}

// factsHeight is that of tables of a width in mm, in type of a size in pt.
func (r ruler) factsHeight(groups []templates.FactGroup, size, labels, width float64) float64 {
	if len(groups) == 0 {
		return 0
	}
	height := templates.FactsAbove
	for _, g := range groups {
		value := width - labels
		if g.Label != "" {
			value -= templates.GroupColumn
		}
		rows := 0.0
		for _, row := range g.Rows {
			lines := max(r.linesOf(row.Label, size, labels-templates.ColumnGap), r.linesOf(row.Cells, size, value))
			rows += templates.FactPadding + lineHeight(size)*float64(lines)
			if slices.Contains(row.Cells, templates.WriteIn) {
				rows += templates.WriteInBox - lineHeight(size)*float64(lines)
			}
		}
		label := r.linesOf([]template.HTML{g.Label}, size, templates.GroupColumn-templates.ColumnGap)
		height += max(rows, templates.FactPadding+lineHeight(size)*float64(label))
	}
	return height
}

func (r ruler) blockLines(b templates.Block, t templates.Type) int {
	if !t.RunIn {
		return r.linesOf(append([]template.HTML{template.HTML(b.Head)}, b.Lines...), t.Blocks, templates.FieldWidth)
	}
	// A bold head is wider than the same text in regular type; em spaces make up for it.
	text := b.Head + "  "
	for _, line := range b.Lines {
		text += " " + plainText(line)
	}
	return r.linesOf([]template.HTML{template.HTML(html.EscapeString(text))}, t.Blocks, templates.FieldWidth)
}

func (r ruler) footerHeight(view templates.Face, t templates.Type) float64 {
	width := templates.FieldWidth - view.Code.Size - templates.FooterGap
	call := []template.HTML{}
	if view.Call.AskFor != "" && r.phoneWidth(view.Call, t) > points(width) {
		call = append(call, template.HTML(html.EscapeString(view.Call.AskFor)))
	}
	for _, line := range []string{view.Call.Speaks, strings.TrimSpace(view.Call.Say + "  " + view.Call.Words)} {
		if line != "" {
			call = append(call, template.HTML(html.EscapeString(line)))
		}
	}
	who := millimetres(t.Phone*templates.TextLeading) + lineHeight(t.Call)*float64(r.linesOf(call, t.Call, width))
	if view.Code.SVG != "" {
		who += 1 + lineHeight(t.Typed)*float64(len(r.Bold.Lines(typed(view.Code), t.Typed, points(width))))
	}
	small := strings.Join([]string{view.Foot.Sheet, view.Foot.Caution, view.Foot.Revision, view.Foot.Replaces, view.Foot.ReplacesDay, view.Foot.Draft}, " · ")
	foot := millimetres(t.SmallPrint*templates.SmallLeading) * float64(len(r.Text.Lines(small, t.SmallPrint, points(templates.FieldWidth))))
	return templates.FooterAbove + max(view.Code.Size, who) + templates.FootRule + foot
}

// typed is the line with the address to type.
func typed(c templates.Code) string {
	return fmt.Sprintf("%s, %s %s%s", c.Scan, c.OrType, c.Host, strings.Join(c.Digits, " "))
}

// oneLine is the type size in pt at which that line keeps to one line of a sign, where no other has room.
func (r ruler) oneLine(c templates.Code) (float64, error) {
	const least = 7
	room := points(templates.FieldWidth) * (1 - spare)
	size := min(templates.PlainType.Typed, templates.PlainType.Typed*room/r.Bold.Width(typed(c), templates.PlainType.Typed))
	if size < least {
		return 0, fmt.Errorf("the address to type is too long for a line of a sign; choose a shorter base address than %s", c.Host)
	}
	return size, nil
}

// phoneWidth is the width in pt of the line with the phone, when it also says whom to ask for.
func (r ruler) phoneWidth(call templates.Call, t templates.Type) float64 {
	return r.Text.Width(call.Head+":  "+call.AskFor, t.Call) + r.Bold.Width(call.Phone, t.Phone) + t.Call
}

// linesOf counts the lines of pieces that each start a line.
func (r ruler) linesOf(pieces []template.HTML, size, width float64) int {
	lines := 0
	for _, piece := range pieces {
		if text := plainText(piece); text != "" {
			lines += len(r.fontOf(piece).Lines(text, size, points(width)))
		}
	}
	return lines
}

// fontOf is the bold font for pieces with a bold part: it is the wider one.
func (r ruler) fontOf(piece template.HTML) *fit.Font {
	if strings.Contains(string(piece), "<strong>") {
		return r.Bold
	}
	return r.Text
}

var tag = regexp.MustCompile(`<[^>]*>`)

// plainText is the text of HTML that we made ourselves.
func plainText(h template.HTML) string {
	return html.UnescapeString(tag.ReplaceAllString(string(h), ""))
}

func lineHeight(size float64) float64 { return millimetres(size * templates.TextLeading) }

// millimetres are pt in mm.
func millimetres(pt float64) float64 { return pt * 25.4 / 72 }
