package templates

import (
	"strconv"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// The drawing of a bore in drawing units: where its centre is and how wide it
// is.
const (
	boreCentre = 165
	boreRadius = 128
	wallWidth  = 6  // of the duct's wall
	besideLine = 16 // from a diameter to the numbers of its points
	offWall    = 8  // twice how far a number at the wall is moved inwards
	halfFigure = 4  // half the height of a figure
)

// traverseDrawing is a bore cut across, with the points of one set on two
// diameters at right angles.
type traverseDrawing struct {
	Set, Says          string
	Left, Right, Wall  string
	Centre, Radius     string
	Points             []drawnPoint
	BesideAt, HoleSide string
}

// drawnPoint is one point on each of the diameters: how far along it lies, and
// where its number stands along the level and beside the upright one.
type drawnPoint struct{ Number, Along, Named, Beside string }

func (b *Book) traverseDrawing(set duct.TraverseSet) traverseDrawing {
	at := func(x float64) string { return unit.Fixed(x, 1) }
	v := traverseDrawing{
		Set: set.Family, Says: b.words.Text("traverse.drawn", set.Family, strconv.Itoa(len(set.Fractions))),
		Left: at(boreCentre - boreRadius), Right: at(boreCentre + boreRadius), Wall: at(wallWidth), Centre: at(boreCentre), Radius: at(boreRadius),
		BesideAt: at(boreCentre + besideLine), HoleSide: at(boreCentre - boreRadius - 3*wallWidth),
	}
	for i, x := range set.Fractions {
		along := boreCentre - boreRadius + 2*boreRadius*x
		named := along + offWall*(0.5-x)
		v.Points = append(v.Points, drawnPoint{strconv.Itoa(i + 1), at(along), at(named), at(named + halfFigure)})
	}
	return v
}
