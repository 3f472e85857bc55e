package checks

import (
	"slices"
	"strings"

	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// part is one comparison of several that a finding is made of.
type part struct {
	rule ruled
	kept bool
}

// partsState says what several comparisons come to: not met where one that decides
// is broken; a question where one is broken that does not decide, or where none
// decides; met where those that decide are kept.
func partsState(parts ...part) State {
	met, open := false, false
	for _, p := range parts {
		switch p.rule.holds(p.kept) {
		case NotMet:
			return NotMet
		case Met:
			met = true
		default:
			open = open || !p.kept
		}
	}
	if met && !open {
		return Met
	}
	return Ask
}

// partsBasis are the texts of some comparisons, each once, in their order.
func partsBasis(parts ...part) []source.Basis {
	var list []source.Basis
	seen := map[source.Basis]bool{}
	for _, p := range parts {
		if !seen[p.rule.Basis] {
			seen[p.rule.Basis] = true
			list = append(list, p.rule.Basis)
		}
	}
	return list
}

// briefly are the short names of the texts of some figures with what their marks
// add, each once.
func briefly(rules ...ruled) string {
	var list []string
	for _, r := range rules {
		if r.Confirmed {
			list = append(list, say("finding-duct.confirmed-by", r.Basis.Clause))
		} else {
			list = append(list, r.Basis.BriefIn(english.Mark))
		}
	}
	return strings.Join(unique(list), "; ")
}

// partsRemark says why the first of some comparisons that does not decide does not;
// empty where all do.
func partsRemark(parts ...part) string {
	for _, p := range parts {
		if text := p.rule.remark(); text != "" {
			return text
		}
	}
	return ""
}

// weigh gives a finding that is not met the weight of something to be mended; at
// home, where texts for work places do not speak, what they say is advice. What
// the owner has had confirmed for this shop decides there as well.
func weigh(s *shop.Shop, f *Finding, rules ...ruled) {
	if f.State == NotMet || f.State == InPlay {
		f.Weight = Mend
	}
	confirmed := slices.ContainsFunc(rules, func(r ruled) bool { return r.Confirmed })
	if !atHome(s) || f.State == NotGiven || confirmed {
		return
	}
	f.State, f.Asks = Advice, ""
	f.Says = join(f.Says, say("finding-building.home.says"))
}

// atHome reports whether the file says that nobody is employed or taught here.
func atHome(s *shop.Shop) bool {
	people, known := peopleEmployedOrTaught(s)
	return known && !people
}

// workRooms are the rooms in which a machine stands, in file order.
func workRooms(s *shop.Shop) []*shop.Room {
	var list []*shop.Room
	for _, r := range s.Rooms {
		for _, m := range s.Machines {
			if m.Room == r {
				list = append(list, r)
				break
			}
		}
	}
	return list
}

// roomless names the machines that stand in no room of the file.
func roomless(s *shop.Shop) []string {
	var names []string
	for _, m := range s.Machines {
		if m.Room == nil {
			names = append(names, m.Name)
		}
	}
	return names
}

// noRoomFor says that it is not given which room some machines stand in.
func noRoomFor(s *shop.Shop, lost []string, says string) Finding {
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know, Says: says, Do: say("finding-common.room.do")}
	for _, m := range s.Machines {
		if m.Name == lost[0] {
			f.At = m.At
		}
	}
	return f
}
