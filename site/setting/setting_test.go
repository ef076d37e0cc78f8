package setting

import (
	"fmt"
	"html/template"
	"os"
	"strings"
	"testing"

	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

func latin(t *testing.T) fit.Cast {
	t.Helper()
	cast, err := fit.NewShelf(os.ReadFile).Cast("Latn", "abc", nil)
	if err != nil {
		t.Fatal(err)
	}
	return cast
}

// letter is one with blocks of some sentences each.
func letter(blocks, sentences int) (templates.Face, []string) {
	view := templates.Face{Lang: "en", Dir: "ltr", Letter: &templates.Letter{}}
	view.Call = templates.Call{Head: "Questions", Colon: ": ", Phone: "(612) 555-0118"}
	view.Foot = templates.Foot{Sheet: "Sheet alder-14 / letter-h1", Caution: "This sheet does not replace the official pamphlet."}
	view.Letter.Text = templates.Text{Lang: "en", Dir: "ltr", From: "Larkfield Home Repair"}
	var names []string
	for i := range blocks {
		block := templates.Block{Head: fmt.Sprintf("Part %d", i)}
		for range sentences {
			block.Lines = append(block.Lines, template.HTML("Stay out of the work area until we have cleaned, checked and told you."))
		}
		view.Letter.Text.Blocks = append(view.Letter.Text.Blocks, block)
		names = append(names, fmt.Sprintf("the block %q", block.Head))
	}
	return view, names
}

// Whatever its length, a letter keeps all its parts in their order, no side is higher than the paper, and each says which of how many it is.
func TestLetterTakesTheSidesThatItNeeds(t *testing.T) {
	cast := latin(t)
	most := 0
	for blocks := 1; blocks <= 24; blocks += 3 {
		view, names := letter(blocks, 4)
		sides, err := Letter(cast, fit.Cast{}, view, "Stay out", Wish{}, names)
		if err != nil {
			t.Fatalf("%d blocks: %v", blocks, err)
		}
		var heads []string
		for i, side := range sides {
			want := ""
			if len(sides) > 1 {
				want = fmt.Sprintf("%d/%d", i+1, len(sides))
			}
			if side.Foot.Side != want {
				t.Errorf("%d blocks: side %d says %q, want %q", blocks, i+1, side.Foot.Side, want)
			}
			if height := HeightMM(cast, fit.Cast{}, side); height > templates.FieldHeight*(1-fit.Spare) {
				t.Errorf("%d blocks: side %d is %.1f mm high", blocks, i+1, height)
			}
			if side.Letter.Type.Least < templates.LeastType {
				t.Errorf("%d blocks: type of %g pt", blocks, side.Letter.Type.Least)
			}
			for _, block := range side.Letter.Text.Blocks {
				heads = append(heads, block.Head)
			}
		}
		for i, head := range heads {
			if head != fmt.Sprintf("Part %d", i) {
				t.Errorf("%d blocks: they come as %v", blocks, heads)
			}
		}
		if len(heads) != blocks {
			t.Errorf("%d blocks came out as %d", blocks, len(heads))
		}
		most = max(most, len(sides))
	}
	if most < 2 {
		t.Error("no letter took more than a side")
	}
}

// What no side can hold is an error that says which part it is.
func TestLetterThatNoPaperHolds(t *testing.T) {
	for name, c := range map[string]struct {
		blocks, sentences int
		want              string
	}{
		"one block too long": {1, 80, `the block "Part 0" is too long for a side of paper`},
		"too much in all":    {60, 12, "takes more than 4 sides of paper"},
	} {
		view, names := letter(c.blocks, c.sentences)
		if _, err := Letter(latin(t), fit.Cast{}, view, "Stay out", Wish{}, names); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A sign takes more paper only to be read from farther, and then it is. (29 CFR 1926.62(m)(1)(i) has the legend; the distance is the caller's.)
func TestSignTakesThePaperThatItNeeds(t *testing.T) {
	text := SignText{Legend: []string{"DANGER", "LEAD WORK AREA", "MAY DAMAGE FERTILITY OR THE UNBORN CHILD", "CAUSES DAMAGE TO THE CENTRAL NERVOUS SYSTEM", "DO NOT EAT, DRINK OR SMOKE IN THIS AREA"},
		Area: "Front porch", Orders: []string{"Keep out until the crew takes this sign down."}, Contact: []string{"Ask for Rosa", "Larkfield Home Repair", "We speak English"}}
	known := Posters{}
	sheets := 0
	for _, feet := range []float64{0, 5, 10, 20} {
		view, _ := letter(0, 0)
		view.Letter = nil
		design, err := known.Sign(latin(t), view, text, Papers{Usual: "letter"}, feet)
		if err != nil {
			t.Fatal(err)
		}
		if design.Reach(fit.Good) < feet || design.Reach(fit.Poor) > design.Reach(fit.Good) {
			t.Errorf("for %g ft it reads from %g ft, in poor light from %g ft", feet, design.Reach(fit.Good), design.Reach(fit.Poor))
		}
		if len(design.Sides) < sheets {
			t.Errorf("for %g ft it takes %d sheets, and for less far %d", feet, len(design.Sides), sheets)
		}
		if sheets = len(design.Sides); feet == 0 && (sheets != 1 || design.Paper != "letter") {
			t.Errorf("at the sign it takes %s", design.Paper)
		}
	}
	if sheets < 2 {
		t.Error("no sign took more than a sheet")
	}
}
