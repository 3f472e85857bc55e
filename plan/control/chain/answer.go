package chain

import (
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Verdict says whether a device, a chain or a supply gets what it has to.
type Verdict uint8

// The verdicts, from the one that says least.
const (
	Unknown Verdict = iota // an input is missing
	Holds                  // all inputs given, with a margin
	Thin                   // with little margin, or by an assumed figure
	Short                  // whatever an assumed figure may be in truth
)

var verdicts = [...]string{"unknown", "holds", "thin", "short"}

// String is the verdict in a word.
func (v Verdict) String() string { return verdicts[v] }

// graver orders verdicts by what a reader has to hear first.
var graver = [...]int{Holds: 0, Thin: 1, Unknown: 2, Short: 3}

func worseOf(a, b Verdict) Verdict {
	if graver[b] > graver[a] {
		return b
	}
	return a
}

// Loss says how much of the supply's volts is lost on the way, by common
// practice, where nobody says what a device needs.
type Loss uint8

// The losses.
const (
	SmallLoss Loss = iota
	MuchLoss
	GreatLoss
)

// LossOf is the loss of a share of the supply's volts.
func LossOf(share float64) Loss {
	switch {
	case unit.Compare(share, figures.great) > 0:
		return GreatLoss
	case unit.Compare(share, figures.small) > 0:
		return MuchLoss
	}
	return SmallLoss
}

// Node is a stop of a chain and what its device gets.
type Node struct {
	Device *control.Device
	Judged bool        // a device that has to have its volts; a gate moved by hand has not
	Run    unit.Length // of cable from the supply
	Loop   unit.Resistance

	Solved bool              // the volts are known
	AtRest unit.Voltage      // with nothing moving
	Volts  unit.Voltage      // the lowest it may get
	Movers []*control.Device // whose moving brings it there
	Share  float64           // of the supply's volts that is lost then

	Need    unit.Voltage // the lowest it works with; 0 where nobody says
	Own     bool         // Need is the gate's own, not the control's
	Margin  unit.Voltage // of Volts over Need
	Verdict Verdict
}

// Answer is what is found out about one chain.
type Answer struct {
	Chain   *shop.Chain
	Supply  unit.Voltage // 0 where the file does not say
	Nodes   []Node       // one for each stop
	Verdict Verdict
	Worst   int // the node with the least margin; -1 where none is judged

	Missing []Gap     // what the verdict waits for
	Assumed []Assumed // what stands in for currents that the file does not give
	Guessed bool      // how many gates move together is assumed, and it matters
	Exact   bool      // every permitted set counts; else the volts are a floor

	NoSolution bool       // the devices ask for more than the cable can carry
	Limit      unit.Power // then: the most that the worst gates with converters can be sent together
	Asks       unit.Power // and what they ask; 0 where none has a converter

	Most  unit.Current // that the chain may draw
	Fuse  Fuse
	Mends []Mend
	// Splits reports whether each device on a cable of its own, at its place,
	// would have its volts with a margin: a chain cut in parts may hold.
	Splits   bool
	Wires    []Wire
	Joints   []Joint // the supply, then each stop
	Together int     // gates of this chain that move at once, at most
}

// Loss is the loss at the worst node.
func (a *Answer) Loss() Loss {
	worst := 0.0
	for _, n := range a.Nodes {
		if n.Judged && n.Solved {
			worst = max(worst, n.Share)
		}
	}
	return LossOf(worst)
}

// Above are the nodes whose device asks for more volts than the supply gives,
// or for all of them.
func (a *Answer) Above() []Node {
	var list []Node
	for _, n := range a.Nodes {
		if n.Judged && a.Supply > 0 && unit.AtLeast(float64(n.Need), float64(a.Supply)) {
			list = append(list, n)
		}
	}
	return list
}

// trial is a chain with everything that a mend may change.
type trial struct {
	takers   []taker
	cables   []unit.Length
	area     unit.Wire
	warm     unit.Temperature
	supply   unit.Voltage
	together int
	feed     int // node that is fed: 0 is where the supply stands, then the stops
}

// hurt is the trial as a line: node 0 is where the supply stands. For certain
// leaves out every current that is assumed.
func (t trial) hurt(certain bool) hurt {
	h := hurt{together: t.together, feeds: []Feed{{t.feed, t.supply}}}
	h.line.Loads, h.hard = make([]Load, 1, len(t.takers)+1), make([]Load, 1, len(t.takers)+1)
	for i, taker := range t.takers {
		rest, hard := taker.rest, taker.hard
		if certain {
			rest, hard = taker.least, taker.mostly
		}
		h.line.Loops = append(h.line.Loops, Loop(t.area, t.warm, t.cables[i]))
		h.line.Loads, h.hard = append(h.line.Loads, rest), append(h.hard, hard)
		if taker.moves {
			h.movers = append(h.movers, i+1)
		}
	}
	return h
}
