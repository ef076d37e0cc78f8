package templates

import "html/template"

// The coordinator's own lists are in English, so their words stand in the layouts.

// A WalkList is a table to carry along the street and to fill in by hand.
type WalkList struct {
	Code, Address, Paper string
	Fonts                []Font
	Pages                [][]WalkRow // rows of each side of paper
}

// WalkRowsPerPage is how many homes fit on one side.
const WalkRowsPerPage = 8

// A WalkRow is one home.
type WalkRow struct{ Who, Sheet, Languages, Due, LateAfter string }

// RenderWalkList lays out a walk list.
func RenderWalkList(w WalkList) ([]byte, error) { return render("walk.html", w) }

// A Desk is the coordinator's sheet: every job with what to print, where it goes, by when and why.
type Desk struct {
	Fonts []Font
	Jobs  []DeskJob
}

// A DeskJob is one job of a Desk.
type DeskJob struct {
	Code, Address, Days  string
	Everything, WalkList string // links
	CopyShop             string // link; "" when no sign needs larger paper
	PDFs                 []DeskLink
	Draft                []string
	Drawing              template.HTML // "" when no work is outside
	Piles                []DeskPile
	PutRight             []DeskRepair
	TakeDown             []DeskTick // once the area has passed
	TakeDownNow          []DeskTick // it has passed
	Steps                []DeskStep // nearest first
	Reasons              []DeskReason
}

// A DeskLink is a file for the printer.
type DeskLink struct{ Href, Name, Note string }

// A DeskPile is sheets that are carried together: letters, requests, the crew's pack, spares.
type DeskPile struct {
	Name, Note string
	Rows       []DeskRow
}

// A DeskRow is one sheet to print.
type DeskRow struct {
	Href, Title, To, Languages, Due, LateAfter string
	Copies, Sides                              int
	ReadFrom                                   string // signs only
}

// A DeskRepair is a door or a home where paper hangs or lies that is no longer right.
type DeskRepair struct {
	Where  string
	Sheets []DeskRepairSheet
}

// A DeskRepairSheet is what to take away and what to bring instead.
type DeskRepairSheet struct {
	Title, Sheet, Since string
	TakeAway, Bring     string // revisions; Bring is 0 when nothing comes instead
	Hangs               bool
}

// A DeskTick is a door with a box to tick when its signs are down again.
type DeskTick struct {
	Where string
	Signs int
}

// A DeskStep is one thing to do, with a box to tick and its last day. First is "" when it has that one day only.
type DeskStep struct {
	Says, First, Due, LateAfter, For, Source string
	Done                                     bool
}

// A DeskReason is one decision with its grounds.
type DeskReason struct {
	Outcome, Because, Source, Binds string
	Missing                         []DeskMissing
}

// A DeskMissing is an answer that nobody has given, and what it would change.
type DeskMissing struct{ Field, Would string }

// RenderDesk lays out the coordinator's sheet.
func RenderDesk(d Desk) ([]byte, error) { return render("desk.html", d) }

// A Contact shows sheets and pages small, for whoever looks them over.
type Contact struct {
	Fonts []Font
	Jobs  []ContactJob
}

// A ContactJob is one job of a Contact.
type ContactJob struct {
	Code, Address string
	Sheets        []ContactItem
	Joined        []ContactItem // signs over several sheets
	Pages         []ContactItem
}

// A ContactItem is one file with how large it is. Paper and Sides are those of sheets.
type ContactItem struct {
	Href, Name, Note, Paper string
	Sides                   int
}

// RenderContact lays out a contact sheet.
func RenderContact(c Contact) ([]byte, error) { return render("contact.html", c) }

// A WalkRound is the form to fill in by hand at the house: the questions of the job file in its order and words, in columns.
type WalkRound struct {
	Paper string
	Fonts []Font
	Sides [][][]WalkRoundPart // of each side its columns
}

// A WalkRoundPart is the questions about one thing, with room for so many answers.
type WalkRoundPart struct {
	Head    string
	Answers int
	Rows    []WalkRoundRow
}

// A WalkRoundRow is one question, with the key of the job file that its answer goes to.
type WalkRoundRow struct{ Key, Question string }

// RenderWalkRound lays out a walk-round form.
func RenderWalkRound(w WalkRound) ([]byte, error) { return render("walkround.html", w) }
