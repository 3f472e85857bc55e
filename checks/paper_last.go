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
	last, paper, oldest := lastMeasured(p)
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
	due := monthsAfter(last, rule)
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
	if len(p.Shop.Collectors) > 1 {
		f.Says = join(f.Says, say("finding-last-test.oldest.says", oldest.Name))
	}
	if !rule.Decides {
		f.Says = join(f.Says, rule.remark())
		f.Asks = say("finding-last-test.asks", last.String())
	}
	return f
}

// monthsAfter is the day that lies so many months after another as the figure
// says.
func monthsAfter(day entry.Date, rule ruled) entry.Date {
	months, err := strconv.Atoi(rule.Value)
	if err != nil {
		panic("checks: rules: " + rule.Value + " are no months")
	}
	return takeoff.Interval{Count: months, Months: true}.After(day)
}

// lastMeasured is the day of the last measurement up to the day of the plan, on
// record or by a document in hand, and that document; no day where there is none.
// Of several collectors it is that of the one measured longest ago.
func lastMeasured(p *plan.Plan) (last entry.Date, paper *shop.Document, oldest *shop.Collector) {
	var held entry.Date
	for _, d := range p.Shop.Documents {
		i := paperOf(d.Kind)
		if i < 0 || !d.Held.V || !slices.Contains([]string{commissioningPaper, examinationPaper}, paperRows[i].Text("paper")) {
			continue
		}
		if d.Date.String() > held.String() && (p.AsOf == entry.Date{} || d.Date.String() <= p.AsOf.String()) {
			held, paper = d.Date, d
		}
	}
	for _, due := range p.Due() {
		if due.Job != testJob {
			continue
		}
		day := due.Last
		if held.String() > day.String() {
			day = held
		}
		if oldest == nil || day.String() < last.String() {
			last, oldest = day, due.Collector
		}
	}
	if last != held {
		paper = nil
	}
	return last, paper, oldest
}

// testJob is the job of upkeep of measuring the system again.
const testJob string = "test"
