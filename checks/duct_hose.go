package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var hoseSlack = &Check{
	ID:    "hose-slack",
	Name:  say("check.hose-slack.name"),
	Title: say("check.hose-slack.title"),
	Needs: "hose.stretched, hose.length",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := slack(p.Shop, c); told {
				report(f)
			}
		}
	},
}

// hoseBasis are the texts on short hose.
var hoseBasis = basesOf("hose-slack")

// slack says which hoses of a collector are not pulled out.
func slack(s *shop.Shop, c *shop.Collector) (f Finding, told bool) {
	f = Finding{About: c.Name, Kind: "collector", At: c.At, By: ByGiven, Weight: Know, Basis: hoseBasis}
	var loose, unknown []string
	hoses, times := 0, 0.0
	for _, d := range ductsOn(s, c) {
		if d.Hose == nil {
			continue
		}
		hoses++
		switch {
		case !d.Hose.Stretched.Known():
			unknown = append(unknown, d.Name)
		case !d.Hose.Stretched.V:
			loose = append(loose, say("finding-duct.with", d.Name, unit.Run.Print(s.Units, d.Hose.Length)))
			times = max(times, d.Hose.Times)
		}
	}
	switch {
	case hoses == 0:
		return f, false
	case len(loose) > 0:
		f.State, f.By = Advice, ByModel
		f.Says = sayOf(len(loose), "finding-hose-slack.loose.says", listed(firstFew(loose)), unit.Fixed(times, 1))
		f.Do = say("finding-hose-slack.loose.do")
	case len(unknown) > 0:
		f.State = NotGiven
		f.Do = say("finding-hose-slack.not-given.do")
	default:
		f.State = Met
		f.Says, f.Do = say("finding-hose-slack.met.says"), say("finding-hose-slack.met.do")
	}
	if len(unknown) > 0 {
		f.Says = join(f.Says, sayOf(len(unknown), "finding-hose-slack.not-given.says", listed(firstFew(unknown))))
	}
	return f, true
}
