package checks

import (
	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var blowBack = &Check{
	ID:    "blow-back",
	Name:  say("check.blow-back.name"),
	Title: say("check.blow-back.title"),
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
	f := Finding{About: m.Name, Kind: "machine", At: m.At, By: ByTopology, Weight: Know, Basis: ownFile(say("finding-blow-back.given"))}
	if b.Gate == nil {
		f.State = Met
		f.Says = say("finding-blow-back.no-gate.says")
		f.Do = say("finding-blow-back.no-gate.do")
		return f
	}
	gate := b.Gate.Name
	switch b.Why {
	case control.Unopened:
		f.State, f.Weight = NotMet, Mend
		f.Says = join(say("finding-blow-back.unopened.says", gate), comesOut(b))
		f.Do = say("finding-blow-back.unopened.do", gate)
	case control.HandShut:
		f.State = NotMet
		f.Says = join(say("finding-blow-back.by-hand.says", gate), comesOut(b))
		f.Do = say("finding-blow-back.by-hand.do", gate)
	case control.ShutUnsaid:
		f.State = NotGiven
		f.Says = say("finding-blow-back.no-drive.says", gate)
		f.Do = say("finding-common.drive.do")
	case control.Travels:
		f.State = Met
		f.Says = say("finding-blow-back.travels.says", gate)
		if b.Gate.Travel.Known() {
			f.Says = say("finding-blow-back.travels-time.says", gate, unit.Seconds.Print(p.Shop.Units, b.Gate.Travel.V))
		}
		f.Do = say("finding-blow-back.travels.do")
	default:
		f.State = Met
		f.Says = say("finding-blow-back.switch.says", gate)
		f.Do = say("finding-blow-back.switch.do")
	}
	return f
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
	key := "finding-blow-back.out-open-gated"
	switch {
	case len(open)+len(gated) == 0:
		key = "finding-blow-back.out"
	case len(gated) == 0:
		key = "finding-blow-back.out-open"
	case len(open) == 0:
		key = "finding-blow-back.out-gated"
	}
	return say(key, listed(unique(open)), listed(unique(gated)))
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
	f.Says = sayOf(len(names), "finding-blow-back.no-blower.says", listed(firstFew(names)))
	f.Do = say("finding-blow-back.no-blower.do")
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
