package sequence

import "strconv"

// FaultKind says why a shop cannot be run.
type FaultKind uint8

// The kinds of fault.
const (
	ManyGates FaultKind = iota // more than a run can follow
	ManyMachines
	ManyCollectors
	ManyStretches
	StrayGate // on no way to a collector
)

// faultNames are the stable names of the kinds, by which their texts are found.
var faultNames = [...]string{"many-gates", "many-machines", "many-collectors", "many-stretches", "stray-gate"}

// Name is the stable name of the kind.
func (k FaultKind) Name() string { return faultNames[k] }

// Fault is why a shop cannot be run.
type Fault struct {
	Kind        FaultKind
	Count, Most int    // of too many
	Name        string // of a stray gate
}

// Error is the fault for a message of the program.
func (f *Fault) Error() string {
	if f.Kind == StrayGate {
		return f.Kind.Name() + ": " + f.Name
	}
	return f.Kind.Name() + ": " + strconv.Itoa(f.Count) + ", at most " + strconv.Itoa(f.Most)
}
