package air

import (
	"math"

	"dustbook/plan/unit"
)

// State is air as a duct sees it.
type State struct {
	Density   unit.Density
	Viscosity unit.Viscosity // dynamic
}

var (
	seaPressure     = atmosphereTable.Figure("sea level pressure")
	seaTemperature  = atmosphereTable.Figure("sea level temperature")
	lapse           = atmosphereTable.Figure("lapse")
	earthRadius     = atmosphereTable.Figure("earth radius")
	gasOfAir        = atmosphereTable.Figure("gas constant") / atmosphereTable.Figure("molar mass") // J/(kg K)
	heightPower     = atmosphereTable.Figure("gravity") / (gasOfAir * lapse)
	sutherlandScale = atmosphereTable.Figure("sutherland factor")
	sutherlandAdd   = atmosphereTable.Figure("sutherland temperature")
	rated           = At(unit.Length(atmosphereTable.Figure("rated altitude")), unit.Temperature(atmosphereTable.Figure("rated temperature")))
)

// Pressure is the pressure p of the standard atmosphere at a measured altitude
// z, in Pa: p = p0 (1 − L h/T0)^(g/RL), with h the geopotential height of z.
// Range: the altitudes of Altitudes. Source: U.S. Standard Atmosphere 1976.
func Pressure(altitude unit.Length) unit.Pressure {
	z := float64(altitude)
	h := earthRadius * z / (earthRadius + z)
	return unit.Pressure(seaPressure * math.Pow(1-lapse*h/seaTemperature, heightPower))
}

// Altitudes is the range of altitudes that Pressure and At are good for.
func Altitudes() (lowest, highest unit.Length) {
	return unit.Length(atmosphereTable.Figure("lowest altitude")), unit.Length(atmosphereTable.Figure("highest altitude"))
}

// At is dry air at an altitude and a temperature T: density ρ = p/(R T) from
// the pressure of the standard atmosphere and the gas law, viscosity
// μ = β T^1.5/(T + S) from Sutherland's formula. Range: the altitudes of
// Altitudes, 200 to 400 K. Source: U.S. Standard Atmosphere 1976.
func At(altitude unit.Length, temperature unit.Temperature) State {
	t := float64(temperature)
	return State{
		Density:   unit.Density(float64(Pressure(altitude)) / (gasOfAir * t)),
		Viscosity: unit.Viscosity(sutherlandScale * t * math.Sqrt(t) / (t + sutherlandAdd)),
	}
}

// Standard is the state that rated figures stand at when nothing else is said:
// sea level and 70 °F (data rows "rated altitude" and "rated temperature").
func Standard() State { return rated }

// Kinematic is the kinematic viscosity ν = μ/ρ, in m²/s.
func (s State) Kinematic() float64 { return float64(s.Viscosity) / float64(s.Density) }

// Ratio is the density ratio df: the density over that of Standard.
func (s State) Ratio() float64 { return float64(s.Density) / float64(rated.Density) }

// VelocityPressure is VP = ρ V²/2, in Pa, never negative.
func (s State) VelocityPressure(v unit.Velocity) unit.Pressure {
	return unit.Pressure(float64(s.Density) / 2 * float64(v) * float64(v))
}

// Speed is the velocity V = √(2 VP/ρ) of a velocity pressure, in m/s. A
// negative pressure gives the same speed the other way.
func (s State) Speed(vp unit.Pressure) unit.Velocity {
	v := math.Sqrt(2 * math.Abs(float64(vp)) / float64(s.Density))
	return unit.Velocity(math.Copysign(v, float64(vp)))
}

// CarryRaise is what a transport velocity is multiplied by in thin air:
// 1/√df, never below 1. It keeps the velocity pressure that carries the
// material in standard air.
func CarryRaise(s State) float64 { return math.Max(1, 1/math.Sqrt(s.Ratio())) }
