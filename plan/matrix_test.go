package plan_test

import (
	"slices"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/control/sequence"
	"dustbook/plan/control/trace"
)

// The matrix, which people wire by, says the same as the model that is run: what
// a trigger opens, shuts and starts there happens in its story, and nothing else
// moves.
func TestMatrixSaysWhatTheModelDoes(t *testing.T) {
	p := schoolPlan(t)
	s := p.Shop
	works, _, err := p.Sequence()
	if err != nil {
		t.Fatal(err)
	}
	m := p.Control.Matrix
	looked := 0
	for _, r := range m.Rows {
		if r.Cause != control.TriggerOn {
			continue
		}
		at := slices.Index(s.Triggers, r.Trigger)
		whole := true
		for _, w := range p.Control.Ways[at].Ways {
			whole = whole && w.Whole()
		}
		story := sequence.One(works, sequence.Ample{}, at)
		for i, c := range m.Columns {
			moved, says := false, r.Cells[i].Act != control.Nothing
			switch {
			case c.Gate != nil:
				moved = reaches(story, trace.GateIs, slices.Index(s.Gates, c.Gate), uint8(trace.Open))
			case c.Collector != nil:
				moved = reaches(story, trace.FanIs, slices.Index(s.Collectors, c.Collector), uint8(trace.FanOn))
			default:
				continue
			}
			looked++
			if whole && moved != says {
				t.Errorf("%s: the matrix says %q of column %d, in its story it happens: %v", r.Trigger.Name, r.Cells[i], i, moved)
			}
			if !whole && moved {
				t.Errorf("%s has no whole way, and something moves in column %d", r.Trigger.Name, i)
			}
		}
	}
	if looked < 50 {
		t.Errorf("only %d cells were looked at", looked)
	}
}

// reaches reports whether a thing comes to a state in a story.
func reaches(story *trace.Trace, kind trace.Kind, thing int, state uint8) bool {
	for _, span := range story.Lane(kind, thing) {
		if span.State == state {
			return true
		}
	}
	return false
}
