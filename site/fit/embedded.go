package fit

import "embed"

// The fonts in the program and the licences that go with them; fonts/SOURCES.md says where they come from.
//
//go:embed fonts/*.ttf fonts/*.txt
var inside embed.FS

// embedded panics when a file is not in the program, which was built wrongly then.
func embedded(file string) []byte {
	data, err := inside.ReadFile("fonts/" + file)
	if err != nil {
		panic(err)
	}
	return data
}

// A Licence is the text under which fonts in the program may be passed on. It has to go with them.
type Licence struct {
	Fonts string // "Roboto and Roboto Condensed"
	File  string // "Roboto-LICENSE.txt"
	Text  []byte
}

// Licences cover all fonts in the program.
func Licences() []Licence {
	return []Licence{
		{"Roboto and Roboto Condensed", "Roboto-LICENSE.txt", embedded("Roboto-LICENSE.txt")},
		{"Noto Sans Arabic", "NotoSansArabic-OFL.txt", embedded("NotoSansArabic-OFL.txt")},
	}
}
