package duct

import (
	"math"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Term is one loss of a stretch as the working shows it: a coefficient on a
// velocity pressure, with the figures its formula took.
type Term struct {
	Kind     TermKind
	Name     string        // of a hood the port, of a gate the gate, of a hose what it is
	Size     unit.Length   // the bore whose velocity pressure is charged
	Velocity unit.Velocity // there
	Dynamic  unit.Pressure // velocity pressure there
	K        float64       // coefficient; of friction, f·L/D
	Loss     unit.Pressure
	Basis    source.Basis

	// of friction, in a duct or a hose
	Length    unit.Length
	Reynolds  float64
	Factor    float64 // f, before Times
	Times     float64 // against the same hose pulled out
	Roughness unit.Length

	Angle unit.Angle // of an elbow or an entry
	Join  bool       // the elbow makes up the angle to the join
	Whole float64    // of an elbow, its coefficient at 90°

	Other unit.Length // of a change of size, the larger bore
	Ratio float64     // of a change of size, the smaller area over the larger
	How   air.Change

	Gate *shop.Gate // shut

	Branch bool      // of a junction by flow split: this is the branch
	Share  float64   // the branch's share of the combined flow
	Wye    air.Wye   // its figures
	All    unit.Flow // the combined flow
}

// TermKind is what a term stands for.
type TermKind uint8

// The kinds of term.
const (
	HoodTerm TermKind = iota
	HoseTerm
	FrictionTerm
	ElbowTerm
	GateTerm
	ExtraTerm
	EntryTerm
	WideningTerm
	NarrowingTerm
	JunctionTerm
)

// Working lists the losses of a stretch in the order the air meets them, at
// the flow it carries in a result. The terms add up to the stretch's loss.
func (t *Tree) Working(r *Result, s *shop.Stretch) []Term {
	w := worker{t: t, flow: t.flowOf(r, s)}
	d := s.Duct
	w.until(r, s, s.To)
	wye := t.parts[t.byEdge[s]].edge.Wye
	if s.Last() {
		if d.Loss > 0 {
			w.charge(Term{Kind: ExtraTerm, Size: t.bore(s), K: d.Loss, Basis: source.Basis{Mark: source.Given}})
		}
		if k := t.entry(d); k > 0 && wye == nil {
			w.charge(Term{Kind: EntryTerm, Size: t.bore(s), K: k, Angle: t.angle(d), Basis: entryBasis})
		}
	}
	if wye == nil {
		w.change(t.bore(s), t.below(s))
	} else {
		w.junction(wye, t.flowOf(r, s.Below()), t.bore(s.Below()))
	}
	return w.terms
}

// until lists the losses of a stretch up to a place of its duct, what stands
// at the place included: hood and hose where it has them, friction, elbows and
// gates that are shut.
func (w *worker) until(r *Result, s *shop.Stretch, place unit.Length) {
	d, bore := s.Duct, w.t.bore(s)
	if s.Number == 1 && len(d.Serves) > 0 {
		flow := w.flow
		port, _ := r.Use.Served(d)
		w.flow = w.t.endFlow(r, d)
		w.end(d, port)
		w.flow = flow
	}
	w.friction(Term{Kind: FrictionTerm, Size: bore, Roughness: d.Roughness, Length: place - s.From, Times: 1, Basis: d.Rough})
	for _, turn := range s.Turns {
		if turn.At <= place {
			w.charge(Term{Kind: ElbowTerm, Size: bore, K: air.Elbow(d.ElbowLoss, turn.Angle), Angle: turn.Angle, Join: turn.Join, Whole: d.ElbowLoss, Basis: d.ElbowBasis})
		}
	}
	for _, g := range s.Gates {
		if !r.Use.Open[g] && g.Where <= place {
			w.charge(Term{Kind: GateTerm, Name: g.Name, Size: bore, K: shutLoss(g, bore), Gate: g, Basis: g.Leak.Basis})
		}
	}
}

var (
	entryBasis     = source.Basis{Document: "vent-manual", Clause: "branch entry", Mark: source.Memory}
	wideningBasis  = source.Basis{Document: "crane-tp410", Clause: "gradual enlargement", Mark: source.Reported}
	narrowingBasis = source.Basis{Document: "vent-manual", Clause: "contractions", Mark: source.Memory}
	junctionBasis  = source.Basis{Document: "crane-tp410", Clause: "converging wye", Mark: source.Reported}
)

// worker adds up terms at one flow.
type worker struct {
	t     *Tree
	flow  unit.Flow
	terms []Term
}

// at is a term with the speed in its bore at a flow.
func (w *worker) at(x Term, flow unit.Flow) Term {
	x.Velocity = air.SpeedIn(flow, x.Size)
	x.Dynamic = w.t.State.VelocityPressure(x.Velocity)
	return x
}

func (w *worker) charge(x Term) {
	if math.IsInf(x.K, 1) {
		return // shut tight: nothing flows, so there is nothing to show
	}
	x = w.at(x, w.flow)
	x.Loss = unit.Pressure(x.K) * x.Dynamic
	w.terms = append(w.terms, x)
}

func (w *worker) friction(x Term) {
	x = w.at(x, w.flow)
	x.Reynolds = air.Reynolds(w.t.State, x.Velocity, x.Size)
	if x.Reynolds > 0 {
		x.Factor = air.Factor(x.Reynolds, float64(x.Roughness/x.Size))
		x.K = x.Factor * x.Times * float64(x.Length/x.Size)
		x.Loss = unit.Pressure(x.K) * x.Dynamic
	}
	w.terms = append(w.terms, x)
}

// change adds the loss where two sizes meet.
func (w *worker) change(from, to unit.Length) {
	small, large := min(from, to), max(from, to)
	x := Term{Size: small, Other: large, Ratio: float64(small/large) * float64(small/large), How: w.t.how}
	switch {
	case unit.Compare(float64(from), float64(to)) < 0:
		x.Kind, x.K, x.Basis = WideningTerm, air.Widening(from, to, w.t.how), wideningBasis
	case unit.Compare(float64(from), float64(to)) > 0:
		x.Kind, x.K, x.Basis = NarrowingTerm, air.Narrowing(from, to, w.t.how), narrowingBasis
	}
	if x.K > 0 {
		w.charge(x)
	}
}

// end adds hood, hose and the size changes between them.
func (w *worker) end(d *shop.Duct, port *shop.Port) {
	w.charge(Term{Kind: HoodTerm, Name: port.Full(), Size: port.Size, K: port.HoodLoss, Basis: port.Hood})
	h, bore := w.t.hose(d), w.t.bore(d.Stretches[0])
	if h == nil {
		w.change(port.Size, bore)
		return
	}
	w.change(port.Size, h.Size)
	w.friction(Term{Kind: HoseTerm, Name: h.Material, Size: h.Size, Roughness: h.Roughness, Length: h.Length, Times: h.Times, Basis: h.Rough})
	w.change(h.Size, bore)
}

// junction adds the flow-split loss on the combined velocity pressure.
func (w *worker) junction(split *Split, all unit.Flow, bore unit.Length) {
	loss, _, _ := split.loss(float64(w.flow), float64(all))
	x := w.at(Term{Kind: JunctionTerm, Size: bore, Branch: split.Branch, Wye: split.Wye, All: all, Loss: unit.Pressure(loss), Basis: junctionBasis}, all)
	if all > 0 {
		x.Share = min(1, max(0, float64(w.flow/all)))
		if !split.Branch {
			x.Share = 1 - x.Share
		}
		x.K = loss / float64(x.Dynamic)
	}
	w.terms = append(w.terms, x)
}
