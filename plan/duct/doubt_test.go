package duct

import (
	"context"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// sure is a fan with a short pipe to each of two saws, all of it given: nothing
// of it is in doubt.
const sure = `[shop]
name = "Two"
[[machine]]
name = "Saw"
kind = "table saw"
transport = "15 m/s"
port = { name = "hood", size = "100 mm", flow = "500 m3/h", hood_loss = 0.5 }
[[machine]]
name = "Other"
kind = "table saw"
transport = "15 m/s"
port = { name = "hood", size = "100 mm", flow = "500 m3/h", hood_loss = 0.5 }
[[collector]]
name = "Fan"
inlet = "150 mm"
fan_curve = [["0 m3/h", "3000 Pa"], ["2000 m3/h", "2500 Pa"], ["4000 m3/h", "200 Pa"]]
filter = { clean = "100 Pa", change = "200 Pa", at = "1000 m3/h" }
exhaust = "returns to room"
[[duct]]
name = "Main"
to = "Fan"
size = "150 mm"
length = "1 m"
[[duct]]
name = "Saw drop"
to = "Main"
size = "100 mm"
length = "1 m"
serves = ["Saw"]
[[duct]]
name = "Other drop"
to = "Main"
size = "100 mm"
length = "1 m"
serves = ["Other"]
[[gate]]
name = "Saw gate"
on = "Saw drop"
[[gate]]
name = "Other gate"
on = "Other drop"
`

// changed is the shop of two saws with pieces of its text replaced.
func changed(t *testing.T, pairs ...string) string {
	t.Helper()
	text := sure
	for i := 0; i < len(pairs); i += 2 {
		text = replaced(t, text, pairs[i], pairs[i+1])
	}
	return text
}

const sureFilter = "filter = { clean = \"100 Pa\", change = \"200 Pa\", at = \"1000 m3/h\" }\n"

// Each doubt makes what works thin, and is gone where its reason is.
func TestDoubts(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		pair   Doubts
	}{
		{"all given", nil, nil},
		{"two claims", []string{`fan_curve = [["0 m3/h", "3000 Pa"], ["2000 m3/h", "2500 Pa"], ["4000 m3/h", "200 Pa"]]`, `claims = { flow = "4000 m3/h", suction = "3500 Pa" }`}, []Doubt{ByClaims}},
		{"no filter, and the air comes back", []string{sureFilter, ""}, []Doubt{ByFilter}},
		{"no filter, and nobody says where the air goes", []string{sureFilter, "", `exhaust = "returns to room"`, ""}, []Doubt{ByFilter}},
		{"no filter, and the air goes out", []string{sureFilter, "", `"returns to room"`, `"outside"`}, nil},
		{"the speed of a main is practice", []string{"name = \"Saw\"\nkind = \"table saw\"\ntransport = \"15 m/s\"", "name = \"Saw\"\nkind = \"table saw\""}, []Doubt{BySpeed}},
		{"the speed of a main is practice, and less than the other's own", []string{"name = \"Saw\"\nkind = \"table saw\"\ntransport = \"15 m/s\"", "name = \"Saw\"\nkind = \"table saw\"", "name = \"Other\"\nkind = \"table saw\"\ntransport = \"15 m/s\"", "name = \"Other\"\nkind = \"table saw\"\ntransport = \"18 m/s\""}, nil},
		{"the need is a default", []string{"flow = \"500 m3/h\", hood_loss = 0.5 }\n[[machine]]\nname = \"Other\"", "hood_loss = 0.5 }\n[[machine]]\nname = \"Other\""}, []Doubt{ByNeed}},
	} {
		x := setsOf(t, mustRead(t, changed(t, c.change...)))
		pair := x.Pair(0, 1)
		if !pair.Works {
			t.Errorf("%s: the pair fails: %+v", c.name, pair.On)
		}
		if !slices.Equal(pair.Thin, c.pair) || (pair.Sign() == "thin") != (len(c.pair) > 0) || pair.Stands() != "works" {
			t.Errorf("%s: thin by %v, sign %s; want %v", c.name, pair.Thin, pair.Sign(), c.pair)
		}
	}
}

// A pair that works, and a need inside the band of what a port gets: thin; a
// little under the band, it is not. The band is the spread's own.
func TestDoubtByBand(t *testing.T) {
	s := mustRead(t, sure)
	k := Reckon(s)
	r := k.Trees[0].Solve(asUse(setsOf(t, s).Pair(0, 1)), ChangeOut)
	band := k.Trees[0].Spread(r).Port(s.Machines[0].Ports[0])
	got := float64(r.Ports[0].Flow)
	if !(band.Low < got && got < band.High) {
		t.Fatalf("band %v around %g", band, got)
	}
	for need, want := range map[float64][]Doubt{(band.Low + got) / 2: {ByBand}, band.Low * 0.99: nil} {
		s := mustRead(t, sure)
		s.Machines[0].Ports[0].Flow = unit.Flow(need)
		pair := setsOf(t, s).Pair(0, 1)
		if !pair.Works || !slices.Equal(pair.Thin, want) {
			t.Errorf("need %g in %v: works %v, thin by %v, want %v", need, band, pair.Works, pair.Thin, want)
		}
	}
}

// Beyond so many sets the bands are not reckoned, and what has none is thin.
func TestBandsAreBounded(t *testing.T) {
	s := mustRead(t, sure)
	k := Reckon(s)
	for most, want := range map[int][]Doubt{2: {NoBand}, 3: nil} {
		x := setsOf(t, s)
		if err := k.bands(context.Background(), x, most); err != nil {
			t.Fatal(err)
		}
		if x.All[0].Thin != nil || x.All[1].Thin != nil || !slices.Equal(x.All[2].Thin, want) {
			t.Errorf("%d bands: %v %v %v, want the pair %v", most, x.All[0].Thin, x.All[1].Thin, x.All[2].Thin, want)
		}
	}
}

// Nobody says how many run at once: pairs are reckoned all the same. The file
// says one: they are not. One machine has no pairs.
func TestPairsWhereNobodySays(t *testing.T) {
	one := sure[:strings.Index(sure, "[[machine]]\nname = \"Other\"")] + sure[strings.Index(sure, "[[collector]]"):strings.Index(sure, "[[duct]]\nname = \"Other drop\"")]
	for _, c := range []struct {
		text        string
		assumed     bool
		size, asked int
	}{{sure, true, 2, 2}, {people(t, sure, "1"), false, 1, 1}, {people(t, sure, "3"), false, 2, 2}, {one, true, 1, 1}} {
		x := setsOf(t, mustRead(t, c.text))
		if x.Assumed != c.assumed || x.Size != c.size || x.Asked != c.asked || (x.Pair(0, len(x.machines)-1) == nil) != (c.size == 1 && len(x.machines) > 1) {
			t.Errorf("assumed %v, size %d, asked %d; want %+v", x.Assumed, x.Size, x.Asked, c)
		}
	}
}

// A set with a port that no duct serves is unserved, and no gate is looked for;
// the same set without that machine is not.
func TestBarePorts(t *testing.T) {
	s := mustRead(t, people(t, yard, "2"))
	x := setsOf(t, s)
	seen := 0
	for _, set := range x.All {
		bare := slices.ContainsFunc(set.Bare(), func(p *shop.Port) bool { return p.Machine.Name == "Anvil" })
		has := strings.Contains(names(set), "Anvil ")
		if bare != has || has && set.Apart == nil && (set.Stands() != "unserved" || len(set.Relief) > 0 || set.Works) || !has && set.Stands() == "unserved" {
			t.Errorf("%s: bare %v, stands %s", names(set), set.Bare(), set.Stands())
		}
		if has && len(set.On) > 0 {
			seen++
		}
	}
	if seen == 0 {
		t.Error("no set of the anvil with another")
	}
}

// The gates of a range are those that a use of the same machines opens, the
// relief's with them, and with them it works. Where only relief opens a third
// gate, the third counts.
func TestGatesCountRelief(t *testing.T) {
	school, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	relieved := 0
	for _, text := range []string{string(school), people(t, yard, "3"), rowOf(7, 6)} {
		s := mustRead(t, text)
		k := Reckon(s)
		x := setsOf(t, s)
		for _, g := range x.Gates {
			for _, end := range []struct {
				set  *Set
				also []*shop.Gate
				want int
			}{{g.Fewest, g.FewestAlso, g.Least}, {g.Widest, g.WidestAlso, g.Most}} {
				for _, filter := range States(g.Collector) {
					r := k.TreeOf(g.Collector).Solve(asUse(end.set, end.also...), filter)
					if open := len(r.OpenGates(s)); open != end.want || !r.Captured || !r.Carried {
						t.Errorf("%s: %d gates open, said %d; captured %v, carried %v", names(end.set), open, end.want, r.Captured, r.Carried)
					}
				}
				relieved += len(end.also)
			}
			for _, set := range x.All {
				for _, r := range set.Relief {
					if open := set.Open[slices.Index(s.Collectors, g.Collector)] + len(r.Gates); r.Collector == g.Collector && set.Stands() == "relief" && open > g.Most {
						t.Errorf("%s opens %d gates and works, beyond %d", names(set), open, g.Most)
					}
				}
			}
		}
	}
	if relieved == 0 {
		t.Error("no range hangs on a relief")
	}
}

// The sign of dust tells where no gate helps from where only some were tried.
func TestSignOfDust(t *testing.T) {
	school, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for _, set := range setsOf(t, mustRead(t, string(school))).All {
		seen[set.Sign()]++
		open := false
		for _, r := range set.Relief {
			open = open || len(r.Gates) == 0 && r.Through >= 0
		}
		if hopeless := slices.ContainsFunc(set.Relief, func(r Relief) bool { return r.Through < 0 }); set.Stands() == "dust" && (set.Sign() == "tried") != (open && !hopeless) {
			t.Errorf("%s: %s, relief %+v", names(set), set.Sign(), set.Relief)
		}
	}
	if seen["dust"] == 0 || seen["tried"] == 0 || seen["thin"] == 0 {
		t.Errorf("the school has not all signs: %v", seen)
	}
}
