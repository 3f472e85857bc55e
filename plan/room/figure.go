package room

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Missing is what a figure waits for: a field of the shop file, or, where no
// field was left out, the reason.
type Missing struct {
	Thing string        // the name of what it belongs to; empty for the shop itself
	Field string        // the field with its table: "room.height"; empty where no field would help
	Why   source.Reason // none where the field is simply not given
}

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
