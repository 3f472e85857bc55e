package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// Trigger is what notices that a machine runs, or a switch that someone
// presses, and what it opens and starts.
type Trigger struct {
	Name       string
	Tag        Field[string] // on labels; left out: counted
	At         entry.Place
	Senses     string   // current, contact or hand switch
	Machine    *Machine // nil where the file names none
	Standby    Field[unit.Current]
	NoLoad     Field[unit.Current]
	Threshold  Field[unit.Current]
	Turns      Field[int]
	Range      Field[CurrentRange]
	Draws      Field[unit.Current] // from its chain
	Readings   []CurrentReading
	Opens      []*Gate
	Starts     []*Collector
	StartDelay Field[unit.Time]
	RunOn      Field[unit.Time]
}

// CurrentRange is the range of a current sensor.
type CurrentRange struct{ Low, High unit.Current }

// CurrentReading is a measured current with its spread.
type CurrentReading struct {
	State  string
	Mean   unit.Current
	Spread Field[unit.Current]
	At     entry.Place
}

// Control is the supply and the rules of the control system.
type Control struct {
	Given         bool
	At            entry.Place
	Supply        Field[unit.Voltage]
	SupplyPower   Field[unit.Power]
	SupplyListed  Field[string]
	Lowest        Field[unit.Voltage]
	MovesTogether Field[int]
	AfterPowerCut Field[string]
	EnclosureType Field[string]
	WorkingSpace  Field[unit.Length] // before the electrical panel
	Lockout       Field[string]
	Purge         Field[string]
}

// Chain is a low-voltage cable that runs from device to device.
type Chain struct {
	Name        string
	At          entry.Place
	Cable       unit.Wire
	CableText   string // as the file writes it: "18 AWG"
	Temperature Field[unit.Temperature]
	Stops       []ChainStop
}

// ChainStop is one device on a chain with the cable that leads to it. One of
// Gate, Trigger and Sensor is set.
type ChainStop struct {
	At      entry.Place
	Gate    *Gate
	Trigger *Trigger
	Sensor  *Sensor
	Cable   unit.Length // one-way, from the stop before
}

// Device is the name of the device at a stop.
func (s ChainStop) Device() string {
	switch {
	case s.Gate != nil:
		return s.Gate.Name
	case s.Trigger != nil:
		return s.Trigger.Name
	case s.Sensor != nil:
		return s.Sensor.Name
	}
	return ""
}

// Sensor watches the filter, the room or the bin.
type Sensor struct {
	Name     string
	Tag      Field[string] // on labels; left out: counted
	At       entry.Place
	Senses   string
	Draws    Field[unit.Current] // from its chain
	High     Level
	VeryHigh Level
}

// Level is a level of a sensor: a pressure across the filter, else text.
type Level struct {
	Text  string
	Press Field[unit.Pressure]
}

// Known reports whether the level is given.
func (l Level) Known() bool { return l.Text != "" || l.Press.Known() }

// Tap is a hole in a duct for a gauge.
type Tap struct {
	Name  string
	At    entry.Place
	On    *Duct
	Where unit.Length // from the duct's upstream end
}

// Extinguisher hangs somewhere.
type Extinguisher struct {
	Place    Field[Point]
	Rating   Field[string]
	Serviced entry.Date // zero where the file does not say
	At       entry.Place
}

// StopButton stops collectors and machines.
type StopButton struct {
	Name       string
	Place      Field[Point]
	Collectors []*Collector
	Machines   []*Machine
	At         entry.Place
}

// Accepted is a finding that someone has accepted for a time.
type Accepted struct {
	Check, About, Reason, Role string
	Until                      entry.Date // zero where it has no end
	At                         entry.Place
}

// Document is a paper that someone may ask for.
type Document struct {
	Kind string
	Held Field[bool]
	Date entry.Date // zero where the file does not say
	By   Field[string]
	At   entry.Place
}
