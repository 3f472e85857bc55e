package sequence

import "dustbook/plan/control/trace"

// Event is something that happens from outside, at a time.
type Event struct {
	At    trace.Time
	What  trace.What
	Thing int // what the What is about; 0 where it is about nothing
}

// Air judges open gates. It answers for a fan that runs, and always the same to
// the same question.
type Air interface {
	// Judge says, with these powered gates open, the machines that run and those
	// whose dust has to be carried: which of the running get less than their need,
	// and in which stretches on the way of the carrying the air is too slow. Gates
	// that a person moves count as open where they are on the way of a carrying
	// machine.
	Judge(open, running, carrying trace.Set) (short, slow trace.Set)
}

// Ample is an Air that always feeds and always carries: for stories of the
// order of things alone.
type Ample struct{}

// Judge finds nothing short and nothing slow.
func (Ample) Judge(_, _, _ trace.Set) (short, slow trace.Set) { return }
