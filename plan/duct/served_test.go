package duct

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
)

// pairText is a shop of two machines on a fan.
var pairText = mustText("testdata/pair.toml")

func mustText(name string) string {
	data, err := os.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return string(data)
}

func pair(t *testing.T, changes ...string) *Reckoning {
	t.Helper()
	return Reckon(mustRead(t, strings.NewReplacer(changes...).Replace(pairText)))
}

func useNamed(t *testing.T, k *Reckoning, name string) *Use {
	t.Helper()
	for _, u := range k.Uses {
		if u.Name == name {
			return u
		}
	}
	t.Fatalf("no use %s", name)
	return nil
}

// A port gets no air from any fan where another machine of the use has its end
// or no duct leads from it; one that needs none is not missed.
func TestUnserved(t *testing.T) {
	shared := []string{`serves = ["Saw"]`, `serves = ["Saw", "Lathe"]`, `serves = ["Lathe"]`, ``}
	bare := []string{`serves = ["Lathe"]`, ``}
	for _, c := range []struct {
		changes   []string
		use, port string
	}{
		{nil, "Both", ""},
		{nil, "Lathe", ""},
		{shared, "Both", "Lathe/port"},
		{shared, "Lathe", ""},
		{bare, "Both", "Lathe/port"},
		{bare, "Lathe", "Lathe/port"},
		{bare, "Saw", ""},
		{append([]string{"name = \"Lathe\"\nkind = \"other\"\ntransport = \"12 m/s\"\nport = { size = \"120 mm\", flow = \"500 m3/h\" }", "name = \"Lathe\"\nkind = \"other\"\ntransport = \"12 m/s\"\nport = { size = \"120 mm\", flow = \"0 m3/h\" }"}, bare...), "Both", ""},
	} {
		got := ""
		if p := useNamed(t, pair(t, c.changes...), c.use).Unserved(); p != nil {
			got = p.Full()
		}
		if got != c.port {
			t.Errorf("%q, %s: %q, want %q", c.changes, c.use, got, c.port)
		}
	}
}

// What leaves the curve is no figure: it is never the worst.
func TestOffTheCurveIsNoShare(t *testing.T) {
	k := pair(t, `["0.3 m3/s", "2500 Pa"], ["0.7 m3/s", "800 Pa"]`, `["0.3 m3/s", "2500 Pa"], ["0.55 m3/s", "1600 Pa"]`)
	e := k.BigEnough()[0]
	off := 0
	for i := range e.Demands {
		if d := &e.Demands[i]; !d.OnCurve && d.Reachable {
			off++
		}
	}
	if off == 0 || off == len(e.Demands) || e.Worst == nil || !e.Worst.OnCurve || e.Worst.Share < 1 {
		t.Errorf("%d of %d off the curve, worst %+v", off, len(e.Demands), e.Worst)
	}
}

// What keeps a result at thin, and the far side of each.
func TestResultDoubts(t *testing.T) {
	sure := pair(t)
	r := theResult(t, sure, "Saw", NoFilter)
	if air, dust := r.AirDoubts(sure.Spread(r)), r.DustDoubts(sure.Spread(r)); air.Any() || dust.Any() {
		t.Errorf("nothing to doubt: %+v, %+v", air, dust)
	}
	for _, c := range []struct {
		name, from, to string
		air, dust      Doubts
	}{
		{"filter not given", `exhaust = "outside"`, `exhaust = "returns to room"`, Doubts{ByFilter}, Doubts{ByFilter}},
		{"two claims", `fan_curve = [["0 m3/s", "2800 Pa"], ["0.3 m3/s", "2500 Pa"], ["0.7 m3/s", "800 Pa"]]`, `claims = { flow = "0.8 m3/s", suction = "2800 Pa" }`, Doubts{ByClaims}, Doubts{ByClaims}},
		{"a need of practice", `port = { size = "120 mm", flow = "500 m3/h" }`, `port = { size = "120 mm" }`, Doubts{ByNeed}, nil},
		{"a speed of practice", "transport = \"12 m/s\"\n", "", nil, Doubts{BySpeed}},
	} {
		k := pair(t, c.from, c.to)
		r := theResult(t, k, "Saw", NoFilter)
		air, dust := r.AirDoubts(k.Spread(r)), r.DustDoubts(k.Spread(r))
		air, dust = air.Without(ByBand), dust.Without(ByBand)
		if !slices.Equal(air, c.air) || !slices.Equal(dust, c.dust) {
			t.Errorf("%s: air %+v, dust %+v", c.name, air, dust)
		}
	}
	// a need just under what is got lies inside the band
	got := r.Ports[0].Flow
	k := pair(t, `flow = "500 m3/h"`, `flow = "`+cubicMetres(float64(got)*0.999)+`"`)
	r = theResult(t, k, "Saw", NoFilter)
	if d := r.AirDoubts(k.Spread(r)); !r.Captured || !slices.Equal(d, Doubts{ByBand}) {
		t.Errorf("captured %v, %+v, want the band", r.Captured, d)
	}
}

// Where dust settles, the gate that is found and the smaller size do what they
// are said to; where it is carried or a port lacks air there is nothing to say.
func TestSettles(t *testing.T) {
	lathe := "name = \"Lathe\"\nkind = \"other\"\n"
	fast := []string{lathe + `transport = "12 m/s"`, lathe + `transport = "20 m/s"`, `size = "160 mm"`, `size = "180 mm"`}
	k := pair(t, fast...)
	u := useNamed(t, k, "Lathe")
	s := k.Settles(context.Background(), u, k.Trees[0].Collector)
	if s == nil || s.Slowest.Stretch.Duct.Name != "Main" || s.Share >= 1 || len(s.Relief.Gates) != 1 || s.Relief.Gates[0].Name != "Saw gate" {
		t.Fatalf("%+v", s)
	}
	opened := pair(t, lathe+`transport = "12 m/s"`, lathe+"also_open = [\"Saw gate\"]\ntransport = \"20 m/s\"", fast[2], fast[3])
	if r := theResult(t, opened, "Lathe", NoFilter); !r.Captured || !r.Carried {
		t.Errorf("with the gate open: captured %v, carried %v", r.Captured, r.Carried)
	}
	smaller := theResult(t, pair(t, fast[0], fast[1]), "Lathe", NoFilter)
	if _, share := smaller.Slowest(); s.Smaller != nil && (s.Smaller.Share != share || s.Smaller.Captured != smaller.Captured || s.Smaller.Carried != smaller.Carried) {
		t.Errorf("smaller: %+v, the file with it: %g", s.Smaller, share)
	}
	if s.Smaller == nil || s.Smaller.Duct.Name != "Main" || s.Smaller.Size >= s.Smaller.Duct.Size || s.Smaller.Share <= s.Share {
		t.Errorf("smaller: %+v, before %g", s.Smaller, s.Share)
	}
	for name, changes := range map[string][]string{"carried": nil, "short of air": append([]string{`flow = "500 m3/h"`, `flow = "2500 m3/h"`}, fast...)} {
		k := pair(t, changes...)
		if s := k.Settles(context.Background(), useNamed(t, k, "Lathe"), k.Trees[0].Collector); s != nil {
			t.Errorf("%s: %+v", name, s)
		}
	}
}

// The duct that no size fits is named, with what it must and may have.
func TestBlock(t *testing.T) {
	for _, c := range []struct {
		changes            []string
		duct, above, below string
		from, to           float64
	}{
		{[]string{`size = "160 mm"`, `size = "choose"`, "size = \"120 mm\"\nlength = \"3 m\"\nserves = [\"Saw\"]", "size = \"250 mm\"\nlength = \"3 m\"\nserves = [\"Saw\"]"}, "Main", "Saw drop", "", 250, 180},
		{[]string{`inlet = "180 mm"`, `inlet = "50 mm"`, `size = "160 mm"`, `size = "choose"`, "size = \"120 mm\"\nlength", "size = \"choose\"\nlength"}, "Main", "", "", 0, 50},
		{[]string{`size = "160 mm"`, `size = "50 mm"`, "size = \"120 mm\"\nlength = \"3 m\"\nserves = [\"Saw\"]", "size = \"choose\"\nlength = \"3 m\"\nserves = [\"Saw\"]"}, "Saw drop", "", "Main", 0, 50},
	} {
		s := mustRead(t, strings.NewReplacer(c.changes...).Replace(pairText))
		list, _ := Reckon(s).Choose(context.Background(), s)
		if len(list) != 1 || len(list[0].Sizes) > 0 || list[0].Block == nil {
			t.Fatalf("%q: %+v", c.changes, list[0])
		}
		b := list[0].Block
		above, below := "", ""
		if b.Above != nil {
			above = b.Above.Name
		}
		if b.Below != nil {
			below = b.Below.Name
		}
		if b.Duct.Name != c.duct || above != c.above || below != c.below || !near(float64(b.From), c.from/1000, 1e-9) && c.from > 0 || !near(float64(b.To), c.to/1000, 1e-9) {
			t.Errorf("%q: %s between %q of %g and %q of %g", c.changes, b.Duct.Name, above, float64(b.From), below, float64(b.To))
		}
	}
	s := mustRead(t, strings.Replace(pairText, `size = "160 mm"`, `size = "choose"`, 1))
	k := Reckon(s)
	list, _ := k.Choose(context.Background(), s)
	if len(list[0].Sizes) == 0 || list[0].Block != nil {
		t.Fatalf("a size fits: %+v", list[0])
	}
	// the margins are those of the file with the size written in
	m := k.Margins(s, list[0])
	written := Reckon(mustRead(t, strings.Replace(pairText, `size = "160 mm"`, `size = "`+millimetres(float64(list[0].Sizes[0].Size))+`"`, 1)))
	air, dust := 10.0, 10.0
	for _, name := range []string{"Saw", "Lathe", "Both"} {
		r := theResult(t, written, name, NoFilter)
		for _, p := range r.Ports {
			air = min(air, float64(p.Flow/p.Port.Flow))
		}
		if _, share := r.Slowest(); share < dust {
			dust = share
		}
	}
	if m.Air == nil || m.Dust == nil || !near(m.Air.Share, air, 1e-5) || !near(m.Dust.Share, dust, 1e-5) || m.Air.Band.Low >= m.Air.Share || m.Air.Band.High <= m.Air.Share {
		t.Errorf("margins %+v and %+v, want %g and %g", m.Air, m.Dust, air, dust)
	}
	if none := k.Margins(s, &Choice{Collector: list[0].Collector}); none.Air != nil || none.Dust != nil || none.Doubts.Any() {
		t.Errorf("without sizes: %+v", none)
	}
}

func cubicMetres(perSecond float64) string { return fmt.Sprintf("%.8f m3/s", perSecond) }

func millimetres(metres float64) string { return fmt.Sprintf("%.6g mm", 1000*metres) }
