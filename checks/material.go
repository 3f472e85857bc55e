package checks

import (
	"fmt"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var metalOnWood = &Check{
	ID:       "metal-on-wood-main",
	Name:     "Metal on a wood main",
	Title:    "Does any machine that makes metal or sparks share a collector with wood",
	Needs:    "machine.makes, duct.serves",
	Confirms: settledBy("metal-on-wood-main", "that the authority or an engineer accepts metal and wood on one system"),
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			metalAndWood(p, c, report)
		}
	},
}

// metalBasis are the texts that keep sparks and metal off a wood main.
var metalBasis = []source.Basis{
	{Document: "nfpa-91", Clause: "5-3", Mark: source.Verified},
	{Document: "ufc-3-410-04n", Clause: "7-2", Mark: source.Verified},
	{Document: "cal-5143", Clause: "5143(a)(4)", Mark: source.Verified},
}

func metalAndWood(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Basis: metalBasis, Weight: Know}
	var wood, metal, unknown []string
	for _, m := range served(p, c) {
		switch {
		case m.Kind == "other" && !m.MakesStated:
			unknown = append(unknown, m.Name)
		case m.Makes == "metal" || m.Makes == "mixed":
			metal = append(metal, m.Name)
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
		f.Says = fmt.Sprintf("%s makes metal or sparks on a system that also carries wood (%s). A spark that reaches the bin or the filter can set it alight.", strings.Join(metal, ", "), strings.Join(firstFew(wood), ", "))
		f.Do = "Take it off this system now: shut and lock its gate, and give it a collector of its own made for metal."
		f.Asks = fmt.Sprintf("May %s share a dust system with wood machines, and if so with what separation?", strings.Join(metal, ", "))
	case len(unknown) > 0:
		f.State = NotGiven
		f.Says = "What " + strings.Join(unknown, ", ") + " makes is not given."
		f.Do = `Add makes = "wood" or what it is.`
	case len(metal)+len(wood) == 0:
		return // nothing is on it
	default:
		f.State = Met
		f.Says = "Every machine on it makes the same sort of dust by what the file says."
		f.Do = "Label the ports: wood only, or metal only."
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

func firstFew(list []string) []string {
	if len(list) > 3 {
		return append(append([]string{}, list[:3]...), fmt.Sprintf("%d more", len(list)-3))
	}
	return list
}

var plasticDuct = &Check{
	ID:    "conductive-duct",
	Name:  "Duct that conducts",
	Title: "Where people are employed or taught, does every duct and hose conduct static away",
	Needs: "shop.setting, shop.employees, shop.rules, duct.material, hose.material, duct.conductive",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, d := range p.Shop.Ducts {
			conducting(p, d, report)
		}
	},
}

// conductBasis are the texts that want conducting duct.
var conductBasis = []source.Basis{
	{Document: "nfpa-91", Clause: "5-2.1", Mark: source.Verified},
	{Document: "ufc-3-410-04n", Clause: "7-4.4", Mark: source.Verified},
	{Document: "nfpa-664", Clause: "duct clauses", Mark: source.Memory},
}

func conducting(p *plan.Plan, d *shop.Duct, report func(Finding)) {
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByRule, Basis: conductBasis, Weight: Know}
	var not, silent []string
	if !d.MaterialStated && !d.Conductive.Known() {
		silent = append(silent, "the duct's material")
	} else if !d.Conducts {
		not = append(not, d.Material+" pipe")
	}
	if d.Hose != nil {
		if !d.Hose.MaterialStated {
			silent = append(silent, "the hose's material")
		} else if !d.Hose.Conducts {
			not = append(not, d.Hose.Material)
		}
	}
	people, known := peopleEmployedOrTaught(p.Shop)
	what := strings.Join(not, " and ")
	switch {
	case len(not) > 0 && !known:
		f.State, f.By = NotGiven, ByGiven
		f.Says = "It has " + what + ", and whether people are employed or taught here is not given."
		f.Do = "Add setting to [shop]."
	case len(not) > 0 && !people:
		f.State, f.By = Advice, ByModel
		f.Says = "It has " + what + ", which does not conduct. A wire wound on or in it drains only what is near the wire; it does not make the pipe conduct."
		f.Do = "Bond every metal part and run it to earth. Metal duct and conducting hose are the better choice."
	case len(not) > 0 && p.Shop.Rules == "us":
		f.State, f.Weight = NotMet, Mend
		f.Says = "It has " + what + ", which does not conduct; the texts read want all parts of such a system conducting, bonded and grounded where people work."
		f.Do = "Change it for metal duct or conducting hose, bonded at every joint. A wire on plastic does not make it conduct."
		f.Asks = "Is " + what + " accepted in this dust system, and what bonding do you want to see?"
	case len(not) > 0:
		f.State, f.Weight = Ask, Mend
		f.Says = "It has " + what + ", which does not conduct; texts of other places want conducting duct where people work."
		f.Do = "Ask before you build on; metal duct and conducting hose settle it."
		f.Asks = "Is " + what + " accepted in this dust system, and what bonding do you want to see?"
	case len(silent) > 0:
		f.State, f.By = NotGiven, ByGiven
		f.Says = capital(strings.Join(silent, " and ")) + " is not given, so nobody can tell whether it conducts."
		f.Do = "Add material to the duct or hose."
	default:
		f.State, f.By = Met, ByTopology
		f.Says = "Pipe and hose conduct by what the file says they are."
		f.Do = "Measure the path to earth when it is built, across every hose and gate."
	}
	report(f)
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

func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
