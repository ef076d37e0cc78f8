package setting

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"regexp"
	"slices"
	"strings"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// A ruler reckons what a letter needs, in the fonts of its language.
type ruler struct {
	fit.Cast
	beside fit.Cast // of the second language on the same side, if there is one
}

func (r ruler) tooHigh(view templates.Face) bool {
	return r.letterHeight(view) > templates.FieldHeight*(1-fit.Spare)
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

// fromHeight is that of the line with the reader's name and the programme's. Where they are too wide for one line, each has its share of the width.
func (r ruler) fromHeight(text templates.Text, t templates.Type) float64 {
	reader := templates.PlainText(text.ForLabel + " " + string(text.For))
	room, wide, lines := fit.Points(templates.FieldWidth-templates.FromGap), r.Text.Width(reader, t.Least)+r.Text.Width(text.From, t.Least), 1
	if wide > room {
		for _, name := range []string{reader, text.From} {
			lines = max(lines, len(r.Text.Lines(name, t.Least, room*r.Text.Width(name, t.Least)/wide)))
		}
	}
	return lineHeight(t.Least)*float64(lines) + templates.BelowFrom
}

func (r ruler) textHeight(text templates.Text, t templates.Type) float64 {
	head := fit.Millimetres(text.Head.Size*text.Head.Leading*float64(len(text.Head.Texts[0]))+2*text.Head.Edge) + 2*t.HeadGap
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
		width := fit.Millimetres(r.Text.Width(c.Text, t.Least)) + templates.CaptionGap
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
		return len(r.Text.Lines(text, t.Least, fit.Points(templates.FieldWidth)))
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
		lines := len(r.Text.Lines(b.Label, t.Least, fit.Points(templates.BlankLabel)))
		if b.Beside != "" {
			lines += len(r.Text.Lines(b.Beside, t.Least, fit.Points(templates.BlankLabel)))
		}
		height += templates.BlankGap + max(templates.BlankLine, fit.Millimetres(t.Least*templates.BlankLeading)*float64(lines))
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
		c := columnsOf(g, labels, width)
		rows := 0.0
		for _, row := range g.Rows {
			filled := lineHeight(size) * float64(r.linesOf(row.Cells, size, c.value))
			if slices.Contains(row.Cells, templates.WriteIn) {
				filled = templates.WriteInBox
			}
			rows += templates.FactPadding + max(filled, lineHeight(size)*float64(r.linesOf(row.Label, size, c.label)))
		}
		label := templates.FactPadding + lineHeight(size)*float64(r.linesOf([]template.HTML{"<strong>" + g.Label + "</strong>"}, size, c.group))
		switch {
		case g.Above:
			height += label + rows
		case g.Label != "":
			height += max(label, rows)
		default:
			height += rows
		}
	}
	return height
}

// columns are how wide the texts of a table may be, in mm.
type columns struct{ group, label, value float64 }

func columnsOf(g templates.FactGroup, labels, width float64) columns {
	switch {
	case g.Above:
		return columns{width, templates.StackedLabelColumn - templates.ColumnGap, width - templates.StackedLabelColumn}
	case g.Label != "":
		return columns{templates.GroupColumn - templates.ColumnGap, labels - templates.ColumnGap, width - templates.GroupColumn - labels}
	}
	return columns{0, labels - templates.ColumnGap, width - labels}
}

// tooWide reports whether a word of the table is wider than its column, where it would be broken.
func (r ruler) tooWide(view templates.Face) bool {
	labels, width := templates.LabelColumn, templates.FieldWidth
	if view.Letter.Text.Drawing != nil {
		labels, width = templates.DrawnLabelColumn, templates.FieldWidth-templates.DrawingWidth-templates.DrawingGap
	}
	for _, g := range view.Letter.Text.Facts {
		c := columnsOf(g, labels, width)
		if r.overflows([]template.HTML{"<strong>" + g.Label + "</strong>"}, view, c.group) {
			return true
		}
		for _, row := range g.Rows {
			if r.overflows(row.Label, view, c.label) || r.overflows(row.Cells, view, c.value) {
				return true
			}
		}
	}
	return false
}

func (r ruler) overflows(pieces []template.HTML, view templates.Face, width float64) bool {
	size := view.Letter.Type.Facts
	for _, piece := range pieces {
		for _, line := range r.fontOf(piece).Lines(templates.PlainText(string(piece)), size, fit.Points(width)) {
			if r.fontOf(piece).Width(line, size) > fit.Points(width) {
				return true
			}
		}
	}
	return false
}

func (r ruler) blockLines(b templates.Block, t templates.Type) int {
	head := template.HTML("<strong>" + html.EscapeString(b.Head) + "</strong>")
	if t.Setting.SentenceALine() {
		return r.linesOf(append([]template.HTML{head}, b.Lines...), t.Blocks, templates.FieldWidth)
	}
	var text string
	for _, line := range b.Lines {
		text += templates.Gap(text, string(line)) + templates.PlainText(string(line))
	}
	pieces := []template.HTML{head, template.HTML(html.EscapeString(text))}
	if t.Setting.RunsOn() {
		pieces = []template.HTML{template.HTML(html.EscapeString(b.Head + r.behindHead(b.Head) + text))}
	}
	return r.linesOf(pieces, t.Blocks, templates.FieldWidth)
}

// behindHead are spaces of the type size that make up for the gap behind a bold head, and for how much wider it is than the same text in regular type.
func (r ruler) behindHead(head string) string {
	const gap = 0.3 // of the type size
	return strings.Repeat("\u2003", int(math.Ceil(r.Bold.Width(head, 1)-r.Text.Width(head, 1)+gap)))
}

func (r ruler) footerHeight(view templates.Face, t templates.Type) float64 {
	width := templates.FieldWidth - view.Code.Size - templates.FooterGap
	call := []template.HTML{}
	if view.Call.AskFor != "" && r.phoneWidth(view.Call, t) > fit.Points(width) {
		call = append(call, template.HTML(html.EscapeString(view.Call.AskFor)))
	}
	for _, line := range []string{view.Call.Speaks, strings.TrimSpace(view.Call.Say + "  " + view.Call.Words)} {
		if line != "" {
			call = append(call, template.HTML(html.EscapeString(line)))
		}
	}
	who := fit.Millimetres(t.Phone*templates.TextLeading) + lineHeight(t.Least)*float64(r.linesOf(call, t.Least, width))
	if view.Code.SVG != "" {
		who += templates.TypedAbove + lineHeight(t.Least)*float64(r.typedLines(view.Code, t.Least, fit.Points(width)))
	}
	foot := fit.Millimetres(t.Small*templates.FootLeading) * float64(r.footLines(view.Foot, t))
	return templates.FooterAbove + max(view.Code.Size, who) + templates.FootRule + foot
}

// footLines counts the lines of the small print. The number of the sheet stands at the end of the last one, or alone where that is full.
func (r ruler) footLines(f templates.Foot, t templates.Type) int {
	width, lines := fit.Points(templates.FieldWidth), 0
	if f.Replaces != "" {
		lines += len(r.Text.Lines(f.Replaces+" "+f.ReplacesDay, t.Small, width))
	}
	text := f.Caution
	if f.Draft != "" {
		text += " · " + f.Draft
	}
	set := r.Text.Lines(text, t.Small, width)
	number := f.Sheet
	if f.Side != "" {
		number += ", " + f.Side
	}
	if f.Revision != "" {
		number += " · " + f.Revision
	}
	if r.Text.Width(set[len(set)-1], t.Small)+r.Text.Width(number, t.Small)+fit.Points(templates.FootGap) > width {
		lines += len(r.Text.Lines(number, t.Small, width))
	}
	return lines + len(set)
}

// typedLines counts the lines of the address to type and what stands before it. The address keeps to a line of its own rather than to be broken, before its digits.
func (r ruler) typedLines(c templates.Code, size, width float64) int {
	const gap = 0.3 // of the type size, between groups of digits
	lines := r.Text.Lines(c.Scan+c.Comma+c.OrType, size, width)
	address := r.Bold.Width(c.Host+strings.Join(c.Digits, ""), size) + gap*size*float64(len(c.Digits)-1)
	switch last := r.Text.Width(lines[len(lines)-1]+"\u00a0", size); {
	case address > width:
		return len(lines) + 2
	case last+address > width:
		return len(lines) + 1
	}
	return len(lines)
}

// CheckTyped makes sure that a line of a width in mm has room for the address up to its digits, in type of a size in pt.
func CheckTyped(cast fit.Cast, c templates.Code, size, width float64) error {
	if cast.Bold.Width(c.Host, size) > fit.Points(width)*(1-fit.Spare) {
		return fmt.Errorf("the base address is so long that %s does not go on one line of a sheet; choose a shorter one", c.Host)
	}
	return nil
}

// phoneWidth is the width in pt of the line with the phone, when it also says whom to ask for.
func (r ruler) phoneWidth(call templates.Call, t templates.Type) float64 {
	const gap = 0.6 // of the type size, behind the space
	return r.Text.Width(call.Head+call.Colon, t.Least) + r.Bold.Width(call.Phone, t.Phone) + r.Text.Width("\u00a0"+call.AskFor, t.Least) + gap*t.Least
}

// linesOf counts the lines of pieces that each start a line.
func (r ruler) linesOf(pieces []template.HTML, size, width float64) int {
	lines := 0
	for _, piece := range pieces {
		if text := templates.PlainText(string(r.heldTogether(piece, size, width))); text != "" {
			lines += len(r.fontOf(piece).Lines(text, size, fit.Points(width)))
		}
	}
	return lines
}

// heldTogether has no space to break at in its bold parts, as a day stays on one line where a line has room for it.
func (r ruler) heldTogether(piece template.HTML, size, width float64) template.HTML {
	return template.HTML(bold.ReplaceAllStringFunc(string(piece), func(part string) string {
		if r.Bold.Width(templates.PlainText(part), size) > fit.Points(width) {
			return part
		}
		return strings.ReplaceAll(part, " ", "\u00a0")
	}))
}

var bold = regexp.MustCompile(`<strong>[^<]*</strong>`)

// fontOf is the bold font for pieces with a bold part: it is the wider one.
func (r ruler) fontOf(piece template.HTML) *fit.Font {
	if strings.Contains(string(piece), "<strong>") {
		return r.Bold
	}
	return r.Text
}

func lineHeight(size float64) float64 { return fit.Millimetres(size * templates.TextLeading) }
