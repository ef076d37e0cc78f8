package jobfile

import (
	"bytes"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// compiled reads a schema with a general validator (github.com/santhosh-tekuri/jsonschema), which checks it against draft-07 itself.
func compiled(t *testing.T, text []byte) *jsonschema.Schema {
	t.Helper()
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("schema.json", parsed); err != nil {
		t.Fatal(err)
	}
	s, err := compiler.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// editorSees is the file as an editor reads it, with numbers; nil when it is no YAML.
func editorSees(text []byte) any {
	var value any
	if yaml.Unmarshal(text, &value) != nil {
		return nil
	}
	return value
}

// sketch is the job that the format was first drawn up with. It leaves out a bed on the second day, which only Load notices.
const sketch = `code: alder-14
address: 14 Alder Court, Larkfield
state: MN                      # rules that we hold no profile for are said to be unchecked
built: 1931                    # a year, or unknown
owner: lives_here              # or rents_it_out
anyone_paid: no                # yes, no, unknown
landlord_works: no
federal_housing_money: unknown
checked_by: clearance_test     # cleaning_check, crew_look, not_decided
on_the_day: {name: Rosa, phone: 555-0142, speaks: [en, es]}
work:
  - {id: porch, where: outside, area: front_porch, task: scrape_and_paint, parts: [railings, trim], how_much: 60 sq ft, faces: [street, 12 Alder Court], storey: 1,
     days: [2027-05-08], crew_arrives: 08:00, cleaned_by: 16:30, rain_day: 2027-05-15, ways_in: [front_door]}
  - {id: hall, where: inside, area: hallway, task: sand, parts: [doors, trim], how_much: unknown, days: [2027-05-11], crew_arrives: 08:00, cleaned_by: 15:30, ways_in: [front_door, kitchen_door, stairs]}
households:
  - {id: h1, name: The Lam family, languages: [vi], phone_language: vi, child_under_6: yes, pets: [cat],
     ways_out: [[back_door]], bed: bed, bath: bathroom, kitchen: kitchen}
neighbours:
  - {id: n12, address: 12 Alder Court, gap: 14 ft, languages: [es], homes: 1}
  - {id: n16, address: 16 Alder Court, near: not_sure, languages: unknown}
`

func TestSketchFitsTheSchema(t *testing.T) {
	if err := compiled(t, JobSchema()).Validate(editorSees([]byte(sketch))); err != nil {
		t.Error(err)
	}
	_, problems := Load(folder(testProgramme, map[string]string{"jobs/a.yaml": sketch}), afterAll, "jobs/a.yaml")
	if len(problems) > 0 {
		t.Errorf("have %v", problems)
	}
}

// schemaSees are the pieces of messages about what a schema can know too: keys, shapes and words of closed lists.
var schemaSees = []string{"is not a key", "is missing:", " holds ", "each entry of", "is an empty list", "is not an answer", "is not an area", "is not a task", "is not a part", "is not a way",
	"is not a pet", "is not a room", "is not a door", "is not a place", "is not a state", "is not a paper", "is not a check", "is not a choice", "cannot stand for", "is not a time of day", "cannot be an id"}

// TestSchemaAgreesWithLoader: of every file in the corpus that is YAML at all, the schema refuses those in which Load found something that a
// schema can see, and accepts those in which it found nothing.
func TestSchemaAgreesWithLoader(t *testing.T) {
	job, programme := compiled(t, JobSchema()), compiled(t, ProgrammeSchema())
	seen := map[bool]int{}
	for _, a := range archives(t) {
		_, problems := Load(a.fsys, afterAll, a.files...)
		for file := range a.fsys {
			validator := job
			if file == ProgrammeFile {
				validator = programme
			}
			if value := editorSees(a.fsys[file].Data); value != nil && !strings.HasSuffix(a.path, "yaml.txtar") {
				err := validator.Validate(value)
				if refuse := visible(problems, file); refuse != (err != nil) && (refuse || !problems.in(file)) {
					t.Errorf("%s %s: the schema says %v, and the problems are\n%v", a.path, file, err, problems)
				}
				seen[err != nil]++
			}
		}
	}
	if seen[true] < 5 || seen[false] < 5 {
		t.Errorf("too few files to compare: %v", seen)
	}
}

func visible(problems Problems, file string) bool {
	for _, p := range problems {
		for _, says := range schemaSees {
			if p.File == file && strings.Contains(p.Says, says) {
				return true
			}
		}
	}
	return false
}

// TestRowsAgreeWithLoader takes every field's example and words through schema and loader, one at a time.
func TestRowsAgreeWithLoader(t *testing.T) {
	walk(programmeFields, func(f Field) { fieldAgrees(t, f) })
	walk(JobFields, func(f Field) { fieldAgrees(t, f) })
}

func walk(fields []Field, visit func(Field)) {
	for _, f := range fields {
		visit(f)
		walk(f.Fields, visit)
	}
}

func fieldAgrees(t *testing.T, f Field) {
	if f.Question == "" || f.Key == "" || f.example == "" && f.Fields == nil || f.words != nil && f.pattern == "" && f.noun == "" && f.Holds != HoldsNumber {
		t.Errorf("the row of %q has a gap: %+v", f.Key, f)
	}
	if f.example == "" {
		return
	}
	values := []string{f.example}
	for _, word := range f.words {
		if f.Holds == HoldsList || f.Holds == HoldsListOrUnknown {
			word = "[" + word + "]"
		}
		if f.Holds == HoldsLists {
			word = "[[" + word + "]]"
		}
		values = append(values, word)
	}
	s := compiled(t, schemaFile(f.Key, []Field{f}))
	for _, value := range values {
		text := f.Key + ": " + value
		if err := s.Validate(editorSees([]byte(text))); err != nil {
			t.Errorf("the schema refuses %q: %v", text, err)
		}
		fsys := fstest.MapFS{"f.yaml": {Data: []byte(text)}}
		r, ok := open(fsys, "f.yaml")
		if !ok || r.value(r.root, f) == nil {
			t.Errorf("the loader refuses %q: %v", text, r.problems)
		}
	}
}
