package shop

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// bare leaves out everything that has a default.
const bare = `[shop]
name = "Bare"
[[room]]
name = "Hall"
outline = [[0, 0], [9, 0], [9, 9]]
[[appliance]]
[[machine]]
name = "Saw"
kind = "table saw"
motor = { power = "3 hp" }
[[collector]]
name = "Fan"
inlet = "8 in"
claims = { flow = "1600 cfm", suction = "11 inwg" }
bin = { size = "55 gal" }
outlet = {}
[[duct]]
name = "Main"
to = "Fan"
size = "8 in"
length = "9 ft"
fittings = ["elbow 90"]
hose = { length = "3 ft" }
serves = ["Saw"]
[[duct]]
name = "Branch"
to = "Main"
joins = "4 ft"
size = "4 in"
length = "9 ft"
[[gate]]
name = "Gate"
on = "Main"
[[leak]]
on = "Main"
[[trigger]]
name = "Trigger"
senses = "contact"
opens = ["Gate"]
[control]
[[chain]]
name = "Chain"
cable = "18 AWG"
stops = []
`

// assumed finds an assumption by its field.
func assumed(s *Shop, field string) *Assumption {
	for i := range s.Assumed {
		if s.Assumed[i].Field == field {
			return &s.Assumed[i]
		}
	}
	return nil
}

// TestDefaultsAreAssumed: every default of fields.csv that says something of
// the shop, because it has a mark, is listed with its value and its source;
// one without a mark is a convention of the file and is not.
func TestDefaultsAreAssumed(t *testing.T) {
	s := sound(t, bare)
	byAir := sound(t, strings.Replace(bare, "[[room]]", "air = {}\n[[room]]", 1))
	marked := 0
	for _, row := range Rows() {
		if row.Default == "" {
			continue
		}
		field := row.Table + "." + row.Field
		from := s
		if row.Table == "air" {
			from = byAir
		}
		a := assumed(from, field)
		switch {
		case row.Basis.Mark == 0 && a != nil:
			t.Errorf("%s has no mark and is listed", field)
		case row.Basis.Mark == 0:
		case a == nil:
			t.Errorf("%s is not listed", field)
		case a.Value != row.Default || a.Basis != row.Basis || !a.At.Known() && row.Table != "method" || a.Thing == "":
			t.Errorf("%s is listed as %+v", field, *a)
		default:
			marked++
		}
	}
	if marked < 12 {
		t.Errorf("%d defaults with a mark", marked)
	}
	for _, field := range []string{"shop.altitude", "shop.air_temperature"} {
		if assumed(byAir, field) != nil {
			t.Errorf("%s is assumed beside air", field)
		}
	}
}

// TestStatedIsNotAssumed: what a table of the file says is no assumption.
func TestStatedIsNotAssumed(t *testing.T) {
	for _, path := range complete {
		text := file(t, path)
		list := map[string]bool{}
		for _, a := range sound(t, text).Assumed {
			list[fmt.Sprint(a.At, a.Field)] = true
		}
		root, _ := entry.Read(path, []byte(text))
		for _, node := range root.Nodes {
			checkStated(t, node, node.Name, list)
		}
	}
}

// checkStated looks for fields that a table holds among the assumptions.
func checkStated(t *testing.T, node *entry.Node, table string, list map[string]bool) {
	switch v := node.Value.(type) {
	case []*entry.Node:
		for _, item := range v {
			checkStated(t, item, table, list)
		}
	case *entry.Table:
		for _, inner := range v.Nodes {
			if list[fmt.Sprint(v.At, table+"."+inner.Name)] && table+"."+inner.Name != "hose.stretched" && inner.Name != "fittings" {
				t.Errorf("%s is assumed at line %d, where it stands", inner.Name, inner.At.Line)
			}
			if row := rowOf[[2]string{table, inner.Name}]; row != nil {
				checkStated(t, inner, row.Of, list)
			}
		}
	}
}

// TestDefaultValues: what stands in, in SI, with the number behind each.
func TestDefaultValues(t *testing.T) {
	s := sound(t, bare)
	d, c, m := s.Ducts[0], s.Collectors[0], s.Machines[0]
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"altitude", float64(s.Altitude.V), 0},
		{"air temperature", float64(s.AirTemperature.V), 294.261},
		{"people at machines", float64(s.PeopleAtMachines.V), 1},
		{"service factor", m.Motor.ServiceFactor.V, 1},
		{"curve density", float64(c.CurveDensity.V), 1.2014},
		{"outlet length", float64(c.Outlet.Length), 0},
		{"outlet size, as the inlet", float64(c.Outlet.Size), 0.2032},
		{"outlet roughness", float64(c.Outlet.Roughness), 0.00015},
		{"outlet loss", c.Outlet.Loss, 0},
		{"elbow", d.ElbowLoss, 0.15},
		{"roughness", float64(d.Roughness), 0.00015},
		{"duct loss", d.Loss, 0},
		{"hose size, as the duct", float64(d.Hose.Size), 0.2032},
		{"hose roughness", float64(d.Hose.Roughness), 0.001524},
		{"hose not said to be stretched", d.Hose.Times, 1},
		{"gate", s.Gates[0].Leak.Share, 0.0155},
		{"gate at its duct's downstream end", float64(s.Gates[0].Where), 9 * 0.3048},
		{"entry of a branch without a route", float64(s.Ducts[1].Entry), 45},
		{"port size", float64(m.Ports[0].Size), 0.1016},
		{"port flow", float64(m.Ports[0].Flow), 350 * 0.028316846592 / 60},
		{"hood loss", m.Ports[0].HoodLoss, 1.5},
	} {
		if unit.Compare(v.got, v.want) != 0 {
			t.Errorf("%s: %v, want %v", v.what, v.got, v.want)
		}
	}
	for _, v := range [][3]string{
		{"units", s.Units.String(), "us"}, {"language", s.Language, "en"}, {"rules", s.Rules, "none"},
		{"junctions", s.Junctions, "by angle"}, {"size changes", s.SizeChanges, "taper"}, {"bin", c.Bin.Called, "bin"},
		{"material", d.Material, "spiral steel"}, {"elbows", d.Elbows, "stamped R/D 1.5"}, {"hose", d.Hose.Material, "ribbed hose"},
		{"makes", m.Makes, "wood"}, {"waste", m.Waste, "dust"}, {"appliance", s.Appliances[0].Kind, "open-flue gas"},
	} {
		if v[1] != v[2] {
			t.Errorf("%s: %s, want %s", v[0], v[1], v[2])
		}
	}
	for _, field := range []string{"machine.makes", "hose.size", "hose.roughness", "hose.stretched", "duct.roughness", "duct.entry", "duct.fittings", "outlet.size", "outlet.roughness", "appliance.room", "leak.hole"} {
		if a := assumed(s, field); a == nil || a.Basis.Mark == 0 || a.Value == "" {
			t.Errorf("%s: %+v", field, a)
		}
	}
	if len(s.Leaks) != 0 || len(d.Leaks) != 0 {
		t.Error("a leak of no size is reckoned")
	}
	for name, how := range map[string]How{"setting": s.Setting.How, "coldest": s.Coldest.How, "employees": s.Employees.How, "exhaust": c.Exhaust.How, "drive": s.Gates[0].Drive.How, "height": s.Rooms[0].Height.How} {
		if how != NotGiven {
			t.Errorf("%s is given", name)
		}
	}
}

// TestStandardAir checks the default viscosity against Sutherland's formula
// with the constants of the U.S. Standard Atmosphere 1976 (β = 1.458e-6
// kg/(s m K½), S = 110.4 K), and the default density against 0.075 lb/ft³.
func TestStandardAir(t *testing.T) {
	s := sound(t, "[shop]\nname = \"Air\"\nair = {}\n")
	k := float64(unit.Must[unit.Temperature]("70 F"))
	want := 1.458e-6 * math.Pow(k, 1.5) / (k + 110.4)
	if got := float64(s.AirViscosity.V); math.Abs(got/want-1) > 3e-4 {
		t.Errorf("viscosity %g, Sutherland's formula gives %g", got, want)
	}
	if got, want := float64(s.AirDensity.V), float64(unit.Must[unit.Density]("0.075 lb/ft3")); math.Abs(got/want-1) > 1e-4 {
		t.Errorf("density %g, 0.075 lb/ft3 is %g", got, want)
	}
}

// TestHose: what the file says of a hose, and what follows.
func TestHose(t *testing.T) {
	for _, c := range []struct {
		hose     string
		times    float64
		size     string
		conducts bool
		rough    string
	}{
		{`length = "3 ft"`, 1, "8 in", false, "1.524 mm"},
		{`length = "3 ft", stretched = true`, 1, "8 in", false, "1.524 mm"},
		{`length = "3 ft", stretched = false`, 4, "8 in", false, "1.524 mm"},
		{`length = "3 ft", size = "4 in", material = "smooth-bore hose"`, 1, "4 in", false, "0.914 mm"},
		{`length = "3 ft", size = "4 in", material = "conductive ribbed hose"`, 1, "4 in", true, "1.524 mm"},
		{`length = "3 ft", size = "4 in", material = "metal flexible pipe", stretched = false`, 4, "4 in", true, "0.914 mm"},
	} {
		h := sound(t, strings.Replace(bare, `length = "3 ft"`, c.hose, 1)).Ducts[0].Hose
		if h.Times != c.times || h.Size != unit.Must[unit.Length](c.size) || h.Conducts != c.conducts || h.Roughness != unit.Must[unit.Length](c.rough) {
			t.Errorf("%s: %+v", c.hose, h)
		}
	}
}

// TestBore: the nominal size is the bore but where the material's standard
// says otherwise.
func TestBore(t *testing.T) {
	for _, c := range []struct {
		material, size, bore string
		mark                 source.Mark
	}{
		{"spiral steel", "4 in", "4 in", 0},
		{"plastic schedule 40", "4 in", "101.55 mm", source.Reported},
		{"plastic schedule 40", "101.6 mm", "101.55 mm", source.Reported},
		{"plastic schedule 40", "4.5 in", "4.5 in", 0},
		{"plastic thin drain", "6 in", "154.3 mm", source.Reported},
		{"plastic SDR 35", "10 in", "251.46 mm", source.Computed},
		{"smooth plastic", "4 in", "4 in", 0},
	} {
		text := strings.Replace(bare, "size = \"4 in\"", fmt.Sprintf("size = %q\nmaterial = %q", c.size, c.material), 1)
		d := sound(t, text).Ducts[1]
		if d.Bore != unit.Must[unit.Length](c.bore) || d.Size != unit.Must[unit.Length](c.size) || d.BoreBasis.Mark != c.mark {
			t.Errorf("%s of %s: bore %v, %v", c.size, c.material, d.Bore, d.BoreBasis)
		}
	}
	if d := sound(t, strings.Replace(bare, `size = "4 in"`, `size = "choose"`, 1)).Ducts[1]; !d.Choose || d.Size != 0 || d.Bore != 0 {
		t.Errorf("to be chosen: %+v", d)
	}
}
