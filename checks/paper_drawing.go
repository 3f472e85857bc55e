package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/shop"
)

var drawingComplete = &Check{
	ID:    "drawing-complete",
	Name:  say("check.drawing-complete.name"),
	Title: say("check.drawing-complete.title"),
	Needs: "duct.route, machine.at, collector.at, tap.on, duct.serves, shop.setting, shop.employees, shop.pupils",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if len(served(p, c)) > 0 {
				report(drawnUp(p, c))
			}
		}
	},
}

// drawingBasis are the texts that say what a drawing shows.
var drawingBasis = basesOf("drawing-complete")

// drawnUp judges the drawing of one collector's system: every duct and thing is on
// it, and so is a test point on every main.
func drawnUp(p *plan.Plan, c *shop.Collector) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Basis: drawingBasis, Weight: Know}
	if ducts, things := undrawn(p.Shop, c); len(ducts)+len(things) > 0 {
		f.State = NotGiven
		var says, do string
		if len(ducts) > 0 {
			says, do = sayOf(len(ducts), "finding-drawing-complete.no-route.says", listed(firstFew(ducts))), say("finding-drawing-complete.no-route.do")
		}
		if len(things) > 0 {
			says = join(says, sayOf(len(things), "finding-drawing-complete.no-place.says", listed(firstFew(things))))
			do = join(do, say("finding-drawing-complete.no-place.do"))
		}
		f.Says, f.Do = says, do
		return f
	}
	bare := untapped(p.Shop, c)
	if len(bare) == 0 {
		f.State = Met
		f.Says, f.Do = say("finding-drawing-complete.met.says"), say("finding-drawing-complete.met.do")
		return f
	}
	f.State, f.Weight = NotMet, Mend
	if people, known := peopleEmployedOrTaught(p.Shop); known && !people {
		f.State, f.Weight = Advice, Know
	}
	f.Says, f.Do = sayOf(len(bare), "finding-drawing-complete.no-tap.says", listed(firstFew(bare))), say("finding-drawing-complete.no-tap.do")
	return f
}

// untapped names the mains of a collector without a tap: the ducts that carry the
// air of more than one machine.
func untapped(s *shop.Shop, c *shop.Collector) []string {
	var names []string
	for _, d := range s.Ducts {
		tapped := slices.ContainsFunc(s.Taps, func(t *shop.Tap) bool { return t.On == d })
		if d.Collector == c && !tapped && len(machinesOf(d)) > 1 {
			names = append(names, d.Name)
		}
	}
	return names
}

// machinesOf are the machines whose air a duct carries. A movable end counts as
// one of them: it stands at one machine at a time.
func machinesOf(d *shop.Duct) []*shop.Machine {
	var list []*shop.Machine
	if len(d.Serves) > 0 {
		list = append(list, d.Serves[0].Machine)
	}
	for _, joined := range d.Joined {
		for _, m := range machinesOf(joined) {
			if !slices.Contains(list, m) {
				list = append(list, m)
			}
		}
	}
	return list
}
