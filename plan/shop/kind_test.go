package shop

import (
	"fmt"
	"testing"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// TestKindsAlone: a machine of any kind, by any of its names, is read with
// nothing but its name and kind, in either system of units.
func TestKindsAlone(t *testing.T) {
	for _, k := range Kinds() {
		for _, name := range append([]string{k.Name}, k.Aliases...) {
			for _, system := range []unit.System{unit.US, unit.Metric} {
				text := fmt.Sprintf("[shop]\nname = \"One\"\nunits = %q\n[[machine]]\nname = \"It\"\nkind = %q\n", system, name)
				s := sound(t, text)
				m := s.Machines[0]
				if m.Kind != k.Name || m.Makes != k.Makes || m.Waste != k.Waste || m.MakesStated {
					t.Errorf("%s: %+v", name, m)
				}
				standard := 0
				for _, stock := range k.Ports {
					if stock.Standard {
						checkPort(t, s, m.Ports[standard], stock, system)
						standard++
					}
				}
				if standard == 0 || len(m.Ports) != standard {
					t.Errorf("%s: %d ports, %d standard", name, len(m.Ports), standard)
				}
			}
		}
	}
}

// checkPort holds a port against the one its kind brings, and its
// assumptions.
func checkPort(t *testing.T, s *Shop, p *Port, stock KindPort, system unit.System) {
	t.Helper()
	if p.Name != stock.Name || p.Size != stock.Size[system] || p.Flow != stock.Flow[system] || p.HoodLoss != stock.HoodLoss {
		t.Errorf("%s: %+v, want %+v", p.Full(), p, stock)
	}
	if p.Size < 0.05 || p.Size > 0.2 || p.HoodLoss < 0.3 || p.HoodLoss > 2 {
		t.Errorf("%s: a size of %v, a hood loss of %v", p.Full(), p.Size, p.HoodLoss)
	}
	want := map[string]source.Basis{"port.size": stock.Need[system], "port.hood_loss": stock.Hood}
	if p.Machine.Kind == "open end" {
		if p.Flow != 0 || p.Need.Mark != 0 {
			t.Errorf("an open end needs %v", p.Flow)
		}
	} else {
		want["port.flow"] = stock.Need[system]
		speed := float64(p.Flow) / (3.14159 / 4 * float64(p.Size) * float64(p.Size))
		if speed < 10 || speed > 35 || p.Need != stock.Need[system] {
			t.Errorf("%s: %v m/s through the port, need %v", p.Full(), speed, p.Need)
		}
	}
	for field, basis := range want {
		if a := assumed(s, field); a == nil || a.Basis != basis || a.Thing != p.Full() || basis.Mark == 0 {
			t.Errorf("%s: %s is assumed as %+v", p.Full(), field, a)
		}
	}
}

// TestKindSpellings: no name stands for two kinds, and each is slugged apart.
func TestKindSpellings(t *testing.T) {
	seen := map[string]string{}
	for _, k := range Kinds() {
		for _, name := range append([]string{k.Name}, k.Aliases...) {
			if other, twice := seen[name]; twice || name == "" {
				t.Errorf("%q stands for %s and %s", name, k.Name, other)
			}
			seen[name] = k.Name
		}
		ports := map[string]bool{}
		for _, p := range k.Ports {
			if ports[p.Name] || nameFault(p.Name) != "" {
				t.Errorf("%s: the port %q", k.Name, p.Name)
			}
			ports[p.Name] = true
		}
	}
}

// TestGivenPort: what the file says of a port stands; what it leaves out
// comes from the kind's port of that name, else from its first.
func TestGivenPort(t *testing.T) {
	read := func(port string) *Port {
		return sound(t, "[shop]\nname = \"One\"\n[[machine]]\nname = \"It\"\nkind = \"table saw\"\nport = { "+port+" }\n").Machines[0].Ports[0]
	}
	if p := read(`size = "5 in", flow = "0 cfm", flow_from = "plate", hood_loss = 0`); p.Name != "cabinet" || p.Flow != 0 || p.HoodLoss != 0 || p.Need != (source.Basis{Mark: source.Given, Clause: "plate"}) || p.Hood.Mark != source.Given {
		t.Errorf("%+v", p)
	}
	if p := read(`name = "guard"`); p.Size != unit.Must[unit.Length]("3 in") || p.Flow != unit.Must[unit.Flow]("100 cfm") || p.HoodLoss != 0.65 {
		t.Errorf("%+v", p)
	}
	if p := read(`name = "below"`); p.Size != unit.Must[unit.Length]("4 in") || p.Name != "below" || p.Need.Mark != source.Memory {
		t.Errorf("%+v", p)
	}
}
