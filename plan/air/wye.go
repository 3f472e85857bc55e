package air

import (
	"math"

	"dustbook/plan/unit"
)

// Wye is a junction that is charged by how the flow splits: a branch of area
// ratio b that joins a run of the same size as the combined duct.
type Wye struct {
	area float64 // b, branch area over combined area
	turn float64 // F
	run  float64 // first coefficient of the run's loss
}

// Split is what a Wye costs at one flow ratio: loss coefficients of branch and
// run on the velocity pressure of the COMBINED flow, negative where one stream
// drives the other, and their derivatives by the flow ratio.
type Split struct {
	Branch, Run           float64
	BranchSlope, RunSlope float64
}

var (
	wyeTurn        = curveOf(wyeTable, "angle_deg", "f")
	wyeRun         = curveOf(wyeTable, "angle_deg", "run")
	wyeSmallBranch = fittingTable.Figure("wye small branch")
	wyeReduced     = fittingTable.Figure("wye reduced")
	wyeLittle      = fittingTable.Figure("wye little")
	wyeMuch        = fittingTable.Figure("wye much")
	wyeBridge      = fittingTable.Figure("wye bridge")
)

const sameSize = 1e-6 // sizes closer than this share of them are equal

// Converging is the junction of a branch with a run into a combined duct, by
// bores and the angle between branch and run. It is not ok outside the
// formula's range: a trunk that changes size at the junction, a branch wider
// than the trunk, an angle outside 30 to 90°. Between the tabled angles 30, 45,
// 60 and 90° the two parameters that depend on the angle run straight.
// Source: Crane TP 410 (2009) as carried by the open fluid-mechanics library.
func Converging(angle unit.Angle, run, branch, combined unit.Length) (w Wye, ok bool) {
	least, _ := wyeTurn.first()
	most, _ := wyeTurn.last()
	x, trunk := float64(angle), float64(combined)
	inRange := x >= least && x <= most && trunk > 0 && branch > 0
	if !inRange || math.Abs(float64(run-combined)) > sameSize*trunk || float64(branch) > trunk*(1+sameSize) {
		return Wye{}, false
	}
	return Wye{area: areaRatio(branch, combined), turn: wyeTurn.read(x), run: wyeRun.read(x)}, true
}

// Loss is what the junction costs at a flow ratio x = Qbranch/Qcombined:
// Kbranch = C [1 + (x/b)² − 2(1−x)² − (F/b)x²], Krun = R x − x² − (F/b)x²
// (R 2 up to 60°, where it is 1 − (1−x)² − (F/b)x², and 1.55 at 90°). C is 1
// for b up to 0.35, else 0.9(1−x) up to x 0.4 and 0.55 above; the formula's
// small step there is closed by a straight line from 0.40 to 0.41, so that
// Newton's method finds its root. Not ok outside 0 to 1.
func (w Wye) Loss(x float64) (Split, bool) {
	if !(x >= 0 && x <= 1) {
		return Split{}, false
	}
	over, side := 1/(w.area*w.area)-w.turn/w.area, w.turn/w.area
	bracket := 1 + over*x*x - 2*(1-x)*(1-x)
	bracketSlope := 2*over*x + 4*(1-x)
	c, cSlope := w.share(x)
	return Split{
		Branch:      c * bracket,
		BranchSlope: c*bracketSlope + cSlope*bracket,
		Run:         w.run*x - x*x - side*x*x,
		RunSlope:    w.run - 2*x - 2*side*x,
	}, true
}

// Parts are the figures of the formula at a flow ratio, for whoever writes it
// out: b, F, R and C.
func (w Wye) Parts(x float64) (area, turn, run, share float64) {
	share, _ = w.share(x)
	return w.area, w.turn, w.run, share
}

// share is C with its derivative.
func (w Wye) share(x float64) (c, slope float64) {
	if w.area <= wyeSmallBranch {
		return 1, 0
	}
	if x <= wyeLittle {
		return wyeReduced * (1 - x), -wyeReduced
	}
	if x >= wyeLittle+wyeBridge {
		return wyeMuch, 0
	}
	low := wyeReduced * (1 - wyeLittle)
	slope = (wyeMuch - low) / wyeBridge
	return low + slope*(x-wyeLittle), slope
}
