package duct

import (
	"embed"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed change.csv long.csv stock.csv
var adviceData embed.FS

var (
	changeTable = source.MustTable(adviceData, "duct", "change", "name", "work", "value", "unit", "about")
	longTable   = source.MustTable(adviceData, "duct", "long", "elbows", "long", "about")
	stockTable  = source.MustTable(adviceData, "duct", "stock", "units", "size")
)

// AdviceTables are the data of changes and of sizes to choose from, for a page
// of sources.
func AdviceTables() []source.Table { return []source.Table{changeTable, longTable, stockTable} }

// StockSizes are the nominal sizes pipe is stocked in, in rising order.
func StockSizes(sys unit.System) []unit.Length { return stock[sys] }

var stock = map[unit.System][]unit.Length{unit.US: stockOf("us"), unit.Metric: stockOf("metric")}

func stockOf(sys string) (sizes []unit.Length) {
	for _, r := range stockTable.Rows {
		if r.Text("units") == sys {
			sizes = append(sizes, unit.Must[unit.Length](r.Text("size")))
		}
	}
	return sizes
}

// stockedIn are the units that stock a size: the shop's, else the others that
// do.
func stockedIn(s *shop.Shop, nominal unit.Length) unit.System {
	sys := s.Units
	for _, other := range []unit.System{unit.US, unit.Metric} {
		if !stocked(sys, nominal) && stocked(other, nominal) {
			sys = other
		}
	}
	return sys
}

// nextOver is the next stock size over another; known is false over the
// largest.
func nextOver(s *shop.Shop, nominal unit.Length) (over unit.Length, known bool) {
	for _, size := range stock[stockedIn(s, nominal)] {
		if unit.Compare(float64(size), float64(nominal)) > 0 {
			return size, true
		}
	}
	return 0, false
}

// lastSize is the next stock size under a duct's own; known is false under the
// smallest.
func lastSize(s *shop.Shop, d *shop.Duct) (nominal unit.Length, known bool) {
	for _, size := range stock[stockedIn(s, d.Size)] {
		bore, _ := shop.Bore(d.Material, size)
		if unit.Compare(float64(size), float64(d.Size)) < 0 && unit.Compare(float64(bore), float64(d.Bore)) < 0 {
			nominal, known = size, true
		}
	}
	return nominal, known
}

// nextSize is the next stock size over a duct's own, in the units that stock
// its size, else in the shop's. known is false over the largest.
func nextSize(s *shop.Shop, d *shop.Duct) (nominal unit.Length, known bool) {
	for _, size := range stock[stockedIn(s, d.Size)] {
		bore, _ := shop.Bore(d.Material, size)
		if unit.Compare(float64(size), float64(d.Size)) > 0 && unit.Compare(float64(bore), float64(d.Bore)) > 0 {
			return size, true
		}
	}
	return 0, false
}

func stocked(sys unit.System, nominal unit.Length) bool {
	for _, size := range stock[sys] {
		if unit.Compare(float64(size), float64(nominal)) == 0 {
			return true
		}
	}
	return false
}

// longElbow is the make with a longer radius in place of another.
func longElbow(make string) (long shop.ElbowMake, known bool) {
	for _, r := range longTable.Rows {
		if r.Text("elbows") != make {
			continue
		}
		for _, e := range shop.Elbows() {
			if e.Name == r.Text("long") {
				return e, true
			}
		}
	}
	return shop.ElbowMake{}, false
}
