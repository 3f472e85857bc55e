// Package room knows the air and the noise of the rooms that a shop stands
// in: which rooms share one air, what a use draws out of that air and what
// comes back, the openings that would make it up, the pressure that follows,
// the changes of air, the heat that leaves with it, the way that filtered air
// takes back, and the noise dose of a use.
//
// What the fans draw and the state of the air are handed in. Nothing is
// predicted where the shop file is silent: such a figure names the fields it
// waits for. Everything is in SI units and leaves through unit.Six.
//
// A pressure reckoned here is an estimate: no figure of this package says
// that a flue draws.
package room
