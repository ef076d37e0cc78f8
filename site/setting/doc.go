// Package setting puts text on paper of a size: the type of a letter and the sides that it needs, headlines in their boxes, the legend of a sign on one sheet or on several. It knows
// views and fonts, and nothing of what they say. Everything is reckoned before any browser sees it; a browser only prints what was reckoned.
package setting

import (
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/templates"
)

// Letter lays a letter out on one side of paper, or on several when one does not hold it in the smallest type that the wish allows. It then takes the first look, the quickest to
// read, in which the letter needs no more sides. Beside has the fonts of a second language on the same side. It is an error when some part is too high for a side; blocks are how the
// error calls them.
func Letter(cast, beside fit.Cast, view templates.Face, head string, wish Wish, blocks []string) ([]templates.Face, error) {
	looks, err := wish.looks(cast, view.Letter.Text, head)
	if err != nil {
		return nil, err
	}
	return ruler{cast, beside}.sides(view, looks, blocks)
}

// HeightMM is the height that was reckoned for a side.
func HeightMM(cast, beside fit.Cast, side templates.Face) float64 {
	return ruler{cast, beside}.letterHeight(side)
}
