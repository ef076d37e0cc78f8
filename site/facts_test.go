package site

import (
	"encoding/json"
	"testing"

	"example.org/doorleaf/notices"
)

// A sheet with a value of each kind, made by hand, so that no change of a job or of a text can move its digest.
var pinned = notices.Sheet{
	ID: "letter-h1", Kind: notices.StayOutLetter, To: notices.To{Party: notices.ForHousehold, ID: "h1", Name: "The Lam family"},
	Turns: []string{"clearance_test"},
	Faces: []notices.Face{{Language: "vi", Beside: "en", Opens: notices.PageKind("HOME"), Content: notices.Content{
		Head: notices.Message{ID: "any.head", Values: []notices.Value{notices.HouseNumber("14")}},
		For:  notices.Name("The Lam family"),
		Facts: []notices.Fact{
			{Label: notices.Message{ID: "any.label"}},
			{Label: notices.Words{"area.hallway"}, Cells: []notices.Value{
				notices.Days{{First: notices.Date{Year: 2027, Month: 5, Day: 11}, Last: notices.Date{Year: 2027, Month: 5, Day: 13}}},
				notices.Pair{Label: notices.Message{ID: "any.from"}, Value: notices.Time(480)}, notices.WriteIn{}}},
		},
		Blocks: []notices.Block{{Head: notices.Message{ID: "any.block"}, Lines: []notices.Message{{ID: "any.line", Values: []notices.Value{notices.Phone("18002221222")}}}}},
		Call:   notices.Call{Who: "Rosa", Phone: "6125550142", Speaks: []notices.Language{"en", "es"}, Say: notices.Address("14 Alder Court")},
	}}},
}

const (
	pinnedFacts = `{"kind":"stay_out_letter","to":"The Lam family","hang":null,"place":"","turns":["clearance_test"],"faces":[{"language":"vi","beside":"en","page":"HOME",` +
		`"values":["value 14","value The Lam family","words area.hallway","days 2027-05-11 2027-05-13","time 08:00","value 18002221222","value Rosa","value 6125550142","speaks en","speaks es","value 14 Alder Court"]}]}`
	pinnedDigest = "5074f45d31cbaeab89e9ccaee59a097a5faa9789b2694a0b5beb4636b15e51e3"
)

// When this fails, every sheet that hangs in town would be told apart from what the ledger remembers, and replaced. Mend the facts, not the golden; only facts that a
// sheet did not have before may change it.
func TestFactsArePinned(t *testing.T) {
	facts, err := json.Marshal(saidBy(pinned))
	if err != nil {
		t.Fatal(err)
	}
	if string(facts) != pinnedFacts {
		t.Errorf("the facts are\n%s\nwant\n%s", facts, pinnedFacts)
	}
	if got := factsOf(pinned).Digest; got != pinnedDigest {
		t.Errorf("the digest is %s, want %s", got, pinnedDigest)
	}
	renamed := pinned
	renamed.Faces = []notices.Face{renamed.Faces[0]}
	renamed.Faces[0].Head.ID, renamed.Faces[0].Marks = "another.head", []notices.Mark{notices.MarkKeepOut}
	if factsOf(renamed).Digest != pinnedDigest {
		t.Error("another message id or pictogram changes the digest")
	}
	renamed.Faces[0].Call.Phone = "6125550143"
	if factsOf(renamed).Digest == pinnedDigest {
		t.Error("another phone does not change the digest")
	}
}
