package fit

import "github.com/go-text/typesetting/language"

// A script is how texts in it are set: the fonts, and how its letters are measured.
type script struct {
	code     string            // ISO 15924
	letters  []language.Script // those of Unicode that its fonts draw
	measure  measure
	inside   func() trio // the fonts in the program; nil when there are none
	families []family    // fonts of computers, the first that is there and has all letters
	install  string      // what to ask for when none is
}

// A trio is fonts for text, for headlines and for signs.
type trio struct{ text, bold, sign *Font }

// A family is where a system keeps a font in two weights. A file may hold several families.
type family struct {
	system        string // "Windows", "macOS", "Linux"
	name          string // as CSS calls it
	regular, bold string // paths
}

// scripts are those that doorleaf knows fonts for. Names and paths of the fonts of Windows and macOS are from memory; those of Debian's packages
// fonts-noto-core and fonts-noto-cjk are opened by a test.
var scripts = []script{
	{code: "Latn", letters: []language.Script{language.Latin}, measure: capitals, inside: roboto},
	{code: "Cyrl", letters: []language.Script{language.Cyrillic}, measure: capitals, inside: roboto},
	{code: "Grek", letters: []language.Script{language.Greek}, measure: capitals, inside: roboto},
	{code: "Arab", letters: []language.Script{language.Arabic}, measure: arabic, inside: notoArabic},
	{code: "Hans", letters: []language.Script{language.Han}, measure: han, install: "Noto Sans CJK", families: []family{
		{"Windows", "Microsoft YaHei", windows + "msyh.ttc", windows + "msyhbd.ttc"},
		{"macOS", "PingFang SC", mac + "PingFang.ttc", mac + "PingFang.ttc"},
		{"macOS", "Hiragino Sans GB", mac + "Hiragino Sans GB.ttc", mac + "Hiragino Sans GB.ttc"},
		{"Linux", "Noto Sans CJK SC", cjk + "Regular.ttc", cjk + "Bold.ttc"},
	}},
	{code: "Hant", letters: []language.Script{language.Han}, measure: han, install: "Noto Sans CJK", families: []family{
		{"Windows", "Microsoft JhengHei", windows + "msjh.ttc", windows + "msjhbd.ttc"},
		{"macOS", "PingFang TC", mac + "PingFang.ttc", mac + "PingFang.ttc"},
		{"macOS", "Heiti TC", mac + "STHeiti Light.ttc", mac + "STHeiti Medium.ttc"},
		{"Linux", "Noto Sans CJK TC", cjk + "Regular.ttc", cjk + "Bold.ttc"},
	}},
	{code: "Jpan", letters: []language.Script{language.Hiragana, language.Katakana}, measure: han, install: "Noto Sans CJK", families: []family{
		{"Windows", "Yu Gothic", windows + "YuGothR.ttc", windows + "YuGothB.ttc"},
		{"macOS", "Hiragino Sans", mac + "ヒラギノ角ゴシック W3.ttc", mac + "ヒラギノ角ゴシック W6.ttc"},
		{"Linux", "Noto Sans CJK JP", cjk + "Regular.ttc", cjk + "Bold.ttc"},
	}},
	{code: "Kore", letters: []language.Script{language.Hangul}, measure: hangul, install: "Noto Sans CJK", families: []family{
		{"Windows", "Malgun Gothic", windows + "malgun.ttf", windows + "malgunbd.ttf"},
		{"macOS", "Apple SD Gothic Neo", mac + "AppleSDGothicNeo.ttc", mac + "AppleSDGothicNeo.ttc"},
		{"Linux", "Noto Sans CJK KR", cjk + "Regular.ttc", cjk + "Bold.ttc"},
	}},
	{code: "Deva", letters: []language.Script{language.Devanagari}, measure: consonant('क'), install: "Noto Sans Devanagari", families: []family{
		{"Windows", "Nirmala UI", windows + "Nirmala.ttf", windows + "NirmalaB.ttf"},
		{"Windows", "Nirmala UI", windows + "Nirmala.ttc", windows + "Nirmala.ttc"},
		{"macOS", "Kohinoor Devanagari", mac + "Kohinoor.ttc", mac + "Kohinoor.ttc"},
		noto("Devanagari"),
	}},
	{code: "Beng", letters: []language.Script{language.Bengali}, measure: consonant('ক'), install: "Noto Sans Bengali", families: []family{
		{"Windows", "Nirmala UI", windows + "Nirmala.ttf", windows + "NirmalaB.ttf"},
		{"Windows", "Nirmala UI", windows + "Nirmala.ttc", windows + "Nirmala.ttc"},
		{"macOS", "Kohinoor Bangla", mac + "KohinoorBangla.ttc", mac + "KohinoorBangla.ttc"},
		noto("Bengali"),
	}},
	{code: "Khmr", letters: []language.Script{language.Khmer}, measure: consonant('ក'), install: "Noto Sans Khmer", families: []family{
		{"Windows", "Leelawadee UI", windows + "LeelawUI.ttf", windows + "LeelaUIb.ttf"},
		{"macOS", "Khmer Sangam MN", mac + "Supplemental/Khmer Sangam MN.ttf", mac + "Supplemental/Khmer Sangam MN.ttf"},
		noto("Khmer"),
	}},
	{code: "Laoo", letters: []language.Script{language.Lao}, measure: consonant('ກ'), install: "Noto Sans Lao", families: []family{
		{"Windows", "Leelawadee UI", windows + "LeelawUI.ttf", windows + "LeelaUIb.ttf"},
		{"macOS", "Lao Sangam MN", mac + "Supplemental/Lao Sangam MN.ttf", mac + "Supplemental/Lao Sangam MN.ttf"},
		noto("Lao"),
	}},
	{code: "Thai", letters: []language.Script{language.Thai}, measure: consonant('ก'), install: "Noto Sans Thai", families: []family{
		{"Windows", "Leelawadee UI", windows + "LeelawUI.ttf", windows + "LeelaUIb.ttf"},
		{"macOS", "Thonburi", mac + "Supplemental/Thonburi.ttc", mac + "Supplemental/Thonburi.ttc"},
		noto("Thai"),
	}},
	{code: "Mymr", letters: []language.Script{language.Myanmar}, measure: consonant('က'), install: "Noto Sans Myanmar", families: []family{
		{"Windows", "Myanmar Text", windows + "mmrtext.ttf", windows + "mmrtextb.ttf"},
		{"macOS", "Noto Sans Myanmar", mac + "NotoSansMyanmar.ttc", mac + "NotoSansMyanmar.ttc"},
		noto("Myanmar"),
	}},
	{code: "Ethi", letters: []language.Script{language.Ethiopic}, measure: consonant('ሰ'), install: "Noto Sans Ethiopic", families: []family{
		{"Windows", "Ebrima", windows + "ebrima.ttf", windows + "ebrimabd.ttf"},
		{"macOS", "Kefa", mac + "Supplemental/Kefa.ttc", mac + "Supplemental/Kefa.ttc"},
		noto("Ethiopic"),
	}},
	{code: "Hebr", letters: []language.Script{language.Hebrew}, measure: consonant('ה'), install: "Noto Sans Hebrew", families: []family{
		{"Windows", "Segoe UI", windows + "segoeui.ttf", windows + "segoeuib.ttf"},
		{"macOS", "Arial Hebrew", mac + "ArialHB.ttc", mac + "ArialHB.ttc"},
		noto("Hebrew"),
	}},
	{code: "Armn", letters: []language.Script{language.Armenian}, measure: capitals, install: "Noto Sans Armenian", families: []family{
		{"Windows", "Segoe UI", windows + "segoeui.ttf", windows + "segoeuib.ttf"},
		{"macOS", "Mshtakan", mac + "Supplemental/Mshtakan.ttc", mac + "Supplemental/Mshtakan.ttc"},
		noto("Armenian"),
	}},
}

const (
	windows = `C:\Windows\Fonts\`
	mac     = "/System/Library/Fonts/"
	cjk     = "/usr/share/fonts/opentype/noto/NotoSansCJK-"
)

// noto is a family of Debian's package fonts-noto-core.
func noto(script string) family {
	path := "/usr/share/fonts/truetype/noto/NotoSans" + script
	return family{"Linux", "Noto Sans " + script, path + "-Regular.ttf", path + "-Bold.ttf"}
}

func roboto() trio { return trio{robotoRegular(), robotoBold(), robotoCondensed()} }

func notoArabic() trio { return trio{arabicRegular(), arabicBold(), arabicBold()} }
