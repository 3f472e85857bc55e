package plan

import (
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Expected is what a reading should show: a band of values in SI units, or a
// text.
type Expected struct {
	duct.Band
	Text    string        // of a reading that is a text
	Least   float64       // what a flow, a hood pressure or a speed must not be below; nought: nothing says
	LeastOf Least         // what that least does
	Given   bool          // a figure of the shop file, not a reckoned one
	Why     source.Reason // why nothing is expected; none where something is
}

// Least is what the least that a reading must not be below does.
type Least string

// What a least does: it is the flow that a port needs, the hood pressure that
// would show that flow, or the speed that carries the dust.
const (
	PortNeed    Least = "port-need"
	NeedShown   Least = "need-shown"
	DustCarried Least = "dust-carried"
)

// Known reports whether something is expected.
func (e Expected) Known() bool { return !e.Why.Is() }

// Why nothing is expected.
var (
	noFigure = source.Because("no-figure")
	noUse    = source.Because("which-use")
	noDuct   = source.Because("unserved")
	notRun   = source.Because("not-run")
	notDrawn = source.Because("not-drawn")
	noState  = source.Because("no-state")
	notThere = source.Because("gone")
	sealed   = source.Because("sealed")
)

// reckoned is what there is no reason to miss.
var reckoned source.Reason

// Expect says what the plan expects a reading to show: in the use it names,
// else in that of the machine it belongs to alone; with the filter in the
// state it names, else anywhere between clean and change-out.
func (p *Plan) Expect(r record.Reading) Expected {
	if m, known := record.FindMeasure(r.Of); !known || !p.names.Has(r.At, m.At) {
		return Expected{Why: notThere}
	}
	switch r.Of {
	case "hood pressure":
		return p.atPort(r)
	case "flow", "velocity":
		return p.ofAir(r)
	case "tap pressure":
		return p.atTap(r)
	case "fan pressure", "separator pressure", "filter pressure":
		return p.atCollector(r)
	}
	return p.given(r)
}

// ofAir is the flow or velocity at a port, in a duct or into a collector.
func (p *Plan) ofAir(r record.Reading) Expected {
	switch {
	case p.port(r.At) != nil:
		return p.atPort(r)
	case p.collector(r.At) != nil:
		return p.atCollector(r)
	}
	return p.inDuct(r)
}

// atPort is the hood pressure, flow or velocity at a port.
func (p *Plan) atPort(r record.Reading) Expected {
	port := p.port(r.At)
	if port.Duct == nil {
		return Expected{Why: noDuct}
	}
	e := p.in(r, p.Air.Alone(port.Machine), port.Duct.Collector, func(at *duct.Result) (float64, source.Reason) {
		got := at.Port(port)
		switch {
		case got == nil:
			return 0, notRun
		case r.Of == "flow":
			return float64(got.Flow), reckoned
		case r.Of == "velocity":
			return float64(got.PortSpeed()), reckoned
		}
		return float64(got.Hood), reckoned
	})
	switch {
	case port.Flow <= 0:
	case r.Of == "flow":
		e.Least, e.LeastOf = float64(port.Flow), PortNeed
	case r.Of == "hood pressure":
		e.Least, e.LeastOf = float64(p.Air.HoodAtNeed(port)), NeedShown
	}
	return e
}

// inDuct is the flow or velocity in a duct or stretch.
func (p *Plan) inDuct(r record.Reading) Expected {
	d, s := p.duct(r.At)
	if s == nil {
		last := len(d.Stretches) - 1
		return Expected{Why: source.Because("which-stretch", d.Stretches[0].Name(), d.Stretches[last].Name())}
	}
	least := 0.0
	e := p.in(r, p.ownerOf(s), d.Collector, func(at *duct.Result) (float64, source.Reason) {
		got := at.Stretch(s)
		if got == nil {
			return 0, notDrawn // duct off
		}
		if r.Of == "flow" {
			return float64(got.Flow), reckoned
		}
		if got.Judged {
			least = float64(got.Transport)
		}
		return float64(got.Velocity), reckoned
	})
	if least > 0 {
		e.Least, e.LeastOf = least, DustCarried
	}
	return e
}

// atTap is the suction at a tap.
func (p *Plan) atTap(r record.Reading) Expected {
	t := p.tap(r.At)
	if t.On == nil {
		return Expected{Why: noDuct}
	}
	s := duct.StretchAt(t.On, t.Where)
	return p.in(r, p.ownerOf(s), t.On.Collector, func(at *duct.Result) (float64, source.Reason) {
		if at.Stretch(s) == nil {
			return 0, notDrawn // duct off
		}
		suction, known := p.Air.Suction(at, t.On, t.Where)
		if !known {
			return 0, sealed
		}
		return float64(suction), reckoned
	})
}

// atCollector is a pressure, flow or velocity at a collector.
func (p *Plan) atCollector(r record.Reading) Expected {
	c := p.collector(r.At)
	if c == nil {
		c = p.watched(r.At)
	}
	switch {
	case c == nil:
		return Expected{Why: noFigure}
	case r.Of == "filter pressure" && c.Filter == nil, r.Of == "separator pressure" && c.Separator == nil:
		return Expected{Why: noFigure}
	}
	return p.in(r, nil, c, func(at *duct.Result) (float64, source.Reason) {
		switch r.Of {
		case "flow":
			return float64(at.Flow), reckoned
		case "velocity":
			return float64(at.InletSpeed()), reckoned
		case "filter pressure":
			return float64(at.FilterGauge()), reckoned
		case "separator pressure":
			return float64(p.Air.SeparatorGauge(at)), reckoned
		}
		return float64(at.Static), reckoned
	})
}

// in takes a value from the results of a reading's use on a collector, or of
// another use where the reading names none.
func (p *Plan) in(r record.Reading, otherwise *duct.Use, c *shop.Collector, value func(*duct.Result) (float64, source.Reason)) Expected {
	u := otherwise
	if r.Use != "" {
		if u = p.Air.FindUse(r.Use); u == nil {
			return Expected{Why: notThere}
		}
	}
	if u == nil {
		return Expected{Why: noUse}
	}
	results := u.On(c)
	if len(results) == 0 {
		return Expected{Why: notDrawn}
	}
	e := Expected{Why: noState}
	for _, at := range results {
		if !wanted(r.Filter, at.Filter) {
			continue
		}
		if !at.OnCurve {
			return Expected{Why: at.Why.Causing("off-in-use")}
		}
		x, why := value(at)
		if why.Is() {
			return Expected{Why: why}
		}
		if x = unit.Six(x); e.Known() {
			e.Band = e.Add(x)
		} else {
			e = Expected{Band: duct.Band{Low: x, High: x}}
		}
	}
	return e
}

// wanted reports whether a result's state of the filter is one that a
// reading's may be.
func wanted(reading, result string) bool {
	switch {
	case result == duct.NoFilter, reading == "", reading == "used":
		return true
	}
	return reading == result
}

// ownerOf is the use that a stretch shows without being told: that of the one
// machine whose own duct it is.
func (p *Plan) ownerOf(s *shop.Stretch) *duct.Use {
	if duct.Shared(s) {
		return nil
	}
	var owner *duct.Use
	for _, m := range p.Shop.Machines {
		for _, port := range m.Ports {
			for _, at := range port.Path() {
				if at != s {
					continue
				}
				if owner != nil && owner.Machines[0] != m {
					return nil // a movable end: it may stand at any of them
				}
				owner = p.Air.Alone(m)
			}
		}
	}
	return owner
}

// Outcome is how a measured value stands to what was expected.
type Outcome uint8

// The outcomes. What is given in the shop file and no text is not judged.
const (
	NotJudged Outcome = iota
	Agrees            // within the share that the data of commissioning gives
	Over
	Under
	TooLow  // below the least it must not be below, whatever was expected
	Same    // of a text
	Differs // of a text
)

// Judge holds a measured value against what is expected.
func (e Expected) Judge(q record.Quantity) Outcome {
	switch {
	case !e.Known():
		return NotJudged
	case e.Text != "" && q.Text == e.Text:
		return Same
	case e.Text != "":
		return Differs
	case e.Given || q.Kind == 0:
		return NotJudged
	case e.Least > 0 && unit.Compare(q.SI, e.Least) < 0:
		return TooLow
	case e.Agrees(q.SI):
		return Agrees
	case e.Off(q.SI) > 0:
		return Over
	}
	return Under
}

// One reports whether one value is expected, not a band.
func (e Expected) One() bool { return e.Known() && e.Text == "" && unit.Compare(e.Low, e.High) == 0 }
