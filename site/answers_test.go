package site_test

import (
	"fmt"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"golang.org/x/tools/txtar"

	"example.org/doorleaf/notices"
)

// unused are fields of a job that decide nothing, and why they are there.
var unused = map[string]string{
	"Job.File":         "names the file in messages",
	"Job.Programme":    "is not asked for a job",
	"Work.checkedWith": "is set while deciding",
	"Wipe.passed":      "is set while deciding",
}

// Every answer that a job file asks for is used by a decision: in some job of the archives another answer makes another plan.
func TestEveryAnswerIsUsed(t *testing.T) {
	jobs := archiveJobs(t)
	plans := make([]notices.Plan, len(jobs))
	for i, job := range jobs {
		plans[i] = notices.Decide(job)
	}
	seen := map[string]bool{}
	for i := range jobs {
		for _, field := range fieldsOf(reflect.ValueOf(&jobs[i]).Elem(), "Job") {
			if !seen[field.name] {
				seen[field.name] = field.changes(&jobs[i], plans[i])
			}
		}
	}
	for name, used := range seen {
		if _, known := unused[name]; !used && !known {
			t.Errorf("another answer to %s never makes another plan: use it, or do not ask", name)
		}
	}
	if len(seen) < 80 {
		t.Errorf("only %d fields were looked at", len(seen))
	}
}

// archiveJobs are the jobs of all cases that load.
func archiveJobs(t *testing.T) []notices.Job {
	t.Helper()
	var all []notices.Job
	paths, err := filepath.Glob(filepath.Join(decisionsFolder, "*.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		job, more, show, _ := sectionsOf(t, archive)
		if strings.TrimSpace(show) == "problems" {
			continue
		}
		fsys := programmeWith(t, more)
		fsys["jobs/job.yaml"] = &fstest.MapFile{Data: []byte(job)}
		for _, other := range besides(archive) {
			fsys[other.Name] = &fstest.MapFile{Data: other.Data}
		}
		all = append(all, loaded(t, fsys, "jobs/job.yaml"))
	}
	return all
}

// A place in a job that holds an answer.
type answer struct {
	name  string // "Household.Pets"
	value reflect.Value
}

// fieldsOf are the exported answers of a job, down to every entry of its lists.
func fieldsOf(v reflect.Value, name string) []answer {
	var all []answer
	for i := range v.NumField() {
		field := v.Type().Field(i)
		if !field.IsExported() || field.Name == "Programme" {
			continue
		}
		at := name + "." + field.Name
		if field.Anonymous {
			all = append(all, fieldsOf(v.Field(i), field.Name)...)
			continue
		}
		switch f := v.Field(i); {
		case f.Kind() == reflect.Struct && f.Type() != reflect.TypeFor[notices.Date]():
			all = append(all, fieldsOf(f, f.Type().Name())...)
		case f.Kind() == reflect.Slice && f.Type().Elem().Kind() == reflect.Struct && f.Type().Elem() != reflect.TypeFor[notices.Date]():
			all = append(all, answer{at, f})
			for k := range f.Len() {
				all = append(all, fieldsOf(f.Index(k), f.Type().Elem().Name())...)
			}
		default:
			all = append(all, answer{at, f})
		}
	}
	return all
}

// changes reports whether any other answer makes another plan. The answer is put back.
func (a answer) changes(job *notices.Job, plan notices.Plan) bool {
	before := reflect.ValueOf(a.value.Interface())
	defer a.value.Set(before)
	for _, other := range others(before) {
		a.value.Set(other)
		if other, made := decidedOrNone(*job); made && !reflect.DeepEqual(other, plan) {
			return true
		}
	}
	return false
}

// decidedOrNone: some other answers would not load together, and a plan that cannot be made says nothing.
func decidedOrNone(job notices.Job) (plan notices.Plan, made bool) {
	defer func() {
		if recover() != nil {
			made = false
		}
	}()
	return notices.Decide(job), true
}

// others are some other answers of the same type.
func others(v reflect.Value) []reflect.Value {
	var all []reflect.Value
	add := func(other any) { all = append(all, reflect.ValueOf(other).Convert(v.Type())) }
	switch {
	case v.Type() == reflect.TypeFor[notices.Date]():
		add(v.Interface().(notices.Date).Plus(1))
		add(notices.Date{Year: 2027, Month: time.May, Day: 3})
	case v.Kind() == reflect.Slice:
		if v.Len() > 0 {
			all = append(all, reflect.Zero(v.Type()))
		}
		for _, words := range []any{notices.Ways, notices.Parts, notices.Pets, []notices.Language{"es"}, []string{"Somali", "yard"}, []time.Weekday{time.Tuesday}, [][]notices.Place{{"front_door"}}, []notices.Date{{Year: 2027, Month: time.May, Day: 20}}} {
			if reflect.TypeOf(words) == v.Type() {
				all = append(all, reflect.ValueOf(words).Slice(0, 1))
			}
		}
	case v.Kind() == reflect.String:
		for _, word := range slices.Concat(wordsFor(v.Type()), []string{"yes", "no", "unknown", ""}) {
			add(word)
		}
	case v.Kind() == reflect.Bool:
		add(!v.Bool())
	case v.CanInt():
		add(v.Int() + 1)
		add(v.Int() + 500)
		add(0)
	case v.CanFloat():
		add(v.Float() + 40)
		add(0)
	}
	return slices.DeleteFunc(all, func(other reflect.Value) bool { return reflect.DeepEqual(other.Interface(), v.Interface()) })
}

// wordsFor are words that a type of the closed lists may hold, and for texts anything.
func wordsFor(of reflect.Type) []string {
	known := map[string]string{
		"Where": "outside", "Area": "kitchen", "Task": "replace_windows", "Side": "north", "Owner": "rents_it_out", "Dwelling": "no_bedroom", "Check": "crew_look", "Role": "crew", "Verdict": "failed",
		"Surface": "sill", "SharedRoute": "signs_in_the_building", "TestKind": "shop_swab", "Covers": "some_surfaces", "TestResult": "lead_found", "OpeningKind": "vent", "NeighbourKind": "day_care", "Travel": "taxi",
		"Payer": "owner", "MedicinePlan": "we_fetch", "PetPlan": "boarded", "KeyPlan": "crew_has_one", "Room": "upstairs_bathroom", "Delivery": "mailed", "CalledOff": "before_it_began",
	}
	return []string{known[of.Name()], "MN", "h2", fmt.Sprint("another ", of.Name())}
}
