package site

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/record"
)

// reasonRecords says the reasons of a plan in the coordinator's English.
func (kit Kit) reasonRecords(reasons []notices.Reason) ([]record.Reason, error) {
	v := kit.coordinator()
	var all []record.Reason
	for _, r := range reasons {
		made := record.Reason{Decision: r.Decision, Outcome: v.plain(r.Outcome), Because: v.plain(r.Because), Source: r.Source.String(), About: r.About, Binds: string(r.Binds), Missing: []record.Missing{}, Read: readings(r.Source)}
		for _, m := range r.Missing {
			made.Missing = append(made.Missing, record.Missing{Field: m.Field, Would: v.plain(m.Would)})
		}
		all = append(all, made)
	}
	return all, v.err
}

// readings are the passages of a source that stand in a text.
func readings(source notices.Source) []record.Reading {
	all := []record.Reading{}
	for _, p := range source {
		if p.Citation != "" {
			all = append(all, record.Reading{Citation: p.Citation, ReadOn: p.ReadOn, How: string(p.Sureness)})
		}
	}
	return all
}
