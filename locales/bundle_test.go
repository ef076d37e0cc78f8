package locales

import (
	"strings"
	"testing"
	"testing/fstest"
)

const draft = "about: {state: draft}\n"

// speak opens a speaker over one file of messages.
func speak(t *testing.T, tag, messages string) *Speaker {
	t.Helper()
	s, err := open(tag, file(tag, draft+messages), tag+".yaml", nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func file(tag, text string) fstest.MapFS {
	return fstest.MapFS{tag + ".yaml": {Data: []byte(text)}}
}

func TestBundleIDs(t *testing.T) {
	s := speak(t, "en", `
sign:
  keep_out: Keep out
  call: Call {{.Name}} at {{.Phone}}.
pet:
  cat: Cat
  other: Other pet
homes:
  one: "{{.Homes}} home"
  other: "{{.Homes}} homes"
`)
	if got, want := strings.Join(s.IDs(), " "), "homes pet.cat pet.other sign.call sign.keep_out"; got != want {
		t.Errorf("ids are %s, want %s", got, want)
	}
	if got, want := strings.Join(s.Placeholders("sign.call"), " "), "Name Phone"; got != want {
		t.Errorf("placeholders are %s, want %s", got, want)
	}
}

// Each text is wrong in one way, and the error names the file, the message and the way.
func TestBadBundles(t *testing.T) {
	for _, c := range []struct{ name, tag, text, want string }{
		{"no about", "en", "a: Text", "en.yaml: the section about is missing"},
		{"empty file", "en", "", "en.yaml: the file is empty"},
		{"no section", "en", "- a", "en.yaml: "},
		{"unknown state", "en", "about: {state: fine}", `en.yaml: about: the state is "fine"`},
		{"unknown field of about", "en", "about: {state: draft, reviewer: Ana}", "en.yaml: about: there is no reviewer"},
		{"review without a day", "en", "about: {state: reviewed, reviewed_by: Ana}", "about: a reviewed text needs"},
		{"draft with a name", "en", "about: {state: draft, reviewed_by: Ana}", "the state is draft"},
		{"two documents", "en", draft + "a: Text\n---\nb: Text", "second document"},
		{"twice the same id", "en", draft + "a: Text\na: Text", "already defined"},
		{"number", "en", draft + "a: 12", "en.yaml: a: 12 is no text"},
		{"empty text", "en", draft + "a: {b: ''}", "a.b: the text is empty"},
		{"nothing", "en", draft + "a:", "a: there is no text"},
		{"HTML", "en", draft + "a: <b>now</b>", `a: there is "<" in the text`},
		{"private use", "en", draft + `a: "\uE000"`, "a: there is a private-use character"},
		{"empty line", "en", draft + `a: "one\n\ntwo"`, "a: there is an empty line"},
		{"picture", "en", draft + `a: "![x](y.png)"`, "only emphasis, links and line breaks"},
		{"link with a title", "en", draft + `a: '[x](https://example.org "title")'`, "only emphasis, links and line breaks"},
		{"small letter", "en", draft + "a: '{{.name}}'", "a: a placeholder is not written like {{.Name}}"},
		{"blank", "en", draft + "a: '{{ .Name }}'", "a: a placeholder is not written like {{.Name}}"},
		{"template action", "en", draft + "a: '{{if .Name}}x{{end}}'", "a: a placeholder is not written like {{.Name}}"},
		{"placeholder in an address", "en", draft + "a: '[x](https://example.org/{{.Name}})'", "inside the address of a link"},
		{"visible stars", "en", draft + "a: '**重要：**请'", "a: ** stays visible"},
		{"stars with a placeholder", "en", draft + "a: 'see **{{.Name}}.**now'", "a: ** stays visible"},
		{"English without one", "en", draft + "a: {other: '{{.N}} homes'}", `a: the plural form "one" is missing; this language has one, other`},
		{"English with few", "en", draft + "a: {one: '{{.N}} home', few: '{{.N}}', other: '{{.N}} homes'}", `a: the plural form "few" is never used`},
		{"Spanish without many", "es", draft + "a: {one: '{{.N}} casa', other: '{{.N}} casas'}", `a: the plural form "many" is missing`},
		{"Vietnamese with one", "vi", draft + "a: {one: '{{.N}} nhà', other: '{{.N}} nhà'}", `a: the plural form "one" is never used`},
		{"Russian without few", "ru", draft + "a: {one: '{{.N}} дом', many: '{{.N}} домов', other: '{{.N}} дома'}", `a: the plural form "few" is missing`},
		{"Chinese with one", "zh-Hans", draft + "a: {one: '{{.N}} 户', other: '{{.N}} 户'}", `a: the plural form "one" is never used; this language has other`},
		{"forms without a number", "vi", draft + "a: {other: nhà}", "a: it has plural forms, but no placeholder for the number"},
		{"forms unlike", "en", draft + "a: {one: 'a home', other: '{{.N}} homes of {{.Name}}'}", "a: its plural forms have different placeholders: {{.N}}, {{.Name}}"},
		{"language without a table", "xx", draft + "a: Text", "add it to locales/gen/cldr.mjs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := open(c.tag, file(c.tag, c.text), c.tag+".yaml", nil)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("the error is %v\nwant %s", err, c.want)
			}
			if err != nil && strings.Contains(err.Error(), "locales.") {
				t.Errorf("%v names a Go type", err)
			}
		})
	}
}

func TestAllProblemsAtOnce(t *testing.T) {
	_, err := open("en", file("en", draft+"a: <b>\nb: ''\nc: {d: '{{', e: Text, f: 12}\ng: {other: '{{.N}}'}"), "en.yaml", nil)
	if err == nil {
		t.Fatal("no error")
	}
	for _, id := range []string{"a", "b", "c.d", "c.f", "g"} {
		if !strings.Contains("\n"+err.Error(), "\nen.yaml: "+id+": ") {
			t.Errorf("no line about %s in\n%v", id, err)
		}
	}
}

func TestState(t *testing.T) {
	reviewed := "about: {state: reviewed, reviewed_by: Ana Ruiz, reviewed_on: 2027-02-01}\n"
	for _, c := range []struct {
		name, ours, own string
		want            State
	}{
		{"draft", draft, "", State{Draft: true}},
		{"source", "about: {state: source}\n", "", State{}},
		{"reviewed", reviewed, "", State{reviewedBy: "Ana Ruiz", reviewedOn: "2027-02-01"}},
		{"the programme had our draft reviewed", draft, reviewed, State{reviewedBy: "Ana Ruiz", reviewedOn: "2027-02-01"}},
		{"the programme put a draft over our reviewed text", reviewed, draft + "a: Otro\n", State{Draft: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			own := fstest.MapFS{}
			if c.own != "" {
				own = file("es", c.own)
			}
			s, err := open("es", file("es", c.ours+"a: Texto"), "es.yaml", own)
			if err != nil {
				t.Fatal(err)
			}
			if got := s.State(); got != c.want {
				t.Errorf("the state is %+v, want %+v", got, c.want)
			}
		})
	}
}

func TestOwnWording(t *testing.T) {
	ours := file("en", draft+"call: Call {{.Name}} at {{.Phone}}.\nstop: Stop.\nhomes: {one: '{{.N}} home', other: '{{.N}} homes'}")
	for _, c := range []struct{ name, own, want, problem string }{
		{"another wording", "call: Ring {{.Phone}} and ask for {{.Name}}.", "Ring 555-0142 and ask for Rosa.", ""},
		{"nothing of that message", "stop: Halt.", "Call Rosa at 555-0142.", ""},
		{"unknown message", "halt: Halt.", "", "your own en.yaml: halt: there is no such message"},
		{"new placeholder", "stop: Stop, {{.Name}}.", "", "your own en.yaml: stop: it has the placeholders {{.Name}}, but must have none"},
		{"lost phone", "call: Call {{.Name}}.", "", "call: it has the placeholders {{.Name}}, but must have {{.Name}}, {{.Phone}}"},
		{"lost forms", "homes: '{{.N}} homes'", "", "homes: one of our text and this one has plural forms"},
		{"wrong in itself", "stop: <b>Stop</b>", "", `your own en.yaml: stop: there is "<"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := open("en", ours, "en.yaml", file("en", draft+c.own))
			if c.problem != "" {
				if err == nil || !strings.Contains(err.Error(), c.problem) {
					t.Fatalf("the error is %v\nwant %s", err, c.problem)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			got, err := s.Text("call", map[string]Value{"Name": Plain("Rosa"), "Phone": Plain("555-0142")})
			if err != nil || got != c.want {
				t.Errorf("%q, %v; want %q", got, err, c.want)
			}
		})
	}
}

func TestOpenUnknownLanguage(t *testing.T) {
	if _, err := Open("tlh", nil); err == nil || !strings.Contains(err.Error(), `"tlh"; there are texts in ar, en, es, ru, vi, zh-Hans`) {
		t.Errorf("the error is %v", err)
	}
	if _, err := Open(coordinator, nil); err == nil {
		t.Error("the coordinator's sheet was opened as a language")
	}
}
