package fit

import (
	"fmt"
	"math"
	"os"
	"testing"
)

// Outside reference of this file: Chromium again, with the fonts of other scripts as it finds them by their family on this computer, or brought by
// the page where they are in the program.

// The last of each are names and numbers in another script, drawn by the fonts behind.
var scriptSamples = []struct{ code, lang, text string }{
	{"Arab", "ar", "ممنوع الدخول، حتى للأطفال والحيوانات"},
	{"Arab", "ar", "لا تأكلوا ولا تشربوا ولا تدخنوا في هذه المنطقة"},
	{"Arab", "fa", "لطفاً وارد این قسمت نشوید، گرد و غبار سرب دارد"},
	{"Arab", "ar", "اسألوا عن Rosa"},
	{"Cyrl", "ru", "НЕ ВХОДИТЬ. ОПАСНО ДЛЯ ДЕТЕЙ"},
	{"Cyrl", "ru", "Не заходите, пока мы не скажем, что можно"},
	{"Hans", "zh-Hans", "请不要进入，这里有含铅的旧油漆。"},
	{"Hans", "zh-Hans", "危险！禁止饮食、吸烟（含铅施工区）"},
	{"Hans", "zh-Hans", "请找Rosa，电话555-0142"},
	{"Kore", "ko", "들어가지 마세요. 납이 있습니다."},
	{"Deva", "ne", "भित्र नपस्नुहोस्, यहाँ सिसा छ"},
	{"Khmr", "km", "សូម\u200bកុំ\u200bចូល មាន\u200bសំណ"},
}

func TestScriptsAgainstChromium(t *testing.T) {
	shelf := NewShelf(os.ReadFile)
	var r request
	var ours []*Font
	for _, s := range scriptSamples {
		cast, err := shelf.Cast(s.code, s.text, nil)
		if err != nil {
			lacking(t, err)
			continue
		}
		for _, f := range []*Font{cast.Text, cast.Bold} {
			for _, size := range sizes {
				r.Widths = append(r.Widths, widthAsked{Font: familyOf(f), Lang: s.lang, Text: s.text, Size: size, Weight: f.Weight})
				ours = append(ours, f)
			}
		}
		// The letters whose height counts: their ink as Chromium draws it.
		if m := cast.Bold.measure; m.top != 0 {
			r.Ink = append(r.Ink, inkAsked{familyOf(cast.Bold), string(m.top), 700}, inkAsked{familyOf(cast.Bold), string(m.bottom), 700})
		}
	}
	a := ask(t, r)
	worst := 0.0
	for i, w := range r.Widths {
		width := ours[i].Width(w.Text, w.Size)
		off := math.Abs(width/a.Widths[i] - 1)
		worst = max(worst, off)
		if !(off < Spare/6) {
			t.Errorf("%s %d %g pt %q: %.3f pt, in Chromium %.3f pt", w.Font, w.Weight, w.Size, w.Text, width, a.Widths[i])
		}
	}
	t.Logf("%d widths, the worst off by %.4f %%", len(r.Widths), worst*100)
	for i := 0; i < len(r.Ink); i += 2 {
		checkLetterHeight(t, shelf, r.Ink[i].Font, a.Ink[i].Above+a.Ink[i+1].Below)
	}
}

// checkLetterHeight compares with ink that Chromium rounds outwards to whole pixels of 200 an em.
func checkLetterHeight(t *testing.T, shelf *Shelf, family string, theirs float64) {
	t.Helper()
	for _, s := range scriptSamples {
		cast, err := shelf.Cast(s.code, s.text, nil)
		if err != nil || familyOf(cast.Bold) != family {
			continue
		}
		if got := cast.Bold.letterHeight(); math.Abs(got-theirs) > 3.0/200 {
			t.Errorf("%s: %s of %.4f em, in Chromium %.4f em", family, cast.Bold.Letters(), got, theirs)
		}
		return
	}
}

// familyOf is the font of the test page for those in the program, and the family for those of this computer; Roboto stands behind.
func familyOf(f *Font) string {
	if !f.inside {
		return fmt.Sprintf("'%s', %s", f.Family, map[int]string{400: "regular", 700: "bold"}[f.Weight])
	}
	for name, inside := range fonts {
		if inside.File == f.File {
			return name + ", " + map[int]string{400: "regular", 700: "bold"}[f.Weight]
		}
	}
	panic("a font of the program is not in the test page: " + f.File)
}
