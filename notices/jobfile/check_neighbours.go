package jobfile

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
)

// checkLines: the wall of a neighbour is beyond the property line, so no gap is smaller than the distance from the work to that line.
func checkLines(r *reader, job *notices.Job) {
	for i, n := range job.Neighbours {
		for _, w := range job.Work {
			if n.GapKnown && w.LotLineKnown && slices.Contains(w.Faces, n.Address) && n.Gap < w.LotLine {
				r.wrong(r.at("neighbours", i, "gap"), fmt.Sprintf("is less than the %s from the work %q to the property line, and their wall is beyond that line", w.LotLine, w.ID), "measure from the work to their wall, and correct one of the two")
			}
		}
	}
}

// checkGaps: a measured gap and the answer about it must agree. The question asks about the same reach.
func checkGaps(r *reader, job *notices.Job) {
	for i, n := range job.Neighbours {
		within := float64(n.Gap) <= job.Programme.Rule(notices.WindowReach).Value
		if n.GapKnown && (n.Near == notices.Yes && !within || n.Near == notices.No && within) {
			r.wrong(r.at("neighbours", i, "near"), fmt.Sprintf("does not fit with the gap of %s", r.at("neighbours", i, "gap").Text), "take near out; a measured gap is enough")
		}
	}
}
