package duct

import (
	"math"
	"strconv"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// TraverseSet is one published set of the points of a traverse along a
// diameter. A traverse keeps to one set: the points of two sets stand for
// other shares of the bore and are never mixed.
type TraverseSet struct {
	Family    string    // as the data name it: log-linear or equal-area, and how many
	Fractions []float64 // shares of the bore, from the wall
	Basis     source.Basis
}

// TraverseSets lists the sets in the order of the data.
func TraverseSets() []TraverseSet {
	var list []TraverseSet
	for _, r := range traverseRows {
		if len(list) == 0 || list[len(list)-1].Family != r.Text("family") {
			list = append(list, TraverseSet{Family: r.Text("family"), Basis: r.Basis})
		}
		last := &list[len(list)-1]
		last.Fractions = append(last.Fractions, r.Number("fraction"))
	}
	return list
}

// Points are the set's places in a duct, from the wall.
func (s TraverseSet) Points(bore unit.Length) []unit.Length {
	var list []unit.Length
	for _, x := range s.Fractions {
		list = append(list, unit.Length(unit.Six(x*float64(bore))))
	}
	return list
}

// What a traverse of a narrow and of a wide duct goes by.
const (
	narrowSet = "log-linear 6"
	wideSet   = "log-linear 10"
)

// TraverseSetFor is the set to take in a duct: six points on each diameter in
// a narrow one, ten in a wider one.
func TraverseSetFor(bore unit.Length) TraverseSet {
	want := wideSet
	if unit.AtLeast(float64(NarrowBore()), float64(bore)) {
		want = narrowSet
	}
	for _, s := range TraverseSets() {
		if s.Family == want {
			return s
		}
	}
	panic("duct: traverse.csv has no set " + want)
}

// NarrowBore is the widest bore for which six points are enough.
func NarrowBore() unit.Length {
	inches, _ := ProofFigure("six points up to")
	return unit.Must[unit.Length](unit.Short(inches) + " in")
}

// MeanRoot is the root that stands for the mean speed of readings of velocity
// pressure: the roots first, then their mean. A pressure below zero is noise
// about none and counts as none; without readings it is 0.
func MeanRoot(pressures []float64) float64 {
	if len(pressures) == 0 {
		return 0
	}
	sum := 0.0
	for _, p := range pressures {
		sum += math.Sqrt(max(p, 0))
	}
	return sum / float64(len(pressures))
}

// RootOfMean is the mistake that MeanRoot avoids: the mean first, then its
// root, which is too much.
func RootOfMean(pressures []float64) float64 {
	if len(pressures) == 0 {
		return 0
	}
	sum := 0.0
	for _, p := range pressures {
		sum += p
	}
	return math.Sqrt(max(sum/float64(len(pressures)), 0))
}

// TraverseExample are the pressures of the worked example with the unit they
// are in, inches of water, and the constant that turns a root into feet a
// minute.
func TraverseExample() (pressures []float64, in string, constant float64, basis source.Basis) {
	for _, n := range []int{1, 2, 3} {
		p, from := ProofFigure("example pressure " + strconv.Itoa(n))
		pressures, basis = append(pressures, p), from
	}
	constant, _ = ProofFigure("speed of root")
	for _, r := range proofRows {
		if r.Text("figure") == "example pressure 1" {
			in = r.Text("unit")
		}
	}
	return pressures, in, constant, basis
}
