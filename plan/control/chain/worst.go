package chain

import (
	"cmp"
	"errors"
	"slices"

	"dustbook/plan/unit"
)

// hurt is a line whose movers may take their loads stalled, so many of them
// together.
type hurt struct {
	line     Line // every load at rest: constant currents
	hard     []Load
	movers   []int // nodes
	together int
	feeds    []Feed
}

// worst is the lowest volts that a node may get, and which movers bring it
// there, in the order of the line.
type worst struct {
	volts unit.Voltage
	set   []int
}

// lowest finds the worst of every node. Exact is false where there are more
// sets than are tried one by one: the volts are then a floor, at or below the
// lowest. The error is ErrNoSolution where a set asks for more than the line
// can carry, and errUnsure where that is not known.
func (h hurt) lowest() (nodes []worst, exact bool, err error) {
	if !slices.ContainsFunc(h.movers, func(m int) bool { return h.hard[m].Power > 0 }) {
		nodes, err = h.straight()
		return nodes, true, err
	}
	if h.sets() <= mostSets {
		nodes, err = h.everySet()
		return nodes, true, err
	}
	nodes, err = h.floor()
	return nodes, false, err
}

// errUnsure says that all movers together ask for more than the line can
// carry, and that the permitted sets are too many to try.
var errUnsure = errors.New("more sets than can be tried")

// mostSets is how many sets of movers are tried one by one.
const mostSets = 2000

// sets is how many sets of movers are permitted, counted no further than it
// matters.
func (h hurt) sets() int {
	total, of := 1, 1.0
	for k := 1; k <= min(h.together, len(h.movers)) && total <= mostSets; k++ {
		of = of * float64(len(h.movers)-k+1) / float64(k)
		total += int(min(of, mostSets+1))
	}
	return total
}

// straight goes by the rule that with constant currents what movers take from
// a node's volts adds up: the movers that take most are the worst set.
func (h hurt) straight() ([]worst, error) {
	base, err := h.line.solve(h.feeds)
	if err != nil {
		return nil, err
	}
	with := make([][]unit.Voltage, len(h.movers))
	for i, m := range h.movers {
		if with[i], err = h.with(m).solve(h.feeds); err != nil {
			return nil, err
		}
	}
	nodes := make([]worst, len(base))
	order, takes := make([]int, len(h.movers)), make([]float64, len(h.movers))
	for n := range nodes {
		for i := range order {
			order[i], takes[i] = i, unit.Six(float64(base[n]-with[i][n]))
		}
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(takes[b], takes[a]) })
		nodes[n].volts = base[n]
		for _, i := range order[:min(h.together, len(order))] {
			if takes[i] > 0 {
				nodes[n].volts -= base[n] - with[i][n]
				nodes[n].set = append(nodes[n].set, h.movers[i])
			}
		}
		slices.Sort(nodes[n].set)
		if !(nodes[n].volts > 0) {
			return nil, ErrNoSolution
		}
	}
	return nodes, nil
}

// with is the line with movers stalled.
func (h hurt) with(movers ...int) Line {
	l := Line{h.line.Loops, slices.Clone(h.line.Loads)}
	for _, m := range movers {
		l.Loads[m] = h.hard[m]
	}
	return l
}

// everySet tries every permitted set.
func (h hurt) everySet() ([]worst, error) {
	nodes := make([]worst, len(h.line.Loads))
	var set []int
	var try func(from int) error
	try = func(from int) error {
		volts, err := h.with(set...).Solve(h.feeds...)
		if err != nil {
			return err
		}
		for n, v := range volts {
			at := &nodes[n]
			if at.volts != 0 && !(v < at.volts) {
				continue
			}
			if at.volts == 0 || unit.Compare(float64(v), float64(at.volts)) < 0 { // of sets that print alike, the first
				at.set = slices.Clone(set)
			}
			at.volts = v
		}
		for i := from; i < len(h.movers) && len(set) < h.together; i++ {
			set = append(set, h.movers[i])
			if err := try(i + 1); err != nil {
				return err
			}
			set = set[:len(set)-1]
		}
		return nil
	}
	err := try(0)
	return nodes, err
}

// floor goes by the currents at the volts that every load would get if all
// stalled at once: no permitted set takes more.
func (h hurt) floor() ([]worst, error) {
	all := Line{h.line.Loops, slices.Clone(h.line.Loads)}
	for _, m := range h.movers {
		hard, rest := h.hard[m], h.line.Loads[m]
		all.Loads[m] = Load{max(hard.Current, rest.Current), hard.Power}
	}
	volts, err := all.Solve(h.feeds...)
	if err != nil {
		return nil, unsure(err)
	}
	plain := hurt{line: Line{Loops: h.line.Loops}, movers: h.movers, together: h.together, feeds: h.feeds}
	for n, v := range volts {
		plain.line.Loads = append(plain.line.Loads, Load{Current: h.line.Loads[n].Amps(v)})
		plain.hard = append(plain.hard, Load{Current: h.hard[n].Amps(v)})
	}
	nodes, err := plain.straight()
	return nodes, unsure(err)
}

func unsure(err error) error {
	if errors.Is(err, ErrNoSolution) {
		return errUnsure
	}
	return err
}
