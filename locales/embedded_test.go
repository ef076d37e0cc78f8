package locales

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// These tests read the bundles that we ship.

// shipped opens every embedded bundle, the coordinator's sheet among them.
func shipped(t *testing.T) map[string]*Speaker {
	speakers := map[string]*Speaker{}
	for _, file := range bundleFiles() {
		name := strings.TrimSuffix(file, ".yaml")
		s, err := OpenCoordinator()
		if name != coordinator {
			s, err = Open(name, nil)
		}
		if err != nil {
			t.Errorf("bundles/%s does not open:\n%v", file, err)
			continue
		}
		speakers[name] = s
	}
	return speakers
}

// TestEveryMessageSpeaks executes every form of every message with values that would break a careless one.
func TestEveryMessageSpeaks(t *testing.T) {
	for name, s := range shipped(t) {
		for _, id := range s.IDs() {
			for _, n := range []int{0, 1, 2, 3, 5, 11, 21, 100, 1000000} {
				values := sampleValues(s.messages[id], n)
				got, err := s.HTML(id, values)
				if err != nil {
					t.Errorf("%s.yaml: %v", name, err)
					break
				}
				if problem := badMarkup(string(got), values); problem != "" {
					t.Errorf("%s.yaml: %s: %s: %s", name, id, problem, got)
				}
			}
		}
	}
}

// sampleValues gives every placeholder a value, and the one that may choose a form the number n.
func sampleValues(m message, n int) map[string]Value {
	values := map[string]Value{}
	for i, name := range m.placeholders() {
		values[name] = Plain(fmt.Sprintf("<%d>", i))
	}
	if counting := append(m.dropped(), m.placeholders()...); m.counts {
		values[counting[0]] = Count(n)
	}
	return values
}

// badMarkup looks for what no message may become, with an HTML parser.
func badMarkup(markup string, values map[string]Value) string {
	words := ""
	for z := html.NewTokenizer(strings.NewReader(markup)); z.Next() != html.ErrorToken; {
		switch token := z.Token(); token.Type {
		case html.TextToken:
			words += token.Data
		case html.StartTagToken, html.EndTagToken, html.SelfClosingTagToken:
			if !slices.Contains([]string{"strong", "em", "a", "br", "bdi"}, token.Data) {
				return "there is the element " + token.Data
			}
		}
	}
	for name, v := range values {
		if !v.counts && !strings.Contains(words, v.text) {
			return "the value of " + name + " is not there"
		}
	}
	for _, rest := range []string{"**", "{{", "}}", "<no value>", "](", "&amp;"} {
		if strings.Contains(words, rest) {
			return rest + " stays visible"
		}
	}
	if strings.ContainsFunc(words, isMark) {
		return "a mark was not replaced"
	}
	return ""
}

// TestBundlesAgree lists all that the other languages lack, have too much, or ask for otherwise than English, the source.
func TestBundlesAgree(t *testing.T) {
	speakers := shipped(t)
	source := speakers["en"]
	if source == nil {
		t.Fatal("there is no English bundle to compare with")
	}
	for _, tag := range Tags() {
		if s := speakers[tag]; s != nil {
			for _, problem := range disagreements(source, s) {
				t.Errorf("%s.yaml: %s", tag, problem)
			}
		}
	}
}

func disagreements(source, other *Speaker) []string {
	var problems []string
	for _, id := range slices.Sorted(maps.Keys(source.messages)) {
		english := source.messages[id]
		theirs, found := other.messages[id]
		switch {
		case !found:
			problems = append(problems, id+" is missing")
		case !slices.Equal(english.placeholders(), theirs.placeholders()):
			problems = append(problems, fmt.Sprintf("%s has the placeholders %s, but English has %s", id, brackets(theirs.placeholders()), brackets(english.placeholders())))
		case english.counts != theirs.counts && len(other.locale.Plurals) > 1:
			problems = append(problems, id+" has plural forms in one of English and this language")
		}
	}
	for _, id := range other.IDs() {
		if _, found := source.messages[id]; !found {
			problems = append(problems, id+" is unknown in English")
		}
	}
	return problems
}

// TestDisagreementsAreFound sees to it that the test above can fail.
func TestDisagreementsAreFound(t *testing.T) {
	source := speak(t, "en", "a: A {{.Name}}\nb: B\nc: {one: '{{.N}}', other: '{{.N}}'}\nd: D")
	other := speak(t, "es", "a: A {{.Phone}}\nc: '{{.N}}'\nd: D\ne: E")
	got := strings.Join(disagreements(source, other), "; ")
	want := "a has the placeholders {{.Phone}}, but English has {{.Name}}; b is missing; c has plural forms in one of English and this language; e is unknown in English"
	if got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

func TestBadMarkupIsFound(t *testing.T) {
	for _, markup := range []string{"<p>x</p>", "**x**", "{{.X}}", "x \ue003", "&lt;no value&gt;", "&amp;amp;", "<script>x</script>"} {
		if badMarkup(markup, nil) == "" {
			t.Errorf("%s passes", markup)
		}
	}
}

// TestChineseWordsHoldTogether runs the script that joins words on the bundle: outside reference is what ICU takes for a word.
func TestChineseWordsHoldTogether(t *testing.T) {
	const file = "bundles/zh-Hans.yaml"
	text, err := bundles.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got := runNode(t, nil, "gen/join.mjs", file); string(got) != string(text) {
		t.Error("some large text has words that a line may cut; run gen/join.mjs as its head says")
	}
}
