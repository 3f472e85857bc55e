package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Fault is a kind of fault that shows at a gauge while machines run.
type Fault string

// The faults. A shutting one leaves the air less way than the plan has, an
// opening one more; the rest stand at the collector.
const (
	Plugged          Fault = "plugged"      // chips packed in a piece of duct
	StuckShut        Fault = "stuck-shut"   // a gate that the use needs open
	Flattened        Fault = "flattened"    // a hose pushed together or kinked
	HoodBlocked      Fault = "hood-blocked" // offcuts before a port
	LeftOpen         Fault = "left-open"    // the way to an end that the use does not need
	Leaking          Fault = "leaking"      // a hole, an open clean-out, a hose worn through or off
	BinLeaking       Fault = "bin-leaking"  // a bin or its lid that lets air in
	SeparatorBlocked Fault = "separator-blocked"
	FilterLoaded     Fault = "filter-loaded"
	FilterTorn       Fault = "filter-torn"
	OutletBlocked    Fault = "outlet-blocked"
	FanWeak          Fault = "fan-weak" // slow, backwards, slipping or caked
)

// Cause is one thing of the shop that may be at fault in a use.
type Cause struct {
	Fault     Fault
	Stretch   *shop.Stretch // of a plug or a leak
	From, To  unit.Length   // the piece of it, from the duct's upstream end
	Gates     []*shop.Gate  // stuck, or left open: all that have to be open for it to show
	Duct      *shop.Duct    // whose hose, or whose end, it is
	Port      *shop.Port    // whose hood it is
	Collector *shop.Collector
}

// Sign is how a reading stands to its mark.
type Sign uint8

// The signs. Level is a reading that agrees with its mark: a fault may be too
// small to show, so it excludes nothing. Either is what a fault that may show
// both ways does.
const (
	Level Sign = iota
	Above
	Below
	Either
)

// Side is where a cause stands, seen from the place of a reading.
type Side uint8

// The sides. Upstream is what the air of the reading has come through, Onward
// the duct between it and the collector, Beside the branches that join that
// duct, AtCollector separator, bin, filter, fan and outlet.
const (
	Upstream Side = iota
	Beside
	Onward
	AtCollector
)

// GaugeKind is what a gauge reads.
type GaugeKind uint8

// The gauges: suction at a tap of a duct, suction behind a hood, the pressure
// across the filter, the fan's static pressure, the speed at a tap.
const (
	TapGauge GaugeKind = iota
	BehindHood
	AcrossFilter
	AcrossFan
	SpeedGauge
)

// Gauge is a place where a reading is taken.
type Gauge struct {
	Kind GaugeKind
	Tap  *shop.Tap  // of a tap or speed
	Port *shop.Port // of a hood
}

// Shown is a reading that is off its mark.
type Shown struct {
	At   Gauge
	Sign Sign
}

// Places along a duct's end, before its first stretch begins.
const (
	hoodPlace    unit.Length = -3
	hoodTapPlace unit.Length = -2
	hosePlace    unit.Length = -1
)

// place is where a cause stands in the ducts; nil at the collector. Of a piece
// it is its downstream end: pieces are cut at gates and taps.
func (c Cause) place() (s *shop.Stretch, at unit.Length) {
	switch c.Fault {
	case Plugged, Leaking:
		return c.Stretch, c.To
	case StuckShut:
		return c.Gates[0].Stretch, c.Gates[0].Where
	case Flattened:
		return c.Duct.Stretches[0], hosePlace
	case HoodBlocked, LeftOpen:
		return c.Duct.Stretches[0], hoodPlace
	}
	return nil, 0
}

// place is where a gauge sits in the ducts; nil at the collector.
func (g Gauge) place() (s *shop.Stretch, at unit.Length) {
	switch g.Kind {
	case TapGauge, SpeedGauge:
		return StretchAt(g.Tap.On, g.Tap.Where), g.Tap.Where
	case BehindHood:
		return g.Port.Duct.Stretches[0], hoodTapPlace
	}
	return nil, 0
}

// SideOf is where a cause stands, seen from a gauge. At the collector every
// duct is upstream.
func SideOf(c Cause, g Gauge) Side {
	s, at := c.place()
	from, where := g.place()
	switch {
	case s == nil:
		return AtCollector
	case from == nil:
		return Upstream
	case s == from && at <= where:
		return Upstream
	case s == from:
		return Onward
	case leads(s, from):
		return Upstream
	case leads(from, s):
		return Onward
	}
	return Beside
}

// leads reports whether the air of a stretch comes through another.
func leads(s, through *shop.Stretch) bool {
	for ; s != nil; s = s.Below() {
		if s == through {
			return true
		}
	}
	return false
}
