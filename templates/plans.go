package templates

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"

	"dustbook/checks"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// addPlans adds the neutral plan and a sheet for each use of machines.
func (b *Book) addPlans() {
	b.add(&Sheet{Part: partPlan, Path: "plan.html", Title: "The plan", Kind: "plan", Lede: "Rooms, machines, ducts to width, gates. Every use has a plan of its own.",
		Verdict: b.planVerdict(), Uses: b.useTabs(nil), name: "plan.html", view: func() any { return b.planView() }})
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 {
			b.addUse(u)
		}
	}
}

func (b *Book) useTabs(here *duct.Use) []UseTab {
	var tabs []UseTab
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 {
			tabs = append(tabs, UseTab{u.Name, b.Path("use", u.Name), u == here})
		}
	}
	return tabs
}

// planView is the neutral plan with its lists.
type planView struct {
	Drawing template.HTML
	Rooms   []roomRow
	Walls   []wallRow
	Gates   []gateRow
}

type roomRow struct{ ID, Name, Floor, Height, Opening, OpenTo, Holds string }

type wallRow struct{ Rating, Divides, Ends string }

type gateRow struct{ ID, Name, Duct, DuctPath, Where, Leak string }

func (b *Book) planView() planView {
	v := planView{Drawing: trusted(b.board.Plan(nil, "plan"))}
	for _, r := range b.Plan.Shop.Rooms {
		row := roomRow{ID: "room-" + shop.Slug(r.Name), Name: r.Name, Floor: unit.Floor.Print(b.units, r.Area()), Height: "not given", Opening: "not given", OpenTo: "—"}
		if r.Height.Known() {
			row.Height = unit.Run.Print(b.units, r.Height.V)
		}
		if r.Opening.Known() {
			row.Opening = unit.Floor.Print(b.units, r.Opening.V)
		}
		for i, other := range r.OpenTo {
			if i == 0 {
				row.OpenTo = ""
			} else {
				row.OpenTo += ", "
			}
			row.OpenTo += other.Name
		}
		for _, m := range b.Plan.Shop.Machines {
			if m.Room == r {
				if row.Holds != "" {
					row.Holds += ", "
				}
				row.Holds += m.Name
			}
		}
		v.Rooms = append(v.Rooms, row)
	}
	for _, w := range b.Plan.Shop.Walls {
		row := wallRow{Rating: "not given", Divides: "not given", Ends: b.point(w.From) + " to " + b.point(w.To)}
		if w.Rating.Known() {
			row.Rating = w.Rating.V
		}
		if w.Divides.Known() {
			row.Divides = w.Divides.V
		}
		v.Walls = append(v.Walls, row)
	}
	return v
}

// point writes a place on the plan in the shop's units.
func (b *Book) point(p shop.Point) string {
	in := func(m float64) string { return unit.Run.Figure(b.units, unit.Length(m)) }
	return "(" + in(p.X) + ", " + in(p.Y) + ")"
}

// useView is the sheet of one use.
type useView struct {
	Parts    []usePart
	Measured *measuredView
	Card     string
	Working  string
}

// usePart is a use on one collector.
type usePart struct {
	Collector, CollectorPath string
	Drawing                  template.HTML
	Drawn                    string
	Profile                  template.HTML
	States                   []string // column heads: filter states
	FlowUnit, SpeedUnit      string
	PressUnit, PowerUnit     string
	Ports                    []portRow
	Stretches                []stretchRow
	Leaks                    []string
	Fan                      []fanRow
	Why                      string
}

type portRow struct {
	Name, Need, From string
	Gets, Hood       []string
	State            Word
}

type stretchRow struct {
	Name, Path, Size string
	Gates            []string
	Air, Speed       []string
	Need, Case       string
	State            Word
}

type fanRow struct{ Filter, Flow, Static, Power string }

func (b *Book) addUse(u *duct.Use) {
	kind := "use"
	if u.Kind == duct.OneMachine {
		kind = "machine"
	}
	b.add(&Sheet{Part: partPlan, Path: b.Path("use", u.Name), Title: u.Name + " in use", Kind: "plan", Lede: "The gates that are open and the way the air takes. What is not on the way is drawn hollow.",
		Verdict: b.useVerdict(kind, u), Uses: b.useTabs(u), name: "use.html", view: func() any { return b.useView(u) }})
}

func (b *Book) useView(u *duct.Use) useView {
	v := useView{Working: b.Path("working", u.Name), Measured: b.measuredInUse(u)}
	if u.Kind == duct.OneMachine {
		v.Card = b.Path("card", u.Name)
	}
	byCollector := map[*shop.Collector][]*duct.Result{}
	var order []*shop.Collector
	for _, r := range u.Results {
		if byCollector[r.Collector] == nil {
			order = append(order, r.Collector)
		}
		byCollector[r.Collector] = append(byCollector[r.Collector], r)
	}
	for i, c := range order {
		v.Parts = append(v.Parts, b.usePart(byCollector[c], fmt.Sprintf("use%d", i+1)))
	}
	return v
}

// useVerdict is captured and carried in words, and the one thing to do.
func (b *Book) useVerdict(kind string, u *duct.Use) Verdict {
	air, dust := b.finding("air-captured", kind, u.Name), b.finding("dust-carried", kind, u.Name)
	var v Verdict
	words := func(f *checks.Finding, met, not string) {
		switch {
		case f == nil:
			v.Words = append(v.Words, Word{"blank", met + " not known"})
		case f.State == checks.Met:
			v.Words = append(v.Words, Word{"met", met})
		case f.State == checks.Thin:
			v.Words = append(v.Words, Word{"thin", met + ": thin"})
		case f.State == checks.NotGiven:
			v.Words = append(v.Words, Word{"blank", met + ": not given"})
		default:
			v.Words = append(v.Words, Word{classOf(f.State), not})
		}
	}
	words(air, "captured", "not captured")
	words(dust, "carried", "not carried")
	for _, f := range []*checks.Finding{air, dust} {
		if f == nil {
			continue
		}
		if v.Says != "" {
			v.Says += " "
		}
		v.Says += f.Says
		if f.State != checks.Met && v.Do == "" {
			v.Do = f.Do
		}
	}
	if v.Do == "" && air != nil {
		v.Do = air.Do
	}
	return v
}

// usePart fills what a use shows for one collector: its results side by side.
func (b *Book) usePart(results []*duct.Result, id string) usePart {
	last := results[len(results)-1]
	v := usePart{FlowUnit: unit.Air.Unit(b.units), SpeedUnit: unit.Speed.Unit(b.units), PressUnit: unit.Press.Unit(b.units), PowerUnit: unit.Shaft.Unit(b.units)}
	if last.Collector == nil {
		v.Why = last.Why
		v.Ports = b.portRows(results)
		v.States = []string{filterHead(last.Filter)}
		return v
	}
	v.Collector, v.CollectorPath = last.Collector.Name, b.Path("collector", last.Collector.Name)
	v.Drawing = trusted(b.board.Plan(last, id))
	v.Drawn = "Drawn " + filterPhrase(last.Filter) + "; the tables below say both."
	if len(results) == 1 {
		v.Drawn = "Drawn " + filterPhrase(last.Filter) + "."
	}
	for _, r := range results {
		v.States = append(v.States, filterHead(r.Filter))
		row := fanRow{Filter: filterHead(r.Filter), Flow: "—", Static: "—", Power: "not given"}
		if r.OnCurve {
			row.Flow, row.Static = unit.Air.Figure(b.units, r.Flow), unit.Press.Figure(b.units, r.Static)
		} else {
			v.Why = r.Why
		}
		if r.PowerKnown {
			row.Power = unit.Shaft.Figure(b.units, r.Power)
		}
		v.Fan = append(v.Fan, row)
	}
	v.Ports = b.portRows(results)
	v.Stretches = b.stretchRows(results)
	v.Leaks = b.leaks(results)
	return v
}

func (b *Book) portRows(results []*duct.Result) []portRow {
	var rows []portRow
	for i, at := range results[0].Ports {
		row := portRow{Name: at.Port.Full(), Need: "—", From: at.Port.Need.String(), State: Word{"met", "captured"}}
		if at.Port.FlowFrom != "" {
			row.From = at.Port.FlowFrom
		}
		if at.Port.Flow > 0 {
			row.Need = unit.Air.Figure(b.units, at.Port.Flow)
		}
		for _, r := range results {
			p := r.Ports[i]
			if !r.OnCurve {
				row.Gets, row.Hood = append(row.Gets, "—"), append(row.Hood, "—")
				row.State = Word{"notmet", "not known"}
				continue
			}
			got, _ := unit.Air.Pair(b.units, p.Flow, p.Port.Flow)
			row.Gets = append(row.Gets, got)
			row.Hood = append(row.Hood, unit.Press.Figure(b.units, p.Hood))
			if !p.Captured {
				row.State = Word{"notmet", "too little"}
			}
		}
		if at.Weak && row.State.Class == "met" {
			row.State = Word{"thin", "need not sure"}
		}
		rows = append(rows, row)
	}
	return rows
}

// stretchRows lists the stretches on the way, the farthest from the collector
// first.
func (b *Book) stretchRows(results []*duct.Result) []stretchRow {
	var rows []stretchRow
	last := results[len(results)-1]
	for _, i := range onTheWay(last) {
		at := last.Stretches[i]
		d := at.Stretch.Duct
		row := stretchRow{Name: at.Stretch.Name(), Path: b.Path("duct", d.Name), Size: unit.Size.Print(b.units, d.Size), Need: unit.Speed.Figure(b.units, at.Transport), Case: at.Case, State: Word{"met", "carries"}}
		for _, g := range at.Stretch.Gates {
			row.Gates = append(row.Gates, g.Name)
		}
		hose := stretchRow{Name: "Hose of " + d.Name, Path: row.Path, Need: row.Need, Case: row.Case, State: Word{"met", "carries"}}
		for _, r := range results {
			x := r.Stretches[i]
			if !r.OnCurve {
				row.Air, row.Speed, row.State = append(row.Air, "—"), append(row.Speed, "—"), Word{"notmet", "not known"}
				hose.Air, hose.Speed, hose.State = row.Air, row.Speed, row.State
				continue
			}
			speed, _ := unit.Speed.Pair(b.units, x.Velocity, x.Transport)
			row.Air, row.Speed = append(row.Air, unit.Air.Figure(b.units, x.Flow)), append(row.Speed, speed)
			if !x.Carries {
				row.State = Word{"notmet", "settles"}
			}
			if x.Hose {
				speed, _ := unit.Speed.Pair(b.units, x.HoseVelocity, x.Transport)
				hose.Air, hose.Speed = append(hose.Air, "—"), append(hose.Speed, speed)
				if !x.HoseCarries {
					hose.State = Word{"notmet", "settles"}
				}
			}
		}
		if at.Hose {
			hose.Size = unit.Size.Print(b.units, d.Hose.Size)
			hose.Air = row.Air
			rows = append(rows, hose)
		}
		rows = append(rows, row)
	}
	return rows
}

// onTheWay lists the judged stretches of a result by their place, the farthest
// from the collector first.
func onTheWay(r *duct.Result) []int {
	steps := func(s *shop.Stretch) int {
		n := 0
		for s != nil {
			s, n = s.Below(), n+1
		}
		return n
	}
	var list []int
	for i, at := range r.Stretches {
		if at.Judged {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(i, j int) int {
		return cmp.Compare(steps(r.Stretches[j].Stretch), steps(r.Stretches[i].Stretch))
	})
	return list
}

// leaks is what the collector draws beside the open ports: through shut
// gates, holes, and gates opened as well.
func (b *Book) leaks(results []*duct.Result) []string {
	var list []string
	for _, r := range results {
		rest := r.Flow
		for _, p := range r.Ports {
			rest -= p.Flow
		}
		if !r.OnCurve {
			list = append(list, "—")
			continue
		}
		list = append(list, unit.Air.Figure(b.units, unit.Flow(unit.Six(float64(rest)))))
	}
	return list
}

func filterHead(filter string) string {
	switch filter {
	case duct.Clean:
		return "clean"
	case duct.ChangeOut:
		return "due"
	}
	return "no filter"
}

func filterPhrase(filter string) string {
	switch filter {
	case duct.Clean:
		return "with the filter clean"
	case duct.ChangeOut:
		return "with the filter due for change"
	}
	return "without a filter"
}
