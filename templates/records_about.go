package templates

import (
	"slices"

	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// mostMeasured is how many readings a sheet shows of those that concern it.
const mostMeasured = 24

// measuredView is what was measured about one thing.
type measuredView struct {
	Rows  []measuredRow
	More  int
	Agree string
}

// measuredAbout shows the readings that concern a sheet, the newest first;
// nil where there are none.
func (b *Book) measuredAbout(concerns func(record.Reading) bool) *measuredView {
	v := &measuredView{Agree: agreeShare()}
	for _, r := range b.newest() {
		for _, reading := range r.Readings {
			switch {
			case !concerns(reading):
			case len(v.Rows) < mostMeasured:
				v.Rows = append(v.Rows, b.measuredRow(r, reading))
			default:
				v.More++
			}
		}
	}
	if len(v.Rows) == 0 {
		return nil
	}
	return v
}

// measuredInUse shows what was measured of the air in a use; on the sheet of
// a machine alone, all that was measured at its ports.
func (b *Book) measuredInUse(u *duct.Use) *measuredView {
	ports := map[string]bool{}
	if u.Kind == duct.OneMachine {
		for _, p := range u.Machines[0].Ports {
			ports[p.Full()] = true
		}
	}
	return b.measuredAbout(func(r record.Reading) bool { return r.Use == u.Name || ports[r.At] })
}

// measuredAt shows what was measured at a collector, its filter or the sensor
// that watches it.
func (b *Book) measuredAt(c *shop.Collector) *measuredView {
	return b.measuredAbout(func(r record.Reading) bool {
		if r.At == c.Name {
			return true
		}
		return r.Of == "filter pressure" && b.onlyFilter(c) && slices.ContainsFunc(b.Plan.Shop.Sensors, func(s *shop.Sensor) bool { return s.Name == r.At })
	})
}

// onlyFilter reports whether a collector is the only one with a filter.
func (b *Book) onlyFilter(c *shop.Collector) bool {
	for _, other := range b.Plan.Shop.Collectors {
		if other.Filter != nil && other != c {
			return false
		}
	}
	return c.Filter != nil
}
