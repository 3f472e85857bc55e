package room

import "dustbook/plan/unit"

// Missing is what a figure waits for: a field of the shop file, or, where no
// field was left out, the reason in words.
type Missing struct {
	Thing string // the name of what it belongs to; "the shop" for the shop itself
	Field string // the field with its table: "room.height"; empty where no field would help
	Why   string // in words; empty where the field is simply not given
}

// String is what is missing, in words: "room.height of Machine hall".
func (m Missing) String() string {
	switch {
	case m.Why != "":
		return m.Thing + ": " + m.Why
	case m.Thing == theShop:
		return m.Field
	}
	return m.Field + " of " + m.Thing
}

// theShop is what a field of [shop] belongs to.
const theShop = "the shop"

// Figure is a number that was reckoned, or what it waits for.
type Figure[Q ~float64] struct {
	V       Q
	Missing []Missing
}

// Known reports whether there is a number.
func (f Figure[Q]) Known() bool { return len(f.Missing) == 0 }

// known is a figure that was reckoned, through the one rounding.
func known[Q ~float64](x Q) Figure[Q] { return Figure[Q]{V: unit.SixOf(x)} }

// lacking is a figure that waits.
func lacking[Q ~float64](missing ...Missing) Figure[Q] { return Figure[Q]{Missing: missing} }

// add adds what is missing, each once.
func add(list []Missing, more ...Missing) []Missing {
	for _, m := range more {
		seen := false
		for _, had := range list {
			seen = seen || had == m
		}
		if !seen {
			list = append(list, m)
		}
	}
	return list
}
