package notices

import "slices"

// A checkKind is what a kind of check means for the paper: what to do and to wait for, what the letter promises, who does it at least, and whether a laboratory has to answer.
type checkKind struct {
	kind     Check
	do       Text   // the step
	waits    Text   // once its day is over
	why      Text   // what the return letter waits for
	after    Text   // the promise of the letter
	byLeast  []Role // whose pass counts; anybody's, when nil
	less     Text   // why another's does not
	takesLab bool   // a laboratory answers days later, and its report is enclosed with the notice after the work
}

var checkKinds = []checkKind{
	{ClearanceTest, sayCheckTest, waitTest, whyWaitsTest, letterAfterTest, []Role{Examiner}, notTested, true},
	{CleaningCheck, sayCheckCard, waitCheck, whyWaitsCheck, letterAfterCheck, []Role{Examiner, Renovator}, notVerified, false},
	{CrewLook, sayCheckLook, waitCheck, whyWaitsLook, letterAfterCheck, nil, Text{}, false},
	{NotDecided, sayCheckOpen, waitCheck, whyWaitsCheck, letterAfterCheck, nil, Text{}, false},
}

// check is the row of the check that a job promises.
func (job Job) check() checkKind {
	i := slices.IndexFunc(checkKinds, func(row checkKind) bool { return row.kind == job.CheckedBy })
	if i < 0 {
		i = len(checkKinds) - 1 // nobody has decided
	}
	return checkKinds[i]
}
