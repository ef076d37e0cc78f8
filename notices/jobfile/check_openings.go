package jobfile

import (
	"slices"

	"example.org/doorleaf/notices"
)

// checkOpenings: an opening is near a piece of outside work of this job.
func checkOpenings(r *reader, job *notices.Job) {
	var outside []string
	for _, w := range job.Work {
		if w.Where == notices.Outside && w.ID != "" {
			outside = append(outside, w.ID)
		}
	}
	for i, o := range job.Openings {
		if o.Work != "" && !slices.Contains(outside, o.Work) {
			r.wrong(r.at("openings", i, "work"), "is not the id of any outside work", suggestion(o.Work, "outside work", outside))
		}
	}
}

// checkLotLines: only outside work has a distance to the property line.
func checkLotLines(r *reader, job *notices.Job) {
	for i, w := range job.Work {
		if w.Where == notices.Inside && w.LotLineKnown {
			r.problem(r.at("work", i, "lot_line"), "lot_line is for work outside, and this is inside", "take lot_line out, or write where: outside")
		}
	}
}
