// Package timing knows the times of the control half of a shop: what delay
// and run-on a trigger needs, how fast a fan runs up and how long it coasts,
// how much dust is made before its air is there, how often it may start, and
// where the threshold of a current trigger can stand.
//
// How fast the air is on every path, and what a cut throws, is handed in. The
// package judges by typed verdicts and prints nothing; where the shop file is
// silent a figure names the fields it waits for. Everything is in SI units
// and leaves through unit.Six.
//
// A time reckoned here is for setting a timer. None says when it is right to
// reach into a fan or a machine: a wheel turns long after its motor is off.
package timing
