package jobfile

import (
	"fmt"

	"example.org/doorleaf/notices"
)

// checkGaps: a measured gap and the answer about it must agree. The question asks about the same reach.
func checkGaps(r *reader, job *notices.Job) {
	for i, n := range job.Neighbours {
		within := float64(n.Gap) <= job.Programme.Rule(notices.WindowReach).Value
		if n.GapKnown && (n.Near == notices.Yes && !within || n.Near == notices.No && within) {
			r.wrong(r.at("neighbours", i, "near"), fmt.Sprintf("does not fit with the gap of %s", r.at("neighbours", i, "gap").Text), "take near out; a measured gap is enough")
		}
	}
}
