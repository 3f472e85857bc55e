package checks

import (
	"fmt"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var fanOnCurve = &Check{
	ID:    "fan-on-curve",
	Name:  "Fan on its curve",
	Title: "Does the fan stay on its curve in every use, with the filter clean and due for change",
	Needs: "collector.fan_curve or collector.claims, collector.filter, collector.exhaust",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			fanCurve(p, c, report)
		}
	},
}

func fanCurve(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByModel, Basis: []source.Basis{{Mark: source.Given, Clause: "fan curve"}}}
	if c.Filter == nil && c.Exhaust.V != "outside" {
		f.State, f.By, f.Weight = NotGiven, ByGiven, Know
		f.Says = "The filter's pressure is not given, so the fan was reckoned without it."
		f.Do = `Add filter = { clean = "…", change = "…", at = "…" }, or exhaust = "outside" if there is none.`
		report(f)
		return
	}
	var off, left []string
	var humps *duct.Result
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if r.Collector != c || u.Kind == duct.DuctOff {
				continue
			}
			switch {
			case !r.OnCurve:
				off = append(off, u.Name+" ("+filterWords(r.Filter)+": "+r.Why+")")
			case len(r.Crossings) > 1:
				humps = r
			case r.LeftOfPeak && len(u.Machines) > 0:
				left = append(left, u.Name+" ("+filterWords(r.Filter)+")")
			}
		}
	}
	switch {
	case len(off) > 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = "Off the curve, so no figure is given: " + sentenceList(off) + "."
		f.Do = "Ask the maker for more of the curve, or change what is open in that use."
	case humps != nil:
		f.State, f.Weight = NotMet, Mend
		f.Says = fmt.Sprintf("In %s the fan can settle at several flows: %s. The stable one of least flow is reckoned with.", humps.Use.Name, crossings(p, humps))
		f.Do = "Keep the fan out of the hump: open another gate in that use, or ask the maker where the fan surges."
	case len(left) > 0:
		f.State, f.Weight = NotMet, Know
		f.Says = "Left of the highest point of its curve, where a fan may surge: " + sentenceList(left) + "."
		f.Do = "Listen for pulsing at that use; open another gate if it comes."
	case len(c.Curve) == 0:
		f.State, f.Weight = Thin, Know
		f.Says = "There is no curve: a parabola through the maker's two claims stands in for it, and no verdict is better than thin."
		f.Do = "Ask the maker for the fan curve and put it into the file."
	default:
		f.State, f.Weight = Met, Know
		f.Says = "Every use crosses the curve between its first and its last point."
		f.Do = "Nothing."
	}
	report(f)
}

func crossings(p *plan.Plan, r *duct.Result) string {
	var list []string
	for _, c := range r.Crossings {
		word := "stable"
		if !c.Stable {
			word = "unstable"
		}
		list = append(list, unit.Air.Print(p.Shop.Units, c.Flow)+" ("+word+")")
	}
	return strings.Join(list, ", ")
}

// sentenceList joins up to four things and says how many more there are.
func sentenceList(list []string) string {
	const most = 4
	if len(list) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(list[:most], "; "), len(list)-most)
	}
	return strings.Join(list, "; ")
}

var motorPower = &Check{
	ID:    "motor-power",
	Name:  "Motor power",
	Title: "Can the fan's motor carry the fan anywhere on its curve, and with the ducts off",
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
		missing := "motor"
		if c.Motor != nil {
			missing = "fan_power or efficiency"
		}
		f.Says = "The load on the motor cannot be told: " + missing + " is not given."
		f.Do = "Add " + missing + " from the label or the maker's sheet. Until then read the amps at first start with the widest set of gates open."
		return f
	}
	units := p.Shop.Units
	worst, at, where := load.Greatest, load.At, "at"
	if load.DuctOffKnown && load.DuctOff > worst {
		worst, at, where = load.DuctOff, load.DuctOffFlow, "with the ducts off, at"
	}
	got, limit := unit.Shaft.Pair(units, worst, load.Rated)
	rated := float64(load.Rated)
	f.Figures = []Figure{{Name: "shaft power", Value: float64(worst), Unit: "W", Limit: &rated, Basis: source.Basis{Mark: source.Given, Clause: "motor nameplate"}}}
	f.Basis = []source.Basis{{Mark: source.Given, Clause: "fan power and motor nameplate"}}
	f.Says = fmt.Sprintf("The fan asks for at most %s of the motor's %s %s, %s %s in the coldest air.", got, limit, unit.Shaft.Unit(units), where, unit.Air.Print(units, at))
	if unit.AtLeast(float64(load.Rated), float64(worst)) {
		f.State = Met
		f.Do = "Read the amps at first start all the same."
		return f
	}
	f.State, f.Weight = NotMet, Mend
	f.Do = "Never run it with the ducts off or wide open. Ask an electrician whether the motor's overload protects it there, or fit a larger motor."
	f.Asks = fmt.Sprintf("The fan of %s can ask for %s %s; the motor is good for %s with its service factor. Is its overload set so that it trips first?", c.Name, got, unit.Shaft.Unit(units), limit)
	return f
}
