package notices

// turns are the answers that choose between the texts of a sheet. With the values on its faces they are all that it says: when only a sentence is worded anew, what hangs in town stays right.
func (job Job) turns(s Sheet) []string {
	switch s.Kind {
	case StayOutLetter:
		return append(job.staysOf(s.To), string(job.CheckedBy), yesIf("outside", job.hasOutsideWork()))
	case CleanAgainLetter:
		return []string{string(job.CheckedBy), job.howFound()}
	case ReturnLetter:
		return append(job.staysOf(s.To), string(job.CheckedBy), yesIf("all", len(job.OpenWork()) == 0), yesIf("windows", job.windowsOver()), job.howAll())
	case DatesChangedSlip:
		return []string{yesIf("outside", job.hasOutsideWork())}
	case PetFlyer:
		return job.petsOf(s.To)
	case AfterWorkNotice:
		return []string{string(job.CheckedBy), yesIf("renovation", job.renovationBinds()), yesIf("housing", job.aidedBinds()), job.howAll()}
	}
	return nil
}

// staysOf is how the household of a sheet lives through the work.
func (job Job) staysOf(to To) []string {
	for _, h := range job.Households {
		if h.ID == to.ID {
			return []string{[]string{"at home", "out in hours", "elsewhere"}[job.stay(h).stay]}
		}
	}
	return nil
}

// petsOf are the animals of the home of a flyer; none for a spare.
func (job Job) petsOf(to To) []string {
	var kinds []string
	add := func(id string, pets []Pet) {
		for _, p := range pets {
			if id == to.ID {
				kinds = append(kinds, string(p))
			}
		}
	}
	for _, h := range job.Households {
		add(h.ID, h.Pets)
	}
	for _, n := range job.Neighbours {
		add(n.ID, n.Pets)
	}
	return kinds
}

// howAll is how the places were checked or found, one after the other.
func (job Job) howAll() string {
	var all string
	for _, w := range job.passedWork() {
		all += string(job.roleOf(w)) + " "
	}
	return all
}

// howFound is what the places that failed were found by.
func (job Job) howFound() string {
	var all string
	for _, w := range job.inState(CheckFailed) {
		_, stopped := job.stopping(w)
		all += string(job.roleOf(w)) + " " + yesIf("sample", stopped || w.checkedWith != "") + " "
	}
	return all
}

func (job Job) roleOf(w Work) Role {
	last, _ := job.lastCheck(w)
	if job.hasSample(w) {
		return last.Role + " with samples"
	}
	return last.Role
}

func yesIf(answer string, holds bool) string {
	if holds {
		return answer
	}
	return "not " + answer
}
