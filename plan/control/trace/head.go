package trace

// Time is a moment of a run or a length of time, in whole milliseconds.
type Time int64

// None stands for a number where there is no such thing.
const None = -1

// Head is what there is: it stays the same all through a run.
type Head struct {
	Gates      []Gate
	Collectors []Collector
	Machines   []Machine
	Triggers   []Trigger // those of the shop in file order, then one purge for each collector that a trigger starts
	Ends       [][]int   // the machines that share one movable end, of each such end
	Stretches  []string  // the pieces of duct that the air is judged in, by name
	Stops      []Stop
	Moves      int // how many gates move at once at most
}

// Gate is one gate.
type Gate struct {
	Name      string
	Collector int
	ByHand    bool // a person moves it; it has no records
	Zone      bool
	Zones     []int // powered zone gates between it and the collector, the nearest to the gate first
	Proof     Proof
	Travel    Time // from stop to stop
	Margin    Time // what is given on top of the travel before it counts as arrived by time, or as not arrived by a switch
}

// Proof says how a gate is known to have arrived.
type Proof uint8

// The proofs.
const (
	ByTime   Proof = iota // its travel and the margin have passed: not proven
	BySwitch              // a switch at the end of its travel
	ByPerson              // someone looks, and says so
)

// Collector is one collector.
type Collector struct {
	Name    string
	Started bool // by a trigger
	Coast   Time // from switched off until the fan stands still
	Rest    Time // from switched off until it may start again; nought: no limit
	Starts  int  // so many starts at most…
	Within  Time // …in so long a time; nought: no limit
}

// Machine is one machine. The control half never starts or stops one.
type Machine struct {
	Name string
	Ways []Way // of each port that a duct serves
}

// Way is the way of the air from a port to its collector.
type Way struct {
	Port      string
	Collector int
	Gates     []int // in the order in which the air meets them, those moved by hand as well: they are on the machine's card, and count as open while it is served
	Whole     bool  // a trigger that holds this way opens every powered gate on it, and a person is told of every other
}

// Trigger is what asks: an input that notices a running machine, a switch that
// someone presses, or the purge button of one collector.
type Trigger struct {
	Name       string
	Machine    int // None where it has none
	Latched    bool
	Purge      bool  // of it, RunOn is how long each turn lasts
	Turns      []int // of a purge: the triggers whose gates it opens one after the other
	Opens      []int // powered gates in the order in which they open, relief gates with them
	Relief     []int // those of Opens that keep the air moving and lie on no way of its own
	Starts     []int // collectors
	Ways       []Way // to every collector, as this trigger leaves them
	StartDelay Time  // from on until the fan, at least
	RunOn      Time  // from off until the fan stops, at least
}

// Stop is a stop button.
type Stop struct {
	Name       string
	Collectors []int
}
