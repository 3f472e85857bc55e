package templates

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// tellCollector says where a collector stands, what it does to the air and
// where the air goes.
func (b *Book) tellCollector(c *shop.Collector) *passage {
	p := b.passage("packet.collector", c.Name)
	switch {
	case c.Room != nil:
		p.say("packet.stands-in", c.Name, c.Room.Name)
	case c.Place.Stated():
		p.say("packet.stands-at", c.Name, b.point(c.Place.V))
	default:
		p.lack("packet.lack-place")
	}
	b.tellFan(p, c)
	b.tellCleaning(p, c)
	b.tellExhaust(p, c)
	known(p, c.Enclosure, "packet.enclosure", "packet.lack-enclosure", func(v string) string { return v })
	known(p, c.DirtyVolume, "packet.dirty", "packet.lack-dirty", func(v unit.Volume) string { return unit.Room.Print(b.units, v) })
	known(p, c.Bonded, "packet.earthed", "packet.lack-earthed", func(v unit.Resistance) string { return unit.Ohms.Print(b.units, v) })
	switch {
	case !c.Labelled.Stated():
		p.lack("packet.lack-labelled")
	case c.Labelled.V:
		p.say("packet.labelled")
	default:
		p.say("packet.not-labelled")
	}
	p.see("packet.collector-sheet", b.Path("collector", c.Name))
	return p
}

// tellFan says what turns the air, and what it is claimed to move beside what
// the ducts let through.
func (b *Book) tellFan(p *passage, c *shop.Collector) {
	if parts := b.motorParts(c.Motor); len(parts) > 0 {
		p.say("packet.motor", b.orNotGiven(parts))
	} else {
		p.lack("packet.lack-motor")
	}
	row := b.collectorRow(c)
	switch {
	case c.Claims == nil:
		p.say("packet.delivers", row.Delivered)
	default:
		p.say("packet.claims", row.Claimed, row.Suction, row.Delivered)
	}
	if len(c.Curve) == 0 {
		p.lack("packet.lack-curve")
	}
	known(p, c.Wheel, "packet.wheel", "packet.lack-wheel", func(v string) string { return v })
}

// tellCleaning says what takes the dust out of the air, and where it falls.
func (b *Book) tellCleaning(p *passage, c *shop.Collector) {
	if c.Separator != nil {
		p.say("packet.separator", c.Separator.Kind)
	} else {
		p.say("packet.no-separator")
	}
	switch f := c.Filter; {
	case f == nil:
		p.lack("packet.lack-filter")
	default:
		if f.Area.Stated() {
			p.say("packet.filter", unit.Floor.Print(b.units, f.Area.V), unit.Press.Print(b.units, f.Change))
		} else {
			p.say("packet.filter-plain", unit.Press.Print(b.units, f.Change))
			p.lack("packet.lack-filter-area")
		}
		if f.Removes.Stated() && f.RemovesAt.Stated() {
			p.say("packet.removes", unit.Short(100*f.Removes.V), unit.Grain.Print(b.units, f.RemovesAt.V))
		} else {
			p.lack("packet.lack-removes")
		}
	}
	switch bin := c.Bin; {
	case bin == nil:
		p.lack("packet.lack-bin")
	case bin.Material.Stated():
		p.say("packet.bin-of", unit.Bin.Print(b.units, bin.Size), bin.Called, bin.Material.V)
	default:
		p.say("packet.bin", unit.Bin.Print(b.units, bin.Size), bin.Called)
		p.lack("packet.lack-bin-material")
	}
}

// tellExhaust says where the air goes.
func (b *Book) tellExhaust(p *passage, c *shop.Collector) {
	switch {
	case !c.Exhaust.Stated():
		p.lack("packet.lack-exhaust")
	case c.Exhaust.V == "outside":
		p.say("packet.outside")
	case c.ReturnsTo != nil:
		p.say("packet.returns-to", c.ReturnsTo.Name)
	default:
		p.say("packet.returns")
		p.lack("packet.lack-returns-to")
	}
	if c.ReturnOpening.Stated() {
		p.say("packet.return-opening", unit.Floor.Print(b.units, c.ReturnOpening.V))
	}
	if c.Outlet == nil {
		return
	}
	p.say("packet.outlet", unit.Size.Print(b.units, c.Outlet.Size), unit.Run.Print(b.units, c.Outlet.Length))
	if c.Exhaust.V == "outside" && !c.Outlet.ToOpening.Stated() {
		p.lack("packet.lack-to-opening")
	}
	if c.Exhaust.V == "outside" && !c.Outlet.ToProperty.Stated() {
		p.lack("packet.lack-to-property")
	}
}
