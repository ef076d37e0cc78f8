package jobfile

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"example.org/doorleaf/notices"
	"golang.org/x/tools/txtar"
	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "rewrite the problems in testdata/problems")

const testProgramme = `name: Larkfield Home Repair
phone: 555-0100
phone_speaks: [en, es]
base: https://example.org/L
languages: [en, es, vi]
time_zone: America/Chicago
`

const testJob = `code: alder-14
address: 14 Alder Court, Larkfield
state: MN
built: 1931
owner: lives_here
anyone_paid: no
federal_housing_money: unknown
checked_by: clearance_test
on_the_day: {name: Rosa, phone: (612) 555-0142, speaks: [en, Spanish]}
work:
  - {id: porch, where: outside, area: front_porch, task: scrape_and_paint, parts: [railings, trim], how_much: 60 sq ft, faces: [street, 12 Alder Court], storey: 1,
     days: [2027-05-09, Sat 2027-05-08], crew_arrives: 08:00, cleaned_by: 16:30, rain_day: 2027-05-15, ways_in: [front_door]}
  - {id: hall, where: inside, area: hallway, task: sand, how_much: unknown, days: [2027-05-11], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [front_door, kitchen_door, stairs]}
households:
  - id: h1
    name: The Lam family
    languages: [VI]
    phone_language: Vietnamese
    child_under_6: yes
    pets: [cat]
    ways_out: [[back_door]]
    bed: bed
    bath: bathroom
    kitchen: kitchen
    except:
      - {while: hall, sleeps_at: Grandma's}
neighbours:
  - {id: n12, address: 12 Alder Court, gap: 14.5 ft, languages: [es], homes: 2}
  - {id: n16, address: 16 Alder Court, gap: 4 m, languages: unknown}
`

// afterAll is a moment by which everything in the tests' job files has happened.
var afterAll = time.Date(2036, time.January, 1, 12, 0, 0, 0, time.UTC)

func folder(programme string, jobs map[string]string) fstest.MapFS {
	fsys := fstest.MapFS{ProgrammeFile: {Data: []byte(programme)}}
	for file, text := range jobs {
		fsys[file] = &fstest.MapFile{Data: []byte(text)}
	}
	return fsys
}

func TestLoadWholeJob(t *testing.T) {
	jobs, problems := Load(folder(testProgramme, map[string]string{"jobs/alder-14.yaml": testJob}), afterAll, "jobs/alder-14.yaml")
	if len(problems) > 0 || len(jobs) != 1 {
		t.Fatalf("%d jobs, problems:\n%v", len(jobs), problems)
	}
	day := func(d int) notices.Date { return notices.Date{Year: 2027, Month: time.May, Day: d} }
	want := notices.Job{
		Programme: notices.Programme{
			Name: "Larkfield Home Repair", Phone: "5550100", PhoneSpeaks: []notices.Language{"en", "es"}, Base: "https://example.org/L",
			Languages: []notices.Language{"en", "es", "vi"}, TimeZone: "America/Chicago", Paper: notices.Letter,
		},
		File: "jobs/alder-14.yaml", Code: "alder-14", Address: "14 Alder Court, Larkfield", State: "MN", Built: 1931, Owner: notices.LivesHere,
		AnyonePaid: notices.No, FederalAid: notices.Unknown, CheckedBy: notices.ClearanceTest, LeadWork: notices.Unknown, Emergency: notices.Unknown, LandlordWorks: notices.Unknown, AreasShared: notices.Unknown, Booked: notices.Unknown, Asked: true,
		OnTheDay: notices.Contact{Name: "Rosa", Phone: "6125550142", Speaks: []notices.Language{"en", "es"}},
		Work: []notices.Work{
			{
				ID: "porch", Where: notices.Outside, Area: "front_porch", Task: "scrape_and_paint", Parts: []notices.Part{"railings", "trim"},
				HowMuch: 60, Faces: []string{"street", "12 Alder Court"}, Storey: 1, Days: []notices.Date{day(8), day(9)},
				CrewArrives: 8 * 60, CleanedBy: 16*60 + 30, RainDay: day(15), WaysIn: []notices.Way{"front_door"}, Nightly: notices.Unknown, HasWindows: notices.Unknown,
			},
			{
				ID: "hall", Where: notices.Inside, Area: "hallway", Task: "sand", Days: []notices.Date{day(11)},
				CrewArrives: 8 * 60, CleanedBy: 15*60 + 30, WaysIn: []notices.Way{"front_door", "kitchen_door", "stairs"}, Nightly: notices.Unknown, HasWindows: notices.Unknown,
			},
		},
		Households: []notices.Household{{
			ID: "h1", Name: "The Lam family", Languages: []notices.Language{"vi"}, PhoneLanguage: "Vietnamese", ChildUnder6: notices.Yes, Owns: notices.Unknown, SleepsFrom: notices.NoClock, SleepsTo: notices.NoClock, Leaves: notices.NoClock, Returns: notices.NoClock, Pets: []notices.Pet{"cat"},
			Usual:  notices.Usual{WaysOut: [][]notices.Place{{"back_door"}}, Bed: "bed", Bath: "bathroom", Kitchen: "kitchen"},
			Except: []notices.Exception{{While: "hall", Agreed: notices.Unknown, Usual: notices.Usual{SleepsAt: "Grandma's"}}},
		}},
		Neighbours: []notices.Neighbour{
			{ID: "n12", Address: "12 Alder Court", Kind: notices.OneHome, Gap: 14.5, GapKnown: true, Near: notices.NotSure, Languages: []notices.Language{"es"}, Homes: 2},
			{ID: "n16", Address: "16 Alder Court", Kind: notices.OneHome, Gap: jobs[0].Neighbours[1].Gap, GapKnown: true, Near: notices.NotSure, Homes: 1},
		},
	}
	// 4 m are 13 ft 1.48 in: NIST Special Publication 811, appendix B.9, 1 ft = 0.3048 m, from memory.
	if feet := float64(jobs[0].Neighbours[1].Gap); math.Abs(feet-13.1234) > 0.0001 {
		t.Errorf("4 m came out as %v ft", feet)
	}
	if !reflect.DeepEqual(jobs[0], want) {
		t.Errorf("have %+v\nwant %+v", jobs[0], want)
	}
}

// The keys about rules: city, emergency, entries, pamphlet, tests, shares, nights, lines, openings, and what is agreed with whoever sleeps elsewhere.
func TestLoadKeysAboutRules(t *testing.T) {
	const text = `code: a
address: 14 Alder Court
state: CA
city: San Francisco
built: 1931
emergency: no
entries: [front_door, back_door]
on_the_day: {name: Rosa, phone: 311, speaks: [en]}
pamphlets: [{to: owner, given: 2027-04-20, how: mailed}]
work:
  - {id: p, where: outside, area: front_porch, task: sand, parts: [trim], how_much: 3 sq ft, share_of_part: 8, days: [2027-05-11], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [gate],
     cleaned_nightly: yes, lot_line: 6 ft, tests: [{how: laboratory_certified_sampler, covers: some_surfaces, result: not_clear}]}
households:
  - {id: h, name: Lam, languages: [en], bed: bed, away: yes,
     elsewhere: {where: Lakeside Inn, travel: taxi, paid_by: owner, medicines: we_fetch, pets: boarded, keys: crew_has_one}}
neighbours: [{id: n, address: 12 Alder Court, kind: day_care, gap: 9 ft}]
openings: [{id: w1, what: vent, area: kitchen, storey: 2, work: p, gap: 12.5 ft}]
`
	jobs, problems := Load(folder(testProgramme+"stricter: {window_reach: 30}\n", map[string]string{"jobs/a.yaml": text}), afterAll, "jobs/a.yaml")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	job := jobs[0]
	got := []any{job.City, job.Emergency, job.Entries, job.Pamphlets, job.Openings, job.Programme.Stricter}
	want := []any{
		"San Francisco", notices.No, []notices.Way{"front_door", "back_door"}, []notices.Pamphlet{{To: notices.ToOwner, Given: notices.Date{Year: 2027, Month: time.April, Day: 20}, How: notices.Mailed}},
		[]notices.Opening{{ID: "w1", What: "vent", Area: "kitchen", Storey: 2, Work: "p", Gap: 12.5, GapKnown: true}}, map[string]float64{"window_reach": 30},
	}
	w, h := job.Work[0], job.Households[0]
	got = append(got, w.PartShare, w.Nightly, w.LotLine, w.LotLineKnown, w.Tests, h.Usual, h.Elsewhere, job.Neighbours[0].Kind)
	want = append(want, 8, notices.Yes, notices.Feet(6), true, []notices.Test{{How: "laboratory_certified_sampler", Covers: notices.SomeSurfaces, Result: notices.NotClear}}, notices.Usual{Bed: "bed", Away: notices.Yes},
		notices.Elsewhere{Where: "Lakeside Inn", Travel: "taxi", PaidBy: "owner", Medicines: "we_fetch", Pets: "boarded", Keys: "crew_has_one"}, notices.DayCare)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("have %+v\nwant %+v", got, want)
	}
}

// The day is that of the programme: half past eleven at night in Chicago, when it is already the next day in Greenwich.
func TestNothingHappensAfterToday(t *testing.T) {
	now := time.Date(2027, time.May, 14, 4, 30, 0, 0, time.UTC)
	for day, refused := range map[string]bool{"2027-05-13": false, "2027-05-14": true} {
		text := strings.Replace(testJob, "households:", "checks: [{work: hall, on: "+day+", by: Jo, role: examiner, certified: yes, independent: yes, result: passed}]\nwipes: [{work: hall, room: hallway, surface: floor, lab_date: "+day+", result: 1 ug/ft2}]\npamphlets: [{to: owner, given: "+day+", how: signed}]\nhouseholds:", 1)
		_, problems := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": text}), now, "jobs/a.yaml")
		if refused != (len(problems) == 3 && strings.Contains(problems.Error(), "is after today, Thu 2027-05-13")) || !refused && len(problems) > 0 {
			t.Errorf("%s has the problems %v", day, problems)
		}
	}
}

func TestUnknownProtects(t *testing.T) {
	const least = `code: a
address: 14 Alder Court
state: MN
built: unknown
owner: unknown
on_the_day: {name: Rosa, phone: 311, speaks: [en]}
work:
  - {id: a, where: inside, area: attic, task: sand, days: [2027-05-11], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [stairs]}
households: [{id: h, name: Lam, languages: unknown, sleeps_at: Grandma's}]
neighbours: [{id: n, address: 12 Alder Court}]
`
	jobs, problems := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": least}), afterAll, "jobs/a.yaml")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	j := jobs[0]
	if j.Built != 0 || j.Owner != "" || j.AnyonePaid != notices.Unknown || j.FederalAid != notices.Unknown || j.CheckedBy != notices.NotDecided || j.Emergency != notices.Unknown || j.Work[0].Nightly != notices.Unknown || j.Work[0].LotLineKnown {
		t.Errorf("house: %+v", j)
	}
	if h := j.Households[0]; h.Languages != nil || h.ChildUnder6 != notices.Unknown {
		t.Errorf("household: %+v", h)
	}
	if n := j.Neighbours[0]; n.GapKnown || n.Near != notices.NotSure || n.Languages != nil || n.Homes != 1 {
		t.Errorf("neighbour: %+v", n)
	}
}

// archive is one file of testdata/problems: a programme (the good one unless it has its own), job files and the problems to expect.
// A section "rest" stands at the end of each job file. A section "options" may say "no programme" and name more files to load.
type archive struct {
	path  string
	txtar *txtar.Archive
	fsys  fstest.MapFS
	files []string
	want  string
}

func archives(t *testing.T) []archive {
	paths, _ := filepath.Glob("../../testdata/problems/*.txtar")
	if len(paths) == 0 {
		t.Fatal("no archives in testdata/problems")
	}
	var all []archive
	for _, path := range paths {
		parsed, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, unpacked(t, path, parsed))
	}
	return all
}

func unpacked(t *testing.T, path string, parsed *txtar.Archive) archive {
	a := archive{path: path, txtar: parsed, fsys: folder(testProgramme, nil)}
	var rest []byte
	for _, f := range parsed.Files {
		switch {
		case f.Name == "problems":
			a.want = string(f.Data)
		case f.Name == "options":
			for _, line := range strings.Fields(strings.ReplaceAll(string(f.Data), "no programme", "-")) {
				if line == "-" {
					delete(a.fsys, ProgrammeFile)
					continue
				}
				a.files = append(a.files, line)
			}
		case f.Name == "rest":
			rest = f.Data
		case f.Name == ProgrammeFile || strings.HasPrefix(f.Name, "jobs/"):
			a.fsys[f.Name] = &fstest.MapFile{Data: []byte(strings.ReplaceAll(string(f.Data), "␀", "\x00"))}
			if f.Name != ProgrammeFile {
				a.files = append(a.files, f.Name)
			}
		default:
			t.Fatalf("%s has a section %q that means nothing", path, f.Name)
		}
	}
	for _, file := range a.files {
		if f := a.fsys[file]; f != nil {
			f.Data = append(f.Data, rest...)
		}
	}
	return a
}

func TestProblems(t *testing.T) {
	for _, a := range archives(t) {
		t.Run(strings.TrimSuffix(filepath.Base(a.path), ".txtar"), func(t *testing.T) {
			_, problems := Load(a.fsys, afterAll, a.files...)
			have := problems.Error() + "\n"
			if *update {
				a.write(t, have)
			} else if have != a.want {
				t.Errorf("have\n%s\nwant\n%s", have, a.want)
			}
			for _, p := range problems {
				checkPlace(t, a.fsys, p)
			}
		})
	}
}

// Line ends are no matter: those of Windows and of old Macs give the same problems in the same places, behind comments too.
func TestProblemsWithOtherLineEnds(t *testing.T) {
	for _, a := range archives(t) {
		_, want := Load(a.fsys, afterAll, a.files...)
		for name, end := range map[string]string{"Windows": "\r\n", "old Macs": "\r"} {
			other := fstest.MapFS{}
			for path, file := range a.fsys {
				text := bytes.ReplaceAll(file.Data, []byte("\r\n"), []byte("\n"))
				if bytes.Contains(text, []byte("\r")) {
					continue // about the character itself
				}
				commented := append([]byte("# a comment\n# another\n"), text...)
				other[path] = &fstest.MapFile{Data: bytes.ReplaceAll(commented, []byte("\n"), []byte(end))}
			}
			_, have := Load(other, afterAll, a.files...)
			for i, p := range have {
				if i < len(want) && len(have) == len(want) && !moved(p, want[i]) {
					t.Errorf("%s, %s:\n%v\nwant two lines below\n%v", filepath.Base(a.path), name, p, want[i])
				}
			}
			if len(have) != len(want) && len(other) == len(a.fsys) {
				t.Errorf("%s, %s: %d problems, want %d", filepath.Base(a.path), name, len(have), len(want))
			}
		}
	}
}

// moved: the same problem two lines below, or at the very beginning of a file that is not read at all.
func moved(have, want Problem) bool {
	return have.File == want.File && have.Column == want.Column && (have.Line == want.Line+2 || want.Line == 1 && have.Line == 1)
}

// Many problems with one cause are not told one by one.
func TestManyProblemsAreCounted(t *testing.T) {
	var many Problems
	for i := range 120 {
		many = append(many, Problem{File: map[bool]string{true: "a.yaml", false: "b.yaml"}[i < 60], Line: i + 1, Column: 1, Says: "x", Mend: "y"})
	}
	lines := many.Lines()
	if len(lines) != 102 || lines[50] != "a.yaml: and 10 more; fix those above first" || lines[101] != "b.yaml: and 10 more; fix those above first" {
		t.Errorf("%d lines, the last %q", len(lines), lines[len(lines)-1])
	}
}

func (a archive) write(t *testing.T, problems string) {
	files := slices.DeleteFunc(a.txtar.Files, func(f txtar.File) bool { return f.Name == "problems" })
	a.txtar.Files = append(files, txtar.File{Name: "problems", Data: []byte(problems)})
	if err := os.WriteFile(a.path, txtar.Format(a.txtar), 0o644); err != nil {
		t.Fatal(err)
	}
}

// checkPlace looks up the offending text at the place where the problem says that it stands.
func checkPlace(t *testing.T, fsys fs.FS, p Problem) {
	src, err := fs.ReadFile(fsys, p.File)
	lines := strings.Split(string(src), "\n")
	if p.Line < 1 || p.Column < 1 || err == nil && p.Line > len(lines) {
		t.Errorf("%v: no such place", p)
		return
	}
	if p.Text == "" || strings.ContainsAny(p.Text, "\n\x00\uFFFD") {
		return
	}
	rest := strings.TrimSpace(string([]rune(lines[p.Line-1])[p.Column-1:]))
	if !strings.HasPrefix(rest, p.Text) && !strings.HasPrefix(strings.TrimLeft(rest, `"'`), p.Text) {
		t.Errorf("%v: there stands %q", p, rest)
	}
}

// kinds are the problems that people must be told of, each by a piece of what is said. The list is that of the requirements.
var kinds = map[string]string{
	"unknown key":                 "is not a key that is known here",
	"wrong type":                  "holds a list in brackets, and this is a text",
	"missing required":            "address is missing: What is the address of the house, number first?",
	"no such date":                "is not in the calendar; February 2027 has 28 days",
	"daylight-saving gap":         "does not exist on Sun 2027-03-14",
	"cleaned before arrival":      "is not after 08:00, when the crew arrives",
	"wrong weekday":               "2027-05-08 is a Saturday",
	"no way in":                   "ways_in is an empty list",
	"unknown language":            "is not a language that doorleaf has texts for; did you mean",
	"unknown area":                `"hallwey" is not an area; did you mean hallway?`,
	"unknown task":                `"sanding" is not a task; did you mean sand?`,
	"unknown part":                `"trimm" is not a part; did you mean trim?`,
	"no phone":                    "cannot be dialled",
	"no https":                    "does not start with https://",
	"duplicate code":              "is also the code of jobs/copy.yaml",
	"duplicate id":                "is also the id in line",
	"duplicate key":               "is written twice",
	"second document":             "a second document starts here",
	"over-deep":                   "nested more than 8 deep",
	"alias":                       "starts with * would stand for another value",
	"anchor":                      "starts with & would be",
	"NUL byte":                    "NUL byte",
	"English missing":             "English is missing from languages",
	"language without pages":      "is not among the languages of your pages",
	"gap and near disagree":       "does not fit with the gap",
	"rain day before work":        "is before the work starts",
	"no file":                     "there is no such file",
	"empty file":                  "the file is empty",
	"unknown face":                "is neither a side of the lot nor the address of a neighbour",
	"a way that ends inside":      "this way ends inside the house",
	"while what is not there":     `"hull" is not the id of any work`,
	"two answers for one time":    "has two entries in this household",
	"address without number":      "does not start with a house number",
	"a device name":               "Windows cannot have a folder of that name",
	"unknown time zone":           "is not a time zone",
	"something that is no number": "cannot stand for built",
}

func TestEveryKindIsInTheCorpus(t *testing.T) {
	var all strings.Builder
	for _, a := range archives(t) {
		all.WriteString(a.want)
	}
	for kind, says := range kinds {
		if !strings.Contains(all.String(), says) {
			t.Errorf("%s: no archive says %q", kind, says)
		}
	}
}

// TestMessagesAreForPeople looks for the words of programmers in all that the corpus says.
func TestMessagesAreForPeople(t *testing.T) {
	jargon := []string{"notices.", "strict.", "unmarshal", "struct", "int ", "string", "token", "nil", "null", "parse", "regexp", "mapping", "sequence", "scalar", "syntax", "%!"}
	for _, a := range archives(t) {
		for line := range strings.Lines(a.want) {
			_, says, _ := strings.Cut(line, ": ")
			for _, word := range jargon {
				if strings.Contains(strings.ToLower(says), word) {
					t.Errorf("%s says %q in: %s", a.path, word, line)
				}
			}
		}
	}
}

func TestOverLongFile(t *testing.T) {
	long := testJob + strings.Repeat("# a long story\n", 20_000)
	_, problems := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": long}), afterAll, "jobs/a.yaml")
	if len(problems) != 1 || !strings.Contains(problems.Error(), "longer than 256 KB") {
		t.Errorf("have %v", problems)
	}
}

// TestProgrammeProblemsLeaveNoJobs: what a sheet says hangs on programme.yaml.
func TestProgrammeProblemsLeaveNoJobs(t *testing.T) {
	fsys := folder(strings.Replace(testProgramme, "https:", "http:", 1), map[string]string{"jobs/a.yaml": testJob})
	if jobs, problems := Load(fsys, afterAll, "jobs/a.yaml"); len(jobs) > 0 || len(problems) != 1 {
		t.Errorf("%d jobs, problems %v", len(jobs), problems)
	}
}

func TestNamesArriveAsTyped(t *testing.T) {
	names := []string{
		`Nguyễn Thị Ánh`, `王小明 & 李`, `عائلة الأحمد`, "Dana \u200eev\u200dil", "\u200fשלום", `Rosa "Bo" O'Neil`, `<script>alert(1)</script>`, `**bold** _x_ [a](b)`,
		`{{.Name}} ${HOME} %s`, `no`, `null`, `~`, `012`, `1.10`, `0x1F`, `true`, `#1: a, b`, `- x`, `🏠 Casa`, `C:\new\table`, `2027-05-08`, `a&amp;b`, `*`, `&x`, `!x`, `@x`, "`x`", `"`, `'`,
	}
	for _, name := range names {
		for _, written := range []string{"'" + strings.ReplaceAll(name, "'", "''") + "'", `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(name) + `"`} {
			job := strings.Replace(testJob, "name: The Lam family", "name: "+written, 1)
			jobs, problems := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": job}), afterAll, "jobs/a.yaml")
			if len(problems) > 0 {
				t.Errorf("%s: %v", written, problems)
			} else if have := jobs[0].Households[0].Name; have != name {
				t.Errorf("%s came out as %q", written, have)
			}
		}
	}
}

func TestPlainValuesArriveAsTyped(t *testing.T) {
	for _, name := range []string{"no", "null", "012", "1.10", "0x1F", "1_000", "9:05", "True", ".inf", "-0", "O'Neil", `Rosa "Bo" Diaz`, "<b>Rosa</b>", "Dana \u200fevil", "Rosa **Bo**", "~"} {
		programme := strings.Replace(testProgramme, "Larkfield Home Repair", name, 1)
		p, problems := loadProgramme(folder(programme, nil))
		if len(problems) > 0 || p.Name != name {
			t.Errorf("%s came out as %q, problems %v", name, p.Name, problems)
		}
	}
}

func TestMarksAndLineEndsOfOtherEditors(t *testing.T) {
	want, _ := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": testJob}), afterAll, "jobs/a.yaml")
	windows := "\uFEFF" + strings.ReplaceAll(testJob, "\n", "\r\n")
	have, problems := Load(folder("\uFEFF---\n"+testProgramme, map[string]string{"jobs/a.yaml": windows}), afterAll, `jobs\a.yaml`)
	if len(problems) > 0 || !reflect.DeepEqual(have, want) {
		t.Errorf("have %+v, problems %v", have, problems)
	}
}

func TestBase(t *testing.T) {
	for text, want := range map[string]string{
		"https://example.org":         "https://example.org",
		"https://example.org/":        "https://example.org",
		"HTTPS://Example.ORG/L/2/":    "https://example.org/L/2",
		"https://xn--e1afmkfd.org/L":  "https://xn--e1afmkfd.org/L",
		"http://example.org":          "",
		"ftp://example.org":           "",
		"example.org":                 "",
		"https://":                    "",
		"https://localhost":           "",
		"https://example.org:8443":    "",
		"https://me@example.org":      "",
		"https://example.org/?a=b":    "",
		"https://example.org/#a":      "",
		"https://example.org/lead":    "",
		"https://example.org/L//2":    "",
		"https://example.org/L%2F2":   "",
		"https://exa mple.org":        "",
		"https://пример.org":          "",
		"https://-example.org":        "",
		"javascript:alert(1)//https:": "",
	} {
		programme := strings.Replace(testProgramme, "https://example.org/L", "'"+text+"'", 1)
		p, problems := loadProgramme(folder(programme, nil))
		if want == "" && len(problems) != 1 || want != "" && (len(problems) > 0 || p.Base != want) {
			t.Errorf("%s came out as %q, problems %v", text, p.Base, problems)
		}
	}
}

func TestHouseNumber(t *testing.T) {
	for address, want := range map[string]string{
		"14 Alder Court": "14", "14B Alder Court": "14B", "14-16 Alder Court": "14-16", "12 1/2 Elm": "12 1/2", "W350N5337 Road X": "W350N5337", "Alder Court 14": "", "": "",
	} {
		if have := (notices.Job{Address: address}).HouseNumber(); have != want {
			t.Errorf("%s: have %q, want %q", address, have, want)
		}
	}
}

func TestNearest(t *testing.T) {
	for text, want := range map[string]string{
		"hallwey": "hallway", "Hallway": "hallway", "front bedroom": "front_bedroom", "hall": "hallway", "kithcen": "kitchen", "xyz": "", "": "", "a": "",
	} {
		if have, _ := Nearest(text, wordsOf(notices.Areas)); have != want {
			t.Errorf("%q: have %q, want %q", text, have, want)
		}
	}
}

// FuzzLoad: whatever stands in a file, loading ends, and each problem has a place in a named file.
func FuzzLoad(f *testing.F) {
	f.Add([]byte(testJob))
	paths, _ := filepath.Glob("../../testdata/problems/*.txtar")
	for _, path := range paths {
		if parsed, err := txtar.ParseFile(path); err == nil {
			for _, file := range parsed.Files {
				f.Add(file.Data)
			}
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) { loadsAnything(t, src) })
}

func loadsAnything(t interface{ Fatalf(string, ...any) }, src []byte) {
	fsys := fstest.MapFS{ProgrammeFile: {Data: src}, "jobs/a.yaml": {Data: src}}
	_, problems := Load(fsys, afterAll, "jobs/a.yaml")
	if len(problems) == 0 {
		t.Fatalf("no file is both a programme and a job")
	}
	for _, p := range problems {
		if p.Line < 1 || p.Column < 1 || p.Says == "" || p.Mend == "" || fsys[p.File] == nil {
			t.Fatalf("%#v", p)
		}
	}
}

// TestAnySlip takes a piece out of a good job and puts pieces of YAML in its place.
func TestAnySlip(t *testing.T) {
	pieces := []string{"", " ", "\n", "\t", ":", ": ", "- ", "[", "]", "{", "}", ",", "&a ", "*a ", "!x ", "#", "'", `"`, "|\n", ">\n", "?", "---\n", "...\n", "\x00", "\xff", "…", "no", "~"}
	good := testProgramme + testJob
	rapid.Check(t, func(t *rapid.T) {
		src := good
		for range rapid.IntRange(1, 4).Draw(t, "slips") {
			at := rapid.IntRange(0, len(src)).Draw(t, "at")
			cut := min(len(src), at+rapid.IntRange(0, 30).Draw(t, "cut"))
			src = src[:at] + rapid.SampledFrom(pieces).Draw(t, "piece") + src[cut:]
		}
		loadsAnything(t, []byte(src))
	})
}

// costlyFiles are made to keep a reader busy, each as long as a file may be.
func costlyFiles() map[string]string {
	files := map[string]string{"many keys": manyKeys()}
	for name, piece := range map[string]string{
		"brackets": "[", "braces": "{", "dashes": "- ", "pairs": "{a: [", "tags": "!a ", "anchors": "&a ", "aliases": "*a ", "questions": "? ", "quotes": `"a" `,
		"colons": "a: ", "keys": "a:\n", "commas": ",", "comments": "#\n", "lines": "\n", "documents": "---\n", "merges": "<<: ", "words": "a ",
	} {
		files[name] = strings.Repeat(piece, (256<<10)/len(piece))
	}
	return files
}

func TestCostlyFilesAreRefused(t *testing.T) {
	for name, text := range costlyFiles() {
		if _, problems := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": text}), afterAll, "jobs/a.yaml"); len(problems) == 0 {
			t.Errorf("%s: no problems", name)
		}
	}
}

// BenchmarkCostlyFiles: the slowest takes about 0.25 s on two idle cores; the floor is 5 s.
func BenchmarkCostlyFiles(b *testing.B) {
	for name, text := range costlyFiles() {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Load(folder(testProgramme, map[string]string{"jobs/a.yaml": text}), afterAll, "jobs/a.yaml")
			}
		})
	}
}

func manyKeys() string {
	var b strings.Builder
	for i := 0; b.Len() < 255<<10; i++ {
		fmt.Fprintf(&b, "k%d:\n", i)
	}
	return b.String()
}

// Languages go by tag, by English name, and Chinese by its tag without a script too; other spellings are no languages.
func TestLanguageNamed(t *testing.T) {
	for text, want := range map[string]notices.Language{
		"ar": "ar", "Arabic": "ar", "RU": "ru", "russian": "ru", "zh-Hans": "zh-Hans", "ZH-HANS": "zh-Hans", "zh": "zh-Hans", "Chinese": "zh-Hans",
		"zh-Hant": "", "zh-CN": "", "zh_Hans": "", "Mandarin": "", "": "", "-": "",
	} {
		if got, known := notices.LanguageNamed(text); got != want || known != (want != "") {
			t.Errorf("%q is %q, %v; want %q", text, got, known, want)
		}
	}
}
