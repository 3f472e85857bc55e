package duct

import "dustbook/plan/air"

// Edge is one piece of a tree: a pipe, a hose with its hood, or a hole.
// Air enters at its upstream end and leaves into the edge it empties into.
//
// Its loss is (Quad + Fric·f)·Q·|Q| in pascals, with Q in m³/s and f the
// friction factor at Reynolds number Re·|Q| and relative roughness Rel.
type Edge struct {
	Down int     // index of the edge it empties into, -1 for the root
	Quad float64 // Pa/(m³/s)², all fixed coefficients
	Fric float64 // Pa/(m³/s)², friction at a factor of one
	Re   float64 // Reynolds number at 1 m³/s
	Rel  float64 // roughness over diameter
	Root float64 // 1/√f at a usual speed, where a search for f starts; nought: unknown
	Leaf bool    // its upstream end is open to the room
	Dead bool    // it carries nothing: no open way leads into it
	Wye  *Split  // with the method "flow split": the loss where it joins, by the share of flow
}

// loss is the edge's pressure loss at a flow and how fast it grows.
func (e *Edge) loss(q float64) (p, slope float64) {
	size := q
	if size < 0 {
		size = -size
	}
	if e.Fric == 0 {
		p, slope = e.Quad*size*size, 2*e.Quad*size
	} else if re := e.Re * size; re < least {
		// so near to rest that the factor would overflow: laminar, 64/Re
		viscous := e.Fric * 64 / e.Re
		p, slope = viscous*size+e.Quad*size*size, viscous+2*e.Quad*size
	} else {
		f, dfdre := air.FactorSlope(re, e.Rel)
		p = (e.Quad + float64(e.Fric*f)) * size * size
		slope = 2*(e.Quad+float64(e.Fric*f))*size + e.Fric*dfdre*e.Re*size*size
	}
	if q < 0 {
		p = -p
	}
	return p, slope
}

// least is the Reynolds number below which flow is taken as laminar without
// asking for the factor.
const least = 1e-3

// A Root is what draws on a tree: the suction it offers at its inlet at a
// flow, how that changes, and between which flows it is known.
type Root interface {
	Suction(q float64) (p, slope float64)
	Range() (low, high float64)
	Falls() bool // the suction never rises with flow
}

// Network is a tree of edges, each before the edge it empties into.
type Network struct {
	Edges  []Edge
	splits bool
	fed    []bool // working space of MarkDead
}

// NewNetwork takes edges that stand before the edges they empty into.
func NewNetwork(edges []Edge) *Network {
	n := &Network{Edges: edges}
	for i := range edges {
		if edges[i].Down >= 0 && edges[i].Down <= i || edges[i].Down >= len(edges) {
			panic("duct: an edge stands after the edge it empties into")
		}
		n.splits = n.splits || edges[i].Wye != nil
	}
	n.MarkDead()
	return n
}

// MarkDead finds the edges that carry nothing because no open way leads into
// them or out of them. An edge that is shut off is marked before the call.
func (n *Network) MarkDead() {
	n.fed = stretched(n.fed, len(n.Edges))
	fed := n.fed
	for i := range n.Edges {
		e := &n.Edges[i]
		if !e.Leaf {
			e.Dead = e.Dead || !fed[i]
		}
		if !e.Dead && e.Down >= 0 {
			fed[e.Down] = true
		}
	}
	for i := len(n.Edges) - 1; i >= 0; i-- {
		if e := &n.Edges[i]; e.Down >= 0 && n.Edges[e.Down].Dead {
			e.Dead = true
		}
	}
}

// Live reports whether any edge carries air.
func (n *Network) Live() bool {
	for i := range n.Edges {
		if !n.Edges[i].Dead {
			return true
		}
	}
	return false
}
