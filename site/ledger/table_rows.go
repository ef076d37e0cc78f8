package ledger

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// columnName is how a field of the first line names a column.
func columnName(field string) string { return strings.ToLower(strings.TrimSpace(field)) }

// header reads the names of the columns, and reports whether rows can be read by them.
func (t *table) header() bool {
	fields, ok := t.next()
	if !ok && len(t.problems) == 0 {
		t.problem(1, 1, "", "the file is empty", "write "+strings.Join(t.columns, ",")+" as its first line")
	}
	if !ok {
		return false
	}
	seen := map[string]bool{}
	for i, field := range fields {
		name := t.heading(i, columnName(field))
		if seen[name] && slices.Contains(t.columns, name) {
			t.wrongField(i, field, fmt.Sprintf("the column %q is there twice", name), "keep one of the two")
		}
		seen[name] = true
		t.names = append(t.names, name)
	}
	missing := slices.DeleteFunc(slices.Clone(t.columns), func(name string) bool { return seen[name] })
	if len(missing) > 0 {
		t.wrongField(0, "", "the first line has no column "+strings.Join(missing, ", "), "write "+strings.Join(t.columns, ",")+" as the first line; other columns may stand beside them")
	}
	return len(t.problems) == 0
}

// heading is a name without what nobody can see; where that hid a column, it is a problem.
func (t *table) heading(i int, name string) string {
	seen := strings.Map(func(r rune) rune {
		if says, _ := refused(0, r); says != "" {
			return -1
		}
		return r
	}, name)
	if seen == name || !slices.Contains(t.columns, seen) {
		return name
	}
	t.legible(i, name)
	return seen
}

func (t *table) rows() []tableRow {
	var rows []tableRow
	for {
		fields, ok := t.next()
		if !ok {
			return rows
		}
		if len(rows) == mostRows {
			t.wrongField(0, "", fmt.Sprintf("the list has more than %d rows", mostRows), "check that it is the right file, or split it")
			return nil
		}
		rows = append(rows, t.row(fields))
	}
}

func (t *table) row(fields []string) tableRow {
	line, _ := t.reader.FieldPos(0)
	row := tableRow{line: line, cells: map[string]cell{}}
	t.nothingBeyond(fields)
	for i, field := range fields[:min(len(fields), len(t.names))] {
		if slices.Contains(t.columns, t.names[i]) {
			row.cells[t.names[i]] = t.cell(i, strings.TrimSpace(field))
		}
	}
	last, _ := t.reader.FieldPos(len(fields) - 1)
	end := cell{line: last, column: utf8.RuneCountInString(t.lines[last-1]) + 1}
	for _, name := range t.columns {
		if _, there := row.cells[name]; !there {
			row.cells[name] = end
		}
	}
	return row
}

// nothingBeyond: what stands in a column without a name is mostly the rest of a field that was cut in two, and would be lost.
func (t *table) nothingBeyond(fields []string) {
	for i, field := range fields {
		if strings.TrimSpace(field) != "" && (i >= len(t.names) || t.names[i] == "") {
			t.wrongField(i, field, "this row has more fields than the first line has names",
				fmt.Sprintf("put double quotes around a field that holds a %s, or give this column a name", separators[t.reader.Comma]))
			return
		}
	}
}

func (t *table) cell(i int, text string) cell {
	line, column := t.reader.FieldPos(i)
	if n := utf8.RuneCountInString(text); n > mostCharacters {
		t.wrongField(i, text, fmt.Sprintf("this field has %d characters, and at most %d are read", n, mostCharacters), "shorten it")
	}
	t.legible(i, text)
	return cell{text: unshielded(text), line: line, column: t.characters(line, column)}
}

// legible refuses the first character of a field that nobody can see, or that would break its line.
func (t *table) legible(i int, text string) {
	before := rune(0)
	for _, r := range text {
		if says, mend := refused(before, r); says != "" {
			line, column := t.reader.FieldPos(i)
			rest := t.from(line, column)
			if at := strings.IndexRune(rest+"\n", r); at >= 0 { // the field starts in this line, so the first one in it is the one
				column += at
			}
			t.wrong(line, column, string(r), says, mend)
			return
		}
		before = r
	}
}

func refused(before, r rune) (says, mend string) {
	switch {
	case strings.ContainsRune("\n\u2028\u2029", r):
		return fmt.Sprintf("there is a line break in this field (U+%04X)", r), "write it on one line"
	case r == utf8.RuneError:
		return fmt.Sprintf("a character was lost here when the file was saved (U+%04X)", r), "type it again, and save the list as CSV UTF-8"
	case unicode.IsControl(r) || unicode.Is(hidden, r) || unicode.Is(unicode.Join_Control, r) && !joinable(before):
		return fmt.Sprintf("there is an invisible character here (U+%04X)", r), "delete it, or type the field again"
	}
	return "", ""
}

// hidden characters change how text is read or compared without being seen: those of no width, those that turn its direction round, tags. The marks U+200E and U+200F and the
// Arabic letter mark only settle where a sign of punctuation stands; they belong to names and stay, as in a job file.
var hidden = &unicode.RangeTable{
	R16: []unicode.Range16{
		{0x00AD, 0x00AD, 1}, {0x180E, 0x180E, 1}, {0x200B, 0x200B, 1}, {0x202A, 0x202E, 1}, {0x2060, 0x206F, 1}, {0xFEFF, 0xFEFF, 1}, {0xFFF9, 0xFFFB, 1},
	},
	R32:         []unicode.Range32{{0xE0000, 0xE007F, 1}},
	LatinOffset: 1,
}

// joinable: after a letter a joiner can be part of the spelling, in Persian and in Malayalam for example (RFC 5892, appendix A.1 and A.2, which are stricter). The scripts named
// here have no use for one.
func joinable(before rune) bool {
	return (unicode.IsLetter(before) || unicode.IsMark(before)) && !unicode.In(before, unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Han)
}

// wrongField is a problem with a field of the row that was read last.
func (t *table) wrongField(i int, text, says, mend string) {
	line, column := t.reader.FieldPos(i)
	t.wrong(line, column, text, says, mend)
}
