package air

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// Source: Crane TP 410 (2009) converging wyes, as the open fluid-mechanics
// library computes them.
func TestConvergingAgainstLibrary(t *testing.T) {
	for _, r := range reference(t, "converging_junctions.csv", 40) {
		run, branch := unit.Length(r.number(t, "D_run_m")), unit.Length(r.number(t, "D_branch_m"))
		w, ok := Converging(unit.Angle(r.number(t, "angle_deg")), run, branch, run)
		if !ok {
			t.Errorf("%s: out of range", r["id"])
			continue
		}
		x := r.number(t, "flow_ratio_branch")
		got, ok := w.Loss(x)
		if !ok {
			t.Errorf("%s: flow ratio out of range", r["id"])
		}
		near(t, r["id"]+" branch", got.Branch, r.number(t, "K_branch_on_combined"), 1e-10)
		near(t, r["id"]+" run", got.Run, r.number(t, "K_run_on_combined"), 1e-10)
		area := float64(Bore(branch)) / float64(Bore(run))
		nearly(t, r["id"]+" branch on its own", got.Branch*math.Pow(area/x, 2), r.number(t, "K_branch_on_branch_velocity"), 1e-9)
		nearly(t, r["id"]+" run on its own", got.Run/math.Pow(1-x, 2), r.number(t, "K_run_on_run_velocity"), 1e-9)
	}
}

// Source: the documented example of the open fluid-mechanics library, after
// example 7-35 of Crane TP 410 (2009), which prints −0.04026 for the branch.
func TestConvergingExample(t *testing.T) {
	w, ok := Converging(90, .1023, .1023, .1023)
	got, inside := w.Loss(.00633 / (.018917 + .00633))
	if !ok || !inside {
		t.Fatal("out of range")
	}
	near(t, "branch", got.Branch, -.04044, .000005)
	near(t, "branch as printed", got.Branch, -.04026, .0003)
	near(t, "run", got.Run, .32576, .000005)
}

func TestConvergingRange(t *testing.T) {
	for _, c := range []struct {
		name                  string
		angle                 unit.Angle
		run, branch, combined unit.Length
		ok                    bool
	}{
		{"tabled", 45, .2, .1, .2, true},
		{"between", 50, .2, .1, .2, true},
		{"least angle", 30, .2, .1, .2, true},
		{"most angle", 90, .2, .2, .2, true},
		{"too sharp", 29.9, .2, .1, .2, false},
		{"against the flow", 90.1, .2, .1, .2, false},
		{"trunk widens", 45, .15, .1, .2, false},
		{"trunk narrows", 45, .2, .1, .15, false},
		{"branch wider than trunk", 45, .2, .25, .2, false},
		{"no branch", 45, .2, 0, .2, false},
		{"no trunk", 45, 0, .1, 0, false},
		{"no angle", unit.Angle(math.NaN()), .2, .1, .2, false},
	} {
		if _, ok := Converging(c.angle, c.run, c.branch, c.combined); ok != c.ok {
			t.Errorf("%s: ok is %v", c.name, ok)
		}
	}
	w, _ := Converging(45, .2, .1, .2)
	for x, want := range map[float64]bool{0: true, .5: true, 1: true, -.01: false, 1.01: false, math.NaN(): false} {
		if _, ok := w.Loss(x); ok != want {
			t.Errorf("flow ratio %v: ok is %v", x, ok)
		}
	}
}

// Between tabled angles the losses lie between those of the neighbours.
func TestConvergingBetweenAngles(t *testing.T) {
	at := func(angle unit.Angle, x float64) Split {
		w, ok := Converging(angle, .2, .15, .2)
		if !ok {
			t.Fatal("out of range")
		}
		got, _ := w.Loss(x)
		return got
	}
	for _, pair := range [][2]unit.Angle{{30, 45}, {45, 60}, {60, 90}} {
		for _, x := range []float64{.1, .3, .45, .8} {
			low, mid, high := at(pair[0], x), at((pair[0]+pair[1])/2, x), at(pair[1], x)
			near(t, "branch", mid.Branch, (low.Branch+high.Branch)/2, 1e-12)
			near(t, "run", mid.Run, (low.Run+high.Run)/2, 1e-12)
		}
	}
}

func TestConvergingSlopesAgainstDifferences(t *testing.T) {
	for _, angle := range []unit.Angle{30, 45, 52, 60, 80, 90} {
		for _, branch := range []unit.Length{.1, .15, .2} {
			w, _ := Converging(angle, .2, branch, .2)
			for _, x := range []float64{.05, .2, .39, .405, .42, .7, .95} {
				const h = 1e-5
				at, _ := w.Loss(x)
				up, _ := w.Loss(x + h)
				down, _ := w.Loss(x - h)
				near(t, "branch slope", at.BranchSlope, (up.Branch-down.Branch)/(2*h), 1e-5)
				near(t, "run slope", at.RunSlope, (up.Run-down.Run)/(2*h), 1e-5)
			}
		}
	}
}

// The formula steps by 0.01 of its bracket where little flow ends; here it
// does not step, and differs from the formula by no more than that.
func TestConvergingIsContinuous(t *testing.T) {
	w, _ := Converging(60, .2, .15, .2)
	before, _ := w.Loss(.39)
	for x := .39; x <= .42; x += 1e-5 {
		got, _ := w.Loss(x)
		if math.Abs(got.Branch-before.Branch) > 1e-4 || math.Abs(got.Run-before.Run) > 1e-4 {
			t.Fatalf("the loss steps at %v", x)
		}
		before = got
	}
}

// Source: Crane TP 410 (2009) as the open fluid-mechanics library carries it:
// the branch loss is reduced for b above 0.35, by 0.9 (1−x) up to x 0.4 and by
// 0.55 above. At 90° the bracket is 1 + (x/b)² − 2 (1−x)². The line from 0.40
// to 0.41 is ours.
func TestConvergingReduction(t *testing.T) {
	for _, c := range []struct{ b, x, share float64 }{
		{.349, .2, 1}, {.349, .8, 1}, {.351, .2, .72}, {.351, .399, .5409}, {.351, .4, .54}, {.351, .405, .545}, {.351, .4101, .55}, {.351, .8, .55},
	} {
		w, ok := Converging(90, Diameter(1), Diameter(unit.Area(c.b)), Diameter(1))
		got, inside := w.Loss(c.x)
		if !ok || !inside {
			t.Fatal("out of range")
		}
		near(t, "branch", got.Branch, c.share*(1+math.Pow(c.x/c.b, 2)-2*math.Pow(1-c.x, 2)), 1e-12)
	}
}

// The parts of the formula, put together by hand, make its losses.
func TestConvergingParts(t *testing.T) {
	for _, angle := range []unit.Angle{30, 45, 52, 60, 80, 90} {
		for _, branch := range []unit.Length{.1, .15, .2} {
			w, _ := Converging(angle, .2, branch, .2)
			for _, x := range []float64{0, .05, .3, .405, .42, .7, 1} {
				b, f, r, c := w.Parts(x)
				got, _ := w.Loss(x)
				near(t, "branch", c*(1+math.Pow(x/b, 2)-2*math.Pow(1-x, 2)-f/b*x*x), got.Branch, 1e-12)
				near(t, "run", r*x-x*x-f/b*x*x, got.Run, 1e-12)
			}
		}
	}
}
