package checks

import (
	_ "embed"
	"math"

	"dustbook/plan"
	"dustbook/plan/room"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var noiseDose = &Check{
	ID:       "noise-dose",
	Name:     say("check.noise-dose.name"),
	Title:    say("check.noise-dose.title"),
	Whom:     Hygienist,
	Compares: noiseFigures,
	Needs:    "machine.noise, machine.hours, shop.setting, shop.employees, shop.pupils, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if f, look := heard(p); look {
			report(f)
		}
	},
}

//go:embed noise.csv
var noiseData []byte

// noiseRates say by which of the rates of plan/room a figure of a pack is
// reckoned; one without a rate, and one that no row has, by the daily level.
var noiseRates = source.MustRows("noise.csv", noiseData, "rules", "figure", "rate")

// noiseFigures are the figures of a day's noise, the least first.
var noiseFigures = figuresOf(noiseRates)

// figuresOf lists the figures that some rows name, each once.
func figuresOf(rows []source.Row) []string {
	var list []string
	for _, r := range rows {
		list = append(list, r.Text("figure"))
	}
	return unique(list)
}

// loud is one figure beside the level that it is held against.
type loud struct {
	rule   ruled
	level  unit.Sound
	limit  unit.Sound
	counts bool // something of the day is loud enough to count
	passed bool
}

// heard judges the day of one person who runs every machine alone for its hours.
// A figure of it brings a text into play; below every figure it is asked.
func heard(p *plan.Plan) (f Finding, look bool) {
	people, known := peopleEmployedOrTaught(p.Shop)
	home, day := known && !people, p.Rooms.Day
	f = Finding{By: ByRule, Weight: Know}
	if len(p.Shop.Machines) == 0 || home && !day.Known() {
		return f, false
	}
	f.At = p.Shop.Machines[0].At
	if !day.Known() {
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-noise-dose.not-given.says", waits(day.Missing)), say("finding-noise-dose.not-given.do")
		return f, true
	}
	inPlay := false
	var over, within, nothing []string
	for _, l := range loudsOf(p.Shop, day) {
		limit, from := float64(l.limit), l.rule.Basis.BriefIn(english.Mark)
		f.Basis = append(f.Basis, l.rule.Basis)
		if !l.counts {
			nothing = append(nothing, say("finding-noise-dose.figure", unit.Loud.Print(p.Shop.Units, l.limit), from, l.rule.Basis.Clause))
			continue
		}
		f.Figures = append(f.Figures, Figure{Name: say("finding-noise-dose.level"), Value: float64(l.level), Unit: "dBA", Limit: &limit, Basis: l.rule.Basis})
		got, most := unit.Loud.Pair(p.Shop.Units, l.level, l.limit)
		against := say("finding-noise-dose.against", got, most, unit.Loud.Unit(p.Shop.Units), from, l.rule.Basis.Clause)
		if !l.passed {
			within = append(within, against)
			continue
		}
		over = append(over, against)
		inPlay = inPlay || l.rule.plays(true) == InPlay
	}
	if home && len(over) == 0 {
		return f, false
	}
	f.State = Ask
	f.Says = say("finding-noise-dose.day.says", unit.Loud.Print(p.Shop.Units, room.Daily(day.Day)))
	if len(over) > 0 {
		f.Weight = Mend
		f.Says = join(f.Says, say("finding-noise-dose.over.says", listed(over)))
		f.Do = say("finding-noise-dose.over.do")
	} else {
		f.Do = say("finding-noise-dose.within.do")
	}
	if len(within) > 0 {
		f.Says = join(f.Says, say("finding-noise-dose.within.says", listed(within)))
	}
	if len(nothing) > 0 {
		f.Says = join(f.Says, say("finding-noise-dose.nothing.says", listed(nothing)))
	}
	f.Says = join(f.Says, rulesOn(p.Shop, "noise-first").remark())
	switch {
	case home:
		f.State, f.Weight = Advice, Know
	case inPlay:
		f.State = InPlay
	}
	if !home {
		f.Asks = say("finding-noise-dose.asks", unit.Loud.Print(p.Shop.Units, room.Daily(day.Day)))
	}
	return f, true
}

// loudsOf holds a day against the figures of the shop's own rules; where they
// have none, against those that were read elsewhere.
func loudsOf(s *shop.Shop, day *room.Dose) []loud {
	var own, elsewhere []loud
	for _, figure := range noiseFigures {
		rule := rulesOn(s, figure)
		l := loud{rule: rule, limit: measureOf[unit.Sound](rule)}
		var reached bool
		l.level, reached, l.counts = levelBy(rule, day)
		if l.passed = l.counts && unit.Compare(float64(l.level), float64(l.limit)) > 0; reached {
			l.passed = l.counts && unit.AtLeast(float64(l.level), float64(l.limit))
		}
		if rule.Elsewhere {
			elsewhere = append(elsewhere, l)
			continue
		}
		own = append(own, l)
	}
	if len(own) == 0 {
		return elsewhere
	}
	return own
}

// levelBy is the level of a day by the rate of a figure, or else by energy, to a
// hundredth of a decibel: the factor that a text prints is itself rounded. A figure
// that the owner has had confirmed goes by energy, the stricter way. Reached says
// that the figure is passed from there on.
func levelBy(rule ruled, day *room.Dose) (level unit.Sound, reached, counts bool) {
	for _, r := range noiseRates {
		if r.Text("rules") != rule.Rules || r.Text("figure") != rule.Figure || r.Text("rate") == "" || rule.Confirmed {
			continue
		}
		for _, by := range day.By {
			if by.Rate.Name == r.Text("rate") {
				return hundredth(by.Average.V), by.Rate.Reached, by.Average.Known()
			}
		}
	}
	return hundredth(room.Daily(day.Day)), true, true
}

// hundredth rounds a level: the published formula has a factor of four figures,
// 16.61, so that a steady 85 comes out as 84.9999, and no level is known nearer.
func hundredth(l unit.Sound) unit.Sound { return unit.Sound(math.Round(float64(l)*100) / 100) }
