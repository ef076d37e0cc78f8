package notices

import (
	"fmt"
	"slices"
	"strings"
)

// A Message is a text of the bundles with the values that it holds.
type Message struct {
	ID     string
	Values []Value
}

func (Message) value() {}

// A Text declares one message of the bundles: its id and the names of the values that it holds, which are also the names of their kinds.
type Text struct {
	ID    string
	Holds []string
}

// With fills the text in.
func (t Text) With(values ...Value) Message { return Message{t.ID, values} }

// Texts lists every message that this package can ask for, sorted by id, so that a test can compare it with the bundles.
func Texts() []Text {
	all := slices.Clone(declared)
	for _, word := range wordIDs() {
		all = append(all, Text{ID: word})
	}
	slices.SortFunc(all, func(a, b Text) int { return strings.Compare(a.ID, b.ID) })
	return all
}

// OwnTexts is the same for the reasons, which the coordinator reads in English.
func OwnTexts() []Text { return slices.Clone(ownDeclared) }

var declared, ownDeclared []Text

func text(id string, holds ...Value) Text {
	t := Text{ID: id, Holds: kindsOf(holds)}
	declared = append(declared, t)
	return t
}

func ownText(id string, holds ...Value) Text {
	t := Text{ID: id, Holds: kindsOf(holds)}
	ownDeclared = append(ownDeclared, t)
	return t
}

// KindOf names the kind of a value, as placeholders do: "Phone".
func KindOf(v Value) string { return strings.TrimPrefix(fmt.Sprintf("%T", v), "notices.") }

func kindsOf(values []Value) []string {
	var kinds []string
	for _, v := range values {
		kinds = append(kinds, KindOf(v))
	}
	slices.Sort(kinds)
	return kinds
}

// Word is the message id of an entry of a closed list.
func (a Area) Word() string { return "area." + string(a) }
func (s Side) Word() string { return "side." + string(s) }
func (w Way) Word() string  { return "way." + string(w) }
func (r Room) Word() string { return "room." + string(r) }
func (t Task) Word() string { return "task." + string(t) }
func (p Part) Word() string { return "part." + string(p) }

func (s Surface) Word() string { return "surface." + string(s) }

func (t Travel) Word() string       { return "travel." + string(t) }
func (p Payer) Word() string        { return "payer." + string(p) }
func (m MedicinePlan) Word() string { return "medicine_plan." + string(m) }
func (p PetPlan) Word() string      { return "pet_plan." + string(p) }
func (k KeyPlan) Word() string      { return "key_plan." + string(k) }

func wordIDs() []string {
	ids := slices.Concat(words(Areas), words(Sides), storeyWords(), words(Ways), words(Tasks), words(Parts), words(Surfaces), words(Travels), words(Payers), words(MedicinePlans), words(PetPlans), words(KeyPlans))
	for _, r := range Rooms {
		ids = append(ids, r.Name.Word())
	}
	return append(ids, WholeHouse.Word())
}

func words[T interface{ Word() string }](entries []T) []string {
	var ids []string
	for _, e := range entries {
		ids = append(ids, e.Word())
	}
	return ids
}
