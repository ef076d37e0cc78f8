package pictograms

import (
	"embed"
	"html/template"
	"slices"
)

// A Name is one of the pictograms below.
type Name string

const (
	KeepOut                 Name = "keep_out"
	NoEatingDrinkingSmoking Name = "no_eating_drinking_smoking"
	LeaveBag                Name = "leave_bag" // do not touch the waste bags
	FanOff                  Name = "fan_off"   // window fans and air conditioners
	CloseWindow             Name = "close_window"
	PetsIn                  Name = "pets_in"
	WashHands               Name = "wash_hands"
	Call                    Name = "call"
)

var names = []Name{KeepOut, NoEatingDrinkingSmoking, LeaveBag, FanOff, CloseWindow, PetsIn, WashHands, Call}

//go:embed svg/*.svg
var drawings embed.FS

// Names lists all pictograms, the prohibitions first.
func Names() []Name { return slices.Clone(names) }

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
