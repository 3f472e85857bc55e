package air

import (
	"math"

	"dustbook/plan/unit"
)

var (
	laminarNumerator = frictionTable.Figure("laminar numerator")
	laminarTo        = frictionTable.Figure("laminar to")
	turbulentFrom    = frictionTable.Figure("turbulent from")
	colebrookSlope   = frictionTable.Figure("colebrook front") / math.Ln10 // for a natural logarithm
	colebrookRough   = 1 / frictionTable.Figure("colebrook rough")
	colebrookSmooth  = frictionTable.Figure("colebrook smooth")
)

// Laws are the Reynolds numbers up to which the laminar law holds and from
// which Colebrook's does.
func Laws() (laminar, turbulent float64) { return laminarTo, turbulentFrom }

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
	high, _ := colebrook(turbulentFrom, relative)
	return between(re, high)
}

// FactorFrom is FactorSlope for whoever asks again near by, as a search for
// flows does: root is 1/√f where the search for f starts and comes back as
// where it ended. From a start within a hundredth one step leaves less than
// 1e-9 of f, within a thousandth less than 1e-13; from further off it takes a
// second step. Range: that of Factor, root greater than zero.
func FactorFrom(root, re, relative float64) (f, slope, ended float64) {
	if re < turbulentFrom {
		if re > laminarTo {
			at, _ := colebrookStep(root, relative*colebrookRough, colebrookSmooth/turbulentFrom)
			f, slope = between(re, 1/(at*at))
			return f, slope, at
		}
		f = laminarNumerator / re
		return f, -f / re, root
	}
	a, b := relative*colebrookRough, colebrookSmooth/re
	x, moved := colebrookStep(root, a, b)
	if math.Abs(moved) > nearby*x {
		x, _ = colebrookStep(x, a, b)
	}
	f = 1 / (x * x)
	return f, colebrookRise(x, re, a, b) * f, x
}

// nearby is the share of 1/√f within which one step is enough.
const nearby = 0.01

// middle of the usual range of 1/√f: a start that is good for two steps.
const middle = 8

// between is the straight line between the two laws, from the factor at the
// end of the line.
func between(re, high float64) (f, slope float64) {
	low := laminarNumerator / laminarTo
	slope = (high - low) / (turbulentFrom - laminarTo)
	return low + slope*(re-laminarTo), slope
}

// colebrook solves x = −2 log10(ε/3.7d + 2.51 x/Re) for x = 1/√f. Two steps
// from the middle of the usual range leave less than 1e-11 of f at any Re up
// to 1e8.
func colebrook(re, relative float64) (f, slope float64) {
	a, b := relative*colebrookRough, colebrookSmooth/re
	x, _ := colebrookStep(middle, a, b)
	x, _ = colebrookStep(x, a, b)
	f = 1 / (x * x)
	return f, colebrookRise(x, re, a, b) * f
}

// colebrookStep is one step towards the root of g = x + k ln y with y = a + b x.
// Its derivatives are 1 + kb/y, −kb²/y² and 2kb³/y³, so a fourth-order step
// (multiplied by y³ here) costs one logarithm. It returns how far x moved too.
func colebrookStep(x, a, b float64) (next, moved float64) {
	y, k := a+b*x, colebrookSlope*b
	g, rise := x+colebrookSlope*math.Log(y), y+k
	bend := g * k * b
	moved = -g * y * (6*rise*rise + 3*bend) / (rise*(6*rise*rise+6*bend) + 2*g*b*bend)
	return x + moved, moved
}

// colebrookRise is the slope of ln f by Re, from dx/dRe = x k/(Re (y + k)).
func colebrookRise(x, re, a, b float64) float64 {
	k := colebrookSlope * b
	return -2 * k / (re * (a + b*x + k))
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
