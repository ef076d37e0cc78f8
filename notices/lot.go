package notices

import (
	"slices"
	"strings"
)

// A Lot is the plan drawing of a job, in ft, with the street below. Where a gap was measured it is to scale; the shapes of houses never are. The drawing may be
// the mirror image of the street: it says which side of a home faces the work, and never left or right.
type Lot struct {
	House  Plot
	Work   []Wall
	Reach  Feet
	Homes  []LotHome
	Sketch bool // some gap was not measured
}

// A Plot is a rectangle: its lower corner with the smaller coordinates, and its size. Y grows away from the street.
type Plot struct{ X, Y, Width, Depth Feet }

// A Wall is a side of the house that is worked on.
type Wall struct{ FromX, FromY, ToX, ToY Feet }

// A LotHome is a neighbour's home.
type LotHome struct {
	ID     string
	Number string
	Plot   Plot
	Facing Wall // the side that faces the work
	Near   bool
	Known  bool // the gap was measured
	gap    Feet
}

// The house as drawn, in ft. Nobody measured it: the shape is a sketch.
var drawnHouse = Plot{0, 0, 28, 36}

const (
	drawnHome = 24 // ft, a neighbour's home as drawn
	farGap    = 30 // ft, to a home that is beyond the reach and was not measured
)

// A side of the house.
type side int

const (
	front side = iota
	back
	lower  // towards the lower house numbers
	higher // towards the higher ones
)

func lotOf(job Job) Lot {
	lot := Lot{House: drawnHouse, Reach: Feet(job.rule(WindowReach).Value)}
	for _, s := range job.workedSides() {
		lot.Work = append(lot.Work, wallOf(drawnHouse, s))
	}
	placed := map[side]int{}
	for _, n := range inStreetOrder(job.Neighbours) {
		s := job.sideOf(n)
		home := job.lotHome(n, s, placed[s])
		placed[s]++
		lot.Sketch = lot.Sketch || !home.Known
		lot.Homes = append(lot.Homes, home)
	}
	return lot
}

// workedSides are the sides that outside work faces; by its area when nobody said.
func (job Job) workedSides() []side {
	var sides []side
	for _, w := range job.outsideWork() {
		for _, face := range w.Faces {
			sides = append(sides, job.sideNamed(face))
		}
		if len(w.Faces) == 0 {
			sides = append(sides, sideOfArea(w.Area))
		}
	}
	slices.Sort(sides)
	return slices.Compact(sides)
}

func (job Job) sideNamed(face string) side {
	switch face {
	case "street":
		return front
	case "yard", "alley":
		return back
	}
	return job.sideOf(Neighbour{Address: face})
}

func sideOfArea(a Area) side {
	switch a {
	case "back_porch", "back_of_house", "back_bedroom", "shed", "garage":
		return back
	case "side_of_house":
		return higher
	}
	return front
}

// sideOf places a neighbour by its address: the same side of the same street beside the house, the other side across it, another street behind.
func (job Job) sideOf(n Neighbour) side {
	number, street := splitAddress(n.Address)
	ours, ourStreet := splitAddress(string(job.street()))
	switch {
	case !strings.EqualFold(street, ourStreet):
		return back
	case number%2 != ours%2:
		return front
	case number < ours:
		return lower
	}
	return higher
}

func wallOf(p Plot, s side) Wall {
	left, right, near, far := p.X, p.X+p.Width, p.Y, p.Y+p.Depth
	switch s {
	case front:
		return Wall{left, near, right, near}
	case back:
		return Wall{left, far, right, far}
	case lower:
		return Wall{left, near, left, far}
	}
	return Wall{right, near, right, far}
}

// lotHome places the home beyond its gap, beside those that are already on that side.
func (job Job) lotHome(n Neighbour, s side, before int) LotHome {
	gap := n.Gap
	if !n.GapKnown {
		gap = job.drawnGap(n)
	}
	number, _, _ := strings.Cut(n.Address, " ")
	home := LotHome{ID: n.ID, Number: number, Near: job.withinReach(n), Known: n.GapKnown, gap: n.Gap}
	along := Feet(before) * (drawnHome + 8)
	h := drawnHouse
	switch s {
	case front:
		home.Plot, home.Facing = around(Plot{h.X + along, h.Y - gap - drawnHome, drawnHome, drawnHome}, back)
	case back:
		home.Plot, home.Facing = around(Plot{h.X + along, h.Y + h.Depth + gap, drawnHome, drawnHome}, front)
	case lower:
		home.Plot, home.Facing = around(Plot{h.X - gap - drawnHome, h.Y + along, drawnHome, drawnHome}, higher)
	default:
		home.Plot, home.Facing = around(Plot{h.X + h.Width + gap, h.Y + along, drawnHome, drawnHome}, lower)
	}
	return home
}

func around(p Plot, facing side) (Plot, Wall) { return p, wallOf(p, facing) }

// drawnGap is where a home is drawn that nobody measured: at the reach when it counts as near, well beyond it when it does not.
func (job Job) drawnGap(n Neighbour) Feet {
	if job.withinReach(n) {
		return Feet(job.rule(WindowReach).Value) - 4
	}
	return farGap
}
