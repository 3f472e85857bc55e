package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Duct is one run of pipe of one size. It empties into another duct or into
// a collector.
type Duct struct {
	Name      string
	At        entry.Place
	To        Ref
	Into      *Duct      // the duct it empties into; nil where it empties into a collector
	Collector *Collector // the collector its tree belongs to

	Choose         bool        // the size is to be chosen
	Size           unit.Length // nominal
	Bore           unit.Length // inside diameter
	BoreBasis      source.Basis
	Material       string
	MaterialStated bool
	Conducts       bool // what the file says, else what the material does
	Conductive     Field[bool]
	Gauge          Field[unit.Gauge]
	Wall           Field[unit.Length]
	Rings          Field[unit.Length]
	Elbows         string // make
	ElbowLoss      float64
	ElbowBasis     source.Basis
	Hangers        Field[unit.Length]
	CleanOuts      []unit.Length
	Clearance      Field[unit.Length] // to what burns
	Roughness      unit.Length
	Rough          source.Basis
	Loss           float64
	Bonded         Field[unit.Resistance]

	Route  []Spot
	Length unit.Length
	Turns  []Turn // elbows, in flow order
	run    bool   // its length could be read

	JoinAt   unit.Length // where it joins Into, from Into's upstream end
	JoinNode int         // the node of Into it joins: 0 is Into's upstream end
	Entry    unit.Angle  // angle of the fitting it joins by; 0 is straight
	Wye      bool        // it joins by a branch fitting, not in line

	Hose   *Hose
	Serves []*Port

	Joined    []*Duct // ducts that empty into this one, in order along it, then of the file
	Gates     []*Gate
	Leaks     []*Leak
	Stretches []*Stretch
}

// Turn is an elbow: its angle and where it stands from the upstream end.
type Turn struct {
	Angle unit.Angle
	At    unit.Length
	Join  bool // it makes up the angle between the route and the fitting it joins by
}

// Hose is the hose between machine and duct.
type Hose struct {
	Size, Length, Roughness unit.Length
	Material                string
	MaterialStated          bool
	Conducts                bool
	Stretched               Field[bool]
	Times                   float64 // friction against the same hose pulled out
	Rough                   source.Basis
	At                      entry.Place
}

// Movable reports whether the duct's end is moved from port to port.
func (d *Duct) Movable() bool { return len(d.Serves) > 1 }

// Stretch is a piece of a duct between two places where air comes in: flow
// and velocity are the same all along it.
type Stretch struct {
	Duct     *Duct
	Number   int // from 1 in flow order
	From, To unit.Length
	Turns    []Turn
	Gates    []*Gate
	Rises    bool // part of it rises steeply enough to count as a riser
}

// Last reports whether the stretch ends where its duct ends.
func (s *Stretch) Last() bool { return s.Number == len(s.Duct.Stretches) }

// Length is the stretch's length.
func (s *Stretch) Length() unit.Length { return s.To - s.From }

// Gate is a blast gate on a duct.
type Gate struct {
	Name     string
	Tag      Field[string] // on labels; left out: counted
	At       entry.Place
	On       *Duct
	Where    unit.Length // from the duct's upstream end
	Stretch  *Stretch
	Drive    Field[string]
	Travel   Field[unit.Time]
	Moving   Field[unit.Current]
	Stall    Field[unit.Current]
	Holding  Field[unit.Current]
	Takes    Field[unit.Power] // while it moves, by a converter of its own
	Lowest   Field[unit.Voltage]
	Proves   Field[string]
	OpenStop Field[string]
	ShutStop Field[string]
	Leak     GateLeak
}

// GateLeak says what a shut gate lets through: nothing, a share of its bore,
// or a flow at a pressure.
type GateLeak struct {
	None  bool
	Share float64       // share of the bore that stays open
	Flow  unit.Flow     // with Press: instead of a share
	Press unit.Pressure // at standard air
	Basis source.Basis
}

// Leak is a hole in a duct.
type Leak struct {
	On    *Duct
	At    entry.Place
	Hole  unit.Length // diameter of a round hole of the same area
	Where unit.Length // from the duct's upstream end
	Node  int         // the node of On it draws at
}

// Use is a set of machines that run together.
type Use struct {
	Name     string
	At       entry.Place
	Machines []*Machine
	AlsoOpen []*Gate
	Hours    Field[float64]
}

// Confirmed is a figure the owner has looked up or been told.
type Confirmed struct {
	Figure, Value, By string
	At                entry.Place
}

// Revision is one row of the revision table.
type Revision struct {
	Mark string
	Date entry.Date
	Note string
	At   entry.Place
}
