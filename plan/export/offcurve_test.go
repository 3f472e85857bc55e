package export_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

func readExample(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("../../content/example/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// Off the curve every figure is null and every verdict is no; what a stretch
// needs still stands. A collector without a filter is in the state none.
func TestOffTheCurve(t *testing.T) {
	const file = `
[shop]
name = "Off"
[[collector]]
name = "Fan"
inlet = "8 in"
fan_curve = [["700 cfm", "10 inwg"], ["800 cfm", "9 inwg"]]
fan_power = [["0 cfm", "1 hp"], ["2000 cfm", "3 hp"]]
[[machine]]
name = "Saw"
kind = "table saw"
[[machine]]
name = "Anvil"
kind = "other"
port = { size = "4 in", flow = "100 cfm" }
[[duct]]
name = "Pipe"
to = "Fan"
size = "2 in"
length = "10 ft"
hose = { length = "1 ft" }
serves = ["Saw"]
[[leak]]
on = "Pipe"
hole = "1/4 in"
`
	s, data := written(t, "shop.toml", []byte(file))
	uses := decoded(t, data).Uses
	if len(uses) != 5 {
		t.Fatalf("%d uses, want the two machines, shut, open and duct off", len(uses))
	}
	for _, u := range uses {
		if u.Fan.OnCurve || u.Captured || u.Carried || u.Filter != "none" {
			t.Errorf("%s: on the curve %v, captured %v, carried %v, filter %s", u.Name, u.Fan.OnCurve, u.Captured, u.Carried, u.Filter)
		}
		for i, v := range []*float64{u.Fan.Flow, u.Fan.Static, u.Fan.Power, u.Fan.Inlet, u.Fan.Separator, u.Fan.Filter, u.Fan.Outlet} {
			if v != nil {
				t.Errorf("%s: figure %d of the fan is %g", u.Name, i, *v)
			}
		}
		for _, p := range u.Ports {
			if p.Flow != nil || p.Captured || p.Need <= 0 {
				t.Errorf("%s: port %+v", u.Name, p)
			}
		}
		for _, d := range u.Ducts {
			if d.Flow != nil || d.Velocity != nil || d.Loss != nil || d.Hose != nil || (d.Transport != nil) != (u.Name == "Saw") {
				t.Errorf("%s: duct %+v", u.Name, d)
			}
		}
		for _, l := range u.Leaks {
			if l.Flow != nil {
				t.Errorf("%s: leak %g", u.Name, *l.Flow)
			}
		}
	}
	if anvil := uses[1]; anvil.Name != "Anvil" || anvil.Collector != "" || len(anvil.Ducts) != 0 || len(anvil.Ports) != 1 {
		t.Errorf("a machine that no duct serves: %+v", anvil)
	}
	if !bytes.Contains(data, []byte(`"flow_m3_s": null`)) {
		t.Error("no null is written")
	}
	if s.Name != "Off" {
		t.Error(s.Name)
	}
	// the far side: a wider pipe is on the curve, with numbers
	_, data = written(t, "shop.toml", []byte(strings.Replace(strings.Replace(file, `"2 in"`, `"5 in"`, 1), `"700 cfm"`, `"300 cfm"`, 1)))
	if u := decoded(t, data).Uses[0]; !u.Fan.OnCurve || u.Fan.Flow == nil || u.Fan.Power == nil || *u.Fan.Power <= 0 || u.Ducts[0].Hose == nil {
		t.Errorf("wider: %+v", u.Fan)
	}
}

// Power is null where the file gives none, though the use is on the curve.
func TestPowerNotGiven(t *testing.T) {
	_, data := written(t, "school.toml", readExample(t, "school.toml"))
	given := map[string]bool{}
	for _, u := range decoded(t, data).Uses {
		if u.Fan.OnCurve {
			given[u.Collector] = u.Fan.Power != nil
		}
	}
	if !given["Cyclone"] || given["Bench collector"] {
		t.Errorf("power is given for %v", given)
	}
}
