package jobfile

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices/strict"
)

// A Problem is one thing in a file of the programme that its writer has to fix.
type Problem = strict.Problem

// Problems are in the order of file, line and column. No problems are an empty list; ask for its length.
type Problems []Problem

// Error is one problem a line.
func (ps Problems) Error() string { return strings.Join(ps.Lines(), "\n") }

// mostTold is how many problems of one file are told one by one. Nobody reads more, and most have one cause.
const mostTold = 50

// Lines are the problems as text. Of many in one file, the last line says how many more there are.
func (ps Problems) Lines() []string {
	var lines []string
	told := 0
	for i, p := range ps {
		if i == 0 || p.File != ps[i-1].File {
			told = 0
		}
		if told++; told <= mostTold {
			lines = append(lines, p.String())
		}
		if last := i == len(ps)-1 || ps[i+1].File != p.File; last && told > mostTold {
			lines = append(lines, fmt.Sprintf("%s: and %d more; fix those above first", p.File, told-mostTold))
		}
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
