package circuit

import (
	"slices"

	"dustbook/plan/source"
)

// Bases are the texts that the verdict of a circuit rests on, each once. One
// whose mark does not decide leaves the verdict a question.
func (o *Of) Bases() []source.Basis {
	var list []source.Basis
	add := func(b source.Basis) {
		if b.Mark != 0 && !slices.Contains(list, b) {
			list = append(list, b)
		}
	}
	if o.Told {
		add(o.Table.Basis)
		add(o.Table.System)
		add(BasisOf("table current"))
	}
	if o.Told && o.Circuit.Wire.Known() {
		add(BasisOf("conductor"))
	}
	add(o.Carries.Basis)
	if o.Told && o.Circuit.Wire.Known() && !o.OnGiven && o.On == Warm {
		add(BasisOf("terminals up to"))
	}
	if o.Told && o.Circuit.Breaker.Known() {
		add(BasisOf("breaker"))
		add(o.Largest.Basis)
	}
	if o.Verdict == WithOverload {
		add(smallTable.Rows[0].Basis)
	}
	return list
}
