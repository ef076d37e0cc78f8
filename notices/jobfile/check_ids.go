package jobfile

import (
	"fmt"

	"example.org/doorleaf/notices"
)

// checkCode: two houses cannot share a folder of sheets.
func checkCode(r *reader, job *notices.Job) {
	if others := r.ownCode(job.Code); job.Code != "" && len(others) > 0 {
		r.wrong(r.at("code"), "is also the code of "+others[0], "give each house a code of its own")
	}
}

// checkIDs: an id names one thing in the file.
func checkIDs(r *reader, job *notices.Job) {
	lines := map[string]int{}
	for i, w := range job.Work {
		r.once(lines, w.ID, "work", i)
	}
	for i, h := range job.Households {
		r.once(lines, h.ID, "households", i)
	}
	for i, n := range job.Neighbours {
		r.once(lines, n.ID, "neighbours", i)
	}
	for i, o := range job.Openings {
		r.once(lines, o.ID, "openings", i)
	}
}

func (r *reader) once(lines map[string]int, id, list string, i int) {
	at := r.at(list, i, "id")
	if line, taken := lines[id]; taken && id != "" {
		r.wrong(at, fmt.Sprintf("is also the id in line %d", line), "give each piece of work, household and neighbour an id of its own")
		return
	}
	lines[id] = at.Line
}

// checkAddressesOnce: an address is one entry, or the wall that faces it could be either.
func checkAddressesOnce(r *reader, job *notices.Job) {
	lines := map[string]int{}
	for i, n := range job.Neighbours {
		at := r.at("neighbours", i, "address")
		if line, taken := lines[n.Address]; taken && n.Address != "" {
			r.wrong(at, fmt.Sprintf("is also the address in line %d", line), "keep one entry; homes tells how many homes are behind the address")
			continue
		}
		lines[n.Address] = at.Line
	}
}
