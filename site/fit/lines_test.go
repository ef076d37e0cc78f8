package fit

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWhereLinesBreak(t *testing.T) {
	for _, test := range []struct {
		name, text string
		want       []string
	}{
		{"spaces", "  Keep \n out\t", []string{"Keep", "out"}},
		{"no-break space", "No.\u00a014 street", []string{"No.\u00a014", "street"}},
		{"word joiner", "well-\u2060known well", []string{"well-\u2060known", "well"}},
		{"hyphen", "scrape-and-paint", []string{"scrape-", "and-", "paint"}},
		{"phone", "call (555) 555-0142.", []string{"call", "(555)", "555-0142."}},
		{"soft hyphen", "work\u00adarea", []string{"work\u00adarea"}},
		{"slash", "and/or", []string{"and/", "or"}},
		{"quotes and punctuation stay", "“out” ¡no! (yes)", []string{"“out”", "¡no!", "(yes)"}},
		{"ideographs", "請勿進入。", []string{"請", "勿", "進", "入。"}},
		{"empty", " \n", nil},
	} {
		if got := robotoBold().Lines(test.text, 10, 1); !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}

func TestBalancedHeadline(t *testing.T) {
	text, width := "Please stay out of the front hall today", robotoBold().Width("Please stay out of the front hall", 30)
	if got, want := robotoBold().Lines(text, 30, width), []string{"Please stay out of the front hall", "today"}; !slices.Equal(got, want) {
		t.Errorf("filled: %q, want %q", got, want)
	}
	if got, want := robotoBold().balanced(text, 30, width), []string{"Please stay out of", "the front hall today"}; !slices.Equal(got, want) {
		t.Errorf("balanced: %q, want %q", got, want)
	}
}

// texts are words in the three languages; now and then with a hyphen, a no-break space or a tab.
func texts() *rapid.Generator[string] {
	letters := []rune("aeinorstlmwiAVTWYyñáÑđếửẬ.,")
	word := rapid.StringOfN(rapid.SampledFrom(letters), 1, 9, -1)
	glue := rapid.SampledFrom([]string{" ", " ", " ", " ", "  ", "\t", "\n", "\u00a0", "-", " – "})
	return rapid.Custom(func(t *rapid.T) string {
		var text strings.Builder
		for range rapid.IntRange(1, 9).Draw(t, "words") {
			text.WriteString(word.Draw(t, "word") + glue.Draw(t, "glue"))
		}
		return text.String()
	})
}

func widths() *rapid.Generator[float64] { return rapid.Float64Range(20, 600) }

func TestLinesKeepTheText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.ReplaceAll(strings.ReplaceAll(texts().Draw(t, "text"), "-", " "), "\u00a0", " ")
		width := widths().Draw(t, "width")
		want := strings.Join(strings.Fields(text), " ")
		for name, lines := range map[string][]string{"filled": robotoBold().Lines(text, 20, width), "balanced": robotoBold().balanced(text, 20, width)} {
			if got := strings.Join(lines, " "); got != want {
				t.Fatalf("%s: %q, want %q", name, got, want)
			}
		}
	})
}

// Any string at all keeps its characters, but for white space at which lines break.
func TestLinesKeepAnyText(t *testing.T) {
	bare := func(s string) string { return strings.ReplaceAll(collapse(s), " ", "") }
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		for name, lines := range map[string][]string{"filled": robotoBold().Lines(text, 20, 60), "balanced": robotoBold().balanced(text, 20, 60)} {
			if got := bare(strings.Join(lines, " ")); got != bare(text) {
				t.Fatalf("%s: %q, want %q", name, got, bare(text))
			}
		}
	})
}

func TestLinesAreNarrowEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, width := texts().Draw(t, "text"), widths().Draw(t, "width")
		for _, line := range slices.Concat(robotoBold().Lines(text, 20, width), robotoBold().balanced(text, 20, width)) {
			if robotoBold().Width(line, 20) > width+1e-9 && len(robotoBold().Lines(line, 20, 1)) > 1 {
				t.Fatalf("%q is wider than %g pt and could break", line, width)
			}
		}
	})
}

// Every other way to break the text into as many lines is tried, and is no more even.
func TestBalancedIsMostEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, width := texts().Draw(t, "text"), widths().Draw(t, "width")
		pieces := robotoBold().Lines(text, 20, 1)
		filled, even := robotoBold().Lines(text, 20, width), robotoBold().balanced(text, 20, width)
		if len(even) != len(filled) {
			t.Fatalf("%d lines, want %d", len(even), len(filled))
		}
		if got, want := unevenness(text, even), leastUneven(text, pieces, len(filled), width); got > want+1e-6 {
			t.Fatalf("%q: %g, could be %g", even, got, want)
		}
	})
}

// unevenness is the sum of the squares of the lines, less a fifth of the square of an average line for each break after punctuation.
func unevenness(text string, lines []string) (sum float64) {
	gain := math.Pow(robotoBold().Width(text, 20)/float64(len(lines)), 2) / 5
	for i, line := range lines {
		sum += math.Pow(robotoBold().Width(line, 20), 2)
		if i < len(lines)-1 && strings.ContainsAny(line[len(line)-1:], ".,;:!?") {
			sum -= gain
		}
	}
	return sum
}

// leastUneven tries all subsets of the places between the pieces, of which bit i of breaks is the one after piece i.
func leastUneven(text string, pieces []string, lines int, width float64) float64 {
	best := math.Inf(1)
	for breaks := range 1 << (len(pieces) - 1) {
		set := setWith(collapse(text), pieces, breaks)
		if len(set) == lines && allowed(set, width) {
			best = min(best, unevenness(text, set))
		}
	}
	return best
}

func allowed(lines []string, width float64) bool {
	return !slices.ContainsFunc(lines, func(line string) bool {
		return robotoBold().Width(line, 20) > width && len(robotoBold().Lines(line, 20, 1)) > 1
	})
}

// setWith joins the pieces of the text into lines, with the spaces that the text has between them.
func setWith(text string, pieces []string, breaks int) []string {
	lines, line := []string{}, ""
	for i, piece := range pieces {
		text = strings.TrimPrefix(text, piece)
		rest := strings.TrimPrefix(text, " ")
		line += piece
		if i == len(pieces)-1 || breaks>>i&1 == 1 {
			lines, line = append(lines, line), ""
		} else {
			line += text[:len(text)-len(rest)]
		}
		text = rest
	}
	return lines
}

// Clauses stay together where that costs little.
func TestBalancedBreaksAfterPunctuation(t *testing.T) {
	for text, want := range map[string][]string{
		"Sleep elsewhere now, and stay out until we call.": {"Sleep elsewhere now,", "and stay out until we call."},
		"Stay out of these rooms until we tell you, all.":  {"Stay out of these rooms", "until we tell you, all."}, // the comma is too far to one side
	} {
		if got := robotoBold().balanced(text, 30, 420); !slices.Equal(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
