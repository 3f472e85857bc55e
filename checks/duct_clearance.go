package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var ductClearance = &Check{
	ID:       "duct-clearance",
	Name:     say("check.duct-clearance.name"),
	Title:    say("check.duct-clearance.title"),
	Needs:    "duct.clearance, shop.rules",
	Whom:     Authority,
	Compares: []string{"duct-clearance"},
	Run: func(p *plan.Plan, report func(Finding)) {
		if len(p.Shop.Ducts) > 0 {
			report(clearOfFuel(p.Shop))
		}
	},
}

// askedClearance is what another code asks of hot ducts.
var askedClearance = figure("asked clearance")

// clearOfFuel judges how near the ducts of the shop come to what burns.
func clearOfFuel(s *shop.Shop) Finding {
	rule := rulesOn(s, "duct-clearance")
	least := measureOf[unit.Length](rule)
	var list []ductHeld
	nearest := -1
	for i, d := range s.Ducts {
		h := ductHeld{duct: d, state: NotGiven, rule: rule, got: d.Name}
		if d.Clearance.Known() {
			h.state = softly(rule, unit.AtLeast(float64(d.Clearance.V), float64(least)))
			h.got = say("finding-duct.with", d.Name, unit.Size.Print(s.Units, d.Clearance.V))
			if nearest < 0 || d.Clearance.V < s.Ducts[nearest].Clearance.V {
				nearest = i
			}
		}
		list = append(list, h)
	}
	f := Finding{At: s.Ducts[0].At, By: ByRule, Weight: Know, Basis: []source.Basis{rule.Basis}}
	var worst []ductHeld
	f.State, worst = worstDucts(list)
	what, limit := gotOf(worst), unit.Size.Print(s.Units, least)
	if nearest >= 0 {
		at := float64(least)
		f.Figures = []Figure{{Name: say("finding-duct-clearance.figure"), Value: float64(s.Ducts[nearest].Clearance.V), Unit: "m", Limit: &at, Basis: rule.Basis}}
	}
	switch f.State {
	case NotGiven:
		f.By = ByGiven
		f.Says, f.Do = sayOf(len(worst), "finding-duct-clearance.not-given.says", what), say("finding-duct-clearance.not-given.do")
		return f
	case Met, Advice:
		f.Says, f.Do = say("finding-duct-clearance.kept.says", limit, textOf(rule), what), say("finding-duct-clearance.kept.do")
	default:
		if f.State == NotMet {
			f.Weight = Mend
		}
		f.Says = sayOf(len(worst), "finding-duct-clearance.near.says", what, limit, textOf(rule))
		f.Do = say("finding-duct-clearance.near.do")
		f.Asks = say("finding-duct-clearance.near.asks", what, limit, unit.Size.Print(s.Units, unit.Must[unit.Length](askedClearance.Text("value"))))
		f.Basis = append(f.Basis, askedClearance.Basis)
	}
	f.Says = join(f.Says, rule.remark())
	if missing := ductsIn(list, NotGiven); len(missing) > 0 {
		f.Says = join(f.Says, sayOf(len(missing), "finding-duct-clearance.not-given.says", gotOf(missing)))
	}
	return f
}
