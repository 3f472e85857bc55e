package main

import (
	"math"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/export"
	"dustbook/plan/record"
	"dustbook/plan/unit"
)

// row is a reading in the table of what was measured.
func (m measured) row(units unit.System) []string {
	name := m.Of + " at " + m.At
	if m.Use != "" {
		name += " in " + m.Use
	}
	got := m.Value.Text
	if m.Value.Foreign(units) {
		got += " (" + m.of.Print(units, m.Value.SI) + ")"
	}
	e := m.expected
	switch {
	case !e.Known():
		return []string{name, got, "-", "-", e.Why.String()}
	case e.Text != "":
		return []string{name, got, e.Text, "-", m.word()}
	}
	want := m.of.Print(units, e.Low)
	if !e.One() {
		want = m.of.Figure(units, e.Low) + " to " + m.of.Print(units, e.High)
	}
	return []string{name, got, want, m.difference(units), m.word()}
}

// difference is how far a value lies off, with its share.
func (m measured) difference(units unit.System) string {
	off, share := m.expected.Off(m.Value.SI), m.expected.Share(m.Value.SI)
	sign := "+"
	if off < 0 {
		sign = "-"
	}
	text := m.of.Figure(units, math.Abs(off))
	if off != 0 {
		text = sign + text
	}
	if off != 0 && !math.IsInf(share, 0) {
		text += ", " + sign + unit.Fixed(100*math.Abs(share), 0) + " %"
	}
	return text
}

// leastWords say what a reading must not be below.
var leastWords = map[plan.Least]string{plan.PortNeed: "what the port needs", plan.NeedShown: "what its need would show", plan.DustCarried: "what carries the dust"}

// word says how a reading stands.
func (m measured) word() string {
	switch m.expected.Judge(m.Value) {
	case plan.Agrees:
		return "agrees"
	case plan.Over:
		return "over"
	case plan.Under:
		return "under"
	case plan.TooLow:
		return "below " + leastWords[m.expected.LeastOf]
	case plan.Same:
		return "the same"
	case plan.Differs:
		return "differs"
	}
	if m.expected.Given {
		return "by the shop file"
	}
	return ""
}

// advice is what to do about readings that are off, each said once.
func advice(readings []measured) []string {
	agree, _ := duct.ProofFigure("agree")
	over, under, other := false, false, false
	for _, m := range readings {
		out := m.expected.Judge(m.Value)
		tap := m.Of == "tap pressure"
		over = over || tap && out == plan.Over
		under = under || tap && out == plan.Under
		other = other || !tap && (out == plan.Over || out == plan.Under || out == plan.TooLow)
	}
	var list []string
	if over {
		list = append(list, "A tap over its mark: something is shut or plugged upstream of it. Look there, and read it again.")
	}
	if under {
		list = append(list, "A tap under its mark: more is open upstream, or the fan side is weak. A second reading decides: at the fan, or at the next tap.")
	}
	if other {
		list = append(list, "Off by more than "+unit.Short(agree)+" %, or too low: check the gates that are open and the filter, look at the hose of the gauge, and read it again.")
	}
	return list
}

// measureJSON is what measure --json prints.
type measureJSON struct {
	Format   string         `json:"format"`
	Record   string         `json:"record"`
	Kind     string         `json:"kind"`
	Date     string         `json:"date"`
	Role     string         `json:"role"`
	Note     string         `json:"note"`
	Readings []measuredJSON `json:"readings"`
}

// measuredJSON is a reading. Values are in the SI unit named; they are null
// for a text, and where nothing is expected.
type measuredJSON struct {
	Of           string  `json:"of"`
	At           string  `json:"at"`
	Use          string  `json:"use"`
	Filter       string  `json:"filter"`
	With         string  `json:"with"`
	Text         string  `json:"text"`
	Unit         string  `json:"unit"`
	Value        *number `json:"value"`
	ExpectedLow  *number `json:"expected_low"`
	ExpectedHigh *number `json:"expected_high"`
	ExpectedText string  `json:"expected_text"`
	Difference   *number `json:"difference"`
	Verdict      string  `json:"verdict"`
	Why          string  `json:"why"`
}

// number is a number in SI units, in its shortest form of six significant
// digits.
type number float64

// MarshalJSON writes the number.
func (n number) MarshalJSON() ([]byte, error) { return []byte(unit.Short(float64(n))), nil }

func (p *program) measuredJSON(file string, rec *record.Record, readings []measured) error {
	doc := measureJSON{Format: "dustbook-measure/1", Record: file, Kind: rec.Kind, Date: rec.Date.String(), Role: rec.Role, Note: rec.Note, Readings: []measuredJSON{}}
	for _, m := range readings {
		row := measuredJSON{Of: m.Of, At: m.At, Use: m.Use, Filter: m.Filter, With: m.With, Text: m.Value.Text, Unit: m.of.SIUnit(), Verdict: m.word(), Why: m.expected.Why.String()}
		if m.of.Kind != 0 {
			row.Value = point(m.Value.SI)
		}
		if e := m.expected; e.Text != "" {
			row.ExpectedText = e.Text
		} else if e.Known() {
			row.ExpectedLow, row.ExpectedHigh, row.Difference = point(e.Low), point(e.High), point(e.Off(m.Value.SI))
		}
		doc.Readings = append(doc.Readings, row)
	}
	data, err := export.JSON(doc)
	p.result.Write(data)
	return err
}

func point(x float64) *number {
	n := number(x)
	return &n
}
