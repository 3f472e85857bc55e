package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Load is what a fan asks of its motor in the coldest air it may see: the
// greatest shaft power anywhere on its curve, and that with the ducts off.
type Load struct {
	Collector *shop.Collector
	Known     bool // the file gives the fan's power and the motor's
	State     air.State

	Greatest unit.Power
	At       unit.Flow // where on the curve it is greatest

	DuctOff      unit.Power
	DuctOffFlow  unit.Flow
	DuctOffKnown bool // the fan stays on its curve with the ducts off

	Rated unit.Power // nameplate power times service factor
}

// Weigh finds the load of one collector's fan.
func Weigh(s *shop.Shop, c *shop.Collector) Load {
	v := Load{Collector: c, State: coldest(s)}
	fan := NewFan(c, v.State, States(c)[0])
	const samples = 240
	low, high := fan.Range()
	for i := range samples + 1 {
		q := low + (high-low)*float64(i)/samples
		watts, known := fan.Power(q)
		if !known {
			continue
		}
		v.Known = true
		if at := unit.Power(unit.Six(watts)); at > v.Greatest {
			v.Greatest, v.At = at, unit.Flow(unit.Six(q))
		}
	}
	r := &Result{}
	if q, ok := alone(fan, r); ok {
		if watts, known := fan.Power(q); known {
			v.DuctOff, v.DuctOffFlow, v.DuctOffKnown = unit.Power(unit.Six(watts)), unit.Flow(unit.Six(q)), true
		}
	}
	if c.Motor == nil {
		v.Known = false
		return v
	}
	v.Rated = unit.Power(unit.Six(float64(c.Motor.Power) * c.Motor.ServiceFactor.V))
	return v
}

// coldest is the air at its densest: at the coldest temperature given, else
// the shop's own air.
func coldest(s *shop.Shop) air.State {
	if !s.Coldest.Known() || s.AirDensity.Known() {
		return StateOf(s)
	}
	return air.At(s.Altitude.V, min(s.Coldest.V, s.AirTemperature.V))
}
