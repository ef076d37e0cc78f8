package notices

// A Value is a typed thing that a message or a cell shows: the language decides how it is written.
//
// A sentence may hold a Name, Address, HouseNumber, Phone, LanguageName or Number. Dates, hours and words of the closed lists stand alone in
// a cell, because cases and genders would break the sentence around them.
type Value interface{ value() }

type (
	Name         string   // a proper name, in any script
	Address      string   // a street address, in any script
	HouseNumber  string   // "14"
	Phone        string   // digits only, as dialled: 3, 7, 10 or 11 of them
	LanguageName Language // named in English, for the sentence to say on the phone
	Number       int      // chooses the plural form of its sentence

	Days   []Span // whole days with their weekdays
	Time   Clock
	Words  []string   // message ids of words of the closed lists, shown as a list: "way.back_door"
	Places [][]string // places of the house, each on its own line: message ids of its area, storey and side
	Pair   struct {   // a label and its value on one line of a cell
		Label Message
		Value Value
	}
)

func (Name) value()         {}
func (Address) value()      {}
func (HouseNumber) value()  {}
func (Phone) value()        {}
func (LanguageName) value() {}
func (Number) value()       {}
func (Days) value()         {}
func (Time) value()         {}
func (Words) value()        {}
func (Places) value()       {}
func (Pair) value()         {}
