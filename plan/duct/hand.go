package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// HandSheet is a use on one collector by the trade's hand method: velocity
// pressures, and the balance of static pressures where ways meet. Its static
// pressures are magnitudes, below the room.
type HandSheet struct {
	Rows []HandRow // the stretches that carry a running port's air, upstream first

	Flow      unit.Flow     // at the collector
	Dynamic   unit.Pressure // velocity pressure in its inlet
	Static    unit.Pressure // static pressure in its inlet, what the ducts ask
	Added     unit.Pressure // of it, to set the air moving at the inlet's speed
	Separator unit.Pressure // on the fan's side, taken over as it stands
	Filter    unit.Pressure
	Outlet    unit.Pressure // static pressure behind the fan
	Fan       unit.Pressure // fan static pressure

	after int // the row that governs at the inlet
}

// HandRow is a stretch on the hand sheet.
type HandRow struct {
	Stretch  *shop.Stretch
	Flow     unit.Flow
	Bore     unit.Length
	Velocity unit.Velocity
	Dynamic  unit.Pressure // velocity pressure
	InFit    bool          // the speed lies where the friction fit holds

	Hood     unit.Pressure // hood static pressure where it starts at a port, hose included
	Hose     unit.Pressure // of it, the hose's friction
	Start    unit.Pressure // static pressure where it starts; at a port that of the hood
	Added    unit.Pressure // of it, where it starts at a junction: to make up for its speed
	Friction float64       // velocity pressures
	Fittings float64       // velocity pressures
	Loss     unit.Pressure // of friction and fittings
	Static   unit.Pressure // at its end, before what it empties into

	Meets         bool // it ends where another running way comes in
	Governs       bool // it has the greatest static pressure there
	Ratio         float64
	Does          air.Balance
	Raised        unit.Flow     // after the balance; its flow where nothing is done
	RaisedDynamic unit.Pressure // the velocity pressure of that
	Gate          float64       // coefficient of a gate that would balance it as it is

	after int // the row that governs where it starts; -1 for a hood
}

// HandStart is what the hand method starts from: the flow of each running
// port's duct end, and the air that comes into a stretch, or into the
// collector for nil, from ways nobody runs. More may be nil.
type HandStart struct {
	Ends map[*shop.Duct]unit.Flow
	More func(into *shop.Stretch, from []*shop.Stretch) unit.Flow
}

// ByHand reckons a use by the trade's hand method in the constants of a system
// of units: hood static pressure, loss of each stretch in velocity pressures
// with the friction fit, the balance at junctions, and the static pressure the
// fan has to make with the filter in a state. Coefficients of fittings are
// those of the plan; junctions go by angle and gates of running ways stand
// open.
func (t *Tree) ByHand(u *Use, filter string, from HandStart, sys unit.System) *HandSheet {
	h := &pencil{t: t, use: u, from: from, hand: handOf(sys), sheet: &HandSheet{}}
	var in []comer
	for _, d := range t.shop.Ducts {
		if d.Into == nil && d.Collector == t.Collector {
			in = append(in, h.duct(d)...)
		}
	}
	if len(in) == 0 {
		return h.sheet
	}
	h.collector(in, filter)
	return h.sheet
}

// pencil goes along a tree and fills the sheet.
type pencil struct {
	t     *Tree
	use   *Use
	from  HandStart
	hand  air.Hand
	sheet *HandSheet
}

// comer is air that comes to a node of the tree.
type comer struct {
	row     int // of the sheet; -1 for a hood
	after   int // of what starts in a stretch: the row that governs before it; -1 for a hood
	flow    unit.Flow
	dynamic unit.Pressure
	static  unit.Pressure
	hose    unit.Pressure // of a hood, the friction of its hose
}

// dynamic is the hand method's velocity pressure of a flow in a bore.
func (h *pencil) dynamic(q unit.Flow, bore unit.Length) unit.Pressure {
	return air.HandPressure(h.hand, air.SpeedIn(q, bore), h.t.State.Ratio())
}

// duct reckons a duct and all that joins it; it returns what comes out of its
// end, nothing where no running port's air passes.
func (h *pencil) duct(d *shop.Duct) []comer {
	var in []comer
	if q := h.from.Ends[d]; q > 0 {
		in = append(in, h.hood(d, q))
	}
	into := func(node int) {
		for _, other := range d.Joined {
			if other.JoinNode == node {
				in = append(in, h.duct(other)...)
			}
		}
	}
	for i, s := range d.Stretches {
		into(i)
		if len(in) > 0 {
			in = []comer{h.stretch(s, in)}
		}
	}
	into(len(d.Stretches))
	return in
}

// hood is the hood static pressure where a duct starts at a port: the speed in
// the duct, and what hood, hose and the sizes between them lose.
func (h *pencil) hood(d *shop.Duct, q unit.Flow) comer {
	port, _ := h.use.Served(d)
	bore := h.t.bore(d.Stretches[0])
	lost, friction := unit.Pressure(port.HoodLoss)*h.dynamic(q, port.Size), unit.Pressure(0)
	at := port.Size
	if hose := h.t.hose(d); hose != nil {
		k := air.HandFriction(air.Flexible, air.SpeedIn(q, hose.Size), q, hose.Length) * hose.Times
		friction = unit.Pressure(k) * h.dynamic(q, hose.Size)
		lost += h.sizes(q, at, hose.Size) + friction
		at = hose.Size
	}
	lost += h.sizes(q, at, bore)
	dynamic := h.dynamic(q, bore)
	return comer{row: -1, flow: q, dynamic: dynamic, static: lost + dynamic, hose: friction}
}

// sizes is what a change of size loses, with the plan's coefficients.
func (h *pencil) sizes(q unit.Flow, from, to unit.Length) unit.Pressure {
	return unit.Pressure(h.t.change(from, to)/dynamic(h.t.State, min(from, to))) * h.dynamic(q, min(from, to))
}

// stretch reckons one stretch from what comes into it.
func (h *pencil) stretch(s *shop.Stretch, in []comer) comer {
	d, bore := s.Duct, h.t.bore(s)
	start, added := h.meet(in, s, bore)
	row := HandRow{Stretch: s, after: start.after, Start: start.static, Flow: start.flow, Bore: bore, Velocity: air.SpeedIn(start.flow, bore), Dynamic: start.dynamic}
	row.InFit = air.InFit(row.Velocity)
	if len(in) == 1 && in[0].row < 0 {
		row.Hood, row.Hose = start.static, in[0].hose
	} else {
		row.Added = added
	}
	row.Friction = air.HandFriction(handWall(d.Material), row.Velocity, row.Flow, h.t.length(s))
	row.Fittings = h.t.own(s)
	if h.t.shop.Junctions == "none" && s.Last() {
		row.Fittings += air.Entry(h.t.angle(d))
	}
	row.Loss = unit.Pressure(row.Friction+row.Fittings) * row.Dynamic
	row.Static = start.static + row.Loss
	row.Raised, row.RaisedDynamic = row.Flow, row.Dynamic
	h.sheet.Rows = append(h.sheet.Rows, row)
	return comer{row: len(h.sheet.Rows) - 1, flow: row.Flow, dynamic: row.Dynamic, static: row.Static}
}

// collector ends the sheet at the fan.
func (h *pencil) collector(in []comer, filter string) {
	end, added := h.meet(in, nil, h.t.Collector.Inlet)
	x := h.sheet
	x.Flow, x.Dynamic, x.Static, x.Added, x.after = end.flow, end.dynamic, end.static, added, end.after
	separator, cloth, _ := NewFan(h.t.Collector, h.t.State, filter).Charges(float64(end.flow))
	x.Separator, x.Filter = unit.Pressure(separator), unit.Pressure(cloth)
	if o := h.t.Collector.Outlet; o != nil {
		k := o.Loss + air.HandFriction(air.Galvanised, air.SpeedIn(end.flow, o.Size), end.flow, o.Length)
		for _, angle := range o.Elbows {
			k += air.Elbow(outletElbow().K90, angle)
		}
		x.Outlet = unit.Pressure(k) * h.dynamic(end.flow, o.Size)
	}
	x.Fan = x.Outlet + x.Static + x.Separator + x.Filter - x.Dynamic
}

// handWall is the class of the trade's friction fit that a material falls into.
func handWall(material string) air.Wall {
	switch material {
	case "spiral steel", "snap-lock steel", "flanged steel":
		return air.Galvanised
	}
	return air.Smooth
}
