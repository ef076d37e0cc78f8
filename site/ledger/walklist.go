package ledger

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"golang.org/x/text/language"
	"golang.org/x/text/language/display"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
)

// visitColumns are the columns of a walk list as a file. A row whose other columns are empty is a home where nobody has been yet.
var visitColumns = []string{"home", "on", "how", "by", "language", "why"}

// EmptyWalkList is a walk list as a file to fill in: the homes in walking order.
func EmptyWalkList(homes []string) []byte {
	var rows [][]string
	for _, id := range homes {
		rows = append(rows, append([]string{id}, make([]string, len(visitColumns)-1)...))
	}
	return writeTable(visitColumns, rows)
}

// ReadWalkList reads a walk list that somebody filled in, for a job of the ledger. It finds all problems at once; name is what they call the file.
func (j Job) ReadWalkList(name string, data []byte) ([]Visit, error) {
	if err := j.checkMade(); err != nil {
		return nil, err
	}
	rows, err := readTable(name, data, visitColumns)
	if err != nil {
		return nil, err
	}
	list := walkList{name: name, job: j}
	for _, row := range rows {
		list.add(row)
	}
	if len(list.problems) > 0 {
		return nil, list.problems
	}
	if len(list.visits) == 0 {
		return nil, fmt.Errorf("%s has no row that is filled in, so there is nothing to note", name)
	}
	return list.visits, nil
}

// A walkList is one on the way in.
type walkList struct {
	name     string
	job      Job
	visits   []Visit
	problems jobfile.Problems
}

func (w *walkList) add(row tableRow) {
	texts := map[string]string{}
	told := ""
	for column, cell := range row.cells {
		texts[column] = cell.text
		if column != "home" {
			told += cell.text
		}
	}
	if told == "" {
		return
	}
	before := len(w.problems)
	visit := Visit{Home: texts["home"], How: texts["how"], By: texts["by"], Why: texts["why"]}
	w.check(row, "home", w.job.checkHome(visit.Home))
	var err error
	visit.On, err = parseDay(texts["on"])
	w.check(row, "on", err)
	w.check(row, "how", CheckHow(visit.How))
	w.check(row, "by", CheckBy(visit.By))
	visit.Language, err = LanguageNamed(texts["language"])
	w.check(row, "language", err)
	if len(w.problems) == before {
		w.visits = append(w.visits, visit)
	}
}

// check adds what is wrong with a cell.
func (w *walkList) check(row tableRow, column string, err error) {
	if err == nil {
		return
	}
	at := row.cells[column]
	problem := jobfile.Problem{File: w.name, Line: at.line, Column: at.column, Text: at.text, Says: err.Error(), Mend: "correct it"}
	var slip mistake
	if errors.As(err, &slip) {
		problem.Says, problem.Mend = slip.says, slip.mend
	}
	w.problems = append(w.problems, problem)
}

// A mistake is what is wrong with a word, and what to write instead.
type mistake struct{ says, mend string }

func (m mistake) Error() string { return m.says + "; " + m.mend }

// CheckHow refuses a way of telling that is not among Hows.
func CheckHow(how string) error {
	if slices.Contains(hows, how) {
		return nil
	}
	return mistake{fmt.Sprintf("%q is not how a home is told", how), "write " + strings.Join(hows, ", ")}
}

// CheckBy refuses what cannot be initials.
func CheckBy(by string) error {
	const most = 30
	if by != "" && len([]rune(by)) <= most && !strings.ContainsAny(by, "\n\r\t") {
		return nil
	}
	return mistake{fmt.Sprintf("%q are not the initials of whoever did it", by), "write some, such as RM"}
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
		return "", mistake{fmt.Sprintf("%q is not a language", name), "did you mean " + near + "?"}
	}
	return name, nil
}

// isLanguage reports whether a name is the English one of a language in the Unicode CLDR.
func isLanguage(name string) bool {
	return slices.ContainsFunc(display.Supported.Tags(), func(tag language.Tag) bool {
		return strings.EqualFold(name, display.English.Languages().Name(tag))
	})
}
