package templates

import (
	"strings"

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
	Several                            string // the uses in which the fan can settle at several flows
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

// signedPercent is a share with its sign, in whole percent; one that is not
// nought is never printed as nought.
func signedPercent(part float64) string {
	text := unit.Fixed(100*part, 0)
	if text == "0" && unit.Six(part) != 0 {
		text = unit.Fixed(100*part, 1)
	}
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
			c.Delivered = b.words.Text("enough.by", unit.Air.Print(b.units, w.Result.Flow), w.Use.Name)
			c.Margin = b.enoughMargin(w)
		}
		var several []string
		for i := range e.Demands {
			d := &e.Demands[i]
			if d.Port != nil {
				c.Rows = append(c.Rows, b.enoughRow(e.Collector, d))
			}
			if d.OnCurve && len(d.Result.Crossings) > 1 {
				several = append(several, b.words.Text("enough.several-use", d.Use.Name, b.filterOf(d.Result)))
			}
		}
		if len(several) > 0 {
			c.Several = b.words.Text("enough.several-note", strings.Join(several, ", "))
		}
		v.Collectors = append(v.Collectors, c)
	}
	return v
}

// enoughMargin is what the weakest port of a demand gets of its need, and by
// how much that is more.
func (b *Book) enoughMargin(d *duct.Demand) string {
	for _, p := range d.Result.Ports {
		if p.Port == d.Port {
			got, need := unit.Air.Pair(b.units, p.Flow, p.Port.Flow)
			return b.words.Text("enough.margin-of", p.Port.Full(), got, need, unit.Air.Unit(b.units), signedPercent(d.Margin))
		}
	}
	return signedPercent(d.Margin)
}

// filterCell is a state of the filter under a head that says filter.
func (b *Book) filterCell(r *duct.Result) string {
	switch r.Filter {
	case duct.Clean:
		return b.words.Text("enough.filter.clean")
	case duct.ChangeOut:
		return b.words.Text("enough.filter.due")
	}
	if r.Collector != nil && duct.FilterOpen(r.Collector) {
		return b.words.Text("enough.filter.open")
	}
	return b.words.Text("enough.filter.none")
}

func (b *Book) enoughRow(c *shop.Collector, d *duct.Demand) enoughRow {
	row := enoughRow{Use: d.Use.Name, Path: b.Path("use", d.Use.Name), Filter: b.filterCell(d.Result), Need: unit.Air.Figure(b.units, d.Need), Gets: b.words.Text("enough.off"), Weakest: "—", Flow: "—", Static: b.words.Text("enough.unreachable"), Offers: "—", Spare: "—", Short: d.OnCurve && d.Share < 1}
	if !d.OnCurve && b.unsized(c) {
		row.Gets, row.Static = b.words.Text("enough.unsized"), "—"
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
