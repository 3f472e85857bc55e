package control

import (
	"cmp"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Cause says what kind of thing a row of the matrix is about.
type Cause uint8

// The causes, in the order of the rows.
const (
	TriggerOn Cause = iota
	TriggerOff
	PurgePressed
	LockoutOn
	PowerReturned
	SupplyLow
	LevelHigh
	LevelVeryHigh
	StopPressed
	NotArrived
	GateLocked
	StartsUsed
)

// Column is one effect: a powered gate, a collector, or the signal.
type Column struct {
	Gate      *shop.Gate
	Collector *shop.Collector
}

// Row is one cause with what it does to every effect.
type Row struct {
	Cause     Cause
	Trigger   *shop.Trigger    // of TriggerOn and TriggerOff
	Sensor    *shop.Sensor     // of the levels
	Stop      *shop.StopButton // of StopPressed
	Collector *shop.Collector  // of NotArrived, GateLocked and StartsUsed
	Watched   []*shop.Collector
	ByHand    []*shop.Gate // gates on its ways that a person opens
	Cells     []Cell       // one for each column
}

// Matrix is the cause-and-effect matrix: causes as rows, effects as columns.
type Matrix struct {
	Columns []Column
	Rows    []*Row
	Moves   int // how many gates move at once
}

// Acts are the acts that stand in the matrix, in the order of the key.
func (m *Matrix) Acts() []Act {
	used := map[Act]bool{}
	for _, r := range m.Rows {
		for _, c := range r.Cells {
			used[c.Act] = true
		}
	}
	var list []Act
	for a := Opens; a <= Signals; a++ {
		if used[a] {
			list = append(list, a)
		}
	}
	return list
}

// matrix computes the matrix; nil for a shop without a control half.
func (k *Reckoning) matrix() *Matrix {
	if !k.Given {
		return nil
	}
	m := &Matrix{Moves: 1}
	if k.shop.Control.MovesTogether.Known() {
		m.Moves = k.shop.Control.MovesTogether.V
	}
	for _, g := range k.Powered() {
		m.Columns = append(m.Columns, Column{Gate: g})
	}
	for _, c := range k.shop.Collectors {
		m.Columns = append(m.Columns, Column{Collector: c})
	}
	m.Columns = append(m.Columns, Column{})
	for i, t := range k.shop.Triggers {
		k.triggerRows(m, t, k.Ways[i])
	}
	k.ruleRows(m)
	for _, s := range k.shop.Sensors {
		k.sensorRows(m, s)
	}
	for _, b := range k.shop.Stops {
		k.stopRow(m, b)
	}
	for _, c := range k.shop.Collectors {
		k.faultRows(m, c)
	}
	for _, c := range k.shop.Collectors {
		k.startsRow(m, c)
	}
	return m
}

// row adds a row whose cells are told by three rules: for a gate, for a
// collector and for the signal.
func (m *Matrix) row(r *Row, gate func(*shop.Gate) Cell, collector func(*shop.Collector) Act, signal Act) {
	for _, c := range m.Columns {
		switch {
		case c.Gate != nil:
			r.Cells = append(r.Cells, gate(c.Gate))
		case c.Collector != nil:
			r.Cells = append(r.Cells, Cell{Act: collector(c.Collector)})
		default:
			r.Cells = append(r.Cells, Cell{Act: signal})
		}
	}
	m.Rows = append(m.Rows, r)
}

// triggerRows are the rows of a trigger: what it asks for when it comes on,
// and what it lets go when it goes off.
func (k *Reckoning) triggerRows(m *Matrix, t *shop.Trigger, a *Answer) {
	var byHand []*shop.Gate
	for _, w := range a.Ways {
		for _, g := range w.ByHand {
			if !slices.Contains(byHand, g) {
				byHand = append(byHand, g)
			}
		}
	}
	order := k.Order(t.Opens)
	turn := func(act Act, g *shop.Gate, back bool) Cell {
		i := slices.Index(order, g)
		if i < 0 {
			return Cell{}
		}
		if back {
			i = len(order) - 1 - i
		}
		if len(order) <= m.Moves {
			return Cell{Act: act}
		}
		return Cell{act, i/m.Moves + 1}
	}
	started := func(act Act) func(*shop.Collector) Act {
		return func(c *shop.Collector) Act {
			if starts(t, c) {
				return act
			}
			return Nothing
		}
	}
	m.row(&Row{Cause: TriggerOn, Trigger: t, ByHand: byHand}, func(g *shop.Gate) Cell { return turn(Opens, g, false) }, started(Starts), Waits)
	m.row(&Row{Cause: TriggerOff, Trigger: t}, func(g *shop.Gate) Cell { return turn(MayShut, g, true) }, started(RunsOn), Nothing)
}

// Order is the order in which gates open: zone gates first, the one nearest
// the collector leading, then the others as the trigger names them. Gates
// that a person moves are left out.
func (k *Reckoning) Order(gates []*shop.Gate) []*shop.Gate {
	var list []*shop.Gate
	for _, g := range gates {
		if k.Drive(g) == Powered && !slices.Contains(list, g) {
			list = append(list, g)
		}
	}
	rank := func(g *shop.Gate) int {
		if !k.Zone(g) {
			return 1 << 20
		}
		far := 0
		for s := g.Stretch; s != nil; s = s.Below() {
			far++
		}
		return far
	}
	slices.SortStableFunc(list, func(a, b *shop.Gate) int {
		if a.Stretch == b.Stretch && k.Zone(a) && k.Zone(b) {
			return cmp.Compare(unit.Six(float64(b.Where)), unit.Six(float64(a.Where))) // further down leads
		}
		return cmp.Compare(rank(a), rank(b))
	})
	return list
}

// ruleRows are the purge, the lockout, the return of power and a supply that
// sags.
func (k *Reckoning) ruleRows(m *Matrix) {
	all := func(act Act) func(*shop.Gate) Cell { return func(*shop.Gate) Cell { return Cell{Act: act} } }
	driven := func(act Act) func(*shop.Collector) Act {
		return func(c *shop.Collector) Act {
			if k.Started(c) {
				return act
			}
			return Nothing
		}
	}
	rules := k.shop.Control
	if rules.Purge.Known() {
		m.row(&Row{Cause: PurgePressed}, func(g *shop.Gate) Cell {
			if k.Started(g.On.Collector) {
				return Cell{Act: InTurn}
			}
			return Cell{}
		}, driven(Starts), Nothing)
	}
	if rules.Lockout.Known() {
		m.row(&Row{Cause: LockoutOn}, all(Stays), driven(NoStart), Nothing)
	}
	m.row(&Row{Cause: PowerReturned}, all(Homes), driven(NoStart), Nothing)
	if rules.Supply.Known() || len(k.shop.Chains) > 0 {
		m.row(&Row{Cause: SupplyLow}, all(Stays), driven(NoStart), Signals)
	}
}

// sensorRows are what a sensor's levels do. A filter that is very loaded and
// a full bin keep the fan from starting again; nothing stops it in the middle
// of a cut.
func (k *Reckoning) sensorRows(m *Matrix, s *shop.Sensor) {
	watched := k.watched(s)
	row := func(cause Cause, holds bool) {
		m.row(&Row{Cause: cause, Sensor: s, Watched: watched}, func(*shop.Gate) Cell { return Cell{} }, func(c *shop.Collector) Act {
			if holds && k.Started(c) && slices.Contains(watched, c) {
				return NoStart
			}
			return Nothing
		}, Signals)
	}
	bin, filter := s.Senses == "bin level", s.Senses == "filter pressure"
	if s.High.Known() || !s.VeryHigh.Known() {
		row(LevelHigh, bin)
	}
	if s.VeryHigh.Known() {
		row(LevelVeryHigh, bin || filter)
	}
}

// watched are the collectors that a sensor may stand at: the file does not
// say which where several have a filter or a bin.
func (k *Reckoning) watched(s *shop.Sensor) []*shop.Collector {
	var list []*shop.Collector
	for _, c := range k.shop.Collectors {
		if s.Senses == "filter pressure" && c.Filter != nil || s.Senses == "bin level" && c.Bin != nil {
			list = append(list, c)
		}
	}
	if list == nil && s.Senses != "air quality" {
		return k.shop.Collectors
	}
	return list
}

// stopRow is what a stop button does.
func (k *Reckoning) stopRow(m *Matrix, b *shop.StopButton) {
	m.row(&Row{Cause: StopPressed, Stop: b}, func(g *shop.Gate) Cell {
		if slices.Contains(b.Collectors, g.On.Collector) {
			return Cell{Act: Stays}
		}
		return Cell{}
	}, func(c *shop.Collector) Act {
		if slices.Contains(b.Collectors, c) {
			return Stops
		}
		return Nothing
	}, Signals)
}

// faultRows are what follows where a powered gate on the way to a collector
// is not known to be open in its time, and where one is locked shut.
func (k *Reckoning) faultRows(m *Matrix, c *shop.Collector) {
	if !slices.ContainsFunc(k.Powered(), func(g *shop.Gate) bool { return g.On.Collector == c }) {
		return
	}
	for _, fault := range []struct {
		cause Cause
		act   Act
	}{{NotArrived, GivesUp}, {GateLocked, Barred}} {
		m.row(&Row{Cause: fault.cause, Collector: c}, func(g *shop.Gate) Cell {
			if g.On.Collector == c {
				return Cell{Act: fault.act}
			}
			return Cell{}
		}, k.heldAlone(c), Signals)
	}
}

// startsRow is what follows where a collector has had the starts that its
// motor stands in an hour.
func (k *Reckoning) startsRow(m *Matrix, c *shop.Collector) {
	if k.Started(c) {
		m.row(&Row{Cause: StartsUsed, Collector: c}, func(*shop.Gate) Cell { return Cell{} }, k.heldAlone(c), Signals)
	}
}

// heldAlone keeps one collector from starting where a trigger would, and
// leaves the others alone.
func (k *Reckoning) heldAlone(held *shop.Collector) func(*shop.Collector) Act {
	return func(c *shop.Collector) Act {
		if c == held && k.Started(c) {
			return NoStart
		}
		return Nothing
	}
}
