package drawing

import "dustbook/plan/duct"

// growths are how much larger than the sheet a drawing may be, until its
// labels stand close to what they name.
var growths = [...]float64{1, 1.12, 1.25, 1.4, 1.6}

// How many more strained labels than the best size has so far are borne with
// at a smaller size, while they are first placed: some find room later.
const bearable = 3

// growthFor finds the step of the size to draw at: from the largest down, the
// last before the strain grows. Lay lays out a size and counts its strained
// labels; it may give up, and say so, where patience is lost.
func growthFor(lay func(step int, wait *patience) (strain int, ok bool)) int {
	best := len(growths) - 1
	least, _ := lay(best, nil)
	for step := best - 1; step >= 0; step-- {
		strain, ok := lay(step, &patience{left: least + bearable})
		if !ok || strain > least {
			break
		}
		best, least = step, strain
	}
	return best
}

// named is the last size up to which a drawing says all it could: one that
// needs more room for that is brief.
const named = 2

// fitting finds the size to draw at, and whether briefly: in full at the
// smallest size at which, and at all sizes from it to the last such drawings
// may take, no label is strained; where there is none, briefly as growthFor
// says.
func fitting(lay func(step int, brief bool, wait *patience) (strain int, ok bool)) (step int, brief bool) {
	for step = named; step >= 0; step-- {
		if strain, ok := lay(step, false, &patience{left: bearable}); !ok || strain > 0 {
			break
		}
	}
	if step < named {
		return step + 1, false
	}
	return growthFor(func(step int, wait *patience) (int, bool) { return lay(step, true, wait) }), true
}

// neutralSize lays out the neutral plan at the size it is drawn at. A brief
// one leaves out names of drops and of their gates.
func (b *Board) neutralSize() (s *sheet, step int) {
	type size struct {
		step  int
		brief bool
	}
	laid := map[size]*sheet{}
	step, brief := fitting(func(step int, brief bool, wait *patience) (int, bool) {
		s, ok := b.neutralAt(step, brief, wait)
		if !ok {
			return 0, false
		}
		laid[size{step, brief}] = s
		return s.strain(), true
	})
	return laid[size{step, brief}], step
}

// neutralAt lays out the neutral plan at a size, which may turn out hopeless.
func (b *Board) neutralAt(step int, brief bool, wait *patience) (s *sheet, ok bool) {
	base, ok := b.layoutWithin(step, brief, wait)
	if !ok {
		return nil, false
	}
	s = base.with(nil)
	if s.wait = wait; wait != nil {
		wait.strained = s.strained
	}
	if s.placeOwn(); wait.lost() {
		return nil, false
	}
	s.wait = nil
	return s, true
}

// useSteps is how many sizes are tried for a use.
const useSteps = 3

// sheet is a plan as large as its labels need, drawn. A use may grow some
// steps beyond the neutral plan for its tags.
func (b *Board) sheet(r *duct.Result) *sheet {
	s, step := b.neutral()
	if r != nil {
		s = b.useSize(r, step, min(step+useSteps, len(growths)), s.brief)
		s.draw()
	}
	return s
}

// useSize lays out a use at the first size from one on at which none of what
// it says beside the neutral plan is strained; where some always is, at the
// first with the fewest strained labels of all.
func (b *Board) useSize(r *duct.Result, from, to int, brief bool) (best *sheet) {
	least := 0
	for step := from; step < to; step++ {
		s := b.layout(step, brief).with(r)
		fixed := s.strain()
		s.placeOwn()
		strain := s.strain()
		if best == nil || strain < least {
			best, least = s, strain
		}
		if strain == fixed {
			return s
		}
	}
	return best
}

// strain counts the labels that lie on something or stand far from what they
// name, and with more weight the machines that stand badly.
func (s *sheet) strain() int {
	count := 0
	for _, l := range s.words {
		if s.strained(l) {
			count++
		}
	}
	for _, m := range s.machines {
		if l := m.label; len(l.leader) > 1 {
			count += misplaced
		} else if s.onWall(l.box) {
			count += onAWall
		}
	}
	return count
}

// onWall reports whether a box lies on a wall.
func (s *sheet) onWall(b box) bool {
	for i := range s.strips {
		if s.strips[i].wall && s.strips[i].crosses(b) {
			return true
		}
	}
	return false
}

// How many strained labels a machine counts for that found no place where it
// stands, and one that lies on a wall.
const (
	misplaced = 5
	onAWall   = 2
)

// strained reports whether a label lies on something or stands far off.
func (s *sheet) strained(l *label) bool { return l.far() || s.lie(l.box, l, 1) > 0 }

// far reports whether a label stands far from what it names.
func (l *label) far() bool {
	const far = 700 // tenths
	return len(l.leader) > 1 && span(l.leader[0], l.leader[1]) > far
}
