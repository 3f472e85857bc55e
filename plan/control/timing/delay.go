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
	for _, g := range gatesInOrder(k, a.Trigger) {
		if !g.Travel.Known() {
			d.Missing = append(d.Missing, Missing{g.Name, "gate.travel"})
			continue
		}
		if g.Proves.V != "switch" {
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

// arrival is how long a gate moves before it counts as open: its travel where
// a switch or a person tells of its end, else that times the least time-out of
// its drive.
func arrival(g *shop.Gate) unit.Time {
	if g.Proves.V == "switch" || g.Proves.V == "person" {
		return g.Travel.V
	}
	least, _ := control.TimeOut()
	return unit.SixOf(unit.Time(float64(g.Travel.V) * least))
}

// gatesInOrder are the powered gates that open with a trigger, in the order in
// which they move.
func gatesInOrder(k *control.Reckoning, t *shop.Trigger) []*shop.Gate {
	opens := slices.Clone(t.Opens)
	if t.Machine != nil {
		opens = append(opens, t.Machine.AlsoOpen...)
	}
	return k.Order(opens)
}
