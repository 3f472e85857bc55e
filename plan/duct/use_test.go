package duct

import (
	"slices"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

func TestUsesInOrder(t *testing.T) {
	want := []struct {
		name string
		kind UseKind
	}{
		{"Saw", OneMachine}, {"Planer", OneMachine}, {"Lathe", OneMachine}, {"Sander", OneMachine}, {"Sweep", OneMachine}, {"Press", OneMachine}, {"Anvil", OneMachine},
		{"Saw and press", Together}, {"Lathe and sander", Together}, {"Saw with the planer's gate", Together},
		{"Everything shut", AllShut}, {"Everything open", AllOpen}, {"Duct off", DuctOff},
	}
	uses := yardReckoned(t).Uses
	if len(uses) != len(want) {
		t.Fatalf("%d uses, want %d", len(uses), len(want))
	}
	for i, w := range want {
		if uses[i].Name != w.name || uses[i].Kind != w.kind {
			t.Errorf("use %d is %q of kind %d, want %q of kind %d", i, uses[i].Name, uses[i].Kind, w.name, w.kind)
		}
	}
}

// Open are the gates on the way from the ports to the collector and those
// opened as well, no others.
func TestWhichGatesAreOpen(t *testing.T) {
	tests := []struct {
		use  string
		want []string
	}{
		{"Saw", []string{"Saw gate", "Guard gate"}}, // the zone gate is upstream of where it joins
		{"Planer", []string{"Zone gate", "Planer gate", "Lathe gate"}},
		{"Lathe", []string{"Zone gate", "Lathe gate"}},
		{"Sander", []string{"Zone gate", "Lathe gate"}},
		{"Sweep", nil},
		{"Anvil", nil},
		{"Saw and press", []string{"Saw gate", "Guard gate", "Press gate"}},
		{"Saw with the planer's gate", []string{"Zone gate", "Saw gate", "Guard gate", "Planer gate"}},
		{"Everything shut", nil},
		{"Everything open", []string{"Zone gate", "Saw gate", "Guard gate", "Planer gate", "Lathe gate", "Press gate"}},
		{"Duct off", nil},
	}
	s := mustRead(t, yard)
	k := Reckon(s)
	for _, test := range tests {
		var open []string
		for _, g := range s.Gates {
			if theUse(t, k, test.use).Open[g] {
				open = append(open, g.Name)
			}
		}
		if !slices.Equal(open, test.want) {
			t.Errorf("%s opens %v, want %v", test.use, open, test.want)
		}
	}
	// a result lists those on its own collector's ducts
	r := theResult(t, k, "Saw and press", NoFilter)
	if open := r.OpenGates(s); len(open) != 1 || open[0].Name != "Press gate" {
		t.Errorf("the small fan's open gates are %v", open)
	}
}

// Each use has one result for each collector it needs and each state of its
// filter.
func TestCollectorsAndFilters(t *testing.T) {
	type key struct{ collector, filter string }
	cyclone := []key{{"Cyclone", Clean}, {"Cyclone", ChangeOut}}
	small := []key{{"Small fan", NoFilter}}
	both := append(slices.Clone(cyclone), small...)
	tests := map[string][]key{
		"Saw": cyclone, "Press": small, "Saw and press": both, "Lathe and sander": cyclone,
		"Everything shut": both, "Everything open": both, "Duct off": both, "Anvil": {{"", NoFilter}},
	}
	k := yardReckoned(t)
	for name, want := range tests {
		var got []key
		for _, r := range theUse(t, k, name).Results {
			collector := ""
			if r.Collector != nil {
				collector = r.Collector.Name
			}
			got = append(got, key{collector, r.Filter})
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s is solved on %v, want %v", name, got, want)
		}
	}
	if clean, full := theResult(t, k, "Saw", Clean), theResult(t, k, "Saw", ChangeOut); full.Flow >= clean.Flow {
		t.Errorf("a full filter passes %g m³/s, a clean one %g", full.Flow, clean.Flow)
	}
}

func TestUnservedMachine(t *testing.T) {
	r := theResult(t, yardReckoned(t), "Anvil", NoFilter)
	if r.OnCurve || r.Captured || r.Carried || r.Why != source.Because("unserved") || len(r.Ports) != 1 || r.Ports[0].Captured || r.Ports[0].Flow != 0 || len(r.Stretches) != 0 {
		t.Errorf("got %+v", r)
	}
	// beside one that is served it spoils the verdict of the whole use
	k := Reckon(mustRead(t, yard+"[[use]]\nname = \"Saw and anvil\"\nmachines = [\"Saw\", \"Anvil\"]\n"))
	r = theResult(t, k, "Saw and anvil", Clean)
	if !r.OnCurve || r.Captured || r.Carried || len(r.Ports) != 3 || !r.Ports[0].Captured {
		t.Errorf("captured %v, carried %v, ports %+v", r.Captured, r.Carried, r.Ports)
	}
}

// A movable end stands at one machine at a time: that of the use, else the
// first it serves. Two at once leave the second without air.
func TestMovableHose(t *testing.T) {
	k := yardReckoned(t)
	served := func(use string) (string, int) {
		u := theUse(t, k, use)
		for _, r := range u.Results {
			for _, v := range r.Stretches {
				if d := v.Stretch.Duct; d.Movable() {
					p, i := u.Served(d)
					return p.Full(), i
				}
			}
		}
		t.Fatal("no movable end")
		return "", 0
	}
	for use, want := range map[string]string{"Lathe": "Lathe/scoop", "Sander": "Sander/hood", "Saw": "Lathe/scoop", "Everything open": "Lathe/scoop", "Lathe and sander": "Lathe/scoop"} {
		if got, _ := served(use); got != want {
			t.Errorf("in %s the hose stands at %s, want %s", use, got, want)
		}
	}
	lathe, sander := theResult(t, k, "Lathe", Clean), theResult(t, k, "Sander", Clean)
	if lathe.Ports[0].Flow == sander.Ports[0].Flow || !lathe.Captured {
		t.Errorf("lathe gets %g, sander with its smaller port %g", lathe.Ports[0].Flow, sander.Ports[0].Flow)
	}
	both := theResult(t, k, "Lathe and sander", Clean)
	if both.Captured || both.Ports[0].Port.Full() != "Sander/hood" || both.Ports[0].Flow != 0 || both.Ports[1].Flow != lathe.Ports[0].Flow {
		t.Errorf("both at once: captured %v, %+v", both.Captured, both.Ports)
	}
}

// A port with no gate on its path draws in every use.
func TestPortWithoutGate(t *testing.T) {
	for _, u := range yardReckoned(t).Uses {
		for _, r := range u.Results {
			if r.Collector == nil || r.Collector.Name != "Cyclone" || u.Kind == DuctOff {
				continue
			}
			if v := at(t, r, "Sweep drop", 1); v.Flow < 0.05 {
				t.Errorf("%s: the sweep draws %g m³/s", u.Name, v.Flow)
			}
		}
	}
}

// Shut, open and without ducts.
func TestTheLastThreeUses(t *testing.T) {
	k := yardReckoned(t)
	shut, open, off := theResult(t, k, "Everything shut", Clean), theResult(t, k, "Everything open", Clean), theResult(t, k, "Duct off", Clean)
	if !(shut.Flow < open.Flow && open.Flow < off.Flow) || !(shut.Static > open.Static && open.Static > off.Static) {
		t.Errorf("flows %g, %g, %g m³/s at %g, %g, %g Pa", shut.Flow, open.Flow, off.Flow, shut.Static, open.Static, off.Static)
	}
	for _, r := range []*Result{shut, open, off} {
		if len(r.Ports) != 0 || !r.Captured || !r.Carried {
			t.Errorf("%s: ports %v, captured %v, carried %v", r.Use.Name, r.Ports, r.Captured, r.Carried)
		}
	}
	if len(off.Stretches) != 0 || off.Inlet != 0 || off.Static != off.FilterLoss {
		t.Errorf("duct off: %+v", off)
	}
	for _, v := range open.Stretches {
		if dead := v.Stretch.Duct.Name == "Dead end"; (v.Flow == 0) != dead {
			t.Errorf("everything open: %s carries %g m³/s", v.Stretch.Name(), v.Flow)
		}
		if v.Judged {
			t.Errorf("everything open: %s is judged", v.Stretch.Name())
		}
	}
}

// A machine's two ports are both used, and a zone gate shuts what is behind it.
func TestTwoPortsAndZone(t *testing.T) {
	k := yardReckoned(t)
	r := theResult(t, k, "Saw", Clean)
	if len(r.Ports) != 2 || r.Ports[0].Flow < 0.1 || r.Ports[1].Flow < 0.02 {
		t.Errorf("ports of the saw: %+v", r.Ports)
	}
	if v := at(t, r, "Saw drop", 2); v.Flow != r.Ports[0].Flow+r.Ports[1].Flow {
		t.Errorf("behind the guard %g m³/s, want the sum of %g and %g", v.Flow, r.Ports[0].Flow, r.Ports[1].Flow)
	}
	// behind the shut zone gate both drops together leak less than the zone
	// gate alone lets through
	main := at(t, r, "Main", 2)
	const share = 0.0155 // of the bore: what a gate leaks where the file does not say
	alone := share * float64(air.Bore(main.Stretch.Duct.Bore)) * float64(k.State.Speed(r.Inlet))
	if main.Flow <= 0 || float64(main.Flow) > 0.7*alone {
		t.Errorf("behind the zone gate flow %g m³/s; it alone would let %g through", main.Flow, alone)
	}
	more := theResult(t, k, "Saw with the planer's gate", Clean)
	if v := at(t, more, "Main", 2); v.Flow < 0.1 || v.Judged {
		t.Errorf("with planer and zone gate open %g m³/s flow there, judged %v", v.Flow, v.Judged)
	}
	if more.Ports[0].Flow >= r.Ports[0].Flow {
		t.Errorf("an opening raises the saw's flow from %g to %g", r.Ports[0].Flow, more.Ports[0].Flow)
	}
}

func TestPath(t *testing.T) {
	s := mustRead(t, yard)
	names := func(p *shop.Port) (list []string) {
		for _, at := range p.Path() {
			list = append(list, at.Name())
		}
		return list
	}
	for port, want := range map[string][]string{
		"Saw/guard":   {"Guard pipe", "Saw drop 2", "Main 4"},
		"Planer/hood": {"Planer drop", "Main 2", "Main 3", "Main 4"},
		"Lathe/scoop": {"Shared drop", "Main 1", "Main 2", "Main 3", "Main 4"},
		"Press/hood":  {"Press pipe"},
		"Anvil/port":  nil,
	} {
		for _, m := range s.Machines {
			for _, p := range m.Ports {
				if p.Full() == port && !slices.Equal(names(p), want) {
					t.Errorf("%s goes %v, want %v", port, names(p), want)
				}
			}
		}
	}
}
