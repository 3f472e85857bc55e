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
	Unled    []string // of both: those of which no trigger opens it, though it has a drive
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
			Verdict: v.Verdict, Card: &cardFrame{fit(v.height()), v.Code}, name: "card-gate.html", view: func() any { return v }})
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
		m := u.Machines[0]
		if slices.Contains(m.AlsoOpen, g) {
			v.AsWell = append(v.AsWell, m.Name)
		} else {
			v.For = append(v.For, m.Name)
		}
		if v.Powered && b.openerFor(m, g) == nil {
			v.Unled = append(v.Unled, m.Name)
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

// gateVerdict is the heaviest finding about a gate; without one that is not
// met, how it moves.
func (b *Book) gateVerdict(g *shop.Gate, v gateCardView) Verdict {
	if worst := b.worstOf(b.rowsAbout("gate", g.Name)); worst.Words[0].Class != "met" {
		return b.short(worst)
	}
	if v.Powered && len(v.Opens) == 0 {
		return Verdict{Words: []Word{{"ask", b.words.Text("gate.nobody")}}, Says: b.words.Text("gate.no-trigger")}
	}
	if len(v.Unled) > 0 {
		return Verdict{Words: []Word{{"notmet", b.words.Text("gate.not-for-all")}}, Says: b.words.Text("gate.unled", b.list(v.Unled))}
	}
	if v.Powered {
		return Verdict{Words: []Word{{"advice", b.words.Text("gate.by-itself")}}, Says: b.words.Text("gate.leave-it")}
	}
	return Verdict{Words: []Word{{"advice", b.words.Text("gate.word-by-hand")}}, Says: b.words.Text("gate.open-yourself")}
}
