package air

import (
	"math"

	"dustbook/plan/unit"
)

// Balance is what the trade's hand method does with a way whose static
// pressure at a junction is less than the governing one.
type Balance uint8

const (
	Even      Balance = iota // close enough: nothing is done
	Raised                   // its flow is raised until it loses as much
	WrongSize                // too far apart: its size, or its hood, has to change
)

var (
	balanceAccept   = handTable.Figure("balance accept")
	balanceRedesign = handTable.Figure("balance redesign")
	fitSlowest      = handTable.Figure("fit slowest")
	fitFastest      = handTable.Figure("fit fastest")
)

// BalanceLimits are the ratios of two static pressures up to which the hand
// method takes them as equal, and past which it calls a size wrong. Source:
// ventilation manual, from memory.
func BalanceLimits() (accept, redesign float64) { return balanceAccept, balanceRedesign }

// Weigh compares the governing static pressure at a junction with a lesser
// one, both as magnitudes in Pa: their ratio and what the method does. Range:
// both greater than zero.
func Weigh(governing, own unit.Pressure) (ratio float64, does Balance) {
	ratio = unit.Six(float64(governing) / float64(own))
	switch {
	case ratio < balanceAccept:
		return ratio, Even
	case ratio <= balanceRedesign:
		return ratio, Raised
	}
	return ratio, WrongSize
}

// RaisedFlow is the flow at which a way loses the governing static pressure,
// Q √(SPgov/SP), in m³/s. Range: pressures greater than zero. Source: question
// bank on industrial ventilation.
func RaisedFlow(q unit.Flow, governing, own unit.Pressure) unit.Flow {
	return q * unit.Flow(math.Sqrt(float64(governing)/float64(own)))
}

// Stream is what one way brings to a junction.
type Stream struct {
	Flow    unit.Flow
	Dynamic unit.Pressure // its velocity pressure
}

// Merged is the velocity pressure that the streams of a junction bring along,
// weighed by flow: VPr = (Q1/Q3) VP1 + (Q2/Q3) VP2, in Pa; nought without flow.
// Source: question bank on industrial ventilation.
func Merged(streams ...Stream) unit.Pressure {
	flow, sum := 0.0, 0.0
	for _, s := range streams {
		flow += float64(s.Flow)
		sum += float64(s.Flow) * float64(s.Dynamic)
	}
	if flow == 0 {
		return 0
	}
	return unit.Pressure(sum / flow)
}

// Hasten is what the hand method adds to the static pressure where streams
// join: the rise from the velocity pressure they bring to that of the duct
// behind; nothing where that is less, for which it takes no credit. Source:
// ventilation manual, from memory.
func Hasten(brought, behind unit.Pressure) unit.Pressure { return max(0, behind-brought) }

// GateToBalance is the coefficient K, on the way's own velocity pressure, of a
// gate that makes it lose as much as the governing one at its own flow.
func GateToBalance(governing, own, dynamic unit.Pressure) float64 {
	return float64(governing-own) / float64(dynamic)
}

// FitRange is the range of velocities of the trade's friction fit, in m/s
// (common practice, no source).
func FitRange() (slowest, fastest unit.Velocity) {
	return unit.Velocity(fitSlowest * fpm), unit.Velocity(fitFastest * fpm)
}

// InFit reports whether a velocity lies within that range.
func InFit(v unit.Velocity) bool {
	slowest, fastest := FitRange()
	return unit.AtLeast(float64(v), float64(slowest)) && unit.AtLeast(float64(fastest), float64(v))
}
