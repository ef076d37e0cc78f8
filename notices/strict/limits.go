package strict

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/goccy/go-yaml/token"
)

const utf8Advice = "save the file again as UTF-8 text: most editors offer it under Save As, Encoding"

// clean checks the bytes of a file and returns its text, with a � for each character that it refused, and with one kind of line end: the parser counts those of
// Windows twice behind a comment. It reports false when the rest is not worth reading.
func (p *parsing) clean(src []byte) (string, bool) {
	if len(src) > maxBytes {
		p.problem(1, 1, "", fmt.Sprintf("the file is longer than %d KB, too long for one house", maxBytes>>10), "check that it is the right file, and split it")
		return "", false
	}
	if name := foreign(src); name != "" {
		p.problem(1, 1, "", "the file is "+name, utf8Advice)
		return "", false
	}
	src = bytes.TrimPrefix(src, []byte("\uFEFF"))
	src = bytes.ReplaceAll(bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	text := p.characters(src)
	// The parser misplaces the last value of a file when spaces follow it.
	return strings.TrimRight(text, " \t\r\n") + "\n", len(p.problems) < maxTroubles
}

// foreign names what a file is that is no text of ours: by its mark, or by how many NUL bytes it has, and where.
func foreign(src []byte) string {
	nul := bytes.Count(src, []byte{0})
	switch {
	case bytes.HasPrefix(src, []byte{0xFF, 0xFE, 0, 0}) || bytes.HasPrefix(src, []byte{0, 0, 0xFE, 0xFF}):
		return "saved as UTF-32"
	case bytes.HasPrefix(src, []byte{0xFF, 0xFE}) || bytes.HasPrefix(src, []byte{0xFE, 0xFF}):
		return "saved as UTF-16"
	case nul == 0:
		return ""
	case nul == len(src):
		return "nothing but NUL bytes, so its text is lost; bring it back from a copy, or"
	case 5*nul >= 3*len(src):
		return "saved as UTF-32"
	case 5*nul >= 2*len(src):
		return "saved as UTF-16"
	}
	return ""
}

// characters refuses bytes that are not UTF-8 and characters that nobody can see, NUL first among them.
func (p *parsing) characters(src []byte) string {
	var out strings.Builder
	line, column := 1, 1
	for len(src) > 0 && len(p.problems) < maxTroubles {
		r, size := utf8.DecodeRune(src)
		if says, mend := unreadable(r, size); says != "" {
			p.problem(line, column, string(src[:size]), says, mend)
			r = utf8.RuneError
		}
		out.WriteRune(r)
		src = src[size:]
		column++
		if r == '\n' {
			line, column = line+1, 1
		}
	}
	return out.String()
}

func unreadable(r rune, size int) (says, mend string) {
	switch {
	case r == utf8.RuneError && size == 1:
		return "this character is not UTF-8 text", utf8Advice
	case r == utf8.RuneError:
		return "a character was lost here when the file was saved (U+FFFD)", "type it again"
	case hidden(r):
		return fmt.Sprintf("there is an invisible character here (U+%04X), which hides or turns round what people read", r), "delete the character, or type the text again"
	case r == 0:
		return "there is a NUL byte here, which no text holds", "delete the character and type the line again"
	case control(r) && !strings.ContainsRune("\t\r\n", r):
		return fmt.Sprintf("there is an invisible control character here (U+%04X)", r), "delete the character and type the line again"
	}
	return "", ""
}

// hidden characters change what people read without being seen: those of no width, those that turn the direction of what follows, tags, fillers. Marks of writing
// direction (U+200E, U+200F) and joiners belong to names and stay.
func hidden(r rune) bool {
	switch {
	case r == '\u200B' || r == '\u2060' || r == '\uFEFF' || '\u2061' <= r && r <= '\u2064':
		return true
	case '\u202A' <= r && r <= '\u202E' || '\u2066' <= r && r <= '\u2069':
		return true
	case r == '\u115F' || r == '\u1160' || r == '\u3164' || r == '\uFFA0':
		return true
	}
	return 0xE0000 <= r && r <= 0xE007F
}

// control is wider than Unicode's control characters by its two line breaks. Marks of writing direction belong to names and stay.
func control(r rune) bool { return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' }

// refusals are the marks of YAML that a file of this kind has no use for. They make a file mean something else than it seems to say.
var refusals = map[token.Type]struct{ says, mend string }{
	token.AnchorType:     {"a value that starts with & would be a name for use elsewhere", quotesAdvice},
	token.AliasType:      {"a value that starts with * would stand for another value", quotesAdvice},
	token.TagType:        {"a value that starts with ! would be of a special type", quotesAdvice},
	token.MergeKeyType:   {"the key << would copy another part of the file", "write the keys out here"},
	token.DirectiveType:  {"a line that starts with % would be an order to the reading program", "take the line out"},
	token.MappingKeyType: {"a line that starts with ? would be a key of several lines", "write the key, a colon, a space and the value"},
}

const quotesAdvice = "put quotes around the text if it is meant to start like this, or write the value out where it is needed"

// allow reports problems that show before the structure is known, and false when parsing would be of no use or too costly.
func (p *parsing) allow(tokens token.Tokens) bool {
	p.refuse(tokens)
	p.oneDocument(tokens)
	return len(p.problems) < maxTroubles && p.short(tokens) && p.shallow(tokens)
}

// short counts what the parser is slow with: pieces in all, and indented keys in one object, for which its time grows with the square.
func (p *parsing) short(tokens token.Tokens) bool {
	if len(tokens) > maxPieces {
		p.at(tokens[maxPieces], fmt.Sprintf("the file has more than %d pieces, too many for one house", maxPieces), "check that it is the right file, and split it")
		return false
	}
	keys := map[int]int{} // by column, in the object that is open there
	brackets := 0
	for _, t := range tokens {
		brackets += bracket(t)
		key := brackets == 0 && t.Next != nil && t.Next.Type == token.MappingValueType
		if !key && t.Type != token.SequenceEntryType {
			continue
		}
		closeRight(keys, t.Position.Column)
		if key {
			keys[t.Position.Column]++
		}
		if keys[t.Position.Column] > maxKeys {
			p.at(t, fmt.Sprintf("more than %d keys stand below each other", maxKeys), "check that it is the right file; many entries belong in a list")
			return false
		}
	}
	return true
}

func closeRight(keys map[int]int, column int) {
	for c := range keys {
		if c > column {
			delete(keys, c)
		}
	}
}

// bracket is 1 for one that opens, -1 for one that closes.
func bracket(t *token.Token) int {
	switch t.Type {
	case token.SequenceStartType, token.MappingStartType:
		return 1
	case token.SequenceEndType, token.MappingEndType:
		return -1
	}
	return 0
}

func (p *parsing) refuse(tokens token.Tokens) {
	before := false
	for _, t := range tokens {
		if len(p.problems) >= maxTroubles {
			return
		}
		refusal, refused := refusals[t.Type]
		if refused && !before {
			p.at(t, refusal.says, refusal.mend)
		}
		before = refused
	}
}

func (p *parsing) oneDocument(tokens token.Tokens) {
	begun, ended := false, false
	order := 0 // the line of the last directive
	for _, t := range tokens {
		switch {
		case t.Type == token.DirectiveType:
			order = t.Position.Line
		case t.Type == token.DocumentEndType:
			ended = true
			continue
		}
		if t.Type == token.CommentType || t.Position.Line == order {
			continue
		}
		if ended || begun && t.Type == token.DocumentHeaderType {
			p.at(t, "a second document starts here and would not be read", "take out the --- or ... above it, or move what follows to a file of its own")
			return
		}
		begun = true
	}
}

// shallow counts open brackets and dashes in a row, because the parser follows them to any depth.
func (p *parsing) shallow(tokens token.Tokens) bool {
	brackets, dashes := 0, 0
	for _, t := range tokens {
		brackets += bracket(t)
		dashes++
		if t.Type != token.SequenceEntryType {
			dashes = 0
		}
		if brackets > maxDepth || dashes > maxDepth && t.Position.Line == t.Prev.Position.Line {
			p.tooDeep(t)
			return false
		}
	}
	return true
}
