package pictograms

import (
	"embed"
	"html/template"
	"slices"
)

// A Name is one of the pictograms below.
type Name string

const (
	keepOut                 Name = "keep_out"
	noEatingDrinkingSmoking Name = "no_eating_drinking_smoking"
	closeWindow             Name = "close_window"
	petsIn                  Name = "pets_in"
)

var names = []Name{keepOut, noEatingDrinkingSmoking, closeWindow, petsIn}

//go:embed svg/*.svg
var drawings embed.FS

// SVG is the drawing as an svg element to set into HTML. It is empty for a name that is none of the constants.
func SVG(name Name) template.HTML {
	if !slices.Contains(names, name) {
		return ""
	}
	drawing, err := drawings.ReadFile("svg/" + string(name) + ".svg")
	if err != nil {
		return ""
	}
	return template.HTML(drawing)
}
