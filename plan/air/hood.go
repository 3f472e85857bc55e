package air

import (
	"math"

	"dustbook/plan/unit"
)

// HoodPressure is the magnitude of the hood static pressure, SPh = (1 + F) VP,
// in Pa: one velocity pressure to set the air moving, F for the entry, both at
// the size of the port. Range: F not negative. Source: study notes.
func HoodPressure(f float64, vp unit.Pressure) unit.Pressure {
	return unit.Pressure((1 + f) * float64(vp))
}

// EntryCoefficient is Ce = 1/√(1 + F): the flow a hood passes over the flow it
// would pass without loss. Range: F not negative. Source: study notes.
func EntryCoefficient(f float64) float64 { return 1 / math.Sqrt(1+f) }

// MeasuredEntry is Ce = √(VP/SPh) from a measured velocity pressure and hood
// static pressure. Range: both greater than zero. Source: study notes.
func MeasuredEntry(vp, hood unit.Pressure) float64 {
	return math.Sqrt(math.Abs(float64(vp)) / math.Abs(float64(hood)))
}

// HoodLoss is the entry loss coefficient F = 1/Ce² − 1 of an entry
// coefficient. Range: Ce greater than 0, up to 1.
func HoodLoss(ce float64) float64 { return 1/(ce*ce) - 1 }

// HoodFlow is the flow of a hood from its static pressure,
// Q = A Ce √(2 |SPh|/ρ), in m³/s. The sign of the pressure does not matter.
func HoodFlow(area unit.Area, ce float64, hood unit.Pressure, s State) unit.Flow {
	v := s.Speed(unit.Pressure(math.Abs(float64(hood))))
	return unit.Flow(float64(area) * ce * float64(v))
}
