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

// A ruler reckons what a letter needs, in the fonts of its language.
type ruler struct {
	fit.Cast
	beside fit.Cast // of the second language on the same side, if there is one
}

func (r ruler) tooHigh(view templates.Face) bool {
	return r.letterHeight(view) > templates.FieldHeight*(1-spare)
}

// letterHeight is the height in mm that a letter needs on paper.
func (r ruler) letterHeight(view templates.Face) float64 {
	t := view.Letter.Type
	height := r.fromHeight(view.Letter.Text, t) + r.textHeight(view.Letter.Text, t) + r.blanksHeight(view.Letter.Blanks, t) + r.footerHeight(view, t)
	if view.Letter.Beside != nil {
		height += templates.BesideAbove + ruler{Cast: r.beside}.textHeight(*view.Letter.Beside, t)
	}
	return height
}

// fromHeight is that of the line with the reader's name and the programme's, or of more lines when they are long.
func (r ruler) fromHeight(text templates.Text, t templates.Type) float64 {
	names := plainText(template.HTML(text.ForLabel)+" "+text.For) + "  " + text.From
	more := int(r.Text.Width(names, t.Least) / points(templates.FieldWidth-8))
	return lineHeight(t.Least)*float64(1+more) + templates.BelowFrom
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

// tableHeight is that of the facts, or of the plan drawing beside them when it is higher, with the captions below.
func (r ruler) tableHeight(text templates.Text, t templates.Type) float64 {
	if text.Drawing == nil {
		return r.factsHeight(text.Facts, t.Facts, templates.LabelColumn, templates.FieldWidth)
	}
	facts := r.factsHeight(text.Facts, t.Facts, templates.DrawnLabelColumn, templates.FieldWidth-templates.DrawingWidth-templates.DrawingGap)
	return max(facts, templates.FactsAbove+text.Drawing.Height) + templates.CaptionAbove + lineHeight(t.Least)*float64(r.captionLines(text.Drawing.Captions, t))
}

// captionLines counts the lines of captions that each keep together, or follow each other as one text.
func (r ruler) captionLines(all []templates.Caption, t templates.Type) int {
	lines, left, text := 0, 0.0, ""
	for _, c := range all {
		width := millimetres(r.Text.Width(c.Text, t.Least)) + templates.CaptionGap
		if c.Sample != "" {
			width += templates.SampleWidth + templates.SampleGap
			text += "\u2003\u2003\u2003" // as wide as a sample at the least
		}
		if width > left {
			lines, left = lines+1, templates.FieldWidth
		}
		left -= width
		text += c.Text + "\u2003\u2003 " // as wide as the gap at the least
	}
	if t.Setting.RunsOn() {
		return len(r.Text.Lines(text, t.Least, points(templates.FieldWidth)))
	}
	return lines
}

// blanksHeight is that of the lines to fill in by hand.
func (r ruler) blanksHeight(all []templates.Blank, t templates.Type) float64 {
	if len(all) == 0 {
		return 0
	}
	height := templates.BlanksAbove
	for _, b := range all {
		lines := len(r.Text.Lines(b.Label, t.Least, points(templates.BlankLabel)))
		if b.Beside != "" {
			lines += len(r.Text.Lines(b.Beside, t.Least, points(templates.BlankLabel)))
		}
		height += templates.BlankGap + max(templates.BlankLine, millimetres(t.Least*templates.BlankLeading)*float64(lines))
	}
	return height
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
			labelled := lineHeight(size) * float64(r.linesOf(row.Label, size, labels-templates.ColumnGap))
			filled := lineHeight(size) * float64(r.linesOf(row.Cells, size, value))
			if slices.Contains(row.Cells, templates.WriteIn) {
				filled = templates.WriteInBox
			}
			rows += templates.FactPadding + max(labelled, filled)
		}
		label := r.linesOf([]template.HTML{g.Label}, size, templates.GroupColumn-templates.ColumnGap)
		height += max(rows, templates.FactPadding+lineHeight(size)*float64(label))
	}
	return height
}

func (r ruler) blockLines(b templates.Block, t templates.Type) int {
	head := template.HTML("<strong>" + html.EscapeString(b.Head) + "</strong>")
	if t.Setting.SentenceALine() {
		return r.linesOf(append([]template.HTML{head}, b.Lines...), t.Blocks, templates.FieldWidth)
	}
	var text string
	for _, line := range b.Lines {
		text += " " + plainText(line)
	}
	pieces := []template.HTML{head, template.HTML(html.EscapeString(text))}
	if t.Setting.RunsOn() {
		// A bold head is wider than the same text in regular type; em spaces make up for it.
		pieces = []template.HTML{template.HTML(html.EscapeString(b.Head + "\u2003\u2003" + text))}
	}
	return r.linesOf(pieces, t.Blocks, templates.FieldWidth)
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
	who := millimetres(t.Phone*templates.TextLeading) + lineHeight(t.Least)*float64(r.linesOf(call, t.Least, width))
	if view.Code.SVG != "" {
		who += 1 + lineHeight(t.Least)*float64(len(r.Bold.Lines(typed(view.Code), t.Least, points(width))))
	}
	foot := millimetres(t.Least*templates.FootLeading) * float64(r.footLines(view.Foot, t))
	return templates.FooterAbove + max(view.Code.Size, who) + templates.FootRule + foot
}

// footLines counts the lines of the small print. The number of the sheet stands at the end of the last one, or alone where that is full.
func (r ruler) footLines(f templates.Foot, t templates.Type) int {
	width, lines := points(templates.FieldWidth), 0
	if f.Replaces != "" {
		lines += len(r.Text.Lines(f.Replaces+" "+f.ReplacesDay, t.Least, width))
	}
	text := f.Caution
	if f.Draft != "" {
		text += " · " + f.Draft
	}
	set := r.Text.Lines(text, t.Least, width)
	number := f.Sheet
	if f.Revision != "" {
		number += " · " + f.Revision
	}
	if r.Text.Width(set[len(set)-1], t.Least)+r.Text.Width(number, t.Least)+points(templates.FootGap) > width {
		lines += len(r.Text.Lines(number, t.Least, width))
	}
	return lines + len(set)
}

// typed is the line with the address to type.
func typed(c templates.Code) string {
	return fmt.Sprintf("%s, %s %s%s", c.Scan, c.OrType, c.Host, strings.Join(c.Digits, " "))
}

// checkTyped makes sure that the line with the address takes two lines of a sign at most, and the address itself one.
func (r ruler) checkTyped(c templates.Code) error {
	room := points(templates.FieldWidth) * (1 - spare)
	address := c.Host + strings.Join(c.Digits, " ")
	if r.Bold.Width(address, templates.SignTyped) > room || len(r.Bold.Lines(typed(c), templates.SignTyped, room)) > 2 {
		return fmt.Errorf("the address to type is too long for a line of a sign; choose a shorter base address than %s", c.Host)
	}
	return nil
}

// phoneWidth is the width in pt of the line with the phone, when it also says whom to ask for.
func (r ruler) phoneWidth(call templates.Call, t templates.Type) float64 {
	return r.Text.Width(call.Head+":  "+call.AskFor, t.Least) + r.Bold.Width(call.Phone, t.Phone) + t.Least
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
