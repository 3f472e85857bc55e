package duct

import (
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Causes lists what of a collector can be at fault in a use, in the order of
// the file, the collector last. It takes one fault at a time: a plug where air
// of the use passes, a leak where the suction reaches, one more way open.
func (t *Tree) Causes(u *Use) []Cause {
	var shut, plugs, leaks, open, rest []Cause
	passed := t.passed(u)
	for _, d := range t.shop.Ducts {
		if d.Collector != t.Collector {
			continue
		}
		for _, s := range d.Stretches {
			for _, piece := range t.pieces(s) {
				if passed[s] {
					plugs = append(plugs, Cause{Fault: Plugged, Stretch: s, From: piece[0], To: piece[1]})
				}
				if t.felt(u, s, piece[1]) {
					leaks = append(leaks, Cause{Fault: Leaking, Stretch: s, From: piece[0], To: piece[1]})
				}
			}
		}
		if len(d.Serves) == 0 {
			continue
		}
		switch gates := t.barred(u, d); {
		case len(gates) > 0:
			open = append(open, Cause{Fault: LeftOpen, Duct: d, Gates: gates})
		default:
			port, _ := u.Served(d)
			rest = append(rest, Cause{Fault: HoodBlocked, Duct: d, Port: port})
			if t.hose(d) != nil {
				shut = append(shut, Cause{Fault: Flattened, Duct: d, Port: port})
			}
		}
	}
	for _, g := range t.gates {
		if u.Open[g] && passed[g.Stretch] {
			rest = append(rest, Cause{Fault: StuckShut, Gates: []*shop.Gate{g}})
		}
	}
	return slices.Concat(rest, shut, plugs, open, leaks, t.atCollector())
}

// atCollector lists what can be at fault behind the ducts. A bin draws air in
// where it hangs under a separator, before the fan; behind the fan it blows.
func (t *Tree) atCollector() []Cause {
	c := t.Collector
	faults := []Fault{FanWeak, OutletBlocked}
	if c.Separator != nil {
		faults = append(faults, SeparatorBlocked, BinLeaking)
	}
	if c.Filter != nil {
		faults = append(faults, FilterLoaded, FilterTorn)
	}
	var list []Cause
	for _, f := range faults {
		list = append(list, Cause{Fault: f, Collector: c})
	}
	return list
}

// pieces cuts a stretch at its gates and taps.
func (t *Tree) pieces(s *shop.Stretch) [][2]unit.Length {
	cuts := []unit.Length{s.From, s.To}
	add := func(at unit.Length) {
		if at > s.From && at < s.To && !slices.Contains(cuts, at) {
			cuts = append(cuts, at)
		}
	}
	for _, g := range s.Gates {
		add(g.Where)
	}
	for _, tap := range t.shop.Taps {
		if tap.On == s.Duct {
			add(tap.Where)
		}
	}
	slices.Sort(cuts)
	var list [][2]unit.Length
	for i := 1; i < len(cuts); i++ {
		list = append(list, [2]unit.Length{cuts[i-1], cuts[i]})
	}
	return list
}

// barred are the gates that are shut on the way from a duct's end.
func (t *Tree) barred(u *Use, d *shop.Duct) (list []*shop.Gate) {
	for s := d.Stretches[0]; s != nil; s = s.Below() {
		for _, g := range s.Gates {
			if !u.Open[g] {
				list = append(list, g)
			}
		}
	}
	return list
}

// passed are the stretches that carry the air of an open end.
func (t *Tree) passed(u *Use) map[*shop.Stretch]bool {
	passed := map[*shop.Stretch]bool{}
	for _, d := range t.shop.Ducts {
		if d.Collector != t.Collector || len(d.Serves) == 0 || len(t.barred(u, d)) > 0 {
			continue
		}
		for s := d.Stretches[0]; s != nil; s = s.Below() {
			passed[s] = true
		}
	}
	return passed
}

// felt reports whether the suction reaches a place: no shut gate stands
// between it and the collector.
func (t *Tree) felt(u *Use, s *shop.Stretch, at unit.Length) bool {
	for ; s != nil; s = s.Below() {
		for _, g := range s.Gates {
			if !u.Open[g] && g.Where >= at {
				return false
			}
		}
		at = -1
	}
	return true
}

// Gauges lists where a use can be read on a collector: its named taps in the way of
// the use's air, the hoods of its machines, the filter, the fan, and the speed
// at those taps.
func (t *Tree) Gauges(u *Use) []Gauge {
	var list, speeds []Gauge
	passed := t.passed(u)
	for _, tap := range t.shop.Taps {
		if tap.On == nil || tap.Name == "" || tap.On.Collector != t.Collector || !passed[StretchAt(tap.On, tap.Where)] {
			continue
		}
		list = append(list, Gauge{Kind: TapGauge, Tap: tap})
		speeds = append(speeds, Gauge{Kind: SpeedGauge, Tap: tap})
	}
	if t.Collector.Filter != nil {
		list = append(list, Gauge{Kind: AcrossFilter})
	}
	for _, p := range u.ports() {
		if p.Duct == nil || p.Duct.Collector != t.Collector || len(t.barred(u, p.Duct)) > 0 {
			continue
		}
		if served, _ := u.Served(p.Duct); served == p {
			list = append(list, Gauge{Kind: BehindHood, Port: p})
		}
	}
	return slices.Concat(list, []Gauge{{Kind: AcrossFan}}, speeds)
}
