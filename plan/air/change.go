package air

import (
	"math"

	"dustbook/plan/unit"
)

// Change is what stands where two sizes meet.
type Change uint8

const (
	None   Change = iota // no loss is charged
	Abrupt               // a step
	Taper                // a stock reducer
)

var changeNames = [...]string{None: "none", Abrupt: "abrupt", Taper: "taper"}

// String is the word the shop file uses.
func (c Change) String() string { return changeNames[c] }

// ReadChange reads the word of the shop file: none, abrupt or taper.
func ReadChange(word string) (Change, bool) {
	for i, name := range changeNames {
		if name == word {
			return Change(i), true
		}
	}
	return 0, false
}

var (
	stockCone     = unit.Angle(fittingTable.Figure("stock cone"))
	wideningSlope = fittingTable.Figure("widening slope")
	wideningTo    = unit.Angle(fittingTable.Figure("widening to"))
	narrowingStep = curveOf(stepTable, "area_ratio", "k")
	narrowingCone = curveOf(taperTable, "cone_deg", "share")
)

// StockCone is the included angle of a stock reducer (common practice, no
// source).
func StockCone() unit.Angle { return stockCone }

// Widening is the loss coefficient K where the air passes from a smaller to a
// larger round duct, on the velocity pressure of the smaller, upstream end. A
// taper is a stock reducer. Zero where the duct does not widen. Sources: see
// WideningCone.
func Widening(from, to unit.Length, how Change) float64 {
	switch how {
	case Abrupt:
		return wideningStep(from, to)
	case Taper:
		return WideningCone(from, to, stockCone)
	}
	return 0
}

// wideningStep is the loss of a step by Borda and Carnot, (1 − A1/A2)².
func wideningStep(from, to unit.Length) float64 {
	if to <= from {
		return 0
	}
	lost := 1 - areaRatio(from, to)
	return lost * lost
}

// WideningCone is Widening through a cone of an included angle θ: the loss of
// a step times 2.6 sin(θ/2) up to 45°, a whole step beyond. Range: 0 to 180°.
// Source: Crane TP 410 (2009) as carried by the open fluid-mechanics library.
func WideningCone(from, to unit.Length, cone unit.Angle) float64 {
	step := wideningStep(from, to)
	if cone > wideningTo {
		return step
	}
	return step * wideningSlope * math.Sin(float64(cone)*math.Pi/360)
}

// Narrowing is the loss coefficient K where the air passes from a larger to a
// smaller round duct, on the velocity pressure of the smaller, downstream end.
// A taper is a stock reducer. Zero where the duct does not narrow. Sources:
// abrupt by area ratio, ventilation manual, from memory; taper see
// NarrowingCone.
func Narrowing(from, to unit.Length, how Change) float64 {
	switch how {
	case Abrupt:
		return narrowingStepLoss(from, to)
	case Taper:
		return NarrowingCone(from, to, stockCone)
	}
	return 0
}

func narrowingStepLoss(from, to unit.Length) float64 {
	if to >= from {
		return 0
	}
	return narrowingStep.read(areaRatio(to, from))
}

// NarrowingCone is Narrowing through a cone of an included angle: the tabled
// share of the rise in velocity pressure, share × (1 − (A2/A1)²); the share at
// 5° below that, a step beyond 60°. Range: 0 to 180°. Source: ventilation
// manual, from memory.
func NarrowingCone(from, to unit.Length, cone unit.Angle) float64 {
	if widest, _ := narrowingCone.last(); float64(cone) > widest {
		return narrowingStepLoss(from, to)
	}
	if to >= from {
		return 0
	}
	ratio := areaRatio(to, from)
	return narrowingCone.read(float64(cone)) * (1 - ratio*ratio)
}

// areaRatio is the area of the smaller bore over that of the larger.
func areaRatio(small, large unit.Length) float64 {
	beta := float64(small) / float64(large)
	return beta * beta
}
