package templates

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"dustbook/plan/control"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// signView is the sign that hangs over a collector's switch.
type signView struct {
	Verdict   Verdict
	Stopper   string
	Gates     int
	Zones     bool     // some machines have more than one gate on their way
	Powered   int      // gates that move by power
	ByHand    []string // where others do, those that a person opens
	Starts    string   // what starts it beside its switch
	Rows      []signRow
	FlowUnit  string
	PressUnit string
	Together  []string
	Never     []string
	Path      string
	Name      string
	Unchecked bool // its translation
}

// signRow is what so many open gates do to suction and air.
type signRow struct {
	Open, Which   string
	Suction, Air  string
	Worst, Reason string
}

// addSigns adds a sign for each collector that has gates.
func (b *Book) addSigns() {
	for _, c := range b.Plan.Shop.Collectors {
		gates := b.gatesOf(c)
		if len(gates) == 0 {
			continue
		}
		v := b.signView(c, gates)
		b.add(&Sheet{Part: partMachines, Path: b.prefix + "switch-" + shop.Slug(c.Name) + ".html", Title: b.words.Text("sign.title", c.Name), Kind: "card", Lede: b.words.Text("sign.lede"),
			Verdict: v.Verdict, Card: &cardFrame{Fit: fit(v.height())}, name: "control-sign.html", view: func() any { return v }})
	}
}

// gatesOf are the gates on a collector's ducts, in file order.
func (b *Book) gatesOf(c *shop.Collector) []*shop.Gate {
	var list []*shop.Gate
	for _, g := range b.Plan.Shop.Gates {
		if g.On.Collector == c {
			list = append(list, g)
		}
	}
	return list
}

func (b *Book) signView(c *shop.Collector, gates []*shop.Gate) signView {
	v := signView{Gates: len(gates), Stopper: b.stopName(nil, []*shop.Collector{c}), FlowUnit: unit.Air.Unit(b.units), PressUnit: unit.Press.Unit(b.units), Path: b.Path("collector", c.Name), Name: c.Name}
	for _, g := range gates {
		v.Zones = v.Zones || b.Plan.Control.Zone(g)
		if b.Plan.Control.Drive(g) == control.Powered {
			v.Powered++
		} else {
			v.ByHand = append(v.ByHand, g.Name)
		}
	}
	v.Starts = b.startsWith(c)
	v.Rows = b.signRows(c)
	for _, u := range b.Plan.Air.Uses {
		if u.Kind != duct.Together || !slices.Contains(u.Collectors(b.Plan.Shop), c) {
			continue
		}
		if works(u) {
			v.Together = append(v.Together, u.Name)
		} else {
			v.Never = append(v.Never, u.Name)
		}
	}
	v.Verdict = b.short(b.worstOf(b.rowsAbout("collector", c.Name)))
	v.Unchecked = b.unchecked(c.Name)
	return v
}

// startsWith says what starts a collector beside its own switch.
func (b *Book) startsWith(c *shop.Collector) string {
	runs, pressed := 0, 0
	for _, t := range b.Plan.Shop.Triggers {
		switch {
		case !slices.Contains(t.Starts, c):
		case control.Pressed(t):
			pressed++
		default:
			runs++
		}
	}
	var parts []string
	if runs > 0 {
		parts = append(parts, b.words.Count("sign.with", runs))
	}
	if pressed > 0 {
		parts = append(parts, b.words.Count("sign.press", pressed))
	}
	return b.list(parts)
}

// works reports whether a use gets its air and carries its dust on every
// collector, with its filter in each state. What is only thin but falls short
// by the plain reckoning is not promised.
func works(u *duct.Use) bool {
	return len(u.Results) > 0 && !slices.ContainsFunc(u.Results, func(r *duct.Result) bool { return !r.Captured || !r.Carried })
}

// signRows are none, one, two and all gates open: for one and two, the
// machines that need the most air.
func (b *Book) signRows(c *shop.Collector) []signRow {
	machines, gates := b.hungriest(c), b.gatesOf(c)
	var rows []signRow
	add := func(which string, u *duct.Use) {
		rows = append(rows, b.signRow(which, u, b.trees[c].Solve(u, duct.States(c)[0])))
	}
	add(b.words.Text("sign.all-shut"), &duct.Use{Name: b.words.Text("sign.all-shut"), Kind: duct.AllShut, Open: map[*shop.Gate]bool{}})
	for n := 1; n <= min(2, len(machines)); n++ {
		add(b.list(names(machines[:n])), openFor(machines[:n]))
	}
	all := openFor(machines)
	for _, g := range gates {
		all.Open[g] = true
	}
	add(b.words.Text("sign.everything"), all)
	rows[len(rows)-1].Open = b.words.Text("sign.all", strconv.Itoa(len(gates)))
	return rows
}

func (b *Book) signRow(which string, u *duct.Use, r *duct.Result) signRow {
	open := 0
	for range u.Open {
		open++
	}
	v := signRow{Open: strconv.Itoa(open), Which: which, Suction: "—", Air: "—", Worst: "—"}
	if !r.OnCurve {
		v.Worst = b.words.Because(r.Why)
		return v
	}
	v.Suction, v.Air = unit.Press.Figure(b.units, r.Inlet), unit.Air.Figure(b.units, r.Flow)
	if len(u.Machines) > 0 {
		v.Worst = b.words.Text("sign.all-served")
		if p, share := r.Weakest(); p != nil {
			v.Worst = p.Port.Full() + ", " + strconv.Itoa(int(100*share)) + " %"
		}
	}
	return v
}

// hungriest are the machines of a collector, the one that needs the most air
// first; of those that share a movable end, one.
func (b *Book) hungriest(c *shop.Collector) []*shop.Machine {
	need := map[*shop.Machine]unit.Flow{}
	var list []*shop.Machine
	taken := map[*shop.Duct]bool{}
	for _, m := range b.Plan.Shop.Machines {
		shares := false
		for _, p := range m.Ports {
			if p.Duct != nil && p.Duct.Collector == c {
				need[m] += p.Flow
				shares = shares || taken[p.Duct]
			}
		}
		if need[m] > 0 && !shares {
			list = append(list, m)
			for _, p := range m.Ports {
				taken[p.Duct] = true
			}
		}
	}
	slices.SortStableFunc(list, func(a, other *shop.Machine) int { return cmp.Compare(need[other], need[a]) })
	return list
}

// openFor is a use of some machines with just the gates of their own uses
// open, relief gates left out.
func openFor(machines []*shop.Machine) *duct.Use {
	u := &duct.Use{Name: strings.Join(names(machines), ", "), Kind: duct.Together, Machines: machines, Open: map[*shop.Gate]bool{}}
	for _, m := range machines {
		for _, p := range m.Ports {
			for _, s := range p.Path() {
				for _, g := range s.Gates {
					u.Open[g] = true
				}
			}
		}
	}
	return u
}

func names(machines []*shop.Machine) []string {
	return namesIn(machines, func(m *shop.Machine) string { return m.Name })
}
