package jobfile

import (
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/strict"
)

// A Field is one key of a file, as its writer is asked for it. The same tables drive reading, the messages about what is missing or
// unknown, the schema that editors complete from, and the printed form of the walk round the house, all in the order of the rows.
type Field struct {
	Key        string
	Holds      Holds
	required   bool
	Question   string
	example    string   // as it is typed after the key; empty when Fields tell more
	noun       string   // what one of the Words is called
	words      []string // to choose from
	pattern    string   // what else may stand there, as a regular expression; with Words and no Pattern only they may
	min_, max_ int      // of HoldsNumber; Min also of the entries of a list
	Fields     []Field  // of HoldsObject and HoldsObjects
	Later      bool     // asked after the work: no question for the walk round the house
}

// Holds is the shape of a value.
type Holds string

const (
	HoldsOneLine       Holds = "one line of text"
	HoldsNumber        Holds = "a whole number"
	HoldsList          Holds = "a list in brackets"
	HoldsListOrUnknown Holds = "a list in brackets, or the word unknown"
	HoldsLists         Holds = "lists in brackets, inside brackets"
	HoldsObject        Holds = "keys of its own"
	HoldsObjects       Holds = "a list of entries with keys of their own"
)

// A row is a Field of a T and the way its value gets there. A new key is one row.
type row[T any] struct {
	Field
	read func(r *reader, v *strict.Node, into *T)
}

func fieldsOf[T any](rows []row[T]) []Field {
	var fields []Field
	for _, row := range rows {
		fields = append(fields, row.Field)
	}
	return fields
}

func wordsOf[W ~string](words []W, more ...W) []string {
	var out []string
	for _, w := range append(append([]W(nil), words...), more...) {
		out = append(out, string(w))
	}
	return out
}

// languageWords are all that LanguageNamed knows: first the tags, then the names.
func languageWords() []string {
	var tags, names []string
	for _, l := range notices.Languages {
		tags = append(tags, string(l.Tag))
		if short, _, more := strings.Cut(string(l.Tag), "-"); more {
			tags = append(tags, short)
		}
		names = append(names, l.Name)
	}
	return append(tags, names...)
}

// languagePattern fits the languages in any mix of capitals, which a schema can only say letter by letter.
func languagePattern() string {
	var either strings.Builder
	for _, r := range strings.Join(languageWords(), "|") {
		lower, upper := strings.ToLower(string(r)), strings.ToUpper(string(r))
		if lower == upper {
			either.WriteRune(r)
			continue
		}
		either.WriteString("[" + lower + upper + "]")
	}
	return "^(" + either.String() + ")$"
}

const (
	anyLanguage = `^\p{L}[\p{L} '()-]*$` // by its English name, with a text of ours or without
	datePattern = `^([A-Za-z]+ +)?[0-9]{4}-[0-9]{2}-[0-9]{2}( +[A-Za-z]+)?$`
	timePattern = `^([01][0-9]|2[0-3]):[0-5][0-9]$`
	idPattern   = `^[a-z][a-z0-9_-]{0,23}$`
	codePattern = `^[a-z0-9][a-z0-9-]{0,39}$`
)

var answers = wordsOf([]notices.Answer{notices.Yes, notices.No, notices.Unknown})

// rooms are those that serve a need.
func rooms(need notices.Need) []string {
	var names []string
	for _, r := range notices.Rooms {
		if r.Meets == need {
			names = append(names, string(r.Name))
		}
	}
	return names
}
