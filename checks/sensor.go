package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
)

var sensorLevels = &Check{
	ID:    "sensor-levels",
	Name:  say("check.sensor-levels.name"),
	Title: say("check.sensor-levels.title"),
	Needs: "sensor.high, sensor.very_high, sensor.senses",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, s := range p.Shop.Sensors {
			report(leveled(s))
		}
	},
}

// leveled says whether the file tells at what level a sensor acts. A filter's
// or a bin's holds the fan off, the one at its very high level, the other at
// either; the room's air only lights the signal.
func leveled(s *shop.Sensor) Finding {
	f := Finding{About: s.Name, Kind: "sensor", At: s.At, By: ByGiven, Weight: Know, State: Met, Basis: ownFile(say("finding-sensor-levels.given"))}
	f.Do = say("finding-sensor-levels.met.do")
	switch {
	case !s.High.Known() && !s.VeryHigh.Known():
		f.State = NotGiven
		f.Says = say("finding-sensor-levels.missing.says")
		f.Do = say("finding-sensor-levels.missing.do")
		switch s.Senses {
		case "filter pressure":
			f.Do = say("finding-sensor-levels.missing-filter.do")
		case "bin level":
			f.Do = say("finding-sensor-levels.missing-bin.do")
		}
	case s.Senses == "filter pressure" && !s.VeryHigh.Known():
		f.Says = say("finding-sensor-levels.no-hold.says")
		f.Do = say("finding-sensor-levels.no-hold.do")
	default:
		f.Says = say("finding-sensor-levels.met.says")
	}
	return f
}
