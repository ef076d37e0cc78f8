package site

import (
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"golang.org/x/text/language"
	"golang.org/x/text/language/display"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
)

// visitColumns are the columns of a walk list as a file. A row whose other columns are empty is a home where nobody has been yet.
var visitColumns = []string{"home", "on", "how", "by", "language", "why"}

// Hows are the ways in which a home is told.
var Hows = []string{"spoke", "left", "mailed"}

// emptyVisits is a walk list as a file to fill in: the homes in walking order.
func emptyVisits(plan notices.Plan) []byte {
	var out strings.Builder
	fmt.Fprintf(&out, "%s\n", strings.Join(visitColumns, ","))
	var listed []string
	for _, home := range plan.Homes {
		if !slices.Contains(listed, home.ID) {
			listed = append(listed, home.ID)
			fmt.Fprintf(&out, "%s%s\n", home.ID, strings.Repeat(",", len(visitColumns)-1))
		}
	}
	return []byte(out.String())
}

// ReadVisits reads a walk list that somebody filled in, for a job of the ledger. It finds all problems at once; name is what they call the file.
func (l Ledger) ReadVisits(code, name string, file io.Reader) ([]Visit, error) {
	job, err := l.known(code)
	if err != nil {
		return nil, err
	}
	data, err := io.ReadAll(file)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	rows := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), "\ufeff"))) // spreadsheets write a byte order mark
	rows.FieldsPerRecord = -1
	list := visitList{name: name, job: job}
	for first := true; ; first = false {
		row, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, list.unreadable(err)
		}
		list.columns = nil
		for i := range row {
			line, column := rows.FieldPos(i)
			list.line, list.columns = line, append(list.columns, column)
			row[i] = strings.TrimSpace(row[i])
		}
		if first {
			if !slices.Equal(row, visitColumns) {
				list.wrong(0, strings.Join(row, ","), "is not the first line of a walk list", "write "+strings.Join(visitColumns, ","))
				return nil, list.problems
			}
			continue
		}
		list.add(row)
	}
	return list.done()
}

// A visitList is a walk list on the way in.
type visitList struct {
	name     string
	job      LedgerJob
	line     int
	columns  []int // where each field of the row starts
	visits   []Visit
	problems jobfile.Problems
}

func (v *visitList) done() ([]Visit, error) {
	if len(v.problems) > 0 {
		return nil, v.problems
	}
	if len(v.visits) == 0 {
		return nil, fmt.Errorf("%s has no row that is filled in, so there is nothing to note", v.name)
	}
	return v.visits, nil
}

func (v *visitList) unreadable(err error) error {
	var at *csv.ParseError
	if !errors.As(err, &at) {
		return fmt.Errorf("cannot read %s: %w", v.name, err)
	}
	return jobfile.Problems{{File: v.name, Line: at.Line, Column: at.Column, Says: "this line is not comma-separated text", Mend: "put double quotes around a whole field or leave them out"}}
}

// wrong adds a problem with the field of the row that has that number.
func (v *visitList) wrong(field int, text, says, mend string) {
	column := 1
	if field < len(v.columns) {
		column = v.columns[field]
	}
	if text != "" {
		says = fmt.Sprintf("%q %s", text, says)
	}
	v.problems = append(v.problems, jobfile.Problem{File: v.name, Line: v.line, Column: column, Text: text, Says: says, Mend: mend})
}

func (v *visitList) add(row []string) {
	if len(row) != len(visitColumns) {
		v.wrong(0, "", fmt.Sprintf("this line has %d fields, and a walk list has %d", len(row), len(visitColumns)),
			"put double quotes around a field that holds a comma, and keep empty fields")
		return
	}
	if strings.Join(row[1:], "") == "" {
		return
	}
	before := len(v.problems)
	for i, check := range []func(string) error{v.home, v.on, CheckHow, CheckBy} {
		if err := check(row[i]); err != nil {
			says, mend, _ := strings.Cut(err.Error(), "; ")
			v.wrong(i, "", says, cmp.Or(mend, "correct it"))
		}
	}
	language, err := LanguageNamed(row[4])
	if err != nil {
		says, mend, _ := strings.Cut(err.Error(), "; ")
		v.wrong(4, "", says, mend)
	}
	if len(v.problems) == before {
		v.visits = append(v.visits, Visit{Mark: Mark{Home: row[0], On: row[1], How: row[2], By: row[3], Language: language, Why: row[5]}})
	}
}

func (v *visitList) home(id string) error { return v.job.checkHome(id) }

func (v *visitList) on(text string) error {
	_, err := notices.ParseDate(text)
	return err
}

// CheckHow refuses a way of telling that is not among Hows.
func CheckHow(how string) error {
	if slices.Contains(Hows, how) {
		return nil
	}
	return fmt.Errorf("%q is not how a home is told; write %s", how, strings.Join(Hows, ", "))
}

// CheckBy refuses what cannot be initials.
func CheckBy(by string) error {
	const most = 30
	if by != "" && len([]rune(by)) <= most && !strings.ContainsAny(by, "\n\r\t") {
		return nil
	}
	return fmt.Errorf("%q are not the initials of whoever did it; write some, such as RM", by)
}

// LanguageNamed is the tag of a language that doorleaf has texts for, by tag or English name. Any other name stays as it is, because somebody may
// explain a sheet in a language that it is not written in; only what looks like a slip is refused.
func LanguageNamed(name string) (string, error) {
	if tag, known := notices.LanguageNamed(name); known {
		return string(tag), nil
	}
	var known []string
	for _, l := range notices.Languages {
		known = append(known, l.Name)
	}
	if near, ok := jobfile.Nearest(name, known); ok && name != "" && !isLanguage(name) {
		return "", fmt.Errorf("%q is not a language; did you mean %s?", name, near)
	}
	return name, nil
}

// isLanguage reports whether a name is the English one of a language in the Unicode CLDR.
func isLanguage(name string) bool {
	return slices.ContainsFunc(display.Supported.Tags(), func(tag language.Tag) bool {
		return strings.EqualFold(name, display.English.Languages().Name(tag))
	})
}
