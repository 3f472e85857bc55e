package drawing

import (
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// openNames are the stretches on the open way of a use of a test shop.
func openNames(p *plan.Plan, use string) map[string]bool {
	names := map[string]bool{}
	for _, u := range p.Air.Uses {
		if u.Name != use {
			continue
		}
		runs := map[*shop.Collector]bool{}
		for _, r := range u.Results {
			runs[r.Collector] = true
		}
		for s, open := range openStretches(p.Shop, u, runs) {
			if open {
				names[s.Name()] = true
			}
		}
	}
	return names
}

func TestOpenWay(t *testing.T) {
	p := loaded(t, "hall")
	for use, want := range map[string]struct{ open, shut []string }{
		"Thicknesser": {[]string{"Thicknesser drop", "Main 8"}, []string{"Panel drop", "Main 1", "Saw drop 1", "Sander run", "Jointer drop"}},
		"Scroll saw":  {[]string{"Scroll branch", "Main 1", "Main 2", "Main 8"}, []string{"Mitre drop", "Router drop", "Sander run"}},
		// the guard's gate is shut behind its own: opening one is not enough
		"Router table":             {[]string{"Router drop", "Main 8"}, []string{"Main 1", "Guard branch"}},
		"Sanding beside the lathe": {[]string{"Sander run", "Shared drop", "Mitre drop", "Main 8"}, []string{"Scroll branch", "Main 1"}},
		"Everything open":          {[]string{"Guard branch", "Main 1", "Sander run"}, nil},
		"Everything shut":          {[]string{"Sander run"}, []string{"Main 8", "Panel drop"}},
		"Duct off":                 {nil, []string{"Main 8", "Sander run"}},
	} {
		got := openNames(p, use)
		for _, name := range want.open {
			if !got[name] {
				t.Errorf("%s: %s is not open: %v", use, name, got)
			}
		}
		for _, name := range want.shut {
			if got[name] {
				t.Errorf("%s: %s is open", use, name)
			}
		}
	}
}

// TestOpenWayEndsAtAShutGate checks that a duct whose own gate is open counts
// as shut off behind a shut zone gate.
func TestOpenWayEndsAtAShutGate(t *testing.T) {
	p := loaded(t, "hall")
	u := &duct.Use{Open: map[*shop.Gate]bool{}}
	for _, g := range p.Shop.Gates {
		u.Open[g] = g.Name != "East zone gate"
	}
	open := openStretches(p.Shop, u, map[*shop.Collector]bool{p.Shop.Collectors[0]: true})
	for _, d := range p.Shop.Ducts {
		for _, s := range d.Stretches {
			switch s.Name() {
			case "Mitre drop", "Shared drop", "Scroll branch", "Sander run":
				if open[s] {
					t.Errorf("%s is open", s.Name())
				}
			case "Panel drop", "Saw drop 2", "Thicknesser drop":
				if !open[s] {
					t.Errorf("%s is shut", s.Name())
				}
			}
		}
	}
}

// TestSystemCurves checks the square law: at half the flow a quarter of the
// pressure; and that many uses show only the least and the most.
func TestSystemCurves(t *testing.T) {
	p := loaded(t, "shed")
	c := p.Shop.Collectors[0]
	f := &fanChart{collector: c, fan: duct.NewFan(c, p.Air.State, duct.NoFilter)}
	f.sys, f.points = p.Shop.Units, pointsOf(p, c)
	f.setAxes(f.fan.Curve(8))
	f.drawSystems()
	end := f.strips[23].c // the first curve has 24 pieces
	if half := f.strips[11].c; abs(half.x*2-end.x) > 2 || abs(half.y*4-end.y) > 4 || end != f.spotOf(f.points[0]) {
		t.Errorf("half way %v, at the end %v", half, end)
	}
	hall := loaded(t, "hall")
	many := &fanChart{points: pointsOf(hall, hall.Shop.Collectors[0])}
	if n := len(many.shown()); n != 4 || many.onCurve() < 20 {
		t.Errorf("%d of %d curves", n, many.onCurve())
	}
}

func abs(n int) int { return max(n, -n) }

// TestGatesStandOnTheirStretch checks that a gate is drawn on its own stretch
// and clear of machines and risers.
func TestGatesStandOnTheirStretch(t *testing.T) {
	for _, name := range []string{"hall", "shed", "yard"} {
		s := NewBoard(loaded(t, name)).sheet(nil)
		for _, m := range s.gates {
			if m.beside != nil {
				t.Errorf("%s: %s is not on its duct", name, m.gate.Name)
			}
			p := s.pipeOf(m.gate.On)
			piece := p.pieceOf(m.gate.Stretch)
			best := 1 << 30
			for along := piece.from; along <= piece.to; along += 10 {
				at, _ := p.path.at(along)
				best = min(best, span(at, m.at))
			}
			if best > 10 {
				t.Errorf("%s: %s stands %d tenths from its stretch", name, m.gate.Name, best)
			}
			for _, o := range s.machines {
				if o.label.box.meets(m.extent()) {
					t.Errorf("%s: %s touches %s", name, m.gate.Name, o.machine.Name)
				}
			}
			for _, q := range s.pipes {
				for _, r := range q.risers {
					if m.extent().meets(around(r.at, r.radius, r.radius)) {
						t.Errorf("%s: %s touches a riser of %s", name, m.gate.Name, q.duct.Name)
					}
				}
			}
		}
	}
}

// TestRisers checks which runs are marked, and which way.
func TestRisers(t *testing.T) {
	s := newSheet(NewBoard(loaded(t, "yard")), nil, 1)
	want := map[string][]bool{"Belt drop": {true, false}, "Bench drop": {false, true}, "Trunk": nil}
	for _, p := range s.pipes {
		ups, ok := want[p.duct.Name]
		if !ok {
			continue
		}
		if len(p.risers) != len(ups) {
			t.Errorf("%s: %d marks", p.duct.Name, len(p.risers))
			continue
		}
		for i, r := range p.risers {
			if r.up != ups[i] {
				t.Errorf("%s: mark %d goes up: %v", p.duct.Name, i, r.up)
			}
		}
	}
}

// TestDoors checks that a door stands in the nearest wall and opens outwards.
func TestDoors(t *testing.T) {
	s := newSheet(NewBoard(loaded(t, "hall")), nil, 1)
	if len(s.doors) != 3 {
		t.Fatalf("%d doors", len(s.doors))
	}
	south, east := s.doors[0], s.doors[1]
	wall := s.scale.at(shop.Point{X: metres(46), Y: metres(30)})
	if south.hinge.y != wall.y || south.jamb.y != wall.y || south.tip.y <= wall.y {
		t.Errorf("south door %+v, wall %v", south, wall)
	}
	if east.hinge.x != wall.x || east.jamb.x != wall.x || east.tip.x <= wall.x {
		t.Errorf("east door %+v, wall %v", east, wall)
	}
}

func metres(feet float64) float64 { return feet * 0.3048 }
