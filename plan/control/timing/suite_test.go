package timing

import (
	"math"
	"os"
	"strings"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// yard is the test shop with pieces replaced; each must stand there once. The
// air is given by the test.
func yard(t *testing.T, air Air, changes ...string) (*shop.Shop, *Reckoning) {
	t.Helper()
	data, err := os.ReadFile("testdata/yard.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i+1 < len(changes); i += 2 {
		if n := strings.Count(text, changes[i]); n != 1 {
			t.Fatalf("%q stands %d times in the shop, want once", changes[i], n)
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s, Reckon(s, control.Reckon(s), air)
}

// blowing gives every port of a shop the same air: one leg of a length at a
// speed.
func blowing(s *shop.Shop, length unit.Length, speed unit.Velocity) Air {
	var air Air
	for _, m := range s.Machines {
		for _, p := range m.Ports {
			if p.Duct != nil {
				air.Paths = append(air.Paths, Path{Port: p, Collector: p.Duct.Collector, Use: m.Name, Known: true, Legs: []Leg{{length, speed}}})
			}
		}
	}
	return air
}

// blown is the yard with every port 36 m from its collector at 20 m/s.
func blown(t *testing.T, changes ...string) (*shop.Shop, *Reckoning) {
	t.Helper()
	s, _ := yard(t, Air{}, changes...)
	return s, Reckon(s, control.Reckon(s), blowing(s, 36, 20))
}

func trigger(t *testing.T, r *Reckoning, name string) *OfTrigger {
	t.Helper()
	for _, of := range r.Triggers {
		if of.Trigger.Name == name {
			return of
		}
	}
	t.Fatalf("no trigger %s", name)
	return nil
}

func collector(t *testing.T, r *Reckoning, name string) *OfCollector {
	t.Helper()
	for _, of := range r.Collectors {
		if of.Collector.Name == name {
			return of
		}
	}
	t.Fatalf("no collector %s", name)
	return nil
}

// near reports whether two numbers agree within a share of the second.
func near(got, want, within float64) bool { return math.Abs(got-want) <= within*math.Abs(want) }

func missing(list []Missing) string {
	var names []string
	for _, m := range list {
		names = append(names, m.Of+" "+m.Field)
	}
	return strings.Join(names, ", ")
}
