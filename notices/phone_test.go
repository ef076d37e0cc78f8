package notices

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Rules: North American Numbering Plan Administrator (nanpa.com), from memory: area code and exchange are NXX with N 2 to 9, and no N11;
// N11 alone are services. Links: RFC 3966, from memory.
func TestParsePhone(t *testing.T) {
	for _, c := range []struct{ text, digits, written, dial string }{
		{"555-0142", "5550142", "555-0142", "tel:5550142"},
		{"555 0142", "5550142", "555-0142", "tel:5550142"},
		{"(612) 555-0142", "6125550142", "(612) 555-0142", "tel:+16125550142"},
		{"612.555.0142", "6125550142", "(612) 555-0142", "tel:+16125550142"},
		{"1-612-555-0142", "16125550142", "(612) 555-0142", "tel:+16125550142"},
		{"+1 612 555 0142", "16125550142", "(612) 555-0142", "tel:+16125550142"},
		{"311", "311", "311", "tel:311"},
		{"211", "211", "211", "tel:211"},
	} {
		p, err := ParsePhone(c.text)
		if err != nil || string(p) != c.digits || p.Written() != c.written || p.Dial() != c.dial {
			t.Errorf("%s: %q %q %q, %v", c.text, p, p.Written(), p.Dial(), err)
		}
	}
	for _, text := range []string{"", "-", "1", "111", "011", "312", "3-1-1", "055-0142", "155-0142", "911-0142", "112 555 0142", "012 555 0142", "611 555 0142", "612 155 0142", "612 411 0142",
		"2 612 555 0142", "+612 555 0142", "612+5550142", "555-01422", "555-HELP", "٥٥٥-٠١٤٢", "555–0142", "555-0142\n", "555/0142", "5550142;ext=7", "tel:555-0142"} {
		if p, err := ParsePhone(text); err == nil {
			t.Errorf("%q came out as %q", text, p)
		}
	}
}

func TestLettersOnKeys(t *testing.T) {
	if _, err := ParsePhone("555-HELP"); err == nil || !strings.Contains(err.Error(), "555-4357") {
		t.Errorf("have %v", err)
	}
}

// TestWrittenIsReadBack: what the sheets show can be dialled to the same number.
func TestWrittenIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := ParsePhone(rapid.StringMatching(`([+]?1?[ .-]?[(]?[2-9][0-9]{2}[)]?[ .-]?)?[2-9][0-9]{2}[ .-]?[0-9]{4}`).Draw(t, "phone"))
		if err != nil {
			return
		}
		again, err := ParsePhone(p.Written())
		if err != nil || again.Dial() != p.Dial() {
			t.Fatalf("%q: %v, %s and %s", p, err, again.Dial(), p.Dial())
		}
	})
}
