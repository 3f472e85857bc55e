package checks

import (
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var fanOnCurve = &Check{
	Whom:  Maker,
	ID:    "fan-on-curve",
	Name:  say("check.fan-on-curve.name"),
	Title: say("check.fan-on-curve.title"),
	Needs: "collector.fan_curve or collector.claims, collector.filter, collector.exhaust",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			fanCurve(p, c, report)
		}
	},
}

func fanCurve(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByModel, Basis: ownFile(say("finding-fan-on-curve.given"))}
	unfiltered := duct.FilterOpen(c)
	if open := unsized(p, c); open != "" {
		f.State, f.By, f.Weight = NotGiven, ByGiven, Mend
		f.Sizes = true
		f.Says, f.Do = say("finding-fan-on-curve.sizes.says", open), say("finding-common.sizes.do")
		if unfiltered {
			f.Do = join(say("finding-fan-on-curve.no-filter.do"), f.Do)
		}
		report(f)
		return
	}
	if unfiltered {
		f.State, f.By, f.Weight = NotGiven, ByGiven, Know
		f.Says = say("finding-fan-on-curve.no-filter.says")
		f.Do = say("finding-fan-on-curve.no-filter.do")
		report(f)
		return
	}
	var off, left []string
	var humps []string
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if r.Collector != c || u.Kind == duct.DuctOff {
				continue
			}
			switch {
			case !r.OnCurve:
				off = append(off, say("finding-fan-on-curve.use-why", u.Name, filterWords(r.Filter), english.Because(r.Why)))
			case len(r.Crossings) > 1:
				humps = append(humps, say("finding-fan-on-curve.several-use", u.Name, filterWords(r.Filter), crossings(p, r)))
			case r.LeftOfPeak && len(u.Machines) > 0:
				left = append(left, say("finding-fan-on-curve.use", u.Name, filterWords(r.Filter)))
			}
		}
	}
	switch {
	case len(off) > 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-fan-on-curve.off.says", firstFour(off))
		f.Do = say("finding-fan-on-curve.off.do")
		if len(humps) > 0 {
			f.Says = join(f.Says, say("finding-fan-on-curve.several.says", strings.Join(humps, "; ")))
			f.Do = join(f.Do, say("finding-fan-on-curve.several.do"))
		}
	case len(humps) > 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-fan-on-curve.several.says", strings.Join(humps, "; "))
		f.Do = say("finding-fan-on-curve.several.do")
	case len(left) > 0:
		f.State, f.Weight = NotMet, Know
		f.Says = say("finding-fan-on-curve.left.says", firstFour(left))
		f.Do = say("finding-fan-on-curve.left.do")
	case len(c.Curve) == 0:
		f.State, f.Weight = Thin, Know
		f.Says = say("finding-fan-on-curve.claims.says")
		f.Do = say("finding-common.ask-curve.do")
	default:
		f.State, f.Weight = Met, Know
		f.Says = say("finding-fan-on-curve.met.says")
		f.Do = say("finding-fan-on-curve.met.do")
	}
	report(f)
}

func crossings(p *plan.Plan, r *duct.Result) string {
	var list []string
	for _, c := range r.Crossings {
		key := "finding-fan-on-curve.stable"
		if !c.Stable {
			key = "finding-fan-on-curve.unstable"
		}
		list = append(list, say(key, unit.Air.Print(p.Shop.Units, c.Flow)))
	}
	return strings.Join(list, ", ")
}

// firstFour joins up to four things and says how many more there are.
func firstFour(list []string) string {
	const most = 4
	if len(list) > most {
		return say("finding-common.list-and-more", strings.Join(list[:most], "; "), strconv.Itoa(len(list)-most))
	}
	return strings.Join(list, "; ")
}

var motorPower = &Check{
	Whom:  Electrician,
	ID:    "motor-power",
	Name:  say("check.motor-power.name"),
	Title: say("check.motor-power.title"),
	Needs: "collector.motor, collector.fan_power or collector.efficiency, shop.coldest",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, load := range p.Air.Loads {
			report(motorLoad(p, load))
		}
	},
}

func motorLoad(p *plan.Plan, load duct.Load) Finding {
	c := load.Collector
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByGiven, Weight: Know}
	if !load.Known {
		f.State = NotGiven
		f.Says, f.Do = say("finding-motor-power.no-motor.says"), say("finding-motor-power.no-motor.do")
		if c.Motor != nil {
			f.Says, f.Do = say("finding-motor-power.no-power.says"), say("finding-motor-power.no-power.do")
		}
		return f
	}
	units := p.Shop.Units
	worst, at, key := load.Greatest, load.At, "finding-motor-power.most.says"
	if load.DuctOffKnown && load.DuctOff > worst {
		worst, at, key = load.DuctOff, load.DuctOffFlow, "finding-motor-power.most-ducts-off.says"
	}
	got, limit := unit.Shaft.Pair(units, worst, load.Rated)
	rated := float64(load.Rated)
	f.Figures = []Figure{{Name: say("finding-motor-power.shaft-power"), Value: float64(worst), Unit: "W", Limit: &rated, Basis: given(say("finding-motor-power.rated.given"))}}
	f.Basis = ownFile(say("finding-motor-power.given"))
	f.Says = say(key, got, limit, unit.Shaft.Unit(units), unit.Air.Print(units, at))
	if unit.AtLeast(float64(load.Rated), float64(worst)) {
		f.State = Met
		f.Do = say("finding-motor-power.met.do")
		return f
	}
	f.State, f.Weight = NotMet, Mend
	f.Do = say("finding-motor-power.over.do")
	f.Asks = say("finding-motor-power.over.asks", c.Name, got, unit.Shaft.Unit(units), limit)
	return f
}
