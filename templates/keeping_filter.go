package templates

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

// filterUses is what every use puts on a collector's filter.
type filterUses struct {
	Flow, Press, Speed string // units
	Area               bool   // the file gives the filter's area
	Known              bool   // a use has figures
	Rows               []filterUse
}

// filterUse is what one use puts on the filter, clean and due for change.
type filterUse struct {
	Use, Path     string
	Clean, Change filterLoad
	Most          bool // of all uses of machines it works the filter hardest
}

// filterLoad is what passes a filter in one state of it: air, what a gauge
// across it shows, and the air's speed through its area.
type filterLoad struct{ Flow, Press, Speed string }

// filterUses shows every use but the fan without its ducts.
func (b *Book) filterUses(c *shop.Collector) *filterUses {
	v := &filterUses{Flow: unit.Air.Unit(b.units), Press: unit.Press.Unit(b.units), Speed: unit.Feed.Unit(b.units), Area: c.Filter.Area.Known()}
	hardest, most := -1, unit.Flow(0)
	for _, u := range b.Plan.Air.Uses {
		clean, change := filterResult(u, c, duct.Clean), filterResult(u, c, duct.ChangeOut)
		if u.Kind == duct.DuctOff || clean == nil && change == nil {
			continue
		}
		row := filterUse{Use: u.Name, Clean: b.filterLoad(clean), Change: b.filterLoad(change)}
		if len(u.Machines) > 0 {
			row.Path = b.Path("use", u.Name)
			if flow := filterFlow(clean); unit.Compare(float64(flow), float64(most)) > 0 {
				hardest, most = len(v.Rows), flow
			}
		}
		v.Rows, v.Known = append(v.Rows, row), v.Known || filterFlow(clean) > 0 || filterFlow(change) > 0
	}
	if hardest >= 0 {
		v.Rows[hardest].Most = true
	}
	return v
}

// filterResult is the result of a use with the filter in a state; nil where the
// use does not need the collector.
func filterResult(u *duct.Use, c *shop.Collector, state string) *duct.Result {
	for _, r := range u.On(c) {
		if r.Filter == state {
			return r
		}
	}
	return nil
}

func filterFlow(r *duct.Result) unit.Flow {
	if r == nil || !r.OnCurve {
		return 0
	}
	return r.Flow
}

func (b *Book) filterLoad(r *duct.Result) filterLoad {
	if r == nil || !r.OnCurve {
		return filterLoad{"—", "—", "—"}
	}
	v := filterLoad{unit.Air.Figure(b.units, r.Flow), unit.Press.Figure(b.units, r.FilterGauge()), "—"}
	if area := r.Collector.Filter.Area; area.Known() {
		v.Speed = unit.Feed.Figure(b.units, takeoff.FaceSpeed(r.Flow, area.V))
	}
	return v
}
