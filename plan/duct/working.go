package duct

import (
	"math"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Term is one loss of a stretch as the working shows it: a coefficient on a
// velocity pressure, or friction along a length.
type Term struct {
	Name     string
	Size     unit.Length   // the bore whose velocity pressure is charged
	Velocity unit.Velocity // there
	Dynamic  unit.Pressure // velocity pressure there
	K        float64       // coefficient; of friction, f·L/D
	Loss     unit.Pressure
	Basis    source.Basis

	Friction  bool
	Length    unit.Length
	Reynolds  float64
	Factor    float64
	Roughness unit.Length
	Hand      unit.Pressure // the same friction by the trade's hand fit
}

// Working lists the losses of a stretch in the order the air meets them, at
// the flow it carries in a result. The terms add up to the stretch's loss.
func (t *Tree) Working(r *Result, s *shop.Stretch) []Term {
	w := worker{t: t, flow: t.flowOf(r, s)}
	d := s.Duct
	w.until(r, s, s.To)
	if s.Last() {
		if d.Loss > 0 {
			w.charge("Extra loss", d.Bore, d.Loss, source.Basis{Mark: source.Given})
		}
		if k := t.entry(d); k > 0 && t.parts[t.byEdge[s]].edge.Wye == nil {
			w.charge("Entry at "+unit.Short(float64(d.Entry))+"°", d.Bore, k, entryBasis)
		}
		if t.parts[t.byEdge[s]].edge.Wye == nil {
			w.change(d.Bore, t.below(d))
		}
	}
	if wye := t.parts[t.byEdge[s]].edge.Wye; wye != nil {
		w.junction(wye, t.flowOf(r, s.Below()), s.Below().Duct.Bore)
	}
	return w.terms
}

// until lists the losses of a stretch up to a place of its duct, what stands
// at the place included: hood and hose where it has them, friction, elbows and
// gates that are shut.
func (w *worker) until(r *Result, s *shop.Stretch, place unit.Length) {
	d := s.Duct
	if s.Number == 1 && len(d.Serves) > 0 {
		flow := w.flow
		port, _ := r.Use.Served(d)
		w.flow = w.t.endFlow(r, d)
		w.end(d, port)
		w.flow = flow
	}
	w.friction("Friction", d.Bore, d.Roughness, place-s.From, 1, d.Rough, handWall(d.Material))
	for _, turn := range s.Turns {
		if turn.At > place {
			continue
		}
		name := "Elbow " + unit.Short(float64(turn.Angle)) + "°"
		if turn.Join {
			name = "Elbow " + unit.Short(float64(turn.Angle)) + "° to the join"
		}
		w.charge(name, d.Bore, air.Elbow(d.ElbowLoss, turn.Angle), d.ElbowBasis)
	}
	for _, g := range s.Gates {
		if !r.Use.Open[g] && g.Where <= place {
			w.charge(g.Name+", shut", d.Bore, shutLoss(g, d.Bore), g.Leak.Basis)
		}
	}
}

// flowOf is the flow a stretch carries in a result.
func (t *Tree) flowOf(r *Result, s *shop.Stretch) unit.Flow {
	for i := range r.Stretches {
		if r.Stretches[i].Stretch == s {
			return r.Stretches[i].Flow
		}
	}
	return 0
}

// endFlow is what a duct's own end lets in: what its first stretch carries
// less what joins or leaks in at its upstream end.
func (t *Tree) endFlow(r *Result, d *shop.Duct) unit.Flow {
	return t.flowOf(r, d.Stretches[0]) - t.entering(r, d, 0)
}

// entering is what comes in at a node of a duct from other ducts and holes.
func (t *Tree) entering(r *Result, d *shop.Duct, node int) (sum unit.Flow) {
	for _, other := range d.Joined {
		if n := len(other.Stretches); other.JoinNode == node {
			sum += t.flowOf(r, other.Stretches[n-1]) + t.entering(r, other, n)
		}
	}
	for _, leak := range r.Leaks {
		if leak.Leak.On == d && leak.Leak.Node == node {
			sum += leak.Flow
		}
	}
	return sum
}

var entryBasis = source.Basis{Document: "vent-manual", Clause: "branch entry", Mark: source.Memory}

// worker adds up terms at one flow.
type worker struct {
	t     *Tree
	flow  unit.Flow
	terms []Term
}

func (w *worker) term(name string, bore unit.Length, basis source.Basis) Term {
	v := air.SpeedIn(w.flow, bore)
	return Term{Name: name, Size: bore, Velocity: v, Dynamic: w.t.State.VelocityPressure(v), Basis: basis}
}

func (w *worker) charge(name string, bore unit.Length, k float64, basis source.Basis) {
	if math.IsInf(k, 1) {
		return // shut tight: nothing flows, so there is nothing to show
	}
	x := w.term(name, bore, basis)
	x.K = k
	x.Loss = unit.Pressure(k) * x.Dynamic
	w.terms = append(w.terms, x)
}

func (w *worker) friction(name string, bore, roughness, length unit.Length, times float64, basis source.Basis, hand air.Wall) {
	x := w.term(name, bore, basis)
	x.Friction, x.Length, x.Roughness = true, length, roughness
	x.Reynolds = air.Reynolds(w.t.State, x.Velocity, bore)
	if x.Reynolds > 0 {
		x.Factor = air.Factor(x.Reynolds, float64(roughness/bore)) * times
		x.K = x.Factor * float64(length/bore)
		x.Loss = unit.Pressure(x.K) * x.Dynamic
		x.Hand = unit.Pressure(air.HandFriction(hand, x.Velocity, w.flow, length)*times) * x.Dynamic
	}
	w.terms = append(w.terms, x)
}

// change adds the loss where two sizes meet.
func (w *worker) change(from, to unit.Length) {
	switch {
	case unit.Compare(float64(from), float64(to)) < 0:
		if k := air.Widening(from, to, w.t.how); k > 0 {
			w.charge("Widening", from, k, wideningBasis)
		}
	case unit.Compare(float64(from), float64(to)) > 0:
		if k := air.Narrowing(from, to, w.t.how); k > 0 {
			w.charge("Narrowing", to, k, narrowingBasis)
		}
	}
}

var (
	wideningBasis  = source.Basis{Document: "crane-tp410", Clause: "gradual enlargement", Mark: source.Reported}
	narrowingBasis = source.Basis{Document: "vent-manual", Clause: "contractions", Mark: source.Memory}
)

// end adds hood, hose and the size changes between them.
func (w *worker) end(d *shop.Duct, port *shop.Port) {
	w.charge("Hood "+port.Full(), port.Size, port.HoodLoss, port.Hood)
	h := d.Hose
	if h == nil {
		w.change(port.Size, d.Bore)
		return
	}
	w.change(port.Size, h.Size)
	w.friction("Hose, "+h.Material, h.Size, h.Roughness, h.Length, h.Times, h.Rough, air.Flexible)
	w.change(h.Size, d.Bore)
}

// junction adds the flow-split loss on the combined velocity pressure.
func (w *worker) junction(split *Split, all unit.Flow, bore unit.Length) {
	loss, _, _ := split.loss(float64(w.flow), float64(all))
	v := air.SpeedIn(all, bore)
	x := Term{Name: "Junction by flow split", Size: bore, Velocity: v, Dynamic: w.t.State.VelocityPressure(v), Loss: unit.Pressure(loss), Basis: source.Basis{Document: "crane-tp410", Clause: "converging wye", Mark: source.Reported}}
	if x.Dynamic > 0 {
		x.K = loss / float64(x.Dynamic)
	}
	w.terms = append(w.terms, x)
}

// handWall is the class of the trade's hand fit a material falls into.
func handWall(material string) air.Wall {
	switch material {
	case "spiral steel", "snap-lock steel", "flanged steel":
		return air.Galvanised
	}
	return air.Smooth
}
