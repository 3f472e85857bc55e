package duct

import (
	"fmt"
	"slices"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// put puts a cause into the school: pieces of the file to replace, what to
// change of it when it is read, and the gates that stand otherwise.
func put(c Cause) (text []string, made func(*shop.Shop), gates map[string]bool) {
	hole := func(on, size string, at unit.Length) []string {
		const tap = "[[tap]]\nname = \"Trunk tap\""
		return []string{tap, fmt.Sprintf("[[leak]]\non = %q\nhole = %q\nat = \"%g m\"\n%s", on, size, float64(at), tap)}
	}
	gates = map[string]bool{}
	for _, g := range c.Gates {
		gates[g.Name] = c.Fault == LeftOpen
	}
	switch c.Fault {
	case Plugged:
		made = func(s *shop.Shop) {
			for _, at := range duct(s, c.Stretch.Duct.Name).Stretches {
				for i := 0; at.Number == c.Stretch.Number && i < 80; i++ {
					at.Turns = append(at.Turns, shop.Turn{Angle: unit.Must[unit.Angle]("90 deg"), At: (c.From + c.To) / 2})
				}
			}
		}
	case Leaking:
		text = hole(c.Stretch.Duct.Name, "4 in", (c.From+c.To)/2)
	case BinLeaking:
		text = hole("Trunk", "5 in", unit.Must[unit.Length]("27 ft"))
	case Flattened:
		made = func(s *shop.Shop) { duct(s, c.Duct.Name).Hose.Times = 80 }
	case HoodBlocked:
		made = func(s *shop.Shop) {
			for _, p := range duct(s, c.Duct.Name).Serves {
				p.HoodLoss += 20
			}
		}
	case SeparatorBlocked:
		made = func(s *shop.Shop) { s.Collectors[0].Separator.Loss *= 4 }
	case FilterLoaded:
		made = func(s *shop.Shop) { s.Collectors[0].Filter.Clean *= 8 }
	case FilterTorn:
		made = func(s *shop.Shop) { s.Collectors[0].Filter.Clean *= 0.1 }
	case OutletBlocked:
		made = func(s *shop.Shop) { s.Collectors[0].Outlet.Loss += 60 }
	case FanWeak:
		made = slowed(0.75)
	}
	return text, made, gates
}

// Whatever of the school is put out of order in the model, no gauge moves the
// other way from what the finder says: in a use of one machine, of one machine
// with two ports, and of two machines on two branches.
func TestSignsOfTheSchool(t *testing.T) {
	base := school(t, nil, nil)
	seen, level := map[string]int{}, map[string]int{}
	for _, use := range []string{"Planer", "Table saw", "Table saw and bandsaw", "Planer and jointer"} {
		sound, at := solvedIn(base, use, nil)
		finder := sound.Finder(at)
		for _, c := range finder.Causes {
			text, made, gates := put(c)
			other := school(t, text, made)
			k, r := solvedIn(other, use, gates)
			if !r.OnCurve {
				t.Errorf("%s: %s is off the curve", use, c.text())
				continue
			}
			for _, g := range finder.Gauges {
				got, want := sign(read(t, sound, base, at, g), read(t, k, other, r, g)), finder.Shows(c, g)
				kind := fmt.Sprintf("%s at %d", c.Fault, g.Kind)
				if got == Level {
					level[kind]++
					continue
				}
				if seen[kind]++; want != Either && got != want && !atItsHood(c, g) {
					t.Errorf("%s: %s %g to %g moves %s by sign %d; the finder says %d", use, c.text(), float64(c.From), float64(c.To), gaugeName(g), got, want)
				}
			}
		}
	}
	for _, f := range []Fault{Plugged, StuckShut, Flattened, HoodBlocked, LeftOpen, Leaking, BinLeaking, SeparatorBlocked, FilterLoaded, OutletBlocked, FanWeak} {
		for _, g := range []GaugeKind{TapGauge, BehindHood, AcrossFilter} {
			if kind := fmt.Sprintf("%s at %d", f, g); seen[kind] == 0 {
				t.Errorf("%s was never seen", kind)
			}
		}
	}
	// a torn filter shows across itself alone
	for _, g := range []GaugeKind{TapGauge, BehindHood, AcrossFan, SpeedGauge} {
		if kind := fmt.Sprintf("%s at %d", FilterTorn, g); seen[kind] != 0 || level[kind] == 0 {
			t.Errorf("%s moved %d times", kind, seen[kind])
		}
	}
}

// atItsHood reports whether a hood's gauge stands behind the hood that is
// blocked: the model then gives the flow that the reading stands for by the
// hood's old coefficient, and the finder the suction.
func atItsHood(c Cause, g Gauge) bool {
	return c.Fault == HoodBlocked && g.Kind == BehindHood && c.Port == g.Port
}

// A reading at its mark excludes nothing; one reading of a tap under its mark
// leaves the machines' side and the collector's, and over its mark names no
// collector. What comes next is another gauge, and it leaves less.
func TestSidesOfOneReading(t *testing.T) {
	k, r := solvedIn(school(t, nil, nil), "Planer", nil)
	f := k.Finder(r)
	tap := Gauge{Kind: TapGauge, Tap: k.Trees[0].shop.Taps[0]}
	if !f.Sharp(tap) || !slices.Contains(f.Gauges, tap) {
		t.Fatalf("the trunk tap is not read: %v", f.Gauges)
	}
	if got := f.Remain(Shown{tap, Level}); len(got) != len(f.Causes) {
		t.Errorf("a reading at its mark leaves %d of %d causes", len(got), len(f.Causes))
	}
	if got := f.Sides(Shown{tap, Below}); !slices.Equal(got, []Side{Upstream, Onward, AtCollector}) {
		t.Errorf("under its mark: sides %v", got)
	}
	// all that shuts stands upstream: no other branch is open
	if got := f.Sides(Shown{tap, Above}); !slices.Equal(got, []Side{Upstream}) {
		t.Errorf("over its mark: sides %v", got)
	}
	for _, s := range []Sign{Above, Below} {
		one := Shown{tap, s}
		next, found := f.Next(one)
		if !found || next == tap {
			t.Errorf("after sign %d: next %v, %v", s, next, found)
			continue
		}
		for _, then := range []Sign{Above, Below} {
			if left := f.Remain(one, Shown{next, then}); len(left) > len(f.Remain(one)) {
				t.Errorf("after a second reading %d causes are left", len(left))
			}
		}
	}
	if _, found := f.Next(Shown{tap, Below}, Shown{Gauge{Kind: AcrossFilter}, Below}, Shown{Gauge{Kind: AcrossFan}, Below}); found {
		t.Error("a weak fan is all that is left, and another reading is asked for")
	}
}

// A bin behind the fan blows dust out and draws nothing in: only one under a
// separator is among the causes.
func TestBinBehindTheFan(t *testing.T) {
	k := Reckon(school(t, nil, nil))
	for _, tree := range k.Trees {
		got := slices.ContainsFunc(tree.Causes(k.Uses[0]), func(c Cause) bool { return c.Fault == BinLeaking })
		if want := tree.Collector.Separator != nil; got != want {
			t.Errorf("%s: %v, want %v", tree.Collector.Name, got, want)
		}
	}
}

// With another branch open, over its mark may be a plug in that one.
func TestBesideRemains(t *testing.T) {
	k, r := solvedIn(school(t, nil, nil), "Planer and jointer", nil)
	f := k.Finder(r)
	for _, g := range f.Gauges {
		if g.Kind != TapGauge || g.Tap.Name != "East tap" {
			continue
		}
		if got := f.Sides(Shown{g, Above}); !f.Sharp(g) || !slices.Equal(got, []Side{Upstream, Beside}) {
			t.Errorf("east tap over its mark: sides %v", got)
		}
	}
}

// A tap at the end of a narrow duct that opens into a wide one tells nothing
// of what lies upstream: its suction there goes with the velocity pressure.
// The finder then names neither side by it.
func TestDullTap(t *testing.T) {
	file := `
[shop]
name = "Dull"
[[collector]]
name = "Fan"
inlet = "12 in"
fan_curve = [["0 cfm", "4 inwg"], ["4000 cfm", "3.9 inwg"]]
[[machine]]
name = "Saw"
kind = "table saw"
port = { size = "4 in", flow = "350 cfm" }
[[duct]]
name = "Pipe"
to = "Fan"
size = "4 in"
length = "60 ft"
serves = ["Saw"]
[[tap]]
name = "Near the end"
on = "Pipe"
at = "59.5 ft"
[[tap]]
name = "By the hood"
on = "Pipe"
at = "1 ft"
`
	s := mustRead(t, file)
	k := Reckon(s)
	f := k.Finder(theResult(t, k, "Saw", NoFilter))
	end, hood := Gauge{Kind: TapGauge, Tap: s.Taps[0]}, Gauge{Kind: TapGauge, Tap: s.Taps[1]}
	if f.Sharp(end) || !f.Sharp(hood) {
		t.Errorf("near the end %v, by the hood %v", f.Sharp(end), f.Sharp(hood))
	}
	for sign, want := range map[Sign][]Side{Above: {Upstream}, Below: {Upstream, Onward, AtCollector}} {
		if got := f.Sides(Shown{end, sign}); !slices.Equal(got, want) {
			t.Errorf("sign %d near the end: sides %v", sign, got)
		}
	}
	if all, over := f.Causes, f.Remain(Shown{end, Above}); !slices.ContainsFunc(over, func(c Cause) bool { return c.Fault == Leaking }) {
		t.Errorf("over its mark near the end excludes a leak: %d of %d causes", len(over), len(all))
	}
	if off := k.Finder(&Result{Collector: s.Collectors[0], Use: k.Uses[0]}); off != nil {
		t.Error("a finder off the curve")
	}
}

// The finder of every use of the school, and the gauge to read after each
// reading.
func BenchmarkFinder(b *testing.B) {
	k := Reckon(school(b, nil, nil))
	for b.Loop() {
		for _, u := range k.Uses {
			for _, r := range u.Results {
				f := k.Finder(r)
				if f == nil {
					continue
				}
				for _, g := range f.Gauges {
					f.Next(Shown{g, Below})
				}
			}
		}
	}
}
