package room

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Balance is what one use does to the air of one space, with the doors shut
// and every fan of the use running with a clean filter. Where something is
// missing its flows are not reckoned, and every figure under them waits for
// the same.
type Balance struct {
	Space *Space
	Use   string
	Runs  bool // a machine runs in it: it is not just gates that stand some way

	Drawn    unit.Flow // out of the space, by fans
	Returned unit.Flow // into it, by fans
	Net      unit.Flow // what has to come in by openings and leaks; below nought where fans blow in more than they draw
	Missing  []Missing

	Changes  Figure[float64]   // of the space's air an hour, by air that comes in by openings and leaks, or goes out by them
	Turnover Figure[float64]   // of the space's air an hour, through the fans
	MakeUp   []Opening         // the opening it takes, for every limit of the data
	Chosen   *Opening          // the same for the depressurisation chosen, with no name of a limit; left out: for the strictest limit in play; nil where neither is
	Passive  Figure[unit.Area] // the opening it takes for the usual speed through a passive one
	Speed    Figure[unit.Velocity]
	Dynamic  unit.Pressure // velocity pressure of that speed
	Pressure Estimate
	Heat     Heat
}

// Known reports whether the flows are reckoned.
func (b *Balance) Known() bool { return len(b.Missing) == 0 }

// balance reckons one space in one use; nil where the use does not touch it.
func (k *Reckoning) balance(s *Space, u Use) *Balance {
	b := &Balance{Space: s, Use: u.Name, Runs: len(u.Machines) > 0}
	var drawn, back float64
	for _, d := range u.Draws {
		out, missing := k.drawn(s, d)
		b.Missing = add(b.Missing, missing...)
		drawn += out
		in, missing := k.back(s, d, out > 0)
		b.Missing = add(b.Missing, missing...)
		back += in
	}
	if drawn == 0 && back == 0 && b.Known() {
		return nil
	}
	if b.Known() {
		grid := unit.Grid(max(drawn, back))
		b.Drawn, b.Returned = unit.Flow(grid(drawn)), unit.Flow(grid(back))
		b.Net = unit.Flow(grid(float64(b.Drawn - b.Returned)))
	}
	k.judge(b)
	return b
}

// drawn is what a collector takes out of a space in a use. Holes in its ducts
// are taken to draw as its ends do.
func (k *Reckoning) drawn(s *Space, d Draw) (out float64, missing []Missing) {
	reach := k.reach(d.Collector)
	if d.Why.Is() {
		for _, m := range reach {
			if m.Room == nil || s.Holds(m.Room) {
				return 0, []Missing{{Thing: d.Collector.Name, Why: d.Why}}
			}
		}
		return 0, nil
	}
	ends, all := d.Ends, 0.0
	for _, e := range ends {
		all += float64(e.Flow)
	}
	if all == 0 && d.Flow > 0 { // only holes: they stand where its machines do, if that is one space
		return k.holes(s, d, reach)
	}
	for _, e := range ends {
		switch {
		case e.Flow <= 0:
		case e.Machine.Room == nil:
			missing = add(missing, Missing{Thing: e.Machine.Name, Field: "machine.room"})
		case s.Holds(e.Machine.Room):
			out += float64(e.Flow) * float64(d.Flow) / all
		}
	}
	return out, missing
}

// holes is what a collector draws from a space through holes alone.
func (k *Reckoning) holes(s *Space, d Draw, reach []*shop.Machine) (out float64, missing []Missing) {
	in, elsewhere := false, false
	for _, m := range reach {
		in = in || s.Holds(m.Room)
		elsewhere = elsewhere || !s.Holds(m.Room)
	}
	switch {
	case in && elsewhere:
		return 0, []Missing{{Thing: d.Collector.Name, Why: source.Because("only-holes")}}
	case in:
		return float64(d.Flow), nil
	}
	return 0, nil
}

// back is what a collector gives back to a space in a use.
func (k *Reckoning) back(s *Space, d Draw, draws bool) (in float64, missing []Missing) {
	c := d.Collector
	switch {
	case !c.Exhaust.Known() && draws:
		return 0, []Missing{{Thing: c.Name, Field: "collector.exhaust"}}
	case c.Exhaust.V != returns:
		return 0, nil
	case c.ReturnsTo == nil && draws:
		return 0, []Missing{{Thing: c.Name, Field: "collector.returns_to"}}
	case !s.Holds(c.ReturnsTo):
		return 0, nil
	case d.Why.Is():
		return 0, []Missing{{Thing: c.Name, Why: d.Why}}
	}
	return float64(d.Flow), nil
}

// judge reckons what follows from the flows.
func (k *Reckoning) judge(b *Balance) {
	if !b.Known() {
		b.Changes, b.Turnover = lacking[float64](b.Missing...), lacking[float64](b.Missing...)
		b.Passive, b.Speed = lacking[unit.Area](b.Missing...), lacking[unit.Velocity](b.Missing...)
		b.Pressure.Missing = b.Missing
		b.Heat.Missing = b.Missing
		return
	}
	in := max(b.Net, 0)
	b.Changes, b.Turnover = b.Space.Changes(max(b.Net, -b.Net), 1), b.Space.Changes(b.Drawn, 1)
	b.MakeUp = k.openings(b)
	b.Passive = known(Face(in, inletSpeed))
	b.Speed = b.through(in)
	b.Dynamic = unit.SixOf(k.air.dynamic(b.Speed.V))
	b.Pressure = k.estimate(b)
	b.Heat = k.heat(in)
}

// through is the speed in the openings that the file states.
func (b *Balance) through(q unit.Flow) Figure[unit.Velocity] {
	area := b.Space.Openings
	switch {
	case !area.Known():
		return lacking[unit.Velocity](area.Missing...)
	case area.V == 0 && q > 0:
		return lacking[unit.Velocity](Missing{Thing: b.Space.Name(), Why: source.Because("no-opening")})
	case q == 0:
		return known(unit.Velocity(0))
	}
	return known(SpeedThrough(q, area.V))
}
