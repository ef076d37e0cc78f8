package site

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	qrcode "github.com/skip2/go-qrcode"
)

// minModule is the least width of a module in mm: common practice, no source. Four dots of a 300 dpi printer, as qrcode.com asks, are 0.34 mm.
const minModule = 1.0

// A code is a QR code as drawn: level Q, which mends about 25 % of its codewords, with the quiet zone of 4 modules that ISO/IEC 18004 asks for.
type code struct {
	version int // 1 to 40
	modules int // along a side, quiet zone included
	path    string
}

// level is that of every code, by its letter in the standard. The library calls it "High".
const level = "Q"

// encode draws a text. Capitals and digits alone keep the code small: ISO/IEC 18004 packs them at 5.5 bits a character.
func encode(text string) (code, error) {
	qr, err := qrcode.New(text, qrcode.High)
	if err != nil {
		return code{}, fmt.Errorf("%q does not fit in a code; choose a shorter base address: %w", text, err)
	}
	bitmap := qr.Bitmap()
	return code{qr.VersionNumber, len(bitmap), runs(bitmap)}, nil
}

// runs draws each row of dark modules as rectangles one module high.
func runs(bitmap [][]bool) string {
	var path strings.Builder
	for y, row := range bitmap {
		for x := 0; x < len(row); x++ {
			if !row[x] {
				continue
			}
			from := x
			for x < len(row) && row[x] {
				x++
			}
			fmt.Fprintf(&path, "M%d %dh%dv1h-%dz", from, y, x-from, x-from)
		}
	}
	return path.String()
}

// svg is the code as an inline drawing without a size of its own.
func (c code) svg() template.HTML {
	return template.HTML(fmt.Sprintf(
		`<svg viewBox="0 0 %d %d" shape-rendering="crispEdges" aria-hidden="true" focusable="false"><path fill="#fff" d="M0 0h%dv%dH0z"/><path d="%s"/></svg>`,
		c.modules, c.modules, c.modules, c.modules, c.path))
}

// size is the side in mm, quiet zone included: the wish of the layout, or more when a module would be too small.
func (c code) size(wish float64) float64 { return max(wish, float64(c.modules)*minModule) }

// module is the side of a module in mm, to the thousandth, in a code of a size in mm.
func (c code) module(size float64) float64 { return math.Round(size/float64(c.modules)*1000) / 1000 }
