package drawing

import (
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// headSays is the collector's name, and what its fan does in the use.
func (s *single) headSays() block {
	b := writing(s.collector.Name, true, machineText, singleLabel, 3)
	if s.result.OnCurve {
		b.under(unit.Air.Print(s.sys, s.result.Flow)+" · "+wording.Text("chart.single.fan", unit.Press.Print(s.sys, s.result.Static)), false)
	}
	return b
}

// nameSays is a stretch's number, name and size; bold on the open way.
func (s *single) nameSays(stretch *shop.Stretch) block {
	b := writing(s.numberOf(stretch)+" · "+stretch.Name(), s.open[stretch], smallText, singleLabel, 3)
	size := "· " + s.sizeOf(stretch.Duct)
	b.add(run{size, false, ""}, size, singleLabel)
	return b
}

// figureSays is what passes a stretch on the open way: flow and speed, the
// pressures at its downstream end, and what falls short. Off it, and off the
// fan's curve, it is empty.
func (s *single) figureSays(stretch *shop.Stretch) block {
	b := block{size: smallText, ink: dark}
	v := s.passing(stretch)
	if v == nil {
		return b
	}
	b.under(unit.Air.Print(s.sys, v.Flow)+" · "+s.speedSays(v.Velocity, v, v.Carries), false)
	b.under(s.pressSays(v), false)
	if v.Hose && !v.HoseCarries {
		b.under(wording.Text("chart.single.hose", s.speedSays(v.HoseVelocity, v, false)), false)
	}
	for i := range s.result.Ports {
		p := &s.result.Ports[i]
		if !p.Captured && p.Port.Duct == stretch.Duct && stretch.Number == 1 {
			_, need := unit.Air.Pair(s.sys, p.Flow, p.Port.Flow)
			b.under(slowMark+wording.Text("chart.single.needs", need+" "+unit.Air.Unit(s.sys)), false)
			s.known.short = true
		}
	}
	return b
}

// passing is what passes a stretch on the open way; nil off it, and where
// there are no figures.
func (s *single) passing(stretch *shop.Stretch) *duct.StretchResult {
	if !s.open[stretch] || !s.result.OnCurve {
		return nil
	}
	return s.result.Stretch(stretch)
}

// speedSays is a speed, with what it needs where that is more.
func (s *single) speedSays(speed unit.Velocity, v *duct.StretchResult, carries bool) string {
	if carries {
		return unit.Speed.Print(s.sys, speed)
	}
	s.known.slow = true
	first, need := unit.Speed.Pair(s.sys, speed, v.Transport)
	return first + " " + unit.Speed.Unit(s.sys) + " " + slowMark + wording.Text("chart.single.slow", need)
}

// pressSays is the total pressure behind the join and the static pressure
// before it, both below the room.
func (s *single) pressSays(v *duct.StretchResult) string {
	total := unit.Press.Figure(s.sys, -v.End)
	static, known := s.board.plan.Air.Suction(s.result, v.Stretch.Duct, v.Stretch.To)
	if !known {
		return wording.Text("chart.single.total", total+" "+unit.Press.Unit(s.sys))
	}
	return wording.Text("chart.single.press", total, unit.Press.Print(s.sys, static))
}

func (s *single) title() string {
	key := "chart.single.title"
	if s.result.Filter != duct.NoFilter {
		key = "chart.single.title-filter"
	}
	return wording.Text(key, drawable(s.collector.Name), drawable(s.result.Use.Name), s.result.Filter)
}

// desc says in words what the diagram shows.
func (s *single) desc() string {
	var says []string
	if !s.result.OnCurve {
		says = append(says, wording.Text("drawing.off", wording.Because(s.result.Why)))
	}
	var way []string
	for _, stretch := range InOrder(s.shop, s.collector) {
		if s.open[stretch] {
			one := s.numberOf(stretch) + " " + drawable(stretch.Name())
			b := s.figureSays(stretch)
			for _, line := range b.lines {
				one += ", " + strings.ReplaceAll(line[0].text, slowMark, "")
			}
			if stretch.Number == 1 {
				for _, port := range stretch.Duct.Serves {
					one += ", " + wording.Text("drawing.iso.from", drawable(portName(port)))
				}
			}
			way = append(way, one)
		}
	}
	if len(way) == 0 {
		way = append(way, wording.Text("drawing.none"))
	}
	var open, shut []*shop.Gate
	for _, g := range s.shop.Gates {
		switch {
		case g.On.Collector != s.collector:
		case s.use.Open[g]:
			open = append(open, g)
		default:
			shut = append(shut, g)
		}
	}
	name := func(g *shop.Gate) string { return g.Name }
	says = append(says, wording.Text("chart.single.desc", strings.Join(way, "; ")), wording.Text("drawing.plan.gates", listed(open, name), listed(shut, name)))
	return strings.Join(says, " ")
}

// singleKey is what lines and marks mean.
func (s *single) singleKey() []sign {
	opened, shut, heavy, thin := false, false, false, false
	for _, g := range s.shop.Gates {
		if g.On.Collector == s.collector {
			opened, shut = opened || s.use.Open[g], shut || !s.use.Open[g]
		}
	}
	for _, stretch := range InOrder(s.shop, s.collector) {
		heavy, thin = heavy || s.open[stretch], thin || !s.open[stretch]
	}
	var names []string
	for _, one := range [5]struct {
		used bool
		name string
	}{{heavy, "single-way"}, {s.known.slow, "single-slow"}, {thin, "single-off"}, {opened, "single-open"}, {shut, "single-shut"}} {
		if one.used {
			names = append(names, one.name)
		}
	}
	return signsOf(names)
}

// singleNotes are what else has to be said.
func (s *single) singleNotes() []string {
	list := []string{wording.Text("chart.single.order")}
	if len(s.numbers) == 0 {
		list = []string{wording.Text("drawing.iso.none", drawable(s.collector.Name))}
	}
	if !s.result.OnCurve {
		return append(list, wording.Text("drawing.off", wording.Because(s.result.Why)))
	}
	if len(s.numbers) > 0 {
		list = append(list, wording.Text("chart.single.pressures"))
	}
	if s.known.slow {
		list = append(list, slowMark+wording.Text("drawing.slow-note"))
	}
	if s.known.short {
		list = append(list, slowMark+wording.Text("drawing.needs-note"))
	}
	return list
}
