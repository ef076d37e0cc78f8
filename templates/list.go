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

// An Overview is the coordinator's sheet: every job with what to print, where it goes, by when and why.
type Overview struct {
	Fonts []Font
	Jobs  []OverviewJob
}

// An OverviewJob is one job of a Overview.
type OverviewJob struct {
	Code, Address, Days  string
	Everything, WalkList string // links
	CopyShop             string // link; "" when no sign needs larger paper
	PDFs                 []OverviewLink
	Draft                []string
	Drawing              template.HTML // "" when no work is outside
	Piles                []OverviewPile
	PutRight             []OverviewRepair
	TakeDown             []OverviewTick // once the area has passed
	TakeDownNow          []OverviewTick // it has passed
	Steps                []OverviewStep // nearest first
	Reasons              []OverviewReason
}

// An OverviewLink is a file for the printer.
type OverviewLink struct{ Href, Name, Note string }

// An OverviewPile is sheets that are carried together: letters, requests, the crew's pack, spares.
type OverviewPile struct {
	Name, Note string
	Rows       []OverviewRow
}

// An OverviewRow is one sheet to print.
type OverviewRow struct {
	Href, Title, To, Languages, Due, LateAfter string
	Copies, Sides                              int
	ReadFrom                                   string // signs only
}

// An OverviewRepair is a door or a home where paper hangs or lies that is no longer right.
type OverviewRepair struct {
	Where  string
	Sheets []OverviewRepairSheet
}

// An OverviewRepairSheet is what to take away and what to bring instead.
type OverviewRepairSheet struct {
	Title, Sheet, Since string
	TakeAway, Bring     string // revisions; Bring is "" when nothing comes instead
	Printed, Hangs      bool
}

// An OverviewTick is a door with a box to tick when its signs are down again.
type OverviewTick struct {
	Where string
	Signs int
}

// An OverviewStep is one thing to do, with a box to tick and its last day. First is "" when it has that one day only.
type OverviewStep struct {
	Says, First, Due, LateAfter, For, Source string
	Done                                     bool
}

// An OverviewReason is one decision with its grounds.
type OverviewReason struct {
	Outcome, Because, Source, Binds string
	Missing                         []OverviewMissing
}

// An OverviewMissing is an answer that nobody has given, and what it would change.
type OverviewMissing struct{ Field, Would string }

// RenderOverview lays out the coordinator's sheet.
func RenderOverview(d Overview) ([]byte, error) { return render("overview.html", d) }

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

// A WalkRoundPart is the questions about one thing, with room for a number of answers.
type WalkRoundPart struct {
	Head    string
	Answers int
	Rows    []WalkRoundRow
}

// A WalkRoundRow is one question, with the key of the job file that its answer goes to.
type WalkRoundRow struct{ Key, Question string }

// RenderWalkRound lays out a walk-round form.
func RenderWalkRound(w WalkRound) ([]byte, error) { return render("walkround.html", w) }
