package ledger

import (
	"fmt"
	"slices"
	"strings"
)

// A Slip is a mark that can be struck.
type Slip struct {
	Name  string // of its line: "k7qm-12"
	noted string // YYYY-MM-DD
	event Event
	on    string
	home  string
	how   string
	by    string
	paper []string // ids of the sheets
}

// Marks are all marks of a job that were not struck, in order.
func (j Job) Marks() []Slip {
	slips := strikesOf(j.lines)
	var all []Slip
	for _, l := range j.lines {
		if l.Mark == nil || slips[l.seal] != "" {
			continue
		}
		slip := Slip{Name: j.handle(l), noted: l.Noted, event: l.Event, on: l.Mark.On, home: l.Mark.Home, how: l.Mark.How, by: l.Mark.By}
		for _, p := range l.Mark.Paper {
			slip.paper = append(slip.paper, p.Sheet)
		}
		all = append(all, slip)
	}
	return all
}

// Strike takes a mark back that was a slip. It stays in the file, and in the proof as struck. What the mark had ended is out again.
func (j Job) Strike(name string) (Job, Slip, error) {
	var names []string
	for _, slip := range j.Marks() {
		names = append(names, slip.Name)
	}
	i := slices.Index(names, name)
	if i < 0 {
		return j, Slip{}, fmt.Errorf("job %s has no mark %q that could be struck; %s", j.Code, name, suggest("marks", name, names))
	}
	slip := j.Marks()[i]
	at := slices.IndexFunc(j.lines, func(l line) bool { return l.Mark != nil && j.handle(l) == name })
	after, err := j.with(line{Event: struck, Strikes: j.lines[at].seal})
	if err != nil {
		return j, slip, err
	}
	again := fold(j.Code, after.lines)
	again.writer, again.ends, again.last, again.pending = after.writer, after.ends, after.last, after.pending
	return again, slip, nil
}

// String is a mark as a list of marks shows it.
func (s Slip) String() string {
	words := []string{string(s.event)}
	if s.how != "" {
		words = append(words, "("+s.how+")")
	}
	if s.home != "" {
		words = append(words, s.home)
	}
	words = append(words, "on "+s.on)
	if s.by != "" {
		words = append(words, "by "+s.by)
	}
	return strings.Join(words, " ") + ": " + strings.Join(s.paper, ", ")
}
