package record

import (
	"strings"

	"dustbook/plan/unit"
)

// A printer prints a value in SI units in a system's unit.
type printer struct {
	unit, figure, print func(sys unit.System, si float64) string
}

func printerOf[Q unit.Measure](s unit.Scale[Q]) printer {
	return printer{
		func(sys unit.System, _ float64) string { return s.Unit(sys) },
		func(sys unit.System, si float64) string { return s.Figure(sys, Q(si)) },
		func(sys unit.System, si float64) string { return s.Print(sys, Q(si)) },
	}
}

// printers are the scales of the book for what can be measured.
var printers = map[unit.Kind]printer{
	unit.KindPressure:    printerOf(unit.Press),
	unit.KindFlow:        printerOf(unit.Air),
	unit.KindVelocity:    printerOf(unit.Speed),
	unit.KindVoltage:     printerOf(unit.Volts),
	unit.KindCurrent:     printerOf(unit.Amps),
	unit.KindPower:       printerOf(unit.Shaft),
	unit.KindTime:        printerOf(unit.Seconds),
	unit.KindResistance:  printerOf(unit.Ohms),
	unit.KindTemperature: printerOf(unit.Heat),
	unit.KindSound:       printerOf(unit.Loud),
}

// Print writes a value of what is measured, in SI units, in the unit of a
// system of units: "2.10 in wg". The measure must have a kind.
func (m Measure) Print(sys unit.System, si float64) string { return printers[m.Kind].print(sys, si) }

// Figure is the number alone.
func (m Measure) Figure(sys unit.System, si float64) string { return printers[m.Kind].figure(sys, si) }

// Unit is the unit a system prints what is measured in; empty for a text.
func (m Measure) Unit(sys unit.System) string {
	if m.Kind == 0 {
		return ""
	}
	return printers[m.Kind].unit(sys, 0)
}

// siUnits are the units of values in SI units, for programs.
var siUnits = map[unit.Kind]string{
	unit.KindPressure: "Pa", unit.KindFlow: "m3/s", unit.KindVelocity: "m/s", unit.KindVoltage: "V", unit.KindCurrent: "A",
	unit.KindPower: "W", unit.KindTime: "s", unit.KindResistance: "ohm", unit.KindTemperature: "K", unit.KindSound: "dBA",
}

// SIUnit is the unit of values in SI units; empty for a text.
func (m Measure) SIUnit() string { return siUnits[m.Kind] }

// Foreign reports whether a value was written in another unit than the one a
// system prints it in, or prints one of its size in.
func (q Quantity) Foreign(sys unit.System) bool {
	if q.Kind == 0 {
		return false
	}
	at, err := unit.ReadKind(q.Kind, "1 "+unitOf(q.Text))
	here, _ := unit.ReadKind(q.Kind, "1 "+printers[q.Kind].unit(sys, 0))
	if fit, _ := unit.ReadKind(q.Kind, "1 "+unitOf(printers[q.Kind].print(sys, q.SI))); fit > 0 && unit.Compare(at, fit) == 0 {
		return err != nil
	}
	return err != nil || unit.Compare(at, here) != 0
}

// unitOf is what stands behind the figures of a value.
func unitOf(text string) string {
	return strings.TrimLeft(text, "0123456789.,+-−–⁄/½¼¾⅛⅜⅝⅞ \u00a0\u2009\u202f")
}
