package locales

import (
	"html/template"
	"strings"
	"sync"
	"testing"

	"golang.org/x/net/html"
	"pgregory.net/rapid"
)

func TestHTML(t *testing.T) {
	s := speak(t, "en", `
strong: Stay out until we **take this sign down**.
number: 1. This is no list
call: Call **{{.Name}}** at {{.Phone}}.
twice: "{{.Name}}, dear {{.Name}}"
link: Read [the pamphlet](https://example.org/a?b=1&c=2).
lines: |
  one\
  two
chinese: |
  请关
  窗
`)
	rosa, phone := Plain("Rosa"), Link("555-0142", "tel:5550142")
	for _, c := range []struct {
		id     string
		values map[string]Value
		want   template.HTML
	}{
		{"strong", nil, "Stay out until we <strong>take this sign down</strong>."},
		{"number", nil, "1. This is no list"},
		{"call", map[string]Value{"Name": rosa, "Phone": phone}, `Call <strong><bdi>Rosa</bdi></strong> at <bdi><a href="tel:5550142">555-0142</a></bdi>.`},
		{"call", map[string]Value{"Name": Plain("**A** <script>"), "Phone": Plain("{{.Name}}")}, `Call <strong><bdi>**A** &lt;script&gt;</bdi></strong> at <bdi>{{.Name}}</bdi>.`},
		{"call", map[string]Value{"Name": Plain("\ue001"), "Phone": Plain("\ue000")}, "Call <strong><bdi>\ue001</bdi></strong> at <bdi>\ue000</bdi>."},
		{"twice", map[string]Value{"Name": rosa}, "<bdi>Rosa</bdi>, dear <bdi>Rosa</bdi>"},
		{"link", nil, `Read <a href="https://example.org/a?b=1&amp;c=2">the pamphlet</a>.`},
		{"lines", nil, "one<br>\ntwo"},
		{"chinese", nil, "请关窗"},
	} {
		got, err := s.HTML(c.id, c.values)
		if err != nil || got != c.want {
			t.Errorf("%s is %s, %v\nwant %s", c.id, got, err, c.want)
		}
	}
}

func TestText(t *testing.T) {
	s := speak(t, "en", `
head: Questions & answers for "{{.Name}}"
strong: "**Stop**"
`)
	got, err := s.Text("head", map[string]Value{"Name": Plain("<O'Neil> & *sons*")})
	if want := `Questions & answers for "<O'Neil> & *sons*"`; err != nil || got != want {
		t.Errorf("%q, %v; want %q", got, err, want)
	}
	if _, err := s.Text("strong", nil); err == nil || !strings.Contains(err.Error(), "Markdown") {
		t.Errorf("Markdown as plain text: %v", err)
	}
}

func TestCount(t *testing.T) {
	const en = `homes: {one: "one home near {{.Street}}", other: "{{.N}} homes near {{.Street}}"}`
	const es = `homes: {one: "una casa cerca de {{.Street}}", many: "{{.N}} de casas cerca de {{.Street}}", other: "{{.N}} casas cerca de {{.Street}}"}`
	const vi = `homes: {other: "{{.N}} nhà gần {{.Street}}"}`
	const ru = `homes: {one: "{{.N}} дом: {{.Street}}", few: "{{.N}} дома: {{.Street}}", many: "{{.N}} домов: {{.Street}}", other: "{{.N}} дома: {{.Street}}"}`
	const ar = `homes: {zero: "لا بيوت: {{.Street}}", one: "بيت: {{.Street}}", two: "بيتان: {{.Street}}", few: "{{.N}} بيوت: {{.Street}}", many: "{{.N}} بيتًا: {{.Street}}", other: "{{.N}} بيت: {{.Street}}"}`
	const zh = `homes: {other: "{{.Street}}附近的{{.N}}户"}`
	for _, c := range []struct {
		tag, messages string
		n             int
		want          string
	}{
		{"ru", ru, 21, "21 дом: Elm"},
		{"ru", ru, 3, "3 дома: Elm"},
		{"ru", ru, 12, "12 домов: Elm"},
		{"ar", ar, 0, "لا بيوت: Elm"},
		{"ar", ar, 2, "بيتان: Elm"},
		{"ar", ar, 10, "10 بيوت: Elm"},
		{"ar", ar, 11, "11 بيتًا: Elm"},
		{"ar", ar, 100, "100 بيت: Elm"},
		{"zh-Hans", zh, 1, "Elm附近的1户"},
		{"en", en, 0, "0 homes near Elm"},
		{"en", en, 1, "one home near Elm"},
		{"en", en, 1234, "1,234 homes near Elm"},
		{"es", es, 1, "una casa cerca de Elm"},
		{"es", es, 2, "2 casas cerca de Elm"},
		{"es", es, 1000000, "1,000,000 de casas cerca de Elm"},
		{"vi", vi, 0, "0 nhà gần Elm"},
		{"vi", vi, 1, "1 nhà gần Elm"},
		{"vi", vi, 1234, "1.234 nhà gần Elm"},
	} {
		got, err := speak(t, c.tag, c.messages).Text("homes", map[string]Value{"N": Count(c.n), "Street": Plain("Elm")})
		if got = strings.NewReplacer("\u2068", "", "\u2069", "").Replace(got); err != nil || got != c.want {
			t.Errorf("%s %d: %q, %v; want %q", c.tag, c.n, got, err, c.want)
		}
	}
}

func TestBadValues(t *testing.T) {
	s := speak(t, "en", `
call: Call {{.Name}}.
homes: {one: "one home near {{.Street}}", other: "{{.N}} homes near {{.Street}}"}
`)
	for _, c := range []struct {
		name, id string
		values   map[string]Value
		want     string
	}{
		{"unknown message", "cal", nil, "message cal (en): there is no such message"},
		{"missing", "call", nil, "it needs the values {{.Name}}, but was given none"},
		{"surplus", "call", map[string]Value{"Name": Plain("x"), "Phone": Plain("y")}, "it needs the values {{.Name}}, but was given {{.Name}}, {{.Phone}}"},
		{"no number", "homes", map[string]Value{"N": Plain("2"), "Street": Plain("Elm")}, "needs one number to choose by; it was given 0"},
		{"two numbers", "homes", map[string]Value{"N": Count(2), "Street": Count(3)}, "needs one number to choose by; it was given 2"},
		{"the other number", "homes", map[string]Value{"N": Plain("2"), "Street": Count(3)}, "the number is {{.Street}}, but a plural form leaves out {{.N}}"},
		{"script as link", "call", map[string]Value{"Name": Link("x", "javascript:alert(1)")}, "has to begin with tel: or https:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, err := s.Text(c.id, c.values)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%q, %v\nwant %s", text, err, c.want)
			}
			if markup, err := s.HTML(c.id, c.values); err == nil {
				t.Errorf("HTML gives %s", markup)
			}
		})
	}
}

// TestValuesDoNothing reads the result with an HTML parser: whatever the values are, the elements and the words are those of the message, and the
// values are the words inside bdi.
func TestValuesDoNothing(t *testing.T) {
	s := speak(t, "en", "a: Call **{{.A}}** at *{{.B}}*, or [write](https://example.org) {{.A}}.\nplain: Call {{.A}} at {{.B}}.")
	rapid.Check(t, func(t *rapid.T) {
		a, b, href := anyValue().Draw(t, "a"), anyValue().Draw(t, "b"), anyValue().Draw(t, "href")
		got, err := s.HTML("a", map[string]Value{"A": Plain(a), "B": Link(b, "tel:"+href)})
		if err != nil {
			t.Fatal(err)
		}
		want := []string{
			"Call ", "<strong>", "<bdi>", a, "</bdi>", "</strong>", " at ", "<em>", "<bdi>", "<a>", b, "</a>", "</bdi>", "</em>",
			", or ", "<a>", "write", "</a>", " ", "<bdi>", a, "</bdi>", ".",
		}
		if got := parts(string(got)); strings.Join(got, "|") != strings.Join(asParsed(want), "|") {
			t.Fatalf("%q\nwant %q", got, asParsed(want))
		}
		plain, err := s.Text("plain", map[string]Value{"A": Plain(a), "B": Plain(b)})
		if want := "Call " + a + " at " + b + "."; err != nil || plain != want {
			t.Fatalf("%q, %v; want %q", plain, err, want)
		}
	})
}

// anyValue leans towards what has a meaning to Markdown, HTML, templates, or to ourselves.
func anyValue() *rapid.Generator[string] {
	pieces := []string{
		"<script>", "</bdi>", "<!--", "&lt;", "&", `"`, "'", "**", "_", "`", "[x](y)", "![", "\\", "{{.X}}", "{{.A}}", "}}", "\ue000", "\ue001", "\uf8ff",
		"\u202e", "\u2067", "\u200f", "עברית", "العربية", "重要", "👪", "\n\n", "# ", "- ", "javascript:", "\x00", "\u2028", "<p>",
	}
	piece := rapid.OneOf(rapid.SampledFrom(pieces), rapid.String())
	return rapid.Map(rapid.SliceOfN(piece, 0, 6), func(p []string) string { return strings.Join(p, "") })
}

// parts lists tags without their attributes, and texts.
func parts(markup string) []string {
	var all []string
	for z := html.NewTokenizer(strings.NewReader(markup)); z.Next() != html.ErrorToken; {
		token := z.Token()
		token.Attr = nil
		if token.Type == html.TextToken {
			all = append(all, token.Data)
		} else {
			all = append(all, token.String())
		}
	}
	return all
}

// asParsed is what a parser makes of parts: it has no empty texts, turns carriage returns into line feeds, and we replace NUL, which HTML cannot hold.
func asParsed(parts []string) []string {
	var all []string
	for _, p := range parts {
		if p != "" {
			all = append(all, strings.NewReplacer("\r\n", "\n", "\r", "\n", "\x00", "\ufffd").Replace(p))
		}
	}
	return all
}

// TestManyAtOnce is for the race detector: go test -race.
func TestManyAtOnce(t *testing.T) {
	s := speak(t, "en", "call: Call **{{.Name}}**.")
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			if _, err := s.HTML("call", map[string]Value{"Name": Plain("Rosa")}); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
}
