// Package control knows the control half of a shop: which gates, triggers,
// switches, sensors and buttons there are and the tag of each, which gates a
// trigger has to open so that air can pass from its machine to the collector
// it starts, what every cause does to every effect, and where a machine's own
// blower could blow back.
//
// It goes by paths, names and sequence alone: it reckons no air, judges
// nothing and prints nothing. A gate that no trigger opens is a fact here and
// a finding elsewhere.
package control
