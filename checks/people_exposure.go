package checks

import (
	_ "embed"

	"dustbook/plan"
	"dustbook/plan/source"
)

var dustExposure = &Check{
	ID:    "dust-exposure",
	Name:  say("check.dust-exposure.name"),
	Title: say("check.dust-exposure.title"),
	Whom:  Hygienist,
	Needs: "shop.setting, shop.employees, shop.pupils, shop.rules, machine.makes, machine.kind",
	Run: func(p *plan.Plan, report func(Finding)) {
		if f, look := breathed(p); look {
			report(f)
		}
	},
}

//go:embed exposure.csv
var exposureData []byte

// exposureRows are limits of what a person may breathe over a working day. They
// are shown, and nothing is held against them: no arithmetic tells what is in
// somebody's breath.
var exposureRows = source.MustRows("exposure.csv", exposureData, "rules", "value", "of")

// breathed asks what is to be sampled where people work or are taught.
func breathed(p *plan.Plan) (f Finding, look bool) {
	people, known := peopleEmployedOrTaught(p.Shop)
	var makers []string
	for _, m := range p.Shop.Machines {
		if throwsWood(m) {
			makers = append(makers, m.Name)
		}
	}
	f = Finding{By: ByRule, Weight: Know}
	if len(makers) == 0 || known && !people {
		return f, false
	}
	if !known {
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-dust-exposure.no-setting.says"), say("finding-dust-exposure.no-setting.do")
		return f, true
	}
	var limits []string
	for _, r := range exposureRows {
		if r.Text("rules") == p.Shop.Rules {
			limits = append(limits, say("finding-dust-exposure.limit", r.Text("value"), r.Text("of"), r.Basis.BriefIn(english.Mark)))
			f.Basis = append(f.Basis, r.Basis)
		}
	}
	f.State = Ask
	f.Says = say("finding-dust-exposure.says")
	f.Do = say("finding-dust-exposure.do")
	if len(limits) > 0 {
		f.Says = join(f.Says, say("finding-dust-exposure.limits.says", listed(limits)))
	} else {
		f.Says, f.Basis = join(f.Says, say("finding-dust-exposure.no-limit.says")), basesOf("dust-exposure")
	}
	f.Asks = say("finding-dust-exposure.asks", listed(firstFew(makers)))
	return f, true
}
