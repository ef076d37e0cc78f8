package jobfile

import (
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

// checkFacesOutsideOnly: only outside walls, and new windows, look at a street or a neighbour.
func checkFacesOutsideOnly(r *reader, job *notices.Job) {
	for i, w := range job.Work {
		if !w.ReachesOutside() && len(w.Faces) > 0 {
			r.problem(r.at("work", i, "faces"), "faces is for work outside, and this is inside", "take faces out, or write where: outside")
		}
	}
}

// checkFacesKnown: a wall faces a side of the lot or a neighbour of the list, or nobody is asked to close windows.
func checkFacesKnown(r *reader, job *notices.Job) {
	known := slices.Clone(lotSides)
	for _, n := range job.Neighbours {
		known = append(known, n.Address)
	}
	for i, w := range job.Work {
		for _, face := range w.Faces {
			if !slices.Contains(known, face) {
				r.wrong(r.item(face, "work", i, "faces"), "is neither a side of the lot nor the address of a neighbour below", suggestion(face, "face", known))
			}
		}
	}
}

// item is the place of a text in a list.
func (r *reader) item(text string, path ...any) *strict.Node {
	list := r.at(path...)
	for _, item := range list.Items {
		if item.Text == text {
			return item
		}
	}
	return list
}
