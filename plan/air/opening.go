package air

import "dustbook/plan/unit"

var discharge = fittingTable.Figure("discharge")

// Discharge is the discharge coefficient Cd of an opening when nothing better
// is known. Source: open building-airflow library.
func Discharge() float64 { return discharge }

// Orifice is the flow through an opening, Q = Cd A √(2 Δp/ρ), in m³/s, with
// the sign of the pressure difference. Range: openings wide against their
// depth, Cd greater than 0, up to 1. Source: open building-airflow library.
func Orifice(area unit.Area, cd float64, dp unit.Pressure, s State) unit.Flow {
	return unit.Flow(cd * float64(area) * float64(s.Speed(dp)))
}

// LeakCoefficient is the loss coefficient K = 1/share² of a shut gate that
// passes a share of the flow its bore would pass with one velocity pressure
// lost in it, on that bore's velocity pressure. Range: share greater than 0, up
// to 1; a share of 0 gives +Inf, a gate that does not leak.
func LeakCoefficient(share float64) float64 { return 1 / (share * share) }

// FlowCoefficient is the loss coefficient K on a bore's own velocity pressure
// of a thing that passes a flow at a pressure loss: K = Δp/(ρ V²/2). Range:
// flow and loss greater than zero.
func FlowCoefficient(q unit.Flow, dp unit.Pressure, bore unit.Length, s State) float64 {
	return float64(dp) / float64(s.VelocityPressure(SpeedIn(q, bore)))
}
