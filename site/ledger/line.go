package ledger

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.org/doorleaf/notices"
)

// An Event is what a line says happened.
type Event string

const (
	made     Event = "made"
	Printed  Event = "printed"
	Posted   Event = "posted"
	Handed   Event = "handed"
	Phoned   Event = "phoned"
	Refused  Event = "refused"
	Signed   Event = "signed"
	Removed  Event = "removed"
	struck   Event = "struck"
	restored Event = "restored"
)

// A line is one event as it stands in a file.
type line struct {
	Doorleaf int            `json:"doorleaf"` // version of the format: 1
	N        int            `json:"n"`        // 1 + the highest that the laptop had seen
	Laptop   string         `json:"laptop"`
	Seen     map[string]int `json:"seen,omitempty"` // of each other laptop, the highest n
	Noted    string         `json:"noted"`          // YYYY-MM-DD by the clock of the laptop
	Event    Event          `json:"event"`
	Made     *makeLine      `json:"made,omitempty"`
	Mark     *markLine      `json:"mark,omitempty"`
	Strikes  string         `json:"strikes,omitempty"` // seal of the line with the mark
	Without  map[string]int `json:"without,omitempty"` // restored only: up to which n lines of a laptop are lost, as somebody has accepted

	seal string // of this line: its name among all lines
}

// A makeLine is what a make found. It lists all sheets of that make; a sheet that an earlier one had is gone.
type makeLine struct {
	Token   string      `json:"token,omitempty"` // "" without codes
	Address string      `json:"address"`         // of the house
	Pages   []string    `json:"pages,omitempty"` // addresses below the base that no line before had: "482109371158/ES/WINDOWS/"
	Dates   string      `json:"dates"`           // digest of the dates of the outside work
	Beside  []string    `json:"beside,omitempty"`
	Sheets  []sheetLine `json:"sheets"`
}

type sheetLine struct {
	Facts
	Revision int `json:"revision"`
}

// A markLine is what became of paper on a day.
type markLine struct {
	Paper    []paperLine `json:"paper"`
	On       string      `json:"on"`                 // YYYY-MM-DD
	Until    string      `json:"until,omitempty"`    // noted late, of paper that was replaced by then
	Home     string      `json:"home,omitempty"`     // id of the household or neighbour
	How      string      `json:"how,omitempty"`      // handed only: spoke, left or mailed
	By       string      `json:"by,omitempty"`       // initials of whoever did it
	Language string      `json:"language,omitempty"` // in which it was explained
	Why      string      `json:"why,omitempty"`      // why nobody signed (40 CFR 745.84(a)(2)(i))
	Ends     []string    `json:"ends,omitempty"`     // seals of the lines whose marks of these sheets end with this one
}

type paperLine struct {
	Sheet    string `json:"sheet"` // id
	Digest   string `json:"digest"`
	Revision int    `json:"revision"`
}

const formatVersion = 1

// root is what the first line of a file is sealed to, so that it belongs to one job and one laptop.
func root(code, laptop string) string { return fmt.Sprintf("doorleaf ledger %s %s", code, laptop) }

const sealKey, sealSize = `,"seal":"`, 32

// sealed is the text of a line behind one with the given seal, and the line as it is read back. It is an error when that is not what was meant.
func (l line) sealed(before string) (text string, again line, err error) {
	body, err := json.Marshal(l)
	if err != nil {
		return "", line{}, err
	}
	seal := sealOf(before, string(body))
	text = strings.TrimSuffix(string(body), "}") + sealKey + seal + `"}`
	again, err = unseal(text, before)
	if err != nil || strings.Contains(string(body), broken) {
		return "", line{}, errors.New("the text that was to be noted would not be read back as it is; write it in other characters")
	}
	return text, again, nil
}

// broken stands in JSON for bytes that are no text.
const broken = `\ufffd`

func sealOf(before, body string) string {
	sum := sha256.Sum256([]byte(before + "\n" + body))
	return hex.EncodeToString(sum[:])[:sealSize]
}

var (
	errCut   = errors.New("is cut off or was edited")
	errNewer = errors.New("was written by a newer doorleaf; use that one")
)

// unseal reads the text of a line behind one with the given seal.
func unseal(text, before string) (line, error) {
	at := len(text) - len(sealKey) - sealSize - len(`"}`)
	if at < 0 || text[at:at+len(sealKey)] != sealKey || !strings.HasSuffix(text, `"}`) {
		return line{}, errCut
	}
	body, seal := text[:at]+"}", text[at+len(sealKey):at+len(sealKey)+sealSize]
	if seal != sealOf(before, body) {
		return line{}, errCut
	}
	l := line{seal: seal}
	err := json.Unmarshal([]byte(body), &l)
	if err == nil && l.Doorleaf > formatVersion {
		return line{}, errNewer
	}
	if err != nil || l.Doorleaf != formatVersion {
		return line{}, errCut
	}
	return l, nil
}

// inOrder compares lines of all files of a job.
func inOrder(a, b line) int {
	return cmp.Or(cmp.Compare(a.N, b.N), cmp.Compare(a.Laptop, b.Laptop), cmp.Compare(a.seal, b.seal))
}

// day is when the line was written, by the clock of its laptop.
func (l line) day() notices.Date {
	day, _ := notices.ParseDate(l.Noted) // sealed as doorleaf wrote it
	return day
}
