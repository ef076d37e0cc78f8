package locales

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/util"
)

// Our Markdown knows paragraphs as its only block, and emphasis and links inside them: a text that begins with "1." or "-" is still a text.
// The CJK extension keeps a line break between Chinese characters from becoming a space.
var markdown = goldmark.New(
	goldmark.WithParser(parser.NewParser(
		parser.WithBlockParsers(util.Prioritized(parser.NewParagraphParser(), 1)),
		parser.WithInlineParsers(util.Prioritized(parser.NewLinkParser(), 1), util.Prioritized(parser.NewEmphasisParser(), 2)),
	)),
	goldmark.WithExtensions(extension.CJK),
)

// render turns a text of one paragraph into inline HTML.
func render(text string) (string, error) {
	var out bytes.Buffer
	if err := markdown.Convert([]byte(text), &out); err != nil {
		return "", err
	}
	html := strings.TrimSpace(out.String())
	return strings.TrimSuffix(strings.TrimPrefix(html, "<p>"), "</p>"), nil
}

// tag matches the tags in what render makes; it writes <, > and " inside attributes as entities.
var tag = regexp.MustCompile(`<[^>]*>`)

// ourTags are those that Markdown in a message may become.
var ourTags = regexp.MustCompile(`^<(/?strong|/?em|/a|a href="[^"]*"|br)>$`)

// A mark is the private-use character that stands for a value until the text around it is finished.
func mark(i int) string { return string(firstMark + rune(i)) }

const (
	firstMark = '\ue000'
	lastMark  = '\uf8ff'
)

func isMark(r rune) bool { return firstMark <= r && r <= lastMark }
