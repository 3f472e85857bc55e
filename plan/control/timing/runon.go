package timing

import (
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// RunOn is how long a fan has to run on after a trigger has let go.
type RunOn struct {
	Floor    unit.Time // by practice, whatever the duct
	Transit  *Transit  // of the path that takes longest; nil where none is known
	Clear    Span      // several times that transit, fair and cautious
	Coast    shop.Field[unit.Time]
	Least    unit.Time // the longest of the three, of what is known
	Cautious unit.Time // the same with the cautious speed of chips
	Missing  []Missing
	Unsolved []*shop.Port // ports on its ways whose air no use could tell
	Set      shop.Field[unit.Time]
	Used     unit.Time
	Verdict  Verdict
}

// runOnOf reckons the least run-on of a trigger: the longest of what practice
// asks, twice the transit of the longest open path, and the coast of its
// machine. A switch that belongs to no machine has no coast to wait for.
func runOnOf(a *control.Answer, paths []Path) RunOn {
	r := RunOn{Set: a.Trigger.RunOn, Floor: seconds("run-on least")}
	for _, w := range a.Ways {
		longest := longestOf(w.Port, a.Trigger.Starts, paths)
		switch {
		case longest == nil:
			r.Unsolved = append(r.Unsolved, w.Port)
		case r.Transit == nil || longest.Fair > r.Transit.Fair:
			r.Transit = longest
		}
	}
	if r.Transit != nil {
		times := share("transits of run-on")
		r.Clear = Span{unit.SixOf(unit.Time(times) * r.Transit.Fair), unit.SixOf(unit.Time(times) * r.Transit.Cautious)}
	}
	if m := a.Trigger.Machine; m != nil {
		if r.Coast = m.Coast; !m.Coast.Known() {
			r.Missing = append(r.Missing, Missing{m.Name, "machine.coast"})
		}
	}
	r.Least = max(r.Floor, r.Clear.Least, r.Coast.V)
	r.Cautious = max(r.Floor, r.Clear.Most, r.Coast.V)
	r.Used = used(r.Set, r.Least)
	r.Verdict = hold(r.Set, r.Least, r.Cautious, len(r.Missing)+len(r.Unsolved) == 0)
	if len(a.Trigger.Starts) == 0 {
		r.Verdict = NoFan
	}
	return r
}

// longestOf is the slowest transit of a port to one of the collectors, over
// every use and state of the filter; nil where none is known.
func longestOf(p *shop.Port, to []*shop.Collector, paths []Path) *Transit {
	var longest *Transit
	for _, path := range paths {
		if path.Port != p || !slices.Contains(to, path.Collector) {
			continue
		}
		if t, known := TransitOf(path); known && (longest == nil || t.Fair > longest.Fair) {
			longest = &t
		}
	}
	return longest
}
