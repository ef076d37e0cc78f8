package locales

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/nicksnyder/go-i18n/v2/i18n"
	"golang.org/x/text/language"
)

// Outside data: files of CLDR 48.2.0, unmodified, in testdata/cldr; see testdata/SOURCES.md.
const cldrFiles = "../testdata/cldr"

// at walks down a CLDR file. The path is one of keys, because some of them hold dots.
func at(t *testing.T, file string, keys ...string) any {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(cldrFiles, filepath.FromSlash(file)))
	if err != nil {
		t.Fatal(err)
	}
	var node any
	if err := json.Unmarshal(text, &node); err != nil {
		t.Fatal(err)
	}
	for _, key := range keys {
		branch, ok := node.(map[string]any)
		if !ok || branch[key] == nil {
			t.Fatalf("%s has no %s in %v", file, key, keys)
		}
		node = branch[key]
	}
	return node
}

// TestTableIsCLDR compares cldr.json as it is in the file, before any space is replaced.
func TestTableIsCLDR(t *testing.T) {
	for tag, l := range parseTable(cldrJSON).Languages {
		in := func(pack, file string, keys ...string) func(...string) any {
			path := pack + "/main/" + l.From + "/" + file
			return func(more ...string) any {
				return at(t, path, slices.Concat([]string{"main", l.From}, keys, more)...)
			}
		}
		calendar := in("cldr-dates-full", "ca-gregorian.json", "dates", "calendars", "gregorian")
		lists := in("cldr-misc-full", "listPatterns.json", "listPatterns", "listPattern-type-standard")
		numbers := in("cldr-numbers-full", "numbers.json", "numbers")
		names := in("cldr-localenames-full", "languages.json", "localeDisplayNames", "languages")

		same := func(what, got string, want any) {
			t.Helper()
			if got != want {
				t.Errorf("%s: %s is %q, but CLDR says %q", tag, what, got, want)
			}
		}
		same("the full date", l.FullDate, calendar("dateFormats", "full"))
		same("the time", l.Time, calendar("dateTimeFormats", "availableFormats", "hm"))
		same("AM", l.AMPM[0], calendar("dayPeriods", "format", "abbreviated", "am"))
		same("PM", l.AMPM[1], calendar("dayPeriods", "format", "abbreviated", "pm"))
		for i, month := range l.Months {
			same("a month", month, calendar("months", "format", "wide", strconv.Itoa(i+1)))
		}
		for i, day := range []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"} {
			same("a weekday", l.Weekdays[i], calendar("days", "format", "wide", day))
		}
		same("a list of two", l.List.Two, lists("2"))
		same("a list's start", l.List.Start, lists("start"))
		same("a list's middle", l.List.Middle, lists("middle"))
		same("a list's end", l.List.End, lists("end"))
		same("the decimal sign", l.Decimal, numbers("symbols-numberSystem-latn", "decimal"))
		same("the group sign", l.Group, numbers("symbols-numberSystem-latn", "group"))
		same("the minus", l.Minus, numbers("symbols-numberSystem-latn", "minusSign"))
		for other, name := range l.Names {
			same("the name of "+other, name, names(base(other)))
		}
		same("the script", l.Script, scriptOf(t, tag))
		signs := in("cldr-localenames-full", "localeDisplayNames.json", "localeDisplayNames", "localeDisplayPattern")
		same("a comma", "{0}"+l.Comma+"{1}", signs("localeSeparator"))
		same("a colon", "{0}"+l.Colon+"{1}", signs("localeKeyTypePattern"))
		order := map[string]string{"ltr": "left-to-right", "rtl": "right-to-left"}[l.Direction]
		same("the direction", order, in("cldr-misc-full", "layout.json", "layout", "orientation")("characterOrder"))
	}
}

// base is a tag without its script. CLDR's plural rules are by base, and our names of languages as well: the only Chinese that we write is "Chinese".
func base(tag string) string {
	language, _, _ := strings.Cut(tag, "-")
	return language
}

// scriptOf is the script that the tag names, or else the likely one: UTS 35, part 1, "Likely Subtags".
func scriptOf(t *testing.T, tag string) string {
	if _, named, found := strings.Cut(tag, "-"); found {
		return named
	}
	likely := at(t, "cldr-core/supplemental/likelySubtags.json", "supplemental", "likelySubtags", tag).(string)
	return strings.Split(likely, "-")[1]
}

// TestTableIsFresh runs the generator on the committed files: what it derives, the day without a year and what stands between two days, is covered here
// and by Intl.
func TestTableIsFresh(t *testing.T) {
	if got := string(runNode(t, nil, "gen/cldr.mjs", cldrFiles)); got != cldrJSON {
		t.Error("cldr.json is not what gen/cldr.mjs makes of testdata/cldr; run the generator again")
	}
}

// TestTableKeepsNoRareSpace reads the table as it is used.
func TestTableKeepsNoRareSpace(t *testing.T) {
	for tag, l := range table().Languages {
		used, err := json.Marshal(l)
		if err != nil {
			t.Fatal(err)
		}
		if strings.ContainsAny(string(used), "\u202f\u2009") {
			t.Errorf("%s: a narrow or thin space is left, for which fonts may have no glyph", tag)
		}
	}
}

// oneInVietnamese are the sample numbers for which go-i18n 2.7.0 chooses otherwise than CLDR 48.2. Its rules are those of a later CLDR, where
// Vietnamese has the category one (CLDR-14273, github.com/unicode-org/cldr/pull/1774). Our messages have other alone; see forGoI18n.
var oneInVietnamese = []string{"0", "1"}

// TestPluralRules puts CLDR's sample numbers to go-i18n, which chooses the form of our messages.
func TestPluralRules(t *testing.T) {
	for tag, l := range table().Languages {
		rules := at(t, "cldr-core/supplemental/plurals.json", "supplemental", "plurals-type-cardinal", base(tag)).(map[string]any)
		var categories []string
		for key, rule := range rules {
			category := strings.TrimPrefix(key, "pluralRule-count-")
			categories = append(categories, category)
			for _, sample := range integerSamples(rule.(string)) {
				if got := chosenForm(t, tag, sample); tag == "vi" && slices.Contains(oneInVietnamese, sample) {
					if got == category {
						t.Errorf("vi: %s is no longer different; take it out of oneInVietnamese", sample)
					}
				} else if got != category {
					t.Errorf("%s: %s is %q, but CLDR says %q", tag, sample, got, category)
				}
			}
		}
		if slices.Sort(categories); !slices.Equal(categories, slices.Sorted(slices.Values(l.Plurals))) {
			t.Errorf("%s: the table has the categories %v, but CLDR has %v", tag, l.Plurals, categories)
		}
	}
}

var (
	integers = regexp.MustCompile(`@integer ([^@]*)`)
	span     = regexp.MustCompile(`^(\d+)~(\d+)$`)
)

// integerSamples reads "@integer 0, 2~16, 100, 1c6, …": UTS 35, part 3, "Samples". 1c6 is a million in the compact form.
func integerSamples(rule string) []string {
	m := integers.FindStringSubmatch(rule)
	if m == nil {
		return nil
	}
	var samples []string
	for _, s := range strings.Split(strings.TrimSpace(m[1]), ", ") {
		if s == "…" {
			continue
		}
		samples = append(samples, spread(s)...)
	}
	return samples
}

func spread(sample string) []string {
	m := span.FindStringSubmatch(sample)
	if m == nil {
		return []string{strings.Replace(sample, "c", "e", 1)}
	}
	first, _ := strconv.Atoi(m[1])
	last, _ := strconv.Atoi(m[2])
	var numbers []string
	for n := first; n <= last; n++ {
		numbers = append(numbers, strconv.Itoa(n))
	}
	return numbers
}

// chosenForm is the plural category that a bundle with all categories chooses.
func chosenForm(t *testing.T, tag, number string) string {
	forms := map[string]string{}
	for _, category := range pluralCategories {
		forms[category] = category
	}
	chooser, err := newChooser(tag, map[string]message{"form": {forms: forms}})
	if err != nil {
		t.Fatal(err)
	}
	form, spoken, err := chooser.LocalizeWithTag(&i18n.LocalizeConfig{MessageID: "form", PluralCount: number, TemplateParser: strictly})
	if err != nil {
		t.Fatalf("%s: %s: %v", tag, number, err)
	}
	if spoken != language.MustParse(tag) {
		t.Errorf("%s: go-i18n answered in %v", tag, spoken)
	}
	return form
}

func TestTagsAreInTheTable(t *testing.T) {
	known := slices.Sorted(maps.Keys(table().Languages))
	for _, tag := range Tags() {
		if !slices.Contains(known, tag) {
			t.Errorf("bundles/%s.yaml has no entry in cldr.json; add the language to gen/cldr.mjs", tag)
		}
	}
}
