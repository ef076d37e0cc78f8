package notices

import "slices"

// A Door is a way in whose signs are to come down, because what lies behind it has passed.
type Door struct {
	Way   Way
	Area  Area
	Signs []string // ids of the sheets that hang there
}

// takeDown lists the doors whose signs the job called for while all work was open, and calls for no longer.
func takeDown(job Job) []Door {
	wanted := signs(job)
	var doors []Door
	for _, s := range signsAround(job, job.leadWork()) {
		if slices.ContainsFunc(wanted, func(w Sheet) bool { return w.ID == s.ID }) {
			continue
		}
		i := slices.IndexFunc(doors, func(d Door) bool { return d.Way == s.Hang[0] && d.Area == s.Area })
		if i < 0 {
			doors = append(doors, Door{Way: s.Hang[0], Area: s.Area})
			i = len(doors) - 1
		}
		doors[i].Signs = append(doors[i].Signs, s.ID)
	}
	return doors
}
