package checks

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

var sharedHose = &Check{
	ID:    "shared-hose",
	Name:  say("check.shared-hose.name"),
	Title: say("check.shared-hose.title"),
	Needs: "duct.serves, use.machines, trigger.machine",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, d := range p.Shop.Ducts {
			if d.Movable() {
				report(moved(p, d))
			}
		}
	},
}

// moved judges one movable end.
func moved(p *plan.Plan, d *shop.Duct) Finding {
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByTopology, Weight: Know, Basis: ownFile(say("finding-shared-hose.given"))}
	var ports []string
	for _, port := range d.Serves {
		ports = append(ports, port.Full())
	}
	var uses []string
	for _, u := range p.Air.Uses {
		if (u.Kind == duct.OneMachine || u.Kind == duct.Together) && asked(u.Machines, d) > 1 {
			uses = append(uses, u.Name)
		}
	}
	var triggers []string
	machines := map[*shop.Machine]bool{}
	for _, t := range p.Shop.Triggers {
		if t.Machine != nil && asked([]*shop.Machine{t.Machine}, d) > 0 {
			triggers = append(triggers, t.Name)
			machines[t.Machine] = true
		}
	}
	switch {
	case len(uses) > 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-shared-hose.twice.says", listed(firstFew(uses)), listed(ports))
		f.Do = say("finding-shared-hose.twice.do")
	case len(machines) > 1:
		f.State = NotMet
		f.Says = say("finding-shared-hose.triggers.says", listed(triggers))
		f.Do = say("finding-shared-hose.triggers.do")
	default:
		f.State = Met
		f.Says = say("finding-shared-hose.met.says")
		f.Do = say("finding-shared-hose.met.do")
	}
	return f
}

// asked counts how often machines ask for a duct's end.
func asked(machines []*shop.Machine, d *shop.Duct) int {
	n := 0
	for _, m := range machines {
		for _, port := range m.Ports {
			if port.Duct == d {
				n++
			}
		}
	}
	return n
}
