package duct

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

func duct(s *shop.Shop, name string) *shop.Duct {
	for _, d := range s.Ducts {
		if d.Name == name {
			return d
		}
	}
	panic(name)
}

func school(t testing.TB, text []string, made func(*shop.Shop)) *shop.Shop {
	t.Helper()
	data, err := os.ReadFile(schoolFile)
	if err != nil {
		t.Fatal(err)
	}
	file := string(data)
	for i := 0; i < len(text); i += 2 {
		file = replaced(t, file, text[i], text[i+1])
	}
	s := mustRead(t, file)
	if made != nil {
		made(s)
	}
	return s
}

// slowed turns the fan at a share of its speed, by the fan laws: flow in
// proportion, pressure with its square.
func slowed(share float64) func(*shop.Shop) {
	return func(s *shop.Shop) {
		for i := range s.Collectors[0].Curve {
			p := &s.Collectors[0].Curve[i]
			p.Flow *= unit.Flow(share)
			p.Static *= unit.Pressure(share * share)
		}
	}
}

// solvedIn is a shop with some gates otherwise than a use has them, solved in
// that use with the filter clean.
func solvedIn(s *shop.Shop, use string, gates map[string]bool) (*Reckoning, *Result) {
	k := &Reckoning{State: StateOf(s), Uses: Uses(s)}
	tree := Grow(s, s.Collectors[0], k.State)
	k.Trees = []*Tree{tree}
	u := k.FindUse(use)
	for _, g := range s.Gates {
		if open, told := gates[g.Name]; told {
			u.Open[g] = open
		}
	}
	return k, tree.Solve(u, Clean)
}

// read is what a gauge shows in a result. Gauges are looked up by name, so
// that a shop that was read anew can be asked.
func read(t testing.TB, k *Reckoning, s *shop.Shop, r *Result, g Gauge) float64 {
	t.Helper()
	switch g.Kind {
	case AcrossFilter:
		return float64(r.FilterGauge())
	case AcrossFan:
		return float64(r.Static)
	case BehindHood:
		for i := range r.Ports {
			if r.Ports[i].Port.Full() == g.Port.Full() {
				return float64(r.Ports[i].Hood)
			}
		}
		t.Fatalf("no port %s", g.Port.Full())
	}
	for _, tap := range s.Taps {
		if tap.Name != g.Tap.Name {
			continue
		}
		if g.Kind == SpeedGauge {
			return float64(r.Stretch(StretchAt(tap.On, tap.Where)).Velocity)
		}
		p, known := k.Suction(r, tap.On, tap.Where)
		if !known {
			t.Fatalf("nothing known at %s", tap.Name)
		}
		return float64(p)
	}
	t.Fatalf("no tap %s", g.Tap.Name)
	return 0
}

// sign is how a value stands to its mark, as readings are judged.
func sign(mark, value float64) Sign {
	b := Band{Low: mark, High: mark}
	switch {
	case b.Agrees(value):
		return Level
	case b.Off(value) > 0:
		return Above
	}
	return Below
}

func (c Cause) text() string {
	switch c.Fault {
	case Plugged, Leaking:
		return fmt.Sprintf("%s %s", c.Fault, c.Stretch.Duct.Name)
	case StuckShut:
		return fmt.Sprintf("%s %s", c.Fault, c.Gates[0].Name)
	case Flattened, LeftOpen, HoodBlocked:
		return fmt.Sprintf("%s %s", c.Fault, c.Duct.Name)
	}
	return fmt.Sprintf("%s %s", c.Fault, c.Collector.Name)
}

// is reports whether a cause is the one that a test names: "plugged Trunk at
// 12 ft" is the piece of that duct that holds the place.
func (c Cause) is(name string) bool {
	what, at, placed := strings.Cut(name, " at ")
	if c.text() != what {
		return false
	}
	if !placed {
		return true
	}
	place := unit.Must[unit.Length](at)
	return c.From <= place && place <= c.To
}

func holds(list []Cause, name string) bool {
	return slices.ContainsFunc(list, func(c Cause) bool { return c.is(name) })
}

func gaugeName(g Gauge) string {
	switch g.Kind {
	case AcrossFilter:
		return "filter"
	case AcrossFan:
		return "fan"
	case BehindHood:
		return g.Port.Full()
	case SpeedGauge:
		return "speed " + g.Tap.Name
	}
	return g.Tap.Name
}

func name(s Shown) string {
	if s.Sign == Above {
		return gaugeName(s.At) + " over"
	}
	return gaugeName(s.At) + " under"
}
