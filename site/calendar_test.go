package site_test

import (
	"bytes"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/emersion/go-ical"

	"example.org/doorleaf/notices"
)

// An entry of a calendar as another library than ours reads it: its day as DTSTART has it, and its texts with the escapes undone.
type entry struct{ day, summary, location string }

// readBack parses a calendar with emersion/go-ical, whose encoder also refuses what lacks a property that RFC 5545 requires, or has one too often.
func readBack(t *testing.T, data []byte) map[string]entry {
	t.Helper()
	cal, err := ical.NewDecoder(bytes.NewReader(data)).Decode()
	if err != nil {
		t.Fatalf("another library cannot read the calendar: %v", err)
	}
	if err := ical.NewEncoder(io.Discard).Encode(cal); err != nil {
		t.Fatalf("the calendar is not as RFC 5545 wants it: %v", err)
	}
	all := map[string]entry{}
	for _, e := range cal.Events() {
		start := e.Props.Get(ical.PropDateTimeStart)
		if start.ValueType() != ical.ValueDate {
			t.Errorf("an entry is not for a whole day: %v", start)
		}
		id, _ := e.Props.Text(ical.PropUID)
		summary, err1 := e.Props.Text(ical.PropSummary)
		location, err2 := e.Props.Text(ical.PropLocation)
		if _, twice := all[id]; twice || err1 != nil || err2 != nil {
			t.Errorf("the entry %s is there twice, or is broken: %v %v", id, err1, err2)
		}
		all[id] = entry{start.Value, summary, location}
	}
	return all
}

// checkContentLines: lines end with CRLF and are no longer than 75 octets without it (RFC 5545, 3.1). Folding never cuts a character.
func checkContentLines(t *testing.T, data []byte) {
	t.Helper()
	if n := bytes.Count(data, []byte("\r\n")); n != bytes.Count(data, []byte("\n")) || n != bytes.Count(data, []byte("\r")) || !bytes.HasSuffix(data, []byte("\r\n")) {
		t.Error("a line ends otherwise than with CRLF")
	}
	for _, line := range bytes.Split(data, []byte("\r\n")) {
		if len(line) > 75 {
			t.Errorf("a line has %d octets: %s", len(line), line)
		}
		if strings.ContainsRune(strings.ToValidUTF8(string(line), "\uFFFD"), '\uFFFD') {
			t.Errorf("folding cut a character: %q", line)
		}
	}
}

// Each step is an entry on its last day, and both calendars, of one job and of all, say the same.
func TestCalendarReadBackByAnotherLibrary(t *testing.T) {
	hard := dueAt(t, "elm-14", allPassed)
	hard.Address = `14 Elm Row; rear, "the ell" \ unit 2, Larkfield`
	hard.Households[0].Name = "Gia đình Nguyễn Thị Phương Thảo; Trần, Lê và các cháu ở tầng hai phía sau nhà, cửa màu xanh"
	other := dueAt(t, "oak-3", "")
	files := made(t, hard, other)
	together := readBack(t, files["print/calendar.ics"])
	for _, job := range []notices.Job{hard, other} {
		data := files["print/"+job.Code+"/calendar.ics"]
		checkContentLines(t, data)
		want := map[string]entry{}
		for _, s := range notices.Decide(job).Steps {
			says := inEnglish(t, s.Says)
			if !s.Done.IsZero() {
				says = "Done: " + says
			}
			want[s.ID+"."+job.Code+"@leaf.example.org"] = entry{strings.ReplaceAll(s.Due.String(), "-", ""), says, job.Address}
		}
		if got := readBack(t, data); !maps.Equal(got, want) {
			t.Errorf("job %s: read back\n%v\nwant\n%v", job.Code, got, want)
		}
		for id, e := range want {
			if together[id] != e {
				t.Errorf("the calendar of all jobs has %v for %s, want %v", together[id], id, e)
			}
		}
	}
	checkContentLines(t, files["print/calendar.ics"])
	if n := len(notices.Decide(hard).Steps) + len(notices.Decide(other).Steps); len(together) != n {
		t.Errorf("the calendar of all jobs has %d entries, want %d", len(together), n)
	}
	if got := slices.Collect(maps.Keys(below(files, "web/"))); slices.ContainsFunc(got, func(path string) bool { return strings.HasSuffix(path, ".ics") }) {
		t.Error("there is a calendar on the web")
	}
}

// The same job has the same bytes, make after make. Other days move entries and give none another id, so that a calendar that reads the file again has
// nothing twice.
func TestCalendarMovesEntries(t *testing.T) {
	folder, job := newFolder(t), dueAt(t, "elm-14", "")
	before := madeIn(t, folder, marchFirst, job)["print/elm-14/calendar.ics"]
	if again := madeIn(t, folder, marchFirst.Plus(40), job)["print/elm-14/calendar.ics"]; !bytes.Equal(before, again) {
		t.Error("a second make on another day has other bytes")
	}
	for i := range job.Work {
		job.Work[i].Days = []notices.Date{job.Work[i].Days[0].Plus(7)}
	}
	was, is := readBack(t, before), readBack(t, madeIn(t, folder, marchFirst, job)["print/elm-14/calendar.ics"])
	if !slices.Equal(slices.Sorted(maps.Keys(was)), slices.Sorted(maps.Keys(is))) {
		t.Errorf("the ids were %v and are %v", slices.Sorted(maps.Keys(was)), slices.Sorted(maps.Keys(is)))
	}
	for id := range was {
		if from, to := date(t, dashed(was[id].day)), date(t, dashed(is[id].day)); from.Plus(7) != to {
			t.Errorf("%s was on %s and is on %s, want a week later", id, from, to)
		}
	}
}

// dashed is 2027-05-08 of 20270508.
func dashed(day string) string { return day[:4] + "-" + day[4:6] + "-" + day[6:] }
