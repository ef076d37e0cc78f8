package fit

import (
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
)

func nothingInstalled(string) ([]byte, error) { return nil, fs.ErrNotExist }

// samplesOf are a sentence in each script: keep out, or danger. The words are our own.
var samplesOf = map[string]string{
	"Latn": "Cấm vào. ¡No entre!", "Cyrl": "Не заходите, опасно: свинец", "Grek": "Μην μπαίνετε", "Arab": "لا تدخلوا هذه المنطقة، فيها رصاص",
	"Hans": "请不要进入，这里有铅", "Hant": "請不要進入，這裡有鉛", "Jpan": "はいらないでください", "Kore": "들어가지 마세요, 납이 있습니다", "Deva": "भित्र नपस्नुहोस्, यहाँ सिसा छ",
	"Beng": "ভিতরে ঢুকবেন না", "Khmr": "សូម\u200bកុំ\u200bចូល មាន\u200bសំណ", "Laoo": "ກະລຸນາຢ່າເຂົ້າ", "Thai": "กรุณาอย่าเข้า", "Mymr": "မဝင်ပါနှင့်", "Ethi": "እባክዎ አይግቡ", "Hebr": "נא לא להיכנס", "Armn": "Մի մտեք",
}

func TestCastOfEachScript(t *testing.T) {
	shelf := NewShelf(os.ReadFile)
	for _, row := range scripts {
		sample := samplesOf[row.code]
		if sample == "" {
			t.Errorf("no sample for %s", row.code)
			continue
		}
		cast, err := shelf.Cast(row.code, sample, nil)
		if err != nil {
			lacking(t, err)
			continue
		}
		for _, f := range []*Font{cast.Text, cast.Bold, cast.Sign} {
			if missing := f.Missing(sample + " 555-0142"); len(missing) > 0 {
				t.Errorf("%s: %s lacks %q", row.code, f.Family, missing)
			}
			if size := f.SizeOf(20); f.CapitalsMM(size) < 20-1e-9 || f.CapitalsMM(size-Step) >= 20 {
				t.Errorf("%s: %g pt for 20 mm", row.code, size)
			}
		}
		if cast.Text.Weight != 400 || cast.Bold.Weight != 700 || cast.Sign.Weight != 700 {
			t.Errorf("%s: weights %d, %d, %d", row.code, cast.Text.Weight, cast.Bold.Weight, cast.Sign.Weight)
		}
	}
}

// lacking skips for want of an installed font, except where everything has to be tested.
func lacking(t *testing.T, err error) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Errorf("%v (Debian: fonts-noto-core and fonts-noto-cjk)", err)
		return
	}
	t.Logf("skipped: %v", err)
}

// A name in another script is drawn by the fonts behind.
func TestNamesInOtherScripts(t *testing.T) {
	cast, err := NewShelf(nothingInstalled).Cast("Latn", "Keep out", []string{"Ольга", "أحمد", "Nguyễn"})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := cast.Sign.Families(), []string{"Roboto Condensed", "Noto Sans Arabic"}; !slices.Equal(got, want) {
		t.Errorf("families %q, want %q", got, want)
	}
	if missing := cast.Text.Missing("Ask for أحمد, Ольга"); len(missing) > 0 {
		t.Errorf("missing %q", missing)
	}
	if got, want := cast.Text.Width("Ask أحمد", 10), robotoRegular().Width("Ask ", 10)+robotoRegular().Width("a a", 10)-2*robotoRegular().Width("a", 10)+arabicRegular().Width("أحمد", 10); diff(got, want) > 0.05 {
		t.Errorf("%g pt, and its parts are %g pt", got, want)
	}
}

func diff(a, b float64) float64 { return max(a-b, b-a) }

func TestCastSaysWhatToInstall(t *testing.T) {
	roboto := func(string) ([]byte, error) { return robotoRegular().TTF, nil }
	broken := func(string) ([]byte, error) { return []byte("not a font"), nil }
	for _, c := range []struct {
		code, letters, name string
		read                func(string) ([]byte, error)
		want                string
	}{
		{"Hans", "请不要", "", nothingInstalled, `no font of this computer has '请' (U+8BF7); install Noto Sans CJK`},
		{"Khmr", "សូម", "", broken, `no font of this computer has 'ស' (U+179F); install Noto Sans Khmer`},
		{"Latn", "Keep out", "王小明", nothingInstalled, `"王小明": no font of this computer has '王' (U+738B); install Noto Sans CJK; or write this in another script`},
		{"Latn", "Keep out", "王小明", roboto, `"王小明": no font of this computer has '王' (U+738B); install Noto Sans CJK; or write this in another script`},
		{"Latn", "Keep out", "ᏣᎳᎩ", nothingInstalled, `"ᏣᎳᎩ": no font is known for 'Ꮳ' (U+13E3); or write this in another script`},
		{"Latn", "Keep out", "Rosa 🐕", nothingInstalled, `"Rosa 🐕": no font is known for '🐕' (U+1F415); or write this in another script`},
		{"Xxxx", "a", "", nothingInstalled, "no font is known for the script Xxxx"},
	} {
		_, err := NewShelf(c.read).Cast(c.code, c.letters, []string{c.name})
		if got := fmt.Sprint(err); got != c.want {
			t.Errorf("%s %q:\n got %s\nwant %s", c.code, c.name, got, c.want)
		}
	}
}

// Every font of Debian's packages that is on this computer is found under its name, in two weights, with all letters of our sample. Outside
// reference: the fonts themselves.
func TestInstalledFamilies(t *testing.T) {
	shelf, opened := NewShelf(os.ReadFile), 0
	for _, row := range scripts {
		for _, family := range row.families {
			if _, err := os.Stat(family.regular); err != nil {
				continue
			}
			opened++
			found, ok := shelf.open(family)
			if !ok {
				t.Errorf("%s holds no font of the family %s", family.regular, family.name)
				continue
			}
			if found.text.Weight != 400 || found.bold.Weight != 700 || found.text.Version == "" {
				t.Errorf("%s: weights %d and %d, version %q", family.name, found.text.Weight, found.bold.Weight, found.text.Version)
			}
			if missing := found.missing(row.lettersOf(samplesOf[row.code])); len(missing) > 0 {
				t.Errorf("%s lacks %q", family.name, string(missing))
			}
		}
	}
	if opened == 0 {
		if os.Getenv("CI") != "" {
			t.Fatal("no font of the list is installed: install fonts-noto-core and fonts-noto-cjk")
		}
		t.Skip("no font of the list is installed: install fonts-noto-core and fonts-noto-cjk")
	}
}

func TestScriptsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range scripts {
		if seen[row.code] || len(row.letters) == 0 || row.measure.Source == "" || row.measure.Times < 1 {
			t.Errorf("%s: %+v", row.code, row.measure)
		}
		seen[row.code] = true
		if (row.inside == nil) != (len(row.families) > 0) || (row.inside == nil) != (row.install != "") {
			t.Errorf("%s: fonts in the program, or families and what to install", row.code)
		}
		for _, system := range []string{"Windows", "macOS", "Linux"} {
			if row.inside == nil && !slices.ContainsFunc(row.families, func(f family) bool { return f.system == system }) {
				t.Errorf("%s: no font of %s", row.code, system)
			}
		}
		for _, f := range row.families {
			if strings.HasPrefix(f.regular, windows) != (f.system == "Windows") || strings.HasPrefix(f.regular, mac) != (f.system == "macOS") {
				t.Errorf("%s: %s on %s", row.code, f.regular, f.system)
			}
		}
	}
}
