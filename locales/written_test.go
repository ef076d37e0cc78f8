package locales

import (
	"strings"
	"testing"
	"time"
)

// TestWritten holds some of what Intl answers (ICU 78.2, CLDR 48.0, read 2026-11-25), so that it is checked without Node as well. A ~ is a no-break space.
func TestWritten(t *testing.T) {
	for _, c := range []struct {
		tag, day, shortDay, time, list, number, direction, autonym, vietnamese, script, signs string
	}{
		{
			"ar", "السبت، 8 مايو 2027", "السبت، 8 مايو", "2:05 م",
			"a وb وinglés", "1,234.5", "rtl", "العربية", "الفيتنامية", "Arab", "، :  – ",
		},
		{
			"en", "Saturday, May 8, 2027", "Saturday, May 8", "2:05~PM",
			"a, b, and inglés", "1,234.5", "ltr", "English", "Vietnamese", "Latn", ", :  – ",
		},
		{
			"es", "sábado, 8 de mayo de 2027", "sábado, 8 de mayo", "2:05~p.m.",
			"a, b e inglés", "1,234.5", "ltr", "Español", "vietnamita", "Latn", ", :  – ",
		},
		{
			"ru", "суббота, 8 мая 2027~г.", "суббота, 8 мая", "2:05~PM",
			"a, b и inglés", "1~234,5", "ltr", "Русский", "вьетнамский", "Cyrl", ", :  – ",
		},
		{
			"vi", "Thứ Bảy, 8 tháng 5, 2027", "Thứ Bảy, 8 tháng 5", "2:05~CH",
			"a, b và inglés", "1.234,5", "ltr", "Tiếng Việt", "Tiếng Việt", "Latn", ", :  – ",
		},
		{
			"zh-Hans", "2027年5月8日星期六", "5月8日星期六", "下午2:05",
			"a、b和inglés", "1,234.5", "ltr", "中文", "越南语", "Hans", "，：至",
		},
	} {
		s := speak(t, c.tag, "a: A")
		for what, pair := range map[string][2]string{
			"a day":           {s.Day(2027, time.May, 8), c.day},
			"a short day":     {s.ShortDay(2027, time.May, 8), c.shortDay},
			"a time":          {s.Time(14, 5), c.time},
			"a list":          {s.List([]string{"a", "b", "inglés"}), c.list},
			"a number":        {s.number(1234.5), c.number},
			"the direction":   {s.Direction(), c.direction},
			"the script":      {s.Script(), c.script},
			"the autonym":     {s.Autonym(), c.autonym},
			"Vietnamese":      {s.NameOf("vi"), c.vietnamese},
			"a language else": {s.NameOf("hmn"), "hmn"},
			"signs":           {s.Comma() + s.Colon() + s.Through(), c.signs},
			"the tag":         {s.Tag(), c.tag},
		} {
			if got, want := pair[0], strings.ReplaceAll(pair[1], "~", "\u00a0"); got != want {
				t.Errorf("%s: %s is %q, want %q", c.tag, what, got, want)
			}
		}
	}
}

// A value in a plain text from right to left is isolated, and in another it is not.
func TestIsolated(t *testing.T) {
	for tag, want := range map[string]string{"ar": "رقم \u206814 1/2\u2069", "en": "رقم 14 1/2"} {
		got, err := speak(t, tag, "a: رقم {{.N}}").Text("a", map[string]Value{"N": Plain("14 1/2")})
		if err != nil || got != want {
			t.Errorf("%s: %q, %v; want %q", tag, got, err, want)
		}
	}
}

func TestAlone(t *testing.T) {
	for text, want := range map[string]string{"": "", "sábado, 8 de mayo": "Sábado, 8 de mayo", "Saturday": "Saturday", "ñandú": "Ñandú", "8 de mayo": "8 de mayo", "السبت": "السبت"} {
		if got := Alone(text); got != want {
			t.Errorf("%q alone is %q, want %q", text, got, want)
		}
	}
}
