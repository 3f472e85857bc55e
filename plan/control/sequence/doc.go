// Package sequence knows how the control half of a shop behaves in time: a
// model that is run. It is given what there is (Works, made from a shop and its
// control half), an Air that judges open gates, and events; it answers with the
// story of the run, as package trace tells it.
//
// It runs from event to event and keeps no wall clock. It moves gates, runs
// fans and lights the signal; it never starts or stops a machine. It reckons no
// air: whether open gates carry and feed is asked of the Air. Whether a story
// keeps the rules is judged elsewhere, from the story alone.
//
// Where a request waits, the signal is on, and it is looked at again whenever
// anything changes. A lockout, a stop button, a power cut and a hold of the fan
// make a trigger that is on wait until it was seen off; used-up starts and a fan
// that has to rest do not. Under lockout what runs goes on until its own cause
// ends, and no gate moves. Closings wait until every opening of their collector
// has arrived. A request of several collectors starts none before all its gates
// have arrived.
//
// What the model leaves out: the time a sensor takes to notice, the fan's
// run-up, the true place of a gate on its way. A gate that is turned round, or
// sent off from between its stops, is given its whole travel again.
package sequence
