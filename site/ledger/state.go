package ledger

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.org/doorleaf/notices"
)

// A Job is what the ledger remembers of one job.
type Job struct {
	Code           string
	Token          string   // "" when it was never made with codes
	address        string   // of the house, at the last make
	Pages          []string // every page address ever made, below the base, in order
	datesDigest    string   // of the dates of the outside work
	DatesChangedOn string   // YYYY-MM-DD, the day on which a make last found other dates than the one before; "" when never
	Beside         []string // what other job files of the house brought into the last make
	Sheets         []Sheet  // every sheet ever made, by id
	Struck         []Struck // marks that were slips, in order

	lines   []line // in order
	writer  Writer
	ends    map[string]string // seal of the last line in the file of each laptop
	last    string            // the same of the writer, with what is pending; "" when it has no line
	pending []Entry           // lines that are not on the disk yet
}

// A Writer is who adds lines: a laptop, on a day by its clock.
type Writer struct {
	Laptop string
	Today  notices.Date
}

// By is the job for a writer to change.
func (j Job) By(w Writer) Job {
	j.writer, j.last = w, j.ends[w.Laptop]
	return j
}

// Facts stand for what a sheet says at a make, and say where it belongs.
type Facts struct {
	ID     string   `json:"id"`
	Digest string   `json:"digest"` // of the facts, never of their looks
	Kind   string   `json:"kind,omitempty"`
	For    []string `json:"for,omitempty"`  // ids of households and neighbours
	To     string   `json:"to,omitempty"`   // their name or address
	Hang   []string `json:"hang,omitempty"` // ways in, of the closed list
	Area   string   `json:"area,omitempty"` // signs only, of the closed list
}

// A Sheet is one sheet of paper through all its revisions.
type Sheet struct {
	Facts             // of the last make that had it
	Gone     bool     // the last make had no such sheet any more
	Revision Revision // of these facts
	printed  []Mark
	Posted   []Mark
	Visits   []Mark // handed, phoned, refused, signed

	versions []version // in order
}

// A version is a sheet as a make found it.
type version struct {
	digest string
	number int
	laptop string
	noted  string // YYYY-MM-DD
}

// A Revision is the number of a sheet's facts. Where two laptops gave one number to different facts, a tag tells them apart.
type Revision struct {
	Number int
	Tag    string // of the laptop: "K7"; "" where the number is enough
}

func (r Revision) String() string {
	if r.Tag == "" {
		return strconv.Itoa(r.Number)
	}
	return strconv.Itoa(r.Number) + "-" + r.Tag
}

// A Mark says what became of paper of a sheet.
type Mark struct {
	Event    Event
	digest   string // of the paper
	Revision Revision
	On       string // YYYY-MM-DD
	Until    string // the day on which it came down, or was taken back from a home; "" while it is out
	Home     string
	How      string
	By       string
	Language string
	Why      string

	line string // seal
}

// A Struck mark was a slip.
type Struck struct {
	Sheet Facts
	Mark  Mark
	On    string // YYYY-MM-DD, when it was struck
}

// Sheet is what the ledger remembers of the sheet with that id.
func (j Job) Sheet(id string) (Sheet, bool) {
	i, ok := j.find(id)
	if !ok {
		return Sheet{Facts: Facts{ID: id}}, false
	}
	return j.Sheets[i], true
}

func (j Job) find(id string) (int, bool) {
	return slices.BinarySearchFunc(j.Sheets, id, func(s Sheet, id string) int { return cmp.Compare(s.ID, id) })
}

// Withdrawn lists the addresses of the job that stand on earlier paper but are not among its pages now. Each needs a page that says so.
func (j Job) Withdrawn(pages []string) []string {
	return slices.DeleteFunc(slices.Clone(j.Pages), func(page string) bool { return slices.Contains(pages, page) })
}

// IsKnown reports whether the ledger has heard of the job.
func (j Job) IsKnown() bool { return len(j.lines) > 0 }

// isUp: the paper is out.
func (m Mark) isUp() bool { return m.Until == "" }

// gave reports whether somebody has paper since this mark.
func (m Mark) gave() bool { return m.Event == Handed || m.Event == Signed }

// spoke reports whether somebody of the home was spoken to.
func (m Mark) spoke() bool { return m.Event != Handed || m.How == "spoke" }

// WasTold reports whether somebody of the home took the paper, or signed for it.
func (m Mark) WasTold() bool { return m.gave() && m.spoke() }

// isFor: a mark without a home counts for everyone the sheet is for.
func (m Mark) isFor(home string) bool { return m.Home == "" || m.Home == home }

// isCurrent reports whether a mark is about paper that says what the job says now.
func (s Sheet) isCurrent(m Mark) bool { return !s.Gone && m.digest == s.Digest }

func (s Sheet) isSign() bool { return len(s.Hang) > 0 && !s.Gone }

// Hangs reports whether paper of the sheet hangs, of whatever revision.
func (s Sheet) Hangs() bool { return slices.ContainsFunc(s.Posted, Mark.isUp) }

// WentOut reports whether paper that says what the sheet says now was printed, put up, or given to somebody.
func (s Sheet) WentOut() bool {
	current := func(m Mark) bool {
		return m.digest == s.Digest && (m.gave() || m.Event == Printed || m.Event == Posted)
	}
	return slices.ContainsFunc(s.printed, current) || slices.ContainsFunc(s.Posted, current) || slices.ContainsFunc(s.Visits, current)
}

// IsWith reports whether a home has the current paper, or would not take it.
func (s Sheet) IsWith(home string) bool {
	return slices.ContainsFunc(s.Visits, func(m Mark) bool {
		return m.digest == s.Digest && m.isUp() && m.isFor(home) && (m.gave() || m.Event == Refused)
	})
}

// HangsNow reports whether paper hangs that says what the sheet says now.
func (s Sheet) HangsNow() bool {
	return slices.ContainsFunc(s.Posted, func(m Mark) bool { return m.digest == s.Digest && m.isUp() })
}

// IsWithAnybody reports whether somebody got the current paper.
func (s Sheet) IsWithAnybody() bool {
	return slices.ContainsFunc(s.Visits, func(m Mark) bool { return m.digest == s.Digest && m.gave() })
}

// SpokenOrTwice reports whether somebody of a home was spoken to about the current paper, or somebody knocked there on two days.
func (s Sheet) SpokenOrTwice(home string) bool {
	first := ""
	for _, m := range s.Visits {
		if m.digest != s.Digest || !m.isFor(home) {
			continue
		}
		if m.spoke() || first != "" && m.On != first {
			return true
		}
		first = m.On
	}
	return false
}

// LeftAt reports whether the current paper of any of the sheets was left at a home where nobody opened, so that a second knock makes sense.
func (j Job) LeftAt(ids []string, home string) bool {
	return slices.ContainsFunc(ids, func(id string) bool {
		sheet, _ := j.Sheet(id)
		return slices.ContainsFunc(sheet.Visits, func(m Mark) bool { return m.digest == sheet.Digest && m.isFor(home) && m.How == "left" })
	})
}

// lastGiven is the mark of the paper that a home has: of the highest revision that it got, the latest.
func (s Sheet) lastGiven(home string) (last Mark, got bool) {
	for _, m := range s.Visits {
		if m.Home != home || !m.gave() {
			continue
		}
		if !got || cmp.Or(cmp.Compare(m.Revision.Number, last.Revision.Number), cmp.Compare(m.On, last.On)) >= 0 {
			last, got = m, true
		}
	}
	return last, got
}

// Replaced is the highest revision of other facts whose paper went out, and the latest day on which it did; the zero Revision and "" when none did.
func (s Sheet) Replaced() (revision Revision, on string) {
	for _, m := range slices.Concat(s.Posted, s.Visits) {
		if m.digest == s.Digest || m.Event != Posted && !m.gave() || m.Revision.Number < revision.Number {
			continue
		}
		if m.Revision.Number > revision.Number {
			revision, on = m.Revision, ""
		}
		on = max(on, m.On)
	}
	return revision, on
}

// A Paper is a sheet that hangs, that a home has, or that was printed.
type Paper struct {
	Sheet Sheet
	Mark  Mark // Home is "" for what hangs and what was printed
}

// Wrong lists the paper that is out and says something else than the job now. What a home has of a sheet that the job no longer has is settled once it got
// another: a done note, say, after a request.
func (j Job) Wrong() []Paper {
	var all []Paper
	for _, paper := range j.out() {
		home := paper.Mark.Home
		if !paper.Sheet.isCurrent(paper.Mark) && !(paper.Sheet.Gone && home != "" && j.gotSince(home, paper.Mark.On)) {
			all = append(all, paper)
		}
	}
	return all
}

// out is all paper of the job that hangs, is in a home, or was printed and went nowhere as far as anybody noted, by sheet. Of each home it is the last that it got,
// and of what was printed the last as well.
func (j Job) out() []Paper {
	var all []Paper
	for _, sheet := range j.Sheets {
		for _, m := range sheet.Posted {
			if m.isUp() {
				all = append(all, Paper{sheet, m})
			}
		}
		for _, home := range sheet.homes() {
			if m, got := sheet.lastGiven(home); got && m.isUp() {
				all = append(all, Paper{sheet, m})
			}
		}
		if last := len(sheet.printed) - 1; last >= 0 && !sheet.wentOn(sheet.printed[last].digest) {
			all = append(all, Paper{sheet, sheet.printed[last]})
		}
	}
	return all
}

// wentOn reports whether paper of some facts was hung or given to somebody, ever.
func (s Sheet) wentOn(digest string) bool {
	return slices.ContainsFunc(slices.Concat(s.Posted, s.Visits), func(m Mark) bool { return m.digest == digest && (m.Event == Posted || m.gave()) })
}

// homes are those that were visited with the sheet, each once.
func (s Sheet) homes() []string {
	var all []string
	for _, m := range s.Visits {
		if !slices.Contains(all, m.Home) {
			all = append(all, m.Home)
		}
	}
	return all
}

// gotSince reports whether a home got a sheet of the last make on a day or later.
func (j Job) gotSince(home, day string) bool {
	return slices.ContainsFunc(j.Sheets, func(s Sheet) bool {
		m, got := s.lastGiven(home)
		return got && s.isCurrent(m) && m.On >= day
	})
}

// union is all strings of both lists in order, each once; never nil.
func union(a, b []string) []string {
	all := slices.Concat([]string{}, a, b)
	slices.Sort(all)
	return slices.Compact(all)
}

// handle names a line for people: "k7qm-12"; where a copied file has two of that name, with the beginning of its seal.
func (j Job) handle(l line) string {
	name := l.Laptop + "-" + strconv.Itoa(l.N)
	twins := 0
	for _, other := range j.lines {
		if other.Laptop == l.Laptop && other.N == l.N {
			twins++
		}
	}
	if twins > 1 {
		name += "." + l.seal[:4]
	}
	return name
}

// tagOf is how paper names a laptop.
func tagOf(laptop, other string) string {
	if len(laptop) < 2 || strings.HasPrefix(other, laptop[:2]) {
		return strings.ToUpper(laptop)
	}
	return strings.ToUpper(laptop[:2])
}
