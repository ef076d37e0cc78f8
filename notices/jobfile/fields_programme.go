package jobfile

import (
	"fmt"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

// programmeFields are the keys of programme.yaml.
var programmeFields = fieldsOf(programmeRows)

var programmeRows = []row[notices.Programme]{
	{Field{Key: "name", Holds: HoldsOneLine, required: true, Question: "What do people in town call your programme?", example: "Larkfield Home Repair"},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.Name = r.name(v) }},
	{Field{Key: "phone", Holds: HoldsOneLine, required: true, Question: "Which number can neighbours and families ring?", example: "555-0100"},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.Phone = r.phone(v) }},
	{Field{Key: "phone_speaks", Holds: HoldsList, required: true, min_: 1, Question: "Which languages does somebody answer that phone in?", example: "[en, es]",
		noun: "language", words: languageWords(), pattern: languagePattern()},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.PhoneSpeaks = r.languages(v) }},
	{Field{Key: "base", Holds: HoldsOneLine, required: true, Question: "Under which web address will you put the pages?", example: "https://example.org/L",
		pattern: `^[Hh][Tt][Tt][Pp][Ss]://`},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.Base = r.base(v) }},
	{Field{Key: "languages", Holds: HoldsList, required: true, min_: 1, Question: "In which languages shall every page exist? Take all that your families and streets read, and English.",
		example: "[en, es, vi]", noun: "language", words: languageWords(), pattern: languagePattern()},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.Languages = r.pageLanguages(v) }},
	{Field{Key: "time_zone", Holds: HoldsOneLine, required: true, Question: "In which time zone do you work?", example: "America/Chicago",
		words: homeZones, pattern: `^[A-Za-z]+/`},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.TimeZone = r.timeZone(v) }},
	{Field{Key: "paper", Holds: HoldsOneLine, Question: "Which paper is in your printer?", example: "letter",
		noun: "paper", words: wordsOf([]notices.Paper{notices.Letter, notices.A4})},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.Paper = notices.Paper(v.Text) }},
	{Field{Key: "larger_paper", Holds: HoldsList, Question: "Which larger paper can a copy shop print for you? Signs that are read from afar then need no joining.", example: "[11x17]",
		noun: "paper", words: wordsOf([]notices.Paper{notices.Tabloid})},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.LargerPaper = listOf[notices.Paper](v) }},
	{Field{Key: "large_print", Holds: HoldsOneLine, Question: "Shall letters be in large print, on more paper?", example: "no",
		noun: "answer", words: wordsOf([]notices.Answer{notices.Yes, notices.No})},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.LargePrint = v.Text == string(notices.Yes) }},
	{Field{Key: "unchecked_translations", Holds: HoldsOneLine, Question: "What shall happen to a translation that no fluent speaker has checked yet?", example: "print_marked",
		noun: "choice", words: []string{"print_marked", "refuse"}},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.RefuseDrafts = v.Text == "refuse" }},
	{Field{Key: "result_takes", Holds: HoldsNumber, Question: "How many business days does your laboratory take?", example: "2", min_: 1, max_: 60},
		func(r *reader, v *strict.Node, p *notices.Programme) { p.ResultTakes = number(v) }},
	{Field{Key: "stricter", Holds: HoldsObject, Question: "Does your programme want to be stricter than the rules?", Fields: fieldsOf(stricterRows())},
		func(r *reader, v *strict.Node, p *notices.Programme) {
			p.Stricter = map[string]float64{}
			readObject(r, v, stricterRows(), &p.Stricter)
		}},
}

// stricterRows has a row for each figure that a programme may set for itself.
func stricterRows() []row[map[string]float64] {
	var rows []row[map[string]float64]
	for _, rule := range notices.Settable {
		rows = append(rows, row[map[string]float64]{
			Field{Key: rule.Name, Holds: HoldsNumber, Question: fmt.Sprintf("Instead of %v %s?", rule.Value, rule.Unit), example: fmt.Sprint(2 * rule.Value), min_: 1, max_: mostOf(rule)},
			func(r *reader, v *strict.Node, own *map[string]float64) { r.stricter(v, rule, *own) },
		})
	}
	return rows
}

// mostOf is beyond what any programme would ask for; more is a slip of a digit.
func mostOf(rule notices.Rule) int {
	return map[string]int{"ft": 200, "days": 60, "business days": 30, "minutes": 240, "copies": 20}[rule.Unit]
}

// stricter refuses a figure that is looser than the rule.
func (r *reader) stricter(v *strict.Node, rule notices.Rule, own map[string]float64) {
	value := float64(number(v))
	if value != rule.Value && !rule.IsStricter(value) {
		r.wrong(v, fmt.Sprintf("is looser than the rule, which has %v %s (%s)", rule.Value, rule.Unit, rule.Source()), "write a stricter figure, or take the line out")
		return
	}
	own[rule.Name] = value
}

// homeZones are offered first; every zone of the IANA database is accepted.
var homeZones = []string{
	"America/New_York", "America/Chicago", "America/Denver", "America/Phoenix", "America/Los_Angeles", "America/Anchorage", "Pacific/Honolulu",
	"America/Puerto_Rico",
}
