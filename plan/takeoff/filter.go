package takeoff

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Draw is what a collector moves in one use with a clean filter, handed in.
type Draw struct {
	Collector *shop.Collector
	Use       string
	Flow      unit.Flow
}

// Filter is how hard a collector's filter works in the use that moves most
// air through it.
type Filter struct {
	Collector *shop.Collector
	Use       string        // that moves most
	Flow      unit.Flow     // in that use
	Speed     unit.Velocity // of the air through the filter's area: the trade's air to cloth
	Against   []Load        // the figures that speak of this collector

	Missing []Missing
}

// Known reports whether the load is reckoned.
func (f *Filter) Known() bool { return len(f.Missing) == 0 && f.Flow > 0 }

// filters reckons the filters of a shop.
func filters(s *shop.Shop, draws []Draw) []*Filter {
	var list []*Filter
	for _, c := range s.Collectors {
		if c.Filter == nil {
			continue
		}
		f := &Filter{Collector: c}
		for _, d := range draws {
			if d.Collector == c && unit.Compare(float64(d.Flow), float64(f.Flow)) > 0 {
				f.Use, f.Flow = d.Use, d.Flow
			}
		}
		for _, l := range Loads() {
			if !l.Returned || c.Exhaust.V == "returns to room" {
				f.Against = append(f.Against, l)
			}
		}
		if !c.Filter.Area.Known() {
			f.Missing = append(f.Missing, Missing{c.Name, "filter.area"})
		} else {
			f.Speed = FaceSpeed(f.Flow, c.Filter.Area.V)
		}
		list = append(list, f)
	}
	return list
}

// FaceSpeed is how much air goes through each area of a filter.
func FaceSpeed(flow unit.Flow, area unit.Area) unit.Velocity {
	return unit.SixOf(unit.Velocity(float64(flow) / float64(area)))
}
