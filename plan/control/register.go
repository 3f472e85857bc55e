package control

import (
	"strconv"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Kind says what a device is.
type Kind uint8

// The kinds of device, in the order of the register.
const (
	MachineGate Kind = iota
	ZoneGate
	RunTrigger // senses current or a contact
	HandSwitch
	Sensor
	Relay // that switches a collector which a trigger starts
	Supply
	StopButton
)

// kinds are the letter of the tag, the key and the word of each kind.
var kinds = [...]struct{ letter, key, word string }{
	MachineGate: {"G", "machine-gate", "gate"},
	ZoneGate:    {"Z", "zone-gate", "zone gate"},
	RunTrigger:  {"T", "trigger", "trigger"},
	HandSwitch:  {"H", "hand-switch", "hand switch"},
	Sensor:      {"S", "sensor", "sensor"},
	Relay:       {"R", "relay", "relay"},
	Supply:      {"P", "supply", "supply"},
	StopButton:  {"B", "stop-button", "stop button"},
}

// Key is the kind as the words of the pages go by it.
func (k Kind) Key() string { return kinds[k].key }

// String is the kind in plain English, as it stands in the name of a device
// without a name of its own.
func (k Kind) String() string { return kinds[k].word }

// Device is one row of the register. A tag is the letter of the kind and a
// count in file order within it, so that a change of one kind leaves the tags
// of all others alone; or it is pinned by the file.
type Device struct {
	Tag  string
	Kind Kind
	Name string // as in the file; a device without a name goes by its kind and number

	Gate     *shop.Gate // of these, at most one is set; none for the supply
	Trigger  *shop.Trigger
	Sensor   *shop.Sensor
	Stop     *shop.StopButton
	Switches *shop.Collector // by a relay

	Duct     *shop.Duct // of a gate, with its place from the upstream end
	Where    unit.Length
	Machines []*shop.Machine // whose air passes a gate, whom a trigger watches, whom a button stops
	Room     *shop.Room      // nil where the file does not tell
	Chains   []Place         // its places on chains; one where all is well
}

// Place is a place on a chain, counted from 1 at the supply.
type Place struct {
	Chain    *shop.Chain
	Position int
}

// Pair is the name to give a device when it is paired or labelled.
func (d *Device) Pair() string { return d.Tag + " " + d.Name }

// Wired reports whether a device has to be on a chain: powered gates,
// triggers, switches and sensors.
func (k *Reckoning) Wired(d *Device) bool {
	switch d.Kind {
	case MachineGate, ZoneGate:
		return k.Drive(d.Gate) == Powered
	case RunTrigger, HandSwitch, Sensor:
		return true
	}
	return false
}

// DeviceOf is the register's row of a gate, trigger, sensor or stop button;
// nil where there is none.
func (k *Reckoning) DeviceOf(thing any) *Device { return k.byThing[thing] }

// SupplyDevice is the supply's row of the register; nil where the file has none.
func (k *Reckoning) SupplyDevice() *Device { return k.byThing[Supply] }

// SupplyTag is the tag of the supply; empty where the file has none.
func (k *Reckoning) SupplyTag() string {
	if d := k.SupplyDevice(); d != nil {
		return d.Tag
	}
	return ""
}

// OnStop is the device at a stop of a chain.
func (k *Reckoning) OnStop(s shop.ChainStop) *Device {
	switch {
	case s.Gate != nil:
		return k.byThing[s.Gate]
	case s.Trigger != nil:
		return k.byThing[s.Trigger]
	case s.Sensor != nil:
		return k.byThing[s.Sensor]
	}
	return nil
}

// wire notes every device's places on chains.
func (k *Reckoning) wire() {
	for _, c := range k.shop.Chains {
		for i, s := range c.Stops {
			at := Place{c, i + 1}
			switch {
			case s.Gate != nil:
				k.wired[s.Gate] = append(k.wired[s.Gate], at)
			case s.Trigger != nil:
				k.wired[s.Trigger] = append(k.wired[s.Trigger], at)
			case s.Sensor != nil:
				k.wired[s.Sensor] = append(k.wired[s.Sensor], at)
			}
		}
	}
}

// relayOf is the relay of a collector, which has no name of its own in the file.
type relayOf struct{ collector *shop.Collector }

// RelayOf is the register's row of the relay that switches a collector; nil
// where no trigger starts it.
func (k *Reckoning) RelayOf(c *shop.Collector) *Device { return k.byThing[relayOf{c}] }

// pinned are the tags that the file gives.
func (k *Reckoning) pinned() map[string]bool {
	tags := map[string]bool{}
	for _, g := range k.shop.Gates {
		tags[g.Tag.V] = true
	}
	for _, t := range k.shop.Triggers {
		tags[t.Tag.V] = true
	}
	for _, s := range k.shop.Sensors {
		tags[s.Tag.V] = true
	}
	return tags
}

// counted is a letter with the first number, from a place in its kind on, that
// no device has.
func counted(letter string, n int, taken map[string]bool) string {
	for taken[letter+strconv.Itoa(n)] {
		n++
	}
	return letter + strconv.Itoa(n)
}

// register lists every device.
func (k *Reckoning) register() {
	byKind, taken := map[Kind][]*Device{}, k.pinned()
	add := func(thing any, d *Device) {
		byKind[d.Kind] = append(byKind[d.Kind], d)
		n := len(byKind[d.Kind])
		if d.Name == "" {
			d.Name = d.Kind.String() + " " + strconv.Itoa(n)
		}
		if d.Tag == "" {
			d.Tag = counted(kinds[d.Kind].letter, n, taken)
		}
		taken[d.Tag] = true
		d.Chains = k.wired[thing]
		k.byThing[thing] = d
	}
	for _, g := range k.shop.Gates {
		d := &Device{Tag: g.Tag.V, Kind: MachineGate, Name: g.Name, Gate: g, Duct: g.On, Where: g.Where, Machines: k.Upstream(g), Room: k.roomOf(g)}
		if k.Zone(g) {
			d.Kind = ZoneGate
		}
		add(g, d)
	}
	for _, t := range k.shop.Triggers {
		d := &Device{Tag: t.Tag.V, Kind: RunTrigger, Name: t.Name, Trigger: t}
		if Pressed(t) {
			d.Kind = HandSwitch
		}
		if t.Machine != nil {
			d.Machines, d.Room = []*shop.Machine{t.Machine}, t.Machine.Room
		}
		add(t, d)
	}
	for _, s := range k.shop.Sensors {
		add(s, &Device{Tag: s.Tag.V, Kind: Sensor, Name: s.Name, Sensor: s})
	}
	for _, c := range k.shop.Collectors {
		if k.Started(c) {
			add(relayOf{c}, &Device{Kind: Relay, Name: c.Name, Switches: c, Room: c.Room})
		}
	}
	if k.shop.Control.Given || len(k.shop.Chains) > 0 {
		add(Supply, &Device{Kind: Supply, Name: "Control supply"})
	}
	for _, b := range k.shop.Stops {
		add(b, &Device{Kind: StopButton, Name: b.Name, Stop: b, Machines: b.Machines, Room: k.roomAt(b.Place)})
	}
	for kind := range kinds {
		k.Devices = append(k.Devices, byKind[Kind(kind)]...)
	}
}

// roomOf is the room a gate hangs in, by its duct's route; without one, the
// room of the machines it serves where they share one.
func (k *Reckoning) roomOf(g *shop.Gate) *shop.Room {
	if g.On.Route != nil {
		at := shop.Along(g.On.Route, g.Where)
		return k.roomAt(shop.Field[shop.Point]{V: shop.Point{X: at.X, Y: at.Y}, How: shop.Stated})
	}
	var room *shop.Room
	for _, m := range k.Upstream(g) {
		if room != nil && m.Room != room {
			return nil
		}
		room = m.Room
	}
	return room
}

// roomAt is the first room whose outline holds a place.
func (k *Reckoning) roomAt(place shop.Field[shop.Point]) *shop.Room {
	if !place.Known() {
		return nil
	}
	for _, r := range k.shop.Rooms {
		if r.Holds(place.V) {
			return r
		}
	}
	return nil
}
