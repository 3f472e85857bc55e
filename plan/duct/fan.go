package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// The states a filter is reckoned in.
const (
	Clean     = "clean"
	ChangeOut = "change-out"
	NoFilter  = "none"
)

// Fan is a collector's fan with what stands between it and the ducts, in one
// state of the filter: what it offers at the inlet.
type Fan struct {
	Collector *shop.Collector
	Filter    string
	Claimed   bool // the curve is a parabola through the maker's two claims

	curve     Curve
	rated     air.Scaling // from the curve's air to the shop's
	separator float64     // Pa/(m³/s)²
	filter    float64     // Pa/(m³/s)
	outlet    Edge
	falls     bool
	power     *Cubic
}

// NewFan sets up the fan in one state of the filter and of the air.
func NewFan(c *shop.Collector, state air.State, filter string) *Fan {
	f := &Fan{Collector: c, Filter: filter, rated: air.Unchanged()}
	f.rated.Density = float64(state.Density) / float64(c.CurveDensity.V)
	f.curve, f.falls, f.Claimed = curveOf(c)
	if sep := c.Separator; sep != nil && c.Charged("separator") {
		f.separator = float64(sep.Loss) / float64(sep.Flow*sep.Flow) * state.Ratio()
	}
	if v := c.Filter; v != nil {
		press := v.Clean
		if filter == ChangeOut {
			press = v.Change
		}
		if !c.Charged("clean filter") {
			press -= v.Clean
		}
		f.filter = float64(press) / float64(v.Flow)
	}
	if o := c.Outlet; o != nil {
		f.outlet = pipe(state, o.Size, o.Roughness, o.Length, 1)
		k := o.Loss
		for _, angle := range o.Elbows {
			k += air.Elbow(outletElbow().K90, angle)
		}
		f.outlet.Quad = k * dynamic(state, o.Size)
	}
	if len(c.FanPower) > 1 {
		var x, y []float64
		for _, p := range c.FanPower {
			x, y = append(x, float64(p.Flow)), append(y, float64(p.Power))
		}
		f.power = NewCubic(x, y)
	}
	return f
}

// outletElbow is the make of elbow reckoned in an outlet, where the file has
// no field for it: the default make of ducts.
func outletElbow() shop.ElbowMake { return shop.DefaultElbow() }

// curveOf is the collector's curve, or the parabola of its claims.
func curveOf(c *shop.Collector) (curve Curve, falls, claimed bool) {
	if len(c.Curve) == 0 {
		return Parabola{Flow: float64(c.Claims.Flow), Suction: float64(c.Claims.Suction)}, true, true
	}
	var x, y []float64
	for _, p := range c.Curve {
		x, y = append(x, float64(p.Flow)), append(y, float64(p.Static))
	}
	cubic := NewCubic(x, y)
	return cubic, cubic.falls(), false
}

// States are the filter states a collector is reckoned in.
func States(c *shop.Collector) []string {
	if c.Filter == nil {
		return []string{NoFilter}
	}
	return []string{Clean, ChangeOut}
}

// Static is the fan static pressure at a flow, at the shop's air.
func (f *Fan) Static(q float64) float64 {
	p, _ := f.curve.At(q)
	return float64(f.rated.Pressure(unit.Pressure(p)))
}

// Charges are the losses on the fan's own side at a flow, in Pa.
func (f *Fan) Charges(q float64) (separator, filter, outlet float64) {
	outlet, _ = f.outlet.loss(q)
	return f.separator * q * q, f.filter * q, outlet
}

// Suction is what is left at the inlet at a flow, and its slope.
func (f *Fan) Suction(q float64) (p, slope float64) {
	p, slope = f.curve.At(q)
	out, outSlope := f.outlet.loss(q)
	size := q
	if size < 0 {
		size = -size
	}
	p = p*f.rated.Density - f.separator*q*size - f.filter*q - out
	return p, slope*f.rated.Density - 2*f.separator*size - f.filter - outSlope
}

// Range is where the curve is known.
func (f *Fan) Range() (low, high float64) { return f.curve.Range() }

// Falls reports whether the offer never rises with flow.
func (f *Fan) Falls() bool { return f.falls }

// Peak is the flow of the curve's highest point, the first where several
// are alike.
func (f *Fan) Peak() float64 {
	cubic, ok := f.curve.(*Cubic)
	if !ok {
		return 0
	}
	x, y := cubic.Points()
	best := 0
	for i := range y {
		if y[i] > y[best] {
			best = i
		}
	}
	return x[best]
}

// Power is the shaft power at a flow: known is false where the file gives
// neither a power curve that reaches there nor an efficiency.
func (f *Fan) Power(q float64) (watts float64, known bool) {
	if f.power != nil {
		low, high := f.power.Range()
		if q < low || q > high {
			return 0, false
		}
		watts, _ = f.power.At(q)
		return float64(f.rated.Power(unit.Power(watts))), true
	}
	if f.Collector.Efficiency.Known() {
		return q * f.Static(q) / f.Collector.Efficiency.V, true
	}
	return 0, false
}

// PowerBasis says where the power comes from.
func (f *Fan) PowerBasis() source.Basis { return source.Basis{Mark: source.Given} }

// Curve samples the fan's static pressure along its range for a chart.
func (f *Fan) Curve(samples int) (flow []unit.Flow, static []unit.Pressure) {
	low, high := f.Range()
	for i := range samples + 1 {
		q := low + (high-low)*float64(i)/float64(samples)
		flow, static = append(flow, unit.Flow(q)), append(static, unit.Pressure(f.Static(q)))
	}
	return flow, static
}
