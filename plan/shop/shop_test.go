package shop

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// shops are the shop files that ship with the program, and the contract's.
var shops = []string{"../../content/example/school.toml", "../../content/example/small.toml", "../../content/starter/shop.toml",
	"testdata/contract.toml", "testdata/every.toml", "testdata/base.toml"}

// TestShops: each is read, and nothing is lost on the way.
func TestShops(t *testing.T) {
	for _, path := range shops {
		text := file(t, path)
		s := sound(t, text)
		root, _ := entry.Read(path, []byte(text))
		count := func(table string) int {
			items, _ := root.Get(table).Value.([]*entry.Node)
			return len(items)
		}
		for table, got := range map[string]int{"machine": len(s.Machines), "collector": len(s.Collectors), "duct": len(s.Ducts)} {
			if got != count(table) || got == 0 {
				t.Errorf("%s: %d of %s, want %d", path, got, table, count(table))
			}
		}
		for _, d := range s.Ducts {
			if d.Collector == nil || len(d.Stretches) == 0 || d.Material == "" || d.Roughness <= 0 || d.Bore <= 0 && !d.Choose {
				t.Errorf("%s: %+v", path, d)
			}
		}
	}
}

// TestContract reads the example of the contract figure by figure.
func TestContract(t *testing.T) {
	s := sound(t, file(t, "testdata/contract.toml"))
	saw, c, main, drop := s.Machines[0], s.Collectors[0], s.Ducts[0], s.Ducts[1]
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"density", float64(s.AirDensity.V), 1.14}, {"altitude", float64(s.Altitude.V), 381},
		{"saw, x", saw.Place.V.X, 12 * 0.3048}, {"saw, coast", float64(saw.Coast.V), 12}, {"saw, power", float64(saw.Motor.Power), 3 * 745.7},
		{"saw, cut depth", float64(saw.Cut.Depth), 0.0254 / 16}, {"saw, transport", float64(saw.Transport.V), 20.32},
		{"saw, flow", float64(saw.Ports[0].Flow), 350 * 0.028316846592 / 60}, {"saw, hood", saw.Ports[0].HoodLoss, 1.5},
		{"curve, last flow", float64(c.Curve[3].Flow), 1600 * 0.028316846592 / 60}, {"curve, last pressure", float64(c.Curve[3].Static), 4.9 * 249.08891},
		{"power, last", float64(c.FanPower[1].Power), 4.6 * 745.7}, {"separator", float64(c.Separator.Loss), 2 * 249.08891},
		{"bin", float64(c.Bin.Size), 55 * 0.003785411784}, {"outlet elbow", float64(c.Outlet.Elbows[0]), 90}, {"inertia", float64(c.WheelInertia.V), 4 * 0.0421401100938048},
		{"main, length", float64(main.Length), 26 * 0.3048}, {"main, roughness", float64(main.Roughness), 0.00015}, {"main, gauge", float64(main.Gauge.V), 26},
		{"main, elbow", main.ElbowLoss, 0.24}, {"drop joins", float64(drop.JoinAt), 12 * 0.3048}, {"drop, entry", float64(drop.Entry), 45},
		{"hose", float64(drop.Hose.Length), 0.9144}, {"gate", float64(s.Gates[0].Where), 4 * 0.3048}, {"travel", float64(s.Gates[0].Travel.V), 0.8},
		{"leak", float64(s.Leaks[0].Hole), 0.0254}, {"envelope", float64(s.Envelope.V.At), 50}, {"use, hours", s.Uses[0].Hours.V, 1},
	} {
		if unit.Compare(v.got, v.want) != 0 {
			t.Errorf("%s: %v, want %v", v.what, v.got, v.want)
		}
	}
	if !c.Charged("bag") || c.Charged("separator") || c.Charged("clean filter") {
		t.Error("what the curve includes")
	}
	if names := []string{main.Stretches[0].Name(), main.Stretches[1].Name()}; len(main.Stretches) != 2 || !slices.Equal(names, []string{"East main 1", "East main 2"}) {
		t.Errorf("stretches %v", names)
	}
	if saw.Ports[0].Duct != drop || saw.AlsoOpen[0].Name != "Bandsaw gate" || s.Rooms[0].OpenTo[0].Name != "Bench room" || c.ReturnsTo != s.Rooms[0] || c.Room.Name != "Lean-to" {
		t.Error("names that became things")
	}
	if len(s.Editions) != 2 || s.Editions[1].Text != "NFPA 664" || s.Confirmed[0].Figure != "open-bag-distance" || s.Revisions[0].Date != (entry.Date{Year: 2026, Month: 11, Day: 24}) {
		t.Error("the paper")
	}
}

// TestOrder: tables in any order make the same shop, apart from the order of
// the lists themselves.
func TestOrder(t *testing.T) {
	draw := rand.New(rand.NewPCG(3, 4))
	for _, path := range shops {
		head, blocks := inBlocks(file(t, path))
		want := describe(sound(t, head+strings.Join(blocks, "")))
		for range 8 {
			draw.Shuffle(len(blocks), func(i, j int) { blocks[i], blocks[j] = blocks[j], blocks[i] })
			if got := describe(sound(t, head+strings.Join(blocks, ""))); got != want {
				t.Fatalf("%s: in another order it is another shop:\n%s", path, firstDifference(got, want))
			}
		}
	}
}

// inBlocks parts a file into what stands before its first table and its
// tables, each with those inside it.
func inBlocks(text string) (head string, blocks []string) {
	for _, line := range strings.SplitAfter(text, "\n") {
		header, _, _ := strings.Cut(line, "]")
		switch {
		case strings.HasPrefix(line, "[") && !strings.Contains(header, "."):
			blocks = append(blocks, line)
		case blocks == nil:
			head += line
		default:
			blocks[len(blocks)-1] += line
		}
	}
	return head, blocks
}

func firstDifference(got, want string) string {
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return a[i] + "\n" + b[i]
		}
	}
	return fmt.Sprint(len(a), " and ", len(b), " lines")
}

// describe writes all of a shop but the places in its file, every list of
// things sorted.
func describe(s *Shop) string {
	var lines []string
	v := reflect.ValueOf(*s)
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		if name == "Assumed" {
			for _, a := range s.Assumed {
				lines = append(lines, fmt.Sprint("assumed ", a.Thing, a.Field, a.Value, a.Basis))
			}
			continue
		}
		if list := v.Field(i); list.Kind() == reflect.Slice {
			for j := range list.Len() {
				lines = append(lines, name+" "+write(list.Index(j), 0))
			}
			continue
		}
		lines = append(lines, name+" "+write(v.Field(i), 0))
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}

// write writes a value; a thing inside another is its name alone.
func write(v reflect.Value, depth int) string {
	if v.Type() == reflect.TypeFor[entry.Place]() {
		return ""
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return "none"
		}
		own := v.Type() == reflect.TypeFor[*Port]() && depth == 2 // a machine's port
		if name := v.Elem().FieldByName("Name"); depth > 0 && name.IsValid() && !own {
			return name.String()
		}
		return write(v.Elem(), depth)
	case reflect.Struct:
		text := "{"
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() && !(field.Name == "Duct" && v.Type() == reflect.TypeFor[Stretch]()) {
				text += field.Name + ":" + write(v.Field(i), depth+1) + " "
			}
		}
		return text + "}"
	case reflect.Slice:
		var parts []string
		for i := range v.Len() {
			parts = append(parts, write(v.Index(i), depth+1))
		}
		if v.Type().Elem().Kind() == reflect.Pointer {
			slices.Sort(parts)
		}
		return fmt.Sprint(parts)
	}
	return fmt.Sprint(v.Interface())
}
