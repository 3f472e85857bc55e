package chain

import (
	"errors"
	"fmt"
	"math"

	"dustbook/plan/unit"
)

// Load is what a device takes: a constant current, a constant power, or both.
type Load struct {
	Current unit.Current
	Power   unit.Power
}

// Line is a line of two conductors with a load at each node. Loops[i] is the
// resistance, out and back, between node i and node i+1.
type Line struct {
	Loops []unit.Resistance
	Loads []Load
}

// Feed is a node that a supply holds at its volts.
type Feed struct {
	Node  int
	Volts unit.Voltage
}

// ErrNoSolution says that no volts satisfy the loads: they ask for more than
// the line can carry.
var ErrNoSolution = errors.New("the line cannot carry its loads")

// Solve gives the volts at every node. Loads of constant power have two
// solutions where they have any; the one with the higher volts is where a line
// settles.
//
// It goes by Newton's steps from the volts of the feeds downward. Each step
// solves the line with the loads replaced by their tangents. From above, the
// steps fall steadily to the solution; where there is none, a step finds the
// line unstable.
func (l Line) Solve(feeds ...Feed) ([]unit.Voltage, error) {
	volts, err := l.solve(feeds)
	if err != nil {
		return nil, err
	}
	for _, v := range volts {
		if !(v > 0) {
			return nil, ErrNoSolution
		}
	}
	return volts, nil
}

// solve is Solve that also lets volts fall below nought, for lines of constant
// currents.
func (l Line) solve(feeds []Feed) ([]unit.Voltage, error) {
	if err := l.sound(feeds); err != nil {
		return nil, err
	}
	start := feeds[0].Volts
	powered := false
	for _, f := range feeds {
		start = max(start, f.Volts)
	}
	volts := make([]unit.Voltage, len(l.Loads))
	for i := range volts {
		volts[i] = start
		powered = powered || l.Loads[i].Power > 0
	}
	for range mostSteps {
		next, ok := l.step(volts, feeds)
		if !ok {
			return nil, ErrNoSolution
		}
		moved := 0.0
		for i := range next {
			moved = max(moved, math.Abs(float64(next[i]-volts[i])))
		}
		volts = next
		if !powered || moved <= settled*float64(start) {
			return volts, nil
		}
	}
	return nil, ErrNoSolution
}

// Newton's steps double the figures that hold; at the very limit of what a
// line can carry each one adds but one binary figure.
const (
	mostSteps = 200
	settled   = 1e-12
)

// sound says what is wrong with a line or its feeds.
func (l Line) sound(feeds []Feed) error {
	if len(l.Loads) == 0 || len(l.Loops) != len(l.Loads)-1 {
		return fmt.Errorf("%d nodes with %d runs between them: want one run fewer than nodes", len(l.Loads), len(l.Loops))
	}
	for i, r := range l.Loops {
		if !(r >= 0) || math.IsInf(float64(r), 0) {
			return fmt.Errorf("run %d: %v ohm is no resistance", i+1, float64(r))
		}
	}
	for i, load := range l.Loads {
		if !(load.Current >= 0) || !(load.Power >= 0) || math.IsInf(float64(load.Current), 0) || math.IsInf(float64(load.Power), 0) {
			return fmt.Errorf("node %d: %v A and %v W are no load", i, float64(load.Current), float64(load.Power))
		}
	}
	if len(feeds) == 0 {
		return errors.New("no feed")
	}
	for i, f := range feeds {
		switch {
		case f.Node < 0 || f.Node >= len(l.Loads):
			return fmt.Errorf("feed %d: no node %d", i+1, f.Node)
		case !(f.Volts > 0) || math.IsInf(float64(f.Volts), 0):
			return fmt.Errorf("feed %d: %v V is no supply", i+1, float64(f.Volts))
		case i > 0 && f.Node <= feeds[i-1].Node:
			return fmt.Errorf("feed %d: nodes of feeds have to rise", i+1)
		}
	}
	return nil
}

// tangent is a load as a current that changes with the volts at its node:
// amps = at + slope × volts. The slope of a constant power is below nought.
type tangent struct{ at, slope float64 }

func (l Load) tangent(v unit.Voltage) tangent {
	if l.Power == 0 {
		return tangent{float64(l.Current), 0}
	}
	p, u := float64(l.Power), float64(v)
	return tangent{float64(l.Current) + 2*p/u, -p / (u * u)}
}

// step solves the line with tangents at some volts. It is not ok where the
// tangents are too steep for the line.
func (l Line) step(volts []unit.Voltage, feeds []Feed) ([]unit.Voltage, bool) {
	next := make([]unit.Voltage, len(volts))
	first, last := feeds[0], feeds[len(feeds)-1]
	ok := l.outward(volts, next, first, -1) && l.outward(volts, next, last, 1)
	for i := 1; ok && i < len(feeds); i++ {
		ok = l.between(volts, next, feeds[i-1], feeds[i])
	}
	for _, f := range feeds {
		next[f.Node] = f.Volts
	}
	return next, ok
}

// loop is the resistance of the run that a node is reached by from the node
// before it in a direction.
func (l Line) loop(node, way int) float64 {
	if way > 0 {
		return float64(l.Loops[node-1])
	}
	return float64(l.Loops[node])
}

// outward solves the part of the line beyond a feed, in a direction: what the
// far end takes is carried back to the feed as one tangent a node, then the
// volts go out.
func (l Line) outward(volts, next []unit.Voltage, from Feed, way int) bool {
	end := len(volts)
	if way < 0 {
		end = -1
	}
	seen := make([]tangent, len(volts)) // what a node and all beyond take, by the volts before its run
	var beyond tangent
	for i := end - way; i != from.Node; i -= way {
		own := l.Loads[i].tangent(volts[i])
		beyond.at, beyond.slope = beyond.at+own.at, beyond.slope+own.slope
		under := 1 + beyond.slope*l.loop(i, way)
		if !(under > 0) {
			return false
		}
		beyond.at, beyond.slope = beyond.at/under, beyond.slope/under
		seen[i] = beyond
	}
	before := float64(from.Volts)
	for i := from.Node + way; i != end; i += way {
		before -= (seen[i].at + seen[i].slope*before) * l.loop(i, way)
		next[i] = unit.Voltage(before)
	}
	return true
}

// between solves the part of the line between two feeds: volts and current are
// carried along for the current that leaves the first feed, which then is what
// meets the volts of the second.
func (l Line) between(volts, next []unit.Voltage, from, to Feed) bool {
	type straight struct{ at, slope float64 } // against the current that leaves the first feed
	u, amps := straight{at: float64(from.Volts)}, straight{slope: 1}
	carried := make([]straight, len(volts))
	for i := from.Node + 1; i <= to.Node; i++ {
		r := l.loop(i, 1)
		u.at, u.slope = u.at-amps.at*r, u.slope-amps.slope*r
		if u.slope > 0 {
			return false
		}
		carried[i] = u
		own := l.Loads[i].tangent(volts[i])
		amps.at -= own.at + own.slope*u.at
		amps.slope -= own.slope * u.slope
	}
	leaves := 0.0
	switch {
	case u.slope < 0:
		leaves = (float64(to.Volts) - u.at) / u.slope
	case unit.Compare(u.at, float64(to.Volts)) != 0:
		return false // two supplies of unlike volts with nothing between them
	}
	for i := from.Node + 1; i < to.Node; i++ {
		next[i] = unit.Voltage(carried[i].at + carried[i].slope*leaves)
	}
	return true
}

// Amps is the current that a load takes at some volts.
func (l Load) Amps(v unit.Voltage) unit.Current {
	if l.Power == 0 {
		return l.Current
	}
	return l.Current + unit.Current(float64(l.Power)/float64(v))
}

// Limit is the most power that the line can carry to its loads of constant
// power together, in the shares they have now, beside its constant currents.
func (l Line) Limit(feeds ...Feed) (unit.Power, error) {
	if err := l.sound(feeds); err != nil {
		return 0, err
	}
	total := unit.Power(0)
	for _, load := range l.Loads {
		total += load.Power
	}
	carries := func(share float64) bool {
		part := Line{l.Loops, make([]Load, len(l.Loads))}
		for i, load := range l.Loads {
			part.Loads[i] = Load{load.Current, unit.Power(share) * load.Power}
		}
		_, err := part.Solve(feeds...)
		return err == nil
	}
	low, high := 0.0, 1.0
	for carries(high) {
		if low, high = high, 2*high; high > mostShare || total == 0 {
			return unit.Power(math.Inf(1)), nil // nothing holds it back
		}
	}
	for range halvings {
		if middle := (low + high) / 2; carries(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return unit.Power(low) * total, nil
}

// The search for a limit ends here: a line without resistance carries all.
const (
	mostShare = 1e12
	halvings  = 60
)
