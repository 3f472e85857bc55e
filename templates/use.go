package templates

import (
	"fmt"
	"html/template"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// useView is the sheet of one use.
type useView struct {
	Parts    []usePart
	Measured *measuredView
	Card     string
	Rests    []sourced
	Working  string
}

// usePart is a use on one collector.
type usePart struct {
	Collector, CollectorPath string
	Drawing                  template.HTML // the plan, once for all collectors
	Single                   template.HTML
	Drawn                    string
	Profile                  template.HTML
	ProfileOf                string // the port that governs
	Run                      []profileRow
	RunUnit, RunDrawn        string
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
	Name, From string
	Need       sourced
	Gets, Hood []string
	Bands      []string // of what it gets, by state of the filter; empty where there is none
	State      Word
}

type stretchRow struct {
	Number     int
	Name, Path string
	Size       sourced
	Gates      []string
	Air, Speed []string
	Bands      []string // of the speed
	Need, Case string
	State      Word
}

// profileRow is one step of the table beside a profile.
type profileRow struct {
	Number                         int
	Name, Path, Far, Loss, Suction string
}

type fanRow struct{ Filter, Flow, Static, Power string }

// kindOf is the kind by which findings name a use: a machine alone goes by the
// machine.
func kindOf(u *duct.Use) string {
	if u.Kind == duct.OneMachine {
		return "machine"
	}
	return "use"
}

func (b *Book) addUse(u *duct.Use) {
	b.add(&Sheet{Part: partPlan, Path: b.Path("use", u.Name), Title: b.words.Text("use.title", u.Name), Kind: "plan", Lede: b.words.Text("use.lede"),
		Verdict: b.useVerdict(u), Uses: b.useTabs(u), name: "use.html", view: func() any { return b.useView(u) }})
}

func (b *Book) useView(u *duct.Use) useView {
	v := useView{Measured: b.measuredInUse(u), Rests: b.restsOn(b.thingsOf(u))}
	if hasWorking(u) {
		v.Working = b.Path("working", u.Name)
	}
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
	drawn := false // one plan shows every collector
	for i, c := range order {
		part := b.usePart(byCollector[c], fmt.Sprintf("use%d", i+1))
		if last := byCollector[c][len(byCollector[c])-1]; c != nil && !drawn {
			part.Drawing, drawn = trusted(b.board.Plan(last, fmt.Sprintf("use%d", i+1))), true
		}
		v.Parts = append(v.Parts, part)
	}
	return v
}

// hasWorking reports whether a use has a sheet of its working: one whose
// machines have a duct to a collector.
func hasWorking(u *duct.Use) bool { return len(u.Machines) > 0 && u.Results[0].Collector != nil }

// stands reports whether a use is one that every shop has: everything shut,
// everything open, duct off. It has a sheet of its working alone.
func stands(u *duct.Use) bool { return len(u.Machines) == 0 && len(u.Results) > 0 }

// useVerdict is captured and carried in words, and the one thing to do.
func (b *Book) useVerdict(u *duct.Use) Verdict {
	air, dust := b.finding("air-captured", kindOf(u), u.Name), b.finding("dust-carried", kindOf(u), u.Name)
	var v Verdict
	words := func(f *checks.Finding, of string) {
		text := func(state string) string { return b.words.Text("use." + of + state) }
		switch {
		case f == nil:
			v.Words = append(v.Words, Word{"blank", text("-not-known")})
		case f.State == checks.Met:
			v.Words = append(v.Words, Word{"met", text("")})
		case f.State == checks.Thin:
			v.Words = append(v.Words, Word{"thin", text("-thin")})
		case f.State == checks.NotGiven:
			v.Words = append(v.Words, Word{"blank", text("-not-given")})
		default:
			v.Words = append(v.Words, Word{classOf(f.State), text("-not")})
		}
	}
	words(air, "captured")
	words(dust, "carried")
	for _, f := range []*checks.Finding{air, dust} {
		if f == nil {
			continue
		}
		if v.Says != "" {
			v.Says += " "
		}
		v.Says += f.Says
	}
	if f := deciding(air, dust); f != nil {
		v.Do, v.Sizes = f.Do, waitsForSizes(f)
	} else if air != nil {
		v.Do = air.Do
	}
	v.Language = content.English
	return v
}

// deciding is the finding that says what to do about a use: the first that is
// not met; nil where there is none.
func deciding(list ...*checks.Finding) *checks.Finding {
	for _, f := range list {
		if f != nil && f.State != checks.Met && f.Do != "" {
			return f
		}
	}
	return nil
}

// usePart fills what a use shows for one collector: its results side by side.
func (b *Book) usePart(results []*duct.Result, id string) usePart {
	last := results[len(results)-1]
	v := usePart{FlowUnit: unit.Air.Unit(b.units), SpeedUnit: unit.Speed.Unit(b.units), PressUnit: unit.Press.Unit(b.units), PowerUnit: unit.Shaft.Unit(b.units)}
	if last.Collector == nil {
		v.Why = b.words.Because(last.Why)
		v.Ports = b.portRows(results)
		v.States = []string{filterHead(last.Filter)}
		return v
	}
	v.Collector, v.CollectorPath = last.Collector.Name, b.Path("collector", last.Collector.Name)
	v.Single = trusted(b.board.Single(last, id+"-single"))
	v.Drawn = b.words.Text("use.drawn-both", filterPhrase(last.Filter))
	if len(results) == 1 {
		v.Drawn = b.words.Text("use.drawn", filterPhrase(last.Filter))
	}
	b.addRun(&v, last, id+"-run")
	for _, r := range results {
		v.States = append(v.States, filterHead(r.Filter))
		row := fanRow{Filter: filterHead(r.Filter), Flow: "—", Static: "—", Power: b.words.Text("use.not-given")}
		if r.OnCurve {
			row.Flow, row.Static = unit.Air.Figure(b.units, r.Flow), unit.Press.Figure(b.units, r.Static)
		} else {
			v.Why = b.words.Because(r.Why)
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

// addRun adds the pressure along the run that governs, where there are
// figures.
func (b *Book) addRun(v *usePart, r *duct.Result, id string) {
	port := drawing.Governing(r)
	if port == nil || !r.OnCurve {
		return
	}
	picture, steps := b.board.Profile(r, port, id)
	if len(steps) == 0 {
		return
	}
	v.Profile, v.ProfileOf, v.RunUnit = trusted(picture), port.Full(), unit.Run.Unit(b.units)
	v.RunDrawn = b.words.Text("use.drawn", filterPhrase(r.Filter))
	for _, step := range steps {
		row := profileRow{Number: step.Number, Name: step.Name, Loss: unit.Press.Figure(b.units, step.Loss), Suction: unit.Press.Figure(b.units, step.Suction)}
		if step.Stretch != nil {
			row.Path, row.Far = b.Path("duct", step.Stretch.Duct.Name), unit.Run.Figure(b.units, step.Far)
		}
		v.Run = append(v.Run, row)
	}
}
