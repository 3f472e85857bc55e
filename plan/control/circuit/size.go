package circuit

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Device is a breaker or fuse of a standard size.
type Device struct {
	Size  unit.Current
	Basis source.Basis // of the size
	Known bool         // false where the list of sizes ends below it
}

// next is the standard size at a current, else the next larger one.
func next(i unit.Current) Device {
	for _, d := range devices {
		if unit.AtLeast(float64(d.size), float64(i)) {
			return Device{d.size, d.basis, true}
		}
	}
	return Device{}
}

// Breaker is the greatest inverse-time breaker of a motor by its current in
// the table.
func Breaker(table unit.Current) Device { return next(times("breaker", table)) }

// RaisedBreaker is how large the breaker of a motor may be that cannot start
// on Breaker: no size is rounded up to.
func RaisedBreaker(table unit.Current) unit.Current {
	return times("breaker if it will not start", table)
}

// Overload is the highest trip of a motor's overload by its nameplate's
// current and service factor.
func Overload(nameplate unit.Current, serviceFactor float64) unit.Current {
	if unit.AtLeast(serviceFactor, figureTable.Figure("service factor")) {
		return times("overload with service factor", nameplate)
	}
	return times("overload", nameplate)
}

// Conductors is the current that the conductors of a motor have to carry.
func Conductors(table unit.Current) unit.Current { return times("conductor", table) }
