package duct

import (
	"math"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// checked is the hand method against the result of a use.
func checked(t *testing.T, file, use, filter string, sys unit.System) *HandCheck {
	t.Helper()
	k := Reckon(mustRead(t, file))
	c := k.Trees[0].CheckByHand(theResult(t, k, use, filter), sys)
	if c == nil || len(c.Lines) != len(c.Sheet.Rows) || len(c.Lines) == 0 {
		t.Fatalf("%+v", c)
	}
	return c
}

// On one run of the wall that the fit stands for, at standard air, hand and
// solver differ by the 4 % of the fit and the trade's rounded constant at most
// (our own comparison), in both systems of units.
func TestCheckByHandOfOneRun(t *testing.T) {
	file := oneRun(1500, 8, 35, .49, `"elbow 90"`) + "roughness = \"0.1524 mm\"\n"
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		c := checked(t, file, "Grinder", NoFilter, sys)
		for _, x := range []HandOff{c.Lines[0].HandOff, c.Inlet, c.Fan} {
			if math.Abs(x.Off) > .04 || x.Off == 0 || x.Why != Close {
				t.Errorf("%v: %+v", sys, x)
			}
		}
		if c.Sheet.Static != c.Sheet.Rows[0].Static || c.Limit != .05 {
			t.Errorf("%v: %+v", sys, c.Sheet)
		}
	}
}

// The far side: on a long run of another wall friction is the reason.
func TestCheckByHandFindsFriction(t *testing.T) {
	c := checked(t, oneRun(1500, 8, 300, .49, `"elbow 90"`)+"roughness = \"0.0015 mm\"\n", "Grinder", NoFilter, unit.US)
	if x := c.Lines[0]; x.Why != ByFriction || x.Off < .1 || c.Fan.Why != ByFriction {
		t.Errorf("%+v, fan %+v", x, c.Fan)
	}
}

// And where air slows down in a main too wide, the junction is.
func TestCheckByHandFindsJunctions(t *testing.T) {
	wide := replaced(t, replaced(t, twoBranches, `inlet = "7 in"`, `inlet = "14 in"`), `size = "7 in"`, `size = "14 in"`)
	c := checked(t, wide, "Both", ChangeOut, unit.US)
	main := c.Lines[2]
	if c.Sheet.Rows[2].Stretch.Duct.Name != "Main" || main.Why != ByJunction || main.Off < .05 {
		t.Errorf("%+v", main)
	}
}

// The reason for a difference, by what it is made of.
func TestHandWhy(t *testing.T) {
	c := &HandCheck{Limit: .05}
	for _, x := range []struct {
		name           string
		hand, solver   unit.Pressure
		flow, friction float64
		want           HandWhy
	}{
		{"close", 1050, 1000, 1, 50, Close},
		{"close below", 950, 1000, 1, -50, Close},
		{"friction", 1051, 1000, 1, 26, ByFriction},
		{"friction below", 949, 1000, 1, -26, ByFriction},
		{"junction", 1051, 1000, 1, 25, ByJunction},
		{"flow", 1100, 1000, 1.025, 100, ByFlow},
		{"too little flow for it", 1100, 1000, 1.0246, 100, ByFriction},
	} {
		if got := c.off(x.hand, x.solver, unit.Flow(x.flow), 1, unit.Pressure(x.friction)); got.Why != x.want {
			t.Errorf("%s: %v, off by %g", x.name, got.Why, got.Off)
		}
	}
}

// In every use that stands on its curve the sheet has a row for each stretch
// that a running port's air passes, starts from the plan's own flows, lets
// nothing get lost at a node, and stays within a fifth of the plan but for
// what the junctions do.
func TestCheckByHandInEveryUse(t *testing.T) {
	for name, file := range map[string]string{"yard": yard, "row": rowOf(3, 8), "twig": twig} {
		k := Reckon(mustRead(t, file))
		rows := 0
		for _, u := range k.Uses {
			for _, r := range u.Results {
				tree := treeOf(k, r)
				if tree == nil || len(u.Machines) == 0 {
					continue
				}
				c := tree.CheckByHand(r, unit.Metric)
				if c == nil {
					if r.OnCurve {
						t.Errorf("%s, %s: no sheet", name, u.Name)
					}
					continue
				}
				rows += len(c.Lines)
				checkPassed(t, name+", "+u.Name, r, c)
			}
		}
		if rows == 0 {
			t.Errorf("%s: nothing checked", name)
		}
	}
}

func checkPassed(t *testing.T, name string, r *Result, c *HandCheck) {
	t.Helper()
	passed := map[*shop.Stretch]bool{}
	for _, p := range r.Ports {
		if p.Flow > 0 && p.Port.Duct != nil && p.Port.Duct.Collector == r.Collector {
			for _, s := range p.Port.Path() {
				passed[s] = true
			}
		}
	}
	if len(passed) != len(c.Lines) {
		t.Errorf("%s: %d rows, %d stretches are passed", name, len(c.Lines), len(passed))
	}
	even := true
	for i, row := range c.Sheet.Rows {
		even = even && row.Does != air.Raised
		if !passed[row.Stretch] {
			t.Errorf("%s: %s is not passed", name, row.Stretch.Name())
		}
		if c.Lines[i].Why != ByJunction && math.Abs(c.Lines[i].Off) > .2 && even {
			t.Errorf("%s: %s is off by %g", name, row.Stretch.Name(), c.Lines[i].Off)
		}
		if even && !near(float64(row.Flow), float64(c.Lines[i].Flow), 1e-5) {
			t.Errorf("%s: %s has %g m³/s, the plan %g", name, row.Stretch.Name(), row.Flow, c.Lines[i].Flow)
		}
	}
}
