package ledger

import (
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/doorleaf/notices/jobfile"
)

// What a table may hold. A programme's longest list is far below this.
const (
	mostBytes      = 2 << 20
	mostRows       = 5000
	mostCharacters = 500 // in a cell
	mostProblems   = 50  // told one by one
)

// A tableRow is a row that is not wholly empty.
type tableRow struct {
	line  int             // of the file, where the row starts
	cells map[string]cell // by column, one for each that was asked for
}

// A cell is empty where the row was shorter than the first line; then it is where the row ends.
type cell struct {
	text         string // without spaces around it; one line, and nothing that nobody can see
	line, column int
}

// readTable reads the rows of a file as a spreadsheet saves them: in any of its encodings, separators and line ends, with the columns in any order and others beside them. What
// is in quotes follows RFC 4180. The error is a jobfile.Problems, with everything that is wrong at once; lines and columns are those that a text editor shows.
func readTable(name string, data []byte, columns []string) ([]tableRow, error) {
	t := table{file: name, columns: columns}
	var rows []tableRow
	if text, ok := t.decode(data); ok && t.open(text) && t.header() {
		rows = t.rows()
	}
	if len(t.problems) > 0 {
		return nil, t.told()
	}
	return rows, nil
}

// A table is a file on the way in.
type table struct {
	file     string
	columns  []string // that are asked for
	lines    []string
	reader   *csv.Reader
	names    []string // of the columns that the file has
	problems jobfile.Problems
	more     int // problems beyond those
}

func (t *table) decode(data []byte) (string, bool) {
	if len(data) > mostBytes {
		t.problem(1, 1, "", fmt.Sprintf("the file is longer than %d MB, too long for a list", mostBytes>>20), "check that it is the right file, or split it")
		return "", false
	}
	text, bad := decoded(data)
	if bad != nil {
		t.problem(bad.Line, bad.Column, bad.Text, bad.Says, bad.Mend)
	}
	return lineEnds.Replace(text), bad == nil
}

// separatorLine is a first line by which a file tells Excel its separator (SAP community wiki, "Excel files - CSV format").
var separatorLine = regexp.MustCompile(`^"?(?i:sep)=([^\n])"?(\n|$)`)

// separators are what stands between fields. Where a comma is the decimal sign, spreadsheets write a semicolon; 'Unicode text' has tabs.
var separators = map[rune]string{',': "comma", ';': "semicolon", '\t': "tab"}

func (t *table) open(text string) bool {
	separator := rune(0)
	if found := separatorLine.FindStringSubmatchIndex(text); found != nil {
		separator, _ = utf8.DecodeRuneInString(text[found[2]:])
		if separators[separator] == "" {
			t.problem(1, found[2]+1, string(separator), "this separator is not known", "write sep=, or sep=; or take the line out")
			return false
		}
		text = text[found[4]:] // its line stays, empty, so that the others keep their numbers
	}
	if separator == 0 {
		separator = t.likeliestSeparator(text)
	}
	t.lines = strings.Split(text, "\n")
	t.reader = fieldsOf(text, separator)
	return true
}

func fieldsOf(text string, separator rune) *csv.Reader {
	reader := csv.NewReader(strings.NewReader(text))
	reader.Comma = separator
	reader.FieldsPerRecord = -1
	return reader
}

// likeliestSeparator is the one with which most of the columns are in the header.
func (t *table) likeliestSeparator(text string) rune {
	best, most := ',', 0
	for _, separator := range []rune{',', ';', '\t'} {
		header, _ := nextFilled(fieldsOf(text, separator))
		found := 0
		for _, field := range header {
			if slices.Contains(t.columns, columnName(field)) {
				found++
			}
		}
		if found > most {
			best, most = separator, found
		}
	}
	return best
}

// nextFilled is the next row that is not wholly empty.
func nextFilled(reader *csv.Reader) ([]string, error) {
	for {
		row, err := reader.Read()
		if err != nil || slices.ContainsFunc(row, func(field string) bool { return strings.TrimSpace(field) != "" }) {
			return row, err
		}
	}
}

// next reports false at the end of the file, and where quotes do not match, because nothing after that is certain.
func (t *table) next() ([]string, bool) {
	row, err := nextFilled(t.reader)
	var bad *csv.ParseError
	if errors.As(err, &bad) {
		t.unquoted(bad)
	}
	return row, err == nil
}

func (t *table) unquoted(bad *csv.ParseError) {
	const mend = "put double quotes around the whole field, with no space outside them, and write each double quote inside it twice"
	if !strings.HasPrefix(t.from(bad.Line, bad.Column), `"`) {
		t.wrong(bad.StartLine, 1, "", "in this row a double quote opens a field and none closes it", mend)
		return
	}
	t.wrong(bad.Line, bad.Column, `"`, "this double quote is in the middle of a field", mend)
}

// from is the rest of a line from a byte on, counted from 1.
func (t *table) from(line, column int) string {
	text := t.lines[min(line, len(t.lines))-1]
	return text[min(column-1, len(text)):]
}

// wrong is a problem at a byte of a line, counted from 1.
func (t *table) wrong(line, column int, text, says, mend string) {
	if len(t.problems) <= mostProblems { // counting characters takes time
		line = min(line, len(t.lines))
		column = t.characters(line, column)
	}
	t.problem(line, column, text, says, mend)
}

// characters is the place in a line of a byte, both counted from 1.
func (t *table) characters(line, column int) int {
	text := t.lines[line-1]
	return utf8.RuneCountInString(text[:min(column-1, len(text))]) + 1
}

// problem keeps the first of them, and one more as the place from which on they are only counted.
func (t *table) problem(line, column int, text, says, mend string) {
	if len(t.problems) > mostProblems {
		t.more++
		return
	}
	t.problems = append(t.problems, jobfile.Problem{File: t.file, Line: line, Column: column, Text: text, Says: says, Mend: mend})
}

// told is the problems in the order of their places, and last how many more there are.
func (t *table) told() jobfile.Problems {
	slices.SortStableFunc(t.problems, func(a, b jobfile.Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	if len(t.problems) <= mostProblems {
		return t.problems
	}
	last := &t.problems[mostProblems]
	last.Text, last.Says, last.Mend = "", fmt.Sprintf("and %d more from here on", t.more+1), "mend those above first"
	return t.problems
}
