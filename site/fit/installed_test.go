package fit

import (
	"errors"
	"io/fs"
	"os"
	"testing"

	"github.com/go-text/typesetting/language"
)

func nothingInstalled(string) ([]byte, error) { return nil, fs.ErrNotExist }

// firstLetters are a name's first letter in each script of the list.
var firstLetters = map[language.Script]rune{
	language.Arabic: 'م', language.Armenian: 'Ա', language.Bengali: 'র', language.Devanagari: 'र', language.Ethiopic: 'አ', language.Han: '陈', language.Hangul: '김',
	language.Hebrew: 'א', language.Khmer: 'ស', language.Lao: 'ສ', language.Myanmar: 'မ', language.Thai: 'ส',
}

func TestLackingNamesAFont(t *testing.T) {
	for _, row := range installedFonts {
		r, ok := firstLetters[row.script]
		if !ok {
			t.Errorf("no sample for the script of %s", row.path)
			continue
		}
		if got, install := Regular().Lacking("Ana "+string(r), nothingInstalled); got != r || install != row.install {
			t.Errorf("%q lacks %q and asks for %q, want %q", r, got, install, row.install)
		}
	}
	for _, text := range []string{"Nguyễn Thị Hoa", "Ольга", "Γιώργος", "José Peña"} {
		if r, install := Regular().Lacking(text, nothingInstalled); install != "" {
			t.Errorf("%q: asks for %q because of %q, and Roboto has it", text, install, r)
		}
	}
	if _, install := Regular().Lacking("ᏣᎳᎩ", nothingInstalled); install == "" {
		t.Error("a script that no row names is not warned of")
	}
}

// A font is opened and asked for the very character: one that is there by name and lacks it does not serve.
func TestLackingOpensTheFont(t *testing.T) {
	roboto := func(string) ([]byte, error) { return Regular().TTF, nil }
	if _, install := Regular().Lacking("陈", roboto); install == "" {
		t.Error("Roboto under the name of another font serves for Chinese")
	}
	broken := func(string) ([]byte, error) { return []byte("not a font"), nil }
	if _, install := Regular().Lacking("陈", broken); install == "" {
		t.Error("a broken file serves for Chinese")
	}
}

// Every font of the list that is on this computer has its script. Outside reference: the fonts themselves.
func TestInstalledFontsHaveTheirScript(t *testing.T) {
	opened := 0
	for _, row := range installedFonts {
		if _, err := os.Stat(row.path); errors.Is(err, fs.ErrNotExist) {
			continue
		}
		opened++
		if !hasGlyph(row.path, firstLetters[row.script], os.ReadFile) {
			t.Errorf("%s lacks %q", row.path, firstLetters[row.script])
		}
	}
	if opened == 0 {
		if os.Getenv("CI") != "" {
			t.Fatal("no font of the list is installed: install fonts-noto-core")
		}
		t.Skip("no font of the list is installed: install fonts-noto-core")
	}
}
