package control

import (
	"slices"

	"dustbook/plan/shop"
)

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	Given   bool      // the file has a control half: a trigger, chain, sensor, [control] or powered gate
	Devices []*Device // every gate, trigger, switch, sensor, supply and stop button, by kind, then in file order
	Matrix  *Matrix   // what every cause does
	Ways    []*Answer // one for each trigger, in file order
	Blows   []*Blow   // one for each port of each machine with a blower of its own

	shop    *shop.Shop
	byThing map[any]*Device
	openers map[*shop.Gate][]*shop.Trigger
	wired   map[any][]Place
	ends    map[*shop.Gate]*ends
}

// Reckon reckons the control half of a shop.
func Reckon(s *shop.Shop) *Reckoning {
	k := &Reckoning{shop: s, byThing: map[any]*Device{}, openers: map[*shop.Gate][]*shop.Trigger{}, wired: map[any][]Place{}}
	for _, t := range s.Triggers {
		for _, g := range t.Opens {
			k.openers[g] = append(k.openers[g], t)
		}
	}
	k.wire()
	k.ends = endsOf(s)
	k.Given = k.given()
	k.register()
	for _, t := range s.Triggers {
		k.Ways = append(k.Ways, k.answer(t))
	}
	for _, m := range s.Machines {
		k.Blows = append(k.Blows, k.blows(m)...)
	}
	k.Matrix = k.matrix()
	return k
}

func (k *Reckoning) given() bool {
	s := k.shop
	if len(s.Triggers)+len(s.Chains)+len(s.Sensors) > 0 || s.Control.Given {
		return true
	}
	for _, g := range s.Gates {
		if k.Drive(g) == Powered {
			return true
		}
	}
	return false
}

// Drive says what moves a gate.
type Drive uint8

// The drives. A gate of which the file says nothing is taken for powered
// where a trigger opens it or a chain feeds it.
const (
	DriveNotGiven Drive = iota
	Powered
	ByHand
)

// Drive is what moves a gate.
func (k *Reckoning) Drive(g *shop.Gate) Drive {
	switch {
	case g.Drive.V == "powered":
		return Powered
	case g.Drive.V == "hand":
		return ByHand
	case len(k.openers[g]) > 0 || len(k.wired[g]) > 0:
		return Powered
	}
	return DriveNotGiven
}

// Openers are the triggers that open a gate, in file order.
func (k *Reckoning) Openers(g *shop.Gate) []*shop.Trigger { return k.openers[g] }

// Powered are the gates that move by power, in file order.
func (k *Reckoning) Powered() []*shop.Gate {
	var list []*shop.Gate
	for _, g := range k.shop.Gates {
		if k.Drive(g) == Powered {
			list = append(list, g)
		}
	}
	return list
}

// OpensWith are the powered gates that open with a trigger, those that its
// machine wants opened as well among them, in the order in which they move.
func (k *Reckoning) OpensWith(t *shop.Trigger) []*shop.Gate {
	opens := slices.Clone(t.Opens)
	if t.Machine != nil {
		opens = append(opens, t.Machine.AlsoOpen...)
	}
	return k.Order(opens)
}

// RestartsByItself reports whether the file says that the control starts by
// itself when power returns.
func (k *Reckoning) RestartsByItself() bool {
	return k.shop.Control.AfterPowerCut.V == "starts by itself"
}

// Started reports whether a trigger starts a collector.
func (k *Reckoning) Started(c *shop.Collector) bool {
	for _, t := range k.shop.Triggers {
		if starts(t, c) {
			return true
		}
	}
	return false
}

// StartersFor are the triggers that start a collector for a machine: those
// that watch it or are pressed for it, then the hand switches that belong to
// no machine.
func (k *Reckoning) StartersFor(m *shop.Machine, c *shop.Collector) []*shop.Trigger {
	var own, common []*shop.Trigger
	for _, t := range k.shop.Triggers {
		switch {
		case !starts(t, c):
		case t.Machine == m:
			own = append(own, t)
		case t.Machine == nil && t.Senses == handSwitch:
			common = append(common, t)
		}
	}
	return append(own, common...)
}

// handSwitch is the word for a trigger that someone presses.
const handSwitch = "hand switch"

// Pressed reports whether a trigger is a switch that someone presses.
func Pressed(t *shop.Trigger) bool { return t.Senses == handSwitch }

func starts(t *shop.Trigger, c *shop.Collector) bool {
	for _, started := range t.Starts {
		if started == c {
			return true
		}
	}
	return false
}
