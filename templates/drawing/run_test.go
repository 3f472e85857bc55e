package drawing_test

import (
	"strconv"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// TestRunSteps checks the table beside a profile against the result: the
// numbers of the stretches, what each takes, and sums that end with the fan's
// static pressure. The fan's static pressure equals all losses, by the
// equation the solver was given; the sum here is made anew.
func TestRunSteps(t *testing.T) {
	runs := 0
	for _, name := range shops {
		p := load(t, name)
		board := drawing.NewBoard(p)
		for _, u := range p.Air.Uses {
			for _, r := range u.Results {
				port := drawing.Governing(r)
				if port == nil || !r.OnCurve {
					continue
				}
				runs++
				_, steps := board.Profile(r, port, "p")
				order := drawing.InOrder(p.Shop, r.Collector)
				sum := 0.0
				for i, s := range steps {
					sum += float64(s.Loss)
					if !close(sum, float64(s.Suction)) {
						t.Errorf("%s, %s: %s adds up to %g, not %g", name, u.Name, s.Name, float64(s.Suction), sum)
					}
					switch {
					case i < len(port.Path()):
						if s.Stretch != port.Path()[i] || order[s.Number-1] != s.Stretch {
							t.Errorf("%s, %s: step %d is %s, number %d", name, u.Name, i, s.Name, s.Number)
						}
						if i > 0 && s.Far < steps[i-1].Far {
							t.Errorf("%s, %s: %s ends before the one upstream", name, u.Name, s.Name)
						}
					case s.Stretch != nil || s.Number != 0 || s.Far != 0:
						t.Errorf("%s, %s: %s stands among the fan's own parts", name, u.Name, s.Name)
					}
				}
				if !close(sum, float64(r.Static)) {
					t.Errorf("%s, %s, %s: ends at %g, not at the fan's %g", name, u.Name, r.Filter, sum, float64(r.Static))
				}
			}
		}
	}
	if runs < 20 {
		t.Errorf("only %d runs", runs)
	}
}

// close reports whether two pressures agree within what a gauge could tell
// and the rounding of the steps leaves: a tenth of a pascal.
func close(a, b float64) bool { return a-b < 0.1 && b-a < 0.1 }

// TestGoverning checks that the port with the least share of its need is
// found, in whichever order they stand, and none where no duct leads.
func TestGoverning(t *testing.T) {
	p := load(t, "hall")
	r := named(t, p, "Thicknesser and table saw")
	port := drawing.Governing(r)
	if port == nil {
		t.Fatal("none governs")
	}
	share := func(v duct.PortResult) float64 { return float64(v.Flow / v.Port.Flow) }
	var own float64
	for _, v := range r.Ports {
		if v.Port == port {
			own = share(v)
		}
	}
	less := 0
	for _, v := range r.Ports {
		if share(v) < own {
			t.Errorf("%s has less than %s", v.Port.Full(), port.Full())
		}
		if share(v) > own {
			less++
		}
	}
	if less == 0 {
		t.Error("no other port has more: this test needs one")
	}
	turned := *r
	turned.Ports = []duct.PortResult{}
	for i := len(r.Ports) - 1; i >= 0; i-- {
		turned.Ports = append(turned.Ports, r.Ports[i])
	}
	if drawing.Governing(&turned) != port {
		t.Error("another port governs when they stand in another order")
	}
	turned.Ports = nil
	if drawing.Governing(&turned) != nil {
		t.Error("a port governs where there is none")
	}
}

// TestFanNumbersLead checks that every number of a fan's chart leads to the
// sheet of its use, and that one without a sheet leads nowhere.
func TestFanNumbersLead(t *testing.T) {
	p := load(t, "hall")
	board := drawing.NewBoard(p)
	board.LinkUses(func(u *duct.Use) string {
		if len(u.Machines) == 0 {
			return ""
		}
		return "to " + u.Name
	})
	for _, c := range p.Shop.Collectors {
		svg, list := board.FanChart(c, "f")
		links := map[string]string{}
		parse(t, svg).each(func(n *node) {
			if n.name == "a" {
				links[n.text] = n.attr["href"]
			}
		})
		if len(links) == 0 {
			t.Errorf("%s: no number leads anywhere", c.Name)
		}
		for _, v := range list {
			number := strconv.Itoa(v.Number)
			switch to := links[number]; {
			case v.Number == 0 || len(v.Result.Use.Machines) == 0:
				if to != "" {
					t.Errorf("%s: %s leads to %q", c.Name, v.Use, to)
				}
			case to != "to "+v.Use:
				t.Errorf("%s: number %s leads to %q, not to %s", c.Name, number, to, v.Use)
			}
		}
	}
}

// TestSystemCurvesEndInTheirPoints reads the thin lines of a fan's chart back:
// each starts at nought, ends in an operating point, and half-way along the
// flow has a quarter of the pressure (losses as the square of the flow); solid
// where the filter is clean, dashed at change-out.
func TestSystemCurvesEndInTheirPoints(t *testing.T) {
	p := load(t, "shed")
	c := p.Shop.Collectors[0]
	svg, list := drawing.FanChart(p, c, "f")
	root := parse(t, svg)
	x, y := axes(t, root)
	found := map[string]int{}
	root.each(func(n *node) {
		if n.attr["class"] != "line-soft" || n.attr["stroke-width"] != "0.7" || len(points(t, n.attr["d"])) < 10 {
			return
		}
		curve := points(t, n.attr["d"])
		end := curve[len(curve)-1]
		for _, v := range list {
			at := [2]float64{x(unit.Air.In(p.Shop.Units, v.Flow)), y(unit.Press.In(p.Shop.Units, v.Static))}
			if v.Number == 0 || !near(end, at, 0.3) || (v.Filter == duct.ChangeOut) != (n.attr["stroke-dasharray"] != "") {
				continue
			}
			found[v.Filter]++
			if !near(curve[0], [2]float64{x(0), y(0)}, 0.3) {
				t.Errorf("%s: starts at %v", v.Use, curve[0])
			}
			half := [2]float64{(x(0) + at[0]) / 2, y(0) + (at[1]-y(0))/4}
			if !near(curve[len(curve)/2], half, 0.6) {
				t.Errorf("%s: half-way at %v, not %v", v.Use, curve[len(curve)/2], half)
			}
		}
	})
	if len(found) == 0 {
		t.Error("no system curve ends in a point")
	}
	for _, v := range list {
		if v.Number > 0 && v.Flow > 0 && found[v.Filter] == 0 {
			t.Errorf("no curve for the filter %s", v.Filter)
		}
	}
}

// TestChartsOfTheWorks checks that no line of text lies on another in the fan
// charts and the runs of a shop of twenty-four machines.
func TestChartsOfTheWorks(t *testing.T) { checkCharts(t, "works", load(t, "works")) }
