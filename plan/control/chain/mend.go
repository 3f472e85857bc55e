package chain

import (
	"dustbook/plan/control"
	"dustbook/plan/unit"
)

// Mend is one change that would let a chain hold with a margin, all else as it
// is. One of Conductor, Feed and Together is set.
type Mend struct {
	Conductor string          // the next size of the same series that holds
	Feed      *control.Device // where to connect the supply instead
	Last      bool            // Feed is the last device; else it stands before the end
	Together  int             // as many gates at once, at most
	Margin    unit.Voltage    // the least that is left then
}

// mends tries the changes that a shop can make to a chain whose margin is not
// wide. None is named that does not hold, nor a conductor that carries less than
// the chain may draw.
func (a *Answer) mends(t trial) []Mend {
	if margin, known, ok := a.try(t); !known || ok && a.Wide(margin) {
		return nil
	}
	var list []Mend
	for _, c := range Larger(t.area) {
		if carries, _, known := Carries(c.Area); known && !unit.AtLeast(float64(carries), float64(a.Most)) {
			continue
		}
		larger := t
		larger.area = c.Area
		if margin, _, ok := a.try(larger); ok && a.Wide(margin) {
			list = append(list, Mend{Conductor: c.Size, Margin: margin})
			break
		}
	}
	if m, ok := a.feed(t); ok {
		list = append(list, m)
	}
	fewer := t
	for fewer.together = min(t.together, len(t.hurt(false).movers)); fewer.together > 1; {
		fewer.together--
		if margin, _, ok := a.try(fewer); ok && a.Wide(margin) {
			return append(list, Mend{Together: fewer.together, Margin: margin})
		}
	}
	return list
}

// feed finds the stop where the supply, connected there, leaves the most.
func (a *Answer) feed(t trial) (best Mend, found bool) {
	for i, taker := range t.takers {
		moved := t
		moved.feed = i + 1
		margin, _, ok := a.try(moved)
		if ok && a.Wide(margin) && (!found || unit.Compare(float64(margin), float64(best.Margin)) > 0) {
			best, found = Mend{Feed: taker.device, Last: i == len(t.takers)-1, Margin: margin}, true
		}
	}
	return best, found
}

// splits tries each device whose need is known alone on the cable up to it.
func (a *Answer) splits(t trial) bool {
	tried := false
	for i, n := range a.Nodes {
		if !n.Judged || n.Need == 0 {
			continue
		}
		alone := t
		alone.together, alone.takers = 1, make([]taker, len(t.takers))
		alone.takers[i] = t.takers[i]
		nodes, _, err := alone.hurt(false).lowest()
		if err != nil || !a.Wide(nodes[i+1].volts-n.Need) {
			return false
		}
		tried = true
	}
	return tried
}

// try is the least margin of a trial over the devices whose need is known; not
// ok where the cable cannot carry it.
func (a *Answer) try(t trial) (margin unit.Voltage, known, ok bool) {
	for _, n := range a.Nodes {
		known = known || n.Judged && n.Need > 0
	}
	nodes, _, err := t.hurt(false).lowest()
	if err != nil || !known {
		return 0, known, false
	}
	first := true
	for i, n := range a.Nodes {
		if m := nodes[i+1].volts - n.Need; n.Judged && n.Need > 0 && (first || m < margin) {
			margin, first = m, false
		}
	}
	return margin, true, true
}
