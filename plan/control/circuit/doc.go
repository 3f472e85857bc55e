// Package circuit knows the arithmetic of motor circuits in the US: the
// current of a motor by the published tables, the least conductor and the
// greatest breaker that go with it, and what the circuit of a machine or
// collector, as the shop file gives it, comes to.
//
// It compares figures and designs nothing: it knows no second motor on the
// circuit, no bundle of conductors and no local amendment. Breaker,
// conductors, overload and disconnect are a licensed electrician's to choose.
// Metric conductors are not in the table and are not compared. It judges by
// typed verdicts and prints nothing. Everything is in SI units.
package circuit
