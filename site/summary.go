package site

import (
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
)

// A Summary is a plan as a colleague would tell it on one screen: which rules bind, what comes of it for each home, what to mind, what nobody has answered, and what to do next.
// All of it, with the reasons, is what the command prints on demand.
type Summary struct {
	Code    string          `json:"code"`
	Address string          `json:"address"`
	Rules   []string        `json:"rules"`   // which bind
	Homes   []HomeSummary   `json:"homes"`   // in the order of the decisions
	Mind    []string        `json:"mind"`    // what is easily forgotten
	Missing []MissingRecord `json:"missing"` // each once
	Next    []NextStep      `json:"next"`    // what is still to do, nearest first
	Print   []Count         `json:"print"`
	Reasons []ReasonRecord  `json:"reasons"`
	Rows    []RowRecord     `json:"rows"` // the figures, and when each was read
}

// A HomeSummary is what comes of the plan for one home.
type HomeSummary struct {
	ID      string `json:"id"`
	Outcome string `json:"outcome"`
	Sheet   string `json:"sheet"`  // what is brought there; "" when no sheet is made for it
	By      string `json:"by"`     // the last day for that: "Sat May 1, 2027"
	Handed  bool   `json:"handed"` // somebody there has it, as far as the ledger knows
}

// A NextStep is one thing that is still to do.
type NextStep struct {
	Late bool   `json:"late"`
	By   string `json:"by"` // its last day: "Sat May 1, 2027"
	Says string `json:"says"`
}

// A RowRecord is a figure that decisions rest on.
type RowRecord struct {
	Name   string  `json:"name"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	Source string  `json:"source"`
	ReadOn string  `json:"read_on"` // YYYY-MM-DD
}

// Summarise tells a plan with what the ledger knows on a day. It is pure.
func Summarise(plan notices.Plan, ledger Ledger, on notices.Date) (Summary, error) {
	desk, err := openDesk()
	if err != nil {
		return Summary{}, err
	}
	v := &voice{Speaker: desk, desk: desk}
	s := Summary{Code: plan.Code, Address: plan.Address, Rules: []string{}, Homes: []HomeSummary{}, Mind: []string{}, Missing: []MissingRecord{}, Next: []NextStep{}, Print: Tally(plan)}
	if s.Reasons, err = Explain(plan); err != nil {
		return s, err
	}
	known, _ := ledger.Job(plan.Code)
	for i, r := range s.Reasons {
		switch plan.Reasons[i].Concern() {
		case notices.WhichRules:
			s.Rules = append(s.Rules, r.Outcome)
		case notices.AtHome:
			s.Homes = append(s.Homes, known.homeSummary(plan, r))
		case notices.ToMind:
			s.Mind = append(s.Mind, r.Outcome)
		case notices.OnceChecked:
			if plan.Proof.IsChecked(r.About) {
				s.Mind = append(s.Mind, r.Outcome)
			}
		}
		for _, m := range r.Missing {
			if !slices.Contains(s.Missing, m) {
				s.Missing = append(s.Missing, m)
			}
		}
	}
	for _, step := range v.openSteps(plan, ledger, on, Later) {
		s.Next = append(s.Next, NextStep{step.Urgency == Late, step.When, step.Says})
	}
	for _, row := range plan.Rows {
		s.Rows = append(s.Rows, RowRecord{row.Name, row.Value, row.Unit, row.Source().String(), row.ReadOn})
	}
	return s, v.err
}

// homeSummary joins the outcome for a home with the sheet that is brought there.
func (j LedgerJob) homeSummary(plan notices.Plan, r ReasonRecord) HomeSummary {
	home := HomeSummary{ID: r.About, Outcome: r.Outcome}
	for _, h := range plan.Homes {
		if h.ID != r.About || home.Sheet != "" {
			continue
		}
		home.Sheet, home.By = titleOf(string(h.Kind)), deskDate(h.Due.String())
		home.Handed = slices.ContainsFunc(plan.Sheets, func(s notices.Sheet) bool {
			known, made := j.Sheet(s.ID)
			return made && s.Kind == h.Kind && s.To.ID == h.ID && slices.ContainsFunc(known.Handed, func(m Mark) bool { return m.Revision == known.Revision && isUp(m) })
		})
	}
	return home
}

// JoinMissing puts fields whose answers would change the same thing on one line, in the order of the first of each.
func JoinMissing(missing []MissingRecord) []string {
	var lines []string
	var would []string
	fields := map[string][]string{}
	for _, m := range missing {
		if fields[m.Would] == nil {
			would = append(would, m.Would)
		}
		fields[m.Would] = append(fields[m.Would], m.Field)
	}
	for _, w := range would {
		lines = append(lines, fmt.Sprintf("%s: %s", strings.Join(fields[w], ", "), w))
	}
	return lines
}
