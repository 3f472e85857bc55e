package checks

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var gateStops = &Check{
	ID:    "gate-stops",
	Name:  say("check.gate-stops.name"),
	Title: say("check.gate-stops.title"),
	Needs: "gate.open_stop, gate.shut_stop",
	Run: func(p *plan.Plan, report func(Finding)) {
		var missing []*shop.Gate
		for _, g := range p.Control.Powered() {
			if g.OpenStop.Known() && g.ShutStop.Known() {
				report(stopsOfGate(p, g))
			} else {
				missing = append(missing, g)
			}
		}
		if len(missing) > 0 {
			names := gateNames(missing)
			report(Finding{At: missing[0].At, State: NotGiven, By: ByGiven, Weight: Know, Basis: ownFile(say("finding-gate-stops.given")),
				Says: sayOf(len(names), "finding-gate-stops.missing.says", listed(firstFew(names))), Do: say("finding-gate-stops.missing.do")})
		}
	},
}

// stopsOfGate judges the two stops of one gate, as far as they can be read:
// lengths are how far the slide stands open; of any other mark only that the
// two differ.
func stopsOfGate(p *plan.Plan, g *shop.Gate) Finding {
	f := Finding{About: g.Name, Kind: "gate", At: g.ShutStop.At, By: ByGiven, Weight: Mend, State: NotMet, Basis: ownFile(say("finding-gate-stops.given"))}
	open, openIs := stopAsLength(g.OpenStop.V)
	shut, shutIs := stopAsLength(g.ShutStop.V)
	tolerance, basis := control.BoreTolerance()
	switch {
	case strings.TrimSpace(g.OpenStop.V) == strings.TrimSpace(g.ShutStop.V):
		f.Says, f.Do = say("finding-gate-stops.same.says", g.OpenStop.V), say("finding-gate-stops.same.do")
	case !openIs || !shutIs:
		f.State, f.Weight = Met, Know
		f.Says, f.Do = say("finding-gate-stops.marks.says", g.OpenStop.V, g.ShutStop.V), say("finding-gate-stops.met.do")
	case unit.Six(float64(shut)) >= unit.Six(float64(open)):
		f.Says, f.Do = say("finding-gate-stops.beyond.says", g.ShutStop.V, g.OpenStop.V), say("finding-gate-stops.beyond.do")
	case unit.Six(float64(open)) < unit.Six(float64(g.On.Bore-tolerance)) && g.On.Bore > 0:
		f.At, f.Basis = g.OpenStop.At, append(f.Basis, basis)
		f.Says, f.Do = say("finding-gate-stops.short.says", g.OpenStop.V, unit.Size.Print(p.Shop.Units, g.On.Bore), g.On.Name), say("finding-gate-stops.short.do")
	default:
		f.State, f.Weight = Met, Know
		f.Says, f.Do = say("finding-gate-stops.met.says", g.ShutStop.V, g.OpenStop.V), say("finding-gate-stops.met.do")
	}
	return f
}

// stopAsLength reads a stop that is marked as a length.
func stopAsLength(text string) (unit.Length, bool) {
	long, err := unit.Read[unit.Length](text)
	return long, err == nil
}
