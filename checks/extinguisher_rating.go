package checks

import (
	"strconv"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var extinguisherRating = &Check{
	ID:       "extinguisher-rating",
	Name:     say("check.extinguisher-rating.name"),
	Title:    say("check.extinguisher-rating.title"),
	Whom:     Authority,
	Compares: []string{"extinguisher-least", "extinguisher-least-extra", "extinguisher-area", "extinguisher-area-ordinary", "extinguisher-area-extra", "extinguisher-area-most"},
	Needs:    "extinguisher.rating, room.outline, machine.room, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if len(p.Shop.Extinguishers) > 0 && len(p.Shop.Rooms) > 0 && len(p.Shop.Machines) > 0 {
			report(ratings(p.Shop))
		}
	},
}

// covering is how much floor the extinguishers of a shop with at least some label
// answer for.
type covering struct {
	count int
	units int
}

// coverOf counts the extinguishers with at least a label, and their class A.
func coverOf(list []readExtinguisher, least string) (c covering) {
	for _, l := range list {
		if atLeastA(l.classes, least) {
			c.count++
			c.units += l.classes.A
		}
	}
	return c
}

// answers reports whether the class A that is there answers for a floor.
func (c covering) answers(floor, each unit.Area) bool {
	return unit.AtLeast(float64(c.units)*float64(each), float64(floor))
}

// enough reports whether there are enough of them for a floor.
func (c covering) enough(floor, most unit.Area) bool {
	return unit.AtLeast(float64(c.count)*float64(most), float64(floor))
}

// ratings judges the class A of all extinguishers against the floor of the rooms
// with machines. Broken for the lightest hazard, it is broken for each; kept for
// the gravest, it is kept for each; between them the hazard is asked.
func ratings(s *shop.Shop) Finding {
	least, extra := rulesOn(s, "extinguisher-least"), rulesOn(s, "extinguisher-least-extra")
	each, most := rulesOn(s, "extinguisher-area"), rulesOn(s, "extinguisher-area-most")
	ordinary, gravest := rulesOn(s, "extinguisher-area-ordinary"), rulesOn(s, "extinguisher-area-extra")
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know, At: s.Extinguishers[0].At,
		Basis: partsBasis(part{rule: least}, part{rule: extra}, part{rule: each}, part{rule: ordinary}, part{rule: gravest}, part{rule: most})}
	list, unread := labelsOf(s)
	var floor unit.Area
	for _, r := range workRooms(s) {
		floor += r.Area()
	}
	light, grave := coverOf(list, least.Value), coverOf(list, extra.Value)
	parts := []part{
		{least, light.count > 0},
		{each, light.answers(floor, measureOf[unit.Area](each))},
		{most, light.enough(floor, measureOf[unit.Area](most))},
	}
	all := grave.enough(floor, measureOf[unit.Area](most)) && grave.answers(floor, measureOf[unit.Area](gravest)) && light.answers(floor, measureOf[unit.Area](ordinary))
	state := partsState(parts...)
	// a figure that was confirmed tells the hazard: the gravest wants larger ones
	settled := each.Confirmed && (exceeds(measureOf[unit.Area](each), measureOf[unit.Area](gravest)) ||
		grave.enough(floor, measureOf[unit.Area](most)) && grave.answers(floor, measureOf[unit.Area](each)))
	has := sayOf(light.count, "finding-extinguisher-rating.has.says", strconv.Itoa(light.count), least.Value, strconv.Itoa(light.units), unit.Floor.Print(s.Units, floor))
	per := unit.Floor.Print(s.Units, measureOf[unit.Area](each))
	f.By = ByRule
	switch lost := roomless(s); {
	case len(lost) > 0:
		f.By = ByGiven
		f.Says, f.Do = say("finding-extinguisher.no-room.says", listed(firstFew(lost))), say("finding-common.room.do")
		return f
	case len(unread) > 0 && each.Elsewhere && marked(unread) != "":
		f.State = Ask
		f.Says, f.Do = unreadWords(unread), say("finding-extinguisher-rating.foreign.do")
		f.Asks = say("finding-extinguisher-rating.foreign.asks", marked(unread), unit.Floor.Print(s.Units, floor))
		return f
	case len(unread) > 0:
		f.By = ByGiven
		f.Says, f.Do = unreadWords(unread), say("finding-extinguisher.unread.do")
		return f
	case state == NotMet:
		f.State = NotMet
		f.Says, f.Do = join(has, say("finding-extinguisher-rating.few.says", least.Value, per, unit.Floor.Print(s.Units, measureOf[unit.Area](most)))), say("finding-extinguisher-rating.few.do")
	case state == Met && (all || settled):
		f.State = Met
		f.Says, f.Do = join(has, say("finding-extinguisher-rating.kept.says")), say("finding-extinguisher-rating.kept.do")
	default:
		f.State = Ask
		f.Says = join(has, say("finding-extinguisher-rating.hazard.says", least.Value, extra.Value, per,
			unit.Floor.Print(s.Units, measureOf[unit.Area](ordinary)), unit.Floor.Print(s.Units, measureOf[unit.Area](gravest))))
		f.Do = say("finding-extinguisher-rating.hazard.do")
		f.Asks = say("finding-extinguisher-rating.hazard.asks", strconv.Itoa(light.units), unit.Floor.Print(s.Units, floor))
	}
	f.Says = join(f.Says, partsRemark(parts...))
	weigh(s, &f, each, most)
	return f
}
