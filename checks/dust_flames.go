package checks

import (
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var flameNearDust = &Check{
	ID:       "flame-near-dust",
	Name:     say("check.flame-near-dust.name"),
	Title:    say("check.flame-near-dust.title"),
	Needs:    "appliance.kind, appliance.room, machine.makes, machine.room, shop.rules",
	Whom:     Authority,
	Compares: []string{"barred-flames"},
	Run: func(p *plan.Plan, report func(Finding)) {
		rule := rulesOn(p.Shop, "barred-flames")
		for _, r := range dustyRooms(p.Shop) {
			if f, told := flameIn(p.Shop, r, rule); told {
				report(f)
			}
		}
		if len(p.Shop.Appliances) == 0 && len(dustyRooms(p.Shop)) > 0 {
			report(Finding{State: NotGiven, By: ByGiven, Weight: Know, Basis: []source.Basis{rule.Basis},
				Says: say("finding-flame-near-dust.not-given.says"), Do: say("finding-open-flue.no-appliance.do")})
		}
	},
}

// flameIn judges what burns or throws sparks in one room with wood dust: what
// the text names decides; what needs judgement is asked. Nothing is told of a
// room where the file lists no appliance at all.
func flameIn(s *shop.Shop, r *shop.Room, rule ruled) (f Finding, told bool) {
	f = Finding{About: r.Name, Kind: "room", At: r.At, By: ByRule, Weight: Know, Basis: []source.Basis{rule.Basis}}
	barred := strings.Split(rule.Value, ", ")
	var open, doubtful []string
	for _, a := range s.Appliances {
		switch {
		case a.Room != r:
		case slices.Contains(barred, a.Kind):
			open = append(open, say("finding-flame-near-dust.barred", a.Kind))
		case burnsInRoom(a):
			doubtful = append(doubtful, say("finding-flame-near-dust.appliance", a.Kind))
		}
	}
	var lost []string // what makes sparks, and stands nobody knows where
	for _, m := range s.Machines {
		switch sparks := m.Makes == "metal" || m.Makes == "mixed"; {
		case sparks && m.Room == r:
			doubtful = append(doubtful, m.Name)
		case sparks && m.Room == nil:
			lost = append(lost, m.Name)
		}
	}
	switch {
	case len(open) > 0:
		f.State, f.Weight = rule.holds(false), Mend
		f.Says, f.Do = say("finding-flame-near-dust.open.says", listed(open)), say("finding-flame-near-dust.open.do")
		f.Asks = say("finding-flame-near-dust.open.asks", r.Name, listed(append(open, doubtful...)))
	case len(doubtful) > 0:
		f.State = Ask
		f.Says, f.Do = sayOf(len(doubtful), "finding-flame-near-dust.doubtful.says", listed(doubtful)), say("finding-flame-near-dust.doubtful.do")
		f.Asks = say("finding-flame-near-dust.doubtful.asks", listed(doubtful), r.Name)
	case len(s.Appliances) == 0:
		return f, false
	case len(lost) > 0:
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-flame-near-dust.no-room.says", listed(firstFew(lost))), say("finding-common.room.do")
		return f, true
	default:
		f.State = rule.holds(true)
		f.Says, f.Do = say("finding-flame-near-dust.none.says"), say("finding-flame-near-dust.none.do")
		f.Asks = unlessMet(f.State, say("finding-flame-near-dust.none.asks", r.Name))
	}
	f.Says = join(f.Says, unread(rule))
	weigh(s, &f, rule)
	return f, true
}

// burnsInRoom reports whether an appliance has a flame that the room's air can
// reach.
func burnsInRoom(a *shop.Appliance) bool {
	switch a.Kind {
	case "open-flue gas", "open-flue oil", "power-vented gas", "wood stove":
		return true
	}
	return false
}
