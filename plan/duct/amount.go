package duct

import (
	"cmp"
	"slices"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// RunLoss is what the way from a room to the collector's inlet loses at the
// least air at which every port of a demand gets its need: total pressure,
// hoods, hoses and ducts, nothing of the fan's side. It tells one layout of
// ducts from another at the air they are for, whatever the fan. It is false
// where no fan meets the demand.
func (k *Reckoning) RunLoss(c *shop.Collector, d *Demand) (loss unit.Pressure, known bool) {
	if !d.Reachable {
		return 0, false
	}
	separator, filter, outlet := NewFan(c, k.State, d.Filter).Charges(float64(d.Flow))
	return unit.Pressure(unit.Six(float64(d.Static) - separator - filter - outlet)), true
}

// FanTotal is the fan's total pressure in a result: its static pressure and
// the velocity pressure at its outlet. It is false off the curve, and where
// the file does not give the outlet's size.
func (k *Reckoning) FanTotal(r *Result) (total unit.Pressure, known bool) {
	if r.Collector == nil || r.Collector.Outlet == nil || !r.OnCurve {
		return 0, false
	}
	leaving := k.State.VelocityPressure(air.SpeedIn(r.Flow, r.Collector.Outlet.Size))
	return unit.Pressure(unit.Six(float64(r.Static + leaving))), true
}

// RunLength is the length of hose and duct between a port and its collector.
func RunLength(p *shop.Port) unit.Length {
	var sum unit.Length
	if p.Duct != nil && p.Duct.Hose != nil {
		sum = p.Duct.Hose.Length
	}
	for _, s := range p.Path() {
		sum += s.Length()
	}
	return unit.Length(unit.Six(float64(sum)))
}

// Amount is how much duct, or hose, of one size and material a collector has.
type Amount struct {
	Size     unit.Length // nominal; nought where it is still to be chosen
	Material string
	Length   unit.Length
}

// Alike reports whether another amount is of the same size and material.
func (a Amount) Alike(b Amount) bool {
	return a.Material == b.Material && unit.Compare(float64(a.Size), float64(b.Size)) == 0
}

// Amounts lists the ducts and hoses of a collector by size and material, the
// widest first.
func (t *Tree) Amounts() []Amount {
	var list []Amount
	add := func(size, length unit.Length, material string) {
		one := Amount{Size: size, Material: material}
		at := slices.IndexFunc(list, one.Alike)
		if at < 0 {
			at, list = len(list), append(list, one)
		}
		list[at].Length += length
	}
	for _, d := range t.shop.Ducts {
		if d.Collector != t.Collector {
			continue
		}
		for _, s := range d.Stretches {
			add(d.Size, s.Length(), d.Material)
		}
		if d.Hose != nil {
			add(d.Hose.Size, d.Hose.Length, d.Hose.Material)
		}
	}
	for i := range list {
		list[i].Length = unit.Length(unit.Six(float64(list[i].Length)))
	}
	slices.SortStableFunc(list, func(a, b Amount) int {
		return cmp.Or(unit.Compare(float64(b.Size), float64(a.Size)), cmp.Compare(a.Material, b.Material))
	})
	return list
}
