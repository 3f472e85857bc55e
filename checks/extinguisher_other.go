package checks

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var extinguisherFinish = &Check{
	ID:       "extinguisher-finish",
	Name:     say("check.extinguisher-finish.name"),
	Title:    say("check.extinguisher-finish.title"),
	Whom:     Authority,
	Compares: []string{"extinguisher-b-reach", "extinguisher-b-near-reach", "extinguisher-b-near", "extinguisher-b-far"},
	Needs:    "machine.makes, machine.at, extinguisher.at, extinguisher.rating, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, m := range p.Shop.Machines {
			if m.Makes == "finish overspray" {
				report(finishes(p.Shop, m))
			}
		}
	},
}

var extinguisherMetal = &Check{
	ID:       "extinguisher-metal",
	Name:     say("check.extinguisher-metal.name"),
	Title:    say("check.extinguisher-metal.title"),
	Whom:     Authority,
	Compares: []string{"extinguisher-d-reach"},
	Needs:    "machine.makes, machine.at, extinguisher.at, extinguisher.rating, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, m := range p.Shop.Machines {
			if m.Makes == "metal" || m.Makes == "mixed" {
				report(metals(p.Shop, m))
			}
		}
	},
}

// startAt is a finding about the extinguishers near one machine; known is false
// where something is missing to judge it, and the finding says what.
func startAt(s *shop.Shop, m *shop.Machine, parts ...part) (f Finding, list []readExtinguisher, known bool) {
	f = Finding{About: m.Name, Kind: "machine", At: m.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(parts...)}
	list, unread := labelsOf(s)
	placeless := false
	for _, e := range s.Extinguishers {
		placeless = placeless || !e.Place.Known()
	}
	switch {
	case len(s.Extinguishers) == 0:
		f.Says, f.Do = say("finding-extinguisher.none.says"), say("finding-extinguisher.none.do")
	case len(unread) > 0:
		f.Says, f.Do = unreadWords(unread), say("finding-extinguisher.unread.do")
	case !m.Place.Known():
		f.Says, f.Do = say("finding-extinguisher.machine.says"), say("finding-extinguisher.machine.do")
	case placeless:
		f.Says, f.Do = say("finding-extinguisher-reach.no-place.says"), say("finding-extinguisher-reach.no-place.do")
	default:
		return f, list, true
	}
	return f, list, false
}

// finishes judges the class B within reach of a machine that sprays finish. A
// smaller label has to hang nearer; what the hazard is, and so which label, is
// asked where it makes a difference.
func finishes(s *shop.Shop, m *shop.Machine) Finding {
	far, near := rulesOn(s, "extinguisher-b-reach"), rulesOn(s, "extinguisher-b-near-reach")
	nearLabels, farLabels := rulesOn(s, "extinguisher-b-near"), rulesOn(s, "extinguisher-b-far")
	f, list, known := startAt(s, m, part{rule: far}, part{rule: near}, part{rule: nearLabels}, part{rule: farLabels})
	if !known {
		return f
	}
	close, wide := measureOf[unit.Length](near), measureOf[unit.Length](far)
	light, grave, within := false, false, false
	for _, e := range list {
		direct, walked := nearestTo(m.Place.V, []*shop.Extinguisher{e.Extinguisher})
		reaches := func(way float64, hazard int) bool {
			return unit.AtLeast(float64(close), way) && e.classes.B >= labelB(nearLabels, hazard) ||
				unit.AtLeast(float64(wide), way) && e.classes.B >= labelB(farLabels, hazard)
		}
		within = within || e.classes.B > 0 && unit.AtLeast(float64(wide), direct)
		light = light || reaches(direct, lightest)
		grave = grave || reaches(walked, gravest)
	}
	parts := []part{{far, within}, {nearLabels, light || !within}}
	f.By, f.State = ByRule, partsState(parts...)
	table := say("finding-extinguisher-finish.table.says", nearLabels.Value, unit.Run.Print(s.Units, close), farLabels.Value, unit.Run.Print(s.Units, wide))
	switch {
	case !within:
		f.Says, f.Do = say("finding-extinguisher-finish.none.says", unit.Run.Print(s.Units, wide)), say("finding-extinguisher-finish.none.do")
	case f.State == NotMet:
		f.Says, f.Do = join(say("finding-extinguisher-finish.small.says"), table), say("finding-extinguisher-finish.none.do")
	case f.State == Met && grave:
		f.Says, f.Do = say("finding-extinguisher-finish.kept.says"), say("finding-extinguisher-finish.kept.do")
	default:
		f.State = Ask
		f.Says, f.Do = join(say("finding-extinguisher-finish.hazard.says"), table), say("finding-extinguisher-finish.hazard.do")
	}
	if f.State == Ask {
		f.Asks = say("finding-extinguisher-finish.asks", m.Name)
	}
	f.Says = join(f.Says, partsRemark(parts...))
	weigh(s, &f, far)
	return f
}

// The places of the lightest and the gravest hazard in a row of labels.
const lightest, gravest = 0, 2

// labelB is the class B of the label for a hazard in a figure's row of labels.
func labelB(r ruled, hazard int) int {
	words := strings.Split(r.Value, ", ")
	l, ok := readLabel(words[hazard])
	if !ok {
		panic("checks: rules: " + r.Value + " are no labels")
	}
	return l.B
}

// metals judges whether an extinguisher for burning metal is within reach of a
// machine that makes metal dust. Whether that metal burns, the file cannot tell.
func metals(s *shop.Shop, m *shop.Machine) Finding {
	rule := rulesOn(s, "extinguisher-d-reach")
	f, list, known := startAt(s, m, part{rule: rule})
	if !known {
		return f
	}
	var suits []*shop.Extinguisher
	for _, e := range list {
		if e.classes.Metal {
			suits = append(suits, e.Extinguisher)
		}
	}
	most := measureOf[unit.Length](rule)
	want := unit.Run.Print(s.Units, most)
	f.By, f.State = ByRule, Ask
	if len(suits) == 0 {
		f.Says, f.Do = say("finding-extinguisher-metal.none.says", want), say("finding-extinguisher-metal.none.do")
		f.Asks = say("finding-extinguisher-metal.none.asks", m.Name)
		weigh(s, &f, rule)
		return f
	}
	direct, _ := nearestTo(m.Place.V, suits)
	limit := float64(most)
	kept := unit.AtLeast(limit, direct)
	got, figure := unit.Run.Pair(s.Units, unit.Length(direct), most)
	f.State = rule.holds(kept)
	if f.State != Met {
		f.Asks = say("finding-extinguisher-metal.none.asks", m.Name)
	}
	f.Figures = []Figure{{Name: say("finding-extinguisher-reach.direct"), Value: direct, Unit: "m", Limit: &limit, Basis: rule.Basis}}
	key := "finding-extinguisher-metal.far.says"
	if f.Do = say("finding-extinguisher-metal.far.do"); kept {
		key, f.Do = "finding-extinguisher-metal.kept.says", say("finding-extinguisher-metal.kept.do")
	}
	f.Says = join(say(key, got, figure, unit.Run.Unit(s.Units)), rule.remark())
	weigh(s, &f, rule)
	return f
}
