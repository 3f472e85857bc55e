package checks

import (
	"slices"
	"strconv"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/takeoff"
)

var lastTest = &Check{
	ID:       "last-test",
	Name:     say("check.last-test.name"),
	Title:    say("check.last-test.title"),
	Whom:     Authority,
	Compares: []string{"test-months"},
	Needs:    "record.kind, record.date, document.kind, document.held, document.date, shop.rules, shop.setting, shop.employees, shop.pupils",
	Run: func(p *plan.Plan, report func(Finding)) {
		if people, known := peopleEmployedOrTaught(p.Shop); len(p.Shop.Collectors) > 0 && (people || !known) {
			report(tested(p, known))
		}
	},
}

// tested judges how long ago the system was last measured, on the day of the
// plan. It is about the shop: one examination covers what hangs together.
func tested(p *plan.Plan, known bool) Finding {
	f := Finding{At: p.Shop.Collectors[0].At, By: ByGiven, Weight: Know, State: NotGiven}
	last, paper := lastMeasured(p)
	if paper != nil {
		f.At = paper.At
	}
	switch {
	case !known:
		f.Says, f.Do = say("finding-last-test.no-setting.says"), say("finding-last-test.no-setting.do")
		return f
	case last == entry.Date{}:
		f.Says, f.Do = say("finding-last-test.none.says"), say("finding-last-test.none.do")
		return f
	case p.AsOf == entry.Date{}:
		f.Says, f.Do = say("finding-last-test.no-day.says"), say("finding-last-test.no-day.do")
		return f
	}
	rule := rulesOn(p.Shop, "test-months")
	months, err := strconv.Atoi(rule.Value)
	if err != nil {
		panic("checks: rules: " + err.Error())
	}
	due := takeoff.Interval{Count: months, Months: true}.After(last)
	kept := p.AsOf.String() <= due.String()
	f.By, f.Basis, f.State = ByRule, []source.Basis{rule.Basis}, rule.holds(kept)
	if kept {
		f.Says = say("finding-last-test.kept.says", last.String(), rule.Value, due.String(), rule.Basis.BriefIn(english.Mark))
		f.Do = say("finding-last-test.kept.do", due.String())
	} else {
		f.Weight = Mend
		f.Says = say("finding-last-test.over.says", last.String(), rule.Value, due.String(), rule.Basis.BriefIn(english.Mark))
		f.Do = say("finding-last-test.over.do")
	}
	if !rule.Decides {
		f.Says = join(f.Says, rule.remark())
		f.Asks = say("finding-last-test.asks", last.String())
	}
	return f
}

// lastMeasured is the day of the last measurement up to the day of the plan, on
// record or by a document in hand, and that document; no day where there is none.
func lastMeasured(p *plan.Plan) (last entry.Date, paper *shop.Document) {
	_, _, last = readAt(p)
	for _, d := range p.Shop.Documents {
		i := paperOf(d.Kind)
		if i < 0 || !d.Held.V || !slices.Contains([]string{commissioningPaper, examinationPaper}, paperRows[i].Text("paper")) {
			continue
		}
		if d.Date.String() > last.String() && (p.AsOf == entry.Date{} || d.Date.String() <= p.AsOf.String()) {
			last, paper = d.Date, d
		}
	}
	return last, paper
}
