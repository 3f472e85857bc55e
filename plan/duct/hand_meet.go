package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// meet brings together what comes to a node: the ways that are easier than the
// governing one are raised, or found to be of a wrong size, and the static
// pressure is made up for the speed behind. It returns the air as it starts in
// a stretch, or in the collector's inlet for nil, and what was added.
func (h *pencil) meet(in []comer, into *shop.Stretch, bore unit.Length) (start comer, added unit.Pressure) {
	governs := h.balance(in)
	var streams []air.Stream
	for _, c := range in {
		start.flow += c.flow
		streams = append(streams, air.Stream{Flow: c.flow, Dynamic: c.dynamic})
	}
	start.flow += h.more(in, into)
	start.dynamic = h.dynamic(start.flow, bore)
	if len(in) == 1 && h.straight(in[0]) {
		added = start.dynamic - in[0].dynamic
		if in[0].row >= 0 {
			added += h.sizes(start.flow, h.sheet.Rows[in[0].row].Bore, bore)
		}
	} else {
		added = air.Hasten(air.Merged(streams...), start.dynamic)
	}
	start.static, start.after = in[governs].static+added, in[governs].row
	return start, added
}

// balance weighs the ways of a node against the governing one and returns its
// place; the flows and velocity pressures that come are those after it.
func (h *pencil) balance(in []comer) (governs int) {
	for i, c := range in {
		if unit.Compare(float64(c.static), float64(in[governs].static)) > 0 {
			governs = i
		}
	}
	if len(in) < 2 {
		return governs
	}
	most := in[governs].static
	for i := range in {
		c := &in[i]
		ratio, does := air.Weigh(most, c.static)
		gate := 0.0
		if does != air.Even {
			gate = air.GateToBalance(most, c.static, c.dynamic)
		}
		if does == air.Raised {
			raised := air.RaisedFlow(c.flow, most, c.static)
			c.dynamic *= unit.Pressure(raised * raised / (c.flow * c.flow))
			c.flow = raised
		}
		if c.row >= 0 {
			row := &h.sheet.Rows[c.row]
			row.Meets, row.Governs = true, i == governs
			row.Ratio, row.Does, row.Gate = ratio, does, gate
			row.Raised, row.RaisedDynamic = c.flow, c.dynamic
		}
	}
	return governs
}

// more is the air that comes in beside the running ways.
func (h *pencil) more(in []comer, into *shop.Stretch) unit.Flow {
	if h.from.More == nil {
		return 0
	}
	var from []*shop.Stretch
	for _, c := range in {
		if c.row >= 0 {
			from = append(from, h.sheet.Rows[c.row].Stretch)
		}
	}
	return h.from.More(into, from)
}

// straight reports whether what comes goes straight on: from a hood, along its
// own duct, or by a duct in line.
func (h *pencil) straight(c comer) bool {
	if c.row < 0 {
		return true
	}
	s := h.sheet.Rows[c.row].Stretch
	return !s.Last() || !s.Duct.Wye
}
