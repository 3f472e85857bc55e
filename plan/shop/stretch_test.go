package shop

import (
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// TestGatesOnStretches: a gate stands at a distance from the upstream end,
// left out at the downstream end; at a cut it shuts what comes before it.
func TestGatesOnStretches(t *testing.T) {
	gate := func(name, at string) string {
		if at != "" {
			at = "at = \"" + at + "\"\n"
		}
		return "[[gate]]\nname = \"" + name + "\"\non = \"Main\"\n" + at
	}
	s := sound(t, yard(side("A", 15, 0, 9), side("B", 10, -5, 9), gate("last", ""), gate("at a cut", "15 ft"), gate("in the middle", "7 ft"), gate("first", "0 ft"), gate("behind a cut", "15.1 ft"), gate("at the end", "20 ft")))
	main := s.find("Main")
	order := ""
	for _, g := range main.Gates {
		order += g.Name + " " + g.Stretch.Name() + ", "
		if !strings.Contains(g.Stretch.Duct.Name, "Main") || g.On != main {
			t.Errorf("%s stands on %v", g.Name, g.On)
		}
	}
	if want := "first Main 1, in the middle Main 2, at a cut Main 2, behind a cut Main 3, last Main 3, at the end Main 3, "; order != want {
		t.Errorf("gates in the order %s, want %s", order, want)
	}
	if g := s.Gates[0]; g.Where != main.Length {
		t.Errorf("left out: at %v of %v", g.Where, main.Length)
	}
	if n := len(main.Stretches[2].Gates); n != 3 {
		t.Errorf("%d gates on the last stretch", n)
	}
}

// TestLeaksOnStretches: a leak cuts as well; left out, it stands behind any
// gate at the downstream end.
func TestLeaksOnStretches(t *testing.T) {
	leak := func(at string) string { return "[[leak]]\non = \"Main\"\nhole = \"1 in\"\n" + at + "\n" }
	s := sound(t, yard(side("A", 15, 0, 9), leak(`at = "12 ft"`), leak(""), leak(`at = "5 ft"`), leak(`at = "0 ft"`)))
	main := s.find("Main")
	if len(main.Stretches) != 3 || len(main.Leaks) != 4 || len(s.Leaks) != 4 {
		t.Fatalf("%d stretches, %d leaks", len(main.Stretches), len(main.Leaks))
	}
	for i, node := range []int{2, 3, 1, 0} {
		if l := s.Leaks[i]; l.Node != node || l.On != main {
			t.Errorf("leak %d at node %d, want %d", i, l.Node, node)
		}
	}
	if d := s.find("A"); d.JoinNode != 1 {
		t.Errorf("A joins at node %d", d.JoinNode)
	}
}

// TestNoLength: a duct of no length is one stretch, and what stands at its
// end stands there.
func TestNoLength(t *testing.T) {
	s := sound(t, yard(duct("Stub", "Main", `length = "0 ft"`, `fittings = ["elbow 90"]`, `joins = "4 ft"`, `serves = ["Saw"]`),
		"[[gate]]\nname = \"Gate\"\non = \"Stub\"\n[[leak]]\non = \"Stub\"\nhole = \"1 in\"\n", duct("Far", "Stub", `length = "3 ft"`)))
	d := s.find("Stub")
	if len(d.Stretches) != 1 || len(d.Stretches[0].Gates) != 1 || len(d.Stretches[0].Turns) != 1 || d.Leaks[0].Node != 1 || d.Joined[0].JoinNode != 0 {
		t.Errorf("%+v, %+v", d, d.Stretches)
	}
	if below := d.Stretches[0].Below(); below == nil || below.Name() != "Main 2" {
		t.Errorf("below it is %v", below)
	}
}

// TestElbowsOnStretches: an elbow where another duct joins belongs to the
// stretch before it, and the one that makes up an angle to the last.
func TestElbowsOnStretches(t *testing.T) {
	s := sound(t, yard(side("A", 10, 0, 9), duct("B", "Main", "route = [[15, 5, 2], [15, 5, 9], [15, 0, 9]]", `entry = "45 deg"`)))
	main, b := s.find("Main"), s.find("B")
	if len(main.Stretches) != 3 || len(main.Stretches[1].Turns) != 1 || len(main.Stretches[2].Turns) != 0 {
		t.Errorf("%+v", main.Stretches)
	}
	if turns := b.Stretches[0].Turns; len(turns) != 2 || turns[0].Join || turns[0].Angle != 90 || !turns[1].Join || turns[1].Angle != 45 {
		t.Errorf("%+v", turns)
	}
	if !b.Stretches[0].Rises || main.Stretches[0].Rises {
		t.Error("risers")
	}
}

// TestRiserPerStretch: only the stretch that holds the riser rises.
func TestRiserPerStretch(t *testing.T) {
	s := sound(t, yard(duct("Up", "Main", "route = [[15, 30, 2], [15, 20, 2], [15, 20, 9], [15, 0, 9]]"), duct("A", "Up", `length = "3 ft"`, `joins = "5 ft"`), duct("B", "Up", `length = "3 ft"`, `joins = "20 ft"`)))
	d := s.find("Up")
	for i, want := range []bool{false, true, false} {
		if d.Stretches[i].Rises != want {
			t.Errorf("stretch %d rises: %v", i+1, d.Stretches[i].Rises)
		}
	}
}

// TestMovableEnd: two names in serves are one end that is moved.
func TestMovableEnd(t *testing.T) {
	text := yard("[[machine]]\nname = \"Lathe\"\nkind = \"lathe\"\n", duct("Far", "Main", `length = "5 ft"`, `serves = ["Saw/cabinet", "Lathe"]`))
	d := sound(t, text).find("Far")
	if !d.Movable() || len(d.Serves) != 2 || d.Serves[0].Full() != "Saw/cabinet" || d.Serves[1].Full() != "Lathe/scoop" || d.Serves[1].Duct != d {
		t.Errorf("%+v", d.Serves)
	}
	one := sound(t, strings.Replace(text, `"Saw/cabinet", `, "", 1)).find("Far")
	if one.Movable() || len(one.Serves) != 1 {
		t.Errorf("%+v", one.Serves)
	}
}

// TestGateLeak: the three forms, and nothing said.
func TestGateLeak(t *testing.T) {
	for _, c := range []struct {
		leak string
		want GateLeak
	}{
		{`leak = 0.02`, GateLeak{Share: 0.02}},
		{`leak = 1`, GateLeak{Share: 1}},
		{`leak = "none"`, GateLeak{None: true}},
		{`leak = "15 cfm at 8 inwg"`, GateLeak{Flow: unit.Must[unit.Flow]("15 cfm"), Press: unit.Must[unit.Pressure]("8 inwg")}},
		{``, GateLeak{Share: 0.0155}},
	} {
		g := sound(t, yard("[[gate]]\nname = \"Gate\"\non = \"Main\"\n"+c.leak+"\n")).Gates[0]
		if g.Leak.Share != c.want.Share || g.Leak.None != c.want.None || g.Leak.Flow != c.want.Flow || g.Leak.Press != c.want.Press || g.Leak.Basis.Mark == 0 {
			t.Errorf("%s: %+v", c.leak, g.Leak)
		}
	}
}
