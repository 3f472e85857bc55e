package checks

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var dustCarried = &Check{
	ID:    "dust-carried",
	Name:  say("check.dust-carried.name"),
	Title: say("check.dust-carried.title"),
	Needs: "duct.size, duct.route, machine.transport, collector.fan_curve",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, u := range p.Air.Uses {
			if len(u.Machines) > 0 {
				carry(p, u, report)
			}
		}
	},
}

// stretchAt is one stretch in one result, with the band of its speed.
type stretchAt struct {
	stretch *duct.StretchResult
	in      *duct.Result
	share   float64
	band    duct.Range
	likely  duct.Likely
}

// Slow is the stretch whose air is too slow for the dust, or may be.
type Slow struct {
	Stretch *shop.Stretch
	Hose    bool // it is the hose of the stretch
	Settles bool // dust settles there; else its speed has to be measured
}

// carry judges one use by its slowest stretch or hose over all its results.
func carry(p *plan.Plan, u *duct.Use, report func(Finding)) {
	f := about(u)
	f.By = ByModel
	if missing := unserved(u); missing != "" {
		f.State, f.By, f.Weight = NotGiven, ByTopology, Mend
		f.Says = say("finding-dust-carried.unserved.says", missing)
		f.Do = say("finding-common.unserved.do")
		report(f)
		return
	}
	var worst *stretchAt
	for _, r := range u.Results {
		if !r.OnCurve {
			return // the check of the air says so already
		}
		for i := range r.Stretches {
			at := &stretchAt{stretch: &r.Stretches[i], in: r}
			need := float64(at.stretch.Transport)
			if !at.stretch.Judged || need <= 0 {
				continue
			}
			at.share = unit.Six(float64(at.stretch.Slower()) / need)
			at.band = p.Air.Spread(r).Speed(at.stretch.Stretch)
			at.likely = likely(at.band, need, at.share)
			if worst == nil || worse(at.likely, at.share, worst.likely, worst.share) {
				worst = at
			}
		}
	}
	if worst == nil {
		return
	}
	judgeStretch(p, &f, worst)
	report(f)
}

// judgeStretch says how a stretch stands to the speed its dust needs: met where
// that lies below the band of its own speed, thin inside it, not met above it.
// Against a speed of common practice nothing is better than thin; where the air
// falls clearly short even of that, dust settles.
func judgeStretch(p *plan.Plan, f *Finding, at *stretchAt) {
	units, worst := p.Shop.Units, at.stretch
	speed, need := unit.Speed.Pair(units, worst.Slower(), worst.Transport)
	name, runs, settles := worst.Stretch.Name(), "finding-dust-carried.slowest.says", "finding-dust-carried.settles.says"
	where, hose := name, worst.Slower() < worst.Velocity
	if hose {
		where, runs, settles = say("finding-dust-carried.hose", name), "finding-dust-carried.slowest-hose.says", "finding-dust-carried.settles-hose.says"
	}
	limit := float64(worst.Transport)
	f.Figures = banded(Figure{Name: where, Value: float64(worst.Slower()), Unit: "m/s", Limit: &limit, Basis: worst.Basis}, at.band)
	f.Basis = []source.Basis{worst.Basis}
	f.Says = say(runs, name, speed, unit.Speed.Unit(units), need, filterWords(at.in.Filter))
	switch at.likely {
	case duct.Surely:
		f.State, f.Weight = Met, Know
		f.Do = say("finding-dust-carried.slowest.do")
	case duct.Thinly:
		f.State, f.Weight = Thin, Know
		f.Do = measureIt(at.band, "finding-dust-carried.thin.do")
		if at.band != (duct.Range{}) {
			f.Slow = &Slow{Stretch: worst.Stretch, Hose: hose}
		}
	default:
		f.State, f.Weight = NotMet, Know
		f.Says = say(settles, name, speed, need, unit.Speed.Unit(units), filterWords(at.in.Filter))
		f.Do = say("finding-dust-carried.settles.do")
		f.Slow = &Slow{worst.Stretch, hose, true}
	}
	f.Says = join(f.Says, bandWords(p, unit.Speed, at.band))
	if at.share < farBelow {
		f.Weight = Mend
	}
	if f.State == NotMet {
		return
	}
	if says, do := fanRests(at.in); says != "" {
		f.Says, f.Do = join(f.Says, says), do
		f.State, f.Slow = Thin, nil
	}
	if worst.Basis.Mark.Weak() {
		f.Says = join(f.Says, say("finding-dust-carried.need-practice.says"))
		if f.State == Met {
			f.State, f.Do = Thin, say("finding-dust-carried.practice.do")
		}
	}
}
