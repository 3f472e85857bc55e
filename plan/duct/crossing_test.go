package duct

import (
	"math"
	"math/rand/v2"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// A fan curve with hills can be crossed several times. What Crossings finds
// is held against a scan of offer minus demand at 20,000 flows.
const scanned = 20000

// scan checks every crossing of a tree with a root, and returns how many
// there are.
func scan(t *testing.T, what string, net *Network, root Root) int {
	t.Helper()
	solver := NewSolver(net)
	found, ok := solver.Crossings(root)
	if !ok {
		t.Errorf("%s: did not settle", what)
		return 0
	}
	gap := func(q float64) float64 {
		demand, ok := solver.At(q)
		if !ok {
			t.Errorf("%s: did not settle at %g", what, q)
		}
		offer, _ := root.Suction(q)
		return offer - demand
	}
	low, high := root.Range()
	next, before := 0, gap(low)
	for i := 1; i <= scanned; i++ {
		q := low + (high-low)*float64(i)/scanned
		after := gap(q)
		if i%997 == 0 {
			balanced(t, net, solver, q)
		}
		count := 0
		for next < len(found) && found[next].Flow <= q {
			next, count = next+1, count+1
		}
		if changes := before*after < 0; changes != (count%2 == 1) && before != 0 && after != 0 {
			t.Errorf("%s: offer minus demand goes from %g to %g up to the flow %g, with %d crossings found there", what, before, after, q, count)
		}
		before = after
	}
	for i, c := range found {
		step := 1e-7 * (high - low)
		left, right := gap(c.Flow-step), gap(c.Flow+step)
		if c.Stable != (left > right) || left*right > 0 {
			t.Errorf("%s: crossing %d at %g, stable %v: %g before and %g behind", what, i, c.Flow, c.Stable, left, right)
		}
		if i > 0 && c.Flow <= found[i-1].Flow {
			t.Errorf("%s: crossings out of order: %v", what, found)
		}
	}
	return len(found)
}

// drawnTree is a random tree with its fan and the network of one use.
func drawnTree(t *testing.T, d *drawing) (*Network, *Fan) {
	t.Helper()
	s := d.shop(t)
	tree := Grow(s, s.Collectors[0], StateOf(s))
	fan := NewFan(tree.Collector, tree.State, States(tree.Collector)[0])
	return tree.Set(&Use{Open: d.opened(s)}), fan
}

func TestHumpedCurves(t *testing.T) {
	several, uneven := 0, 0
	for seed := range often() / 4 {
		d := newDrawing(2000+seed, 1+int(seed)%9)
		net, fan := hilly(t, d)
		if !net.Live() {
			continue
		}
		switch found := scan(t, d.name(), net, fan); {
		case found > 1:
			several++
		case found == 1:
			uneven++
		}
	}
	if several < int(often()/16) || uneven < int(often()/16) {
		t.Errorf("only %d trees have several crossings and %d one", several, uneven)
	}
}

// hilly is a random tree whose fan has a curve with hills, as long as the
// tree's demand is high.
func hilly(t *testing.T, d *drawing) (*Network, *Fan) {
	s := d.shop(t)
	c := s.Collectors[0]
	tree := Grow(s, c, StateOf(s))
	net := tree.Set(&Use{Open: d.opened(s)})
	if !net.Live() {
		return net, nil
	}
	demand, ok := NewSolver(net).At(0.5)
	if !ok {
		t.Errorf("%s: did not settle", d.name())
	}
	longest := 0.5 * math.Sqrt(2000/demand) * d.between(0.8, 2)
	count := 5 + d.IntN(6)
	c.Curve = nil
	for i := range count {
		point := shop.CurvePoint{Flow: unit.Flow(longest * (float64(i) + d.between(-0.3, 0.3)*float64(min(i, 1))) / float64(count-1)), Static: unit.Pressure(d.between(50, 3000))}
		if i == count-1 {
			point.Static = 0
		}
		c.Curve = append(c.Curve, point)
	}
	return net, NewFan(c, tree.State, States(c)[0])
}

func TestFlowSplit(t *testing.T) {
	wyes := 0
	for seed := range often() / 4 {
		d := newDrawing(3000+seed, 2+int(seed)%9)
		d.junctions = "flow split"
		net, fan := drawnTree(t, d)
		if seed%2 == 1 {
			d = newDrawing(3000+seed, 2+int(seed)%9)
			d.junctions = "flow split"
			net, fan = hilly(t, d)
		}
		if net.Live() {
			scan(t, d.name(), net, fan)
		}
		if net.splits {
			wyes++
		}
	}
	if wyes < int(often()/16) {
		t.Errorf("only %d trees have wyes", wyes)
	}
}

// On a falling curve there is one crossing, and both ways of looking find it.
func TestMeetAndCrossingsAgree(t *testing.T) {
	checked := 0
	for seed := range often() {
		d := newDrawing(4000+seed, 1+int(seed)%12)
		net, fan := drawnTree(t, d)
		if !net.Live() {
			continue
		}
		solver := NewSolver(net)
		_, high := fan.Range()
		flow, suction, ok := solver.Meet(fan, high/2)
		if !ok {
			t.Errorf("%s: did not settle", d.name())
			continue
		}
		found, ok := solver.Crossings(fan)
		if flow > high {
			if len(found) != 0 {
				t.Errorf("%s: %v found, but the ducts draw %g", d.name(), found, flow)
			}
			continue
		}
		checked++
		if !ok || len(found) != 1 || !near(found[0].Flow, flow, 1e-9) || !near(found[0].Suction, suction, 1e-7) || !found[0].Stable {
			t.Errorf("%s: crossings %v, want the one at %.12g", d.name(), found, flow)
		}
	}
	if checked < int(often()/2) {
		t.Errorf("checked %d trees only", checked)
	}
}

// The demand of a tree by another way altogether: the flow that a suction
// draws through an edge by bisection, nested along the tree.
func drawnBy(net *Network, feeds [][]int, i int, suction float64) float64 {
	e := &net.Edges[i]
	if e.Dead || suction <= 0 {
		return 0
	}
	if e.Leaf {
		return root(func(q float64) float64 { p, _ := e.loss(q); return suction - p })
	}
	inner := func(u float64) (sum float64) {
		for _, f := range feeds[i] {
			sum += drawnBy(net, feeds, f, u)
		}
		return sum
	}
	low, high := 0.0, suction
	for range 60 {
		u := (low + high) / 2
		if p, _ := e.loss(inner(u)); p < suction-u {
			low = u
		} else {
			high = u
		}
	}
	return inner((low + high) / 2)
}

// root finds where a falling function passes zero, from zero on.
func root(f func(float64) float64) float64 {
	low, high := 0.0, 1e-6
	for f(high) > 0 {
		low, high = high, 2*high
	}
	for range 60 {
		if q := (low + high) / 2; f(q) > 0 {
			low = q
		} else {
			high = q
		}
	}
	return (low + high) / 2
}

func TestNestedBisectionAgrees(t *testing.T) {
	checked := 0
	for seed := uint64(0); checked < 8; seed++ {
		d := newDrawing(5000+seed, 2)
		net, fan := drawnTree(t, d)
		if len(net.Edges) > 6 || !net.Live() || net.Edges[len(net.Edges)-1].Down >= 0 {
			continue
		}
		feeds := make([][]int, len(net.Edges))
		for i, e := range net.Edges {
			if e.Down >= 0 {
				feeds[e.Down] = append(feeds[e.Down], i)
			}
		}
		_, high := fan.Range()
		solver := NewSolver(net)
		total := high * 0.3
		suction, ok := solver.At(total)
		if !ok {
			t.Errorf("%s: did not settle", d.name())
			continue
		}
		checked++
		got := 0.0
		for i, e := range net.Edges {
			if e.Down < 0 {
				got += drawnBy(net, feeds, i, suction)
			}
		}
		if math.Abs(got-total) > 1e-8*total {
			t.Errorf("%s: %g Pa draw %.12g m³/s by bisection, %.12g by the solver", d.name(), suction, got, total)
		}
	}
}

// bump is a root that differs from a tree's demand by a narrow parabola: the
// two cross within a width of a middle, and nowhere else.
type bump struct {
	demand, low, high, middle, width, sign float64
}

func (b bump) Suction(q float64) (p, slope float64) {
	off := q - b.middle
	return b.demand*q*q + b.sign*1e6*(off*off-b.width*b.width), 2*b.demand*q + b.sign*2e6*off
}
func (b bump) Range() (low, high float64) { return b.low, b.high }
func (b bump) Falls() bool                { return false }

// A pair of crossings narrower than the samples is found wherever it lies, at
// the ends of the range as well; where the parabola only comes near, none is.
func TestHiddenPairs(t *testing.T) {
	const quad, low, high = 5000.0, 0.1, 1.1
	net := NewNetwork([]Edge{{Down: -1, Quad: quad, Leaf: true}})
	draw := rand.New(rand.NewPCG(9, 9))
	const sample = (high - low) / 192
	for n := range 400 {
		width := sample * math.Pow(10, -3*draw.Float64()) / 2
		middle := low + width*1.01 + draw.Float64()*(high-low-2.02*width)
		switch n % 4 {
		case 0:
			middle = low + width*1.01 + draw.Float64()*(sample/2-width)
		case 1:
			middle = high - width*1.01 - draw.Float64()*(sample/2-width)
		}
		for _, sign := range []float64{1, -1} {
			b := bump{quad, low, high, middle, width, sign}
			found, ok := NewSolver(net).Crossings(b)
			if !ok || len(found) != 2 || math.Abs(found[0].Flow-middle+width) > 1e-9 || math.Abs(found[1].Flow-middle-width) > 1e-9 || found[0].Stable != (sign > 0) || found[1].Stable != (sign < 0) {
				t.Fatalf("%+v: found %+v", b, found)
			}
			near := shifted{bump{quad, low, high, middle, 0, sign}, sign * 1e-3}
			if found, ok := NewSolver(net).Crossings(near); !ok || len(found) != 0 {
				t.Fatalf("%+v comes near only: found %+v", near, found)
			}
		}
	}
}

// shifted is a root with a little more pressure everywhere.
type shifted struct {
	bump
	by float64
}

func (s shifted) Suction(q float64) (p, slope float64) {
	p, slope = s.bump.Suction(q)
	return p + s.by, slope
}
