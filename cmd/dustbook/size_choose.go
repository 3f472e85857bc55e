package main

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/export"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// sizeChoose prints the sizes for the ducts whose size is to be chosen.
func (p *program) sizeChoose(made *plan.Plan) error {
	ctx, release := p.untilStopped()
	defer release()
	p.progress.step("choosing")
	if p.json {
		doc, err := export.MakeChoose(ctx, made)
		if err != nil {
			return stopped(err)
		}
		return p.document(doc)
	}
	list, err := made.Air.Choose(ctx, made.Shop)
	if err != nil {
		return stopped(err)
	}
	p.print("%s, as of %s", made.Shop.Name, made.AsOf)
	if len(list) == 0 {
		p.print(`no duct has its size to be chosen: write size = "choose" in the [[duct]] of each that has, then ask again`)
		return nil
	}
	p.print("stock sizes for the ducts with size = \"choose\"; sheet is pi times inside diameter times length")
	for _, c := range list {
		steps, err := made.Air.Steps(ctx, made.Shop, c)
		if err != nil {
			return stopped(err)
		}
		p.choice(made, c, steps)
	}
	return nil
}

// choice prints the choice for one collector: its verdict, the sizes, what
// they take, and what to write.
func (p *program) choice(made *plan.Plan, c *duct.Choice, steps []duct.Stepped) {
	p.print("")
	p.print("%s", c.Collector.Name)
	p.choiceVerdict(made, c)
	for _, u := range c.Beyond {
		p.print("  left out, no size meets it: %s (two of its machines share an end, or no duct serves a port)", u.Name)
	}
	if len(steps) == 0 {
		return
	}
	t := columns{right: map[int]bool{1: true, 2: true}}
	t.add("duct", "size", "sheet", "instead of it")
	units := made.Shop.Units
	for _, at := range steps {
		beside := besides(made, at)
		t.add(at.Duct.Name, unit.Size.Print(units, at.Size), unit.Floor.Print(units, at.Area), beside[0])
		for _, more := range beside[1:] {
			t.add("", "", "", more)
		}
	}
	p.rows(t)
	p.choiceTakes(made, c)
	p.choiceWrite(made, c)
}

// choiceVerdict prints whether the sizes meet every use, how near they come to
// what it needs, and how sure that is.
func (p *program) choiceVerdict(made *plan.Plan, c *duct.Choice) {
	all, filter := "every use", ""
	if len(c.Beyond) > 0 {
		all = "every use but those left out"
	}
	if c.Collector.Filter != nil {
		filter = ", with the filter clean and due for change"
	}
	switch {
	case c.Met:
		p.print("  %s gets its air and carries its dust%s", all, filter)
	case len(c.Sizes) == 0 && c.Proven:
		p.print("  no stock size fits between the sizes that are given: no duct may be wider than what it empties into")
		if c.Block != nil {
			p.print("  %s", blockSaid(made.Shop.Units, c))
		}
		p.print("  mend the sizes that are given, or write size = \"choose\" there as well")
		return
	case len(c.Sizes) == 0:
		p.print("  the search found no sizes within its bound")
		return
	default:
		p.print("  no sizes meet every use; this is the nearest: %s", missSaid(c.Miss))
	}
	p.choiceMargins(made.Air.Margins(made.Shop, c), c.Met)
	switch {
	case c.Proven && c.Met:
		p.print("  proven: no stock sizes take less sheet, gates opened as well counted in")
	case c.Proven:
		p.print("  proven: no stock sizes come nearer")
	default:
		p.print("  not proven: the search stopped at its bound, with %d choices solved in full; there may be better", c.Tried)
	}
}

// choiceMargins prints the least share of a need and of a speed, and what keeps
// sizes that meet every use at thin.
func (p *program) choiceMargins(m duct.Margins, met bool) {
	if a := m.Air; a != nil {
		p.print("  least air: %s, %s: %s gets %s of its need%s", a.Use.Name, filterWord(a.Filter), a.Port.Full(), shareOf(a.Share), bandSaid(a.Band))
	}
	if d := m.Dust; d != nil {
		name := d.Stretch.Name()
		if d.Hose {
			name = "the hose of " + d.Stretch.Duct.Name
		}
		p.print("  least speed: %s, %s: %s runs at %s of the speed it needs%s", d.Use.Name, filterWord(d.Filter), name, shareOf(d.Share), bandSaid(d.Band))
	}
	if why := doubtsSaid(m.Doubts); met && why != "" {
		p.print("  thin: %s", why)
	}
}

// bandSaid is how far a share may be off; empty where that is not known.
func bandSaid(band duct.Range) string {
	if band == (duct.Range{}) {
		return ""
	}
	return " (eight times of ten between " + unit.Percent(band.Low) + " and " + shareOf(band.High) + ")"
}

// blockSaid says which duct no stock size fits, and between what.
func blockSaid(units unit.System, c *duct.Choice) string {
	b := c.Block
	below := "the inlet of " + c.Collector.Name
	if b.Below != nil {
		below = b.Below.Name
	}
	most := "the " + unit.Size.Print(units, b.To) + " of " + below
	if b.Above == nil {
		return b.Duct.Name + " may have at most " + most + "; the smallest stocked is " + unit.Size.Print(units, b.Stock)
	}
	return b.Duct.Name + " must have at least the " + unit.Size.Print(units, b.From) + " of " + b.Above.Name + ", and may have at most " + most
}

// besides says what the sizes next to a chosen one would do.
func besides(made *plan.Plan, at duct.Stepped) (list []string) {
	units := made.Shop.Units
	for _, step := range []*duct.Step{at.Down, at.Up} {
		if step == nil {
			continue
		}
		says := ""
		switch {
		case step.Wider != "":
			says = "does not fit: " + step.Wider + " would be wider than " + step.Into
		case step.Met:
			says = "meets every use as well, with " + sheetSaid(units, step.Area-at.Area)
		default:
			says = missSaid(step.Miss)
		}
		list = append(list, unit.Size.Print(units, step.Size)+": "+says)
	}
	if len(list) == 0 {
		return []string{"-"}
	}
	return list
}

// sheetSaid is how much more or less sheet something takes.
func sheetSaid(units unit.System, more unit.Area) string {
	if more < 0 {
		return unit.Floor.Print(units, -more) + " less sheet"
	}
	return unit.Floor.Print(units, more) + " more sheet"
}

// choiceTakes prints the sheet, the relief gates and the energy.
func (p *program) choiceTakes(made *plan.Plan, c *duct.Choice) {
	units, gates := made.Shop.Units, c.Opens()
	if gates == 0 {
		p.print("  sheet: %s; no gate must stand open as well", unit.Floor.Print(units, c.Area))
	} else {
		p.print("  sheet: %s; with %s opened as well, at %s each: %s", unit.Floor.Print(units, c.Area), countOf(gates, "gate"), unit.Floor.Print(units, duct.ReliefPrice()), unit.Floor.Print(units, c.Cost))
	}
	p.print("  fan: %s kWh a day, with the filter clean, of its shaft where its power is given, else of the air; a use without hours counts as one hour", unit.Fixed(c.Energy/1000, 2))
}

// choiceWrite prints what to write into the shop file.
func (p *program) choiceWrite(made *plan.Plan, c *duct.Choice) {
	if !c.Met {
		for _, opened := range c.Relief {
			p.print("  opened as well in %s: %s", opened.Use.Name, quotedNames(opened.Gates))
		}
		p.print("  first mend what breaks: less need or a larger collector, a shorter way, or more ducts with size = \"choose\"; then ask again")
		return
	}
	p.print("  write the sizes into the shop file:")
	for _, at := range c.Sizes {
		p.print("    [[duct]] %q: size = %q", at.Duct.Name, unit.Size.Print(made.Shop.Units, at.Size))
	}
	for _, opened := range c.Relief {
		table, gates := opened.Write()
		p.print("    [[%s]] %q: also_open = [%s]", table, opened.Use.Name, quotedNames(gates))
	}
	if len(c.Relief) > 0 {
		p.print("  what a machine opens as well stands open in its uses too")
	}
	p.print("  then reckon again: dustbook size, dustbook inspect")
}

func quotedNames(gates []*shop.Gate) string {
	var names []string
	for _, g := range gates {
		names = append(names, `"`+g.Name+`"`)
	}
	return strings.Join(names, ", ")
}

// missSaid says what sizes miss by most.
func missSaid(m *duct.Miss) string {
	in := m.Use.Name + ", " + filterWord(m.Filter) + ": "
	switch {
	case m.Why.Is():
		return in + m.Why.String()
	case m.Port != nil:
		return in + shortOfAir(m.Port, m.Share)
	case m.Stretch != nil:
		return in + tooSlow(m.Stretch, m.Hose, m.Share)
	}
	return in + "it does not get what it needs"
}

func shortOfAir(port *shop.Port, share float64) string {
	return port.Full() + " gets " + shareOf(share) + " of its need"
}

func tooSlow(at *shop.Stretch, hose bool, share float64) string {
	name := at.Name()
	if hose {
		name = "the hose of " + at.Duct.Name
	}
	return "dust settles in " + name + ", at " + shareOf(share) + " of the speed it needs"
}

// shareOf is a share in percent.
func shareOf(part float64) string { return unit.Percent(part) + " %" }
