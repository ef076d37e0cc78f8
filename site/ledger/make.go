package ledger

import (
	"reflect"
	"slices"
)

// A Make is what a make found.
type Make struct {
	Token   string   // "" without codes
	Address string   // of the house
	Pages   []string // below the base, all of them
	Dates   string   // digest of the dates of the outside work
	Beside  []string // what other job files of the house brought into it
	Sheets  []Facts
	Output  Output
}

// Output is what the records of the output folder say is on paper. It fills in what a ledger does not know that was brought back from a copy.
type Output struct {
	Pages     []string       // below the base
	Revisions map[string]int // by sheet
}

// Made is the job after a make. Addresses and sheets are only added. A sheet gets the next number when its facts changed. The same facts again change nothing,
// whatever day it is.
func (j Job) Made(m Make) (Job, error) {
	next := makeLine{Token: m.Token, Address: m.Address, Dates: m.Dates, Beside: m.Beside}
	next.Pages = slices.DeleteFunc(union(m.Pages, m.Output.Pages), func(page string) bool { return slices.Contains(j.Pages, page) })
	for _, facts := range m.Sheets {
		next.Sheets = append(next.Sheets, sheetLine{facts, j.number(facts, m.Output.Revisions[facts.ID])})
	}
	if j.IsKnown() && j.isSame(next) {
		return j, nil
	}
	return j.with(line{Event: made, Made: &next})
}

// number is that of a sheet with these facts: the same for the same facts, or one more than anybody has seen.
func (j Job) number(facts Facts, onPaper int) int {
	known, ok := j.Sheet(facts.ID)
	if ok && known.Digest == facts.Digest && known.Revision.Number >= onPaper {
		return known.Revision.Number
	}
	highest := onPaper
	for _, v := range known.versions {
		highest = max(highest, v.number)
	}
	return highest + 1
}

// isSame reports whether a make found what the last one did.
func (j Job) isSame(m makeLine) bool {
	sheets := 0
	for _, sheet := range j.Sheets {
		if !sheet.Gone {
			sheets++
		}
	}
	return sheets == len(m.Sheets) && len(m.Pages) == 0 && (m.Token == "" || m.Token == j.Token) && m.Address == j.address && m.Dates == j.datesDigest &&
		slices.Equal(m.Beside, j.Beside) && !slices.ContainsFunc(m.Sheets, j.differs)
}

func (j Job) differs(sheet sheetLine) bool {
	known, _ := j.Sheet(sheet.ID)
	return known.Gone || known.Revision.Number != sheet.Revision || !reflect.DeepEqual(known.Facts, sheet.Facts)
}

// with is the job with one more line, by its writer.
func (j Job) with(l line) (Job, error) {
	before := root(j.Code, j.writer.Laptop)
	l.Doorleaf, l.N, l.Laptop, l.Noted, l.Seen = formatVersion, 1, j.writer.Laptop, j.writer.Today.String(), map[string]int{}
	for _, known := range j.lines {
		l.N = max(l.N, known.N+1)
		if known.Laptop != l.Laptop {
			l.Seen[known.Laptop] = max(l.Seen[known.Laptop], known.N)
		}
	}
	if len(l.Seen) == 0 {
		l.Seen = nil
	}
	if j.last != "" {
		before = j.last
	}
	text, again, err := l.sealed(before)
	if err != nil {
		return j, err
	}
	j = j.copied()
	j.last, j.pending = again.seal, append(j.pending, Entry{j.Code, l.Laptop, text})
	return j.after(again, nil).tagged(), nil
}
