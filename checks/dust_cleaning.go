package checks

import (
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var dustCleaning = &Check{
	ID:       "dust-cleaning",
	Name:     say("check.dust-cleaning.name"),
	Title:    say("check.dust-cleaning.title"),
	Needs:    "room.cleaned, machine.makes, shop.rules",
	Whom:     Authority,
	Compares: []string{"barred-cleaning"},
	Run: func(p *plan.Plan, report func(Finding)) {
		rule := rulesOn(p.Shop, "barred-cleaning")
		var silent []string
		for _, r := range dustyRooms(p.Shop) {
			if !r.Cleaned.Known() {
				silent = append(silent, r.Name)
				continue
			}
			report(cleaned(p.Shop, r, rule))
		}
		if len(silent) > 0 {
			report(Finding{State: NotGiven, By: ByGiven, Weight: Know, Basis: []source.Basis{rule.Basis},
				Says: say("finding-dust-cleaning.not-given.says", listed(silent)), Do: say("finding-dust-cleaning.not-given.do")})
		}
	},
}

// blowDown and airHose are figures of texts that allow what the one compared with
// bars; they are shown, never held.
var blowDown, airHose = figure("blow-down of NFPA 664"), figure("compressed air for cleaning")

// cleaned judges how the settled dust of one room is taken up: a vacuum cleaner
// meets the text, a way that it bars does not, any other is a question.
func cleaned(s *shop.Shop, r *shop.Room, rule ruled) Finding {
	f := Finding{About: r.Name, Kind: "room", At: r.Cleaned.At, By: ByRule, Weight: Know, Basis: []source.Basis{rule.Basis}}
	barred := slices.Contains(strings.Split(rule.Value, ", "), r.Cleaned.V)
	switch {
	case r.Cleaned.V == "vacuum":
		f.State = rule.holds(true)
		f.Says, f.Do = say("finding-dust-cleaning.vacuum.says"), say("finding-dust-cleaning.vacuum.do")
		f.Asks = unlessMet(f.State, say("finding-dust-cleaning.vacuum.asks", r.Name))
	case r.Cleaned.V == "blowing":
		f.State, f.Weight = rule.holds(false), Mend
		f.Basis = append(f.Basis, basesOf("dust-cleaning")...)
		f.Says = say("finding-dust-cleaning.blowing.says", shortOf(rule.Basis), blowDown.Basis.BriefIn(english.Mark), blowDown.Measure(), airHose.Basis.BriefIn(english.Mark), airHose.Measure())
		f.Do = say("finding-dust-cleaning.blowing.do")
		f.Asks = say("finding-dust-cleaning.blowing.asks", r.Name)
	case barred:
		f.State, f.Weight = rule.holds(false), Mend
		f.Says, f.Do = say("finding-dust-cleaning.swept-barred.says", shortOf(rule.Basis)), say("finding-dust-cleaning.swept.do")
		f.Asks = say("finding-dust-cleaning.swept.asks", r.Name)
	default:
		f.State = Ask
		f.Says, f.Do = say("finding-dust-cleaning.swept.says"), say("finding-dust-cleaning.swept.do")
		f.Asks = say("finding-dust-cleaning.swept.asks", r.Name)
	}
	f.Says = join(f.Says, unread(rule))
	weigh(s, &f, rule)
	return f
}
