package plan

import (
	"math"
	"testing"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// What the ends of the ducts let in, with the holes, is what the fan moves:
// air that is drawn is drawn from somewhere.
func TestEndsAddUpToTheFan(t *testing.T) {
	p := Make(mustShop(t, content.Example()), nil, entry.Date{})
	seen := 0
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if u.Kind == duct.DuctOff || r.Collector == nil || !r.OnCurve {
				continue
			}
			d := draw(u, r)
			sum := 0.0
			for _, e := range d.Ends {
				sum += float64(e.Flow)
			}
			for _, l := range r.Leaks {
				sum += float64(l.Flow)
			}
			if math.Abs(sum-float64(r.Flow)) > 1e-5*float64(r.Flow) {
				t.Errorf("%s on %s: ends and holes %g, fan %g", u.Name, r.Collector.Name, sum, float64(r.Flow))
			}
			seen++
		}
	}
	if seen == 0 {
		t.Fatal("no use has a flow")
	}
}

// A filter due for change draws less and does not count a use twice.
func TestRoomsTakeTheCleanFilter(t *testing.T) {
	p := Make(mustShop(t, content.Example()), nil, entry.Date{})
	for _, s := range p.Rooms.Spaces {
		seen := map[string]bool{}
		for _, b := range p.Rooms.Of(s) {
			if seen[b.Use] {
				t.Errorf("%s stands twice in %s", b.Use, s.Name())
			}
			seen[b.Use] = true
		}
	}
	if len(p.Rooms.Spaces) == 0 || len(p.Rooms.Balances) == 0 {
		t.Fatal("no space has a balance")
	}
}

func mustShop(t *testing.T, text []byte) *shop.Shop {
	t.Helper()
	s, problems := shop.Read("shop.toml", text)
	if s == nil {
		t.Fatal(problems)
	}
	return s
}
