package locales

import (
	_ "embed"
	"encoding/json"
	"strings"
	"sync"
)

//go:embed cldr.json
var cldrJSON string

// A locale is one entry of cldr.json: how CLDR says a language is written. Patterns are those of UTS 35, part 4, "Date Format Patterns".
type locale struct {
	From           string            `json:"from"`      // the CLDR locale, such as es-US for es
	Script         string            `json:"script"`    // ISO 15924
	Direction      string            `json:"direction"` // ltr or rtl
	Names          map[string]string `json:"names"`     // of our languages, by tag, as inside a sentence
	Months         [12]string        `json:"months"`    // January first
	Weekdays       [7]string         `json:"weekdays"`  // Sunday first, as in time.Weekday
	AMPM           [2]string         `json:"am_pm"`
	FullDate       string            `json:"full_date"`
	DayWithoutYear string            `json:"day_without_year"`
	Time           string            `json:"time"`
	Through        string            `json:"through"` // between two days
	List           listPattern       `json:"list"`
	Comma          string            `json:"comma"`
	Colon          string            `json:"colon"`
	Decimal        string            `json:"decimal"`
	Group          string            `json:"group"`
	Minus          string            `json:"minus"`
	Plurals        []string          `json:"plurals"` // cardinal categories
}

type cldrTable struct {
	About struct {
		CLDR     string `json:"cldr"`
		Packages string `json:"packages"`
		Licence  string `json:"licence"`
	} `json:"about"`
	Languages map[string]*locale `json:"languages"`
}

// CLDR puts a narrow no-break space (U+202F) before AM and thin spaces (U+2009) around a dash. Many fonts have no glyph for either, and a
// box or a gap from another font on a printed sheet is worse than a space a hair too wide. Lines still break where they did.
// The file writes both as escapes.
var commonSpaces = strings.NewReplacer(`\u202f`, `\u00a0`, `\u2009`, " ")

var table = sync.OnceValue(func() cldrTable { return parseTable(commonSpaces.Replace(cldrJSON)) })

// parseTable panics on bad JSON: the table is part of the program, and every test reads it.
func parseTable(text string) cldrTable {
	var t cldrTable
	if err := json.Unmarshal([]byte(text), &t); err != nil {
		panic("cldr.json: " + err.Error())
	}
	return t
}
