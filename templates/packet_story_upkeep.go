package templates

import (
	"html/template"
	"strconv"

	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// tellUpkeep says how the system is kept up.
func (b *Book) tellUpkeep() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.upkeep")
	for _, c := range s.Collectors {
		b.tellKeeping(p, c)
	}
	for _, sensor := range s.Sensors {
		p.say("packet.sensor", sensor.Name, sensor.Senses)
	}
	if len(s.Sensors) == 0 {
		p.lack("packet.lack-sensors")
	}
	for _, r := range s.Rooms {
		if r.Cleaned.Stated() {
			p.say("packet.cleaned", r.Name, r.Cleaned.V)
		}
		if r.Layer != nil {
			p.say("packet.layer", r.Name, unit.Depth.Print(b.units, r.Layer.Depth))
		}
	}
	p.lackOf("packet.lack-cleaned", roomNames(s, func(r *shop.Room) bool { return !r.Cleaned.Stated() }))
	p.lackOf("packet.lack-layer", roomNames(s, func(r *shop.Room) bool { return r.Layer == nil }))
	if kinds := b.recorded(); len(kinds) > 0 {
		last := b.newest()[0]
		p.say("packet.recorded", b.clausesOf(kinds), last.Date.String())
		p.see("records.records-b", recordsPath(0))
	} else {
		p.say("packet.nothing-recorded")
	}
	return p
}

// tellKeeping says when a bin is emptied and a filter changed.
func (b *Book) tellKeeping(p *passage, c *shop.Collector) {
	f := b.Plan.Takeoff.Bin(c)
	switch {
	case c.Bin == nil:
	case f == nil || !f.Known() || f.Days <= 0:
		p.lack("packet.lack-filling", c.Name)
	case f.Days < 1:
		p.say("packet.fills-within-a-day", c.Name)
	case len(f.Open) > 0:
		p.say("packet.fills-at-most", c.Name, unit.Significant(f.Days, 2))
	default:
		p.say("packet.fills", c.Name, unit.Significant(f.Days, 2))
	}
	if c.Filter != nil {
		p.say("packet.change", c.Name, unit.Press.Print(b.units, c.Filter.Change))
	}
}

// recorded counts the records by kind, in the order of the words.
func (b *Book) recorded() []template.HTML {
	var list []template.HTML
	for _, w := range record.Words("record kind") {
		n := 0
		for _, r := range b.Plan.Records {
			if r.Kind == w.Word {
				n++
			}
		}
		if n > 0 {
			list = append(list, b.sentence("packet.of-kind", strconv.Itoa(n), w.Word))
		}
	}
	return list
}

// tellReckoning says how the figures came to be, and on how many defaults they
// rest.
func (b *Book) tellReckoning() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.reckoning")
	p.say("packet.method", unit.Weight.Print(b.units, b.Plan.Air.State.Density))
	known(p, s.Altitude, "packet.altitude", "packet.lack-altitude", func(v unit.Length) string { return unit.Run.Print(b.units, v) })
	if n := len(b.taken.groups); n > 0 {
		p.count("packet.defaults", n)
		p.see("sources.assumptions", "assumptions.html")
	}
	p.see("sources.sources", "sources.html")
	return p
}
