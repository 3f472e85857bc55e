package checks

import (
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var powerCut = &Check{
	ID:    "power-cut",
	Name:  "After a power cut",
	Title: "Does everything stay off when the power comes back, until a person starts it",
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
var restartBasis = []source.Basis{
	{Document: "osha-1910-213", Clause: "(b)(3)", Mark: source.Verified},
	{Document: "wac-296-806", Clause: "20010(2)", Mark: source.Verified},
	{Document: "eu-machinery", Clause: "Annex I, 1.2.3", Mark: source.Verified},
	{Document: "iso-14118", Clause: "scope", Mark: source.Verified},
}

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
	case started && after.V == "starts by itself":
		f.State, f.Weight = NotMet, Mend
		f.Says = "The control starts it again by itself when the power comes back."
		f.Do = `Change the control so that it waits: a trigger counts only after it was seen off. Until then pull its plug or open its disconnect after every power cut.`
	case c.Starter.V == "switch":
		f.State, f.Weight = NotMet, Mend
		f.Says = "It has a plain switch: left on in a power cut, the fan starts again by itself when the power comes back."
		f.Do = "Fit a magnetic starter with start and stop buttons, which drops out and stays out. That is an electrician's work. Until then switch it off at every power cut."
	case relay && !started && after.V != "waits for a person":
		if after.Known() {
			f.State, f.Weight = NotMet, Mend
			f.Says = "Its " + c.Starter.V + " closes again when the power comes back, and the control does not hold it off."
			f.Do = "Change the control so that it waits for a person, or fit a magnetic starter with start and stop buttons."
			break
		}
		return f, false
	case !c.Starter.Known() || started && !after.Known():
		return f, false
	case started:
		f.State = Met
		f.Says = "By the file the control keeps it off when the power comes back, until a trigger was seen off and comes on again."
		f.Do = "Prove it: run it, pull the control's plug and open the disconnect, let it stop, restore both. It has to stay off."
	default:
		f.State = Met
		f.Says = "Its starter drops out in a power cut and stays out."
		if !held(c) {
			f.Says = "By the file the control keeps it off when the power comes back."
		}
		f.Do = "Prove it: run it, open the disconnect, let it stop, close it. It has to stay off."
	}
	return f, true
}

// machineRestarts is the finding about a machine that comes back by itself.
func machineRestarts(m *shop.Machine) Finding {
	return Finding{About: m.Name, Kind: "machine", At: m.At, By: ByTopology, Weight: Mend, Basis: restartBasis, State: NotMet,
		Says: "It starts again by itself when the power comes back. Whoever has a hand near the cutter then is hurt.",
		Do:   "Have a no-volt release or a magnetic starter fitted by an electrician. Until then switch it off at every power cut, before anyone touches it.",
		Asks: "Which no-volt release suits " + m.Name + ", and is it accepted for this machine?"}
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
		parts = append(parts, "whether "+listed(firstFew(machines))+plural(machines, " comes", " come")+" back by "+plural(machines, "itself", "themselves"))
		fields = append(fields, "restarts to the machines")
	}
	if len(starters) > 0 {
		parts = append(parts, "what switches "+listed(firstFew(starters)))
		fields = append(fields, "starter to the collectors")
	}
	if waits {
		parts = append(parts, "what the control does when the power comes back")
		fields = append(fields, "after_power_cut to [control]")
	}
	if len(parts) == 0 {
		return
	}
	f.Says = "Not given: " + listed(parts) + "."
	f.Do = "Add " + listed(fields) + ". The test: run it, pull the power, let it stop, restore the power. It has to stay off."
	report(f)
}

// passive reports whether a machine has nothing that could start: an inlet.
func passive(m *shop.Machine) bool { return m.Kind == "floor sweep" || m.Kind == "open end" }
