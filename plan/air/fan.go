package air

import "dustbook/plan/unit"

// StaticOfFan is the fan static pressure FSP = SPout − SPin − VPin, in Pa;
// pressures below the room's are negative. Source: question bank.
func StaticOfFan(spOut, spIn, vpIn unit.Pressure) unit.Pressure { return spOut - spIn - vpIn }

// TotalOfFan is the fan total pressure FTP = TPout − TPin, in Pa. Source:
// question bank.
func TotalOfFan(tpOut, tpIn unit.Pressure) unit.Pressure { return tpOut - tpIn }

// Scaling is a fan moved to other conditions: speed, wheel diameter and air
// density there over those its figures were taken at. What does not change is
// 1, as in Unchanged. Range: same shape of fan, incompressible air (to about 1 %
// below 2.5 kPa, common practice, no source).
type Scaling struct{ Speed, Diameter, Density float64 }

// Unchanged is the scaling that changes nothing.
func Unchanged() Scaling { return Scaling{Speed: 1, Diameter: 1, Density: 1} }

// Flow is the flow there: in proportion to N d³. Density does not change it.
func (x Scaling) Flow(q unit.Flow) unit.Flow {
	return unit.Flow(float64(q) * x.Speed * x.Diameter * x.Diameter * x.Diameter)
}

// Pressure is the pressure there: in proportion to N² d² ρ.
func (x Scaling) Pressure(p unit.Pressure) unit.Pressure {
	tip := x.Speed * x.Diameter
	return unit.Pressure(float64(p) * tip * tip * x.Density)
}

// Power is the shaft power there: in proportion to N³ d⁵ ρ.
func (x Scaling) Power(w unit.Power) unit.Power {
	tip := x.Speed * x.Diameter
	return unit.Power(float64(w) * tip * tip * tip * x.Diameter * x.Diameter * x.Density)
}
