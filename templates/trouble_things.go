package templates

import (
	"slices"
	"strconv"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// mostThings is how many things a cause lists; the rest stand on their sheets.
const mostThings = 12

// fewThings keeps the first things and says how many more there are.
func (b *Book) fewThings(list []troubleThing) []troubleThing {
	if more := len(list) - mostThings; more > 0 {
		return append(list[:mostThings:mostThings], troubleThing{Says: b.words.Text("trouble.more", strconv.Itoa(more))})
	}
	return list
}

func (b *Book) pressUnit() string { return unit.Press.Unit(b.units) }

// openSteps tell how many gates stand open where one machine runs, and how
// many there are.
func (b *Book) openSteps() []troubleStep {
	gates := len(b.Plan.Shop.Gates)
	if gates == 0 {
		return b.step("open-bare", nil)
	}
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.Results {
			if open := b.gatesOpen(r); u.Kind == duct.OneMachine && len(open) > 0 {
				return b.step("open", nil, u.Name, b.list(open), b.words.Count("trouble.gates", gates))
			}
		}
	}
	return b.step("open-bare", nil)
}

// gatesOpen are the gates open in a result; none where no collector serves it.
func (b *Book) gatesOpen(r *duct.Result) []string {
	if r.Collector == nil {
		return nil
	}
	return b.gateNames(r)
}

func (b *Book) filterThings() (list []troubleThing) {
	for _, c := range b.Plan.Shop.Collectors {
		if f := c.Filter; f != nil {
			list = append(list, troubleThing{c.Name, b.Path("collector", c.Name), b.words.Text("upkeep.filter-figures", unit.Press.Print(b.units, f.Clean), unit.Press.Print(b.units, f.Change), unit.Air.Print(b.units, f.Flow))})
		}
	}
	return list
}

func (b *Book) binThings() (list []troubleThing) {
	for _, c := range b.Plan.Shop.Collectors {
		if c.Bin == nil {
			continue
		}
		says := b.words.Text("trouble.bin-size", unit.Bin.Print(b.units, c.Bin.Size))
		if f := b.Plan.Takeoff.Bin(c); f != nil && f.Fastest != nil {
			says += " " + b.words.Text("upkeep.bin-figures", f.Fastest.Machine.Name, unit.Minutes.Print(b.units, f.Fastest.Until))
		}
		list = append(list, troubleThing{c.Name, b.Path("collector", c.Name), says})
	}
	return list
}

// mainThings are the ducts that others join, each with what joins it, from the
// collector outward: the order to walk in.
func (b *Book) mainThings() (list []troubleThing) {
	for _, d := range b.Plan.Shop.Ducts {
		if len(d.Joined) > 0 {
			list = append(list, troubleThing{d.Name, b.Path("duct", d.Name), b.words.Text("trouble.main-joins", b.few(outward(d)))})
		}
	}
	return b.fewThings(list)
}

// outward are the ducts that join a main, that nearest the collector first.
func outward(d *shop.Duct) []string {
	joined := slices.Clone(d.Joined)
	slices.SortStableFunc(joined, func(x, y *shop.Duct) int { return y.JoinNode - x.JoinNode })
	return namesIn(joined, func(d *shop.Duct) string { return d.Name })
}

// branchThings are the mains that have several branches: what lies beyond one
// of them can be weak alone.
func (b *Book) branchThings() (list []troubleThing) {
	for _, d := range b.Plan.Shop.Ducts {
		if len(d.Joined) > 1 || len(d.Joined) == 1 && len(d.Serves) > 0 {
			list = append(list, troubleThing{d.Name, b.Path("duct", d.Name), b.words.Text("trouble.main-joins", b.few(outward(d)))})
		}
	}
	return b.fewThings(list)
}

// shortThings are the ports that the plan itself leaves short, filter clean.
func (b *Book) shortThings() (list []troubleThing) {
	for _, u := range b.Plan.Air.Uses {
		if u.Kind != duct.OneMachine {
			continue
		}
		for _, r := range u.Results {
			if !r.OnCurve || r.Filter == duct.ChangeOut {
				continue
			}
			for _, p := range r.Ports {
				if !p.Captured && p.Port.Flow > 0 && p.Port.Duct != nil {
					list = append(list, troubleThing{p.Port.Full(), b.Path("use", u.Name), b.words.Text("trouble.short", unit.Air.Print(b.units, p.Flow), unit.Air.Print(b.units, p.Port.Flow))})
				}
			}
		}
	}
	return b.fewThings(list)
}

// gateThings are the gates that stand open for each machine alone.
func (b *Book) gateThings() (list []troubleThing) {
	for _, u := range b.Plan.Air.Uses {
		if u.Kind != duct.OneMachine {
			continue
		}
		for _, r := range u.Results {
			if open := b.gatesOpen(r); len(open) > 0 && r.Filter != duct.ChangeOut {
				list = append(list, troubleThing{u.Name, b.Path("card", u.Name), b.list(open)})
			}
		}
	}
	return b.fewThings(list)
}

func (b *Book) hoseThings() (list []troubleThing) {
	for _, d := range b.Plan.Shop.Ducts {
		if h := d.Hose; h != nil {
			says := b.words.Text("trouble.hose-length", unit.Run.Print(b.units, h.Length))
			if h.Size > 0 {
				says = b.words.Text("trouble.hose-size", unit.Run.Print(b.units, h.Length), unit.Size.Print(b.units, h.Size))
			}
			list = append(list, troubleThing{d.Name, b.Path("duct", d.Name), says})
		}
	}
	return b.fewThings(list)
}

func (b *Book) zoneThings() (list []troubleThing) {
	for _, g := range b.Plan.Shop.Gates {
		if b.Plan.Control.Zone(g) {
			list = append(list, troubleThing{g.Name, b.Path("gate card", g.Name), b.words.Text("trouble.zone-for", b.few(names(b.Plan.Control.Upstream(g))))})
		}
	}
	return b.fewThings(list)
}

// blowerThings are the machines with a blower of their own.
func (b *Book) blowerThings() (list []troubleThing) {
	for _, m := range b.Plan.Shop.Machines {
		if m.Blower.V {
			list = append(list, troubleThing{Name: m.Name, Path: b.Path("card", m.Name)})
		}
	}
	return b.fewThings(list)
}

// shutThings is the suction of each collector with everything shut, and in
// the first use of one machine.
func (b *Book) shutThings() (list []troubleThing) {
	for _, c := range b.Plan.Shop.Collectors {
		shut, one := b.shutAndOne(c)
		if shut != nil && one != nil {
			list = append(list, troubleThing{c.Name, b.Path("collector", c.Name), b.words.Text("trouble.shut-suction", unit.Press.Print(b.units, shut.Inlet), one.Use.Name, unit.Press.Print(b.units, one.Inlet))})
		}
	}
	return list
}

// shutAndOne are the results of a collector with everything shut and of the
// first machine alone that it serves, filter clean; nil off the curve.
func (b *Book) shutAndOne(c *shop.Collector) (shut, one *duct.Result) {
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.On(c) {
			switch {
			case !r.OnCurve || r.Filter == duct.ChangeOut:
			case u.Kind == duct.AllShut:
				shut = r
			case u.Kind == duct.OneMachine && one == nil:
				one = r
			}
		}
	}
	return shut, one
}

// surgeThings are the uses in which a fan works left of its highest point.
func (b *Book) surgeThings() (list []troubleThing) {
	for _, c := range b.Plan.Shop.Collectors {
		var at []string
		for _, u := range b.Plan.Air.Uses {
			for _, r := range u.On(c) {
				if r.OnCurve && r.LeftOfPeak && !slices.Contains(at, u.Name) {
					at = append(at, u.Name)
				}
			}
		}
		if len(at) > 0 {
			list = append(list, troubleThing{c.Name, b.Path("collector", c.Name), b.words.Text("trouble.left-of-peak", b.few(at))})
		}
	}
	return list
}

func (b *Book) separatorThings() (list []troubleThing) {
	for _, c := range b.Plan.Shop.Collectors {
		if c.Separator != nil {
			list = append(list, troubleThing{Name: c.Name, Path: b.Path("collector", c.Name)})
		}
	}
	return list
}

func (b *Book) returnThings() (list []troubleThing) {
	for _, c := range b.Plan.Shop.Collectors {
		if c.ReturnsTo != nil {
			list = append(list, troubleThing{c.Name, b.Path("collector", c.Name), b.words.Text("trouble.returns", c.ReturnsTo.Name)})
		}
	}
	return list
}

// loadThings is what each fan asks of its motor at most.
func (b *Book) loadThings() (list []troubleThing) {
	for _, l := range b.Plan.Air.Loads {
		thing := troubleThing{l.Collector.Name, b.Path("collector", l.Collector.Name), b.words.Text("trouble.load-unknown")}
		if l.Known {
			thing.Says = b.words.Text("trouble.load-figures", unit.Shaft.Print(b.units, l.Greatest), unit.Air.Print(b.units, l.At), unit.Shaft.Print(b.units, l.Rated))
		}
		list = append(list, thing)
	}
	return list
}

func (b *Book) cleanOutThings() (list []troubleThing) {
	for _, d := range b.Plan.Shop.Ducts {
		var at []string
		for _, where := range d.CleanOuts {
			at = append(at, unit.Run.Print(b.units, where))
		}
		if len(at) > 0 {
			list = append(list, troubleThing{d.Name, b.Path("duct", d.Name), b.words.Text("trouble.clean-outs", strings.Join(at, ", "))})
		}
	}
	return b.fewThings(list)
}

// slowThings are the machines alone whose dust settles by the plan.
func (b *Book) slowThings() (list []troubleThing) {
	for _, u := range b.Plan.Air.Uses {
		if u.Kind != duct.OneMachine {
			continue
		}
		for _, r := range u.Results {
			if !r.OnCurve || r.Filter == duct.ChangeOut || r.Carried {
				continue
			}
			if s, _ := r.Slowest(); s != nil {
				list = append(list, troubleThing{u.Name, b.Path("use", u.Name), b.words.Text("trouble.slow", s.Stretch.Name(), unit.Speed.Print(b.units, s.Slower()), unit.Speed.Print(b.units, s.Transport))})
			}
		}
	}
	return b.fewThings(list)
}
