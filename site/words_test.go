package site_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
)

const (
	highestGrade  = 6.0
	mostWords     = 180 // a face of paper
	mostPageWords = 200 // a page can scroll, but nobody scrolls far
)

// grade is the Flesch-Kincaid grade of a text. Source of the formula, of what a sentence is, and that those of one or two words are not counted:
// textstat/textstat, textstat/backend/metrics/_flesch_kincaid_grade.py and counts/_count_sentences.py, as read on 2026-11-25.
func grade(text string) float64 {
	words := wordsIn(text)
	sentences, syllables := 0, 0
	for _, s := range sentence.FindAllString(text, -1) {
		if len(wordsIn(s)) > 2 {
			sentences++
		}
	}
	for _, w := range words {
		syllables += syllablesOf(w)
	}
	perSentence := float64(len(words)) / float64(max(1, sentences))
	perWord := float64(syllables) / float64(len(words))
	return 0.39*perSentence + 11.8*perWord - 15.59
}

var (
	sentence = regexp.MustCompile(`[^.!?]+[.!?]*`)
	letters  = regexp.MustCompile(`[a-z']+`)
	vowels   = regexp.MustCompile(`[aeiouy]+`)
)

// wordsIn are the words of a text in small letters. Numbers, which are a reader's own data, are left out.
func wordsIn(text string) []string {
	return letters.FindAllString(strings.ToLower(strings.ReplaceAll(text, "’", "'")), -1)
}

// unlike are words of our texts, and of the library's, in which the vowel groups are not the syllables.
var unlike = map[string]int{
	"area": 3, "area's": 3, "we're": 1, "people": 2, "science": 2, "someone": 2, "somebody": 3, "clothes": 1, "furniture": 3, "medicines": 3, "notice": 2,
	"replace": 2, "inside": 2, "outside": 2, "home": 1, "homes": 1, "ages": 2, "little": 2, "puzzles": 2, "pieces": 2, "faces": 2, "places": 2, "changes": 2,
	"languages": 3, "doctor": 2, "being": 2, "easy": 2, "leave": 1, "leaves": 1, "leashes": 2, "leased": 1, "voice": 1, "expert": 2, "poison": 2,
	"certified": 3, "family": 3, "our": 1, "we": 1, "house": 1, "houses": 2, "used": 1, "scared": 1, "sunglasses": 3, "anna": 2, "anna's": 2, "favorite": 3, "explained": 2,
	"trial": 2, "changed": 1, "called": 1, "closed": 1, "cleaned": 1, "planned": 1, "checked": 1, "touched": 1, "named": 1, "something": 2, "anyone": 3, "everyone": 3,
}

// syllablesOf counts vowel groups, and not the silent e at an end.
func syllablesOf(word string) int {
	word = strings.Trim(word, "'")
	if n, known := unlike[word]; known {
		return n
	}
	n := len(vowels.FindAllString(word, -1))
	if strings.HasSuffix(word, "e") && !strings.HasSuffix(word, "le") && n > 1 {
		n--
	}
	return max(1, n)
}

// Texts and grades of the library's own tests: tests/backend/resources.py (SHORT_TEXT, EASY_TEXT) and metrics/test_flesch_kincaid_grade.py. It takes
// "500" and "50" for words of no syllable, and we leave them out, so the longer one may differ a little.
func TestGradeAgainstTextstat(t *testing.T) {
	const short = "Cool dogs wear da sunglasses."
	if got := grade(short); math.Abs(got-2.88) > 0.0005 {
		t.Errorf("the short text has grade %.3f, want 2.88", got)
	}
	const easy = "Anna and her family love doing puzzles. Anna is best at little puzzles. Anna and her brother work on medium size puzzles together. " +
		"Anna's Brother likes puzzles with cars in them. When the whole family does a puzzle, they do really big puzzles. It can take them a week to finish a really big puzzle. " +
		"Last year they did a puzzle with 500 pieces! Anna tries to finish one small puzzle a day by her. Her puzzles have about 50 pieces. " +
		"They all glue their favorite puzzles together and frame them. The puzzles look so nice on the wall."
	if got := grade(easy); math.Abs(got-4.13) > 0.5 {
		t.Errorf("the easy text has grade %.3f, want 4.13 or near it", got)
	}
}

var openEnglish = sync.OnceValues(func() (*locales.Speaker, error) { return locales.Open("en", nil) })

// english says a message with the values that it holds left out, because they are the reader's own.
func english(t *testing.T, m notices.Message) string {
	t.Helper()
	speaker, err := openEnglish()
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]locales.Value{}
	for _, v := range m.Values {
		values[notices.KindOf(v)] = locales.Plain("12")
	}
	text, err := speaker.Text(m.ID, values)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// running is the head and the sentences of a text. What stands in a label is no sentence.
func running(t *testing.T, c notices.Content) string {
	var all []string
	if !strings.HasPrefix(c.Head.ID, "area.") { // a sign has a place for a head
		all = append(all, closed(english(t, c.Head)))
	}
	for _, b := range c.Blocks {
		for _, m := range b.Lines {
			all = append(all, closed(english(t, m)))
		}
	}
	return strings.Join(all, " ")
}

// closed is a line with a full stop, so that two lines are two sentences.
func closed(line string) string {
	if strings.ContainsAny(line[len(line)-1:], ".!?") {
		return line
	}
	return line + "."
}

// allWords is what there is to read on a face apart from names, days and the foot: the legend, the head, labels, blocks, lines to fill in.
func allWords(t *testing.T, c notices.Content) []string {
	var all []string
	add := func(m notices.Message) {
		if m.ID != "" {
			all = append(all, wordsIn(english(t, m))...)
		}
	}
	add(c.Head)
	for _, m := range slices.Concat(c.Legend, c.Blanks) {
		add(m)
	}
	for _, f := range c.Facts {
		for _, v := range append([]notices.Value{f.Label}, f.Cells...) {
			if m, ok := v.(notices.Message); ok {
				add(m)
			}
		}
	}
	for _, b := range c.Blocks {
		add(b.Head)
		for _, m := range b.Lines {
			add(m)
		}
	}
	return all
}

// contents are one of each kind of sheet and page of both demo jobs, with and without a clearance test, and of a job in each state to its end, by name.
func contents(t *testing.T) map[string]notices.Content {
	all := map[string]notices.Content{}
	jobs := endings(t)
	for _, code := range []string{"alder-14", "quarry-231"} {
		jobs[code] = demoJob(t, code)
	}
	for code, job := range jobs {
		plan := notices.Decide(job)
		for _, sheet := range plan.Sheets {
			all[code+" "+sheet.ID] = sheet.Faces[0].Content
		}
		for _, p := range plan.Pages {
			all[code+" page "+string(p.Kind)] = p.Content
		}
	}
	return all
}

func TestEnglishIsEasyAndShort(t *testing.T) {
	for name, content := range contents(t) {
		if got := grade(running(t, content)); got > highestGrade {
			t.Errorf("%s has grade %.1f, more than %.1f: %s", name, got, highestGrade, running(t, content))
		}
		most := mostWords
		if strings.Contains(name, " page ") {
			most = mostPageWords
		}
		if n := len(allWords(t, content)); n > most {
			t.Errorf("%s has %d words, more than %d", name, n, most)
		}
	}
}

// An average hides a hard sentence. About 12 words a sentence is the aim, 18 is the most; and one sentence alone may be harder than the whole, because
// a single long word such as "conditioners" weighs much in it.
func TestNoSentenceIsLongOrHard(t *testing.T) {
	const mostInSentence, highestOfSentence = 18, 9.0
	for name, content := range contents(t) {
		for _, s := range sentence.FindAllString(running(t, content), -1) {
			n := len(wordsIn(s))
			if n > mostInSentence {
				t.Errorf("%s has a sentence of %d words: %s", name, n, strings.TrimSpace(s))
			}
			if n > 2 && grade(s) > highestOfSentence {
				t.Errorf("%s has a sentence of grade %.1f: %s", name, grade(s), strings.TrimSpace(s))
			}
		}
	}
}

// banned words promise what nobody can, or point to a side that is another one from the other side of the street. The excused texts use the word
// in another sense.
var banned = []struct {
	pattern string
	excused []string
}{
	{`\bsafe(ly|ty|r)?\b`, nil},
	{`\blead[- ]free\b`, nil},
	{`\bno risk\b|\brisk[- ]free\b|\bharmless\b`, nil},
	{`\bleft\b`, nil},
	{`\bright\b`, []string{"page.differ"}}, // "what is right"
	{`\btest(s|ed|ing|er)?\b`, []string{"letter.after_test", "return.tested", "again.tested"}},
	{`\ball clear\b|\bgo back\b|\bcome back\b|\breturn at\b`, []string{"return.head"}},
}

// promises are the words for safe, free of lead and no risk in the other languages (from dictionaries).
var promises = map[string]*regexp.Regexp{
	"ar":      regexp.MustCompile(`آمن|أمان|خال[يٍ]? من|بلا خطر|لا خطر`),
	"es":      regexp.MustCompile(`(?i)\bsegur[oa]s?\b|\bsin (plomo|riesgo|peligro)`),
	"ru":      regexp.MustCompile(`(?i)безопас|без свинца|без риска|безвредн|неопасн`),
	"vi":      regexp.MustCompile(`(?i)an toàn|không (có|còn) chì|không nguy`),
	"zh-Hans": regexp.MustCompile(`安全|无铅|不含铅|没有危险|没有风险`),
}

func TestNoLanguagePromises(t *testing.T) {
	for _, l := range locales.Tags() {
		if l == "en" {
			continue
		}
		if promises[l] == nil {
			t.Errorf("what safe is in %s is missing here", l)
			continue
		}
		for id, text := range raw(t, l) {
			if found := promises[l].FindString(text); found != "" {
				t.Errorf("%s in %s promises %q: %s", id, l, found, text)
			}
		}
	}
}

// raw is every text of a language with its placeholders filled by a name, by id.
func raw(t *testing.T, language string) map[string]string {
	t.Helper()
	speaker, err := locales.Open(language, nil)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, id := range speaker.IDs() {
		values := map[string]locales.Value{}
		for _, name := range speaker.Placeholders(id) {
			values[name] = locales.Plain("NAME")
		}
		text, err := speaker.HTML(id, values)
		if err != nil {
			t.Fatal(err)
		}
		all[id] = string(text)
	}
	return all
}

func TestBannedWords(t *testing.T) {
	texts := raw(t, "en")
	for _, b := range banned {
		pattern := regexp.MustCompile(`(?i)` + b.pattern)
		for id, text := range texts {
			if pattern.MatchString(text) && !slices.Contains(b.excused, id) {
				t.Errorf("%s has a banned word, like %s: %s", id, b.pattern, text)
			}
		}
		for _, id := range b.excused {
			if !pattern.MatchString(texts[id]) {
				t.Errorf("%s no longer has a word like %s; take its excuse away", id, b.pattern)
			}
		}
	}
}

// timeOrShare is an hour, a date or a share in digits. Those are values and stand in cells; a share of danger is nobody's to give.
var timeOrShare = regexp.MustCompile(`(?i)%|\d{1,2}[:.h]\d{2}|\d\s*([ap]\.?\s?m\b|giờ|horas?\b|hours?\b|o'clock|час|点|时|ساعة)|\d{1,4}[-/]\d{1,2}([-/]\d{1,4})?`)

func TestNoTextHoldsATimeOrAShare(t *testing.T) {
	for _, l := range locales.Tags() {
		for id, text := range raw(t, l) {
			if found := timeOrShare.FindString(text); found != "" {
				t.Errorf("%s in %s holds %q: %s", id, l, found, text)
			}
		}
	}
	for _, text := range []string{"until 15:30", "at 3 PM", "by 3 p.m.", "a las 3 horas", "lúc 3 giờ", "в 3 часа", "到3点", "3 ساعة", "5 %", "on 5/8", "15.30"} {
		if !timeOrShare.MatchString(text) {
			t.Errorf("%q passes for a text without a time", text)
		}
	}
}
