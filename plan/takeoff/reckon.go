package takeoff

import "dustbook/plan/shop"

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	Bins    []*Filling // one for each collector that something is thrown into, in file order
	Filters []*Filter  // one for each collector with a filter, in file order
	Jobs    []Service  // of upkeep, in the order of the data
}

// Reckon reckons bins and filters of a shop; draws say what each collector
// moves in each use.
func Reckon(s *shop.Shop, draws []Draw) *Reckoning {
	bins := fillings(s)
	return &Reckoning{Bins: bins, Filters: filters(s, draws), Jobs: services(s, bins)}
}

// Bin is the filling of a collector's bin; nil where nothing goes there.
func (k *Reckoning) Bin(c *shop.Collector) *Filling {
	for _, f := range k.Bins {
		if f.Collector == c {
			return f
		}
	}
	return nil
}

// Filter is the load of a collector's filter; nil where it has none.
func (k *Reckoning) Filter(c *shop.Collector) *Filter {
	for _, f := range k.Filters {
		if f.Collector == c {
			return f
		}
	}
	return nil
}
