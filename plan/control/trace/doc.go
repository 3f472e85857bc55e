// Package trace knows how the story of one run of a control half is told: what
// there is (the Head), and what happened when (the Records), from the first
// event until nothing moves any more. It is data only: it knows neither the
// rules that a run keeps nor how a run is made.
//
// Everything is named by its number in a list of the Head, from 0. Times are
// whole milliseconds from the start of the run. Records stand in the order in
// which things happened; of one moment there may be many, and their order
// counts. At the start of every story the power is on, no lockout, every
// powered gate is shut, every fan is off, nothing asks for anything and no
// signal is on; a state holds until a record of the same thing changes it.
//
// To judge a run, walk the Records once. To draw it, ask Lane for the spans of
// one gate, fan, request, input or of the signal.
package trace
