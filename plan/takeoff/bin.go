package takeoff

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Missing is a field of the shop file that a figure waits for.
type Missing struct {
	Thing string // the name of what it belongs to
	Field string // with its table: "machine.cut"
}

// Fill is how fast one machine, at its heaviest usual cut, fills the bin of a
// collector. A machine whose ports go to two collectors is taken to fill each
// of them with all it throws.
type Fill struct {
	Machine *shop.Machine
	Residue Residue

	Solid unit.Flow // wood taken off, solid, while it cuts
	Loose unit.Flow // the same as it lies in the bin
	Until unit.Time // of cutting, from empty to the mark
	Least unit.Time // the same with residue at its bulkiest

	Missing []Missing
}

// Known reports whether the time is reckoned.
func (f *Fill) Known() bool { return len(f.Missing) == 0 }

// Filling is everything about one collector's bin.
type Filling struct {
	Collector *shop.Collector
	Machines  []*Fill // that throw wood into it, in file order
	Fastest   *Fill   // that fills it soonest; nil where none is known

	// Days of work until the mark, when every machine cuts for all the hours it
	// runs a day: the least it can be. Without every machine's cut and hours it
	// is the most that can be said, and Open names what is left out.
	Days  float64
	Daily unit.Volume // loose, a day
	Open  []Missing
}

// Known reports whether days are reckoned at all.
func (f *Filling) Known() bool { return f.Daily > 0 }

// fillings reckons the bins of a shop, of every collector that throws
// something into one.
func fillings(s *shop.Shop) []*Filling {
	var list []*Filling
	for _, c := range s.Collectors {
		f := &Filling{Collector: c}
		for _, m := range s.Machines {
			if throws(m, c) {
				f.Machines = append(f.Machines, fill(m, c))
			}
		}
		if len(f.Machines) > 0 {
			f.add()
			list = append(list, f)
		}
	}
	return list
}

// throws reports whether a machine's wood goes to a collector.
func throws(m *shop.Machine, c *shop.Collector) bool {
	for _, p := range m.Ports {
		if p.Duct != nil && p.Duct.Collector == c {
			return m.Makes != "metal" && m.Makes != "finish overspray"
		}
	}
	return false
}

// fill reckons one machine on one bin: width × depth × feed, times the
// expansion of what it throws.
func fill(m *shop.Machine, c *shop.Collector) *Fill {
	f := &Fill{Machine: m, Residue: ResidueOf(m.Waste)}
	var solid unit.Flow
	if m.Cut != nil {
		solid = Solid(m.Cut.Width, m.Cut.Depth, m.Cut.Feed)
	}
	if solid == 0 { // a cut of nothing says nothing
		f.Missing = append(f.Missing, Missing{m.Name, "machine.cut"})
	} else {
		f.Solid, f.Loose = unit.SixOf(solid), unit.SixOf(unit.Flow(float64(solid)*f.Residue.Expansion))
	}
	if c.Bin == nil {
		f.Missing = append(f.Missing, Missing{c.Name, "collector.bin"})
	}
	if f.Known() {
		f.Until = unit.SixOf(Until(c.Bin.Size, m.Cut, f.Residue.Expansion))
		f.Least = unit.SixOf(Until(c.Bin.Size, m.Cut, f.Residue.Most))
	}
	return f
}

// Solid is the wood that a cut takes off in a second: w d v, in m³/s.
func Solid(width, depth unit.Length, feed unit.Velocity) unit.Flow {
	return unit.Flow(float64(width) * float64(depth) * float64(feed))
}

// Until is how long a cut takes to fill a bin to its mark, when what it throws
// lies at this many times the volume of solid wood.
func Until(bin unit.Volume, cut *shop.Cut, expansion float64) unit.Time {
	mark, _ := FillMark()
	return unit.Time(mark * float64(bin) / (float64(Solid(cut.Width, cut.Depth, cut.Feed)) * expansion))
}

// add finds the machine that fills the bin soonest and adds up a day.
func (f *Filling) add() {
	daily, mark := 0.0, 0.0
	for _, at := range f.Machines {
		if at.Known() && (f.Fastest == nil || unit.Compare(float64(at.Until), float64(f.Fastest.Until)) < 0) {
			f.Fastest = at
		}
		f.Open = append(f.Open, at.Missing...)
		if !at.Machine.Hours.Known() {
			f.Open = append(f.Open, Missing{at.Machine.Name, "machine.hours"})
			continue
		}
		if at.Known() {
			daily += float64(at.Loose) * at.Machine.Hours.V * float64(hour)
		}
	}
	if f.Collector.Bin == nil || daily == 0 {
		return
	}
	mark, _ = FillMark()
	f.Daily = unit.Volume(unit.Six(daily))
	f.Days = unit.Six(mark * float64(f.Collector.Bin.Size) / daily)
}
