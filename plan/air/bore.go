package air

import (
	"math"

	"dustbook/plan/unit"
)

// Bore is the area A = π d²/4 of a round duct, in m².
func Bore(d unit.Length) unit.Area { return unit.Area(math.Pi / 4 * float64(d) * float64(d)) }

// Diameter is the diameter d = √(4 A/π) of a round duct, in m.
func Diameter(a unit.Area) unit.Length { return unit.Length(math.Sqrt(4 * float64(a) / math.Pi)) }

// SpeedIn is the mean velocity V = Q/A of a flow in a round duct, in m/s, with
// the flow's sign.
func SpeedIn(q unit.Flow, d unit.Length) unit.Velocity {
	return unit.Velocity(float64(q) / float64(Bore(d)))
}

// FlowIn is the flow Q = V A of a velocity in a round duct, in m³/s.
func FlowIn(v unit.Velocity, d unit.Length) unit.Flow {
	return unit.Flow(float64(v) * float64(Bore(d)))
}

// LargestBore is the largest diameter that keeps a flow at no less than a
// velocity: D = √(4 Q/(π V)), in m. The next stock size below it is the one to
// use. Range: both greater than zero. Source: filled calculation sheets.
func LargestBore(q unit.Flow, least unit.Velocity) unit.Length {
	return Diameter(unit.Area(float64(q) / float64(least)))
}

// Hydraulic is the hydraulic diameter Dh = 4 A/P of a rectangle, in m: the
// diameter friction is reckoned with.
func Hydraulic(a, b unit.Length) unit.Length { return 2 * a * b / (a + b) }

var (
	equivalentFront   = frictionTable.Figure("equivalent front")
	equivalentProduct = frictionTable.Figure("equivalent product")
	equivalentSum     = frictionTable.Figure("equivalent sum")
)

// Equivalent is the diameter De of the round duct that loses as much pressure
// at the same flow as a rectangular one: De = 1.30 (ab)^0.625/(a+b)^0.25, in m.
// Range: sides of up to 8 to 1 (common practice, no source). Source: public
// handbook page.
func Equivalent(a, b unit.Length) unit.Length {
	product := math.Pow(float64(a)*float64(b), equivalentProduct)
	return unit.Length(equivalentFront * product / math.Pow(float64(a)+float64(b), equivalentSum))
}
