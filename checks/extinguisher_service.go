package checks

import (
	"strconv"

	"dustbook/plan"
	"dustbook/plan/entry"
)

var extinguisherService = &Check{
	ID:       "extinguisher-service",
	Name:     say("check.extinguisher-service.name"),
	Title:    say("check.extinguisher-service.title"),
	Whom:     Insurer,
	Compares: []string{"extinguisher-service"},
	Needs:    "extinguisher.serviced, revision.date, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if len(p.Shop.Extinguishers) > 0 {
			report(lastServices(p))
		}
	},
}

// lastServices holds the day of every extinguisher's last service against the day as
// of which the plan stands.
func lastServices(p *plan.Plan) Finding {
	rule := rulesOn(p.Shop, "extinguisher-service")
	list := p.Shop.Extinguishers
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know, At: list[0].At, Basis: partsBasis(part{rule: rule})}
	missing, late := 0, 0
	var oldest entry.Date
	for _, e := range list {
		switch {
		case e.Serviced == (entry.Date{}):
			missing++
			continue
		case p.AsOf.String() > monthsAfter(e.Serviced, rule).String():
			late++
		}
		if oldest == (entry.Date{}) || e.Serviced.String() < oldest.String() {
			oldest = e.Serviced
			f.At = e.At
		}
	}
	switch {
	case p.AsOf == (entry.Date{}):
		f.Says, f.Do = say("finding-extinguisher-service.no-day.says"), say("finding-extinguisher-service.no-day.do")
		return f
	case late > 0:
		f.State, f.By, f.Weight = rule.holds(false), ByRule, Mend
		f.Says = sayOf(late, "finding-extinguisher-service.late.says", strconv.Itoa(late), oldest.String(), rule.Value, p.AsOf.String())
		f.Do, f.Asks = say("finding-extinguisher-service.late.do"), say("finding-extinguisher-service.late.asks", oldest.String())
	case missing > 0:
		f.Says, f.Do = sayOf(missing, "finding-extinguisher-service.missing.says", strconv.Itoa(missing)), say("finding-extinguisher-service.missing.do")
		return f
	default:
		f.State, f.By = rule.holds(true), ByRule
		f.Says, f.Do = say("finding-extinguisher-service.kept.says", oldest.String(), rule.Value, p.AsOf.String()), say("finding-extinguisher-service.kept.do")
		if f.State == Ask {
			f.Asks = say("finding-extinguisher-service.late.asks", oldest.String())
		}
	}
	f.Says = join(f.Says, rule.remark())
	weigh(p.Shop, &f)
	return f
}
