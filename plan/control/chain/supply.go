package chain

import (
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Supply is what the devices of a shop ask of the control supply.
type Supply struct {
	Volts      unit.Voltage // 0 where the file does not say
	Moving     unit.Current // what the gates that move together add, stalled
	Movers     []*control.Device
	Rest       unit.Current // all devices at rest
	Controller unit.Current
	Relays     unit.Current
	Sum        unit.Current // of the four
	Summed     bool         // Sum counts every device: its volts are known, and a current for each
	Asked      unit.Current // Sum over the share that a supply may give for long
	Has        unit.Current // by its power and volts; 0 where the file does not say
	Verdict    Verdict
	Missing    []Gap
	Assumed    []Assumed
	Guessed    bool // how many gates move together is assumed, and it matters
	Limited    Limited
}

// AskedPower is the power that a supply of its volts has to have.
func (a *Supply) AskedPower() unit.Power { return unit.Power(float64(a.Asked) * float64(a.Volts)) }

// added is what a gate adds to its current at rest when it is stalled.
type added struct {
	gate *control.Device
	amps unit.Current
}

// supply reckons the supply, by every device that has to be fed, on a chain or
// not yet.
func supply(s *shop.Shop, k *control.Reckoning, chains []*Answer) *Supply {
	a := &Supply{Volts: s.Control.Supply.V, Controller: figures.controller, Relays: figures.relay * unit.Current(relays(s, k))}
	certain := unit.Current(0) // what flows for certain
	var adds, sure []added
	for _, d := range k.Devices {
		if !k.Wired(d) {
			continue
		}
		t := takerOf(s, k, shop.ChainStop{Gate: d.Gate, Trigger: d.Trigger, Sensor: d.Sensor})
		a.Assumed = append(a.Assumed, t.assumed...)
		if t.unknown {
			a.Missing = append(a.Missing, Gap{StallCurrent, d})
		}
		volts := lowestOf(d, chains, a.Volts)
		if !(volts > 0) {
			continue
		}
		a.Rest, certain = a.Rest+t.rest.Amps(volts), certain+t.least.Amps(volts)
		if t.moves {
			adds = append(adds, added{d, t.hard.Amps(volts) - t.rest.Amps(volts)})
			sure = append(sure, added{d, t.mostly.Amps(a.Volts) - t.least.Amps(a.Volts)})
		}
	}
	a.Summed = a.Volts > 0 && len(a.Missing) == 0
	together := togetherOf(s)
	a.Guessed = !s.Control.MovesTogether.Stated() && len(adds) > together
	for _, m := range greatest(adds, together) {
		a.Moving, a.Movers = a.Moving+m.amps, append(a.Movers, m.gate)
	}
	for _, m := range greatest(sure, together) {
		certain += m.amps
	}
	a.Sum = a.Moving + a.Rest + a.Controller + a.Relays
	a.Asked = unit.Current(float64(a.Sum) / figures.share)
	a.judge(s.Control, certain)
	a.Limited = limited(s.Control, a.Asked)
	return a
}

// judge compares what the supply has with what is asked. Below what flows for
// certain it is short; below what is asked with the usual margin, thin.
func (a *Supply) judge(c shop.Control, certain unit.Current) {
	if !c.Supply.Known() || !(a.Volts > 0) {
		a.Missing = append(a.Missing, Gap{Input: SupplyVolts})
	}
	if !c.SupplyPower.Known() {
		a.Missing = append(a.Missing, Gap{Input: SupplyPower})
	}
	if a.Volts > 0 && c.SupplyPower.Known() {
		a.Has = gives(c)
		if !unit.AtLeast(float64(a.Has), float64(certain)) {
			a.Verdict = Short
			return
		}
	}
	switch has := float64(a.Has); {
	case len(a.Missing) > 0:
	case !unit.AtLeast(has, float64(a.Sum)) && len(a.Assumed) > 0:
		for _, s := range a.Assumed {
			a.Missing = append(a.Missing, s.Gap)
		}
	case !unit.AtLeast(has, float64(a.Asked)) || len(a.Assumed) > 0 || a.Guessed:
		a.Verdict = Thin
	default:
		a.Verdict = Holds
	}
}

// gives is the current that a supply gives by its power and volts; 0 where the
// file does not say.
func gives(c shop.Control) unit.Current {
	if !c.Supply.Known() || !c.SupplyPower.Known() || !(c.Supply.V > 0) {
		return 0
	}
	return unit.Current(float64(c.SupplyPower.V) / float64(c.Supply.V))
}

// greatest are the gates that add most, so many of them, in the order of the
// register.
func greatest(list []added, count int) []added {
	order := slices.Clone(list)
	slices.SortStableFunc(order, func(a, b added) int { return unit.Compare(float64(b.amps), float64(a.amps)) })
	chosen := map[*control.Device]bool{}
	for _, a := range order[:min(count, len(order))] {
		chosen[a.gate] = a.amps > 0
	}
	return slices.DeleteFunc(slices.Clone(list), func(a added) bool { return !chosen[a.gate] })
}

// lowestOf is the lowest volts of a device on any of its chains; the supply's
// where it is on none.
func lowestOf(d *control.Device, chains []*Answer, supply unit.Voltage) unit.Voltage {
	lowest := supply
	for _, a := range chains {
		for _, n := range a.Nodes {
			if n.Device == d && n.Solved {
				lowest = min(lowest, n.Volts)
			}
		}
	}
	return lowest
}

// relays is how many collectors a trigger starts.
func relays(s *shop.Shop, k *control.Reckoning) (count int) {
	for _, c := range s.Collectors {
		if k.Started(c) {
			count++
		}
	}
	return count
}
