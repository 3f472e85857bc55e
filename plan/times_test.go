package plan

import (
	"testing"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// Every way handed to the times has the length of its port's run and the
// speeds of its result, hose and all; a result off its curve has none.
func TestWaysOfTheAir(t *testing.T) {
	p := Make(mustShop(t, content.Example()), nil, entry.Date{})
	hoses, seen := 0, 0
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			for i := range r.Ports {
				if r.Collector == nil {
					continue
				}
				port := r.Ports[i].Port
				w := way(u, r, port)
				if w.Known != r.OnCurve || !w.Known && len(w.Legs) > 0 {
					t.Errorf("%s in %s: %+v", port.Full(), u.Name, w)
				}
				if !w.Known {
					continue
				}
				seen++
				var length unit.Length
				for _, leg := range w.Legs {
					length += leg.Length
				}
				if unit.Compare(float64(length), float64(duct.RunLength(port))) != 0 {
					t.Errorf("%s in %s: %v m, its run is %v m", port.Full(), u.Name, length, duct.RunLength(port))
				}
				last := port.Path()[len(port.Path())-1]
				if w.Legs[len(w.Legs)-1].Speed != r.Stretch(last).Velocity {
					t.Errorf("%s in %s: the last leg is not as fast as its stretch", port.Full(), u.Name)
				}
				if port.Duct.Hose != nil {
					hoses++
					if w.Legs[0].Speed != r.Stretch(port.Path()[0]).HoseVelocity {
						t.Errorf("%s in %s: the hose comes first", port.Full(), u.Name)
					}
				}
			}
		}
	}
	if seen < 10 || hoses == 0 {
		t.Errorf("%d ways, %d with a hose", seen, hoses)
	}
}
