package checks

import (
	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/shop"
)

var triggerPath = &Check{
	ID:    "trigger-path",
	Name:  "Path that a trigger opens",
	Title: "Does every trigger open a whole path from its machine to the collector it starts",
	Needs: "trigger.machine, trigger.opens, trigger.starts, gate.drive, duct.to, duct.serves",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, a := range p.Control.Ways {
			report(path(a))
		}
	},
}

// aboutTrigger starts a finding about a trigger.
func aboutTrigger(t *shop.Trigger) Finding {
	return Finding{About: t.Name, Kind: "trigger", At: t.At, By: ByTopology, Weight: Know, Basis: ownFile("the ducts, gates and triggers named there")}
}

// path judges the ways of one trigger.
func path(a *control.Answer) Finding {
	f := aboutTrigger(a.Trigger)
	if a.Trigger.Machine == nil {
		if control.Pressed(a.Trigger) {
			commonSwitch(a, &f)
			return f
		}
		f.State = NotGiven
		f.Says = "The machine it watches is not given, so nobody can tell which gates it has to open."
		f.Do = "Add machine to the trigger."
		return f
	}
	machine := a.Trigger.Machine.Name
	var forgotten, unknown, byHand, unserved []string
	for _, w := range a.Ways {
		if w.Collector == nil {
			unserved = append(unserved, w.Port.Full())
		}
		forgotten = append(forgotten, gateNames(w.Forgotten)...)
		unknown = append(unknown, gateNames(w.Unknown)...)
		byHand = append(byHand, gateNames(w.ByHand)...)
	}
	forgotten, unknown, byHand = unique(forgotten), unique(unknown), unique(byHand)
	led := collectorNames(leads(a.Ways))
	switch {
	case len(a.Astray) > 0:
		f.State, f.Weight = NotMet, Stop
		f.Says = "It starts " + listed(collectorNames(a.Astray)) + ", to which no duct of " + machine + " leads."
		if len(led) > 0 {
			f.Says += " Its air goes to " + listed(led) + "."
		}
		f.Do = "Name the collector that the machine's duct leads to in starts, or change where the duct empties. Until then start the collector by its own switch and open the gates by hand."
	case len(forgotten) > 0:
		f.State, f.Weight = NotMet, Stop
		f.Says = machine + " runs against a shut gate: " + listed(forgotten) + " on its way to " + listed(led) + plural(forgotten, " is powered, and this trigger does not open it.", " are powered, and this trigger does not open them.")
		f.Do = "Add " + listed(forgotten) + " to opens, wire it so, and prove it with the machine running. Until then leave the machine off."
		if len(a.Trigger.Starts) == 0 {
			f.Weight = Mend
		}
	case len(unserved) > 0:
		f.State = NotGiven
		f.Says = "No duct serves " + listed(unserved) + ", so there is no path to open."
		f.Do = "Name the port in a duct's serves."
	case len(unknown) > 0:
		f.State = NotGiven
		f.Says = "Whether " + listed(unknown) + " on the way to " + listed(led) + plural(unknown, " moves by power or by hand is not given; this trigger does not open it.", " move by power or by hand is not given; this trigger does not open them.")
		f.Do = `Add drive = "powered" or "hand" to the gate.`
	case len(a.Unstarted) > 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = "A duct of " + machine + " leads to " + listed(collectorNames(a.Unstarted)) + ", which this trigger does not start."
		f.Do = "Add it to starts, or give that port another duct."
	case len(a.Trigger.Starts) == 0:
		f.State = NotGiven
		f.Says = "It opens the whole path to " + listed(led) + ", and which collector it starts is not given."
		f.Do = "Add starts. If a person starts the collector, it has to run before the machine does."
	default:
		f.State = Met
		f.Says = "Everything powered on the way from " + machine + " to " + listed(led) + " is opened."
		f.Do = "Prove it once with each gate watched, and again after every change of a gate or duct."
	}
	if len(byHand) > 0 && f.State != NotGiven {
		f.Says += " " + listed(byHand) + plural(byHand, " on the way is opened by hand; the card says so.", " on the way are opened by hand; the card says so.")
	}
	return f
}

// commonSwitch judges a switch that belongs to no machine: at least one way
// that it opens must be whole to a collector it starts.
func commonSwitch(a *control.Answer, f *Finding) {
	var best *control.Way
	for _, w := range a.Ways {
		reaches := len(a.Trigger.Starts) == 0
		for _, c := range a.Trigger.Starts {
			reaches = reaches || c == w.Collector
		}
		if reaches && (best == nil || len(w.Forgotten)+len(w.Unknown) < len(best.Forgotten)+len(best.Unknown)) {
			best = w
		}
	}
	started := listed(collectorNames(a.Trigger.Starts))
	switch {
	case len(a.Trigger.Starts) == 0:
		f.State = NotGiven
		f.Says = "Neither the machine it is for nor the collector it starts is given."
		f.Do = "Add machine, starts, or both."
	case best == nil:
		f.State, f.Weight = NotMet, Stop
		f.Says = "It starts " + started + " and opens no gate on any way to it: the fan would pull on shut gates."
		f.Do = "Name the gates of at least one whole way in opens."
	case len(best.Forgotten) > 0:
		f.State, f.Weight = NotMet, Stop
		f.Says = "No way to " + started + " is whole when it is pressed. Nearest is " + best.Port.Full() + ", where " + listed(gateNames(best.Forgotten)) + " stays shut."
		f.Do = "Add " + listed(gateNames(best.Forgotten)) + " to opens, or name the gates of another whole way."
	case len(best.Unknown) > 0:
		f.State = NotGiven
		f.Says = "Whether " + listed(gateNames(best.Unknown)) + " on the way of " + best.Port.Full() + " moves by power or by hand is not given."
		f.Do = `Add drive = "powered" or "hand" to the gate.`
	default:
		f.State = Met
		f.Says = "When it is pressed, everything powered on the way from " + best.Port.Full() + " to " + best.Collector.Name + " is open."
		f.Do = "Prove it once with each gate watched."
	}
}

// leads are the collectors that ways lead to.
func leads(ways []*control.Way) []*shop.Collector {
	var list []*shop.Collector
	for _, w := range ways {
		if w.Collector != nil {
			list = append(list, w.Collector)
		}
	}
	return list
}

var triggerOpens = &Check{
	ID:    "trigger-opens",
	Name:  "Gates that a trigger opens",
	Title: "Does every trigger open just the gates that the use of its machine needs, relief gates included",
	Needs: "trigger.machine, trigger.opens, machine.also_open, gate.drive",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, a := range p.Control.Ways {
			if a.Trigger.Machine != nil || !control.Pressed(a.Trigger) {
				report(opens(a))
			}
		}
	},
}

// opens compares what a trigger opens with what the use of its machine needs.
func opens(a *control.Answer) Finding {
	f := aboutTrigger(a.Trigger)
	if a.Trigger.Machine == nil {
		f.State = NotGiven
		f.Says = "The machine it watches is not given, so there is no use to compare with."
		f.Do = "Add machine to the trigger."
		return f
	}
	machine := a.Trigger.Machine.Name
	var forgotten []string
	for _, w := range a.Ways {
		forgotten = append(forgotten, gateNames(w.Forgotten)...)
	}
	forgotten = unique(forgotten)
	f.State = Met
	add := func(weight Weight, says, do string) {
		f.State = NotMet
		if rank(weight) < rank(f.Weight) {
			f.Weight = weight
		}
		f.Says, f.Do = join(f.Says, says), join(f.Do, do)
	}
	if len(forgotten) > 0 {
		add(Mend, "It opens less than the use of "+machine+" needs: "+listed(forgotten)+plural(forgotten, " stays", " stay")+" shut.", "Add "+listed(forgotten)+" to opens.")
	}
	if names := gateNames(a.Relief); len(names) > 0 {
		add(Mend, "It does not open "+listed(names)+", which "+machine+" wants open as well so that the main keeps moving.", "Add "+listed(names)+" to opens.")
	}
	if names := gateNames(a.CannotGo); len(names) > 0 {
		add(Mend, "It is to open "+listed(names)+", which a person moves.", "Take "+listed(names)+" out of opens, or fit an actuator.")
	}
	if names := gateNames(a.Blocked); len(names) > 0 {
		add(Mend, listed(names)+plural(names, " stays", " stay")+" shut between a relief gate and the collector, so the relief gate gives no air.", "Add "+listed(names)+" to opens, or choose a relief gate nearer the collector.")
	}
	if names := gateNames(a.More); len(names) > 0 {
		add(Know, "It opens more than the use of "+machine+" needs: "+listed(names)+". The air that goes there is missing at the port, and the figures of the use do not hold.", "Take "+listed(names)+" out of opens, or name it in the machine's also_open.")
	}
	if f.State == Met {
		f.Says = "It opens just what the use of " + machine + " needs of powered gates."
		f.Do = "Nothing. The figures of the use hold for what it opens."
	}
	return f
}

// join puts sentences one after the other.
func join(text, more string) string {
	if text == "" {
		return more
	}
	return text + " " + more
}
