package timing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Leg is a length of duct or hose and the speed of the air in it.
type Leg struct {
	Length unit.Length
	Speed  unit.Velocity
}

// Path is the way of the air from a port to its collector in one use.
type Path struct {
	Port      *shop.Port
	Collector *shop.Collector
	Use       string // the use's name
	Filter    string // the state of the collector's filter
	Legs      []Leg
	Known     bool // the air of the use was solved
}

// Air is what is known of the moving air and of what it has to carry.
type Air struct {
	Paths []Path
	Chips map[*shop.Machine]Chips // of machines whose cut is given
}

// Chips is what a machine's heaviest usual cut throws.
type Chips struct{ Solid, Loose unit.Flow }

// Transit is how long chips take along a path.
type Transit struct {
	Path     Path
	Length   unit.Length
	Air      unit.Time // what the air itself takes
	Fair     unit.Time // chips at a fair share of the air's speed
	Cautious unit.Time // chips at a cautious share of it
}

// TransitOf sums the legs of a path: t = Σ L/(k v), with k the speed of chips
// against that of the air; common practice, no source. It is false where the
// air of a leg stands still or was not solved.
func TransitOf(p Path) (Transit, bool) {
	t := Transit{Path: p}
	var length unit.Length
	var air float64
	for _, l := range p.Legs {
		if l.Length == 0 {
			continue
		}
		if l.Speed <= 0 {
			return t, false
		}
		length += l.Length
		air += float64(l.Length) / float64(l.Speed)
	}
	t.Length, t.Air = unit.SixOf(length), unit.SixOf(unit.Time(air))
	t.Fair = unit.SixOf(unit.Time(air / share("chip speed fair")))
	t.Cautious = unit.SixOf(unit.Time(air / share("chip speed cautious")))
	return t, p.Known
}
