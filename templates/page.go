package templates

import (
	"crypto/sha256"
	"encoding/base64"
	"html/template"
)

// MaxPageBytes is the size of a whole page that still arrives in one round trip on a phone: about ten packets of 1,460 bytes,
// the initial window of RFC 6928, with room for the answer's own header.
const MaxPageBytes = 14000

// A Page is a small web page in one language.
type Page struct {
	Lang, Dir   string
	Title       string
	Mark        template.HTML // "" when there is none
	Facts       []Fact
	Drawing     *Drawing
	Blocks      []Block
	Call        Call
	OthersLabel string
	Others      []OtherLanguage
	Draft       string
	Caution     string
}

// An OtherLanguage is the same page in another language, named in that language.
type OtherLanguage struct{ Lang, Dir, Href, Name string }

// A Choice is a page that greets in every language and lets the reader pick one.
type Choice struct {
	Title    string
	Sections []ChoiceSection
}

// A ChoiceSection is the part of a Choice in one language. Links is empty where there is nothing to open.
type ChoiceSection struct {
	Lang, Dir string
	Name      string // of the language, in itself
	Head      string
	Lines     []template.HTML
	Links     []ChoiceLink
	Call      Call
}

// A ChoiceLink opens one page.
type ChoiceLink struct{ Href, Name string }

// RenderPage lays out a page.
func RenderPage(p Page) ([]byte, error) { return render("page.html", pageDocument{p, policy}) }

// RenderChoice lays out a page that lets the reader choose a language.
func RenderChoice(c Choice) ([]byte, error) { return render("choice.html", choiceDocument{c, policy}) }

type pageDocument struct {
	Page
	Policy string
}

type choiceDocument struct {
	Choice
	Policy string
}

// policy lets a page load nothing at all, and use no style but its own, which it names by hash (W3C Content Security Policy Level 3).
var policy = contentSecurityPolicy(string(style("page.css")))

func contentSecurityPolicy(css string) string {
	hash := sha256.Sum256([]byte(css))
	return "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(hash[:]) +
		"'; img-src data:; base-uri 'none'; form-action 'none'"
}
