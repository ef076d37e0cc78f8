package site

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/doorleaf/notices"
)

// A life is a history of one job as the ledger sees it, and beside it what really happened: every address and every piece of paper.
type life struct {
	ledger  Ledger
	pages   []string
	facts   []SheetFacts
	dates   string
	today   notices.Date
	printed map[string][]printout // what each make printed, by sheet
	hung    []Mark                // every mark ever noted, with its sheet in Home
}

var (
	someSheets = []string{"letter-h1", "request-n12", "sign-hall-front_door-en", "sign-hall-front_door-vi"}
	somePages  = []string{"EN/HOME", "EN/WIN", "ES/WIN", "VI/PETS"}
)

// draw is what the job says now: any of its pages and sheets, with any facts.
func (h *life) draw(t *rapid.T) {
	h.pages, h.facts = nil, nil
	for _, p := range rapid.SliceOfDistinct(rapid.SampledFrom(somePages), rapid.ID).Draw(t, "pages") {
		h.pages = append(h.pages, aToken+"/"+p+"/")
	}
	for _, id := range rapid.SliceOfDistinct(rapid.SampledFrom(someSheets), rapid.ID).Draw(t, "sheets") {
		h.facts = append(h.facts, factsFor(id, rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "facts of "+id)))
	}
	h.dates = rapid.SampledFrom([]string{"may", "june"}).Draw(t, "dates")
}

func factsFor(id, digest string) SheetFacts {
	facts := SheetFacts{ID: id, Digest: digest}
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

func (h *life) make() {
	h.ledger = h.ledger.With("alder-14", aToken, h.pages, h.facts, h.dates, h.today)
	for _, facts := range h.facts {
		h.printed[facts.ID] = append(h.printed[facts.ID], printout{h.today.String(), facts.Digest})
	}
}

// A printout is what a make on a day printed.
type printout struct{ on, digest string }

// saidOn is what the paper said that was there on a day: the last that was printed by then.
func saidOn(prints []printout, day string) string {
	said := prints[0].digest
	for _, p := range prints {
		if p.on <= day {
			said = p.digest
		}
	}
	return said
}

// step is one thing that happens in the life of a job. What the ledger refuses leaves it as it was.
func (h *life) step(t *rapid.T, what string) {
	job, _ := h.ledger.Job("alder-14")
	before := h.ledger
	var err error
	var noted []Noted
	sheet := func() []string { return []string{rapid.SampledFrom(job.Sheets).Draw(t, "sheet").ID} }
	day := h.today.Plus(-rapid.IntRange(0, 3).Draw(t, "days ago"))
	switch what {
	case "make": // also of a job file with another name: the code stays
		h.make()
	case "change", "remove":
		h.draw(t)
		h.make()
	case "post":
		h.ledger, noted, err = h.ledger.Post("alder-14", sheet(), day, "RM")
	case "hand over":
		id := sheet()
		home := rapid.SampledFrom([]string{"h1", "n12"}).Draw(t, "home")
		h.ledger, noted, err = h.ledger.HandOver("alder-14", Visit{id, Mark{Home: home, On: day.String(), How: "left", By: "RM"}})
	case "take down":
		h.ledger, _, err = h.ledger.TakeDown("alder-14", sheet(), day)
	case "another job":
		h.ledger = h.ledger.With("elm-2", "000000000017", nil, []SheetFacts{factsFor("letter-h1", "z")}, "", h.today)
	}
	if err != nil && !reflect.DeepEqual(before, h.ledger) {
		t.Fatalf("%s was refused (%v) and changed the ledger all the same", what, err)
	}
	for _, n := range noted {
		h.hung = append(h.hung, Mark{Revision: n.Mark.Revision, On: n.Mark.On, Home: n.Sheet.ID})
	}
}

// A hundred random histories of a job: make, change, post, hand over, take down, rename the file, take out a page or a sheet, make. The ledger never
// loses an address, a sheet or a mark, never lowers a revision, and the same facts make the same ledger on any later day.
func TestHistories(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := life{today: aprilFirst, printed: map[string][]printout{}}
		h.draw(t)
		h.facts = append(h.facts[:0:0], factsFor("sign-hall-front_door-en", "a"))
		h.make()
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			before, text := h.ledger, encodeLedger(h.ledger)
			h.step(t, rapid.SampledFrom([]string{"make", "change", "post", "hand over", "take down", "remove", "another job"}).Draw(t, "step"))
			checkGrowth(t, before, h.ledger)
			checkAlive(t, h)
			if !bytes.Equal(text, encodeLedger(before)) {
				t.Fatal("a step changed the ledger before it")
			}
			h.today = h.today.Plus(rapid.IntRange(0, 2).Draw(t, "days later"))
		}
	})
}

// checkGrowth wants everything of the ledger before in the ledger after.
func checkGrowth(t *rapid.T, before, after Ledger) {
	if code, forgets := after.forgets(before); forgets {
		t.Fatalf("something of %s is forgotten", code)
	}
	for _, was := range before.Jobs {
		is, _ := after.Job(was.Code)
		if is.Token != was.Token || !containsAll(is.Pages, was.Pages) {
			t.Fatalf("addresses were %v and are %v", was.Pages, is.Pages)
		}
		for _, old := range was.Sheets {
			sheet, kept := is.Sheet(old.ID)
			if !kept || sheet.Revision < old.Revision || len(sheet.Posted) < len(old.Posted) || len(sheet.Handed) < len(old.Handed) {
				t.Fatalf("sheet was %+v and is %+v", old, sheet)
			}
			if out := old.wentOut(); !out && sheet.Revision > old.Revision && !sheet.wentOutAt(old.Revision) {
				t.Fatalf("revision %d of %s never went out, and the sheet has revision %d", old.Revision, old.ID, sheet.Revision)
			}
		}
	}
}

func (s LedgerSheet) wentOutAt(revision int) bool {
	return slices.ContainsFunc(slices.Concat(s.Posted, s.Handed), func(m Mark) bool { return m.Revision == revision })
}

// checkAlive compares the ledger with what really happened.
func checkAlive(t *rapid.T, h life) {
	job, _ := h.ledger.Job("alder-14")
	for _, address := range h.pages {
		if !slices.Contains(job.Pages, address) || slices.Contains(h.ledger.Withdrawn("alder-14", h.pages), address) {
			t.Fatalf("the address %s is lost or withdrawn", address)
		}
	}
	for _, mark := range h.hung {
		sheet, _ := job.Sheet(mark.Home)
		if !slices.ContainsFunc(slices.Concat(sheet.Posted, sheet.Handed), func(m Mark) bool { return m.Revision == mark.Revision && m.On == mark.On }) {
			t.Fatalf("the mark of %s on %s is lost", mark.Home, mark.On)
		}
	}
	for _, paper := range job.Out() {
		checkPaper(t, h, paper)
	}
	for _, sheet := range job.Sheets {
		if up := slices.DeleteFunc(slices.Clone(sheet.Posted), func(m Mark) bool { return !isUp(m) }); len(up) > 1 {
			t.Fatalf("%s hangs twice: %v", sheet.ID, up)
		}
	}
	again := h
	again.today = h.today.Plus(1)
	again.printed = map[string][]printout{}
	again.make()
	twice := again
	twice.today = h.today.Plus(9)
	twice.make()
	if !reflect.DeepEqual(again.ledger, twice.ledger) {
		t.Fatal("the same facts a week later changed the ledger")
	}
	if back, err := decodeLedger(encodeLedger(h.ledger)); err != nil || !bytes.Equal(encodeLedger(back), encodeLedger(h.ledger)) {
		t.Fatalf("read back: %+v, %v", back, err)
	}
}

// checkPaper: paper that is not to be put right says what the job says.
func checkPaper(t *rapid.T, h life, paper Paper) {
	current := slices.ContainsFunc(h.facts, func(f SheetFacts) bool { return f.ID == paper.Sheet.ID })
	if paper.Sheet.Gone == current {
		t.Fatalf("%s is among the sheets: %v, and gone: %v", paper.Sheet.ID, current, paper.Sheet.Gone)
	}
	if said := saidOn(h.printed[paper.Sheet.ID], paper.Mark.On); !paper.Outdated && said != paper.Sheet.Digest {
		t.Fatalf("%s is out since %s and says %q; the job says %q, and nobody is sent to replace it", paper.Sheet.ID, paper.Mark.On, said, paper.Sheet.Digest)
	}
}

// Whoever notes late what hangs has the paper of that day, not today's. Paper that says something else than the job is always found.
func TestPaperOfThatDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const id = "sign-hall-front_door-en"
		var ledger Ledger
		var prints []printout
		day := aprilFirst
		for range rapid.IntRange(1, 5).Draw(t, "makes") {
			digest := rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "facts")
			ledger = ledger.With("alder-14", aToken, nil, []SheetFacts{factsFor(id, digest)}, "", day)
			prints = append(prints, printout{day.String(), digest})
			day = day.Plus(rapid.IntRange(1, 3).Draw(t, "days later"))
		}
		hungOn := aprilFirst.Plus(rapid.IntRange(0, 9).Draw(t, "hung on"))
		ledger, noted, err := ledger.Post("alder-14", nil, hungOn, "RM")
		if err != nil {
			t.Fatal(err)
		}
		said := saidOn(prints, hungOn.String())
		now := prints[len(prints)-1].digest
		job, _ := ledger.Job("alder-14")
		outdated := job.Out()[0].Outdated
		if outdated != (said != now) || noted[0].Outdated != outdated {
			t.Fatalf("hung on %s, the paper says %q and the job %q; outdated: %v and %v", hungOn, said, now, outdated, noted[0].Outdated)
		}
	})
}

func ExampleLedgerJob_Out() {
	ledger := Ledger{}.With("alder-14", aToken, nil, []SheetFacts{factsFor("request-n12", "May 8")}, "", aprilFirst)
	ledger, _, _ = ledger.HandOver("alder-14", Visit{nil, Mark{Home: "n12", On: "2027-04-02", How: "left", By: "RM"}})
	ledger = ledger.With("alder-14", aToken, nil, []SheetFacts{factsFor("request-n12", "May 15")}, "", aprilFirst.Plus(5))
	job, _ := ledger.Job("alder-14")
	for _, paper := range job.Out() {
		fmt.Println(paper.Sheet.To, "has revision", paper.Mark.Revision, "since", paper.Mark.On, "and needs", paper.Sheet.Revision)
	}
	// Output: 12 Alder Court has revision 1 since 2027-04-02 and needs 2
}
