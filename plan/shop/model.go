package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// How says how a field came to its value.
type How uint8

const (
	NotGiven  How = iota // the file is silent and no default stands in
	Stated               // the file says so
	Defaulted            // the file is silent and a default stands in, listed as an assumption
)

// Field is one value of the shop file with how it came to be known and where
// it stands.
type Field[T any] struct {
	V   T
	How How
	At  entry.Place
}

// Known reports whether there is a value, stated or by default.
func (f Field[T]) Known() bool { return f.How != NotGiven }

// Stated reports whether the file gives the value.
func (f Field[T]) Stated() bool { return f.How == Stated }

// Point is a place on the plan, in metres.
type Point struct{ X, Y float64 }

// Spot is a place in the room, in metres; Z is up.
type Spot struct{ X, Y, Z float64 }

// Ref names another thing of the file.
type Ref struct {
	Name string
	At   entry.Place
}

// Shop is one shop file, read, checked and resolved.
type Shop struct {
	File string // the file's name for messages, without its folder

	Name     string
	Setting  Field[string]
	Units    unit.System
	Language string
	Rules    string
	Editions []Edition

	Employees, Pupils, PeopleAtMachines Field[int]
	Altitude                            Field[unit.Length]
	AirTemperature                      Field[unit.Temperature]
	AirDensity                          Field[unit.Density]
	AirViscosity                        Field[unit.Viscosity]
	Coldest, OutdoorDesign              Field[unit.Temperature]
	Envelope                            Field[Envelope]
	Address                             Field[string]

	Junctions, SizeChanges string

	Rooms      []*Room
	Appliances []*Appliance
	Walls      []*Wall
	Machines   []*Machine
	Collectors []*Collector
	Ducts      []*Duct
	Gates      []*Gate
	Leaks      []*Leak
	Uses       []*Use
	Confirmed  []Confirmed
	Revisions  []Revision

	Extinguishers []*Extinguisher
	Stops         []*StopButton
	Taps          []*Tap
	Triggers      []*Trigger
	Control       Control
	Chains        []*Chain
	Sensors       []*Sensor
	Accepted      []*Accepted
	Documents     []*Document

	Assumed []Assumption
}

// Edition is the adopted edition of one text.
type Edition struct {
	Text, Edition string
	At            entry.Place
}

// Envelope is a blower-door figure: the flow that leaks at a pressure.
type Envelope struct {
	Flow unit.Flow
	At   unit.Pressure
}

// Assumption is one default in use: a field the file leaves out, what stands
// in for it, and where that comes from.
type Assumption struct {
	Thing string // what it is about, as "Saw drop" or "Table saw/cabinet"; "the shop" for the shop itself
	Field string // the field's name, with its table: "hose.material"
	Value string // what is assumed, in words
	Basis source.Basis
	At    entry.Place // where the thing stands in the file
}

// Room is a room of the building.
type Room struct {
	Name       string
	At         entry.Place
	Outline    []Point
	Height     Field[unit.Length]
	Exits      []Point
	OpenTo     []*Room
	Opening    Field[unit.Area]
	Chosen     Field[unit.Pressure] // how far below the outdoors it may be pulled
	Sprinklers Field[bool]
	WayOut     Field[unit.Length] // its narrowest place
	Layer      *Layer             // nil where none was measured
	Cleaned    Field[string]
}

// Layer is settled dust where it lies thickest.
type Layer struct {
	Depth   unit.Length
	Area    Field[unit.Area]
	Density Field[unit.Density] // of the heap, not of the wood
	At      entry.Place
}

// Appliance is something that burns or heats in a room.
type Appliance struct {
	Kind string
	Room *Room
	At   entry.Place
}

// Wall is a wall that matters to a check.
type Wall struct {
	From, To Point
	Rating   Field[string]
	Divides  Field[string]
	Door     *Door              // nil where the file tells of none
	NoDoor   Field[bool]        // nor any other opening
	Board    Field[unit.Length] // gypsum on the shop's side
	At       entry.Place
}

// Door is a door in a wall that keeps things apart.
type Door struct {
	Thick       Field[unit.Length]
	Rating      Field[unit.Time]
	Closes      Field[bool]
	IntoBedroom Field[bool]
	At          entry.Place
}

// Motor is an electric motor's nameplate.
type Motor struct {
	Power         unit.Power
	Volts         Field[unit.Voltage]
	Phase         Field[int]
	Poles         Field[int]
	ServiceFactor Field[float64]
	At            entry.Place
}

// Circuit is the branch circuit that feeds a motor.
type Circuit struct {
	Breaker   Field[unit.Current]
	Wire      Field[unit.Wire]
	Length    Field[unit.Length]
	Terminals Field[unit.Temperature]
}

// Machine is a machine of the shop and its dust ports.
type Machine struct {
	Name        string
	At          entry.Place
	Kind        string
	Place       Field[Point]
	Room        *Room // nil where neither the file nor an outline says
	Makes       string
	MakesStated bool
	Waste       string // what its kind throws: dust or chips
	Motor       *Motor
	Circuit     *Circuit
	Amps        Field[unit.Current]
	Restarts    Field[bool]
	Coast       Field[unit.Time]
	Noise       Field[unit.Sound]
	Hours       Field[float64]
	Starts      Field[int]
	Blower      Field[bool]
	Transport   Field[unit.Velocity]
	AlsoOpen    []*Gate
	Cut         *Cut
	Ports       []*Port
}

// Cut is a machine's heaviest usual cut.
type Cut struct {
	Width, Depth unit.Length
	Feed         unit.Velocity
}

// Port is a dust port of a machine.
type Port struct {
	Machine  *Machine
	Name     string
	At       entry.Place
	Size     unit.Length
	Flow     unit.Flow
	Need     source.Basis // where the need comes from; Given when the file states it
	FlowFrom string
	HoodLoss float64
	Hood     source.Basis
	Duct     *Duct // the duct that serves it; nil where none does
}

// Full is the port's name with its machine: "Table saw/cabinet".
func (p *Port) Full() string { return p.Machine.Name + "/" + p.Name }
