package fit

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Letter paper with margins of half an inch.
var sheet = Box{Width: 540, Height: 300, Leading: 1.2, Min: 20, Max: 200}

func TestFit(t *testing.T) {
	got, err := robotoBold().fit("Keep out", sheet)
	if err != nil {
		t.Fatal(err)
	}
	// On two lines the height allows 300 pt / 2.4, which is 125 pt. On one the width allows more, and decides: 523.8 pt of 540 pt are free.
	size := math.Floor(523.8/robotoBold().Width("Keep out", 1)*4) / 4
	if size <= 125 || got.size != size || !slices.Equal(got.lines, []string{"Keep out"}) || got.height != size*1.2 {
		t.Errorf("%+v, want %g pt", got, size)
	}
	if want := size * robotoBold().letterHeight() / 72 * 25.4; math.Abs(got.capHeight-want) > 1e-9 {
		t.Errorf("capitals of %g mm, want %g mm", got.capHeight, want)
	}
}

func TestFitLeavesRoomForAccents(t *testing.T) {
	box := Box{Width: 5000, Height: 110, Leading: 1.1, Min: 20, Max: 200}
	for text, want := range map[string]float64{
		"KEEP OUT": 100, // no ink leaves the line
		"ĐỂ":       86,  // 110 pt = size x (1.1 + 2 x 0.086): Ể is 0.977 em high, its line 0.891 em above the baseline
	} {
		got, err := robotoBold().fit(text, box)
		if err != nil || math.Abs(got.size-want) > 0.5 {
			t.Errorf("%s: %g pt, want about %g pt (%v)", text, got.size, want, err)
		}
	}
}

func TestFitExactHeight(t *testing.T) {
	for lines := 1; lines <= 9; lines++ {
		box := Box{Width: 200, Height: float64(lines) * 26.4, Leading: 1.1, Min: 24, Max: 24} // 26.4 is 1.1 x 24
		if _, err := robotoBold().fit(strings.Repeat("Massachusetts ", lines), box); err != nil {
			t.Error(err)
		}
	}
}

// The danger legend of 29 CFR 1926.62(m)(1)(i), below its signal word.
var legend = []string{
	"LEAD WORK AREA", "MAY DAMAGE FERTILITY OR THE UNBORN CHILD", "CAUSES DAMAGE TO THE CENTRAL NERVOUS SYSTEM",
	"DO NOT EAT, DRINK OR SMOKE IN THIS AREA",
}

func TestFitAllLegend(t *testing.T) {
	size, lines, err := robotoBold().FitAll(legend, Box{Width: 540, Height: 520, Leading: 1.1, Min: 20, Max: 200}, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != len(legend) {
		t.Fatalf("%d texts, want %d", len(lines), len(legend))
	}
	for i, text := range legend {
		if got := strings.Join(lines[i], " "); got != text {
			t.Errorf("%q, want %q", got, text)
		}
	}
	t.Logf("%g pt, read from %g ft: %q", size, ReadingDistance(robotoBold().LetterHeightMM(size), 1000, Good), lines)
}

func TestMisfits(t *testing.T) {
	narrow := Box{Width: 100, Height: 60, Leading: 1.2, Min: 20, Max: 40}
	for _, test := range []struct {
		name  string
		texts []string
		box   Box
		want  string
	}{
		{"word", []string{"to Massachusetts-Avenue"}, narrow,
			`"Massachusetts-" is 145.1 pt wide in type of 20 pt, and a line has 97.0 pt; find a shorter word`},
		{"text", []string{"a short text of too many lines"}, narrow,
			`"a short text of too many lines" takes 4 lines and 96.0 pt of height in type of 20 pt, and there are 60.0 pt; shorten it`},
		{"texts", []string{"Out", "a short text", "yes"}, narrow,
			`3 texts take 116.0 pt of height in type of 20 pt, and there are 60.0 pt; shorten them, first "a short text", which takes 2 lines`},
		{"character", []string{"dog 🐕"}, narrow, `Roboto-Bold.ttf lacks '🐕' (U+1F415), which is in "dog 🐕"; print this text in a font that has it`},
		{"nothing", nil, narrow, "there is no text to fit"},
		{"empty", []string{" "}, narrow, "there is no text to fit"},
		{"box", []string{"a"}, Box{Width: 10, Leading: 1, Min: 1, Max: 2},
			"a box of 10 pt by 0 pt with lines of 1 times the type size holds no text; give it a width, a height and a leading"},
		{"sizes", []string{"a"}, Box{Width: 10, Height: 10, Leading: 1, Min: 14.1, Max: 14.2},
			"there is no type size from 14.1 pt to 14.2 pt; sizes are multiples of 0.25 pt"},
	} {
		_, _, err := robotoBold().FitAll(test.texts, test.box, 0.5)
		if got := fmt.Sprint(err); got != test.want {
			t.Errorf("%s:\n got %s\nwant %s", test.name, got, test.want)
		}
	}
}

func boxes() *rapid.Generator[Box] {
	return rapid.Custom(func(t *rapid.T) Box {
		return Box{
			Width:   rapid.Float64Range(100, 1000).Draw(t, "width"),
			Height:  rapid.Float64Range(50, 1000).Draw(t, "height"),
			Leading: rapid.Float64Range(0.9, 1.6).Draw(t, "leading"),
			Min:     rapid.Float64Range(1, 12).Draw(t, "min"),
			Max:     rapid.Float64Range(13, 200).Draw(t, "max"),
		}
	})
}

func TestFitFillsItsBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, box := texts().Draw(t, "text"), boxes().Draw(t, "box")
		got, err := robotoBold().fit(text, box)
		if err != nil {
			if fits([]string{text}, box, 0, math.Ceil(box.Min*4)/4) {
				t.Fatalf("it fits at the smallest size: %v", err)
			}
			return
		}
		if got.size < box.Min || got.size > box.Max || math.Mod(got.size, 0.25) != 0 {
			t.Fatalf("%g pt", got.size)
		}
		for _, line := range got.lines {
			if width := robotoBold().Width(line, got.size); width > box.Width*0.97+1e-9 {
				t.Fatalf("%q is %g pt wide", line, width)
			}
		}
		if want := robotoBold().balanced(text, got.size, box.Width*0.97); !slices.Equal(got.lines, want) {
			t.Fatalf("%q, want even lines: %q", got.lines, want)
		}
		if got.height > box.Height+1e-9 {
			t.Fatalf("%g pt high", got.height)
		}
		if got.size+0.25 <= box.Max && fits([]string{text}, box, 0, got.size+0.25) {
			t.Fatalf("%g pt, but 0.25 pt more would fit", got.size)
		}
	})
}

func TestFitAllIsLargest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		texts := rapid.SliceOfN(texts(), 1, 4).Draw(t, "texts")
		box, gap := boxes().Draw(t, "box"), rapid.Float64Range(0, 1).Draw(t, "gap")
		size, _, err := robotoBold().FitAll(texts, box, gap)
		if err != nil {
			size = math.Ceil(box.Min*4)/4 - 0.25
		} else if !fits(texts, box, gap, size) {
			t.Fatalf("%g pt does not fit", size)
		}
		if size+0.25 <= box.Max && fits(texts, box, gap, size+0.25) {
			t.Fatalf("%g pt, but 0.25 pt more would fit", size)
		}
	})
}

// fits lays the texts out anew, through Lines and Width.
func fits(texts []string, box Box, gap, size float64) bool {
	height := gap * size * float64(len(texts)-1)
	over := 0.0
	for _, text := range texts {
		lines := robotoBold().Lines(text, size, box.Width*0.97)
		for _, line := range lines {
			if robotoBold().Width(line, size) > box.Width*0.97 {
				return false
			}
		}
		height += float64(len(lines)) * box.Leading * size
		over = max(over, robotoBold().overhang(text, box.Leading))
	}
	return height+2*over*size <= box.Height+rounding
}

func TestBiggerBoxIsNoWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, box := texts().Draw(t, "text"), boxes().Draw(t, "box")
		bigger := box
		bigger.Width *= rapid.Float64Range(1, 2).Draw(t, "wider")
		bigger.Height *= rapid.Float64Range(1, 2).Draw(t, "higher")
		small, err := robotoBold().fit(text, box)
		if err != nil {
			t.Skip("does not fit")
		}
		big, err := robotoBold().fit(text, bigger)
		if err != nil || big.size < small.size {
			t.Fatalf("%g pt in the bigger box, %g pt in the smaller (%v)", big.size, small.size, err)
		}
	})
}
