package shop

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// yard is a shop with a main of 20 ft that bends at 10 ft, from [20, 0, 9] by
// [10, 0, 9] to [10, -10, 9], and whatever ducts a test adds.
func yard(ducts ...string) string {
	return `[shop]
name = "Yard"
[[collector]]
name = "Fan"
inlet = "8 in"
claims = { flow = "1600 cfm", suction = "11 inwg" }
[[machine]]
name = "Saw"
kind = "table saw"
` + duct("Main", "Fan", "route = [[20, 0, 9], [10, 0, 9], [10, -10, 9]]") + strings.Join(ducts, "")
}

// duct writes a duct table.
func duct(name, to string, lines ...string) string {
	return fmt.Sprintf("[[duct]]\nname = %q\nto = %q\nsize = \"4 in\"\n%s\n", name, to, strings.Join(lines, "\n"))
}

// side is a branch that ends at a point, coming from 5 ft beside it.
func side(name string, x, y, z float64) string {
	return duct(name, "Main", fmt.Sprintf("route = [[%v, %v, %v], [%v, %v, %v]]", x, y+5, z, x, y, z))
}

// find finds a duct.
func (s *Shop) find(name string) *Duct {
	for _, d := range s.Ducts {
		if d.Name == name {
			return d
		}
	}
	return nil
}

func feet(x float64) unit.Length { return unit.Length(x * 0.3048) }

// TestJoinsByRoute: a duct joins where its route's last point lies on the
// other's route, within 6 in.
func TestJoinsByRoute(t *testing.T) {
	for _, c := range []struct {
		name      string
		x, y, z   float64
		at        float64 // feet from the upstream end; below nought: out of reach
		node      int
		stretches int
	}{
		{"in mid-run", 15, 0, 9, 5, 1, 2},
		{"at the corner", 10, 0, 9, 10, 1, 2},
		{"behind the corner", 10, -4, 9, 14, 1, 2},
		{"at the upstream end", 20, 0, 9, 0, 0, 1},
		{"at the downstream end", 10, -10, 9, 20, 1, 1},
		{"just before reach of the upstream end", 19.49, 0, 9, 0.51, 1, 2},
		{"within reach of the upstream end", 19.5, 0, 9, 0, 0, 1},
		{"within reach of the downstream end", 10, -9.5, 9, 20, 1, 1},
		{"just before reach of the downstream end", 10, -9.49, 9, 19.49, 1, 2},
		{"beyond the upstream end, within reach", 20.5, 0, 9, 0, 0, 1},
		{"beyond the upstream end, out of reach", 20.51, 0, 9, -1, 0, 0},
		{"beside, at reach", 15, 0.5, 9, 5, 1, 2},
		{"beside, out of reach", 15, 0.51, 9, -1, 0, 0},
		{"above, at reach", 15, 0, 9.5, 5, 1, 2},
		{"above, out of reach", 15, 0, 9.51, -1, 0, 0},
		{"far off", 100, 100, 0, -1, 0, 0},
	} {
		text := yard(side("Branch", c.x, c.y, c.z))
		if c.at < 0 {
			if said := refused(t, text); strings.Count(said, "\n") > 0 || !strings.Contains(said, `a last point on the route of "Main", within 6 in`) {
				t.Errorf("%s: %s", c.name, said)
			}
			continue
		}
		s := sound(t, text)
		d, main := s.find("Branch"), s.find("Main")
		if unit.Compare(float64(d.JoinAt), float64(feet(c.at))) != 0 || d.JoinNode != c.node || len(main.Stretches) != c.stretches {
			t.Errorf("%s: at %v ft, node %d of %d stretches, want %v, %d of %d", c.name, d.JoinAt/0.3048, d.JoinNode, len(main.Stretches), c.at, c.node, c.stretches)
		}
		if d.Into != main || d.Collector != s.Collectors[0] || len(main.Joined) != 1 || main.Joined[0] != d {
			t.Errorf("%s: not joined", c.name)
		}
	}
}

// TestReachInMetres: in a metric file the reach is 150 mm.
func TestReachInMetres(t *testing.T) {
	metric := func(y float64) string {
		return strings.Replace(yard(side("Branch", 15, y, 9)), `name = "Yard"`, "name = \"Yard\"\nunits = \"metric\"", 1)
	}
	sound(t, metric(0.15))
	if said := refused(t, metric(0.1501)); !strings.Contains(said, "within 150 mm") {
		t.Error(said)
	}
}

// TestAdviceIsSound: a route that ends where the message says is read.
func TestAdviceIsSound(t *testing.T) {
	for _, y := range []float64{0.7, 2.123, -33.37} {
		said := refused(t, yard(side("Branch", 13.37, y, 8.77)))
		_, point, _ := strings.Cut(said, "do: end the route at ")
		sound(t, yard(duct("Branch", "Main", "route = [[40, 40, 9], "+point+"]")))
	}
}

// TestStretchesInFlowOrder: ducts that join in any order of the file cut the
// main into stretches that are numbered as the air goes.
func TestStretchesInFlowOrder(t *testing.T) {
	s := sound(t, yard(side("C", 10, -5, 9), side("A", 18, 0, 9), side("B", 12, 0, 9), side("B too", 12, 0, 9), side("End", 20, 0, 9)))
	main := s.find("Main")
	if len(main.Stretches) != 4 {
		t.Fatalf("%d stretches", len(main.Stretches))
	}
	from := unit.Length(0)
	for i, want := range []struct {
		to    float64
		name  string
		turns int
	}{{2, "Main 1", 0}, {8, "Main 2", 0}, {15, "Main 3", 1}, {20, "Main 4", 0}} {
		st := main.Stretches[i]
		if st.Number != i+1 || st.Name() != want.name || st.From != from || unit.Compare(float64(st.To), float64(feet(want.to))) != 0 || len(st.Turns) != want.turns || st.Last() != (i == 3) || st.Duct != main {
			t.Errorf("%+v, want %v", st, want)
		}
		if unit.Compare(float64(st.Length()), float64(st.To-from)) != 0 {
			t.Errorf("length %v", st.Length())
		}
		from = st.To
	}
	order := ""
	for _, d := range main.Joined {
		order += d.Name + " " + fmt.Sprint(d.JoinNode) + ", "
	}
	if want := "End 0, A 1, B 2, B too 2, C 3, "; order != want {
		t.Errorf("joined in the order %s, want %s", order, want)
	}
	if name := s.find("A").Stretches[0].Name(); name != "A" {
		t.Errorf("a lone stretch is named %s", name)
	}
	for name, below := range map[string]string{"End": "Main 1", "A": "Main 2", "B": "Main 3", "C": "Main 4"} {
		if got := s.find(name).Stretches[0].Below(); got == nil || got.Name() != below {
			t.Errorf("below %s is %v", name, got)
		}
	}
	if main.Stretches[0].Below() != main.Stretches[1] || main.Stretches[3].Below() != nil {
		t.Error("below the main's own stretches")
	}
}

// TestOnePlace: ducts that meet the main at one place, or as good as one, cut
// it once; places apart cut it twice.
func TestOnePlace(t *testing.T) {
	for _, c := range []struct {
		name      string
		other     float64 // where the second joins, in feet along the x axis
		stretches int
	}{{"the same", 15, 2}, {"0.9 mm off", 15 - 0.9/304.8, 2}, {"1.1 mm off", 15 - 1.1/304.8, 3}, {"a foot off", 14, 3}} {
		s := sound(t, yard(side("One", 15, 0, 9), side("Other", c.other, 0, 9)))
		one, other := s.find("One"), s.find("Other")
		if n := len(s.find("Main").Stretches); n != c.stretches || (one.JoinAt == other.JoinAt) != (c.stretches == 2) {
			t.Errorf("%s: %d stretches, %v and %v", c.name, n, one.JoinAt, other.JoinAt)
		}
	}
}

// TestJoinsInWords: at joins from the other's upstream end, or at that end.
func TestJoinsInWords(t *testing.T) {
	for _, c := range []struct {
		name, lines string
		at          float64
		stretches   int
	}{
		{"at joins", "length = \"5 ft\"\njoins = \"12 ft\"", 12, 2},
		{"close to the end, in words", "length = \"5 ft\"\njoins = \"3 in\"", 0.25, 2},
		{"at the start", "length = \"5 ft\"\njoins = \"0 ft\"", 0, 1},
		{"at the end", "length = \"5 ft\"\njoins = \"20 ft\"", 20, 1},
		{"nothing said", "length = \"5 ft\"", 0, 1},
		{"a route, and joins at its end", "route = [[15, 5, 9], [15, 0, 9]]\njoins = \"5 ft\"", 5, 2},
		{"a route, and joins within reach of its end", "route = [[15, 5, 9], [15, 0, 9]]\njoins = \"5.5 ft\"", 5.5, 2},
		{"a route that ends short, and joins", "route = [[15, 9, 9], [15, 4, 9]]\njoins = \"5 ft\"", 5, 2},
	} {
		s := sound(t, yard(duct("Branch", "Main", c.lines)))
		if at := s.find("Branch").JoinAt; unit.Compare(float64(at), float64(feet(c.at))) != 0 || len(s.find("Main").Stretches) != c.stretches {
			t.Errorf("%s: at %v ft, %d stretches", c.name, at/0.3048, len(s.find("Main").Stretches))
		}
	}
	// a route into a duct without one joins at that one's upstream end
	s := sound(t, yard(duct("Mid", "Main", `length = "9 ft"`), duct("Branch", "Mid", "route = [[50, 50, 9], [40, 40, 9]]")))
	if d := s.find("Branch"); d.JoinAt != 0 || d.JoinNode != 0 || !near(float64(d.Length), float64(feet(10))*1.4142135623730951) {
		t.Errorf("%+v", d)
	}
	if said := refused(t, yard(duct("Branch", "Main", "route = [[15, 5, 9], [15, 0, 9]]\njoins = \"5.51 ft\""))); !strings.Contains(said, "the place where its route ends: 5 ft along") {
		t.Error(said)
	}
}

// TestEntry: the fitting a duct joins by, and the elbow that makes up what
// its route's angle leaves.
func TestEntry(t *testing.T) {
	at := func(degrees string) string { // a branch into the main at [15, 0, 9], whose air goes to -x
		return map[string]string{
			"90": "route = [[15, 5, 9], [15, 0, 9]]", "45": "route = [[20, 5, 9], [15, 0, 9]]", "0": "route = [[20, 0.3, 9], [15, 0, 9]]",
			"30": "route = [[20.19615, 3, 9], [15, 0, 9]]", "60": "route = [[18, 5.196152, 9], [15, 0, 9]]", "60.5": "route = [[17.9543, 5.222, 9], [15, 0, 9]]",
			"135": "route = [[10, 5, 9], [15, 0, 9]]", "down": "route = [[15, 0, 14], [15, 0, 9]]", "59": "route = [[18.0902, 5.143, 9], [15, 0, 9]]",
		}[degrees]
	}
	for _, c := range []struct {
		name  string
		lines []string
		entry float64
		elbow float64 // 0: none
		wye   bool
		says  string // the assumption
	}{
		{"45 by 45", []string{at("45"), `entry = "45 deg"`}, 45, 0, true, ""},
		{"90 by 45", []string{at("90"), `entry = "45 deg"`}, 45, 45, true, ""},
		{"90 by 90", []string{at("90"), `entry = "90 deg"`}, 90, 0, true, ""},
		{"45 straight", []string{at("45"), `entry = "straight"`}, 0, 45, true, ""},
		{"135 by 30", []string{at("135"), `entry = "30 deg"`}, 30, 105, true, ""},
		{"30 by 60: the elbow turns back", []string{at("30"), `entry = "60 deg"`}, 60, 30, true, ""},
		{"60 by 45: 15° is an elbow", []string{at("60"), `entry = "45 deg"`}, 45, 15, true, ""},
		{"59 by 45: less is none", []string{at("59"), `entry = "45 deg"`}, 45, 0, true, ""},
		{"not said, 0", []string{at("0")}, 0, 0, true, ""},
		{"not said, 30", []string{at("30")}, 30, 0, true, "30°"},
		{"not said, 60", []string{at("60")}, 60, 0, true, "60°"},
		{"not said, above 60", []string{at("60.5")}, 45, 15.5, true, "45°"},
		{"not said, 90", []string{at("90")}, 45, 45, true, "45°"},
		{"not said, from above", []string{at("down")}, 45, 45, true, "45°"},
		{"not said, in words", []string{`length = "5 ft"`, `joins = "4 ft"`}, 45, 0, true, "45°"},
		{"in line in words", []string{`length = "5 ft"`}, 0, 0, false, ""},
		{"in line, straight on", []string{"route = [[25, 0, 9], [20, 0, 9]]"}, 0, 0, false, ""},
		{"in line, round a corner", []string{"route = [[20, 5, 9], [20, 0, 9]]"}, 0, 90, false, ""},
		{"in line, by a fitting that is named", []string{"route = [[20, 5, 9], [20, 0, 9]]", `entry = "45 deg"`}, 45, 45, false, ""},
		{"at the corner, where the main goes on", []string{"route = [[10, 5, 9], [10, 0, 9]]"}, 0, 0, true, ""},
		{"at the corner, from its own run's side", []string{"route = [[15, 0.3, 9], [10, 0, 9]]", `entry = "45 deg"`}, 45, 41.5663, true, ""},
		{"at the downstream end", []string{"route = [[10, -5.3, 9.4], [10, -10, 9]]"}, 0, 0, true, ""},
	} {
		s := sound(t, yard(duct("Branch", "Main", c.lines...)))
		d := s.find("Branch")
		elbow := 0.0
		for _, turn := range d.Turns {
			if turn.Join {
				elbow += float64(turn.Angle)
				if turn.At != d.Length {
					t.Errorf("%s: its elbow stands at %v", c.name, turn.At)
				}
			}
		}
		if math.Abs(float64(d.Entry)-c.entry) > 0.01 {
			t.Errorf("%s: entry %v, want %v", c.name, d.Entry, c.entry)
		}
		if math.Abs(elbow-c.elbow) > 0.01 {
			t.Errorf("%s: elbow %v, want %v", c.name, elbow, c.elbow)
		}
		if d.Wye != c.wye {
			t.Errorf("%s: by a branch fitting: %v", c.name, d.Wye)
		}
		a := assumed(s, "duct.entry")
		if (a == nil) != (c.says == "") || a != nil && (a.Value != c.says || a.Thing != "Branch" || a.Basis.Mark == 0) {
			t.Errorf("%s: assumes %+v, want %q", c.name, a, c.says)
		}
	}
}

// TestInLine: a duct that carries on another's run needs a branch fitting as
// soon as air comes in there from elsewhere.
func TestInLine(t *testing.T) {
	end := side("End", 20, 0, 9)
	if d := sound(t, yard(end)).find("End"); d.Wye || d.Entry != 0 {
		t.Errorf("alone: %+v", d)
	}
	s := sound(t, yard(end, side("Other end", 20.2, 0, 9)))
	for _, d := range s.find("Main").Joined {
		if !d.Wye || d.Entry != 45 || d.JoinAt != 0 {
			t.Errorf("two at one end: %+v", d)
		}
	}
	hood := strings.Replace(yard(end), "-10, 9]]", "-10, 9]]\nserves = [\"Saw\"]", 1)
	if d := sound(t, hood).find("End"); !d.Wye || d.Entry != 45 {
		t.Errorf("at a hood: %+v", d)
	}
}

// TestOneTree: ducts several deep lead to their own collector.
func TestOneTree(t *testing.T) {
	other := "[[collector]]\nname = \"Bench fan\"\ninlet = \"6 in\"\nclaims = { flow = \"900 cfm\", suction = \"9 inwg\" }\n"
	s := sound(t, yard(other, duct("C", "B", `length = "1 ft"`), duct("B", "A", `length = "1 ft"`), duct("A", "Main", `length = "1 ft"`),
		duct("Bench", "Bench fan", `length = "1 ft"`), duct("Bench too", "Bench fan", `length = "1 ft"`)))
	for name, fan := range map[string]string{"Main": "Fan", "A": "Fan", "B": "Fan", "C": "Fan", "Bench": "Bench fan", "Bench too": "Bench fan"} {
		if d := s.find(name); d.Collector.Name != fan {
			t.Errorf("%s leads to %s", name, d.Collector.Name)
		}
	}
}

// TestEndOfEnd: ducts that join at the very end of the next reach what lies
// below that.
func TestEndOfEnd(t *testing.T) {
	s := sound(t, yard(duct("A", "B", `length = "1 ft"`, `joins = "1 ft"`), duct("B", "Main", `length = "1 ft"`, `joins = "20 ft"`), duct("C", "A", `length = "1 ft"`, `joins = "1 ft"`), duct("D", "Main", `length = "1 ft"`, `joins = "10 ft"`)))
	for _, name := range []string{"A", "B", "C", "Main"} {
		d := s.find(name)
		if below := d.Stretches[len(d.Stretches)-1].Below(); below != nil {
			t.Errorf("below %s is %s, not the fan", name, below.Name())
		}
	}
}
