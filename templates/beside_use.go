package templates

import (
	"slices"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// meeting is a collector of each layout that does the same work in a use, each
// by its result with the filter due for change; nil where one has none.
type meeting struct{ this, other *duct.Result }

// meetings pairs the collectors of a use: those of one name, then, where each
// layout has one more, these two.
func (v *beside) meetings(pair usePair) []meeting {
	here, there := lastResults(pair.this), lastResults(pair.other)
	var list []meeting
	for _, r := range here {
		m := meeting{this: r}
		at := slices.IndexFunc(there, func(o *duct.Result) bool { return collectorName(o) == collectorName(r) })
		if at >= 0 {
			m.other = there[at]
			there = slices.Delete(there, at, at+1)
		}
		list = append(list, m)
	}
	alone := slices.IndexFunc(list, func(m meeting) bool { return m.other == nil })
	if alone >= 0 && len(there) == 1 && !slices.ContainsFunc(list[alone+1:], func(m meeting) bool { return m.other == nil }) {
		list[alone].other, there = there[0], nil
	}
	for _, o := range there {
		list = append(list, meeting{other: o})
	}
	return list
}

// lastResults are the results of a use with the filter due for change, or in
// its only state: one for each collector.
func lastResults(u *duct.Use) []*duct.Result {
	var list []*duct.Result
	for i, r := range u.Results {
		if i+1 == len(u.Results) || u.Results[i+1].Collector != r.Collector {
			list = append(list, r)
		}
	}
	return list
}

func collectorName(r *duct.Result) string {
	if r == nil || r.Collector == nil {
		return ""
	}
	return r.Collector.Name
}

// besideUse is a use of both layouts.
type besideUse struct {
	ID, Name, Path           string
	Alike                    bool   // every figure is the same in both
	Here, There              []Word // captured, carried
	Loss, OtherLoss, LossOff string // along the ways that govern, of the first collector
	Parts                    []besidePart
	Remarks                  []besideRemark
}

// besidePart is a use on one collector of each layout.
type besidePart struct {
	Collector string // of both, or the two names
	Rows      []besideRow
}

func (v *beside) use(pair usePair) besideUse {
	u := besideUse{ID: "beside-" + shop.Slug(pair.this.Name), Name: pair.this.Name, Path: v.Path("use", pair.this.Name),
		Here: v.this.useVerdict(pair.this).Words, There: v.other.useVerdict(pair.other).Words, Remarks: v.remarks(pair)}
	for i, m := range v.meetings(pair) {
		part := v.part(m)
		if i == 0 {
			loss := v.lossRow(m)
			u.Loss, u.OtherLoss, u.LossOff = loss.This, loss.Other, loss.Off
		}
		u.Parts = append(u.Parts, part)
	}
	u.Alike = v.alike(u)
	return u
}

// alike reports whether a use is the same in both layouts.
func (v *beside) alike(u besideUse) bool {
	same := v.words.Text("beside.same")
	return slices.Equal(u.Here, u.There) && !slices.ContainsFunc(u.Parts, func(p besidePart) bool {
		return slices.ContainsFunc(p.Rows, func(r besideRow) bool { return r.Off != same })
	})
}

func (v *beside) part(m meeting) besidePart {
	p := besidePart{Collector: collectorName(m.this)}
	if other := collectorName(m.other); p.Collector == "" {
		p.Collector = other
	} else if other != "" && other != p.Collector {
		p.Collector = v.words.Text("beside.both-collectors", p.Collector, other)
	}
	p.Rows = slices.Concat(v.wayRows(m), []besideRow{v.lossRow(m), v.askedRow(m)}, v.airRows(m), v.fanRows(m))
	p.Rows = slices.DeleteFunc(p.Rows, func(r besideRow) bool { return r.This == "—" && r.Other == "—" })
	return p
}

// wayRows say which way governs, and how long it is.
func (v *beside) wayRows(m meeting) []besideRow {
	here, there := v.this.governing(m.this), v.other.governing(m.other)
	return []besideRow{
		v.wordRow("port", fullName(here), fullName(there)),
		v.wordRow("way", ductNames(here), ductNames(there)),
		figureRow(v, "length", unit.Run, m, func(b *side, r *duct.Result) (unit.Length, bool) {
			if p := b.governing(r); p != nil {
				return duct.RunLength(p), true
			}
			return 0, false
		}),
	}
}

// governing is the port that governs a result's use; nil where none does.
func (b *side) governing(r *duct.Result) *shop.Port {
	if d := b.demand(r); d != nil && d.Port != nil && d.Port.Duct != nil {
		return d.Port
	}
	return nil
}

func fullName(p *shop.Port) string {
	if p == nil {
		return ""
	}
	return p.Full()
}

// ductNames are the ducts between a port and its collector, in flow order.
func ductNames(p *shop.Port) string {
	if p == nil {
		return ""
	}
	var names []string
	for _, s := range p.Path() {
		if !slices.Contains(names, s.Duct.Name) {
			names = append(names, s.Duct.Name)
		}
	}
	return strings.Join(names, " › ")
}

func (v *beside) lossRow(m meeting) besideRow {
	return figureRow(v, "loss", unit.Press, m, (*side).runLoss)
}

func (v *beside) askedRow(m meeting) besideRow {
	return figureRow(v, "asked", unit.Press, m, func(b *side, r *duct.Result) (unit.Pressure, bool) {
		if d := b.demand(r); d != nil && d.Reachable {
			return d.Static, true
		}
		return 0, false
	})
}

// airRows say what the ports need and what they get.
func (v *beside) airRows(m meeting) []besideRow {
	return []besideRow{
		figureRow(v, "need", unit.Air, m, func(b *side, r *duct.Result) (unit.Flow, bool) {
			if d := b.demand(r); d != nil && d.Need > 0 {
				return d.Need, true
			}
			return 0, false
		}),
		figureRow(v, "delivered", unit.Air, m, func(b *side, r *duct.Result) (unit.Flow, bool) {
			if d := b.demand(r); d != nil && d.OnCurve {
				return d.Delivered, true
			}
			return 0, false
		}),
		v.shareRow(m),
	}
}

// shareRow is the share of its need that the port with the least share gets,
// in percent.
func (v *beside) shareRow(m meeting) besideRow {
	row := besideRow{Of: v.words.Text("beside.share"), Unit: "%", This: "—", Other: "—", Off: "—"}
	share := func(s *side, r *duct.Result) (string, bool) {
		d := s.demand(r)
		if d == nil || !d.OnCurve || d.Port == nil {
			return "—", false
		}
		return unit.Percent(d.Share), true
	}
	var known, same bool
	row.This, known = share(v.this, m.this)
	row.Other, same = share(v.other, m.other)
	if known && same {
		row.Off = v.difference(row.This, row.Other)
	}
	return row
}

// fanRows say what the fan does.
func (v *beside) fanRows(m meeting) []besideRow {
	on := func(r *duct.Result) bool { return r != nil && r.OnCurve }
	return []besideRow{
		figureRow(v, "flow", unit.Air, m, func(b *side, r *duct.Result) (unit.Flow, bool) {
			if !on(r) {
				return 0, false
			}
			return r.Flow, true
		}),
		figureRow(v, "static", unit.Press, m, func(b *side, r *duct.Result) (unit.Pressure, bool) {
			if !on(r) {
				return 0, false
			}
			return r.Static, true
		}),
		figureRow(v, "total", unit.Press, m, func(b *side, r *duct.Result) (unit.Pressure, bool) {
			if !on(r) {
				return 0, false
			}
			return b.Plan.Air.FanTotal(r)
		}),
		figureRow(v, "power", unit.Shaft, m, func(b *side, r *duct.Result) (unit.Power, bool) {
			if !on(r) || !r.PowerKnown {
				return 0, false
			}
			return r.Power, true
		}),
	}
}
