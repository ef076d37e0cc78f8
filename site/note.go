package site

import (
	"cmp"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/ledger"
)

// Mark notes what became of paper: one of the changes of a ledger.Job. It holds the ledger meanwhile, so that nothing that another doorleaf notes is lost. A day
// that is more likely a slip is doubted, unless the coordinator has confirmed it.
func (p Programme) Mark(plan notices.Plan, mark func(ledger.Job) (ledger.Job, []ledger.Noted, error)) ([]ledger.Noted, error) {
	var all []ledger.Noted
	err := p.change(plan, func(job ledger.Job) (ledger.Job, error) {
		after, noted, err := mark(job)
		if err != nil {
			return job, err
		}
		all = noted
		return after, p.checkDays(job, noted, plan)
	})
	return all, err
}

// Undo strikes a mark that was a slip.
func (p Programme) Undo(plan notices.Plan, name string) (slip ledger.Slip, err error) {
	err = p.change(plan, func(job ledger.Job) (ledger.Job, error) {
		after, struck, err := job.Strike(name)
		slip = struck
		return after, err
	})
	return slip, err
}

// change changes what the ledger remembers of a job.
func (p Programme) change(plan notices.Plan, change func(ledger.Job) (ledger.Job, error)) error {
	release, err := p.hold()
	if err != nil {
		return err
	}
	defer release()
	job, err := p.Ledger(plan.Code)
	if err != nil {
		return err
	}
	if !p.Confirmed {
		if err := job.CheckClock(lastDay(plan)); err != nil {
			return err
		}
	}
	after, err := change(job)
	if err != nil {
		return err
	}
	return ledger.Append(p.Path, after.Pending())
}

// checkDays doubts the days of what is new.
func (p Programme) checkDays(before ledger.Job, noted []ledger.Noted, plan notices.Plan) error {
	for _, n := range noted {
		day, err := notices.ParseDate(cmp.Or(n.Mark.Until, n.Mark.On))
		if p.Confirmed || n.Already || err != nil {
			continue
		}
		if err := before.CheckDay(day, lastDay(plan)); err != nil {
			return err
		}
	}
	return nil
}
