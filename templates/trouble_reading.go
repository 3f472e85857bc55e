package templates

import (
	"html/template"
	"slices"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// gaugeTable is one gauge of the shop: its mark in every use that it reads,
// and what a reading off its mark means.
type gaugeTable struct {
	ID, Head string
	Says     template.HTML
	Dull     string // why it does not tell what lies upstream
	Second   string // the head of the column of the filter gauge, or of its mark at change-out
	Rows     []gaugeMark
	Meanings []gaugeMeaning // over the mark first
}

// gaugeMark is what to expect in one use.
type gaugeMark struct {
	Use, Path     string
	Gates         []string
	Mark, Between string
	Second        string
	Hoods         []string // the hoods of the use with their marks
}

// gaugeMeaning is what a reading off its mark means in uses that are alike.
type gaugeMeaning struct {
	Reads string
	Uses  []string // empty where it is all
	gaugeTurn
}

// gaugeTurn is a reading off its mark: what may be at fault, which gauge
// decides, and what its reading leaves.
type gaugeTurn struct {
	Means           []string
	Next            string
	IfOver, IfUnder gaugeLeft
}

// gaugeLeft is what two readings leave, and what tells more; Then is empty
// where the side is known or nothing would.
type gaugeLeft struct {
	Means []string
	Then  string
}

// tapTables are those of the taps with a name.
func (b *Book) tapTables(at finders) []gaugeTable {
	var list []gaugeTable
	for _, t := range b.Plan.Shop.Taps {
		if t.Name == "" || t.On == nil {
			continue
		}
		v := gaugeTable{ID: "tap-" + shop.Slug(t.Name), Head: t.Name, Says: trusted(b.words.HTML("trouble.tap-on", t.On.Name, unit.Run.Print(b.units, t.Where))), Second: b.words.Text("trouble.filter-gauge")}
		g := duct.Gauge{Kind: duct.TapGauge, Tap: t}
		var dull []string
		for _, f := range at[t.On.Collector] {
			if !slices.Contains(f.Gauges, g) || !b.passes(f.Use, t) {
				continue
			}
			row, known := b.gaugeMark(f, record.Reading{Of: "tap pressure", At: t.Name})
			if !known {
				continue
			}
			row.Second = b.markOf(f, duct.Gauge{Kind: duct.AcrossFilter})
			for _, hood := range f.Gauges {
				if hood.Kind == duct.BehindHood {
					row.Hoods = append(row.Hoods, b.words.Text("trouble.hood-mark", hood.Port.Full(), b.markOf(f, hood)))
				}
			}
			v.Rows = append(v.Rows, row)
			b.mean(&v, f, g)
			if !f.Sharp(g) {
				dull = append(dull, f.Use.Name)
			}
		}
		if len(dull) > 0 {
			v.Dull = b.words.Text("trouble.dull", b.few(dull))
		}
		list = append(list, v.done())
	}
	return list
}

// filterTables are those of the collectors that have a filter.
func (b *Book) filterTables(at finders) []gaugeTable {
	var list []gaugeTable
	for _, c := range b.Plan.Shop.Collectors {
		if c.Filter == nil {
			continue
		}
		v := gaugeTable{ID: "filter-" + shop.Slug(c.Name), Head: c.Name, Second: b.words.Text("trouble.at-change"),
			Says: trusted(b.words.HTML("trouble.filter-given", unit.Press.Print(b.units, c.Filter.Clean), unit.Press.Print(b.units, c.Filter.Change), unit.Air.Print(b.units, c.Filter.Flow)))}
		for _, f := range at[c] {
			row, known := b.gaugeMark(f, record.Reading{Of: "filter pressure", At: c.Name})
			if !known {
				continue
			}
			row.Second = "—"
			if e := b.Plan.Expect(record.Reading{Of: "filter pressure", At: c.Name, Use: f.Use.Name, Filter: duct.ChangeOut}); e.Known() {
				row.Second = unit.Press.Figure(b.units, unit.Pressure(e.Low))
			}
			v.Rows = append(v.Rows, row)
			b.mean(&v, f, duct.Gauge{Kind: duct.AcrossFilter})
		}
		if len(v.Rows) > 0 {
			list = append(list, v.done())
		}
	}
	return list
}

// finders are those of every use of machines on a collector.
type finders map[*shop.Collector][]*duct.Finder

// findersOf are those of the shop, filters clean.
func (b *Book) findersOf() finders {
	all := finders{}
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.Results {
			if r.Filter == duct.ChangeOut || r.Collector == nil {
				continue
			}
			if f := b.Plan.Air.Finder(r); f != nil {
				all[r.Collector] = append(all[r.Collector], f)
			}
		}
	}
	return all
}

// gaugeMark is the mark of a gauge in a use, with the bounds within which a
// reading agrees.
func (b *Book) gaugeMark(f *duct.Finder, r record.Reading) (gaugeMark, bool) {
	r.Use, r.Filter = f.Use.Name, duct.Clean
	e := b.Plan.Expect(r)
	if !e.Known() {
		return gaugeMark{}, false
	}
	row := b.proofRow(r.Of, e)
	return gaugeMark{Use: f.Use.Name, Path: b.Path("use", f.Use.Name), Gates: b.openIn(f.Use, f.Tree.Collector), Mark: row.Expected, Between: row.Bounds}, true
}

// markOf is what the plan expects of another gauge in the same use.
func (b *Book) markOf(f *duct.Finder, g duct.Gauge) string {
	r := record.Reading{Use: f.Use.Name, Filter: duct.Clean}
	switch g.Kind {
	case duct.AcrossFilter:
		r.Of, r.At = "filter pressure", f.Tree.Collector.Name
	case duct.BehindHood:
		r.Of, r.At = "hood pressure", g.Port.Full()
	}
	if e := b.Plan.Expect(r); e.Known() {
		return unit.Press.Figure(b.units, unit.Pressure(e.Low))
	}
	return "—"
}

// mean takes in what a gauge off its mark means in a use; uses in which it
// means the same share a row.
func (b *Book) mean(v *gaugeTable, f *duct.Finder, g duct.Gauge) {
	for _, s := range []duct.Sign{duct.Above, duct.Below} {
		m := gaugeMeaning{Reads: b.words.Text("trouble.over"), Uses: []string{f.Use.Name}, gaugeTurn: b.turn(f, duct.Shown{At: g, Sign: s})}
		if s == duct.Below {
			m.Reads = b.words.Text("trouble.under")
		}
		v.mean(m)
	}
}

func (b *Book) turn(f *duct.Finder, one duct.Shown) gaugeTurn {
	v := gaugeTurn{Means: b.means(f, one)}
	next, found := f.Next(one)
	if !found {
		return v
	}
	v.Next = b.gaugeName(f, next)
	left := func(s duct.Sign) gaugeLeft {
		two := []duct.Shown{one, {At: next, Sign: s}}
		l := gaugeLeft{Means: b.means(f, two...)}
		if len(l.Means) > 1 {
			if third, more := f.Next(two...); more {
				l.Then = b.gaugeName(f, third)
			}
		}
		return l
	}
	v.IfOver, v.IfUnder = left(duct.Above), left(duct.Below)
	return v
}

// gaugeName is a gauge in words; a hood has its name only where the use has
// several.
func (b *Book) gaugeName(f *duct.Finder, g duct.Gauge) string {
	switch g.Kind {
	case duct.AcrossFilter:
		return b.words.Text("trouble.read-filter")
	case duct.AcrossFan:
		return b.words.Text("trouble.read-fan")
	case duct.BehindHood:
		if hoods(f) > 1 {
			return b.words.Text("trouble.read-this-hood", g.Port.Full())
		}
		return b.words.Text("trouble.read-hood")
	case duct.SpeedGauge:
		return b.words.Text("trouble.read-speed", g.Tap.Name)
	}
	return b.words.Text("trouble.read-tap", g.Tap.Name)
}

func hoods(f *duct.Finder) (n int) {
	for _, g := range f.Gauges {
		if g.Kind == duct.BehindHood {
			n++
		}
	}
	return n
}

// means is what readings leave, in words: kinds of fault by the side they
// stand on, seen from the first reading.
func (b *Book) means(f *duct.Finder, shown ...duct.Shown) []string {
	var list []string
	at := shown[0].At
	for _, c := range f.Remain(shown...) {
		text := b.causeWords(c, at)
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return list
}

// causeWords is a cause in words, seen from a gauge.
func (b *Book) causeWords(c duct.Cause, at duct.Gauge) string {
	side := duct.SideOf(c, at)
	if side == duct.AtCollector {
		return b.words.Text("trouble.fault." + string(c.Fault))
	}
	where := "upstream"
	switch {
	case at.Kind == duct.AcrossFilter:
		where = "ducts"
	case side == duct.Beside:
		where = "beside"
	case side == duct.Onward:
		where = "onward"
	}
	switch c.Fault {
	case duct.LeftOpen, duct.Leaking:
		return b.words.Text("trouble.side.open." + where)
	case duct.HoodBlocked:
		return b.words.Text("trouble.side.hood." + where)
	}
	return b.words.Text("trouble.side.shut." + where)
}

// mean takes a row in, or adds its use to one that says the same.
func (v *gaugeTable) mean(m gaugeMeaning) {
	for i := range v.Meanings {
		if other := &v.Meanings[i]; other.Reads == m.Reads && other.same(m.gaugeTurn) {
			other.Uses = append(other.Uses, m.Uses...)
			return
		}
	}
	v.Meanings = append(v.Meanings, m)
}

func (t gaugeTurn) same(o gaugeTurn) bool {
	text := func(t gaugeTurn) string {
		return strings.Join(slices.Concat(t.Means, []string{t.Next}, t.IfOver.Means, []string{t.IfOver.Then}, t.IfUnder.Means, []string{t.IfUnder.Then}), "\n")
	}
	return text(t) == text(o)
}

// done puts the rows over the mark first, and leaves the names of the uses out
// where a row holds in all.
func (v gaugeTable) done() gaugeTable {
	for i := range v.Meanings {
		if len(v.Meanings[i].Uses) == len(v.Rows) {
			v.Meanings[i].Uses = nil
		}
	}
	if len(v.Meanings) > 0 {
		first := v.Meanings[0].Reads
		slices.SortStableFunc(v.Meanings, func(x, y gaugeMeaning) int { return later(x.Reads != first) - later(y.Reads != first) })
	}
	return v
}

func later(so bool) int {
	if so {
		return 1
	}
	return 0
}
