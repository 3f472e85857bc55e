package checks

import (
	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/shop"
)

var triggerPath = &Check{
	Stops: true,
	ID:    "trigger-path",
	Name:  say("check.trigger-path.name"),
	Title: say("check.trigger-path.title"),
	Needs: "trigger.machine, trigger.opens, trigger.starts, gate.drive, duct.to, duct.serves",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, a := range p.Control.Ways {
			report(wayOpen(a))
		}
	},
}

// aboutTrigger starts a finding about a trigger.
func aboutTrigger(t *shop.Trigger) Finding {
	return Finding{About: t.Name, Kind: "trigger", At: t.At, By: ByTopology, Weight: Know, Basis: ownFile(say("finding-trigger-path.given"))}
}

// wayOpen judges the ways of one trigger.
func wayOpen(a *control.Answer) Finding {
	f := aboutTrigger(a.Trigger)
	if a.Trigger.Machine == nil {
		if control.Pressed(a.Trigger) {
			commonSwitch(a, &f)
			return f
		}
		f.State = NotGiven
		f.Says = say("finding-trigger-path.no-machine.says")
		f.Do = say("finding-trigger-path.no-machine.do")
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
		f.Says = say("finding-trigger-path.astray.says", listed(collectorNames(a.Astray)), machine)
		if len(led) > 0 {
			f.Says = join(f.Says, say("finding-trigger-path.air-goes.says", listed(led)))
		}
		f.Do = say("finding-trigger-path.astray.do")
		if len(forgotten) > 0 { // told with it, so that mending one does not hide the other
			f.Says = join(f.Says, sayOf(len(forgotten), "finding-trigger-path.forgotten.says", machine, listed(forgotten), listed(led)))
			f.Do = join(f.Do, say("finding-trigger-path.forgotten.do", listed(forgotten)))
		}
	case len(forgotten) > 0:
		f.State, f.Weight = NotMet, Stop
		f.Says = sayOf(len(forgotten), "finding-trigger-path.forgotten.says", machine, listed(forgotten), listed(led))
		f.Do = say("finding-trigger-path.forgotten.do", listed(forgotten))
		if len(a.Trigger.Starts) == 0 {
			f.Weight = Mend
		}
	case len(unserved) > 0:
		f.State = NotGiven
		f.Says = say("finding-trigger-path.unserved.says", listed(unserved))
		f.Do = say("finding-trigger-path.unserved.do")
	case len(unknown) > 0:
		f.State = NotGiven
		f.Says = sayOf(len(unknown), "finding-trigger-path.unknown.says", listed(unknown), listed(led))
		f.Do = say("finding-common.drive.do")
	case len(a.Unstarted) > 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-trigger-path.unstarted.says", machine, listed(collectorNames(a.Unstarted)))
		f.Do = say("finding-trigger-path.unstarted.do")
	case len(a.Trigger.Starts) == 0:
		f.State = NotGiven
		f.Says = say("finding-trigger-path.no-start.says", listed(led))
		f.Do = say("finding-trigger-path.no-start.do")
	default:
		f.State = Met
		f.Says = say("finding-trigger-path.met.says", machine, listed(led))
		f.Do = say("finding-trigger-path.met.do")
	}
	if len(byHand) > 0 && f.State != NotGiven {
		f.Says = join(f.Says, sayOf(len(byHand), "finding-trigger-path.by-hand.says", listed(byHand)))
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
		f.Says = say("finding-trigger-path.switch-no-start.says")
		f.Do = say("finding-trigger-path.switch-no-start.do")
	case best == nil:
		f.State, f.Weight = NotMet, Stop
		f.Says = say("finding-trigger-path.switch-no-way.says", started)
		f.Do = say("finding-trigger-path.switch-no-way.do")
	case len(best.Forgotten) > 0:
		f.State, f.Weight = NotMet, Stop
		shut := gateNames(best.Forgotten)
		f.Says = sayOf(len(shut), "finding-trigger-path.switch-shut.says", started, best.Port.Full(), listed(shut))
		f.Do = say("finding-trigger-path.switch-shut.do", listed(shut))
	case len(best.Unknown) > 0:
		f.State = NotGiven
		unknown := gateNames(best.Unknown)
		f.Says = sayOf(len(unknown), "finding-trigger-path.switch-unknown.says", listed(unknown), best.Port.Full())
		f.Do = say("finding-common.drive.do")
	default:
		f.State = Met
		f.Says = say("finding-trigger-path.switch-met.says", best.Port.Full(), best.Collector.Name)
		f.Do = say("finding-trigger-path.switch-met.do")
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
	Name:  say("check.trigger-opens.name"),
	Title: say("check.trigger-opens.title"),
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
		f.Says = say("finding-trigger-opens.no-machine.says")
		f.Do = say("finding-trigger-path.no-machine.do")
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
		add(Mend, sayOf(len(forgotten), "finding-trigger-opens.less.says", machine, listed(forgotten)), say("finding-trigger-opens.add.do", listed(forgotten)))
	}
	if names := gateNames(a.Relief); len(names) > 0 {
		add(Mend, say("finding-trigger-opens.relief.says", listed(names), machine), say("finding-trigger-opens.add.do", listed(names)))
	}
	if names := gateNames(a.CannotGo); len(names) > 0 {
		add(Mend, say("finding-trigger-opens.by-hand.says", listed(names)), say("finding-trigger-opens.by-hand.do", listed(names)))
	}
	if names := gateNames(a.Blocked); len(names) > 0 {
		add(Mend, sayOf(len(names), "finding-trigger-opens.blocked.says", listed(names)), say("finding-trigger-opens.blocked.do", listed(names)))
	}
	if names := gateNames(a.More); len(names) > 0 {
		add(Know, say("finding-trigger-opens.more.says", machine, listed(names)), say("finding-trigger-opens.more.do", listed(names)))
	}
	var unsaid []string
	for _, w := range a.Ways {
		unsaid = append(unsaid, gateNames(w.Unknown)...)
	}
	switch unsaid = unique(unsaid); {
	case f.State != Met:
	case len(unsaid) > 0:
		f.State = NotGiven
		f.Says, f.Do = sayOf(len(unsaid), "finding-trigger-opens.unknown.says", listed(unsaid)), say("finding-common.drive.do")
	default:
		f.Says, f.Do = say("finding-trigger-opens.met.says", machine), say("finding-trigger-opens.met.do")
	}
	return f
}
