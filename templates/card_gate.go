package templates

import (
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// gateCardView is the card that hangs at a gate.
type gateCardView struct {
	Verdict  Verdict
	Stopper  string
	Powered  bool
	Opens    []string // triggers that open it
	For      []string // machines with it on their way
	AsWell   []string // machines for which it is opened as well
	Duct     string
	Where    string
	OpenStop string
	ShutStop string
	Travel   string
	Proves   string
	Path     string
	Code     *code

	Unchecked bool // its translation
}

// addGateCards adds a card for each gate.
func (b *Book) addGateCards() {
	for _, g := range b.Plan.Shop.Gates {
		v := b.gateCardView(g)
		b.add(&Sheet{Part: partMachines, Path: b.prefix + b.Path("gate card", g.Name), Title: b.words.Text("gate.title", g.Name), Kind: "card", Lede: b.words.Text("gate.lede"),
			Card: &cardFrame{Code: v.Code}, name: "card-gate.html", view: func() any { return v }})
	}
}

func (b *Book) gateCardView(g *shop.Gate) gateCardView {
	v := gateCardView{Stopper: b.stopName(nil, []*shop.Collector{g.On.Collector}), Powered: b.Plan.Control.Drive(g) == control.Powered,
		Duct: g.On.Name, Where: unit.Run.Print(b.units, g.Where), Path: b.Path("gate", g.Name), Code: b.codeFor(b.prefix + b.Path("gate card", g.Name))}
	for _, t := range b.Plan.Control.Openers(g) {
		v.Opens = append(v.Opens, t.Name)
	}
	for _, u := range b.Plan.Air.Uses {
		if u.Kind != duct.OneMachine || !u.Open[g] {
			continue
		}
		if m := u.Machines[0]; slices.Contains(m.AlsoOpen, g) {
			v.AsWell = append(v.AsWell, m.Name)
		} else {
			v.For = append(v.For, m.Name)
		}
	}
	if g.OpenStop.Known() {
		v.OpenStop = g.OpenStop.V
	}
	if g.ShutStop.Known() {
		v.ShutStop = g.ShutStop.V
	}
	if g.Travel.Known() {
		v.Travel = unit.Seconds.Print(b.units, g.Travel.V)
	}
	if g.Proves.Known() {
		v.Proves = g.Proves.V
	}
	v.Verdict = b.gateVerdict(g, v)
	v.Unchecked = b.unchecked(g.Name)
	return v
}

// gateVerdict is the heaviest finding about a gate; without one, how it moves.
func (b *Book) gateVerdict(g *shop.Gate, v gateCardView) Verdict {
	if rows := b.rowsAbout("gate", g.Name); len(rows) > 0 {
		return b.worstOf(rows).short()
	}
	if v.Powered && len(v.Opens) == 0 {
		return Verdict{[]Word{{"ask", b.words.Text("gate.nobody")}}, b.words.Text("gate.no-trigger"), ""}
	}
	if v.Powered {
		return Verdict{[]Word{{"advice", b.words.Text("gate.by-itself")}}, b.words.Text("gate.leave-it"), ""}
	}
	return Verdict{[]Word{{"advice", b.words.Text("gate.by-hand")}}, b.words.Text("gate.open-yourself"), ""}
}
