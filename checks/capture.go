package checks

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var airCaptured = &Check{
	ID:    "air-captured",
	Name:  say("check.air-captured.name"),
	Title: say("check.air-captured.title"),
	Needs: "port.flow, collector.fan_curve, collector.filter, duct.serves",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, u := range p.Air.Uses {
			if len(u.Machines) > 0 {
				capture(p, u, report)
			}
		}
	},
}

// portAt is one port in one result, with the band of its flow.
type portAt struct {
	port   *duct.PortResult
	in     *duct.Result
	share  float64
	band   duct.Range
	likely duct.Likely
}

// capture judges one use by its worst port over all its results.
func capture(p *plan.Plan, u *duct.Use, report func(Finding)) {
	f := about(u)
	f.By = ByModel
	if missing := unserved(u); missing != "" {
		f.State, f.By, f.Weight = NotGiven, ByTopology, Mend
		f.Says = say("finding-air-captured.unserved.says", missing)
		f.Do = say("finding-common.unserved.do")
		report(f)
		return
	}
	var worst *portAt
	for _, r := range u.Results {
		if !r.OnCurve && unsized(p, r.Collector) != "" {
			f.State, f.By, f.Weight = NotGiven, ByGiven, Know
			f.Sizes = true
			f.Says, f.Do = say("finding-air-captured.sizes.says"), say("finding-common.sizes.do")
			report(f)
			return
		}
		if !r.OnCurve {
			f.State, f.Weight = NotMet, Mend
			f.Says = say("finding-air-captured.off-curve.says", english.Because(r.Why), filterWords(r.Filter))
			f.Do = say("finding-air-captured.off-curve.do", say("check.fan-on-curve.name"))
			report(f)
			return
		}
		for i := range r.Ports {
			at := &portAt{port: &r.Ports[i], in: r}
			need := float64(at.port.Port.Flow)
			if need <= 0 {
				continue
			}
			at.share = unit.Six(float64(at.port.Flow) / need)
			at.band = p.Air.Spread(r).Port(at.port.Port)
			at.likely = likely(at.band, need, at.share)
			if worst == nil || worse(at.likely, at.share, worst.likely, worst.share) {
				worst = at
			}
		}
	}
	if worst == nil {
		return // nothing is asked of any port
	}
	judgePort(p, &f, worst)
	report(f)
}

// judgePort says how a port stands to its need: met where the need lies below
// the band of its flow, thin inside it, not met above it. A need from memory or
// practice, a fan known by two claims, or a filter whose pressure is not given
// is never better than thin; no air at all is too little for any need.
func judgePort(p *plan.Plan, f *Finding, at *portAt) {
	units, worst := p.Shop.Units, at.port
	got, need := unit.Air.Pair(units, worst.Flow, worst.Port.Flow)
	key := "finding-air-captured.enough.says"
	if at.share < 1 {
		key = "finding-air-captured.short.says"
	}
	limit := float64(worst.Port.Flow)
	f.Figures = banded(Figure{Name: worst.Port.Full(), Value: float64(worst.Flow), Unit: "m3/s", Limit: &limit, Basis: worst.Port.Need}, at.band)
	f.Basis = []source.Basis{worst.Port.Need}
	f.Says = join(say(key, worst.Port.Full(), got, need, unit.Air.Unit(units), filterWords(at.in.Filter)), bandWords(p, unit.Air, at.band))
	switch at.likely {
	case duct.Surely:
		f.State, f.Weight = Met, Know
		f.Do = say("finding-air-captured.met.do")
	case duct.Thinly:
		f.State, f.Weight = Thin, Know
		f.Do = measureIt(at.band, "finding-air-captured.thin.do")
	default:
		f.State, f.Weight = NotMet, Mend
		f.Do = say("finding-air-captured.short.do")
		if worst.Flow == 0 && worst.Port.Duct.Movable() {
			f.Says = say("finding-air-captured.hose-elsewhere.says", worst.Port.Full(), worst.Port.Duct.Name)
			f.Do = say("finding-air-captured.hose-elsewhere.do")
		}
	}
	if worst.Weak && worst.Flow > 0 || (at.in.Claimed || duct.FilterOpen(at.in.Collector)) && f.State != NotMet {
		rest(f, at)
	}
	if f.State == Thin && at.share < farBelow {
		f.Weight = Mend
	}
}

// rest keeps a verdict at thin for what it rests on.
func rest(f *Finding, at *portAt) {
	var why, ask string
	if at.port.Weak {
		why, ask = weakNeed(at.port.Port.Need.Mark), say("finding-air-captured.need.do")
	}
	if f.State != NotMet { // what is missing of fan or filter softens no shortfall
		fan, askFan := fanRests(at.in)
		why, ask = join(fan, why), join(askFan, ask)
	}
	f.Says = join(f.Says, why)
	if f.State != Met {
		ask = join(ask, f.Do)
	}
	f.Do = ask
	f.State, f.Weight = Thin, Know
}

// fanRests says what a fan and its filter rest on that keeps a verdict at thin,
// and what to do about it; empty where both are given.
func fanRests(r *duct.Result) (says, do string) {
	if duct.FilterOpen(r.Collector) {
		says, do = say("finding-fan-on-curve.no-filter.says"), say("finding-fan-on-curve.no-filter.do")
	}
	if r.Claimed {
		says, do = join(says, say("finding-common.two-claims.says")), join(do, say("finding-common.ask-curve.do"))
	}
	return says, do
}

// weakNeed says what a need rests on that keeps a verdict at thin.
func weakNeed(mark source.Mark) string {
	if mark == source.Practice {
		return say("finding-air-captured.need-practice.says")
	}
	return say("finding-air-captured.need-memory.says")
}

// about starts a finding about a use: about the machine where it is one
// machine alone.
func about(u *duct.Use) Finding {
	f := Finding{About: u.Name, Kind: "use"}
	if u.Kind == duct.OneMachine {
		f.Kind, f.At = "machine", u.Machines[0].At
	} else {
		f.At = u.Stated.At
	}
	return f
}

// unserved names the first port of a use that no duct serves.
func unserved(u *duct.Use) string {
	for _, m := range u.Machines {
		for _, p := range m.Ports {
			if p.Duct == nil {
				return p.Full()
			}
		}
	}
	return ""
}
