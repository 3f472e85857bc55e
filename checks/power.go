package checks

import (
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

var powerCut = &Check{
	Whom:  Electrician,
	ID:    "power-cut",
	Name:  say("check.power-cut.name"),
	Title: say("check.power-cut.title"),
	Needs: "control.after_power_cut, collector.starter, trigger.starts, machine.restarts",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := restartOf(p, c); told {
				report(f)
			}
		}
		for _, m := range p.Shop.Machines {
			if m.Restarts.V {
				report(machineRestarts(m))
			}
		}
		restartNotGiven(p, report)
	},
}

// restartBasis are the texts on a restart when power returns.
var restartBasis = basesOf("power-cut")

// held reports whether a starter lets go when the power fails and needs a
// person to take it in again.
func held(c *shop.Collector) bool { return c.Starter.V == "magnetic, three-wire" }

// restartOf judges one collector; not told where an input is missing, which
// one finding for the whole shop says.
func restartOf(p *plan.Plan, c *shop.Collector) (f Finding, told bool) {
	f = Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Know, Basis: restartBasis}
	started, after := p.Control.Started(c), p.Shop.Control.AfterPowerCut
	relay := c.Starter.V == "two-wire relay" || c.Starter.V == "plug-in relay"
	switch {
	case started && p.Control.RestartsByItself():
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-power-cut.by-itself.says")
		f.Do = say("finding-power-cut.by-itself.do")
	case c.Starter.V == "switch":
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-power-cut.switch.says")
		f.Do = say("finding-power-cut.switch.do")
	case relay && !started && after.V != "waits for a person":
		if after.Known() {
			f.State, f.Weight = NotMet, Mend
			f.Says = say("finding-power-cut.relay.says", c.Starter.V)
			f.Do = say("finding-power-cut.relay.do")
			break
		}
		return f, false
	case !c.Starter.Known() || started && !after.Known():
		return f, false
	case started:
		f.State = Met
		f.Says = say("finding-power-cut.waits.says")
		f.Do = say("finding-power-cut.waits.do")
	default:
		f.State = Met
		f.Says = say("finding-power-cut.drops-out.says")
		if !held(c) {
			f.Says = say("finding-power-cut.held.says")
		}
		f.Do = say("finding-power-cut.stays-off.do")
	}
	return f, true
}

// machineRestarts is the finding about a machine that comes back by itself.
func machineRestarts(m *shop.Machine) Finding {
	return Finding{About: m.Name, Kind: "machine", At: m.At, By: ByTopology, Weight: Mend, Basis: restartBasis, State: NotMet,
		Says: say("finding-power-cut.machine.says"), Do: say("finding-power-cut.machine.do"), Asks: say("finding-power-cut.machine.asks", m.Name)}
}

// restartNotGiven is one finding for all that the file does not say.
func restartNotGiven(p *plan.Plan, report func(Finding)) {
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know, Basis: restartBasis}
	note := func(at entry.Place) {
		if !f.At.Known() {
			f.At = at
		}
	}
	var machines, starters, fields []string
	for _, m := range p.Shop.Machines {
		if !m.Restarts.Known() && !passive(m) {
			machines = append(machines, m.Name)
			note(m.At)
		}
	}
	waits := false
	for _, c := range p.Shop.Collectors {
		if _, told := restartOf(p, c); told {
			continue
		}
		note(c.At)
		if !c.Starter.Known() {
			starters = append(starters, c.Name)
		} else {
			waits = true
		}
		waits = waits || p.Control.Started(c) && !p.Shop.Control.AfterPowerCut.Known()
	}
	var parts []string
	if len(machines) > 0 {
		parts = append(parts, sayOf(len(machines), "finding-power-cut.comes-back", listed(firstFew(machines))))
		fields = append(fields, say("finding-power-cut.restarts.field"))
	}
	if len(starters) > 0 {
		parts = append(parts, say("finding-power-cut.switched-by", listed(firstFew(starters))))
		fields = append(fields, say("finding-power-cut.starter.field"))
	}
	if waits {
		parts = append(parts, say("finding-power-cut.control"))
		fields = append(fields, say("finding-power-cut.control.field"))
	}
	if len(parts) == 0 {
		return
	}
	f.Says = say("finding-power-cut.not-given.says", listed(parts))
	f.Do = say("finding-power-cut.not-given.do", listed(fields))
	report(f)
}

// passive reports whether a machine has nothing that could start: an inlet.
func passive(m *shop.Machine) bool { return m.Kind == "floor sweep" || m.Kind == "open end" }
