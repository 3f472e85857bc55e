package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// HoodGauge says what a water gauge at a port's hood means: the reading to
// expect, and the flow that other readings stand for.
type HoodGauge struct {
	Port     *shop.Port
	Entry    float64 // entry coefficient of the hood
	Expected unit.Pressure
	Need     unit.Pressure // the reading at which the port just gets its need
	Readings []Reading
	Largest  unit.Length // the largest bore that still carries what the port needs
	Speed    unit.Velocity
}

// Reading is a gauge reading and the flow it stands for, exactly and by the
// trade's hand formula.
type Reading struct {
	Press      unit.Pressure
	Flow, Hand unit.Flow
}

// shares of the expected reading that a table shows.
var shares = []float64{0.4, 0.6, 0.8, 1, 1.2}

// HoodGauges makes the gauge table of every served port, in file order, from
// the result of each machine alone with the filter clean.
func (k *Reckoning) HoodGauges(sys unit.System) []HoodGauge {
	var list []HoodGauge
	for _, u := range k.Uses {
		if u.Kind != OneMachine {
			continue
		}
		for _, r := range u.Results {
			if !r.OnCurve || r.Filter == ChangeOut {
				continue
			}
			for _, p := range r.Ports {
				if p.Hood > 0 && p.Port.Duct != nil && p.Port.Duct.Collector == r.Collector {
					list = append(list, k.hoodGauge(p, sys))
				}
			}
		}
	}
	return list
}

func (k *Reckoning) hoodGauge(p PortResult, sys unit.System) HoodGauge {
	g := HoodGauge{Port: p.Port, Entry: air.EntryCoefficient(p.Port.HoodLoss), Expected: p.Hood, Need: k.HoodAtNeed(p.Port)}
	area := air.Bore(p.Port.Size)
	for _, share := range shares {
		press := unit.Pressure(unit.Six(share * float64(p.Hood)))
		g.Readings = append(g.Readings, Reading{
			Press: press,
			Flow:  unit.Flow(unit.Six(float64(air.HoodFlow(area, g.Entry, press, k.State)))),
			Hand:  unit.Flow(unit.Six(float64(air.HandHoodFlow(handOf(sys), area, g.Entry, press, k.State.Ratio())))),
		})
	}
	if p.Port.Flow > 0 {
		need, _, _ := Need(p.Port.Duct.Stretches[0], p.Port.Machine)
		g.Speed = unit.Velocity(unit.Six(float64(need) * air.CarryRaise(k.State)))
		g.Largest = unit.Length(unit.Six(float64(air.LargestBore(p.Port.Flow, g.Speed))))
	}
	return g
}

func handOf(sys unit.System) air.Hand {
	if sys == unit.Metric {
		return air.HandMetric
	}
	return air.HandInch
}

// PitotRow is a velocity pressure and the speed it stands for.
type PitotRow struct {
	Press       unit.Pressure
	Speed, Hand unit.Velocity
}

// Pitot makes a table from velocity pressure to speed for given pressures.
func (k *Reckoning) Pitot(sys unit.System, pressures []unit.Pressure) []PitotRow {
	var rows []PitotRow
	for _, p := range pressures {
		rows = append(rows, PitotRow{p, unit.Velocity(unit.Six(float64(k.State.Speed(p)))), unit.Velocity(unit.Six(float64(air.HandSpeed(handOf(sys), p, k.State.Ratio()))))})
	}
	return rows
}

// FanReading is what three gauges at a fan should read in a use, and the fan
// static pressure they make.
type FanReading struct {
	Collector              *shop.Collector
	Use                    *Use
	Inlet, Dynamic, Outlet unit.Pressure // static before the fan (below zero), velocity pressure there, static behind it
	Static                 unit.Pressure
}

// FanReadings makes the readings at each fan in the first use of a machine it
// serves, with the filter clean. Separator and filter count to the side they
// stand on.
func (k *Reckoning) FanReadings() []FanReading {
	var list []FanReading
	for _, t := range k.Trees {
		for _, u := range k.Uses {
			if r := firstOn(u, t.Collector); r != nil && u.Kind == OneMachine && r.OnCurve {
				list = append(list, t.fanReading(u, r))
				break
			}
		}
	}
	return list
}

func firstOn(u *Use, c *shop.Collector) *Result {
	for _, r := range u.Results {
		if r.Collector == c {
			return r
		}
	}
	return nil
}

func (t *Tree) fanReading(u *Use, r *Result) FanReading {
	v := FanReading{Collector: t.Collector, Use: u, Dynamic: t.State.VelocityPressure(air.SpeedIn(r.Flow, t.Collector.Inlet))}
	before, behind := r.Inlet+r.Separator, r.Outlet
	if f := t.Collector.Filter; f != nil && f.Side.V == "before fan" {
		before += r.FilterLoss
	} else {
		behind += r.FilterLoss
	}
	v.Inlet, v.Outlet = -before-v.Dynamic, behind
	v.Static = air.StaticOfFan(v.Outlet, v.Inlet, v.Dynamic)
	return v
}
