package templates

import (
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// marginSays says how near sizes come to what the uses need: air and dust.
func (b *Book) marginSays(m duct.Margins) (air, dust string) {
	say := func(key string, about ...string) string { return b.words.Text("sizes.margin."+key, about...) }
	band := func(r duct.Range) string {
		if r == (duct.Range{}) {
			return say("no-band")
		}
		return say("band", unit.Percent(r.Low), unit.Percent(r.High))
	}
	air, dust = say("none"), say("none")
	if a := m.Air; a != nil {
		air = say("air", unit.Percent(a.Share), a.Port.Full(), a.Use.Name, b.filterState(a.Filter), band(a.Band))
	}
	if d := m.Dust; d != nil {
		key, name := "dust", d.Stretch.Name()
		if d.Hose {
			key, name = "hose", d.Stretch.Duct.Name
		}
		dust = say(key, unit.Percent(d.Share), name, d.Use.Name, b.filterState(d.Filter), band(d.Band))
	}
	return air, dust
}

// blockSays says which duct no stock size fits, and between what.
func (b *Book) blockSays(c *duct.Choice) string {
	k := c.Block
	if k == nil {
		return b.words.Text("sizes.says.nothing-fits")
	}
	below := b.words.Text("sizes.block.inlet", c.Collector.Name)
	if k.Below != nil {
		below = k.Below.Name
	}
	if k.Above == nil {
		return b.words.Text("sizes.block.small", k.Duct.Name, unit.Size.Print(b.units, k.To), below, unit.Size.Print(b.units, k.Stock))
	}
	return b.words.Text("sizes.block.between", k.Duct.Name, unit.Size.Print(b.units, k.From), k.Above.Name, unit.Size.Print(b.units, k.To), below)
}

// openedSays names the gates that are opened as well, use by use.
func (b *Book) openedSays(c *duct.Choice) (list []string) {
	for _, opened := range c.Relief {
		var names []string
		for _, g := range opened.Gates {
			names = append(names, g.Name)
		}
		list = append(list, b.words.Text("sizes.opened-in", opened.Use.Name, strings.Join(names, ", ")))
	}
	return list
}
