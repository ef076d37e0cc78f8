package notices

import "strings"

// The ids of sheets, in the one place that spells them. They are names of files, and stay the same as long as the job keeps its own ids.

func letterID(household string) string  { return "letter-" + household }
func receiptID(household string) string { return "receipt-" + household }
func againID(household string) string   { return "again-" + household }
func returnID(household string) string  { return "return-" + household }
func afterID(to string) string          { return "after-" + to }
func noteID(neighbour string) string    { return "note-" + neighbour }
func requestID(neighbour string) string { return "request-" + orSpare(neighbour) }
func petsID(home string) string         { return "pets-" + orSpare(home) }
func doneID(neighbour string) string    { return "done-" + orSpare(neighbour) }

func signID(place string, way Way, l Language) string {
	return "sign-" + place + "-" + string(way) + "-" + l.small()
}

func commonSignID(door Way, l Language) string { return "common-" + string(door) + "-" + l.small() }

// roomID is the id of a room that is shut because of a sample.
func roomID(room Area) string { return "room-" + strings.ReplaceAll(string(room), "_", "-") }

const (
	commonNoticeID = "common"
	slipID         = "slip"
	entryPlace     = "entry" // the building's own doors, when everybody has left
)

func orSpare(home string) string {
	if home == "" {
		return "spare"
	}
	return home
}
