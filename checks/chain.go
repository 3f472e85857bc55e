package checks

import (
	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/entry"
)

var chainDevices = &Check{
	ID:    "chain-devices",
	Name:  "Devices on chains",
	Title: "Does every powered gate, trigger, switch and sensor stand on one chain, once",
	Needs: "chain.stops, gate.drive, trigger.name, sensor.name",
	Run: func(p *plan.Plan, report func(Finding)) {
		chained(p, report)
	},
}

// chained judges the devices; where the file has no chain at all, one finding
// says so for all of them.
func chained(p *plan.Plan, report func(Finding)) {
	var wired, loose []string
	var first entry.Place
	twice := false
	for _, d := range p.Control.Devices {
		at, kind := placeOf(d)
		f := Finding{About: d.Name, Kind: kind, At: at, By: ByTopology, Weight: Know, Basis: ownFile("the chains and their stops")}
		switch {
		case !p.Control.Wired(d):
			if len(d.Chains) > 0 {
				f.State = NotMet
				f.Says = d.Tag + " is moved by hand and stands on " + d.Chains[0].Chain.Name + ": there is nothing to wire."
				f.Do = `Take it off the chain, or write drive = "powered".`
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
	f := Finding{By: ByTopology, Weight: Know, Basis: ownFile("the chains and their stops"), At: first}
	switch {
	case len(wired) == 0:
		return
	case len(p.Shop.Chains) == 0:
		f.State = NotGiven
		f.Says = "No chain is given, so nobody can tell how " + listed(firstFew(wired)) + plural(wired, " gets its power.", " get their power.")
		f.Do = "Add [[chain]] with cable and stops, in the order in which the cable runs from the supply."
	case len(loose) > 0:
		f.State = NotGiven
		f.Says = "On no chain: " + listed(loose) + "."
		f.Do = "Add each as a stop of a chain, with the length of cable from the stop before."
	case !twice:
		f.State, f.At = Met, p.Shop.Chains[0].At
		f.Says = "Every device that has to be wired stands on one chain, once."
		f.Do = "Label both ends of every run before you pull the cable."
	default:
		return
	}
	report(f)
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
		f.Says = d.Tag + " stands twice on " + names[0] + "."
		f.Do = "Leave the stop out where the cable does not go in and out."
		return f
	}
	f.Says = d.Tag + " stands on " + listed(names) + ": it would join two runs of the supply."
	f.Do = "Leave it on one chain. Two feeds joined at a device can keep a wire live that you took for dead."
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
