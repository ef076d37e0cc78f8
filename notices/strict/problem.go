package strict

import (
	"fmt"
	"strconv"
	"strings"
)

// A Problem is one thing in a file that its writer has to fix, told as a colleague would tell it.
type Problem struct {
	File         string // as the caller calls it
	Line, Column int    // from 1; columns count characters
	Text         string // as it stands in the file; empty when something is missing
	Says         string
	Mend         string
}

func (p Problem) String() string {
	return fmt.Sprintf("%s:%d:%d: %s", p.File, p.Line, p.Column, p.message())
}

// message joins both halves: with a semicolon, or as sentences when the first half ends as one.
func (p Problem) message() string {
	if strings.HasSuffix(p.Says, "?") || strings.HasSuffix(p.Says, ".") {
		return p.Says + " " + strings.ToUpper(p.Mend[:1]) + p.Mend[1:] + "."
	}
	return p.Says + "; " + p.Mend
}

// Quoted shows text from a file in a message: shortened, and with invisible characters made visible.
func Quoted(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return strconv.Quote(text)
}
