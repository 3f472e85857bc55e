package duct

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"sort"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// The reference networks were solved by a general hydraulic engine and by an
// independent Newton solver (testdata/networks: "model", "friction_laws").
// The set named colebrook uses the friction law of package air.

type reference struct {
	Case  string
	Air   struct{ Rho, Nu float64 }
	Edges []referenceEdge
	Fan   struct {
		Interp string
		Rho    float64 `json:"curve_rho_kg_m3"`
		Points [][2]float64
	}
	Atmosphere []string `json:"atmosphere_nodes"`
	Scenarios  []scenario
}

type referenceEdge struct {
	ID, From, To, Kind, Gate string
	Length                   float64 `json:"L_m"`
	Diameter                 float64 `json:"D_mm"`
	Rough                    float64 `json:"rough_mm"`
	K                        float64
	R                        float64 `json:"r_Pa_s_m3"`
}

type scenario struct {
	Name, Closed string
	Open         []string
	ClosedK      float64 `json:"closed_K"`
	Colebrook    struct {
		Fan struct {
			Flow float64 `json:"flow_m3_s"`
			Gain float64 `json:"pressure_gain_Pa"`
		}
		Flows  map[string]float64 `json:"edge_flow_m3_s"`
		Levels map[string]float64 `json:"node_total_pressure_Pa"`
	}
}

func loadNetworks(t testing.TB, pattern string) []reference {
	files, err := filepath.Glob("testdata/networks/" + pattern)
	if err != nil || len(files) == 0 {
		t.Fatalf("no reference networks %s: %v", pattern, err)
	}
	sort.Strings(files)
	var list []reference
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var n struct {
			reference
			Air struct {
				Rho float64 `json:"rho_kg_m3"`
				Nu  float64 `json:"nu_m2_s"`
			}
		}
		if err := json.Unmarshal(data, &n); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		n.reference.Air.Rho, n.reference.Air.Nu = n.Air.Rho, n.Air.Nu
		list = append(list, n.reference)
	}
	return list
}

func (n reference) state() air.State {
	return air.State{Density: unit.Density(n.Air.Rho), Viscosity: unit.Viscosity(n.Air.Rho * n.Air.Nu)}
}

// tree turns the suction side of a reference network into edges in order,
// leaves first. Edge order follows the file from the hoods to the trunk.
func (n reference) tree(s scenario) (*Network, []string) {
	var ducts []referenceEdge
	for _, e := range n.Edges {
		if e.Kind == "duct" && e.ID != "STK" {
			ducts = append(ducts, e)
		}
	}
	depth := func(e referenceEdge) int {
		d := 0
		for at := e.To; ; d++ {
			next := ""
			for _, other := range ducts {
				if other.From == at {
					next = other.To
				}
			}
			if next == "" {
				return d
			}
			at = next
		}
	}
	sort.SliceStable(ducts, func(i, j int) bool { return depth(ducts[i]) > depth(ducts[j]) })
	open := map[string]bool{}
	for _, name := range s.Open {
		open[name] = true
	}
	rooms := map[string]bool{}
	for _, name := range n.Atmosphere {
		rooms[name] = true
	}
	var edges []Edge
	var ids []string
	for _, e := range ducts {
		bore := unit.Length(e.Diameter / 1000)
		edge := pipe(n.state(), bore, unit.Length(e.Rough/1000), unit.Length(e.Length), 1)
		edge.Quad, edge.Leaf, edge.Down = e.K*dynamic(n.state(), bore), rooms[e.From], -1
		if e.Gate != "" && !open[e.Gate] {
			edge.Dead = s.Closed == "removed"
			edge.Quad += s.ClosedK * dynamic(n.state(), bore)
		}
		for i, other := range ducts {
			if other.From == e.To {
				edge.Down = i
			}
		}
		edges, ids = append(edges, edge), append(ids, e.ID)
	}
	return NewNetwork(edges), ids
}

// fileFan is the fan of a reference network by the file's own interpolation,
// with the linear filter and the stack on its side.
type fileFan struct {
	n      reference
	filter float64
	stack  Edge
}

func (n reference) fan() *fileFan {
	f := &fileFan{n: n}
	for _, e := range n.Edges {
		switch {
		case e.Kind == "linear":
			f.filter = e.R
		case e.ID == "STK":
			bore := unit.Length(e.Diameter / 1000)
			f.stack = pipe(n.state(), bore, unit.Length(e.Rough/1000), unit.Length(e.Length), 1)
			f.stack.Quad = e.K * dynamic(n.state(), bore)
		}
	}
	return f
}

func (f *fileFan) gain(q float64) (p, slope float64) {
	points, scale := f.n.Fan.Points, f.n.Air.Rho/f.n.Fan.Rho
	if f.n.Fan.Interp == "power3" {
		h0, h1, h2 := points[0][1], points[1][1], points[2][1]
		c := math.Log((h0-h2)/(h0-h1)) / math.Log(points[2][0]/points[1][0])
		b := (h0 - h1) / math.Pow(points[1][0], c)
		if q <= 0 {
			return scale * h0, 0
		}
		return scale * (h0 - b*math.Pow(q, c)), -scale * b * c * math.Pow(q, c-1)
	}
	i := 0
	for i < len(points)-2 && points[i+1][0] < q {
		i++
	}
	slope = (points[i+1][1] - points[i][1]) / (points[i+1][0] - points[i][0])
	return scale * (points[i][1] + slope*(q-points[i][0])), scale * slope
}

func (f *fileFan) Suction(q float64) (p, slope float64) {
	p, slope = f.gain(q)
	loss, lossSlope := f.stack.loss(q)
	return p - f.filter*q - loss, slope - f.filter - lossSlope
}

func (f *fileFan) Range() (low, high float64) {
	return 0, f.n.Fan.Points[len(f.n.Fan.Points)-1][0]
}

func (f *fileFan) Falls() bool { return true }

func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Max(math.Abs(want), 1e-9)
}

func TestReferenceNetworks(t *testing.T) {
	trees, scenarios := 0, 0
	for _, n := range loadNetworks(t, "g*.json") {
		if n.Case == "g07_looped" {
			continue // a loop: the shop reader refuses it, see package shop
		}
		trees++
		for _, s := range n.Scenarios {
			scenarios++
			t.Run(n.Case+"/"+s.Name, func(t *testing.T) {
				net, ids := n.tree(s)
				solver, fan := NewSolver(net), n.fan()
				flow, _, ok := solver.Meet(fan, 0.3)
				if !ok {
					t.Fatal("did not settle")
				}
				checkReference(t, n, s, solver, ids, flow, fan)
				press, missing := solver.Residual()
				if gain, _ := fan.gain(flow); press > 1e-9*gain || missing > 1e-12 {
					t.Errorf("residual %g Pa of %g, %g m³/s", press, gain, missing)
				}
				if found, ok := solver.Crossings(fan); !ok || len(found) != 1 || !near(found[0].Flow, flow, 1e-9) || !found[0].Stable {
					t.Errorf("crossings %v, want the one at %g", found, flow)
				}
			})
		}
	}
	if trees != 11 || scenarios != 30 {
		t.Errorf("checked %d trees in %d scenarios, want 11 in 30", trees, scenarios)
	}
}

func checkReference(t *testing.T, n reference, s scenario, solver *Solver, ids []string, flow float64, fan *fileFan) {
	const tolerance = 1e-5
	want := s.Colebrook
	if !near(flow, want.Fan.Flow, tolerance) {
		t.Errorf("fan flow %.8g, want %.8g", flow, want.Fan.Flow)
	}
	if gain, _ := fan.gain(flow); !near(gain, want.Fan.Gain, tolerance) {
		t.Errorf("fan pressure %.8g, want %.8g", gain, want.Fan.Gain)
	}
	checked := 0
	for i, id := range ids {
		q, carries := want.Flows[id]
		if !carries && solver.Flow[i] != 0 {
			t.Errorf("edge %s carries %g, want nothing", id, solver.Flow[i])
		}
		if carries {
			checked++
			if !near(solver.Flow[i], q, tolerance) {
				t.Errorf("edge %s carries %.8g, want %.8g", id, solver.Flow[i], q)
			}
		}
		for _, e := range n.Edges {
			level, ok := want.Levels[e.To]
			if e.ID == id && ok && carries && math.Abs(solver.End[i]-level) > math.Max(0.01, tolerance*math.Abs(level)) {
				t.Errorf("pressure at %s %.8g, want %.8g", e.To, solver.End[i], level)
			}
		}
	}
	if checked == 0 {
		t.Error("no edge was checked")
	}
}
