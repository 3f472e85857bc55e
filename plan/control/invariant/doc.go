// Package invariant knows what must hold in every story of a run, and judges it
// from the story alone: it knows nothing of the model that made it. Each rule is
// one Rule with a name; each breach says which rule, when, and of what.
package invariant
