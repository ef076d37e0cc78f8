package ledger

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
)

// What happened to paper. Each of these functions returns the job with it; j stays as it is. Either everything is noted or, with an error, nothing.

// A Noted is what was noted about one sheet.
type Noted struct {
	Sheet   Sheet // as it is now
	Mark    Mark
	Already bool // the ledger knew it, and nothing changed
}

// IsWrong: the paper says something else than the job now.
func (n Noted) IsWrong() bool { return !n.Sheet.isCurrent(n.Mark) }

// Print notes that sheets were printed on a day: the given ones, or all of the last make.
func (j Job) Print(ids []string, on notices.Date) (Job, []Noted, error) {
	sheets, err := j.chosen(ids, func(s Sheet) bool { return !s.Gone })
	if err != nil {
		return j, nil, err
	}
	return j.note(sheets, Printed, markLine{On: on.String()}, func(s Sheet, p paperLine) (Mark, bool) {
		return find(s.printed, func(m Mark) bool { return m.digest == p.Digest && m.On == on.String() })
	})
}

// Post notes that sheets were put up on a day: the given ones, or all signs of the last make. A new revision goes where the old one hung, so that one came
// down. A sheet that hangs already stays as it was noted.
func (j Job) Post(ids []string, on notices.Date, by string) (Job, []Noted, error) {
	sheets, err := j.chosen(ids, Sheet.isSign)
	if err == nil && len(sheets) == 0 {
		err = fmt.Errorf("the last make of job %s had no signs", j.Code)
	}
	if err != nil {
		return j, nil, err
	}
	var failed []error
	for _, s := range sheets {
		if len(s.Hang) == 0 {
			failed = append(failed, fmt.Errorf("%s is no sign and does not hang; note it with doorleaf handed", s.ID))
		}
	}
	if err := errors.Join(failed...); err != nil {
		return j, nil, err
	}
	all := []Noted{}
	for _, s := range sheets {
		mark := markLine{On: on.String(), By: by}
		mark.Ends, mark.Until = s.givesWay(j.paperOn(s, on.String()), on.String())
		var noted []Noted
		if j, noted, err = j.note([]Sheet{s}, Posted, mark, hangsAlready); err != nil {
			return j, nil, err
		}
		all = append(all, noted...)
	}
	return j, all, nil
}

func hangsAlready(s Sheet, p paperLine) (Mark, bool) {
	return find(s.Posted, func(m Mark) bool { return m.digest == p.Digest && m.isUp() })
}

// givesWay is what of a sheet comes down when paper of it goes up: whatever hangs with a lower number; or, when something with a higher one hangs, this paper
// itself, on the day on which that went up.
func (s Sheet) givesWay(paper paperLine, on string) (ends []string, until string) {
	for _, m := range s.Posted {
		switch {
		case !m.isUp() || m.digest == paper.Digest:
		case m.Revision.Number > paper.Revision:
			until = max(on, m.On)
		default:
			ends = append(ends, m.line)
		}
	}
	return ends, until
}

// TakeDown notes that sheets came down on a day, or were taken back from homes: the given ones, or all that hang.
func (j Job) TakeDown(ids []string, on notices.Date) (Job, []Noted, error) {
	sheets, err := j.chosen(ids, Sheet.Hangs)
	if err == nil && len(sheets) == 0 {
		err = fmt.Errorf("as far as the ledger knows, nothing of job %s hangs; note with doorleaf posted what did", j.Code)
	}
	if err != nil {
		return j, nil, err
	}
	after, all, failed := j, []Noted{}, []error{}
	for _, s := range sheets {
		outs, err := s.comesDown(on.String())
		if err != nil {
			failed = append(failed, err)
			continue
		}
		mark := markLine{On: on.String()}
		for _, m := range outs {
			mark.Ends = append(mark.Ends, m.line)
		}
		mark.Paper = []paperLine{{s.ID, outs[0].digest, outs[0].Revision.Number}}
		if after, err = after.with(line{Event: Removed, Mark: &mark}); err != nil {
			return j, nil, err
		}
		ended := outs[0]
		ended.Until = on.String()
		sheet, _ := after.Sheet(s.ID)
		all = append(all, Noted{Sheet: sheet, Mark: ended})
	}
	if err := errors.Join(failed...); err != nil {
		return j, nil, err
	}
	return after, all, nil
}

// comesDown are the marks of paper that is out: what hangs, or what homes have of a sheet that does not hang.
func (s Sheet) comesDown(on string) ([]Mark, error) {
	out := slices.DeleteFunc(slices.Clone(s.Posted), func(m Mark) bool { return !m.isUp() })
	if len(out) == 0 {
		out = slices.DeleteFunc(slices.Clone(s.Visits), func(m Mark) bool { return !m.isUp() || !m.gave() })
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("as far as the ledger knows, %s is not out; leave it out, or note first when it went up", s.ID)
	}
	before := slices.DeleteFunc(slices.Clone(out), func(m Mark) bool { return m.On > on })
	if len(before) == 0 || len(s.Posted) > 0 && len(before) < len(out) {
		first := slices.MaxFunc(out, func(a, b Mark) int { return cmp.Compare(a.On, b.On) })
		return nil, fmt.Errorf("%s went out only on %s, so it did not come down on %s; correct the day", s.ID, first.On, on)
	}
	return before, nil
}

// A Visit is a home that was told something, in whatever way.
type Visit struct {
	Sheets                       []string // none: what the home has not got yet; or, when it has everything, what it got last
	On                           notices.Date
	Home, How, By, Language, Why string
}

// event is what a visit was; how is how paper was given, if it was.
func (v Visit) event() (event Event, how string) {
	switch v.How {
	case "phoned", "refused", "signed":
		return Event(v.How), ""
	}
	return Handed, v.How
}

// hows are the ways in which a home is told.
var hows = []string{"spoke", "left", "mailed", "phoned", "refused", "signed"}

// HandOver notes visits.
func (j Job) HandOver(visits ...Visit) (Job, []Noted, error) {
	after, all := j, []Noted{}
	for _, v := range visits {
		next, noted, err := after.visited(v)
		if err != nil {
			return j, nil, err
		}
		after, all = next, append(all, noted...)
	}
	return after, all, nil
}

func (j Job) visited(v Visit) (Job, []Noted, error) {
	if err := j.checkMade(); err != nil {
		return j, nil, err
	}
	if !j.forAnybody(v.Sheets) {
		if err := j.checkHome(v.Home); err != nil {
			return j, nil, err
		}
	}
	event, how := v.event()
	wanted := j.forVisit(v.Home, event)
	sheets, err := j.chosen(v.Sheets, func(s Sheet) bool { return slices.Contains(wanted, s.ID) })
	if err == nil && len(sheets) == 0 {
		err = fmt.Errorf("the last make had no sheet for the home %s; name the sheet that it got with --sheet", v.Home)
	}
	if err == nil {
		err = errors.Join(checkFor(sheets, v.Home), checkTexts(v))
	}
	if err != nil {
		return j, nil, err
	}
	mark := markLine{On: v.On.String(), Home: v.Home, How: how, By: v.By, Language: v.Language, Why: v.Why}
	return j.note(sheets, event, mark, func(s Sheet, p paperLine) (Mark, bool) {
		want := Mark{Event: event, digest: p.Digest, On: mark.On, Home: v.Home, How: how, By: v.By, Language: v.Language, Why: v.Why}
		return find(s.Visits, func(m Mark) bool {
			m.Revision, m.Until, m.line = Revision{}, "", ""
			return m == want
		})
	})
}

// checkTexts refuses what nobody can see, and what is longer than anybody reads.
func checkTexts(v Visit) error {
	var all []error
	for _, text := range []string{v.Home, v.By, v.Language, v.Why} {
		if utf8.RuneCountInString(text) > mostCharacters {
			all = append(all, fmt.Errorf("a text has more than %d characters; shorten it", mostCharacters))
			continue
		}
		before := rune(0)
		for _, r := range text {
			if says, mend := refused(before, r); says != "" {
				all = append(all, mistake{fmt.Sprintf("%q: %s", text, says), mend})
				break
			}
			before = r
		}
	}
	return errors.Join(all...)
}

// checkFor refuses sheets that go to no home, or to another one.
func checkFor(sheets []Sheet, home string) error {
	var failed []error
	for _, s := range sheets {
		switch {
		case len(s.Hang) > 0:
			failed = append(failed, fmt.Errorf("%s hangs at a door and is handed to nobody; note it with doorleaf posted", s.ID))
		case len(s.For) > 0 && !slices.Contains(s.For, home):
			failed = append(failed, fmt.Errorf("%s is not for the home %s; name a sheet that is", s.ID, home))
		}
	}
	return errors.Join(failed...)
}

// note adds one line about the paper of sheets that was there on the day of a mark. What is known already adds none.
func (j Job) note(sheets []Sheet, event Event, mark markLine, known func(Sheet, paperLine) (Mark, bool)) (Job, []Noted, error) {
	var all []Noted
	mark.Paper = nil
	for _, s := range sheets {
		paper := j.paperOn(s, mark.On)
		if m, already := known(s, paper); already {
			all = append(all, Noted{Sheet: s, Mark: m, Already: true})
		} else {
			mark.Paper = append(mark.Paper, paper)
		}
	}
	if len(mark.Paper) == 0 {
		return j, all, nil
	}
	after, err := j.with(line{Event: event, Mark: &mark})
	if err != nil {
		return j, nil, err
	}
	for _, p := range mark.Paper {
		sheet, _ := after.Sheet(p.Sheet)
		m, _ := find(slices.Concat(sheet.printed, sheet.Posted, sheet.Visits), func(m Mark) bool { return m.line == after.last })
		all = append(all, Noted{Sheet: sheet, Mark: m})
	}
	return after, all, nil
}

func find(marks []Mark, is func(Mark) bool) (Mark, bool) {
	i := slices.IndexFunc(marks, is)
	if i < 0 {
		return Mark{}, false
	}
	return marks[i], true
}

// paperOn is the paper of a sheet that a mark for a day is about. Of today it is that of the last make, whatever days the clocks of other makes had; of an earlier
// day that which was there by the end of it: of the last make on that day or before it, or else of the first.
func (j Job) paperOn(s Sheet, day string) paperLine {
	paper := paperLine{s.ID, s.Digest, s.Revision.Number}
	if day >= j.writer.Today.String() {
		return paper
	}
	for i, v := range s.versions {
		if i == 0 || v.noted <= day {
			paper.Digest, paper.Revision = v.digest, v.number
		}
	}
	return paper
}

// chosen are the named sheets of a job, or else all that are meant.
func (j Job) chosen(ids []string, meant func(Sheet) bool) ([]Sheet, error) {
	if err := errors.Join(j.checkMade(), j.checkIDs(ids)); err != nil {
		return nil, err
	}
	return slices.DeleteFunc(slices.Clone(j.Sheets), func(s Sheet) bool {
		if len(ids) > 0 {
			return !slices.Contains(ids, s.ID)
		}
		return !meant(s)
	}), nil
}

func (j Job) checkMade() error {
	if len(j.Sheets) == 0 {
		return fmt.Errorf("the ledger knows no sheet of job %s; run doorleaf make first, print, and note then what hangs and who was told", j.Code)
	}
	return nil
}

func (j Job) checkIDs(ids []string) error {
	var known []string
	for _, sheet := range j.Sheets {
		known = append(known, sheet.ID)
	}
	var unknown []error
	for _, id := range ids {
		if !slices.Contains(known, id) && len(known) > 0 {
			unknown = append(unknown, fmt.Errorf("job %s has no sheet %q; %s", j.Code, id, suggest("sheets", id, known)))
		}
	}
	return errors.Join(unknown...)
}

func (j Job) checkHome(id string) error {
	if known := j.homes(); !slices.Contains(known, id) {
		return mistake{fmt.Sprintf("job %s has no sheet for a home %q", j.Code, id), suggest("homes", id, known)}
	}
	return nil
}

// forAnybody reports whether sheets are named that are for no home of the job file, such as a spare, or the notice for all homes around a common area. Then
// a home may be called as people call it: "unit 3".
func (j Job) forAnybody(ids []string) bool {
	named := func(id string) bool {
		sheet, _ := j.Sheet(id)
		return len(sheet.For) > 0 || len(sheet.Hang) > 0
	}
	return len(ids) > 0 && !slices.ContainsFunc(ids, named)
}

// homes are the ids of all homes that the job ever had a sheet for.
func (j Job) homes() []string {
	var all []string
	for _, sheet := range j.Sheets {
		all = append(all, sheet.For...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// suggest names the nearest of what is known, and all of it.
func suggest(noun, id string, known []string) string {
	choose := "choose one"
	if near, ok := jobfile.Nearest(id, known); ok {
		choose = "did you mean " + near + "?"
	}
	return fmt.Sprintf("%s (%s: %s)", choose, noun, strings.Join(known, ", "))
}

// forVisit are the sheets that a visit to a home is about: those of the last make that the home has not got, or else those that it got last. Whoever signs or
// refuses does so for what was brought, if anything was. A receipt goes back with whoever brought it, so it is none.
func (j Job) forVisit(home string, event Event) []string {
	var missing, last []string
	latest := ""
	for _, sheet := range j.Sheets {
		if sheet.Gone || !slices.Contains(sheet.For, home) || notices.Kind(sheet.Kind).Traits().GoesBack {
			continue
		}
		mark, got := sheet.lastGiven(home)
		if !got || !sheet.isCurrent(mark) {
			missing = append(missing, sheet.ID)
			continue
		}
		if mark.On > latest {
			latest, last = mark.On, nil
		}
		if mark.On == latest {
			last = append(last, sheet.ID)
		}
	}
	if len(missing) > 0 && !(event == Signed && len(last) > 0) {
		return missing
	}
	return last
}
