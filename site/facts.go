package site

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/tree"
)

// saidFacts is what a sheet of paper says and where it belongs, as the ledger compares it from make to make. It stands apart from the types of the plan on purpose:
// a field that is renamed there, another layout or another sentence must not tell anybody to replace what hangs in town. A change here does, so a golden pins it.
type saidFacts struct {
	Kind  string      `json:"kind"`
	To    string      `json:"to"`
	Hang  []string    `json:"hang"`
	Place string      `json:"place"`
	Turns []string    `json:"turns"` // answers that choose between texts
	Faces []faceFacts `json:"faces"`
}

type faceFacts struct {
	Language string   `json:"language"`
	Beside   string   `json:"beside"`
	Page     string   `json:"page"`
	Values   []string `json:"values"` // days, hours, places, names and numbers, in reading order
}

func factsOf(sheet notices.Sheet) ledger.Facts {
	said := saidBy(sheet)
	data, err := json.Marshal(said)
	if err != nil {
		panic(err) // plain strings always encode
	}
	return ledger.Facts{ID: sheet.ID, Digest: tree.Digest(data), Kind: said.Kind, For: sheet.To.IDs(), To: said.To, Hang: said.Hang, Area: string(sheet.Area)}
}

func saidBy(sheet notices.Sheet) saidFacts {
	said := saidFacts{Kind: string(sheet.Kind), To: sheet.To.Name, Place: string(sheet.Area), Turns: sheet.Turns}
	for _, way := range sheet.Hang {
		said.Hang = append(said.Hang, string(way))
	}
	for _, f := range sheet.Faces {
		said.Faces = append(said.Faces, faceFacts{string(f.Language), string(f.Beside), string(f.Opens), contentValues(f.Content)})
	}
	return said
}

// contentValues are the values in the texts of a face. Which text stands around them is no fact.
func contentValues(c notices.Content) []string {
	all := append(plainValues(c.Head), plainValues(c.For)...)
	for _, f := range c.Facts {
		all = append(all, plainValues(f.Label)...)
		for _, cell := range f.Cells {
			all = append(all, plainValues(cell)...)
		}
	}
	for _, b := range c.Blocks {
		for _, m := range b.Lines {
			all = append(all, plainValues(m)...)
		}
	}
	all = append(all, plainValues(c.Call.Who)...)
	all = append(all, plainValues(c.Call.Phone)...)
	for _, l := range c.Call.Speaks {
		all = append(all, "speaks "+string(l))
	}
	return append(all, plainValues(c.Call.Say)...)
}

// plainValues writes a value so that nothing of how the program is written shows.
func plainValues(value notices.Value) []string {
	switch v := value.(type) {
	case nil:
		return nil
	case notices.Message:
		var all []string
		for _, held := range v.Values {
			all = append(all, plainValues(held)...)
		}
		return all
	case notices.Pair:
		return append(plainValues(v.Label), plainValues(v.Value)...)
	case notices.Days:
		var all []string
		for _, run := range v {
			all = append(all, fmt.Sprintf("days %s %s", run.First, run.Last))
		}
		return all
	case notices.Moment:
		return []string{"from " + v.String()}
	case notices.Time:
		return []string{"time " + notices.Clock(v).String()}
	case notices.Words:
		return []string{"words " + strings.Join(v, " ")}
	case notices.Places:
		var all []string
		for _, ids := range v {
			all = append(all, "place "+strings.Join(ids, " "))
		}
		return all
	case notices.WriteIn:
		return nil
	}
	return []string{fmt.Sprint("value ", value)}
}

// datesDigest stands for the public dates: days, hours and rain days of the outside work.
func datesDigest(plan notices.Plan) string {
	var dates strings.Builder
	for _, o := range plan.Outings {
		fmt.Fprintln(&dates, o.Days, o.From, o.End, o.RainDay)
	}
	return tree.Digest([]byte(dates.String()))
}
