package site

import (
	"fmt"
	"slices"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/record"
)

// A Summary is a plan as a colleague would tell it on one screen: which rules bind, what comes of it for each home, what to mind, what nobody has answered, and what to do next.
// All of it, with the reasons, is what the command prints on demand.
type Summary struct {
	Code    string           `json:"code"`
	Address string           `json:"address"`
	Rules   []RuleSummary    `json:"rules"`
	Homes   []HomeSummary    `json:"homes"`   // in walking order
	Mind    []string         `json:"mind"`    // what is easily forgotten
	Missing []record.Missing `json:"missing"` // each once
	Next    []NextStep       `json:"next"`    // what is still to do, most urgent first
	Late    []string         `json:"late"`    // ids of the sheets that are late, as far as the ledger knows
	Print   []Count          `json:"print"`
	Reasons []record.Reason  `json:"reasons"`
	Rows    []RowRecord      `json:"rows"` // the figures, and when each was read
}

// A RuleSummary is a set of rules, and whether it binds the job.
type RuleSummary struct {
	Name  string `json:"name"` // "the federal housing rule"; "" for what only a sentence can say
	Binds string `json:"binds"`
	Says  string `json:"says"`
}

// A HomeSummary is what comes of the plan for one home.
type HomeSummary struct {
	ID      string      `json:"id"`
	Who     string      `json:"who"`     // name of the household, or address of the neighbour
	Outcome string      `json:"outcome"` // "" when nothing is decided for it any more
	Sheets  []HomeSheet `json:"sheets"`  // what is brought there
}

// A HomeSheet is one sheet that is brought to a home.
type HomeSheet struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Due     string `json:"due"`     // YYYY-MM-DD
	By      string `json:"by"`      // the same day for people: "Sat May 1, 2027"
	Handed  bool   `json:"handed"`  // the home has it, as far as the ledger knows
	Changed bool   `json:"changed"` // it would say something else now: make it again
}

// A NextStep is one thing that is still to do.
type NextStep struct {
	ID      string  `json:"id"`
	Urgency Urgency `json:"urgency"`
	Due     string  `json:"due"`  // YYYY-MM-DD, its last day
	When    string  `json:"when"` // the same for people: "by Sat May 1, 2027"
	Says    string  `json:"says"`
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
func Summarise(one Known, on notices.Date) (Summary, error) {
	plan := one.Plan
	own, err := openCoordinator()
	if err != nil {
		return Summary{}, err
	}
	v := &voice{Speaker: own, own: own}
	s := Summary{Code: plan.Code, Address: plan.Address, Print: orEmpty(tally(plan))}
	if s.Reasons, err = Explain(plan); err != nil {
		return s, err
	}
	s.Rules, s.Homes = v.rules(plan, s.Reasons), homeSummaries(one, s.Reasons)
	s.Mind, s.Missing = toMind(plan, s.Reasons), eachMissing(s.Reasons)
	s.Next, s.Late = []NextStep{}, []string{}
	for _, step := range byUrgency(v.openSteps(one, on, Later)) {
		s.Next = append(s.Next, NextStep{step.ID, step.Urgency, step.Due.String(), step.By(on), step.Says})
		if step.Urgency == Late {
			s.Late = append(s.Late, step.sheets...)
		}
	}
	slices.Sort(s.Late)
	s.Late = slices.Compact(s.Late)
	for _, row := range plan.Rows {
		s.Rows = append(s.Rows, RowRecord{row.Name, row.Value, row.Unit, row.Source().String(), row.ReadOn})
	}
	s.Rows = orEmpty(s.Rows)
	return s, v.err
}

func (v *voice) rules(plan notices.Plan, said []record.Reason) []RuleSummary {
	all := []RuleSummary{}
	for i, r := range plan.Reasons {
		if r.Concern() != notices.WhichRules {
			continue
		}
		rule := RuleSummary{Binds: said[i].Binds, Says: said[i].Outcome}
		if name, has := r.RuleName(); has {
			rule.Name = v.plain(name)
		}
		all = append(all, rule)
	}
	return all
}

func toMind(plan notices.Plan, said []record.Reason) []string {
	all := []string{}
	for i, r := range plan.Reasons {
		c := r.Concern()
		minded := c == notices.ToMind || c == notices.OnceChecked && plan.Proof.IsChecked(r.About)
		if minded && !slices.Contains(all, said[i].Outcome) { // two homes may ask for the same
			all = append(all, said[i].Outcome)
		}
	}
	return all
}

// eachMissing is every answer that nobody has given, once.
func eachMissing(reasons []record.Reason) []record.Missing {
	all := []record.Missing{}
	for _, r := range reasons {
		for _, m := range r.Missing {
			if !slices.Contains(all, m) {
				all = append(all, m)
			}
		}
	}
	return all
}

// homeSummaries join what is decided for each home with the sheets that are brought there. Of two decisions about one home the later is the one that counts: whoever may come home
// does not have to sleep elsewhere any more.
func homeSummaries(one Known, said []record.Reason) []HomeSummary {
	all := []HomeSummary{}
	at := func(id string) *HomeSummary {
		i := slices.IndexFunc(all, func(h HomeSummary) bool { return h.ID == id })
		if i < 0 {
			i, all = len(all), append(all, HomeSummary{ID: id, Sheets: []HomeSheet{}})
		}
		return &all[i]
	}
	for i, r := range one.Plan.Reasons {
		if r.Concern() == notices.AtHome {
			at(r.About).Outcome = said[i].Outcome
		}
	}
	for _, row := range one.Plan.Homes {
		home := at(row.ID)
		home.Who = fmt.Sprint(row.Who)
		home.Sheets = append(home.Sheets, homeSheets(one, row)...)
	}
	return all
}

// homeSheets are the sheets of one row of the walk list.
func homeSheets(one Known, row notices.Home) []HomeSheet {
	var all []HomeSheet
	for _, sheet := range one.Plan.Sheets {
		if sheet.To.ID != row.ID || sheet.Kind != row.Kind {
			continue
		}
		known, made := one.Ledger.Sheet(sheet.ID)
		all = append(all, HomeSheet{
			ID: sheet.ID, Title: titleOf(string(row.Kind)), Due: sheet.Due.String(), By: lists.LongDay(sheet.Due),
			Handed: known.IsWith(row.ID), Changed: made && (known.Gone || known.Digest != factsOf(sheet).Digest),
		})
	}
	return all
}

// JoinMissing puts fields whose answers would change the same thing on one line, in the order of the first of each.
func JoinMissing(missing []record.Missing) []string {
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

// orEmpty is a list that JSON writes as [], never as null.
func orEmpty[T any](items []T) []T { return append([]T{}, items...) }
