package air

import (
	"math"

	"dustbook/plan/unit"
)

// The units the hand formulas are written in, as their definitions have them.
const (
	inch      = 0.0254
	foot      = 12 * inch
	minute    = 60.0
	fpm       = foot / minute
	cfm       = foot * foot * foot / minute
	inchWater = 1000 * 9.80665 * inch // an inch of water of 1000 kg/m³ under standard gravity
)

// Hand names the units a hand formula is written in; each has its own rounded
// constant.
type Hand uint8

const (
	HandInch   Hand = iota // 4005: in wg and feet a minute
	HandMetric             // 1.29: pascals and metres a second
)

// constant is the formula's number, with its unit of speed and of pressure.
func (h Hand) constant() (number, speed, pressure float64) {
	if h == HandMetric {
		return handMetric, 1, 1
	}
	return handInch, fpm, inchWater
}

// Number is the formula's rounded constant, for whoever writes it out.
func (h Hand) Number() float64 {
	number, _, _ := h.constant()
	return number
}

var (
	handInch   = handTable.Figure("speed inch")
	handMetric = handTable.Figure("speed metric")
)

// HandSpeed is the trade's V = 4005 √(VP/df), or 1.29 √(VP/df) in metric
// units, with df the density ratio. It belongs in the hand column only: Speed
// of a State is exact. Range: VP not negative. Source: study notes.
func HandSpeed(h Hand, vp unit.Pressure, df float64) unit.Velocity {
	number, speed, pressure := h.constant()
	return unit.Velocity(number * speed * math.Sqrt(float64(vp)/pressure/df))
}

// HandPressure is the trade's VP = df (V/4005)², or df (V/1.29)², the inverse
// of HandSpeed.
func HandPressure(h Hand, v unit.Velocity, df float64) unit.Pressure {
	number, speed, pressure := h.constant()
	root := float64(v) / (number * speed)
	return unit.Pressure(df * root * root * pressure)
}

// HandHoodFlow is the trade's Q = 4005 A Ce √(SPh/df), in m³/s, from the
// magnitude of the hood static pressure. Source: study notes.
func HandHoodFlow(h Hand, area unit.Area, ce float64, hood unit.Pressure, df float64) unit.Flow {
	return unit.Flow(float64(area) * ce * float64(HandSpeed(h, hood, df)))
}

// Wall is the class of duct wall that the trade's friction fit knows.
type Wall uint8

const (
	Galvanised Wall = iota // galvanised sheet
	Smooth                 // black iron, aluminium, stainless steel, plastic
	Flexible               // fabric, wire covered
)

var wallNames = [...]string{Galvanised: "galvanised", Smooth: "smooth", Flexible: "flexible"}

// String is the word a data row uses for the class.
func (w Wall) String() string { return wallNames[w] }

// ReadWall reads the word of a data row: galvanised, smooth or flexible.
func ReadWall(word string) (Wall, bool) {
	for i, name := range wallNames {
		if name == word {
			return Wall(i), true
		}
	}
	return 0, false
}

type handFit struct{ a, b, c float64 }

var handFits = [...]handFit{Galvanised: mustFit(Galvanised), Smooth: mustFit(Smooth), Flexible: mustFit(Flexible)}

func mustFit(w Wall) handFit {
	part := func(letter string) float64 { return handTable.Figure(w.String() + " " + letter) }
	return handFit{part("a"), part("b"), part("c")}
}

// Fit is the class's friction fit, for whoever writes it out: velocity
// pressures lost in a foot are a V^b/Q^c, V in fpm and Q in cfm.
func (w Wall) Fit() (a, b, c float64) { return handFits[w].a, handFits[w].b, handFits[w].c }

// HandFriction is the trade's friction fit: the velocity pressures lost over a
// length, L × a V^b/Q^c with V in fpm, Q in cfm and L in feet. For the hand
// column only. Range: standard air, 2000 to 6000 fpm (common practice, no
// source), flow greater than zero. Source: ventilation manual, from memory; a
// of galvanised sheet read on a calculation sheet.
func HandFriction(w Wall, v unit.Velocity, q unit.Flow, length unit.Length) float64 {
	fit := handFits[w]
	perFoot := fit.a * math.Pow(float64(v)/fpm, fit.b) / math.Pow(float64(q)/cfm, fit.c)
	return perFoot * float64(length) / foot
}
