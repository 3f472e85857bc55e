package checks

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/export"
	"dustbook/plan/unit"
)

// ahead solves the bands that the checks ask for: of every result of a use of
// machines.
func ahead(p *plan.Plan) {
	var list []*duct.Result
	for _, u := range p.Air.Uses {
		if len(u.Machines) > 0 {
			list = append(list, u.Results...)
		}
	}
	export.Bands(p, list)
}

// likely holds a need against a band. Where too many of the solves leave the
// curve there is no band: what falls short by itself still does, what is
// enough by itself is not sure.
func likely(b duct.Range, need, share float64) duct.Likely {
	switch found := b.Judge(need); {
	case found != duct.Unknown:
		return found
	case share < 1:
		return duct.Hardly
	}
	return duct.Thinly
}

// worse reports whether one thing stands worse to its need than another.
func worse(a duct.Likely, share float64, b duct.Likely, other float64) bool {
	return a > b || a == b && share < other
}

// bandWords give the ends of a band; without one, that there is none.
func bandWords[Q unit.Measure](p *plan.Plan, scale unit.Scale[Q], b duct.Range) string {
	if b == (duct.Range{}) {
		return say("finding-common.no-band.says")
	}
	units := p.Shop.Units
	low, high := scale.Pair(units, Q(b.Low), Q(b.High))
	return say("finding-common.band.says", low, high, scale.Unit(units))
}

// measureIt says what to do where a need is not surely met: measure, or first
// get the rest of the fan's curve where that is why.
func measureIt(b duct.Range, key string) string {
	if b == (duct.Range{}) {
		return say("finding-common.no-band.do")
	}
	return say(key)
}

// banded is a figure, and the ends of its band where it has one.
func banded(f Figure, b duct.Range) []Figure {
	list := []Figure{f}
	if b != (duct.Range{}) {
		list = append(list,
			Figure{Name: say("finding-common.band.low", f.Name), Value: b.Low, Unit: f.Unit},
			Figure{Name: say("finding-common.band.high", f.Name), Value: b.High, Unit: f.Unit})
	}
	return list
}
