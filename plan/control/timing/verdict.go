package timing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Verdict holds a time that is set against the least that it should be.
type Verdict uint8

const (
	Unknown Verdict = iota // an input is missing, and what is known is not passed
	NoFan                  // the trigger starts no fan
	NotSet                 // the file sets none: the least is used
	Enough
	Between // enough with fair figures, short with cautious ones
	Short
)

// hold judges a time that the file may set. Known says that nothing is
// missing from least and cautious; without it a set time may be short for
// sure, and is never enough.
func hold(set shop.Field[unit.Time], least, cautious unit.Time, known bool) Verdict {
	reaches := func(t unit.Time) bool { return unit.AtLeast(float64(set.V), float64(t)) }
	switch {
	case set.Known() && !reaches(least):
		return Short
	case !known:
		return Unknown
	case !set.Known():
		return NotSet
	case !reaches(cautious):
		return Between
	}
	return Enough
}

// used is what the control works with: the set value, else the reckoned one.
func used[Q any](set shop.Field[Q], least Q) Q {
	if set.Known() {
		return set.V
	}
	return least
}
