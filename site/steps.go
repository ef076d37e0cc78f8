package site

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

// steps adds what has to happen to the record of a job, and its calendar to the files.
func (p press) steps(plan notices.Plan, remembered ledger.Job, job *record.Job, files tree.Files) error {
	v := p.kit.coordinator()
	for _, s := range plan.Steps {
		made := record.Step{
			ID: s.ID, Kind: string(s.Kind), For: string(s.For), About: s.About, First: s.First.String(), Due: s.Due.String(),
			Says: v.plain(s.Says), Source: s.Source.String(), Binds: string(s.Binds), Done: isDone(remembered, s),
		}
		if !s.LateAfter.IsZero() {
			made.LateAfter = s.LateAfter.String()
		}
		job.Steps = append(job.Steps, made)
	}
	files[tree.PrintPath(p.code, lists.CalendarFile)] = lists.Calendar(p.programme, []record.Job{*job})
	return v.err
}
