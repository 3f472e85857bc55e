package checks

import (
	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var blowBack = &Check{
	ID:    "blow-back",
	Name:  "Blow-back",
	Title: "Can a machine with a blower of its own blow against a shut gate",
	Needs: "machine.blower, gate.drive, trigger.machine, trigger.opens",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, b := range p.Control.Blows {
			report(blow(p, b))
		}
		if p.Control.Given {
			blowerNotGiven(p, report)
		}
	},
}

// blow judges one port of a machine with a blower of its own.
func blow(p *plan.Plan, b *control.Blow) Finding {
	m := b.Port.Machine
	f := Finding{About: m.Name, Kind: "machine", At: m.At, By: ByTopology, Weight: Know, Basis: ownFile("the blower, gates and triggers named there")}
	if b.Gate == nil {
		f.State = Met
		f.Says = "It has a blower of its own, and no gate stands in the way of its air."
		f.Do = "Start the collector first all the same: with the fan off its air comes out wherever a gate is open."
		return f
	}
	gate := b.Gate.Name
	switch b.Why {
	case control.Unopened:
		f.State, f.Weight = NotMet, Mend
		f.Says = "It has a blower of its own, and " + gate + " can be shut while it runs: no trigger of this machine opens it. " + comesOut(b)
		f.Do = "Let the machine's trigger open " + gate + ". Until then open it by hand before the machine starts."
	case control.HandShut:
		f.State = NotMet
		f.Says = "It has a blower of its own, and " + gate + " may be shut while it runs: a person opens it. " + comesOut(b)
		f.Do = "Open " + gate + " and start the collector before the machine, every time. A gate that follows the machine would settle it."
	case control.ShutUnsaid:
		f.State = NotGiven
		f.Says = "It has a blower of its own, and what moves " + gate + " is not given."
		f.Do = `Add drive = "powered" or "hand" to the gate.`
	case control.Travels:
		f.State = Met
		f.Says = "It has a blower of its own, and its own trigger opens " + gate + ". Until the gate is open" + travel(p, b.Gate) + " it blows against it."
		f.Do = "Watch the ports at the first start. Where dust comes out, open the gate by a switch before the machine starts."
	default:
		f.State = Met
		f.Says = "It has a blower of its own, and a switch opens " + gate + " before it starts."
		f.Do = "Press first, then start: the card says so."
	}
	return f
}

// travel is the time that a gate takes, where it is given.
func travel(p *plan.Plan, g *shop.Gate) string {
	if !g.Travel.Known() {
		return ""
	}
	return ", " + unit.Seconds.Print(p.Shop.Units, g.Travel.V) + " or more,"
}

// comesOut says where blown air can come out.
func comesOut(b *control.Blow) string {
	var open, gated []string
	for _, o := range b.Out {
		if len(o.Gates) == 0 {
			open = append(open, o.Port.Full())
		} else {
			gated = append(gated, o.Port.Full())
		}
	}
	text := "Its air could come out at the machine itself"
	if len(open) > 0 {
		text += " and at " + listed(unique(open))
	}
	if len(gated) > 0 {
		text += ", and where a gate is open at " + listed(unique(gated))
	}
	return text + "."
}

// blowerNotGiven asks once for all machines behind a gate that throw chips and
// of which the file does not say whether they blow: a blower that is built in
// is made to move chips.
func blowerNotGiven(p *plan.Plan, report func(Finding)) {
	var names []string
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know}
	for _, m := range p.Shop.Machines {
		if m.Blower.Known() || m.Waste != "chips" || !behindGate(m) {
			continue
		}
		if len(names) == 0 {
			f.At = m.At
		}
		names = append(names, m.Name)
	}
	if len(names) == 0 {
		return
	}
	f.Says = "Whether " + listed(firstFew(names)) + plural(names, " has", " have") + " a blower of " + plural(names, "its", "their") + " own is not given."
	f.Do = "Add blower = true or false to the machine. Planers and moulders often have one."
	report(f)
}

// behindGate reports whether a gate stands between a machine and its
// collector.
func behindGate(m *shop.Machine) bool {
	for _, port := range m.Ports {
		for _, s := range port.Path() {
			if len(s.Gates) > 0 {
				return true
			}
		}
	}
	return false
}
