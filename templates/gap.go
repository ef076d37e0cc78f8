package templates

import (
	"html"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// Gap is what stands between two texts or pieces of HTML on a line: a space, or nothing where Chinese has none. A full-width sign such as "：" or "。" brings its own
// space, and between two wide characters there is none, as when CSS joins two lines (CSS Text Level 3, "Segment Break Transformation Rules").
func Gap(before, after string) string {
	last, _ := utf8.DecodeLastRuneInString(strings.TrimSpace(PlainText(before)))
	first, _ := utf8.DecodeRuneInString(strings.TrimSpace(PlainText(after)))
	if isWide(last) && (unicode.IsPunct(last) || isWide(first)) {
		return ""
	}
	return " "
}

// isWide leaves out Hangul, which has spaces between words.
func isWide(r rune) bool {
	kind := width.LookupRune(r).Kind()
	return (kind == width.EastAsianWide || kind == width.EastAsianFullwidth) && !unicode.Is(unicode.Hangul, r)
}

var tag = regexp.MustCompile(`<[^>]*>`)

// PlainText is the text of HTML that we made ourselves.
func PlainText(markup string) string {
	return html.UnescapeString(tag.ReplaceAllString(markup, ""))
}
