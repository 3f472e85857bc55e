package duct

import (
	"embed"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed spread.csv
var spreadData embed.FS

var spreadTable = source.MustTable(spreadData, "duct", "spread", "name", "value", "unit", "about")

// SpreadTable is the data of the spread, for a page of sources.
func SpreadTable() source.Table { return spreadTable }

// Spreads are solved this often, from this seed; the band leaves out a tenth
// at each end.
const (
	spreadSolves = 401
	spreadSeed   = 20261125
	spreadTail   = spreadSolves / 10
)

// Range is where eight of ten solves lie, rounded.
type Range struct{ Low, High float64 }

// Likely is how a need stands to a band.
type Likely uint8

const (
	Unknown Likely = iota // there is no band
	Surely                // the need lies below it
	Thinly                // the need lies inside it
	Hardly                // the need lies above it
)

// Judge holds a need against the band.
func (b Range) Judge(need float64) Likely {
	switch {
	case b == Range{}:
		return Unknown
	case unit.Compare(need, b.Low) <= 0:
		return Surely
	case unit.Compare(need, b.High) <= 0:
		return Thinly
	}
	return Hardly
}

// Spread is how far the figures of one result may lie apart, when friction,
// fittings, hoods, leakage and the fan's curve are as uncertain as the data
// say. Every thing has a stream of its own, keyed by its name: another duct
// in the file does not change what is drawn for the rest.
type Spread struct {
	Solves, Lost int   // how many there were, and how many of them left the curve
	Flow         Range // through the fan, m³/s

	ports  map[*shop.Port]Range
	speeds map[*shop.Stretch]Range
}

// Known reports whether there are bands: the result is on its curve, and fewer
// than a tenth of the solves were lost.
func (s *Spread) Known() bool { return s.Flow != Range{} }

// Port is the band of a port's flow in m³/s; empty where there is none.
func (s *Spread) Port(p *shop.Port) Range { return s.ports[p] }

// Speed is the band of the velocity in a stretch, or in its hose where that is
// slower, in m/s; empty for a stretch that is not judged.
func (s *Spread) Speed(of *shop.Stretch) Range { return s.speeds[of] }

// Spread solves a result again with its figures drawn at random.
func (t *Tree) Spread(r *Result) *Spread {
	out := &Spread{ports: map[*shop.Port]Range{}, speeds: map[*shop.Stretch]Range{}}
	if !r.OnCurve || r.Use.Kind == DuctOff || r.Flow == 0 {
		return out
	}
	d := t.drawing(r)
	for i := range spreadSolves {
		d.solve(i)
	}
	out.Solves, out.Lost = spreadSolves, d.lost
	if d.lost >= spreadTail {
		return out
	}
	out.Flow = middle(d.flows)
	for i, p := range d.ports {
		out.ports[p] = middle(d.got[i])
	}
	for i, at := range d.stretches {
		out.speeds[at.Stretch] = middle(d.speeds[i])
	}
	return out
}

// middle is the range of a sample without its tails.
func middle(sample []float64) Range {
	slices.Sort(sample)
	tail := spreadTail * len(sample) / spreadSolves
	return Range{unit.Six(sample[tail]), unit.Six(sample[len(sample)-1-tail])}
}

// spreadRun is one result while it is solved again and again.
type spreadRun struct {
	tree *Tree
	use  *Use
	base *Network
	net  *Network
	fan  *Fan
	note Result

	plain float64 // flow of the result itself

	friction, fixed [][]float64 // factors of each edge, by solve; nil where it has none
	shut            [][]shutGate
	pressure        []float64 // factors of the fan

	solver    *Solver
	lost      int
	flows     []float64
	ports     []*shop.Port
	ends      []int // edges of the ports
	got       [][]float64
	stretches []*StretchResult
	speeds    [][]float64
}

// shutGate is what one shut gate adds to an edge.
type shutGate struct {
	quad   float64
	factor []float64
}

// stream draws the factors of one thing: even in the logarithm, so that eight
// of ten lie between 1/(1 + width) and 1 + width.
func stream(kind, name, row string) []float64 {
	key := fnv.New64a()
	key.Write([]byte(kind + "\x00" + name))
	draw := rand.New(rand.NewPCG(spreadSeed, key.Sum64()))
	reach := math.Log1p(spreadTable.Figure(row)) / 0.8
	list := make([]float64, spreadSolves)
	for i := range list {
		list[i] = math.Exp(reach * (2*draw.Float64() - 1))
	}
	return list
}

// drawing draws every factor that a result needs.
func (t *Tree) drawing(r *Result) *spreadRun {
	d := &spreadRun{tree: t, use: r.Use, base: t.Set(r.Use), fan: NewFan(t.Collector, t.State, r.Filter), plain: float64(r.Flow)}
	row := "curve"
	if r.Claimed {
		row = "claims"
	}
	d.pressure = stream("fan", t.Collector.Name, row)
	n := len(d.base.Edges)
	d.friction, d.fixed, d.shut = make([][]float64, n), make([][]float64, n), make([][]shutGate, n)
	for i := range t.parts {
		if !d.base.Edges[i].Dead {
			d.factors(i)
		}
	}
	d.net = &Network{Edges: slices.Clone(d.base.Edges), splits: d.base.splits}
	d.solver = NewSolver(d.net)
	for i := range r.Ports {
		if p := r.Ports[i].Port; p.Duct != nil && r.Ports[i].Flow > 0 {
			d.ports, d.ends, d.got = append(d.ports, p), append(d.ends, t.byEnd[p.Duct]), append(d.got, nil)
		}
	}
	for i := range r.Stretches {
		if at := &r.Stretches[i]; at.Judged {
			d.stretches, d.speeds = append(d.stretches, at), append(d.speeds, nil)
		}
	}
	return d
}

// factors draws the factors of one edge.
func (d *spreadRun) factors(i int) {
	switch p := &d.tree.parts[i]; {
	case p.leak != nil:
		d.fixed[i] = stream("hole", p.leak.On.Name+"\x00"+holeName(p.leak), "hole")
		for k, area := range d.fixed[i] {
			d.fixed[i][k] = 1 / (area * area) // the loss goes with the square of the area
		}
	case p.end != nil:
		port, _ := d.use.Served(p.end)
		row := "hood"
		if port.Hood.Mark == source.Given {
			row = "hood given"
		}
		d.fixed[i] = stream("hood", port.Full(), row)
		d.friction[i] = stream("hose", p.end.Name, "friction")
	case p.stretch != nil:
		name := p.stretch.Duct.Name
		d.fixed[i], d.friction[i] = stream("fittings", name, "fittings"), stream("friction", name, "friction")
		for k, g := range p.stretch.Gates {
			if d.use.Open[g] || math.IsInf(p.gates[k], 1) {
				continue
			}
			row := "gate"
			if g.Leak.Basis.Mark == source.Given {
				row = "gate given"
			}
			opens := stream("gate", g.Name, row)
			for j, share := range opens {
				opens[j] = 1 / (share * share)
			}
			d.shut[i] = append(d.shut[i], shutGate{p.gates[k], opens})
		}
	}
}

// holeName tells the holes of a duct apart, whatever else is in the file.
func holeName(l *shop.Leak) string {
	for i, other := range l.On.Leaks {
		if other == l {
			return string(rune('a' + i%26))
		}
	}
	return ""
}

// solve draws once.
func (d *spreadRun) solve(sample int) {
	for i := range d.base.Edges {
		e := d.base.Edges[i]
		for _, g := range d.shut[i] {
			e.Quad -= g.quad
		}
		if d.fixed[i] != nil {
			e.Quad *= d.fixed[i][sample]
		}
		if d.friction[i] != nil {
			e.Fric *= d.friction[i][sample]
		}
		for _, g := range d.shut[i] {
			e.Quad += g.quad * g.factor[sample]
		}
		d.net.Edges[i] = e
	}
	d.solver.Take(d.net)
	fan := *d.fan
	fan.rated.Density *= d.pressure[sample]
	d.note.Why, d.note.Crossings = source.Reason{}, nil
	flow, ok := d.meet(&fan)
	if !ok {
		d.lost++
		return
	}
	d.flows = append(d.flows, flow)
	for i, end := range d.ends {
		d.got[i] = append(d.got[i], d.solver.Flow[end])
	}
	for i, at := range d.stretches {
		d.speeds[i] = append(d.speeds[i], d.speed(at))
	}
}

// meet finds where one solve works. With a falling fan the search starts from
// the result itself and goes to the crossing nearest to it; else every crossing
// is looked at, as for a result.
func (d *spreadRun) meet(fan *Fan) (flow float64, ok bool) {
	if !fan.Falls() {
		return operate(d.solver, fan, &d.note, false)
	}
	low, high := fan.Range()
	flow, _, ok = d.solver.Meet(fan, d.plain)
	return flow, ok && within(flow, low, high, &d.note)
}

// speed is the velocity in a judged stretch, or in its hose where that is
// slower.
func (d *spreadRun) speed(at *StretchResult) float64 {
	t := d.tree
	v := air.SpeedIn(unit.Flow(d.solver.Flow[t.byEdge[at.Stretch]]), t.bore(at.Stretch))
	if hose := t.hose(at.Stretch.Duct); at.Hose && hose != nil {
		v = min(v, air.SpeedIn(unit.Flow(d.solver.Flow[t.byEnd[at.Stretch.Duct]]), hose.Size))
	}
	return float64(v)
}
