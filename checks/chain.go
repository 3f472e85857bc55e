package checks

import (
	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/entry"
)

var chainDevices = &Check{
	ID:    "chain-devices",
	Name:  say("check.chain-devices.name"),
	Title: say("check.chain-devices.title"),
	Needs: "chain.stops, gate.drive, trigger.name, sensor.name",
	Run: func(p *plan.Plan, report func(Finding)) {
		chained(p, report)
	},
}

// chained judges the devices; where the file has no chain at all, one finding
// says so for all of them.
func chained(p *plan.Plan, report func(Finding)) {
	empty := emptyChains(p, report)
	var wired, loose, unsaid []string
	var first entry.Place
	twice := false
	for _, d := range p.Control.Devices {
		at, kind := placeOf(d)
		f := Finding{About: d.Name, Kind: kind, At: at, By: ByTopology, Weight: Know, Basis: ownFile(say("finding-chain-devices.given"))}
		if d.Gate != nil && p.Control.Drive(d.Gate) == control.DriveNotGiven {
			unsaid = append(unsaid, d.Name)
		}
		switch {
		case !p.Control.Wired(d):
			if len(d.Chains) > 0 {
				f.State = NotMet
				f.Says = say("finding-chain-devices.by-hand.says", d.Tag, d.Chains[0].Chain.Name)
				f.Do = say("finding-chain-devices.by-hand.do")
				report(f)
			}
			continue
		case len(d.Chains) > 1:
			twice = true
			report(onSeveral(f, d))
		case len(d.Chains) == 0:
			if len(loose) == 0 {
				first = at
			}
			loose = append(loose, d.Name)
		}
		wired = append(wired, d.Name)
	}
	f := Finding{By: ByTopology, Weight: Know, Basis: ownFile(say("finding-chain-devices.given")), At: first}
	switch {
	case len(wired) == 0:
		return
	case len(p.Shop.Chains) == 0:
		f.State = NotGiven
		f.Says = sayOf(len(wired), "finding-chain-devices.no-chain.says", listed(firstFew(wired)))
		f.Do = say("finding-chain-devices.no-chain.do")
	case len(loose) > 0:
		f.State = NotGiven
		f.Says = sayOf(len(loose), "finding-chain-devices.loose.says", listed(loose))
		f.Do = say("finding-chain-devices.loose.do")
	case !twice && !empty && len(unsaid) > 0:
		f.State = NotGiven
		f.Says, f.Do = sayOf(len(unsaid), "finding-chain-devices.unsaid.says", listed(firstFew(unsaid))), say("finding-common.drive.do")
	case !twice && !empty:
		f.State, f.At = Met, p.Shop.Chains[0].At
		f.Says = say("finding-chain-devices.met.says")
		f.Do = say("finding-chain-devices.met.do")
	default:
		return
	}
	report(f)
}

// emptyChains reports each chain that no device stands on, and whether there
// is one.
func emptyChains(p *plan.Plan, report func(Finding)) (found bool) {
	for _, c := range p.Shop.Chains {
		if len(c.Stops) == 0 {
			found = true
			report(Finding{About: c.Name, Kind: "chain", At: c.At, By: ByTopology, Weight: Know, State: NotGiven, Basis: ownFile(say("finding-chain-devices.given")),
				Says: say("finding-chain-devices.empty.says"), Do: say("finding-chain-devices.empty.do")})
		}
	}
	return found
}

// onSeveral is the finding about a device that stands on chains more than
// once.
func onSeveral(f Finding, d *control.Device) Finding {
	f.State, f.Weight = NotMet, Mend
	var names []string
	for _, at := range d.Chains {
		names = append(names, at.Chain.Name)
	}
	if names = unique(names); len(names) == 1 {
		f.Says = say("finding-chain-devices.twice.says", d.Tag, names[0])
		f.Do = say("finding-chain-devices.twice.do")
		return f
	}
	f.Says = say("finding-chain-devices.several.says", d.Tag, listed(names))
	f.Do = say("finding-chain-devices.several.do")
	return f
}

// placeOf is where a device stands in the file, and what kind of thing it is
// there.
func placeOf(d *control.Device) (entry.Place, string) {
	switch {
	case d.Gate != nil:
		return d.Gate.At, "gate"
	case d.Trigger != nil:
		return d.Trigger.At, "trigger"
	case d.Sensor != nil:
		return d.Sensor.At, "sensor"
	case d.Stop != nil:
		return d.Stop.At, "stop"
	}
	return entry.Place{}, ""
}
