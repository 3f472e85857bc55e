package main

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/export"
	"dustbook/plan/unit"
)

// size prints the sizing results.
func (p *program) size(c *call) error {
	if c.has("sets") && c.has("choose") {
		return wrongUse{"--sets and --choose are given together", "ask for one, then for the other"}
	}
	asOf, err := c.asOf(p.today())
	if err != nil {
		return err
	}
	l, err := p.load(c, asOf)
	if err != nil {
		return err
	}
	switch {
	case c.has("sets"):
		return p.sizeSets(l.plan)
	case c.has("choose"):
		return p.sizeChoose(l.plan)
	case p.json:
		return p.document(export.MakeSize(l.plan))
	}
	p.sizeHead(l.plan)
	export.Bands(l.plan, ofMachines(l.plan))
	for _, u := range l.plan.Air.Uses {
		p.sizeUse(l.plan, u)
	}
	return nil
}

// ofMachines are the results of the uses of machines: those that are judged.
func ofMachines(made *plan.Plan) (list []*duct.Result) {
	for _, u := range made.Air.Uses {
		if len(u.Machines) > 0 {
			list = append(list, u.Results...)
		}
	}
	return list
}

// document prints a document for other programs.
func (p *program) document(doc any) error {
	data, err := export.JSON(doc)
	p.result.Write(data)
	return err
}

func (p *program) sizeHead(made *plan.Plan) {
	units, air := made.Shop.Units, made.Air.State
	p.print("%s, as of %s", made.Shop.Name, made.AsOf)
	p.print("air of %s; need and flow in %s, speed in %s", unit.Weight.Print(units, air.Density), unit.Air.Unit(units), unit.Speed.Unit(units))
	if open := toBeChosen(made); open != "" {
		p.print("%s", open)
	}
}

// toBeChosen says which ducts have no size yet, and what to do; empty where all
// have one.
func toBeChosen(made *plan.Plan) string {
	var names []string
	for _, d := range made.Shop.Unsized(nil) {
		names = append(names, d.Name)
	}
	if len(names) == 0 {
		return ""
	}
	return "sizes are still to be chosen, of " + strings.Join(names, ", ") + ": run dustbook size --choose, and write them into the shop file"
}

// sizeUse prints one use: what each fan does, then what each port gets.
func (p *program) sizeUse(made *plan.Plan, u *duct.Use) {
	p.print("")
	p.print("%s", u.Name)
	if names := machines(u); u.Kind == duct.Together {
		p.print("  running: %s", names)
	}
	if open := openGates(made, u); open != "" && len(u.Machines) > 0 {
		p.print("  open gates: %s", open)
	}
	for _, group := range byCollector(u.Results) {
		p.sizeFan(made, u, group)
		p.sizePorts(made, group)
	}
}

func machines(u *duct.Use) string {
	var names []string
	for _, m := range u.Machines {
		names = append(names, m.Name)
	}
	return strings.Join(names, ", ")
}

func openGates(made *plan.Plan, u *duct.Use) string {
	var names []string
	for _, g := range made.Shop.Gates {
		if u.Open[g] {
			names = append(names, g.Name)
		}
	}
	return strings.Join(names, ", ")
}

// byCollector parts the results of a use by their collector.
func byCollector(results []*duct.Result) [][]*duct.Result {
	var groups [][]*duct.Result
	for i, r := range results {
		if i == 0 || r.Collector != results[i-1].Collector {
			groups = append(groups, nil)
		}
		last := len(groups) - 1
		groups[last] = append(groups[last], r)
	}
	return groups
}

// sizeFan prints the fan's flow and pressure in each state of its filter, and
// what comes of it.
func (p *program) sizeFan(made *plan.Plan, u *duct.Use, group []*duct.Result) {
	units := made.Shop.Units
	name := "no collector"
	if c := group[0].Collector; c != nil {
		name = c.Name
	}
	t := columns{right: map[int]bool{1: true, 2: true}}
	heads := []string{name, "fan flow", "fan static"}
	if len(u.Machines) > 0 {
		heads = append(heads, "captured", "carried", "slowest stretch")
	}
	t.add(heads...)
	for _, r := range group {
		row := []string{filterWord(r.Filter), "off the curve", "-"}
		if unsized(made, r) {
			row[1] = "no size yet"
		}
		if r.OnCurve {
			row[1], row[2] = unit.Air.Print(units, r.Flow), unit.Press.Print(units, r.Static)
		}
		if len(u.Machines) > 0 && unsized(made, r) {
			row = append(row, "-", "-", "-")
		} else if len(u.Machines) > 0 {
			row = append(row, judged(r.Captured, r.AirDoubts(made.Air.Spread(r))), judged(r.Carried, r.DustDoubts(made.Air.Spread(r))), slowest(units, r))
		}
		t.add(row...)
	}
	p.rows(t)
	for _, r := range group {
		if r.Why.Is() && !unsized(made, r) { // the head says that once
			p.print("  %s: %s", filterWord(r.Filter), r.Why)
		}
	}
	if group[0].Claimed {
		p.print("  the fan is known by its maker's two claims only: no verdict is better than thin")
	}
	var doubts duct.Doubts
	for _, r := range group {
		if len(u.Machines) > 0 && r.Captured {
			doubts = doubts.And(r.AirDoubts(made.Air.Spread(r)))
		}
		if len(u.Machines) > 0 && r.Carried {
			doubts = doubts.And(r.DustDoubts(made.Air.Spread(r)))
		}
	}
	doubts = doubts.Without(duct.ByClaims) // said above
	if why := doubtsSaid(doubts); why != "" {
		p.print("  thin: %s", why)
	}
}

// unsized reports whether a result has no figures because a size is to be
// chosen.
func unsized(made *plan.Plan, r *duct.Result) bool {
	return !r.OnCurve && len(made.Shop.Unsized(r.Collector)) > 0
}

// sizePorts prints what each port needs and gets.
func (p *program) sizePorts(made *plan.Plan, group []*duct.Result) {
	if len(group[0].Ports) == 0 {
		return
	}
	units := made.Shop.Units
	t := columns{right: map[int]bool{1: true}}
	heads := []string{"port", "need", "from"}
	for i, r := range group {
		t.right[len(heads)] = true
		heads = append(heads, "gets, "+filterWord(r.Filter))
		if i == len(group)-1 {
			heads = append(heads, "")
		}
	}
	t.add(heads...)
	for i, port := range group[0].Ports {
		row := []string{port.Port.Full(), unit.Air.Figure(units, port.Port.Flow), port.Port.Need.Mark.String()}
		short := ""
		for _, r := range group {
			at := r.Ports[i]
			got := "-"
			if r.OnCurve {
				got, row[1] = unit.Air.Pair(units, at.Flow, at.Port.Flow)
			}
			row = append(row, got)
			switch {
			case r.OnCurve && !at.Captured:
				short = "short"
			case short == "" && r.OnCurve && at.Port.Flow > 0 && r.PortDoubts(&at, made.Air.Spread(r)).Any():
				short = "thin"
			}
		}
		t.add(append(row, short)...)
	}
	p.rows(t)
}

func (p *program) rows(t columns) {
	for _, line := range t.lines("  ") {
		p.print("%s", line)
	}
}

// slowest names the stretch or hose with the least share of the speed that
// carries the dust.
func slowest(units unit.System, r *duct.Result) string {
	if !r.OnCurve {
		return "-"
	}
	at, _ := r.Slowest()
	if at == nil {
		return "-"
	}
	name := at.Stretch.Name()
	if at.Slower() < at.Velocity {
		name = "hose of " + name
	}
	got, need := unit.Speed.Pair(units, at.Slower(), at.Transport)
	return name + ", " + got + " of " + need
}

func filterWord(filter string) string {
	switch filter {
	case duct.Clean:
		return "filter clean"
	case duct.ChangeOut:
		return "filter due"
	}
	return "no filter"
}

// judged says whether something is so: thin where it is by the model, yet
// something keeps it from being sure.
func judged(is bool, doubts duct.Doubts) string {
	switch {
	case !is:
		return "no"
	case doubts.Any():
		return "thin"
	}
	return "yes"
}
