package templates

import (
	"context"
	"slices"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// sizesView is the sheet of the sizes to choose.
type sizesView struct {
	Sheet      string // unit
	Collectors []sizesCollector
	Stock      string     // the sizes that were chosen from
	Sources    []citation // where those and the price of a gate come from
	Price      string
}

type sizesCollector struct {
	Name, Path string
	Air, Dust  string   // the least share of a need, and of a speed
	Opened     []string // gates that stand open as well, use by use
	Says       string   // whether the sizes meet every use, where there are several collectors
	Sure       string   // how sure that is
	Beyond     string   // uses left out; empty where there are none
	Rows       []sizesRow
	Write      []sizesLine // lines for the shop file; none where the sizes do not meet all
	Area, Cost string
	Gates      string
	Gated      bool // gates must stand open as well
	Energy     string
}

// sizesLine is a line for the shop file, and the table it goes into.
type sizesLine struct{ Table, Name, Line string }

type sizesRow struct {
	Duct, Path, Size, Area string
	Down, Up               sizesStep
}

// sizesStep is a stock size next to the chosen one: what it would do, in
// words.
type sizesStep struct {
	Size, Says string
	Met        bool
}

// addSizes adds the sheet, where the size of a duct is to be chosen.
func (b *Book) addSizes() {
	list, _ := b.Plan.Air.Choose(context.Background(), b.Plan.Shop) // nothing ends that context
	if len(list) == 0 {
		return
	}
	b.add(&Sheet{Part: partAir, Path: sizesPath, Title: b.words.Text("sizes.title"), Kind: "table", Lede: b.words.Text("sizes.lede"),
		Verdict: b.sizesVerdict(list), name: "sizes.html", view: func() any { return b.sizesView(list) }})
}

// sizesVerdict is that of the first collector whose uses are not all met.
func (b *Book) sizesVerdict(list []*duct.Choice) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("sizes."+key, about...) }
	for _, c := range list {
		if !c.Met {
			return Verdict{Words: []Word{{"notmet", say("word.none")}}, Says: say("of", c.Collector.Name, b.choiceSays(c)), Do: b.words.Text("sizes.do." + standingOf(c))}
		}
	}
	says := b.words.Text("sizes.says." + b.metKey(list))
	v := Verdict{Words: []Word{{"met", say("word.met")}}, Says: say("of", joined(namesIn(list, func(c *duct.Choice) string { return c.Collector.Name })), says), Do: say("do.met")}
	var doubts duct.Doubts
	for _, c := range list {
		doubts = doubts.And(b.Plan.Air.Margins(b.Plan.Shop, c).Doubts)
	}
	if doubts.Any() {
		v.Words = []Word{{"thin", say("word.thin")}}
		v.Says += " " + b.doubtSays(doubts)
	}
	return v
}

// metKey is the row that says that the uses are met: all or all but some, and
// whether there is a filter in two states.
func (b *Book) metKey(list []*duct.Choice) string {
	key := "met"
	if slices.ContainsFunc(list, func(c *duct.Choice) bool { return len(c.Beyond) > 0 }) {
		key = "met-but"
	}
	if !slices.ContainsFunc(list, func(c *duct.Choice) bool { return c.Collector.Filter != nil }) {
		key += "-plain"
	}
	return key
}

// standingOf is the one word for how a choice stands.
func standingOf(c *duct.Choice) string {
	switch {
	case c.Met:
		return "met"
	case len(c.Sizes) > 0:
		return "near"
	case c.Proven:
		return "nothing-fits"
	}
	return "nothing-found"
}

// choiceSays says whether a choice meets every use.
func (b *Book) choiceSays(c *duct.Choice) string {
	word := standingOf(c)
	switch {
	case word == "met":
		return b.words.Text("sizes.says." + b.metKey([]*duct.Choice{c}))
	case word == "nothing-fits":
		return b.blockSays(c)
	case word != "near":
		return b.words.Text("sizes.says." + word)
	}
	return b.words.Text("sizes.says.near", b.missSays(c.Miss))
}

// missSays says what sizes miss by most.
func (b *Book) missSays(m *duct.Miss) string {
	say := func(key string, about ...string) string { return b.words.Text("together.why."+key, about...) }
	state, says := b.filterState(m.Filter), ""
	switch {
	case m.Port != nil:
		says = say("air", m.Port.Full(), unit.Percent(m.Share), state)
	case m.Stretch != nil && m.Hose:
		says = say("hose", m.Stretch.Duct.Name, unit.Percent(m.Share), state)
	case m.Stretch != nil:
		says = say("dust", m.Stretch.Name(), unit.Percent(m.Share), state)
	default:
		says = say("curve", state, b.words.Because(m.Why))
	}
	return b.words.Text("sizes.miss", m.Use.Name, says)
}

func (b *Book) sizesView(list []*duct.Choice) sizesView {
	v := sizesView{Sheet: unit.Floor.Unit(b.units), Price: unit.Floor.Print(b.units, duct.ReliefPrice())}
	for _, c := range list {
		one := b.sizesCollector(c)
		if len(list) > 1 { // else the verdict says it
			one.Says = b.words.Text("sizes.of", c.Collector.Name, b.choiceSays(c))
		}
		v.Collectors = append(v.Collectors, one)
	}
	var stock []string
	for _, size := range duct.StockSizes(b.units) {
		stock = append(stock, unit.Size.Figure(b.units, size))
	}
	v.Stock = strings.Join(stock, ", ") + " " + unit.Size.Unit(b.units)
	var sources []source.Basis
	for _, t := range append(duct.AdviceTables(), duct.ChooseTable()) {
		if t.Name == "stock" || t.Name == "choose" {
			for _, row := range t.Rows {
				sources = append(sources, row.Basis)
			}
		}
	}
	v.Sources = b.cited(sources)
	return v
}

func (b *Book) sizesCollector(c *duct.Choice) sizesCollector {
	v := sizesCollector{Name: c.Collector.Name, Path: b.Path("collector", c.Collector.Name)}
	if len(c.Beyond) > 0 {
		v.Beyond = b.words.Text("sizes.beyond", joined(namesIn(c.Beyond, func(u *duct.Use) string { return u.Name })))
	}
	if len(c.Sizes) == 0 {
		return v
	}
	v.Sure = b.sure(c)
	v.Air, v.Dust = b.marginSays(b.Plan.Air.Margins(b.Plan.Shop, c))
	v.Opened = b.openedSays(c)
	v.Area, v.Cost = unit.Floor.Print(b.units, c.Area), unit.Floor.Print(b.units, c.Cost)
	v.Energy = b.words.Text("sizes.energy-value", unit.Fixed(c.Energy/1000, 2))
	gates := c.Opens()
	v.Gates = b.words.Text("sizes.no-gates")
	if v.Gated = gates > 0; v.Gated {
		v.Gates = b.words.Count("sizes.gates", gates)
	}
	steps, _ := b.Plan.Air.Steps(context.Background(), b.Plan.Shop, c)
	for _, at := range steps {
		v.Rows = append(v.Rows, sizesRow{at.Duct.Name, b.Path("duct", at.Duct.Name), unit.Size.Print(b.units, at.Size), unit.Floor.Figure(b.units, at.Area), b.sizesStep(at, at.Down), b.sizesStep(at, at.Up)})
	}
	if c.Met {
		v.Write = b.toWrite(c)
	}
	return v
}

// sure says whether the search was complete.
func (b *Book) sure(c *duct.Choice) string {
	switch {
	case c.Proven && c.Met:
		return b.words.Text("sizes.proven-met")
	case c.Proven:
		return b.words.Text("sizes.proven-near")
	}
	return b.words.Count("sizes.bound", c.Tried)
}

func (b *Book) sizesStep(at duct.Stepped, step *duct.Step) sizesStep {
	if step == nil {
		return sizesStep{Says: b.words.Text("sizes.step.none")}
	}
	v := sizesStep{Size: unit.Size.Print(b.units, step.Size), Met: step.Met}
	switch more := step.Area - at.Area; {
	case step.Wider != "":
		v.Says = b.words.Text("sizes.step.wider", step.Wider, step.Into)
	case !step.Met:
		v.Says = b.missSays(step.Miss)
	case more < 0:
		v.Says = b.words.Text("sizes.step.less", unit.Floor.Print(b.units, -more))
	default:
		v.Says = b.words.Text("sizes.step.more", unit.Floor.Print(b.units, more))
	}
	return v
}

// toWrite are the lines for the shop file.
func (b *Book) toWrite(c *duct.Choice) (lines []sizesLine) {
	for _, at := range c.Sizes {
		lines = append(lines, sizesLine{"[[duct]]", at.Duct.Name, b.words.Text("sizes.line.size", unit.Size.Print(b.units, at.Size))})
	}
	for _, opened := range c.Relief {
		table, gates := opened.Write()
		quoted := namesIn(gates, func(g *shop.Gate) string { return `"` + g.Name + `"` })
		lines = append(lines, sizesLine{"[[" + table + "]]", opened.Use.Name, b.words.Text("sizes.line.opens", joined(quoted))})
	}
	return lines
}
