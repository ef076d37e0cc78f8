package notices

import "slices"

// proof is what the file that is kept says of this job, from its checks and samples.
func proof(job Job) Proof {
	p := Proof{Pamphlets: job.Pamphlets, Statement: job.Statement}
	for _, h := range job.Households {
		p.Households = append(p.Households, h.ID)
	}
	for _, c := range job.Checks {
		p.Checks = append(p.Checks, ProofCheck{c.Work, job.areaOf(c.Work), c.On, c.By, c.Result})
	}
	for _, w := range job.Wipes {
		p.Samples = append(p.Samples, ProofSample{w.Work, job.areaOf(w.Work), w.Room, w.Surface, w.Lab, w.Loading, w.Below})
	}
	return p
}

// IsChecked reports whether anything was found at a piece of work, by a check or by a sample.
func (p Proof) IsChecked(work string) bool {
	return slices.ContainsFunc(p.Checks, func(c ProofCheck) bool { return c.Work == work }) ||
		slices.ContainsFunc(p.Samples, func(s ProofSample) bool { return s.Work == work || roomID(s.Room) == work })
}

func (job Job) areaOf(work string) Area {
	for _, w := range job.Work {
		if w.ID == work {
			return w.Area
		}
	}
	return ""
}

// keeps are what people have to be kept out of until it passes.
func keeps(job Job) []Keep {
	var all []Keep
	for _, w := range job.Work {
		if job.Checked(w) != CheckPassed {
			all = append(all, Keep{w.ID, w.Area})
		}
	}
	return all
}

// outingDays are the days and hours of the outside work, one for each piece of it.
func outingDays(job Job) []OutingDay {
	var all []OutingDay
	for _, w := range job.Work {
		if w.ReachesOutside() {
			all = append(all, OutingDay{w.Days, w.CrewArrives, w.CleanedBy, w.RainDay})
		}
	}
	return all
}
