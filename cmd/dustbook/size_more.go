package main

import (
	"context"
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// sizeWhat checks which of the flags of size were given together.
func (p *program) sizeWhat(c *call) error {
	switch {
	case c.has("sets") && c.has("choose"):
		return wrongUse{"--sets and --choose are given together", "ask for one, then for the other"}
	case p.json && c.has("sets"):
		return wrongUse{"--sets prints no JSON", "leave out --json"}
	case p.json && c.has("choose"):
		return wrongUse{"--choose prints no JSON", "leave out --json"}
	}
	return nil
}

// sizeSets prints which machines may run together: every set, the smaller ones
// first.
func (p *program) sizeSets(made *plan.Plan) {
	x := made.Together()
	if x.Size < x.People && x.Size < len(made.Shop.Machines) {
		p.print("sets of more than %d machines are too many and are left out", x.Size)
	}
	t := columns{}
	t.add("machines", "together", "why not", "what helps")
	for _, s := range x.All {
		var names []string
		for _, m := range s.Machines {
			names = append(names, m.Name)
		}
		t.add(strings.Join(names, ", "), worksWord(s), firstReason(s), reliefOf(s))
	}
	p.rows(t)
}

func worksWord(s *duct.Set) string {
	if s.Works {
		return "works"
	}
	return "fails"
}

// firstReason is the first thing that a set fails by; "-" where it works.
func firstReason(s *duct.Set) string {
	switch {
	case s.Apart != nil:
		return "both take their air through the end of " + s.Apart.Name
	case len(s.On) == 0:
		return "no duct serves it"
	}
	for _, v := range s.On {
		in := ", " + filterWord(v.Filter)
		switch {
		case !v.OnCurve:
			return v.Why + in
		case v.Port != nil:
			return v.Port.Full() + " gets " + shareOf(v.PortShare) + " of its need" + in
		case v.Slowest != nil && v.Hose:
			return "the hose of " + v.Slowest.Duct.Name + " runs at " + shareOf(v.Speed) + " of what its dust needs" + in
		case v.Slowest != nil:
			return v.Slowest.Name() + " runs at " + shareOf(v.Speed) + " of what its dust needs" + in
		}
	}
	return "-"
}

// shareOf is a share in percent that is never rounded up to all of it.
func shareOf(part float64) string {
	if whole := unit.Fixed(100*part, 0); whole != "100" {
		return whole + " %"
	}
	return unit.Fixed(100*part, 1) + " %"
}

// reliefOf names the gates that mend a set by standing open as well.
func reliefOf(s *duct.Set) string {
	var names []string
	for _, r := range s.Relief {
		for _, g := range r.Gates {
			names = append(names, g.Name)
		}
	}
	if len(names) == 0 {
		return "-"
	}
	return "open " + strings.Join(names, ", ") + " as well"
}

// sizeChoose prints the sizes for the ducts whose size is to be chosen.
func (p *program) sizeChoose(made *plan.Plan) error {
	list, err := made.Air.Choose(context.Background(), made.Shop)
	if err != nil {
		return err
	}
	if len(list) == 0 {
		p.print(`no duct has its size to be chosen: write size = "choose" for those that have`)
	}
	for _, c := range list {
		p.choice(made, c)
	}
	return nil
}

func (p *program) choice(made *plan.Plan, c *duct.Choice) {
	units := made.Shop.Units
	p.print("")
	p.print("%s", c.Collector.Name)
	if len(c.Sizes) == 0 {
		p.print("  no stock size fits between the sizes that are given")
		return
	}
	t := columns{right: map[int]bool{1: true}}
	t.add("duct", "size")
	for _, s := range c.Sizes {
		t.add(s.Duct.Name, unit.Size.Print(units, s.Size))
	}
	p.rows(t)
	p.print("  sheet: %s; with relief gates counted: %s", unit.Floor.Print(units, c.Area), unit.Floor.Print(units, c.Cost))
	for _, r := range c.Relief {
		p.print("  %s: open %s as well", r.Use.Name, strings.Join(gateNames(r.Gates), ", "))
	}
	if c.Met {
		p.print("  every use gets its air and carries its dust, with the filter clean and due for change")
	} else if c.Miss != nil {
		p.print("  no sizes meet every use; this is the nearest: %s", missed(c.Miss))
	}
	for _, u := range c.Beyond {
		p.print("  %s: no size meets it", u.Name)
	}
	if !c.Proven {
		p.print("  the search stopped at its bound, after %s choices: there may be better", strconv.Itoa(c.Tried))
	}
	p.print("  write the sizes into the shop file, then reckon again")
}

func gateNames(gates []*shop.Gate) []string {
	var names []string
	for _, g := range gates {
		names = append(names, g.Name)
	}
	return names
}

// missed says what a choice of sizes misses by most.
func missed(m *duct.Miss) string {
	in := m.Use.Name + ", " + filterWord(m.Filter) + ": "
	switch {
	case m.Why != "":
		return in + m.Why
	case m.Port != nil:
		return in + m.Port.Full() + " gets " + shareOf(m.Share) + " of its need"
	case m.Stretch != nil && m.Hose:
		return in + "the hose of " + m.Stretch.Duct.Name + " runs at " + shareOf(m.Share) + " of what its dust needs"
	case m.Stretch != nil:
		return in + m.Stretch.Name() + " runs at " + shareOf(m.Share) + " of what its dust needs"
	}
	return in + "its need"
}
