package control

import (
	"slices"

	"dustbook/plan/shop"
)

// Blow is one port of a machine with a blower of its own: the gate below it
// that may be shut while it blows, and where its air could then come out.
type Blow struct {
	Port *shop.Port
	Gate *shop.Gate // nil where no gate stands in its way
	Why  Shut
	Out  []Out // other ports that join before the gate, in file order
}

// Shut says why a gate may be shut while a machine runs.
type Shut uint8

// The reasons, the gravest first.
const (
	Unopened   Shut = iota + 1 // powered, and no trigger of the machine opens it
	HandShut                   // a person has to open it
	ShutUnsaid                 // its drive is not given
	Travels                    // opened by a trigger that acts once the machine runs
	OpenFirst                  // opened by a switch before the machine starts
)

// Out is a port that blown air could come out of, with the gates that may
// stand in between.
type Out struct {
	Port  *shop.Port
	Gates []*shop.Gate
}

// blows follows the ways of a machine with its own blower.
func (k *Reckoning) blows(m *shop.Machine) []*Blow {
	if !m.Blower.V {
		return nil
	}
	var list []*Blow
	for _, p := range m.Ports {
		if p.Duct == nil {
			continue
		}
		b := &Blow{Port: p}
		for _, g := range gatesOn(p) {
			if why := k.shut(m, g); b.Gate == nil || why < b.Why {
				b.Gate, b.Why = g, why
			}
		}
		if b.Gate != nil {
			b.Out = k.outlets(p, b.Gate)
		}
		list = append(list, b)
	}
	return list
}

// shut says why a gate may be shut while a machine runs.
func (k *Reckoning) shut(m *shop.Machine, g *shop.Gate) Shut {
	switch k.Drive(g) {
	case ByHand:
		return HandShut
	case DriveNotGiven:
		return ShutUnsaid
	}
	why := Unopened
	for _, t := range k.openers[g] {
		switch {
		case t.Machine != m:
		case Pressed(t) && why == Unopened:
			why = OpenFirst
		case !Pressed(t):
			why = Travels
		}
	}
	return why
}

// outlets are the other ports whose air joins that of a port before a gate.
func (k *Reckoning) outlets(p *shop.Port, gate *shop.Gate) []Out {
	before := map[*shop.Stretch]bool{}
	for _, s := range p.Path() {
		before[s] = true
		if s == gate.Stretch {
			break
		}
	}
	var list []Out
	for _, m := range k.shop.Machines {
		for _, other := range m.Ports {
			if other == p || other.Duct == nil || other.Duct == p.Duct {
				continue // an end that is moved stands at one port
			}
			if gates, joins := gatesUntil(other, before); joins {
				list = append(list, Out{other, gates})
			}
		}
	}
	return list
}

// gatesUntil are the gates on a port's way until it meets one of the
// stretches, and whether it meets one.
func gatesUntil(p *shop.Port, meets map[*shop.Stretch]bool) (gates []*shop.Gate, joins bool) {
	for _, s := range p.Path() {
		if meets[s] {
			return slices.Clip(gates), true
		}
		gates = append(gates, s.Gates...)
	}
	return nil, false
}
