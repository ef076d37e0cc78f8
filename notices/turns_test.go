package notices

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The ledger compares the values on a sheet, and its Turns, and no text. So whenever one answer more makes a sheet say another text, one of the two differs.
func TestTurnsTellTextsApart(t *testing.T) {
	told := 0
	rapid.Check(t, func(t *rapid.T) {
		job := someJob(t)
		checkSome(t, &job)
		for _, name := range rapid.Permutation(questionNames()).Draw(t, "questions")[:5] {
			one := Decide(answered(job, rapid.SampledFrom(questions[name]).Draw(t, "one answer")))
			other := Decide(answered(job, rapid.SampledFrom(questions[name]).Draw(t, "another")))
			told += compareTurns(t, name, one, other)
		}
	})
	if told == 0 {
		t.Error("no answer changed a text, so this compares nothing")
	}
}

func compareTurns(t *rapid.T, name string, one, other Plan) (told int) {
	for _, s := range one.Sheets {
		i := slices.IndexFunc(other.Sheets, func(o Sheet) bool { return o.ID == s.ID })
		if i < 0 || slices.Equal(textsOf(s), textsOf(other.Sheets[i])) {
			continue
		}
		told++
		if o := other.Sheets[i]; slices.Equal(s.Turns, o.Turns) && slices.Equal(valuesOf(s), valuesOf(o)) {
			t.Fatalf("%s of %s: the texts are\n%v\nand\n%v\nand the turns are %v both times", s.ID, name, textsOf(s), textsOf(o), s.Turns)
		}
	}
	return told
}

func questionNames() []string {
	var names []string
	for name := range questions {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// checkSome lets some of the work have been checked, by anybody.
func checkSome(t *rapid.T, job *Job) {
	for _, w := range job.Work {
		if rapid.Bool().Draw(t, "checked "+w.ID) {
			job.Checks = append(job.Checks, CheckResult{Work: w.ID, On: w.Days[len(w.Days)-1].Plus(rapid.IntRange(0, 4).Draw(t, "after")), By: "Jo",
				Role: rapid.SampledFrom([]Role{Examiner, Renovator, Crew}).Draw(t, "role"), Certified: answersDrawn.Draw(t, "certified"), Independent: answersDrawn.Draw(t, "independent"),
				Result: rapid.SampledFrom([]Verdict{Passed, Failed}).Draw(t, "result")})
		}
	}
}

// textsOf are the ids of the messages on a sheet, and valuesOf what they hold, in reading order.
func textsOf(s Sheet) []string {
	var ids []string
	walkSheet(s, func(m Message) { ids = append(ids, m.ID) }, func(Value) {})
	return ids
}

func valuesOf(s Sheet) []string {
	var all []string
	walkSheet(s, func(Message) {}, func(v Value) { all = append(all, fmt.Sprintf("%T %v", v, v)) })
	return all
}

func walkSheet(s Sheet, message func(Message), value func(Value)) {
	var visit func(v Value)
	visit = func(v Value) {
		switch v := v.(type) {
		case nil:
		case Message:
			message(v)
			for _, held := range v.Values {
				visit(held)
			}
		case Pair:
			visit(v.Label)
			visit(v.Value)
		default:
			value(v)
		}
	}
	for _, f := range s.Faces {
		value(Name(f.Language))
		visit(f.Head)
		for _, fact := range f.Facts {
			visit(fact.Label)
			for _, cell := range fact.Cells {
				visit(cell)
			}
		}
		for _, b := range f.Blocks {
			visit(b.Head)
			for _, l := range b.Lines {
				visit(l)
			}
		}
	}
}
