package checks

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var metalOnWood = &Check{
	Stops:   true,
	ID:      "metal-on-wood-main",
	Name:    say("check.metal-on-wood-main.name"),
	Title:   say("check.metal-on-wood-main.title"),
	Whom:    Authority,
	Needs:   "machine.makes, duct.serves",
	Answers: settledBy("metal-on-wood-main", say("check.metal-on-wood-main.settles")),
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			metalAndWood(p, c, report)
		}
	},
}

// metalBasis are the texts that keep sparks and metal off a wood main.
var metalBasis = basesOf("metal-on-wood-main")

func metalAndWood(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Basis: metalBasis, Weight: Know}
	var wood, metal, finish, unknown []string
	for _, m := range served(p, c) {
		switch {
		case m.Kind == "other" && !m.MakesStated:
			unknown = append(unknown, m.Name)
		case m.Makes == "metal" || m.Makes == "mixed":
			metal = append(metal, m.Name)
		case m.Makes == "finish overspray":
			finish = append(finish, m.Name)
		default:
			wood = append(wood, m.Name)
		}
		if m.Makes == "mixed" {
			wood = append(wood, m.Name)
		}
	}
	switch {
	case len(metal) > 0 && len(wood) > 0:
		f.State, f.Weight = NotMet, Stop
		f.Says = sayOf(len(metal), "finding-metal-on-wood-main.shared.says", listed(metal), strings.Join(firstFew(wood), ", "))
		f.Do = sayOf(len(metal), "finding-metal-on-wood-main.shared.do")
		f.Asks = say("finding-metal-on-wood-main.shared.asks", listed(metal))
	case len(finish) > 0 && len(wood)+len(metal) > 0:
		f.State, f.Weight = NotMet, Stop
		f.Says = sayOf(len(finish), "finding-metal-on-wood-main.finish.says", listed(finish), strings.Join(firstFew(append(wood, metal...)), ", "))
		f.Do = sayOf(len(finish), "finding-metal-on-wood-main.finish.do")
		f.Asks = say("finding-metal-on-wood-main.finish.asks", listed(finish))
	case len(unknown) > 0:
		f.State = NotGiven
		f.Says = sayOf(len(unknown), "finding-metal-on-wood-main.unknown.says", listed(unknown))
		f.Do = say("finding-metal-on-wood-main.unknown.do")
	case len(metal)+len(wood)+len(finish) == 0:
		return // nothing is on it
	default:
		f.State = Met
		f.Says = say("finding-metal-on-wood-main.met.says")
		f.Do = say("finding-metal-on-wood-main.met.do")
	}
	report(f)
}

// served lists the machines on a collector's ducts, in file order.
func served(p *plan.Plan, c *shop.Collector) []*shop.Machine {
	var list []*shop.Machine
	for _, m := range p.Shop.Machines {
		for _, port := range m.Ports {
			if port.Duct != nil && port.Duct.Collector == c {
				list = append(list, m)
				break
			}
		}
	}
	return list
}

var plasticDuct = &Check{
	ID:       "conductive-duct",
	Name:     say("check.conductive-duct.name"),
	Title:    say("check.conductive-duct.title"),
	Whom:     Authority,
	Compares: []string{"conducting-duct"},
	Needs:    "shop.setting, shop.employees, shop.rules, duct.material, hose.material, duct.conductive",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, d := range p.Shop.Ducts {
			conducting(p, d, report)
		}
	},
}

func conducting(p *plan.Plan, d *shop.Duct, report func(Finding)) {
	rule := rulesOn(p.Shop, "conducting-duct")
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByRule, Basis: []source.Basis{rule.Basis}, Weight: Know}
	var not []string
	ductSilent := !d.MaterialStated && !d.Conductive.Known()
	hoseSilent := d.Hose != nil && !d.Hose.MaterialStated
	if !ductSilent && !d.Conducts {
		not = append(not, say("finding-conductive-duct.pipe", d.Material))
	}
	if d.Hose != nil && !hoseSilent && !d.Hose.Conducts {
		not = append(not, d.Hose.Material)
	}
	people, known := peopleEmployedOrTaught(p.Shop)
	what := listed(not)
	switch {
	case len(not) > 0 && !known:
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-conductive-duct.no-setting.says", what)
		f.Do = say("finding-conductive-duct.no-setting.do")
	case len(not) > 0 && !people:
		f.State, f.By = Advice, ByModel
		f.Says = say("finding-conductive-duct.home.says", what)
		f.Do = say("finding-conductive-duct.home.do")
	case len(not) > 0 && rule.Decides:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-conductive-duct.us.says", what, textOf(rule))
		f.Do = say("finding-conductive-duct.us.do")
		f.Asks = say("finding-conductive-duct.accepted.asks", what)
	case len(not) > 0:
		f.State, f.Weight = Ask, Mend
		if f.Says = say("finding-conductive-duct.elsewhere.says", what); !rule.Elsewhere {
			f.Says = join(say("finding-conductive-duct.us.says", what, textOf(rule)), unread(rule))
		}
		f.Do = say("finding-conductive-duct.elsewhere.do")
		f.Asks = say("finding-conductive-duct.accepted.asks", what)
	case ductSilent || hoseSilent:
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = noMaterial(ductSilent, hoseSilent)
	default:
		f.State, f.By = Met, ByTopology
		f.Says = say("finding-conductive-duct.met.says")
		f.Do = say("finding-conductive-duct.met.do")
		if people && !rule.Decides && !rule.Elsewhere {
			f.State, f.By = Advice, ByRule // the text that counts here was not read
			f.Says = join(f.Says, unread(rule))
		}
	}
	report(f)
}

// noMaterial says whose material the file leaves out, and what to add.
func noMaterial(duct, hose bool) (says, do string) {
	switch {
	case duct && hose:
		return say("finding-conductive-duct.no-material.says"), say("finding-conductive-duct.no-material.do")
	case hose:
		return say("finding-conductive-duct.no-hose-material.says"), say("finding-conductive-duct.no-hose-material.do")
	}
	return say("finding-conductive-duct.no-duct-material.says"), say("finding-conductive-duct.no-duct-material.do")
}

// peopleEmployedOrTaught says whether the shop is a workplace or a place of
// teaching, and whether the file tells.
func peopleEmployedOrTaught(s *shop.Shop) (yes, known bool) {
	if s.Employees.V > 0 || s.Pupils.V > 0 {
		return true, true
	}
	switch s.Setting.V {
	case "business", "school", "makerspace":
		return true, true
	case "home":
		return false, true
	}
	return false, false
}
