// Package takeoff knows what a plan takes and what it leaves behind in
// things: how fast each machine fills the bin it throws into, how long until
// the bin has to be emptied, and how much air each square metre of filter
// takes. What the fans move is handed in.
//
// Where the shop file is silent nothing is reckoned: such a figure names the
// fields it waits for.
package takeoff
