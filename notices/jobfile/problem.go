package jobfile

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/doorleaf/notices/strict"
)

// A Problem is one thing in a file that its writer has to mend, told as a colleague would tell it.
type Problem struct {
	File         string // inside the programme folder, with forward slashes
	Line, Column int    // from 1; columns count characters
	Text         string // as it stands in the file; empty when something is missing
	Says         string
	Mend         string
}

func (p Problem) String() string {
	return fmt.Sprintf("%s:%d:%d: %s", p.File, p.Line, p.Column, p.message())
}

// message joins both halves: with a semicolon, or as sentences when the first half ends as one.
func (p Problem) message() string {
	if strings.HasSuffix(p.Says, "?") || strings.HasSuffix(p.Says, ".") {
		return p.Says + " " + strings.ToUpper(p.Mend[:1]) + p.Mend[1:] + "."
	}
	return p.Says + "; " + p.Mend
}

// Problems are in the order of file, line and column. No problems are an empty list; ask for its length.
type Problems []Problem

// Error is one problem a line.
func (ps Problems) Error() string { return strings.Join(ps.Lines(), "\n") }

// Lines are the problems as text.
func (ps Problems) Lines() []string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return lines
}

func (ps Problems) sorted() Problems {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return ps
}

func (ps Problems) in(file string) bool {
	return slices.ContainsFunc(ps, func(p Problem) bool { return p.File == file })
}

func problemsOf(file string, found []strict.Problem) Problems {
	var ps Problems
	for _, p := range found {
		ps = append(ps, Problem{file, p.Line, p.Column, p.Text, p.Says, p.Mend})
	}
	return ps
}

// quoted shows text from a file in a message: shortened, and with invisible signs made visible.
func quoted(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return strconv.Quote(text)
}
