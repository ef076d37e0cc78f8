package locales

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"
)

// A Value takes the place of a placeholder. It appears as typed, whatever is in it.
type Value struct {
	text   string
	href   string // of a link, else ""
	number int    // when counts
	counts bool
}

// Plain is a value that is only text: a name, an address, a phone number on paper.
func Plain(text string) Value { return Value{text: text} }

// Link is text that [Speaker.HTML] makes a link, such as Link("555-0142", "tel:5550142"). In plain text it is the text alone.
// The address must begin with tel: or https:.
func Link(text, href string) Value { return Value{text: text, href: href} }

// Count is a whole number, written as the language writes numbers. In a message with plural forms it chooses the form.
// A year is no count, but Plain.
func Count(n int) Value { return Value{text: strconv.Itoa(n), number: n, counts: true} }

// html is the value ready for a page. The bdi element keeps a name in Arabic script from turning the words around it.
func (v Value) html() string {
	text := template.HTMLEscapeString(v.text)
	if v.href != "" {
		text = fmt.Sprintf(`<a href="%s">%s</a>`, template.HTMLEscapeString(v.href), text)
	}
	return "<bdi>" + text + "</bdi>"
}

func (v Value) check() error {
	if v.href == "" || strings.HasPrefix(v.href, "tel:") || strings.HasPrefix(v.href, "https:") {
		return nil
	}
	return fmt.Errorf("the link %q has to begin with tel: or https: and does not", v.href)
}
