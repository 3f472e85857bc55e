package templates

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// enoughView is the sheet on whether collectors are big enough.
type enoughView struct {
	Flow, Press string // units
	Collectors  []enoughCollector
}

type enoughCollector struct {
	Name, Path                         string
	Claimed, Needed, Delivered, Margin string
	Rows                               []enoughRow
}

type enoughRow struct {
	Use, Path, Filter, Need, Gets, Weakest string
	Flow, Static, Offers, Spare            string
	Short                                  bool
}

func (b *Book) addEnough() {
	list := b.Plan.Air.BigEnough()
	if len(list) == 0 || len(b.Plan.Shop.Machines) == 0 {
		return
	}
	b.add(&Sheet{Part: partAir, Path: "enough.html", Title: b.words.Text("enough.title"), Kind: "table", Lede: b.words.Text("enough.lede"),
		Verdict: b.enoughVerdict(list), name: "enough.html", view: func() any { return b.enoughView(list) }})
}

func (b *Book) enoughVerdict(list []duct.Enough) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("enough."+key, about...) }
	var worst *duct.Demand
	for i := range list {
		if w := list[i].Worst; w != nil && (worst == nil || w.Share < worst.Share) {
			worst = w
		}
	}
	switch {
	case b.unsized(nil) && (worst == nil || worst.Share >= 1):
		return b.openSizes(nil)
	case worst == nil:
		return Verdict{Words: []Word{{"blank", say("word.unknown")}}, Says: say("says-unknown"), Do: say("do-unknown")}
	case worst.Share < 1:
		return Verdict{Words: []Word{{"notmet", say("word.no")}}, Says: say("says-no", worst.Use.Name, b.filterState(worst.Filter), worst.Port.Full(), unit.Percent(worst.Share)), Do: say("do-no")}
	}
	return Verdict{Words: []Word{{"met", say("word.yes")}}, Says: say("says-yes", b.percent(worst.Margin), worst.Use.Name, b.filterState(worst.Filter)), Do: say("do-yes")}
}

// percent is a share with its sign, in whole percent.
func (b *Book) percent(part float64) string {
	text := unit.Fixed(100*part, 0)
	if part > 0 {
		text = "+" + text
	}
	return text + " %"
}

func (b *Book) enoughView(list []duct.Enough) enoughView {
	v := enoughView{Flow: unit.Air.Unit(b.units), Press: unit.Press.Unit(b.units)}
	for _, e := range list {
		c := enoughCollector{Name: e.Collector.Name, Path: b.Path("collector", e.Collector.Name), Claimed: b.words.Text("enough.not-claimed"), Needed: "—", Delivered: "—", Margin: "—"}
		if e.Claimed > 0 {
			c.Claimed = unit.Air.Print(b.units, e.Claimed)
		}
		if e.NeededBy != nil {
			c.Needed = b.words.Text("enough.by", unit.Air.Print(b.units, e.Needed), e.NeededBy.Name)
		}
		if w := e.Worst; w != nil {
			c.Delivered = b.words.Text("enough.by", unit.Air.Print(b.units, w.Delivered), w.Use.Name)
			c.Margin = b.percent(w.Margin)
		}
		for i := range e.Demands {
			if e.Demands[i].Port != nil {
				c.Rows = append(c.Rows, b.enoughRow(e.Collector, &e.Demands[i]))
			}
		}
		v.Collectors = append(v.Collectors, c)
	}
	return v
}

// filterCell is a state of the filter under a head that says filter.
func (b *Book) filterCell(filter string) string {
	switch filter {
	case duct.Clean:
		return b.words.Text("enough.filter.clean")
	case duct.ChangeOut:
		return b.words.Text("enough.filter.due")
	}
	return b.words.Text("enough.filter.none")
}

func (b *Book) enoughRow(c *shop.Collector, d *duct.Demand) enoughRow {
	row := enoughRow{Use: d.Use.Name, Path: b.Path("use", d.Use.Name), Filter: b.filterCell(d.Filter), Need: unit.Air.Figure(b.units, d.Need), Gets: b.words.Text("enough.off"), Weakest: "—", Flow: "—", Static: b.words.Text("enough.unreachable"), Offers: "—", Spare: "—", Short: d.Share < 1}
	if !d.OnCurve && b.unsized(c) {
		row.Gets, row.Static, row.Short = b.words.Text("enough.unsized"), "—", false
	}
	if d.OnCurve {
		row.Gets = unit.Air.Figure(b.units, d.Delivered)
		row.Weakest = unit.Percent(d.Share) + " %"
	}
	if d.Reachable {
		row.Flow, row.Static = unit.Air.Figure(b.units, d.Flow), unit.Press.Figure(b.units, d.Static)
		row.Offers = b.words.Text("enough.beyond")
		if d.InRange {
			row.Offers, row.Spare = unit.Press.Figure(b.units, d.Offered), unit.Press.Figure(b.units, d.Spare)
		}
	}
	return row
}
