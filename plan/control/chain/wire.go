package chain

import (
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Wire is one run of cable: what to cut, to strip, to label and to pull.
type Wire struct {
	Number     int
	From, To   *control.Device
	Conductors int
	Size       string      // of each conductor, as the file writes it
	Length     unit.Length // one way
	Slack      unit.Length // to add, both ends together
	Contacts   int         // to make

	// Bare length for a screw or spring terminal. The device's own
	// instructions come first.
	StripLeast, StripMost unit.Length

	Poles     []Pole
	Pull      Force
	PullBasis source.Basis
	PullKnown bool
}

// Cut is the length to cut: the run and its slack.
func (w Wire) Cut() unit.Length { return w.Length + w.Slack }

// Pole is one conductor of a run: its sign, and what stands on the label at
// both of its ends.
type Pole struct{ Sign, Label string }

// signs are the poles, the positive first.
var signs = [...]string{"+", "−"}

// wires lists the runs of a chain, from the supply on.
func wires(k *control.Reckoning, c *shop.Chain) []Wire {
	var list []Wire
	from := k.SupplyDevice()
	for i, stop := range c.Stops {
		to := k.OnStop(stop)
		w := Wire{Number: i + 1, From: from, To: to, Conductors: int(figures.conductors), Size: c.CableText,
			Length: stop.Cable, Slack: 2 * figures.slack, Contacts: int(figures.contacts),
			StripLeast: figures.stripLeast, StripMost: figures.stripMost}
		w.Pull, w.PullBasis, w.PullKnown = Pull(c.Cable)
		for _, sign := range signs {
			w.Poles = append(w.Poles, Pole{sign, from.Tag + ":" + sign + " / " + to.Tag + ":" + sign})
		}
		list, from = append(list, w), to
	}
	return list
}

// Joint is what the runs plug into at the supply or at a device.
type Joint struct {
	Device *control.Device
	Runs   int // that end there, each in a connector: 1 at the two ends of a chain, 2 on the way
	Poles  int // of each connector
}

// joints are those of the runs of a chain, the supply's first.
func joints(list []Wire) []Joint {
	var all []Joint
	for i, w := range list {
		if i == 0 {
			all = append(all, Joint{w.From, 0, w.Conductors})
		}
		all[i].Runs++
		all = append(all, Joint{w.To, 1, w.Conductors})
	}
	return all
}
