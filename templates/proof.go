package templates

// A Proof is one page for the file: who was told what, and what hung where. It is in English.
type Proof struct {
	Code, Address, Programme string
	Days                     string   // planned
	Pamphlets                []string // to whom, how and when the official one was given: "h1: signed on Tue Apr 20, 2027"
	Emergency, NotFollowed   string   // what an emergency was, and what was not done because of it; "" when there was none
	Told                     []ProofTold
	Tried                    []ProofTried
	Hung                     []ProofHung
	Checks                   []ProofCheck
	Samples                  []ProofSample
	Open                     []string // sheets of the last make of which nothing is noted
	Struck                   []string // what was noted by mistake
}

// A ProofTold is one sheet that somebody got.
type ProofTold struct{ Who, What, When, How, By, Language, Why string }

// A ProofTried is a delivery to somebody of the house that nobody signed for.
type ProofTried struct{ Who, When, How, By, Why string }

// A ProofHung is one sheet that hung; Until is "" while it hangs.
type ProofHung struct{ Where, What, From, Until, By string }

// A ProofCheck is what a check found.
type ProofCheck struct{ Work, When, By, Result string }

// A ProofSample is a dust sample.
type ProofSample struct{ Work, Room, Surface, Lab, Result string }

// RenderProof lays out a proof.
func RenderProof(p Proof) ([]byte, error) { return render("proof.html", p) }
