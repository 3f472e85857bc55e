package duct

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// The reference networks again, this time as shop files: each edge is a duct
// with its coefficient as loss and its own roughness, each hood a port without
// a loss, junctions and size changes charge nothing. What is checked here is
// the whole way from the file to the figures.

// exact writes a number so that it is read back as it was.
func exact(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// shopFile writes a network with the gates that are shut closed in one way.
func (n reference) shopFile(closed string, closedK float64) string {
	var b strings.Builder
	say := func(format string, values ...any) { fmt.Fprintf(&b, format+"\n", values...) }
	say("[shop]\nname = %q\nair = { density = \"%s kg/m3\", viscosity = \"%s Pa s\" }", n.Case, exact(n.Air.Rho), exact(n.Air.Rho*n.Air.Nu))
	say("[method]\njunctions = \"none\"\nsize_changes = \"none\"")
	say("%s", n.collectorText())
	for _, e := range n.Edges {
		if e.Kind == "duct" && e.ID != "STK" {
			say("[[duct]]\nname = %q\nto = %q\nsize = \"%s mm\"\nmaterial = \"smooth plastic\"\nlength = \"%s m\"", e.ID, n.below(e), exact(e.Diameter), exact(e.Length))
			say("roughness = \"%s mm\"\nloss = %s", exact(e.Rough), exact(e.K))
			if e.Gate == "" {
				continue
			}
			say("serves = [\"Hood %s/end\"]", e.Gate)
			say("[[machine]]\nname = \"Hood %s\"\nkind = \"other\"\nport = { name = \"end\", size = \"%s mm\", flow = \"1 m3/h\", hood_loss = 0 }", e.Gate, exact(e.Diameter))
			say("[[gate]]\nname = \"Gate %s\"\non = %q\nat = \"0 m\"", e.Gate, e.ID)
			if closed == "removed" {
				say("leak = \"none\"")
			} else {
				say("leak = %s", exact(1/math.Sqrt(closedK)))
			}
		}
	}
	for i, s := range n.Scenarios {
		if len(s.Open) == 0 {
			continue // it is the use in which everything is shut
		}
		var hoods []string
		for _, name := range s.Open {
			hoods = append(hoods, strconv.Quote("Hood "+name))
		}
		say("[[use]]\nname = \"Scenario %d\"\nmachines = [%s]", i, strings.Join(hoods, ", "))
	}
	return b.String()
}

// below is the name of what an edge empties into.
func (n reference) below(e referenceEdge) string {
	for _, other := range n.Edges {
		if other.Kind == "duct" && other.From == e.To {
			return other.ID
		}
	}
	return "Collector"
}

// collectorText is the fan at forty points a segment, the filter and the stack.
func (n reference) collectorText() string {
	const each = 40
	fan := n.fan()
	scale := n.Air.Rho / n.Fan.Rho
	var points []string
	point := func(q float64) {
		gain, _ := fan.gain(q)
		points = append(points, fmt.Sprintf(`["%s m3/s", "%s Pa"]`, exact(q), exact(gain/scale)))
	}
	for i := 1; i < len(n.Fan.Points); i++ {
		from, to := n.Fan.Points[i-1][0], n.Fan.Points[i][0]
		for k := range each {
			point(from + (to-from)*float64(k)/each)
		}
	}
	point(n.Fan.Points[len(n.Fan.Points)-1][0])
	text := fmt.Sprintf("[[collector]]\nname = \"Collector\"\ninlet = \"200 mm\"\nfan_curve = [%s]\ncurve_density = \"%s kg/m3\"\n", strings.Join(points, ", "), exact(n.Fan.Rho))
	for _, e := range n.Edges {
		switch {
		case e.Kind == "linear":
			text += fmt.Sprintf("filter = { clean = \"%s Pa\", change = \"%s Pa\", at = \"1 m3/s\" }\n", exact(e.R), exact(2*e.R))
		case e.ID == "STK":
			text += fmt.Sprintf("outlet = { size = \"%s mm\", length = \"%s m\", roughness = \"%s mm\", loss = %s }\n", exact(e.Diameter), exact(e.Length), exact(e.Rough), exact(e.K))
		}
	}
	return text
}

func TestReferenceNetworksAsShopFiles(t *testing.T) {
	trees, scenarios := 0, 0
	for _, n := range loadNetworks(t, "g*.json") {
		if n.Case == "g07_looped" {
			continue
		}
		trees++
		for i, s := range n.Scenarios {
			scenarios++
			t.Run(n.Case+"/"+s.Name, func(t *testing.T) {
				k := Reckon(mustRead(t, n.shopFile(s.Closed, s.ClosedK)))
				name := fmt.Sprintf("Scenario %d", i)
				if len(s.Open) == 0 {
					name = "Everything shut"
				}
				checkShopFile(t, n, s, theResult(t, k, name, Clean))
				if len(s.Open) == 1 {
					checkShopFile(t, n, s, theResult(t, k, "Hood "+s.Open[0], Clean))
				}
			})
		}
	}
	if trees != 11 || scenarios != 30 {
		t.Errorf("checked %d trees in %d scenarios, want 11 in 30", trees, scenarios)
	}
}

// checkShopFile compares one use with the set named colebrook, to 0.2 %.
// Pressures are rounded to the sixth digit of the fan's and flows to that of
// its flow, so that a small one may differ by that as well.
func checkShopFile(t *testing.T, n reference, s scenario, r *Result) {
	t.Helper()
	const tolerance, digits = 2e-3, 1e-5
	want := s.Colebrook
	if !r.OnCurve {
		t.Fatal("off the curve: " + r.Why.String())
	}
	if !near(float64(r.Flow), want.Fan.Flow, tolerance) {
		t.Errorf("fan flow %.8g, want %.8g", r.Flow, want.Fan.Flow)
	}
	if !near(float64(r.Static), want.Fan.Gain, tolerance) {
		t.Errorf("fan pressure %.8g, want %.8g", r.Static, want.Fan.Gain)
	}
	if level := want.Levels["C1"]; !near(float64(-r.Inlet), level, tolerance) {
		t.Errorf("pressure at the inlet %.8g, want %.8g", -r.Inlet, level)
	}
	if level := want.Levels["C3"]; math.Abs(float64(r.Outlet)-level) > math.Max(tolerance*level, digits*float64(r.Static)) {
		t.Errorf("pressure behind the fan %.8g, want %.8g", r.Outlet, level)
	}
	filter := want.Levels["C1"] - want.Levels["C2"]
	if !near(float64(r.FilterLoss), filter, tolerance) {
		t.Errorf("filter loses %.8g, want %.8g", r.FilterLoss, filter)
	}
	for _, v := range r.Stretches {
		id := v.Stretch.Duct.Name
		q, carries := want.Flows[id]
		if !carries {
			if v.Flow != 0 || v.Loss != 0 {
				t.Errorf("duct %s carries %g and loses %g, want nothing", id, v.Flow, v.Loss)
			}
			continue
		}
		checkStretch(t, n, s, r, &v, q)
	}
}

// checkStretch compares one duct.
func checkStretch(t *testing.T, n reference, s scenario, r *Result, v *StretchResult, q float64) {
	t.Helper()
	const tolerance, digits = 2e-3, 1e-5
	id := v.Stretch.Duct.Name
	if math.Abs(float64(v.Flow)-q) > tolerance*q && math.Abs(float64(v.Flow)-q) > digits*float64(r.Flow) {
		t.Errorf("duct %s carries %.8g, want %.8g", id, v.Flow, q)
	}
	for _, e := range n.Edges {
		if e.ID != id {
			continue
		}
		from, to := s.Colebrook.Levels[e.From], s.Colebrook.Levels[e.To] // the room is at zero and not listed
		if loss := from - to; math.Abs(float64(v.Loss)-loss) > tolerance*loss && math.Abs(float64(v.Loss)-loss) > digits*float64(r.Static) {
			t.Errorf("duct %s loses %.8g, want %.8g", id, v.Loss, loss)
		}
		if math.Abs(float64(v.End)-to) > tolerance*math.Abs(to) {
			t.Errorf("pressure at %s %.8g, want %.8g", e.To, v.End, to)
		}
	}
}

// A ring of ducts cannot be a shop file's tree. The ring of network g07 is
// written as it runs, J1, J2, J3 and back to J1, each duct emptying into the
// next; it stands at the first duct of the ring, not at the one that leads to it.
func TestLoopIsRefused(t *testing.T) {
	text := loadNetworks(t, "g07*.json")[0].shopFile("removed", 0)
	for _, turn := range [][3]string{{"m1", "x1", "x1"}, {"x1", "m4", "m2"}, {"m2", "m4", "m1"}} {
		old := fmt.Sprintf("name = %q\nto = %q\n", turn[0], turn[1])
		if !strings.Contains(text, old) {
			t.Fatalf("no duct %s that empties into %s", turn[0], turn[1])
		}
		text = strings.Replace(text, old, fmt.Sprintf("name = %q\nto = %q\n", turn[0], turn[2]), 1)
	}
	s, problems := shop.Read("shop.toml", []byte(text))
	if s != nil || len(problems) != 1 {
		t.Fatalf("read it: %v, with the problems %v; want one", s != nil, problems)
	}
	const want = `shop.toml:71:6: read a loop: "m1" → "x1" → "m2" → "m1"; ` +
		`expected one tree for each collector: every duct empties towards a collector; ` +
		`do: let one of them empty into the collector, or into a duct nearer to it`
	if got := problems[0].Error(); got != want {
		t.Errorf("said\n%s\nwant\n%s", got, want)
	}
	if line := strings.Split(text, "\n")[problems[0].Line-1]; line != `to = "x1"` {
		t.Errorf("line %d reads %s", problems[0].Line, line)
	}
	// the same file as a tree is read
	text = strings.Replace(text, "name = \"m2\"\nto = \"m1\"\n", "name = \"m2\"\nto = \"m4\"\n", 1)
	mustRead(t, text)
}
