package locales

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"
)

// Every date, time, list, number and name equals what ICU writes, asked through Intl of Node (ECMA-402).

// A question is one call of a speaker's method, put to Intl as well.
type question struct {
	Tag  string `json:"tag"` // the CLDR locale
	What string `json:"what"`
	Args any    `json:"args"`

	ours string
}

func (q question) String() string { return fmt.Sprint(q.Tag, " ", q.What, " ", q.Args) }

// knownDifferent gives the reason for each question that we answer otherwise than ICU. One that heals fails the test.
var knownDifferent = map[string]string{
	"zh-Hans Days [5 31 6 2]": "in a span ICU writes the month in digits, 5/31星期一至6/2星期三; we write both days as each stands alone",
}

// Node prints a plain space where CLDR says U+202F, but not in an interval; we print U+00A0 and a plain space (see commonSpaces).
var anySpace = strings.NewReplacer("\u202f", " ", "\u00a0", " ", "\u2009", " ")

func TestWritesAsIntlDoes(t *testing.T) {
	var questions []question
	for _, tag := range slices.Sorted(maps.Keys(table().Languages)) {
		questions = append(questions, questionsFor(&Speaker{tag: tag, locale: table().Languages[tag]})...)
	}
	versions, answers := askIntl(t, questions)
	unhealed := maps.Clone(knownDifferent)
	for i, q := range questions {
		want, got := anySpace.Replace(answers[i]), anySpace.Replace(q.ours)
		if _, known := knownDifferent[q.String()]; known && want != got {
			delete(unhealed, q.String())
			continue
		}
		if want != got {
			t.Errorf("%v: %q, but Intl (%s) says %q", q, got, versions, want)
		}
	}
	for q := range unhealed {
		t.Errorf("%s: no longer different; take it out of knownDifferent", q)
	}
	t.Logf("%d answers compared with Intl, %s", len(questions), versions)
}

func questionsFor(s *Speaker) []question {
	return slices.Concat(dayQuestions(s), spanQuestions(s), timeQuestions(s), listQuestions(s), numberQuestions(s), nameQuestions(s))
}

// dayQuestions has every weekday and month, both ends of months and a leap day.
func dayQuestions(s *Speaker) []question {
	var questions []question
	last := time.Date(2028, time.March, 1, 0, 0, 0, 0, time.UTC)
	for d := time.Date(2027, time.January, 1, 0, 0, 0, 0, time.UTC); !d.After(last); d = d.AddDate(0, 0, 1) {
		y, m, day := d.Date()
		args := []int{y, int(m), day}
		questions = append(questions,
			question{s.locale.From, "Day", args, s.Day(y, m, day)},
			question{s.locale.From, "ShortDay", args, s.ShortDay(y, m, day)})
	}
	return questions
}

// spanQuestions has one span over two months: within a month ICU leaves the second name of the month out.
func spanQuestions(s *Speaker) []question {
	ours := s.ShortDay(2027, time.May, 31) + s.Through() + s.ShortDay(2027, time.June, 2)
	return []question{{s.locale.From, "Days", []int{5, 31, 6, 2}, ours}}
}

// timeQuestions has midnight, noon and their neighbours.
func timeQuestions(s *Speaker) []question {
	clocks := [][2]int{{0, 0}, {0, 1}, {6, 5}, {8, 0}, {8, 30}, {11, 59}, {12, 0}, {12, 30}, {13, 0}, {16, 30}, {23, 59}}
	var questions []question
	for _, at := range clocks {
		questions = append(questions, question{s.locale.From, "Time", at, s.Time(at[0], at[1])})
	}
	return questions
}

func listQuestions(s *Speaker) []question {
	lists := [][]string{
		{}, {"a"}, {"a", "b"}, {"a", "b", "c"}, {"a", "b", "c", "d", "e"}, {"{1}", "{0}", "{0}"},
		{"español", "inglés"}, {"agua", "hilo"}, {"agua", "hielo"}, {"agua", "hiato"}, {"agua", "Hilda", "Irene"}, {"agua", "Ígor"}, {"x", "yeso"}, {"x", "hi"},
	}
	var questions []question
	for _, items := range lists {
		questions = append(questions, question{s.locale.From, "List", items, s.List(items)})
	}
	return questions
}

func numberQuestions(s *Speaker) []question {
	var questions []question
	for _, n := range []float64{0, 1, 6, 14.5, 60, 100, 999, 1000, 1234.5, 1999.999, 2.0004, 12345.678, 999999.9996, 1e6, 123456789, 0.125, -3.5, -1234} {
		questions = append(questions, question{s.locale.From, "Number", []float64{n}, s.number(n)})
	}
	return questions
}

// nameQuestions asks for zh where ours is the name of zh-Hans; see base.
func nameQuestions(s *Speaker) []question {
	var questions []question
	for tag := range s.locale.Names {
		questions = append(questions, question{s.locale.From, "NameOf", []string{base(tag)}, s.NameOf(tag)})
	}
	return questions
}

func askIntl(t *testing.T, questions []question) (versions string, answers []string) {
	in, err := json.Marshal(questions)
	if err != nil {
		t.Fatal(err)
	}
	var reply struct {
		ICU, CLDR string
		Full      bool
		Answers   []string
	}
	if err := json.Unmarshal(runNode(t, in, "testdata/intl.mjs"), &reply); err != nil {
		t.Fatal(err)
	}
	if !reply.Full {
		lacking(t, "this Node lacks some of our languages; install one with full ICU data")
	}
	return "ICU " + reply.ICU + ", CLDR " + reply.CLDR, reply.Answers
}

// runNode gives what a script prints.
func runNode(t *testing.T, in []byte, args ...string) []byte {
	if _, err := exec.LookPath("node"); err != nil {
		lacking(t, "Node is not there; install it to run this comparison")
	}
	command := exec.Command("node", args...)
	var problems bytes.Buffer
	command.Stdin, command.Stderr = bytes.NewReader(in), &problems
	out, err := command.Output()
	if err != nil {
		t.Fatalf("node %v: %v\n%s", args, err, problems.String())
	}
	return out
}

// lacking skips a test for want of a tool, except where everything has to be tested.
func lacking(t *testing.T, message string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(message)
	}
	t.Skip(message)
}
