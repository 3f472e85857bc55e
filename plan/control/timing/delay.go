package timing

import (
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Move is one powered gate of a trigger and when it moves, counted from the
// moment the trigger counts.
type Move struct {
	Gate        *shop.Gate
	From, Until unit.Time // Until it counts as open
}

// Delay is how long a fan has to wait after its trigger.
type Delay struct {
	Moves    []Move     // gates that open with it, in the order in which they move
	Slowest  *shop.Gate // the one that is open last; nil where none moves
	Open     unit.Time  // when that one is open
	Least    unit.Time  // no less than practice asks; with a missing travel, of what is known
	Missing  []Missing
	Unproved []*shop.Gate // arrive by time alone
	Set      shop.Field[unit.Time]
	Used     unit.Time
	Verdict  Verdict
}

// delayOf reckons the least start delay of a trigger: until the slowest
// powered gate that opens with it has arrived, those that its machine wants
// opened as well among them, no more of them moving at once than the supply
// may move, and no less than practice asks. It is for a duct at rest, with
// every gate shut; what other triggers move at the same time is not in it.
func delayOf(s *shop.Shop, k *control.Reckoning, a *control.Answer) Delay {
	d := Delay{Set: a.Trigger.StartDelay}
	free := make([]unit.Time, max(1, s.Control.MovesTogether.V))
	for _, g := range k.OpensWith(a.Trigger) {
		if !g.Travel.Known() {
			d.Missing = append(d.Missing, Missing{g.Name, "gate.travel"})
			continue
		}
		if ByTimeAlone(g) {
			d.Unproved = append(d.Unproved, g)
		}
		mover := slices.Index(free, slices.Min(free))
		m := Move{Gate: g, From: unit.SixOf(free[mover]), Until: unit.SixOf(free[mover] + arrival(g))}
		free[mover] = m.Until
		if d.Slowest == nil || m.Until > d.Open {
			d.Slowest, d.Open = g, m.Until
		}
		d.Moves = append(d.Moves, m)
	}
	d.Least = max(d.Open, seconds("start delay least"))
	d.Used = used(d.Set, d.Least)
	d.Verdict = hold(d.Set, d.Least, d.Least, len(d.Missing) == 0)
	if len(a.Trigger.Starts) == 0 {
		d.Verdict = NoFan
	}
	return d
}

// ByTimeAlone reports whether a gate counts as open when its time is over:
// neither a switch nor a person tells that it is.
func ByTimeAlone(g *shop.Gate) bool {
	return g.Proves.V != "switch" && g.Proves.V != "person"
}

// arrival is how long a gate moves before it counts as open: its travel where
// a switch or a person tells of its end, else its time-out.
func arrival(g *shop.Gate) unit.Time {
	if ByTimeAlone(g) {
		return TimeOut(g.Travel.V)
	}
	return g.Travel.V
}

// TimeOut is how long a gate of some travel is given: then it counts as arrived
// by time, or as not arrived where a switch should have told. It is the least
// time-out of a drive.
func TimeOut(travel unit.Time) unit.Time {
	least, _ := control.TimeOut()
	return unit.SixOf(unit.Time(float64(travel) * least))
}
