package templates

import (
	"slices"
	"strings"

	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// handView is the trade's hand method beside the solver.
type handView struct {
	About string
	Laws  []workingLaw
	Rows  []handRow
	Whys  []string // what the reasons mean that stand in the remarks
	Ends  []handEnd
}

// handRow is a stretch by hand.
type handRow struct {
	Name, Flow, Size, Largest, Speed, Dynamic string
	Start, Friction, Fittings, Loss, Static   string
	Solver, Off                               string
	Remarks                                   []string
}

// handEnd is a line at the collector, or a sum of those above it.
type handEnd struct {
	Name, Hand, Solver, Off string
	Sum                     bool
}

// handView writes the hand sheet; nil where there is none.
func (b *Book) handView(c *duct.HandCheck) *handView {
	if c == nil || len(c.Sheet.Rows) == 0 {
		return nil
	}
	v := &handView{About: b.words.Text("working.hand-about", unit.Percent(c.Limit)), Laws: b.handLaws()}
	for i, row := range c.Sheet.Rows {
		v.Rows = append(v.Rows, b.handRow(row, c.Lines[i]))
	}
	v.Whys, v.Ends = b.handWhys(c), b.handEnds(c)
	return v
}

// handLaws are the formulas of the method, with the constants they hold.
func (b *Book) handLaws() []workingLaw {
	accept, redesign := air.BalanceLimits()
	number := air.HandInch.Number()
	if b.units == unit.Metric {
		number = air.HandMetric.Number()
	}
	fit := func(w air.Wall) string {
		x, y, z := w.Fit()
		return b.words.Text("working.hand-fit", unit.Short(x), unit.Short(y), unit.Short(z))
	}
	notes := source.Basis{Document: "vent-notes", Mark: source.Verified}.BriefIn(b.words.Mark)
	manual := source.Basis{Document: "vent-manual", Mark: source.Memory}.BriefIn(b.words.Mark)
	return []workingLaw{
		{b.words.Text("working.law-dynamic"), b.words.Text("working.hand-law-dynamic", unit.Fixed(b.Plan.Air.State.Ratio(), 3), unit.Short(number)), notes},
		{b.words.Text("working.hand-law-hood"), b.words.Text("working.hand-law-hood-is"), notes},
		{b.words.Text("working.term-friction"), b.words.Text("working.hand-law-friction", fit(air.Galvanised), fit(air.Smooth), fit(air.Flexible)), manual},
		{b.words.Text("working.hand-law-raised"), b.words.Text("working.hand-law-raised-is"), notes},
		{b.words.Text("working.hand-law-limits"), b.words.Text("working.hand-law-limits-is", unit.Fixed(accept, 2), unit.Fixed(redesign, 2)), manual},
		{b.words.Text("working.hand-law-merged"), b.words.Text("working.hand-law-merged-is"), notes},
		{b.words.Text("working.hand-fan"), b.words.Text("working.hand-law-fan"), notes},
	}
}

// offBy prints a difference in per cent, with its sign.
func offBy(share float64) string {
	text := unit.Fixed(100*share, 1)
	if share > 0 && text != "0.0" {
		return "+" + text
	}
	return text
}

func (b *Book) handRow(row duct.HandRow, line duct.HandLine) handRow {
	parts, levels, _ := b.ladder(row.Start, row.Loss)
	v := handRow{
		Name: row.Stretch.Name(), Flow: unit.Significant(unit.Air.In(b.units, row.Flow), 4), Size: unit.Size.Figure(b.units, row.Bore),
		Speed: unit.Significant(unit.Speed.In(b.units, row.Velocity), 4), Dynamic: b.fine(row.Dynamic),
		Friction: unit.Fixed(row.Friction, 3), Fittings: unit.Fixed(row.Fittings, 3), Loss: parts[0], Static: levels[0],
		Solver: b.fine(line.Solver), Off: offBy(line.Off),
	}
	if line.Largest > 0 {
		v.Largest = unit.Size.Figure(b.units, line.Largest)
	}
	if row.Hood > 0 {
		v.Start = b.words.Text("working.hand-hood", b.fine(row.Start))
	} else {
		added, _, _ := b.ladder(row.Start-row.Added, row.Added)
		if less, minus := strings.CutPrefix(added[0], "-"); minus {
			v.Start = b.words.Text("working.hand-start-less", b.fine(row.Start-row.Added), less)
		} else {
			v.Start = b.words.Text("working.hand-start", b.fine(row.Start-row.Added), added[0])
		}
	}
	v.Remarks = b.handRemarks(row, line)
	return v
}

// handRemarks are what the method finds at the stretch's end, and why it is
// off the solver.
func (b *Book) handRemarks(row duct.HandRow, line duct.HandLine) []string {
	var list []string
	say := func(key string, about ...string) { list = append(list, b.words.Text(key, about...)) }
	if row.Meets {
		ratio := unit.Fixed(row.Ratio, 2)
		switch {
		case row.Governs:
			say("working.hand-governs")
		case row.Does == air.Even:
			say("working.hand-even", ratio)
		case row.Does == air.Raised:
			say("working.hand-raised", ratio, four(b, unit.Air, row.Raised), b.fine(row.RaisedDynamic))
		default:
			say("working.hand-wrong-size", ratio, unit.Fixed(row.Gate, 2))
		}
	}
	if !row.InFit {
		slowest, fastest := air.FitRange()
		say("working.hand-out-of-fit", unit.Speed.Print(b.units, slowest), unit.Speed.Print(b.units, fastest))
	}
	if key := whyKeys[line.Why]; key != "" {
		say(key)
	}
	return list
}

// whyKeys name the reasons for a difference.
var whyKeys = [...]string{duct.Close: "", duct.ByFlow: "working.hand-by-flow", duct.ByFriction: "working.hand-by-friction", duct.ByJunction: "working.hand-by-junction"}

// handWhys says what the reasons mean that stand on the sheet.
func (b *Book) handWhys(c *duct.HandCheck) []string {
	var list []string
	for why, key := range whyKeys {
		if key != "" && slices.ContainsFunc(c.Lines, func(l duct.HandLine) bool { return l.Why == duct.HandWhy(why) }) {
			list = append(list, b.words.Text(key+"-is"))
		}
	}
	return list
}

// handEnds are the fan's side by hand. What stands between two sums adds up as
// printed.
func (b *Book) handEnds(c *duct.HandCheck) []handEnd {
	x := c.Sheet
	parts, levels, sum := b.ladder(0, x.Static-x.Added, x.Added, x.Separator, x.Filter, x.Outlet, -x.Dynamic)
	line := func(key string, i int) handEnd { return handEnd{Name: b.words.Text(key), Hand: parts[i]} }
	return []handEnd{
		line("working.hand-last", 0),
		line("working.hand-into-inlet", 1),
		{Name: b.words.Text("working.hand-inlet"), Hand: levels[1], Solver: b.fine(c.Inlet.Solver), Off: offBy(c.Inlet.Off), Sum: true},
		line("working.hand-separator", 2),
		line("working.hand-filter", 3),
		line("working.hand-outlet", 4),
		line("working.hand-less-dynamic", 5),
		{Name: b.words.Text("working.hand-fan"), Hand: sum, Solver: b.fine(c.Fan.Solver), Off: offBy(c.Fan.Off), Sum: true},
	}
}
