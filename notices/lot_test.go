package notices

import (
	"math"
	"testing"
)

// The lot of a worked example, drawn by hand on squared paper, 1 square a foot. The house at 14 Alder Court is drawn 28 ft wide and 36 ft deep with its street
// wall on the line Y = 0; homes are drawn 24 ft square. Work is on the street side and on the side of No. 12.
//
//	No. 12, lower number, same side of the street, 14 ft off:  X from -36 to -14, facing wall X = -14
//	No. 16, higher number, 20 ft off:                          X from 48 to 70, facing wall X = 48
//	No. 13, across the street, 40 ft off:                      Y from -62 to -40, facing wall Y = -40
//	21 Birch Lane, behind, 25.5 ft off:                        Y from 61.5 to 83.5, facing wall Y = 61.5
func lotExample() Job {
	measured := func(id, address string, gap Feet) Neighbour {
		return Neighbour{ID: id, Address: address, Gap: gap, GapKnown: true, Near: NotSure}
	}
	return Job{
		Address: "14 Alder Court, Larkfield", State: "WI",
		Work: []Work{{ID: "porch", Where: Outside, Area: "front_porch", Faces: []string{"street", "12 Alder Court"}, Storey: 1}},
		Neighbours: []Neighbour{
			measured("n16", "16 Alder Court", 20), measured("n12", "12 Alder Court", 14), measured("n13", "13 Alder Court", 40), measured("b21", "21 Birch Lane", 25.5),
		},
	}
}

func TestLotOfAWorkedExample(t *testing.T) {
	lot := lotOf(lotExample())
	if lot.Sketch || lot.Reach != 20 || len(lot.Work) != 2 || lot.Work[0] != (Wall{0, 0, 28, 0}) || lot.Work[1] != (Wall{0, 0, 0, 36}) {
		t.Errorf("the house and its work: %+v", lot)
	}
	want := map[string]LotHome{
		"n12": {ID: "n12", Number: "12", Plot: Plot{-38, 0, 24, 24}, Facing: Wall{-14, 0, -14, 24}, Near: true, Known: true, gap: 14},
		"n16": {ID: "n16", Number: "16", Plot: Plot{48, 0, 24, 24}, Facing: Wall{48, 0, 48, 24}, Near: true, Known: true, gap: 20},
		"n13": {ID: "n13", Number: "13", Plot: Plot{0, -64, 24, 24}, Facing: Wall{0, -40, 24, -40}, Known: true, gap: 40},
		"b21": {ID: "b21", Number: "21", Plot: Plot{0, 61.5, 24, 24}, Facing: Wall{0, 61.5, 24, 61.5}, Known: true, gap: 25.5},
	}
	for _, home := range lot.Homes {
		if home != want[home.ID] {
			t.Errorf("%s is drawn as\n%+v\nwant\n%+v", home.ID, home, want[home.ID])
		}
		if drawn := apart(home.Plot, lot.House); math.Abs(drawn-float64(home.gap)) > 1e-9 {
			t.Errorf("%s is drawn %v ft from the house, and measured %v", home.ID, drawn, home.gap)
		}
	}
	if len(lot.Homes) != len(want) {
		t.Errorf("%d homes are drawn", len(lot.Homes))
	}
}

// apart is the least distance between two rectangles that stand square to each other, by Pythagoras.
func apart(a, b Plot) float64 {
	dx := max(float64(a.X-(b.X+b.Width)), float64(b.X-(a.X+a.Width)), 0)
	dy := max(float64(a.Y-(b.Y+b.Depth)), float64(b.Y-(a.Y+a.Depth)), 0)
	return math.Hypot(dx, dy)
}

// Not measured: drawn within the reach where it counts as near, beyond it where it does not, and said to be a sketch.
func TestLotOfAHomeThatNobodyMeasured(t *testing.T) {
	for near, within := range map[Answer]bool{Yes: true, NotSure: true, No: false} {
		job := lotExample()
		job.Neighbours = []Neighbour{{ID: "n12", Address: "12 Alder Court", Near: near}}
		lot := lotOf(job)
		home := lot.Homes[0]
		if !lot.Sketch || home.Known || home.Near != within || (apart(home.Plot, lot.House) <= float64(lot.Reach)) != within {
			t.Errorf("near %s is drawn as %+v", near, home)
		}
	}
}

// The side of a wall comes from its address, whether or not anybody listed the neighbour there.
func TestSideOfAFaceThatIsNotListed(t *testing.T) {
	job := lotExample()
	listed := lotOf(job).Work
	job.Neighbours = nil
	if alone := lotOf(job).Work; len(alone) != 2 || alone[1] != listed[1] {
		t.Errorf("without neighbours the work is on %v", alone)
	}
}
