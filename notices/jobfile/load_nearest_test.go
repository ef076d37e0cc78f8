package jobfile

import (
	"testing"

	"example.org/doorleaf/notices"
)

// A guess may mend a slip of the pen; it must not name another room to somebody whose room has no word here.
func TestNearestRoom(t *testing.T) {
	for text, want := range map[string]string{
		"hallwey": "hallway", "kichen": "kitchen", "Front Porch": "front_porch", "atic": "attic", "porch": "back_porch",
		"sunroom": "", "nursery": "", "pantry": "", "study": "",
	} {
		if got, _ := Nearest(text, wordsOf(notices.Areas)); got != want {
			t.Errorf("%q is taken for %q, want %q", text, got, want)
		}
	}
}
