package strict

import (
	"errors"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"
)

// explanations turn the parser's messages, known by a part of them, into advice. The order matters: the first that fits is told.
var explanations = []struct{ part, says, mend string }{
	{`character '	'`, "the line starts with a tab", "indent with spaces"},
	{"tab character", "a tab stands where spaces should", "indent and separate with spaces"},
	{"escape character", `a \ in a text with double quotes starts a code, and this is none`, "use single quotes"},
	{"end token", "a bracket opens here and is never closed", "close it with ] or }"},
	{"end character of", "a quotation mark opens here and is never closed", "close it, or put the whole text between quotes of the other kind"},
	{"must be specified", "a list in brackets is not finished before this place", "put a comma between its entries and close it with ] or }"},
	{"reserved character", "a value can't start with this sign", "put quotes around the text"},
	{"mapping value is not allowed", "there is a second colon in this line", `put quotes around a text that holds ": "`},
	{"pre-defined", "something follows a text in quotes", `put the whole value in quotes of the other kind, such as 'Rosa "Bo" Diaz'`},
	{"corresponding to", "a bracket closes here that was never opened", "open it, or take it out"},
	{"scalar value", "an entry is missing here", "look for two commas in a row, or for a sign that should be in quotes"},
	{"invalid key", "a key is missing before the colon", "write a key, a colon, a space and the value"},
	{"value is not allowed", "this line does not fit the lines above it", "start it below the line that it belongs with: same keys, same indent"},
	{"non-map value", "this line has no key", "write a key, a colon, a space and the value"},
}

const plainAdvice = "look for a missing colon, quotation mark or bracket, or a line that is indented unlike its neighbours"

func (p *parsing) syntax(err error) {
	says, mend := "this can't be read", plainAdvice
	var known yaml.Error
	if !errors.As(err, &known) || known.GetToken() == nil {
		p.problem(1, 1, "", says, mend)
		return
	}
	for _, e := range explanations {
		if strings.Contains(known.GetMessage(), e.part) {
			says, mend = e.says, e.mend
			break
		}
	}
	t := known.GetToken()
	text := strings.TrimSpace(t.Value)
	if text != "" {
		says += " (at " + quoted(text) + ")"
	}
	p.at(t, text, says, mend)
}

func quoted(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return strconv.Quote(text)
}
