package site

import (
	"strings"
	"testing"

	"example.org/doorleaf/notices"
)

// alphanumeric are the 45 characters that a code packs at 5.5 bits each: ISO/IEC 18004, table of the alphanumeric mode (from memory).
const alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// Every language has an address that keeps the code small, and that leads back to it.
func TestAddressesOfLanguages(t *testing.T) {
	for _, l := range notices.Languages {
		at := address{"https://leaf.example.org", "482109371158", l.Tag, "WIN"}
		if strings.ContainsFunc(at.code(), func(r rune) bool { return !strings.ContainsRune(alphanumeric, r) }) {
			t.Errorf("the code of %s holds %s, which is not in the alphanumeric mode alone", l.Tag, at.code())
		}
		if got := languageOf(at.below()); got != l.Tag {
			t.Errorf("%s leads to the language %s, want %s", at.below(), got, l.Tag)
		}
	}
	choice := address{token: "482109371158"}
	if got := languageOf(choice.below()); got != notices.English {
		t.Errorf("the page where the reader chooses is in %s", got)
	}
	chinese := address{"https://leaf.example.org", "482109371158", "zh-Hans", "WIN"}
	if want := "https://leaf.example.org/482109371158/ZH-HANS/WIN/"; chinese.url() != want {
		t.Errorf("the address is %s, want %s", chinese.url(), want)
	}
}
