package export_test

import (
	"math"
	"slices"
	"testing"

	"dustbook/plan/shop"
)

// solvedUses calls check for every use that stands on the curve and has ducts.
func solvedUses(t *testing.T, s *shop.Shop, data []byte, check func(t *testing.T, u *use, f *flows)) {
	t.Helper()
	count := 0
	for _, u := range decoded(t, data).Uses {
		if !u.Fan.OnCurve || len(u.Ducts) == 0 {
			continue
		}
		count++
		t.Run(u.Name+"/"+u.Collector+"/"+u.Filter, func(t *testing.T) { check(t, &u, topology(t, s, &u)) })
	}
	if count == 0 {
		t.Error("no use was checked")
	}
}

// flows are the figures of one use by the things they belong to.
type flows struct {
	shop      *shop.Shop
	collector *shop.Collector
	piece     map[*shop.Stretch]*piece
	leak      map[*shop.Leak]float64
}

func topology(t *testing.T, s *shop.Shop, u *use) *flows {
	t.Helper()
	f := &flows{shop: s, piece: map[*shop.Stretch]*piece{}, leak: map[*shop.Leak]float64{}}
	for _, c := range s.Collectors {
		if c.Name == u.Collector {
			f.collector = c
		}
	}
	next, nextLeak := 0, 0
	for _, d := range s.Ducts {
		if d.Collector != f.collector {
			continue
		}
		for _, stretch := range d.Stretches {
			if next == len(u.Ducts) || u.Ducts[next].Duct != d.Name || u.Ducts[next].Stretch != stretch.Number {
				t.Fatalf("row %d of ducts is not %s, in file order", next, stretch.Name())
			}
			f.piece[stretch] = &u.Ducts[next]
			next++
		}
		for _, leak := range d.Leaks {
			if nextLeak == len(u.Leaks) || u.Leaks[nextLeak].On != d.Name {
				t.Fatalf("row %d of leaks is not on %s", nextLeak, d.Name)
			}
			f.leak[leak] = *u.Leaks[nextLeak].Flow
			nextLeak++
		}
	}
	if next != len(u.Ducts) || nextLeak != len(u.Leaks) {
		t.Fatalf("%d rows of ducts and %d of leaks, want %d and %d", len(u.Ducts), len(u.Leaks), next, nextLeak)
	}
	return f
}

// leaving is what a duct hands on at its downstream end: its last stretch and
// whatever comes in there.
func (f *flows) leaving(d *shop.Duct) float64 {
	n := len(d.Stretches)
	return *f.piece[d.Stretches[n-1]].Flow + f.entering(d, n)
}

// entering is what comes in at a node of a duct: other ducts and holes.
func (f *flows) entering(d *shop.Duct, node int) float64 {
	sum := 0.0
	for _, other := range d.Joined {
		if other.JoinNode == node {
			sum += f.leaving(other)
		}
	}
	for _, leak := range d.Leaks {
		if leak.Node == node {
			sum += f.leak[leak]
		}
	}
	return sum
}

// end is what comes in at a duct's own end: what its first stretch carries
// beyond what joins there.
func (f *flows) end(d *shop.Duct) float64 {
	return *f.piece[d.Stretches[0]].Flow - f.entering(d, 0)
}

// What flows into a place flows out of it, to the collector, as written.
func TestFlowsAddUp(t *testing.T) {
	const exact = 1e-9
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		solvedUses(t, s, data, func(t *testing.T, u *use, f *flows) {
			arriving, entering := 0.0, 0.0
			for _, d := range s.Ducts {
				if d.Collector != f.collector {
					continue
				}
				for i := 1; i < len(d.Stretches); i++ {
					before, behind := *f.piece[d.Stretches[i-1]].Flow, *f.piece[d.Stretches[i]].Flow
					if missing := before + f.entering(d, i) - behind; math.Abs(missing) > exact {
						t.Errorf("at the start of %s %g m³/s go missing", d.Stretches[i].Name(), missing)
					}
				}
				end := f.end(d)
				if len(d.Serves) == 0 && math.Abs(end) > exact || end < -exact {
					t.Errorf("%g m³/s come in at the end of %s, which serves %d ports", end, d.Name, len(d.Serves))
				}
				entering += end
				for _, leak := range d.Leaks {
					entering += f.leak[leak]
				}
				if d.Into == nil {
					arriving += f.leaving(d)
				}
			}
			if math.Abs(arriving-*u.Fan.Flow) > exact || math.Abs(entering-*u.Fan.Flow) > exact {
				t.Errorf("%.9g m³/s come in, %.9g arrive, the fan moves %.9g", entering, arriving, *u.Fan.Flow)
			}
			for _, p := range u.Ports {
				if port := portNamed(s, p.Port); standsAt(u, port) && math.Abs(f.end(port.Duct)-*p.Flow) > exact {
					t.Errorf("%s gets %g m³/s, its duct takes in %g", p.Port, *p.Flow, f.end(port.Duct))
				}
			}
		})
	})
}

func portNamed(s *shop.Shop, name string) *shop.Port {
	for _, m := range s.Machines {
		for _, p := range m.Ports {
			if p.Full() == name {
				return p
			}
		}
	}
	return nil
}

// standsAt reports whether a port's duct stands at it in a use: a movable end
// stands at the first it serves of the use's machines.
func standsAt(u *use, p *shop.Port) bool {
	for _, other := range p.Duct.Serves {
		if slices.Contains(u.Machines, other.Machine.Name) {
			return other == p
		}
	}
	return false
}

// Along every way in that carries air, from each end to the collector, the
// losses as written add up to the inlet's suction, and with the collector's
// own to the fan's static pressure.
func TestLossesAddUp(t *testing.T) {
	const exact = 1e-6
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		paths := 0
		solvedUses(t, s, data, func(t *testing.T, u *use, f *flows) {
			static := *u.Fan.Static
			if sum := *u.Fan.Inlet + *u.Fan.Separator + *u.Fan.Filter + *u.Fan.Outlet; math.Abs(sum-static) > exact*static {
				t.Errorf("inlet, separator, filter and outlet are %.9g Pa, the fan's %.9g", sum, static)
			}
			for _, d := range s.Ducts {
				if d.Collector != f.collector || len(d.Serves) == 0 || *f.piece[d.Stretches[0]].Flow == 0 {
					continue
				}
				paths++
				sum := 0.0
				for at := d.Stretches[0]; at != nil; at = at.Below() {
					sum += *f.piece[at].Loss
				}
				if math.Abs(sum+*u.Fan.Separator+*u.Fan.Filter+*u.Fan.Outlet-static) > exact*static {
					t.Errorf("from %s the losses are %.9g Pa, at the inlet are %.9g", d.Name, sum, *u.Fan.Inlet)
				}
			}
		})
		if paths < len(s.Machines) {
			t.Errorf("%d paths checked", paths)
		}
	})
}

// The verdicts follow from the numbers beside them.
func TestVerdictsFollow(t *testing.T) {
	seen := map[[2]bool]int{}
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		for _, u := range decoded(t, data).Uses {
			captured, carried := u.Fan.OnCurve, u.Fan.OnCurve
			for _, p := range u.Ports {
				got := p.Flow != nil && *p.Flow >= p.Need
				if got != p.Captured {
					t.Errorf("%s, %s: captured %v with %v of %g m³/s", u.Name, p.Port, p.Captured, p.Flow, p.Need)
				}
				captured = captured && got
			}
			for _, d := range u.Ducts {
				if d.Transport == nil {
					continue
				}
				carried = carried && d.Velocity != nil && *d.Velocity >= *d.Transport && (d.Hose == nil || *d.Hose >= *d.Transport)
			}
			if captured != u.Captured || carried != u.Carried {
				t.Errorf("%s on %s, %s: captured %v and carried %v, its numbers say %v and %v", u.Name, u.Collector, u.Filter, u.Captured, u.Carried, captured, carried)
			}
			if len(u.Machines) > 0 {
				seen[[2]bool{captured, carried}]++
			}
		}
	})
	if len(seen) < 3 {
		t.Errorf("verdicts seen: %v; want the examples to show both sides", seen)
	}
}

// A velocity is the flow over the bore's area.
func TestVelocitiesFollow(t *testing.T) {
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		solvedUses(t, s, data, func(t *testing.T, u *use, f *flows) {
			for stretch, p := range f.piece {
				bore := float64(stretch.Duct.Bore)
				if want := *p.Flow / (math.Pi * bore * bore / 4); math.Abs(*p.Velocity-want) > 1e-5*want {
					t.Errorf("%s: %g m/s, want %g", stretch.Name(), *p.Velocity, want)
				}
				hose := stretch.Duct.Hose
				if wanted := hose != nil && stretch.Number == 1; wanted != (p.Hose != nil) {
					t.Errorf("%s: hose velocity %v, want one: %v", stretch.Name(), p.Hose, wanted)
				} else if wanted {
					size := float64(hose.Size)
					if want := f.end(stretch.Duct) / (math.Pi * size * size / 4); math.Abs(*p.Hose-want) > 1e-5*want {
						t.Errorf("the hose of %s: %g m/s, want %g", stretch.Name(), *p.Hose, want)
					}
				}
			}
		})
	})
}
