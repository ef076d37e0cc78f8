package fit

import (
	"bytes"
	"slices"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/language"
)

// An installed row is where the systems keep a font for a script. A file may hold several fonts.
type installed struct {
	script  language.Script
	system  string // "Windows", "macOS", "Linux"
	path    string
	install string // what to ask for when no font of the script is there
}

// installedFonts are the fonts that Windows, macOS and Debian's fonts-noto packages bring for scripts that the printing font lacks. Their paths are from
// memory, but for those of Linux, which a test opens where they are.
var installedFonts = []installed{
	{language.Arabic, "Windows", `C:\Windows\Fonts\segoeui.ttf`, "Noto Sans Arabic"},
	{language.Arabic, "macOS", "/System/Library/Fonts/GeezaPro.ttc", "Noto Sans Arabic"},
	{language.Arabic, "Linux", "/usr/share/fonts/truetype/noto/NotoSansArabic-Regular.ttf", "Noto Sans Arabic"},
	{language.Arabic, "Linux", "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf", "Noto Sans Arabic"},
	{language.Armenian, "Windows", `C:\Windows\Fonts\segoeui.ttf`, "Noto Sans Armenian"},
	{language.Armenian, "macOS", "/Library/Fonts/Arial Unicode.ttf", "Noto Sans Armenian"},
	{language.Armenian, "Linux", "/usr/share/fonts/truetype/noto/NotoSansArmenian-Regular.ttf", "Noto Sans Armenian"},
	{language.Bengali, "Windows", `C:\Windows\Fonts\Nirmala.ttf`, "Noto Sans Bengali"},
	{language.Bengali, "Windows", `C:\Windows\Fonts\Nirmala.ttc`, "Noto Sans Bengali"},
	{language.Bengali, "macOS", "/Library/Fonts/Arial Unicode.ttf", "Noto Sans Bengali"},
	{language.Bengali, "Linux", "/usr/share/fonts/truetype/noto/NotoSansBengali-Regular.ttf", "Noto Sans Bengali"},
	{language.Devanagari, "Windows", `C:\Windows\Fonts\Nirmala.ttf`, "Noto Sans Devanagari"},
	{language.Devanagari, "Windows", `C:\Windows\Fonts\Nirmala.ttc`, "Noto Sans Devanagari"},
	{language.Devanagari, "macOS", "/System/Library/Fonts/Kohinoor.ttc", "Noto Sans Devanagari"},
	{language.Devanagari, "Linux", "/usr/share/fonts/truetype/noto/NotoSansDevanagari-Regular.ttf", "Noto Sans Devanagari"},
	{language.Ethiopic, "Windows", `C:\Windows\Fonts\ebrima.ttf`, "Noto Sans Ethiopic"},
	{language.Ethiopic, "macOS", "/System/Library/Fonts/Supplemental/Kefa.ttc", "Noto Sans Ethiopic"},
	{language.Ethiopic, "Linux", "/usr/share/fonts/truetype/noto/NotoSansEthiopic-Regular.ttf", "Noto Sans Ethiopic"},
	{language.Han, "Windows", `C:\Windows\Fonts\msyh.ttc`, "Noto Sans CJK"},
	{language.Han, "macOS", "/System/Library/Fonts/PingFang.ttc", "Noto Sans CJK"},
	{language.Han, "macOS", "/System/Library/Fonts/STHeiti Light.ttc", "Noto Sans CJK"},
	{language.Han, "Linux", "/usr/share/fonts/opentype/noto/NotoSansCJK-Regular.ttc", "Noto Sans CJK"},
	{language.Hangul, "Windows", `C:\Windows\Fonts\malgun.ttf`, "Noto Sans CJK"},
	{language.Hangul, "macOS", "/System/Library/Fonts/AppleSDGothicNeo.ttc", "Noto Sans CJK"},
	{language.Hangul, "Linux", "/usr/share/fonts/opentype/noto/NotoSansCJK-Regular.ttc", "Noto Sans CJK"},
	{language.Hebrew, "Windows", `C:\Windows\Fonts\segoeui.ttf`, "Noto Sans Hebrew"},
	{language.Hebrew, "macOS", "/System/Library/Fonts/ArialHB.ttc", "Noto Sans Hebrew"},
	{language.Hebrew, "Linux", "/usr/share/fonts/truetype/noto/NotoSansHebrew-Regular.ttf", "Noto Sans Hebrew"},
	{language.Khmer, "Windows", `C:\Windows\Fonts\LeelawUI.ttf`, "Noto Sans Khmer"},
	{language.Khmer, "Windows", `C:\Windows\Fonts\KhmerUI.ttf`, "Noto Sans Khmer"},
	{language.Khmer, "macOS", "/System/Library/Fonts/Supplemental/Khmer MN.ttc", "Noto Sans Khmer"},
	{language.Khmer, "Linux", "/usr/share/fonts/truetype/noto/NotoSansKhmer-Regular.ttf", "Noto Sans Khmer"},
	{language.Lao, "Windows", `C:\Windows\Fonts\LeelawUI.ttf`, "Noto Sans Lao"},
	{language.Lao, "macOS", "/System/Library/Fonts/Supplemental/Lao MN.ttc", "Noto Sans Lao"},
	{language.Lao, "Linux", "/usr/share/fonts/truetype/noto/NotoSansLao-Regular.ttf", "Noto Sans Lao"},
	{language.Myanmar, "Windows", `C:\Windows\Fonts\mmrtext.ttf`, "Noto Sans Myanmar"},
	{language.Myanmar, "macOS", "/System/Library/Fonts/Supplemental/Myanmar MN.ttc", "Noto Sans Myanmar"},
	{language.Myanmar, "Linux", "/usr/share/fonts/truetype/noto/NotoSansMyanmar-Regular.ttf", "Noto Sans Myanmar"},
	{language.Thai, "Windows", `C:\Windows\Fonts\LeelawUI.ttf`, "Noto Sans Thai"},
	{language.Thai, "macOS", "/System/Library/Fonts/Supplemental/Thonburi.ttc", "Noto Sans Thai"},
	{language.Thai, "Linux", "/usr/share/fonts/truetype/noto/NotoSansThai-Regular.ttf", "Noto Sans Thai"},
}

// Lacking names a font to install for the characters of a text that neither the printing font nor an installed font of their script has, and gives the
// first of those characters. It is "" when every character can be drawn. Only a warning may rest on it: a browser may find a font that we don't
// know, and what is on this computer must not change what is made. Read gives the bytes of a font file, as os.ReadFile does.
func (f *Font) Lacking(text string, read func(path string) ([]byte, error)) (character rune, install string) {
	for _, r := range f.Missing(text) {
		if install := lacking(r, read); install != "" {
			return r, install
		}
	}
	return 0, ""
}

func lacking(r rune, read func(path string) ([]byte, error)) (install string) {
	script := language.LookupScript(r)
	install = "a Noto font that has it"
	for _, row := range installedFonts {
		if row.script != script {
			continue
		}
		if install = row.install; hasGlyph(row.path, r, read) {
			return ""
		}
	}
	return install
}

// hasGlyph opens a font file and asks every font in it for a character.
func hasGlyph(path string, r rune, read func(path string) ([]byte, error)) bool {
	data, err := read(path)
	if err != nil {
		return false
	}
	faces, err := font.ParseTTC(bytes.NewReader(data))
	return err == nil && slices.ContainsFunc(faces, func(f *font.Face) bool {
		_, ok := f.NominalGlyph(r)
		return ok
	})
}
