package checks

import (
	"fmt"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var airCaptured = &Check{
	ID:    "air-captured",
	Name:  "Air captured",
	Title: "Does every machine get the air it needs, with the filter clean and due for change",
	Needs: "port.flow, collector.fan_curve, collector.filter, duct.serves",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, u := range p.Air.Uses {
			if len(u.Machines) > 0 {
				capture(p, u, report)
			}
		}
	},
}

// capture judges one use by its worst port over all its results.
func capture(p *plan.Plan, u *duct.Use, report func(Finding)) {
	f := about(u)
	f.By = ByModel
	if missing := unserved(u); missing != "" {
		f.State, f.By, f.Weight = NotGiven, ByTopology, Mend
		f.Says = "No duct serves " + missing + "."
		f.Do = "Name the port in a duct's serves, or take the machine out."
		report(f)
		return
	}
	var worst *duct.PortResult
	var where *duct.Result
	share := 0.0
	for _, r := range u.Results {
		if !r.OnCurve {
			f.State, f.Weight = NotMet, Mend
			f.Says = "The air cannot be told: " + r.Why + " (" + filterWords(r.Filter) + ")."
			f.Do = "See the check of the fan's curve."
			report(f)
			return
		}
		for i := range r.Ports {
			at := &r.Ports[i]
			if at.Port.Flow <= 0 {
				continue
			}
			if part := unit.Six(float64(at.Flow / at.Port.Flow)); worst == nil || part < share {
				worst, where, share = at, r, part
			}
		}
	}
	if worst == nil {
		return // nothing is asked of any port
	}
	judgePort(p, &f, where, worst, share)
	report(f)
}

func judgePort(p *plan.Plan, f *Finding, r *duct.Result, worst *duct.PortResult, share float64) {
	units := p.Shop.Units
	got, need := unit.Air.Pair(units, worst.Flow, worst.Port.Flow)
	name := unit.Air.Unit(units)
	limit := float64(worst.Port.Flow)
	f.Figures = []Figure{{Name: worst.Port.Full(), Value: float64(worst.Flow), Unit: "m3/s", Limit: &limit, Basis: worst.Port.Need}}
	f.Basis = []source.Basis{worst.Port.Need}
	f.State, f.Weight = Met, Know
	f.Says = fmt.Sprintf("%s gets %s of the %s %s it needs, %s.", worst.Port.Full(), got, need, name, filterWords(r.Filter))
	f.Do = "Nothing. Prove it with a gauge when the system runs."
	if share < 1 {
		f.State, f.Weight = NotMet, Mend
		f.Do = "Look at this use's sheet for where the pressure goes: a larger pipe, a shorter hose or fewer open gates give the most."
		if worst.Flow == 0 && worst.Port.Duct.Movable() {
			f.Says = fmt.Sprintf("%s gets no air: the hose of %s stands at another machine of this use.", worst.Port.Full(), worst.Port.Duct.Name)
			f.Do = "Run one of the two at a time, or give each its own duct."
		}
	}
	if worst.Weak || r.Claimed && f.State == Met {
		f.State = Thin
		ask := "Put the machine maker's own figure into the file: flow and flow_from."
		if worst.Weak {
			f.Says += " The need is " + worst.Port.Need.Mark.Says() + "."
		} else {
			f.Says += " The fan is only known by its maker's two claims."
			ask = "Ask the maker for the fan curve and put it into the file."
		}
		if share < 1 {
			ask += " " + f.Do
		}
		f.Do = ask
		if share >= farBelow {
			f.Weight = Know
		}
	}
}

// about starts a finding about a use: about the machine where it is one
// machine alone.
func about(u *duct.Use) Finding {
	f := Finding{About: u.Name, Kind: "use"}
	if u.Kind == duct.OneMachine {
		f.Kind, f.At = "machine", u.Machines[0].At
	} else {
		f.At = u.Stated.At
	}
	return f
}

// unserved names the first port of a use that no duct serves.
func unserved(u *duct.Use) string {
	for _, m := range u.Machines {
		for _, p := range m.Ports {
			if p.Duct == nil {
				return p.Full()
			}
		}
	}
	return ""
}

func filterWords(filter string) string {
	switch filter {
	case duct.Clean:
		return "filter clean"
	case duct.ChangeOut:
		return "filter due for change"
	}
	return "no filter"
}
