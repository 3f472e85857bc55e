package duct

import "slices"

// Finder tells what readings of a use on a collector leave. It takes one fault
// at a time and needs a result on the fan's curve.
type Finder struct {
	Use    *Use
	Tree   *Tree
	Causes []Cause
	Gauges []Gauge

	falls bool           // the fan's curve falls where it works
	dull  map[Gauge]bool // taps that what lies upstream moves too little, or the wrong way
	seen  map[Gauge]view
}

// view is every cause as one gauge sees it, in the order of the causes.
type view struct {
	signs []Sign
	sides []Side
}

// Finder makes the fault finder of a result; nil off the curve.
func (k *Reckoning) Finder(r *Result) *Finder {
	t := k.TreeOf(r.Collector)
	if t == nil || !r.OnCurve || len(r.Use.Machines) == 0 {
		return nil
	}
	fan := NewFan(t.Collector, t.State, r.Filter)
	f := &Finder{Use: r.Use, Tree: t, Causes: t.Causes(r.Use), Gauges: t.Gauges(r.Use), falls: fan.Falls() && !r.LeftOfPeak, dull: map[Gauge]bool{}, seen: map[Gauge]view{}}
	for _, g := range f.Gauges {
		if g.Kind == TapGauge && !t.tells(r, g) {
			f.dull[g] = true
		}
	}
	for _, g := range f.Gauges {
		f.seen[g] = f.from(g)
	}
	return f
}

// from is what a gauge sees.
func (f *Finder) from(g Gauge) view {
	if v, known := f.seen[g]; known {
		return v
	}
	var v view
	for _, c := range f.Causes {
		v.signs, v.sides = append(v.signs, f.Shows(c, g)), append(v.sides, SideOf(c, g))
	}
	return v
}

// Sharp reports whether a tap's suction tells what lies upstream of it.
func (f *Finder) Sharp(g Gauge) bool { return !f.dull[g] }

// Shows is how a cause moves a reading.
//
// Suction at a tap follows the total pressure there: what shuts upstream or in
// another branch raises it, what shuts on the way to the collector lowers it,
// and what opens anywhere lowers it, as does a weak collector. Behind a hood
// the same holds. The pressure across the filter goes with the flow through
// the collector and with the filter's own state; the fan's static pressure
// goes against the flow on a falling curve. A torn filter changes the flow by
// no more than its clean loss does, which a tap does not show.
func (f *Finder) Shows(c Cause, g Gauge) Sign {
	side := SideOf(c, g)
	switch g.Kind {
	case AcrossFilter:
		return onFilter(c.Fault)
	case AcrossFan:
		return f.onFan(c)
	case SpeedGauge:
		return onSpeed(c.Fault, side)
	}
	switch {
	case side == Upstream && f.dull[g]:
		return Either
	case c.Fault == FilterTorn:
		return Level
	case shuts(c.Fault) && (side == Upstream || side == Beside):
		return Above
	}
	return Below
}

func shuts(f Fault) bool {
	return f == Plugged || f == StuckShut || f == Flattened || f == HoodBlocked
}

func opens(f Fault) bool { return f == LeftOpen || f == Leaking || f == BinLeaking }

// onFilter is what a fault does to the pressure across the filter.
func onFilter(f Fault) Sign {
	if opens(f) || f == FilterLoaded {
		return Above
	}
	return Below
}

// onFan is what a cause does to the fan's static pressure. What the curve was
// measured with is no part of it.
func (f *Finder) onFan(c Cause) Sign {
	switch {
	case c.Fault == FanWeak:
		return Below
	case !f.falls, c.Fault == FilterLoaded && !f.Tree.Collector.Charged("filter"), c.Fault == SeparatorBlocked && !f.Tree.Collector.Charged("separator"):
		return Either
	case c.Fault == FilterTorn:
		return Level
	case opens(c.Fault):
		return Below
	}
	return Above
}

// onSpeed is what a fault does to the speed at a tap.
func onSpeed(f Fault, side Side) Sign {
	switch {
	case f == FilterTorn:
		return Level
	case shuts(f) && side == Beside, opens(f) && side == Upstream:
		return Above
	}
	return Below
}

// fits reports whether a cause that shows by one sign may have given a reading.
func fits(shows, reads Sign) bool {
	return reads == Level || reads == Either || shows == Either || shows == reads
}

// left are the places in the list of the causes that may have given all of
// some readings.
func (f *Finder) left(shown []Shown) []int {
	var list []int
	views := make([]view, len(shown))
	for i, s := range shown {
		views[i] = f.from(s.At)
	}
causes:
	for c := range f.Causes {
		for i, s := range shown {
			if !fits(views[i].signs[c], s.Sign) {
				continue causes
			}
		}
		list = append(list, c)
	}
	return list
}

// Remain lists the causes that may have given all of some readings.
func (f *Finder) Remain(shown ...Shown) []Cause {
	var list []Cause
	for _, c := range f.left(shown) {
		list = append(list, f.Causes[c])
	}
	return list
}

// Sides lists the sides, seen from the first of some readings, on which causes
// remain. A side that is not listed is excluded by them; of several listed, the
// readings cannot tell which.
func (f *Finder) Sides(shown ...Shown) []Side {
	sides, _ := f.count(shown)
	return sides
}

// count lists the sides on which causes remain, and counts the causes.
func (f *Finder) count(shown []Shown) (sides []Side, causes int) {
	if len(shown) == 0 {
		return nil, len(f.Causes)
	}
	stand := f.from(shown[0].At).sides
	left := f.left(shown)
	for _, c := range left {
		if !slices.Contains(sides, stand[c]) {
			sides = append(sides, stand[c])
		}
	}
	slices.Sort(sides)
	return sides, len(left)
}
