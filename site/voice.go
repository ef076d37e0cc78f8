package site

import (
	"fmt"
	"html/template"
	"strings"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// A voice says messages and values in one language. It keeps the first thing that went wrong, so that a layout is filled in without an error
// at every word; whoever made it looks at err in the end.
type voice struct {
	*locales.Speaker
	own  *locales.Speaker
	page bool     // on a page a phone is a link and a day has its year
	cast fit.Cast // on paper
	err  error
}

func (kit Kit) voice(l notices.Language, page bool) *voice {
	return &voice{Speaker: kit.speakers[l], own: kit.own, page: page}
}

// plain is a message for a headline or a label.
func (v *voice) plain(m notices.Message) string {
	text, err := v.Text(m.ID, v.values(m.Values))
	return kept(v, text, err)
}

// html is a message for running text.
func (v *voice) html(m notices.Message) template.HTML {
	text, err := v.HTML(m.ID, v.values(m.Values))
	return kept(v, text, err)
}

func (v *voice) htmls(messages []notices.Message) []template.HTML {
	var all []template.HTML
	for _, m := range messages {
		all = append(all, v.html(m))
	}
	return all
}

func kept[T any](v *voice, result T, err error) T {
	if v.err == nil {
		v.err = err
	}
	return result
}

// values are what a sentence can hold, under the names of their kinds.
func (v *voice) values(values []notices.Value) map[string]locales.Value {
	all := map[string]locales.Value{}
	for _, value := range values {
		all[notices.KindOf(value)] = v.value(value)
	}
	return all
}

func (v *voice) value(value notices.Value) locales.Value {
	switch value := value.(type) {
	case notices.Name:
		return locales.Plain(string(value))
	case notices.Address:
		return locales.Plain(string(value))
	case notices.HouseNumber:
		return locales.Plain(string(value))
	case notices.LanguageName:
		return locales.Plain(v.own.NameOf(string(value)))
	case notices.Number:
		return locales.Count(int(value))
	case notices.Phone:
		if v.page {
			return locales.Link(value.Written(), value.Dial())
		}
		return locales.Plain(value.Written())
	case fmt.Stringer: // distances and days in the coordinator's English
		return locales.Plain(value.String())
	}
	return kept(v, locales.Value{}, fmt.Errorf("a sentence cannot hold a value of kind %s", notices.KindOf(value)))
}

// cells are a value that stands alone in a table: usually one line, and one for each span of days.
func (v *voice) cells(value notices.Value) []template.HTML {
	switch value := value.(type) {
	case notices.Message:
		return []template.HTML{v.html(value)}
	case notices.Days:
		return v.days(value)
	case notices.Pair:
		label, cells := locales.Alone(string(v.html(value.Label))), joined(v.cells(value.Value))
		return []template.HTML{template.HTML(label + templates.Gap(label, cells) + cells)}
	case notices.Time:
		return strong(v.Time(notices.Clock(value).Hour(), notices.Clock(value).Minute()))
	case notices.Moment:
		return v.moment(value)
	case notices.Words:
		return escaped(v.words(value))
	case notices.Places:
		var lines []template.HTML
		for _, place := range v.places(value) {
			lines = append(lines, escaped(place)...)
		}
		return lines
	case notices.Name:
		return bdi(string(value))
	case notices.Address:
		return bdi(string(value))
	case notices.Reading:
		return []template.HTML{template.HTML(`<bdi dir="ltr">` + template.HTMLEscapeString(string(value)) + "</bdi>")}
	case notices.WriteIn:
		return []template.HTML{templates.WriteIn}
	}
	return kept(v, []template.HTML(nil), fmt.Errorf("a cell cannot hold a value of kind %s", notices.KindOf(value)))
}

// label is the value at the head of a row: a message, a place, or days one below the other.
func (v *voice) label(value notices.Value) []template.HTML {
	if m, ok := value.(notices.Message); ok {
		return escaped(locales.Alone(v.plain(m)))
	}
	return v.cells(value)
}

// days are a line for each span; each end of a span is unbroken, and the dash stays with the first.
func (v *voice) days(days notices.Days) []template.HTML {
	dash := strings.TrimRight(v.Through(), " ")
	space := template.HTML(strings.TrimPrefix(v.Through(), dash))
	var all []template.HTML
	for _, span := range days {
		text := strong(v.day(span.First))[0]
		if span.Last != span.First {
			text = strong(v.day(span.First) + dash)[0] + space + strong(v.day(span.Last))[0]
		}
		all = append(all, text)
	}
	return all
}

// moment is a day with its hour on one line; each is unbroken.
func (v *voice) moment(m notices.Moment) []template.HTML {
	day := v.day(m.Day)
	if m.At == notices.NoClock {
		return strong(day)
	}
	comma := strings.TrimRight(v.Comma(), " ")
	space := template.HTML(strings.TrimPrefix(v.Comma(), comma))
	return []template.HTML{strong(day + comma)[0] + space + strong(v.Time(m.At.Hour(), m.At.Minute()))[0]}
}

func (v *voice) day(d notices.Date) string {
	if v.page {
		return locales.Alone(v.Day(d.Year, d.Month, d.Day))
	}
	return locales.Alone(v.ShortDay(d.Year, d.Month, d.Day))
}

// words are entries of the closed lists as one list, alone in a cell.
func (v *voice) words(ids notices.Words) string {
	var words []string
	for _, id := range ids {
		words = append(words, v.plain(notices.Message{ID: id}))
	}
	return locales.Alone(v.List(words))
}

// places are a line each: area, storey and side.
func (v *voice) places(all notices.Places) []string {
	var lines []string
	for _, ids := range all {
		var words []string
		for _, id := range ids {
			words = append(words, v.plain(notices.Message{ID: id}))
		}
		lines = append(lines, locales.Alone(strings.Join(words, v.Comma())))
	}
	return lines
}

func strong(text string) []template.HTML {
	return []template.HTML{template.HTML("<strong>" + template.HTMLEscapeString(text) + "</strong>")}
}

func joined(cells []template.HTML) string {
	var all []string
	for _, cell := range cells {
		all = append(all, string(cell))
	}
	return strings.Join(all, " ")
}

func escaped(text string) []template.HTML {
	return []template.HTML{template.HTML(template.HTMLEscapeString(text))}
}

func bdi(text string) []template.HTML {
	return []template.HTML{template.HTML("<bdi>" + template.HTMLEscapeString(text) + "</bdi>")}
}
