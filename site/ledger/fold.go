package ledger

import (
	"slices"
)

// fold is what lines come to, in whatever order they are given. A line that stands in two files, such as a copy that a sync service kept, counts once.
func fold(code string, lines []line) Job {
	all := slices.Clone(lines)
	slices.SortFunc(all, inOrder)
	all = slices.CompactFunc(all, func(a, b line) bool { return a.seal == b.seal })
	job := Job{Code: code}
	slips := strikesOf(all)
	for _, l := range all {
		job = job.after(l, slips)
	}
	return job.tagged()
}

// strikesOf are the days on which marks were struck, by the seal of their lines. Only marks can be.
func strikesOf(lines []line) map[string]string {
	slips := map[string]string{}
	for _, l := range lines {
		if l.Event == struck {
			slips[l.Strikes] = l.Noted
		}
	}
	return slips
}

// after is the job after one more line. It changes the slices of j.
func (j Job) after(l line, slips map[string]string) Job {
	j.lines = append(j.lines, l)
	switch {
	case l.Made != nil:
		return j.afterMake(l)
	case l.Mark != nil && slips[l.seal] != "":
		for _, p := range l.Mark.Paper {
			sheet, _ := j.Sheet(p.Sheet)
			j.Struck = append(j.Struck, Struck{sheet.Facts, markOf(l, p), slips[l.seal]})
		}
	case l.Mark != nil:
		return j.afterMark(l)
	}
	return j
}

func (j Job) afterMake(l line) Job {
	m := l.Made
	if m.Token != "" {
		j.Token = m.Token
	}
	if j.datesDigest != "" && j.datesDigest != m.Dates {
		j.DatesChangedOn = l.Noted
	}
	j.address, j.datesDigest, j.Beside, j.Pages = m.Address, m.Dates, m.Beside, union(j.Pages, m.Pages)
	for i := range j.Sheets {
		j.Sheets[i].Gone = true
	}
	for _, made := range m.Sheets {
		i := j.place(made.ID)
		sheet := &j.Sheets[i]
		sheet.Facts, sheet.Gone, sheet.Revision = made.Facts, false, Revision{Number: made.Revision}
		v := version{made.Digest, made.Revision, l.Laptop, l.Noted}
		if last := len(sheet.versions) - 1; last < 0 || sheet.versions[last].digest != v.digest || sheet.versions[last].number != v.number {
			sheet.versions = append(sheet.versions, v)
		}
	}
	return j
}

// place is the index of a sheet, which is added if need be.
func (j *Job) place(id string) int {
	i, ok := j.find(id)
	if !ok {
		j.Sheets = slices.Insert(j.Sheets, i, Sheet{Facts: Facts{ID: id}, Gone: true})
	}
	return i
}

func (j Job) afterMark(l line) Job {
	for _, p := range l.Mark.Paper {
		sheet := &j.Sheets[j.place(p.Sheet)] // its make may be among lines that are lost
		for _, marks := range [][]Mark{sheet.Posted, sheet.Visits} {
			for i := range marks {
				if marks[i].isUp() && slices.Contains(l.Mark.Ends, marks[i].line) {
					marks[i].Until = max(marks[i].On, l.Mark.On)
				}
			}
		}
		switch m := markOf(l, p); l.Event {
		case Printed:
			sheet.printed = append(sheet.printed, m)
		case Posted:
			sheet.Posted = append(sheet.Posted, m)
		case Handed, Phoned, Refused, Signed:
			sheet.Visits = append(sheet.Visits, m)
		}
	}
	return j
}

func markOf(l line, p paperLine) Mark {
	m := l.Mark
	return Mark{Event: l.Event, digest: p.Digest, Revision: Revision{Number: p.Revision}, On: m.On, Until: m.Until, Home: m.Home, How: m.How, By: m.By,
		Language: m.Language, Why: m.Why, line: l.seal}
}

// tagged tells papers apart that have the same number and different facts.
func (j Job) tagged() Job {
	for i := range j.Sheets {
		sheet := &j.Sheets[i]
		sheet.Revision.Tag = sheet.tag(sheet.Revision.Number, sheet.Digest)
		for _, marks := range [][]Mark{sheet.printed, sheet.Posted, sheet.Visits} {
			for k := range marks {
				marks[k].Revision.Tag = sheet.tag(marks[k].Revision.Number, marks[k].digest)
			}
		}
	}
	return j
}

func (s Sheet) tag(number int, digest string) string {
	own := slices.IndexFunc(s.versions, func(v version) bool { return v.number == number && v.digest == digest })
	twin := slices.IndexFunc(s.versions, func(v version) bool { return v.number == number && v.digest != digest })
	if own < 0 || twin < 0 {
		return ""
	}
	return tagOf(s.versions[own].laptop, s.versions[twin].laptop)
}

// copied is a job whose slices can be changed.
func (j Job) copied() Job {
	j.lines, j.pending, j.Struck = slices.Clone(j.lines), slices.Clone(j.pending), slices.Clone(j.Struck)
	j.Sheets = slices.Clone(j.Sheets)
	for i, s := range j.Sheets {
		s.printed, s.Posted, s.Visits, s.versions = slices.Clone(s.printed), slices.Clone(s.Posted), slices.Clone(s.Visits), slices.Clone(s.versions)
		j.Sheets[i] = s
	}
	return j
}
