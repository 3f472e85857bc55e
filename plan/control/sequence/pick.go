package sequence

import (
	"slices"

	"dustbook/plan/control/trace"
)

// Pair is the story of two triggers that overlap: the second comes on while the
// first is on.
type Pair struct {
	First, Second int
	Story         *trace.Trace
}

// Pairs are the first two triggers that are both served while they overlap,
// without a wait, and the first two of which the second has to wait for the
// first: for its air or for the hose that it has. Either order is tried, of two
// that start a collector in common; nil where there are none.
func Pairs(w *Works, air Air) (both, apart *Pair) {
	for _, order := range w.orders() {
		p := &Pair{First: order[0], Second: order[1], Story: Two(w, air, order[0], order[1])}
		first, second := waitsOf(p.Story, p.First), waitsOf(p.Story, p.Second)
		switch {
		case both == nil && len(first)+len(second) == 0:
			both = p
		case apart == nil && slices.ContainsFunc(second, forAnother):
			apart = p
		}
		if both != nil && apart != nil {
			break
		}
	}
	return both, apart
}

// orders are every two triggers that meet, in either order.
func (w *Works) orders() [][2]int {
	var list [][2]int
	for a := range w.Head.Triggers {
		for b := a + 1; b < len(w.Head.Triggers); b++ {
			if w.meet(a, b) {
				list = append(list, [2]int{a, b}, [2]int{b, a})
			}
		}
	}
	return list
}

// meet reports whether two triggers start a collector in common, and each can
// be served.
func (w *Works) meet(a, b int) bool {
	shared := w.starts[a].And(w.starts[b])
	return !shared.Empty() && w.able[a] && w.able[b] && !w.Head.Triggers[a].Purge && !w.Head.Triggers[b].Purge
}

// waitsOf are what a trigger's request waits for in a story.
func waitsOf(t *trace.Trace, trigger int) []trace.Why {
	var list []trace.Why
	for _, s := range t.Lane(trace.RequestIs, trigger) {
		if trace.RequestState(s.State) == trace.Waits {
			list = append(list, trace.Why(s.Why))
		}
	}
	return list
}

// forAnother reports whether what is waited for is another machine's.
func forAnother(why trace.Why) bool { return why == trace.EndTaken || why == trace.Starves }

// Unpressed is the first trigger that notices by itself that a machine runs; the
// first of all where each is a switch that someone presses.
func Unpressed(w *Works) int {
	return max(0, slices.IndexFunc(w.Head.Triggers, func(t trace.Trigger) bool { return !t.Latched }))
}
