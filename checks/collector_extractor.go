package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var extractorType = &Check{
	ID:       "extractor-type",
	Name:     say("check.extractor-type.name"),
	Title:    say("check.extractor-type.title"),
	Needs:    "collector.dirty_volume, collector.claims, collector.room, shop.rules",
	Whom:     Maker,
	Compares: []string{"extractor-volume", "extractor-flow"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := extractor(p, c); told {
				report(f)
			}
		}
	},
}

// extractorTypes are the rows with the greatest volume of each type, the
// smallest first, and what the text wants of it.
var extractorTypes = []struct {
	most source.Row
	says string
}{
	{figure("extractor type A"), "finding-extractor-type.a"},
	{figure("extractor type B"), "finding-extractor-type.b"},
	{figure("extractor type C"), "finding-extractor-type.c"},
	{figure("extractor type D"), "finding-extractor-type.d"},
}

// builtFor is the pressure that the housing of the larger types has to stand.
var builtFor = figure("extractor pressure")

// extractor tells of a collector indoors whether the text on such extractors
// speaks of it, and as which type. Where no figure of that text decides, it is
// told only of one that is too large for it.
func extractor(p *plan.Plan, c *shop.Collector) (f Finding, told bool) {
	s := p.Shop
	volume, flow := rulesOn(s, "extractor-volume"), rulesOn(s, "extractor-flow")
	most, strongest := measureOf[unit.Volume](volume), measureOf[unit.Flow](flow)
	decides := volume.Decides && flow.Decides
	f = Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: []source.Basis{volume.Basis, flow.Basis}}
	if standing(s, c) != indoors {
		return f, false
	}
	air := mostAir(p, c)
	switch {
	case !c.DirtyVolume.Known():
		f.Says, f.Do = say("finding-extractor-type.no-volume.says"), say("finding-explosion-protection.no-volume.do")
		return f, volume.Decides || flow.Decides
	}
	large, strong := exceeds(c.DirtyVolume.V, most), exceeds(air, strongest)
	got, want := unit.Room.Pair(s.Units, c.DirtyVolume.V, most)
	moves, limit := unit.Air.Pair(s.Units, air, strongest)
	f.By = ByRule
	f.Figures = []Figure{
		{Name: say("finding-explosion-protection.volume"), Value: float64(c.DirtyVolume.V), Unit: "m3", Limit: limitOf(most), Basis: volume.Basis},
		{Name: say("finding-open-bag-indoors.flow"), Value: float64(air), Unit: "m3/s", Limit: limitOf(strongest), Basis: flow.Basis},
	}
	f.Says = say("finding-extractor-type.is.says", got, unit.Room.Unit(s.Units), moves, unit.Air.Unit(s.Units), want, limit, briefly(volume, flow))
	f.Asks = say("finding-extractor-type.asks", c.Name, got+" "+unit.Room.Unit(s.Units))
	broken := large && volume.Decides || strong && flow.Decides
	switch {
	case large || strong:
		f.State, f.Do, f.Whom = Ask, say("finding-extractor-type.beyond.do"), Authority
		f.Says = join(f.Says, say("finding-extractor-type.beyond.says"))
		f.Asks = say("finding-extractor-type.beyond.asks", c.Name, got+" "+unit.Room.Unit(s.Units), moves+" "+unit.Air.Unit(s.Units))
		if !broken {
			f.Says = join(f.Says, either(volume, flow, large).remark())
		}
		return f, true
	case decides:
		f.State, f.Do = InPlay, say("finding-extractor-type.within.do")
		f.Says = join(f.Says, say(typeFor(c), builtFor.Measure()))
		return f, true
	}
	f.State, f.Do = Ask, say("finding-extractor-type.within.do")
	f.Says = join(f.Says, either(volume, flow, !volume.Decides).remark())
	return f, volume.Decides || flow.Decides
}

// typeFor is what the text wants of the type that a collector's volume puts it
// into.
func typeFor(c *shop.Collector) string {
	for _, t := range extractorTypes {
		if !exceeds(c.DirtyVolume.V, unit.Must[unit.Volume](t.most.Measure())) {
			return t.says
		}
	}
	return extractorTypes[len(extractorTypes)-1].says
}
