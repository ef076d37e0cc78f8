package strict

import (
	"errors"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/token"
)

type explanation struct{ part, says, mend string }

var (
	misplaced   = explanation{"value is not allowed", "this line or the one below it does not fit the lines above", "start a key exactly below the key before it"}
	unexplained = explanation{"", "this cannot be read", "look for a missing colon, quotation mark or bracket, or a line that is indented unlike its neighbours"}
)

// explanations turn the parser's messages, known by a part of them, into advice. The order matters: the first that fits is told.
var explanations = []explanation{
	{`character '	'`, "the line starts with a tab", "indent with spaces"},
	{"tab character", "a tab stands where spaces should", "indent and separate with spaces"},
	{"escape character", `a \ in a text with double quotes starts a code, and this is none`, "use single quotes"},
	{"end token", "a bracket opens here and is never closed", "close it with ] or }"},
	{"end character of", "a quotation mark opens here and is never closed", "close it, or put the whole text between quotes of the other kind"},
	{"must be specified", "a list in brackets is not finished before this place", "put a comma between its entries and close it with ] or }"},
	{"reserved character", "a value cannot start with this character", "put quotes around the text"},
	{"mapping value is not allowed", "there is a second colon in this line", `put quotes around a text that holds ": "`},
	{"pre-defined", "something follows a text in quotes", `put the whole value in quotes of the other kind, such as 'Rosa "Bo" Diaz'`},
	{"corresponding to", "a bracket closes here that was never opened", "open it, or take it out"},
	{"scalar value", "an entry is missing here", "look for two commas in a row, or for a character that should be in quotes"},
	{"invalid key", "a key is missing before the colon", "write a key, a colon, a space and the value"},
	misplaced,
	{"non-map value", "this line has no key", "write a key, a colon, a space and the value"},
}

func (p *parsing) syntax(err error) {
	var known yaml.Error
	if !errors.As(err, &known) || known.GetToken() == nil {
		p.problem(1, 1, "", unexplained.says, unexplained.mend)
		return
	}
	e := explain(known.GetMessage(), known.GetToken())
	p.at(known.GetToken(), e.says, e.mend)
}

func explain(message string, t *token.Token) explanation {
	if severalLines(t) {
		return misplaced
	}
	for _, e := range explanations {
		if strings.Contains(message, e.part) {
			return e
		}
	}
	return unexplained
}

// severalLines is true of a text that goes on in a further line, mostly because that line is indented by mistake.
func severalLines(t *token.Token) bool {
	return t.Type == token.StringType && strings.Contains(strings.TrimSpace(t.Origin), "\n")
}
