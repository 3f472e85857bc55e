package duct

import "testing"

// In the school a smaller pipe makes the air faster and less: by the theory of
// flow networks a greater loss never raises the flow of the port behind it.
func TestNarrowerIsFasterAndLess(t *testing.T) {
	k := Reckon(school(t, nil, nil))
	seen, faster := 0, 0
	for _, u := range k.Uses {
		for _, r := range u.Results {
			v, known := k.Narrower(r)
			if u.Kind != OneMachine || !known {
				continue
			}
			seen++
			if v.Less > v.Flow || v.Size >= v.Port.Duct.Size {
				t.Errorf("%s: %g m³/s in %g m, %g in %g", u.Name, v.Flow, v.Port.Duct.Size, v.Less, v.Size)
			}
			if v.Faster > v.Velocity {
				faster++
			}
		}
	}
	if seen < 10 || faster < seen/2 {
		t.Errorf("%d ducts, %d of them faster", seen, faster)
	}
	for _, u := range k.Uses {
		if u.Kind == AllShut || u.Kind == DuctOff {
			if _, known := k.Narrower(u.Results[0]); known {
				t.Errorf("%s: a narrower duct at no port", u.Name)
			}
		}
	}
}
