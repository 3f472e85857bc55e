package checks

import (
	"fmt"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var dustCarried = &Check{
	ID:    "dust-carried",
	Name:  "Dust carried",
	Title: "Does the air carry the dust all the way, in every stretch and hose",
	Needs: "duct.size, duct.route, machine.transport, collector.fan_curve",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, u := range p.Air.Uses {
			if len(u.Machines) > 0 {
				carry(p, u, report)
			}
		}
	},
}

// carry judges one use by its slowest stretch or hose over all its results.
func carry(p *plan.Plan, u *duct.Use, report func(Finding)) {
	f := about(u)
	f.By = ByModel
	if missing := unserved(u); missing != "" {
		f.State, f.By, f.Weight = NotGiven, ByTopology, Mend
		f.Says = "No duct serves " + missing + ", so nothing carries its dust."
		f.Do = "Name the port in a duct's serves, or take the machine out."
		report(f)
		return
	}
	var worst *duct.StretchResult
	var where *duct.Result
	share := 0.0
	for _, r := range u.Results {
		if !r.OnCurve {
			return // the check of the air says so already
		}
		if at, part := r.Slowest(); at != nil && (worst == nil || part < share) {
			worst, where, share = at, r, part
		}
	}
	if worst == nil {
		return
	}
	judgeStretch(p, &f, where, worst, share)
	report(f)
}

func judgeStretch(p *plan.Plan, f *Finding, r *duct.Result, worst *duct.StretchResult, share float64) {
	units := p.Shop.Units
	speed, need := unit.Speed.Pair(units, worst.Slower(), worst.Transport)
	where := worst.Stretch.Name()
	if worst.Slower() < worst.Velocity {
		where = "The hose of " + where
	}
	limit := float64(worst.Transport)
	f.Figures = []Figure{{Name: where, Value: float64(worst.Slower()), Unit: "m/s", Limit: &limit, Basis: worst.Basis}}
	f.Basis = []source.Basis{worst.Basis}
	f.State, f.Weight = Met, Know
	f.Says = fmt.Sprintf("The slowest stretch on the way is %s: %s %s where its dust needs %s, %s.", lowerThe(where), speed, unit.Speed.Unit(units), need, filterWords(r.Filter))
	f.Do = "Nothing. Look through the clean-outs after the first month."
	if share < 1 {
		f.State, f.Weight = NotMet, Know
		f.Says = fmt.Sprintf("%s runs at %s of the %s %s its dust needs, %s: dust settles there.", where, speed, need, unit.Speed.Unit(units), filterWords(r.Filter))
		f.Do = "Open another gate with it so that more air runs through, or make this stretch smaller."
		if share < farBelow {
			f.Weight = Mend
		}
	} else if r.Claimed {
		f.State = Thin
		f.Says += " The fan is only known by its maker's two claims."
		f.Do = "Ask the maker for the fan curve and put it into the file."
	}
}

func lowerThe(where string) string {
	if len(where) > 4 && where[:4] == "The " {
		return "the " + where[4:]
	}
	return where
}
