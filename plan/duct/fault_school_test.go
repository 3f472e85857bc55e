package duct

import (
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// seed is one fault put into the example school, and what of the finder's
// causes it is.
type seed struct {
	name  string
	use   string
	text  []string         // pieces of the shop file and what stands there instead
	made  func(*shop.Shop) // changes what was read
	gates map[string]bool  // gates that stand otherwise than the use has them
	cause string
	side  Side // seen from the first tap that the use passes
}

// tenFaults are ten faults of the school. Each is a change of the shop or of
// what the solver is given; the readings are the model's own.
var tenFaults = []seed{
	{name: "leak in the trunk", use: "Planer", text: []string{`[[tap]]
name = "Trunk tap"`, `[[leak]]
on = "Trunk"
hole = "4 in"
at = "10 ft"
[[tap]]
name = "Trunk tap"`}, cause: "leaking Trunk at 10 ft", side: Upstream},
	{name: "plug in the planer's drop", use: "Planer", made: func(s *shop.Shop) { duct(s, "Planer drop").Loss += 20 }, cause: "plugged Planer drop at 12 ft", side: Upstream},
	{name: "saw gate left open", use: "Planer", gates: map[string]bool{"Saw gate": true}, cause: "left-open Saw drop", side: Upstream},
	{name: "filter past its change-out mark", use: "Planer", made: func(s *shop.Shop) { s.Collectors[0].Filter.Clean *= 8 }, cause: "filter-loaded Cyclone", side: AtCollector},
	{name: "drum not seated", use: "Planer", text: []string{`[[tap]]
name = "Trunk tap"`, `[[leak]]
on = "Trunk"
hole = "5 in"
[[tap]]
name = "Trunk tap"`}, cause: "bin-leaking Cyclone", side: AtCollector},
	{name: "fan at three quarters of its speed", use: "Planer", made: slowed(0.75), cause: "fan-weak Cyclone", side: AtCollector},
	{name: "planer's hose pushed together", use: "Planer", made: func(s *shop.Shop) { duct(s, "Planer drop").Hose.Times = 80 }, cause: "flattened Planer drop", side: Upstream},
	{name: "planer gate stuck shut", use: "Planer", gates: map[string]bool{"Planer gate": false}, cause: "stuck-shut Planer gate", side: Upstream},
	{name: "hole in the jointer's end", use: "Planer and jointer", text: []string{`[[tap]]
name = "Trunk tap"`, `[[leak]]
on = "Jointer drop"
hole = "6 in"
at = "0 ft"
[[tap]]
name = "Trunk tap"`}, cause: "leaking Jointer drop at 1 ft", side: Upstream},
	{name: "forgotten open inlet of the sweep", use: "Planer", made: func(s *shop.Shop) { duct(s, "Sweep drop").Serves[0].HoodLoss = 0.5 },
		gates: map[string]bool{"Sweep gate": true, "South zone gate": true}, cause: "left-open Sweep drop", side: Upstream},
}

// least is at how many gauges a fault has to show. A hole at an end that the
// use opens anyway shows behind that hood alone.
func (x seed) least() int {
	if strings.HasPrefix(x.cause, "leaking Jointer") {
		return 1
	}
	return 2
}

// The proof of the fault finder: ten faults are put into the model of the
// school; the finder is given the model's readings and names the true cause,
// with one reading and with any two, and after one reading leaves every side
// that a fault with that reading can stand on. The figures are the model's
// own; the logic is held against them, not against readings of a real shop.
func TestTenFaultsAreFound(t *testing.T) {
	sides := map[string][]Side{} // of every reading: where the faults that give it stand
	left := map[string][]Side{}  // and what the finder leaves
	for _, x := range tenFaults {
		base := school(t, nil, nil)
		sound, at := solvedIn(base, x.use, nil)
		finder := sound.Finder(at)
		other := school(t, x.text, x.made)
		k, r := solvedIn(other, x.use, x.gates)
		if !r.OnCurve {
			t.Errorf("%s: off the curve", x.name)
			continue
		}
		var off []Shown
		for _, g := range finder.Gauges {
			mark, value := read(t, sound, base, at, g), read(t, k, other, r, g)
			s := sign(mark, value)
			if s == Level {
				continue
			}
			off = append(off, Shown{g, s})
		}
		if len(off) < x.least() {
			t.Errorf("%s: shows at %d gauges only", x.name, len(off))
		}
		for i, one := range off {
			if !holds(finder.Remain(one), x.cause) {
				t.Errorf("%s: not among the causes of %s", x.name, name(one))
			}
			key := x.use + " " + name(one)
			for _, c := range finder.Causes {
				if c.is(x.cause) && !slices.Contains(sides[key], SideOf(c, one.At)) {
					sides[key] = append(sides[key], SideOf(c, one.At))
				}
			}
			left[key] = finder.Sides(one)
			for _, two := range off[i+1:] {
				if !holds(finder.Remain(one, two), x.cause) {
					t.Errorf("%s: not among the causes of %s and %s", x.name, name(one), name(two))
				}
			}
		}
		first := Gauge{}
		for _, g := range finder.Gauges {
			if g.Kind == TapGauge {
				first = g
				break
			}
		}
		for _, c := range finder.Remain(off...) {
			if c.is(x.cause) && SideOf(c, first) != x.side {
				t.Errorf("%s: on side %d of %s, want %d", x.name, SideOf(c, first), gaugeName(first), x.side)
			}
		}
	}
	for key, stand := range sides {
		for _, s := range stand {
			if !slices.Contains(left[key], s) {
				t.Errorf("%s: side %d is excluded, and a fault stands there", key, s)
			}
		}
	}
}
