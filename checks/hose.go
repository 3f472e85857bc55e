package checks

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

var sharedHose = &Check{
	ID:    "shared-hose",
	Name:  "Hose that is moved",
	Title: "Is a movable end asked for by one machine at a time, in every use and by every trigger",
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
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByTopology, Weight: Know, Basis: ownFile("the ports it serves, the uses and triggers")}
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
		f.Says = "Its hose is asked for twice in " + listed(firstFew(uses)) + ": it can stand at one of " + listed(ports) + ", and the other gets no air."
		f.Do = "Run one of them at a time, or give each a duct of its own."
	case len(machines) > 1:
		f.State = NotMet
		f.Says = "The triggers " + listed(triggers) + " answer for one hose: none of them can know at which machine it stands."
		f.Do = "Run one machine at a time, and put the hose on it before it starts: the card says so. A duct for each would settle it."
	default:
		f.State = Met
		f.Says = "Every use and trigger asks for its hose once."
		f.Do = "Put the hose on the machine before it starts: the card says so."
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
