package ledger

import (
	"fmt"

	"example.org/doorleaf/notices"
)

// patience is how many days after the last work day anything is still noted without a question: common practice, no source. A year that is wrong by one is far
// beyond it.
const patience = 60

// A Doubt is a day, or an address, that is more likely a slip than the truth. Whoever knows better confirms it.
type doubt struct{ says string }

func (d doubt) Error() string {
	return d.says + "; if that is right, run the command again with --confirm"
}

// CheckClock doubts the day of this laptop when it lies before a day on which something was noted already, or long after the work. Last is the last work day.
func (j Job) CheckClock(last notices.Date) error {
	today := j.writer.Today
	for _, l := range j.lines {
		if l.day().Compare(today) > 0 {
			return doubt{fmt.Sprintf("the clock of this laptop says %s, and something was noted for job %s on %s already: set the clock", today, j.Code, l.Noted)}
		}
	}
	return j.checkPatience("the clock of this laptop says", today, last)
}

// CheckDay doubts the day on which something is said to have happened: before there was any sheet, or long after the work.
func (j Job) CheckDay(on, last notices.Date) error {
	if first := j.firstMake(); on.Compare(first) < 0 {
		return doubt{fmt.Sprintf("%s is before %s, when the first sheet of job %s was made: correct the day", on, first, j.Code)}
	}
	return j.checkPatience("the day is", on, last)
}

func (j Job) checkPatience(what string, day, last notices.Date) error {
	if last.IsZero() || day.Compare(last.Plus(patience)) <= 0 {
		return nil
	}
	return doubt{fmt.Sprintf("%s %s, and the last work day of job %s is %s, more than %d days before: correct the day", what, day, j.Code, last, patience)}
}

// firstMake is the earliest day on which sheets were made, by the clocks of the laptops.
func (j Job) firstMake() notices.Date {
	var first notices.Date
	for _, l := range j.lines {
		if l.Event == made && (first.IsZero() || l.day().Compare(first) < 0) {
			first = l.day()
		}
	}
	return first
}

// CheckAddress doubts a make whose house is another than that of the sheets on paper.
func (j Job) CheckAddress(address string) error {
	if j.address == "" || j.address == address {
		return nil
	}
	return doubt{fmt.Sprintf("the code %s is on paper for %s, and this job file is of %s: the codes there would open the pages of another house. Give this job another code",
		j.Code, j.address, address)}
}
