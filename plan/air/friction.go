package air

import (
	"math"

	"dustbook/plan/unit"
)

var (
	laminarNumerator = frictionTable.figure("laminar numerator")
	laminarTo        = frictionTable.figure("laminar to")
	turbulentFrom    = frictionTable.figure("turbulent from")
	colebrookSlope   = frictionTable.figure("colebrook front") / math.Ln10 // for a natural logarithm
	colebrookRough   = 1 / frictionTable.figure("colebrook rough")
	colebrookSmooth  = frictionTable.figure("colebrook smooth")
)

// Reynolds is Re = ρ |V| d/μ.
func Reynolds(s State, v unit.Velocity, d unit.Length) float64 {
	return float64(s.Density) * math.Abs(float64(v)) * float64(d) / float64(s.Viscosity)
}

// Factor is the Darcy friction factor f by Reynolds number and relative
// roughness ε/d: 64/Re up to 2000, Colebrook's law solved from 4000, a straight
// line in Re between. Range: Re greater than zero, ε/d from 0 to 0.05. Sources:
// Colebrook 1939; the limits and the line are common practice.
func Factor(re, relative float64) float64 {
	f, _ := FactorSlope(re, relative)
	return f
}

// FactorSlope is Factor with its derivative by Re, for Newton's method. At
// 2000 it is the laminar slope, at 4000 that of Colebrook's law.
func FactorSlope(re, relative float64) (f, slope float64) {
	if re <= laminarTo {
		f = laminarNumerator / re
		return f, -f / re
	}
	if re >= turbulentFrom {
		return colebrook(re, relative)
	}
	low := laminarNumerator / laminarTo
	high, _ := colebrook(turbulentFrom, relative)
	slope = (high - low) / (turbulentFrom - laminarTo)
	return low + slope*(re-laminarTo), slope
}

// colebrook solves x = −2 log10(ε/3.7d + 2.51 x/Re) for x = 1/√f. With
// y = a + b x the function g = x + k ln y has the derivatives 1 + kb/y,
// −kb²/y² and 2kb³/y³, so a fourth-order step (multiplied by y³ here) costs one
// logarithm. Two steps from the middle of the usual range leave less than 1e-11
// of f at any Re up to 1e8.
func colebrook(re, relative float64) (f, slope float64) {
	const middle = 8 // start for 1/√f: f about 0.016
	a, b := relative*colebrookRough, colebrookSmooth/re
	k, x := colebrookSlope*b, float64(middle)
	for range 2 {
		y := a + b*x
		g, rise := x+colebrookSlope*math.Log(y), y+k
		bend := g * k * b
		x -= g * y * (6*rise*rise + 3*bend) / (rise*(6*rise*rise+6*bend) + 2*g*b*bend)
	}
	f = 1 / (x * x)
	return f, -2 * f * k / (re * (a + b*x + k)) // from dx/dRe = x k/(Re (y + k))
}

// Straight is the friction loss of a straight round duct by Darcy and
// Weisbach, Δp = f (L/d) ρ V²/2, in Pa, with the flow's sign; zero at no flow.
// For a rectangle give its hydraulic diameter and a flow that makes its
// velocity. Range: that of Factor.
func Straight(s State, d, roughness, length unit.Length, q unit.Flow) unit.Pressure {
	loss, _ := StraightSlope(s, d, roughness, length, q)
	return loss
}

// StraightSlope is Straight with its derivative by the flow, in Pa s/m³, which
// is greater than zero at every flow, none included.
func StraightSlope(s State, d, roughness, length unit.Length, q unit.Flow) (loss unit.Pressure, slope float64) {
	bore, area := float64(d), float64(Bore(d))
	v := math.Abs(float64(q)) / area
	reach := float64(s.Density) * bore / float64(s.Viscosity) // Re = reach × v
	if reach*v <= laminarTo {
		slope = laminarNumerator / 2 * float64(s.Viscosity) * float64(length) / (bore * bore * area)
		return unit.Pressure(slope * float64(q)), slope
	}
	f, df := FactorSlope(reach*v, float64(roughness)/bore)
	run := float64(length) / bore * float64(s.Density) / 2
	size := run * f * v * v
	return unit.Pressure(math.Copysign(size, float64(q))), run * v * (2*f + v*df*reach) / area
}
