package jobfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/doorleaf/notices/strict"
)

// readObject reads the keys of an object by its rows. What a row reads has the right shape already.
func readObject[T any](r *reader, object *strict.Node, rows []row[T], into *T) {
	r.unknownKeys(object, fieldsOf(rows))
	for _, row := range rows {
		if v := r.value(object, row.Field); v != nil {
			row.read(r, v, into)
		}
	}
}

// readObjects reads a list of objects, each starting from blank. An entry of another shape stays blank, so that positions agree
// with those in the file.
func readObjects[T any](r *reader, list *strict.Node, rows []row[T], blank T) []T {
	all := make([]T, len(list.Items))
	for i, item := range list.Items {
		all[i] = blank
		if item.Kind == strict.Object {
			readObject(r, item, rows, &all[i])
		}
	}
	return all
}

func (r *reader) unknownKeys(object *strict.Node, fields []Field) {
	var known []string
	for _, f := range fields {
		known = append(known, f.Key)
	}
	for _, e := range object.Entries {
		if !slices.Contains(known, e.Key.Text) {
			r.wrong(e.Key, "is not a key that is known here", suggestion(e.Key.Text, "key", known))
		}
	}
}

// value is what an object holds for a field; nil when it is left out or of a wrong shape, which is reported.
func (r *reader) value(object *strict.Node, f Field) *strict.Node {
	v := object.Get(f.Key)
	switch {
	case v == nil && f.required:
		r.missing(object, f)
	case v == nil || v.Kind == strict.Refused:
	case v.Kind == strict.Empty && f.required:
		r.missing(v, f)
	case v.Kind != strict.Empty:
		return r.shaped(v, f)
	}
	return nil
}

func (r *reader) missing(at *strict.Node, f Field) {
	place := *at
	place.Text = ""
	r.problem(&place, f.Key+" is missing: "+f.Question, "write it "+like(f))
}

func (r *reader) shaped(v *strict.Node, f Field) *strict.Node {
	switch f.Holds {
	case HoldsOneLine:
		return r.oneOf(v, f)
	case HoldsNumber:
		return r.numbered(v, f)
	case HoldsObject:
		return r.kind(v, f, strict.Object)
	case HoldsObjects:
		return r.objects(v, f)
	case HoldsLists:
		return r.lists(v, f)
	case HoldsListOrUnknown:
		if v.Text == "unknown" {
			return v
		}
	}
	return r.list(v, f)
}

// kind lets through what has the wanted kind.
func (r *reader) kind(v *strict.Node, f Field, want strict.Kind) *strict.Node {
	if v.Kind == want {
		return v
	}
	if v.Kind != strict.Refused {
		r.problem(v, fmt.Sprintf("%s, and this is %s", expects(f, want), kindNames[v.Kind]), "write it "+like(f))
	}
	return nil
}

// expects tells what a field holds, or one entry of its list.
func expects(f Field, want strict.Kind) string {
	switch {
	case want == strict.Text && (f.Holds == HoldsList || f.Holds == HoldsListOrUnknown):
		return "each entry of " + f.Key + " is a text"
	case want == strict.Object && f.Holds == HoldsObjects:
		return "each entry of " + f.Key + " has keys of its own"
	}
	return fmt.Sprintf("%s holds %s", f.Key, f.Holds)
}

var kindNames = map[strict.Kind]string{
	strict.Empty: "nothing", strict.Text: "a text", strict.List: "a list", strict.Object: "a group of keys",
}

// oneOf lets through a text, when the field has a closed list of words only one of those.
func (r *reader) oneOf(v *strict.Node, f Field) *strict.Node {
	if r.kind(v, f, strict.Text) == nil {
		return nil
	}
	if f.words != nil && f.pattern == "" && !slices.Contains(f.words, v.Text) {
		r.wrong(v, "is not "+article(f.noun), orYesNo(v.Text, f))
		return nil
	}
	return v
}

// orYesNo proposes a word. What other files write for yes and no is no slip of the nearest word: on is yes in YAML 1.1, and looks like no.
func orYesNo(text string, f Field) string {
	if slices.Contains(f.words, "yes") {
		switch strings.ToLower(text) {
		case "on", "y", "true", "ja", "si", "sí":
			return "write yes"
		case "off", "n", "false":
			return "write no"
		}
	}
	same := func(word string) bool { return strings.EqualFold(word, text) }
	if utf8.RuneCountInString(text) <= 2 && !slices.ContainsFunc(f.words, same) {
		return "choose one that is known " + choices(f.noun, f.words)
	}
	return suggestion(text, f.noun, f.words)
}

func (r *reader) numbered(v *strict.Node, f Field) *strict.Node {
	if r.kind(v, f, strict.Text) == nil {
		return nil
	}
	n, err := strconv.Atoi(v.Text)
	digits := strings.Trim(v.Text, "0123456789") == ""
	if slices.Contains(f.words, v.Text) || err == nil && digits && f.min_ <= n && n <= f.max_ {
		return v
	}
	mend := fmt.Sprintf("write a whole number from %d to %d", f.min_, f.max_)
	if len(f.words) > 0 {
		mend += ", or " + strings.Join(f.words, " or ")
	}
	r.wrong(v, "cannot stand for "+f.Key, mend)
	return nil
}

func (r *reader) objects(v *strict.Node, f Field) *strict.Node {
	if r.kind(v, f, strict.List) == nil || !r.long(v, f) {
		return nil
	}
	for _, item := range v.Items {
		r.kind(item, f, strict.Object)
	}
	return v
}

// list lets through the entries of a list that are what they should be, each once.
func (r *reader) list(v *strict.Node, f Field) *strict.Node {
	if r.kind(v, f, strict.List) == nil || !r.long(v, f) {
		return nil
	}
	good := *v
	good.Items = nil
	seen := map[string]bool{}
	for _, item := range v.Items {
		switch {
		case r.oneOf(item, f) == nil:
		case seen[item.Text]:
			r.wrong(item, "is listed twice", "keep one of the two")
		default:
			good.Items = append(good.Items, item)
		}
		seen[item.Text] = true
	}
	return &good
}

// lists lets through a list of lists, each of which is what it should be.
func (r *reader) lists(v *strict.Node, f Field) *strict.Node {
	if r.kind(v, f, strict.List) == nil || !r.long(v, f) {
		return nil
	}
	good := *v
	good.Items = nil
	for _, item := range v.Items {
		inner := f
		inner.Holds, inner.min_ = HoldsList, 1
		if list := r.list(item, inner); list != nil {
			good.Items = append(good.Items, list)
		}
	}
	return &good
}

func (r *reader) long(v *strict.Node, f Field) bool {
	if len(v.Items) >= f.min_ {
		return true
	}
	r.problem(v, f.Key+" is an empty list: "+f.Question, "write it "+like(f))
	return false
}

// like shows how a field is written.
func like(f Field) string {
	if f.example != "" {
		return "like " + quotedExample(f)
	}
	var keys []string
	for _, inner := range f.Fields {
		if inner.required {
			keys = append(keys, inner.Key)
		}
	}
	return fmt.Sprintf("as entries under %s:, each starting with a hyphen and having at least %s", f.Key, strings.Join(keys, ", "))
}

func quotedExample(f Field) string { return "`" + f.Key + ": " + f.example + "`" }

func article(noun string) string {
	if strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}
