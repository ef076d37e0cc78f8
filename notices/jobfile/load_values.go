package jobfile

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

const longestName = 120

// name is a proper name in any script, as typed.
func (r *reader) name(v *strict.Node) string {
	if n := utf8.RuneCountInString(v.Text); n > longestName {
		r.wrong(v, fmt.Sprintf("is %d characters long", n), fmt.Sprintf("shorten it to %d, so that it fits on the sheets", longestName))
		return ""
	}
	return v.Text
}

func (r *reader) address(v *strict.Node) string {
	address := r.name(v)
	if address != "" && (notices.Job{Address: address}).HouseNumber() == "" {
		r.wrong(v, "does not start with a house number", "put the number first, such as 14 Alder Court, because the neighbours' sheets say No. 14")
	}
	return address
}

var (
	languageName = regexp.MustCompile(`^\p{Lu}[\p{L} '()-]{2,}$`)
	idShape      = regexp.MustCompile(idPattern)
	codeShape    = regexp.MustCompile(codePattern)

	// Walk lists go through spreadsheets, which read these as days (common practice, no source).
	dayShape = regexp.MustCompile(`^(jan|january|feb|february|mar|march|apr|april|may|jun|june|jul|july|aug|august|sep|sept|september|oct|october|nov|november|dec|december)[-_]?[0-9]{1,4}$`)

	// Windows opens devices under these names (Microsoft, "Naming Files, Paths, and Namespaces"; from memory).
	deviceNames = regexp.MustCompile(`^(con|prn|aux|nul|com[0-9]|lpt[0-9])$`)
)

func (r *reader) id(v *strict.Node) string {
	switch {
	case !idShape.MatchString(v.Text):
		r.wrong(v, "cannot be an id", "use up to 24 small letters a-z, digits, - and _, a letter first"+slugAdvice(v.Text, idShape))
	case dayShape.MatchString(v.Text):
		r.wrong(v, "cannot be an id, because a spreadsheet makes a day of it", "put a letter or a word before it, such as h-"+v.Text)
	}
	return v.Text
}

func (r *reader) code(v *strict.Node) string {
	switch {
	case !codeShape.MatchString(v.Text):
		r.wrong(v, "cannot be a code", "use up to 40 small letters a-z, digits and hyphens, a letter or digit first"+slugAdvice(v.Text, codeShape))
	case v.Text == "fonts":
		r.wrong(v, "cannot be a code, because the fonts of all sheets lie in a folder of that name", "choose another, such as fonts-14")
	case deviceNames.MatchString(v.Text):
		r.wrong(v, "cannot be a code, because Windows cannot have a folder of that name", "add the house number, such as "+v.Text+"-14")
	}
	return v.Text
}

var slugBreaks = regexp.MustCompile(`[^a-z0-9]+`)

// slugAdvice proposes the nearest spelling of a code or id that fits, if there is one.
func slugAdvice(text string, shape *regexp.Regexp) string {
	slug := strings.Trim(slugBreaks.ReplaceAllString(strings.ToLower(text), "-"), "-")
	if deviceNames.MatchString(slug) || slug == "fonts" {
		slug += "-14"
	}
	if shape.MatchString(slug) && !dayShape.MatchString(slug) {
		return ", such as " + slug
	}
	return ""
}

func (r *reader) phone(v *strict.Node) notices.Phone {
	phone, err := notices.ParsePhone(v.Text)
	switch {
	case err != nil:
		r.wrong(v, "cannot be dialled", err.Error())
	case phone == "911":
		r.wrong(v, "is for emergencies", "write a number that your own people answer")
	}
	return phone
}

func (r *reader) language(v *strict.Node) (notices.Language, bool) {
	if tag, known := notices.LanguageNamed(v.Text); known {
		return tag, true
	}
	r.wrong(v, "is not a language that doorleaf has texts for", suggestion(v.Text, "language", languageWords()))
	return "", false
}

func (r *reader) languages(v *strict.Node) []notices.Language {
	var languages []notices.Language
	for _, item := range v.Items {
		if l, ok := r.language(item); ok && !slices.Contains(languages, l) {
			languages = append(languages, l)
		}
	}
	return languages
}

// readerLanguages are those of people who get paper, and the names of those that there is no text of ours in. Pages exist in the programme's languages only.
func (r *reader) readerLanguages(v *strict.Node) (ours []notices.Language, others []string) {
	for _, item := range v.Items {
		l, known := notices.LanguageNamed(item.Text)
		switch {
		case known && !slices.Contains(ours, l):
			ours = append(ours, l)
		case !known && r.isLanguage(item):
			others = append(others, item.Text)
		}
		if pages := r.programme.Languages; known && len(pages) > 0 && !slices.Contains(pages, l) {
			r.wrong(item, "is not among the languages of your pages", fmt.Sprintf("add %s to languages in %s, so that its pages exist", l, ProgrammeFile))
		}
	}
	return ours, others
}

// spoken is the English name of a language that somebody is rung in.
func (r *reader) spoken(v *strict.Node) string {
	for _, l := range notices.Languages {
		if tag, known := notices.LanguageNamed(v.Text); known && tag == l.Tag {
			return l.Name
		}
	}
	if !r.isLanguage(v) {
		return ""
	}
	return v.Text
}

// isLanguage takes any name with a capital, such as Somali, for that of a language; but not a slip of one letter in a language of ours, nor a tag.
func (r *reader) isLanguage(v *strict.Node) bool {
	slip := slices.ContainsFunc(languageWords(), func(ours string) bool { return distance(plain(v.Text), plain(ours)) == 1 })
	if slip || !languageName.MatchString(v.Text) {
		r.wrong(v, "is not a language that doorleaf has texts for", suggestion(v.Text, "language", languageWords())+"; write another one by its English name, such as Somali")
		return false
	}
	return true
}

func (r *reader) pageLanguages(v *strict.Node) []notices.Language {
	languages := r.languages(v)
	if !slices.Contains(languages, notices.English) {
		r.problem(v, "English is missing from languages, and it stands behind every sheet", "add en to the list")
	}
	return languages
}

// timeZone takes names of the IANA database. "Local" and the empty name, which the library knows besides, mean another zone on every machine.
func (r *reader) timeZone(v *strict.Node) string {
	if _, err := time.LoadLocation(v.Text); err != nil || !strings.Contains(v.Text, "/") {
		r.wrong(v, "is not a time zone", suggestion(v.Text, "zone", homeZones))
		return ""
	}
	return v.Text
}

var (
	hostPattern = regexp.MustCompile(`^([a-z0-9]([a-z0-9-]*[a-z0-9])?\.)+[a-z0-9][a-z0-9-]*[a-z0-9]$`)
	basePath    = regexp.MustCompile(`^(/[A-Z0-9]+)*$`)
)

// base is the address as https://host/PATH, without a slash at the end.
func (r *reader) base(v *strict.Node) string {
	u, err := url.Parse(strings.TrimSuffix(v.Text, "/"))
	switch {
	case err != nil || u.Host == "" && u.Scheme == "":
		r.wrong(v, "is not a web address", "write it with https:// in front, such as https://example.org/L")
		return ""
	case u.Scheme != "https":
		r.wrong(v, "does not start with https://", "use an address of a site that offers https; most hosts do at no cost")
		return ""
	}
	host := strings.ToLower(u.Host)
	switch {
	case u.User != nil || u.RawQuery != "" || u.ForceQuery || strings.Contains(v.Text, "#"):
		r.wrong(v, "holds more than a site and a folder", "take out everything from ? or # on, and anything before an @")
	case u.Port() != "":
		r.wrong(v, "names a port", "take out the : and the number behind it")
	case !hostPattern.MatchString(host):
		r.wrong(v, "has no full site name", "write the site as browsers show it, such as example.org; letters a-z, digits, hyphens and dots")
	case !basePath.MatchString(u.EscapedPath()):
		r.wrong(v, "has a folder that is not in capitals and digits", "write the folder as "+capitalPath(u.Path)+"; capitals keep the codes small")
	}
	return "https://" + host + u.EscapedPath()
}

var notCapital = regexp.MustCompile(`[^A-Z0-9/]+`)

func capitalPath(path string) string {
	path = strings.TrimRight(notCapital.ReplaceAllString(strings.ToUpper(path), ""), "/")
	if !basePath.MatchString(path) || path == "" {
		return "/L"
	}
	return path
}

var amountPattern = regexp.MustCompile(`^([0-9]{1,6}(?:\.[0-9]+)?) *(?:sq\.? *ft\.?|ft2|ft²|square feet)$`)

// amount is "60 sq ft" or "60 ft2" in square feet; 0 for unknown.
func (r *reader) amount(v *strict.Node) float64 {
	if v.Text == string(notices.Unknown) {
		return 0
	}
	if parts := amountPattern.FindStringSubmatch(v.Text); parts != nil {
		if feet, _ := strconv.ParseFloat(parts[1], 64); feet > 0 {
			return feet
		}
	}
	r.wrong(v, "is not an amount", "write square feet, such as 60 sq ft, or unknown")
	return 0
}

var gapPattern = regexp.MustCompile(`^([0-9]{1,4}(?:\.[0-9]+)?) *(ft|feet|m)$`)

const feetInMetre = 1 / 0.3048 // the international foot of 1959, by definition

// gap is a distance in feet or metres.
func (r *reader) gap(v *strict.Node) (notices.Feet, bool) {
	parts := gapPattern.FindStringSubmatch(v.Text)
	if parts == nil {
		r.wrong(v, "is not a distance", "write feet or metres, such as 14 ft or 4 m; leave gap out and write near: not_sure when nobody measured")
		return 0, false
	}
	length, _ := strconv.ParseFloat(parts[1], 64)
	if parts[2] == "m" {
		length *= feetInMetre
	}
	return notices.Feet(length), true
}

func number(v *strict.Node) int {
	n, _ := strconv.Atoi(v.Text) // "unknown" is 0
	return n
}

func listOf[W ~string](v *strict.Node) []W {
	var words []W
	for _, item := range v.Items {
		words = append(words, W(item.Text))
	}
	return words
}
