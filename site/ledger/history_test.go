package ledger

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/doorleaf/notices"
)

const aToken = "482109371158"

var aprilFirst = notices.Date{Year: 2027, Month: time.April, Day: 1}

var (
	someSheets = []string{"letter-h1", "request-n12", "sign-hall-front_door-en", "sign-hall-front_door-vi"}
	somePages  = []string{"EN/HOME", "EN/WIN", "ES/WIN", "VI/PETS"}
)

func factsFor(id, digest string) Facts {
	facts := Facts{ID: id, Digest: digest}
	switch id {
	case "letter-h1":
		facts.Kind, facts.For, facts.To = "stay_out_letter", []string{"h1"}, "The Lam family"
	case "request-n12":
		facts.Kind, facts.For, facts.To = "close_windows_request", []string{"n12"}, "12 Alder Court"
	default:
		facts.Kind, facts.Hang, facts.Area = "work_area_sign", []string{"front_door"}, "hallway"
	}
	return facts
}

// A town is three laptops that share a folder now and then, and what really happened.
type town struct {
	files map[string][]line         // what each laptop has written
	seen  map[string]map[string]int // how many lines of each other each laptop has
	paper map[string]paperLine      // the paper of each mark, by the seal of its line and its sheet
	today notices.Date
}

func newTown() *town {
	t := &town{files: map[string][]line{}, seen: map[string]map[string]int{}, paper: map[string]paperLine{}, today: aprilFirst}
	for _, laptop := range laptops {
		t.files[laptop], t.seen[laptop] = nil, map[string]int{}
	}
	return t
}

var laptops = []string{"bb22", "k7qm", "q3xz"}

// job is what a laptop makes of the files that it has.
func (w *town) job(laptop string) Job {
	var lines []line
	for other, n := range w.seen[laptop] {
		lines = append(lines, w.files[other][:n]...)
	}
	lines = append(lines, w.files[laptop]...)
	job := fold("alder-14", lines)
	job.ends = map[string]string{}
	if own := w.files[laptop]; len(own) > 0 {
		job.ends[laptop] = own[len(own)-1].seal
	}
	return job.By(Writer{laptop, w.today})
}

// all is what everything comes to.
func (w *town) all() Job {
	return fold("alder-14", slices.Concat(slices.Collect(maps.Values(w.files))...))
}

// keep takes the lines of a change into the file of its laptop.
func (w *town) keep(t *rapid.T, laptop string, after Job) {
	before := root("alder-14", laptop)
	if own := w.files[laptop]; len(own) > 0 {
		before = own[len(own)-1].seal
	}
	for _, e := range after.Pending() {
		l, err := unseal(e.Text, before)
		if err != nil || e.Laptop != laptop {
			t.Fatalf("a line of %s cannot be read back: %v\n%s", laptop, err, e.Text)
		}
		w.files[laptop] = append(w.files[laptop], l)
		before = l.seal
		if l.Mark != nil {
			for _, p := range l.Mark.Paper {
				w.paper[l.seal+p.Sheet] = p
			}
		}
	}
}

func drawMake(t *rapid.T) Make {
	m := Make{Token: aToken, Address: "14 Alder Court", Dates: rapid.SampledFrom([]string{"may", "june"}).Draw(t, "dates")}
	for _, p := range rapid.SliceOfDistinct(rapid.SampledFrom(somePages), rapid.ID).Draw(t, "pages") {
		m.Pages = append(m.Pages, aToken+"/"+p+"/")
	}
	for _, id := range rapid.SliceOfDistinct(rapid.SampledFrom(someSheets), rapid.ID).Draw(t, "sheets") {
		m.Sheets = append(m.Sheets, factsFor(id, rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "facts of "+id)))
	}
	return m
}

// step is one thing that happens on a laptop. What the ledger refuses leaves it as it was.
func (w *town) step(t *rapid.T) {
	laptop := rapid.SampledFrom(laptops).Draw(t, "laptop")
	job := w.job(laptop)
	copied := job.copied()
	day := w.today.Plus(-rapid.IntRange(0, 3).Draw(t, "days ago"))
	sheet := func() []string {
		if len(job.Sheets) == 0 {
			return []string{"none"}
		}
		return []string{rapid.SampledFrom(job.Sheets).Draw(t, "sheet").ID}
	}
	after, err := job, error(nil)
	switch what := rapid.SampledFrom([]string{"sync", "make", "print", "post", "visit", "take down", "strike"}).Draw(t, "step"); what {
	case "sync":
		other := rapid.SampledFrom(laptops).Draw(t, "with")
		if other != laptop {
			w.seen[laptop][other] = max(w.seen[laptop][other], rapid.IntRange(0, len(w.files[other])).Draw(t, "lines"))
			w.bringAlong(laptop)
		}
		return
	case "make":
		after, err = job.Made(drawMake(t))
	case "print":
		after, _, err = job.Print(nil, day)
	case "post":
		after, _, err = job.Post(sheet(), day, "RM")
	case "visit":
		v := Visit{Sheets: sheet(), On: day, How: rapid.SampledFrom(hows).Draw(t, "how"), By: "RM", Home: rapid.SampledFrom([]string{"h1", "n12"}).Draw(t, "home")}
		after, _, err = job.HandOver(v)
	case "take down":
		after, _, err = job.TakeDown(sheet(), day)
	case "strike":
		if marks := job.Marks(); len(marks) > 0 {
			after, _, err = job.Strike(rapid.SampledFrom(marks).Draw(t, "mark").Name)
		}
	}
	if err != nil && len(after.Pending()) > 0 {
		t.Fatalf("refused (%v), and there are lines to write all the same", err)
	}
	if !reflect.DeepEqual(copied.Sheets, job.Sheets) || !reflect.DeepEqual(copied.lines, job.lines) {
		t.Fatal("a step changed the job before it")
	}
	w.keep(t, laptop, after)
	if now := w.job(laptop); err == nil && !reflect.DeepEqual(now.Sheets, after.Sheets) {
		t.Fatalf("folded again, the sheets are\n%+v\nand were\n%+v", now.Sheets, after.Sheets)
	}
}

// bringAlong: a shared folder keeps whole files, so whoever gets a line gets what it had seen sooner or later; here at once.
func (w *town) bringAlong(laptop string) {
	for range laptops {
		for other, n := range maps.Clone(w.seen[laptop]) {
			for _, l := range w.files[other][:n] {
				for third, highest := range l.Seen {
					if third == laptop {
						continue
					}
					for i, known := range w.files[third] {
						if known.N == highest {
							w.seen[laptop][third] = max(w.seen[laptop][third], i+1)
						}
					}
				}
			}
		}
	}
}

// Random histories of three laptops that share a folder now and then: whatever order the files are read in, they come to one state; no address, sheet or mark is
// ever lost; a number is one paper, or two that have tags; and the papers that are to be put right are those that are out and say something else.
func TestHistories(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := newTown()
		first, err := w.job("k7qm").Made(Make{Token: aToken, Address: "14 Alder Court", Sheets: []Facts{factsFor("sign-hall-front_door-en", "a")}})
		if err != nil {
			t.Fatal(err)
		}
		w.keep(t, "k7qm", first)
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			before := w.all()
			w.step(t)
			checkGrowth(t, before, w.all())
			checkOneState(t, w)
			checkNumbers(t, w.all())
			checkPapers(t, w)
			w.today = w.today.Plus(rapid.IntRange(0, 2).Draw(t, "days later"))
		}
	})
}

func checkGrowth(t *rapid.T, before, after Job) {
	if !slices.Equal(union(before.Pages, after.Pages), after.Pages) {
		t.Fatalf("addresses were %v and are %v", before.Pages, after.Pages)
	}
	for _, old := range before.Sheets {
		sheet, kept := after.Sheet(old.ID)
		marks := func(s Sheet) int { return len(s.printed) + len(s.Posted) + len(s.Visits) }
		if !kept || marks(sheet)+len(after.Struck) < marks(old)+len(before.Struck) {
			t.Fatalf("sheet was %+v and is %+v", old, sheet)
		}
	}
}

// checkOneState reads the files in another order, and one of them twice, as a sync service copies it.
func checkOneState(t *rapid.T, w *town) {
	order := rapid.Permutation(laptops).Draw(t, "order")
	var lines []line
	for _, laptop := range append(order, order[0]) {
		lines = append(lines, w.files[laptop]...)
	}
	if got, want := fold("alder-14", lines), w.all(); !reflect.DeepEqual(got, want) {
		t.Fatalf("in the order %v the files come to\n%+v\nwant\n%+v", order, got, want)
	}
	if err := w.all().checkNothingLost(); err != nil {
		t.Fatal(err)
	}
}

// checkNumbers: what a foot says of a revision stands for one paper.
func checkNumbers(t *rapid.T, job Job) {
	for _, s := range job.Sheets {
		said := map[string]string{}
		for _, v := range s.versions {
			name := Revision{v.number, s.tag(v.number, v.digest)}.String()
			if other, taken := said[name]; taken && other != v.digest {
				t.Fatalf("revision %s of %s stands for %s and for %s", name, s.ID, other, v.digest)
			}
			said[name] = v.digest
		}
	}
}

// checkPapers follows every paper by itself: out is what no line ended or struck.
func checkPapers(t *rapid.T, w *town) {
	job := w.all()
	wrong := map[string]bool{}
	for _, p := range job.Wrong() {
		wrong[p.Mark.line+p.Sheet.ID] = true
	}
	for _, paper := range job.out() {
		name := paper.Mark.line + paper.Sheet.ID
		real := w.paper[name]
		says := !paper.Sheet.Gone && real.Digest == paper.Sheet.Digest
		settled := paper.Sheet.Gone && paper.Mark.Home != "" && job.gotSince(paper.Mark.Home, paper.Mark.On)
		if wrong[name] == (says || settled) {
			t.Fatalf("%s says %q and the job %q (gone: %v); to be put right: %v", paper.Sheet.ID, real.Digest, paper.Sheet.Digest, paper.Sheet.Gone, wrong[name])
		}
	}
	for _, l := range job.lines {
		if l.Event == Posted && slips(job)[l.seal] == "" && l.Mark.Until == "" && !ended(job, l) && !slices.ContainsFunc(job.out(), func(p Paper) bool { return p.Mark.line == l.seal }) {
			t.Fatalf("the sign of %s hangs, and the ledger does not know it", job.handle(l))
		}
	}
}

func slips(job Job) map[string]string { return strikesOf(job.lines) }

// ended reports whether a line that counts ends the mark of another.
func ended(job Job, of line) bool {
	return slices.ContainsFunc(job.lines, func(l line) bool {
		return l.Mark != nil && slips(job)[l.seal] == "" && slices.Contains(l.Mark.Ends, of.seal)
	})
}

// Whoever notes late what hangs has the paper of that day, not today's. Of two makes on one day, the later one counts.
func TestPaperOfThatDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const id = "sign-hall-front_door-en"
		job := Job{Code: "alder-14"}
		type printout struct{ on, digest string }
		var prints []printout
		day := aprilFirst
		for range rapid.IntRange(1, 5).Draw(t, "makes") {
			digest := rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "facts")
			job = mustMake(t, job.By(Writer{"k7qm", day}), digest, id)
			job.ends = map[string]string{"k7qm": job.last}
			prints = append(prints, printout{day.String(), digest})
			day = day.Plus(rapid.IntRange(0, 3).Draw(t, "days later"))
		}
		hungOn := aprilFirst.Plus(rapid.IntRange(-1, 9).Draw(t, "hung on"))
		said := prints[0].digest
		for _, p := range prints {
			if p.on <= hungOn.String() {
				said = p.digest
			}
		}
		after, noted, err := job.Post(nil, hungOn, "RM")
		if err != nil {
			t.Fatal(err)
		}
		now := prints[len(prints)-1].digest
		if wrong := len(after.Wrong()) == 1; wrong != (said != now) || noted[0].IsWrong() != wrong || noted[0].Mark.digest != said {
			t.Fatalf("hung on %s, the paper says %q and the job %q; noted %+v, to be put right: %v", hungOn, said, now, noted[0].Mark, wrong)
		}
	})
}

type fataler interface {
	Helper()
	Fatal(...any)
}

func mustMake(t fataler, job Job, digest string, ids ...string) Job {
	t.Helper()
	m := Make{Token: aToken, Address: "14 Alder Court"}
	for _, id := range ids {
		m.Sheets = append(m.Sheets, factsFor(id, digest))
	}
	after, err := job.Made(m)
	if err != nil {
		t.Fatal(err)
	}
	return after
}

func ExampleJob_Wrong() {
	job := Job{Code: "alder-14"}.By(Writer{"k7qm", aprilFirst})
	job, _ = job.Made(Make{Sheets: []Facts{factsFor("request-n12", "May 8")}})
	job, _, _ = job.HandOver(Visit{Home: "n12", On: aprilFirst.Plus(1), How: "left", By: "RM"})
	job, _ = job.Made(Make{Sheets: []Facts{factsFor("request-n12", "May 15")}})
	for _, paper := range job.Wrong() {
		fmt.Println(paper.Sheet.To, "has revision", paper.Mark.Revision, "since", paper.Mark.On, "and needs", paper.Sheet.Revision)
	}
	// Output: 12 Alder Court has revision 1 since 2027-04-02 and needs 2
}
