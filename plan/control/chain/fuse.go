package chain

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Fuse is what the fuse of a chain has to lie between: it carries what the
// chain may draw, and no more than the conductor does.
type Fuse struct {
	Least unit.Current // what the chain may draw; 0 where that is not known
	Most  unit.Current // what the conductor carries
	Basis source.Basis // of Most
	Known bool         // Most is known
	Heat  bool         // the chain may draw more than its conductor carries
	Idle  bool         // the supply gives no more than Most: such a fuse may never blow
	Bound Bound
}

// Bound says what holds a chain back first.
type Bound uint8

// The bounds.
const (
	NoBound Bound = iota // not known
	ByVolts              // the volts are used up before the conductor is
	ByHeat               // the conductor is
)

// fuse is the fuse of a chain behind a supply that gives so much; 0 where that
// is not known.
func (a *Answer) fuse(t trial, has unit.Current) Fuse {
	f := Fuse{Least: a.Most}
	f.Most, f.Basis, f.Known = Carries(t.area)
	f.Idle = f.Known && has > 0 && unit.AtLeast(float64(f.Most), float64(has))
	if !f.Known || a.Most == 0 {
		return f
	}
	f.Heat = unit.Compare(float64(f.Least), float64(f.Most)) > 0
	if a.Worst < 0 || !a.Nodes[a.Worst].Solved || a.Nodes[a.Worst].Need == 0 {
		return f
	}
	n := a.Nodes[a.Worst]
	f.Bound = ByVolts
	lost, mayLose := float64(a.Supply-n.Volts), float64(a.Supply-n.Need)
	if unit.Compare(float64(f.Least)*mayLose, float64(f.Most)*lost) > 0 {
		f.Bound = ByHeat
	}
	return f
}
