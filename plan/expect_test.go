package plan_test

import (
	"math"
	"strings"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// proofShop has a main with two machines, taps, a gate, a trigger, a sensor,
// and figures of its own for what the plan does not reckon.
const proofShop = `
[shop]
name = "Proof"
[[collector]]
name = "Cyclone"
inlet = "8 in"
fan_curve = [["0 cfm", "11.5 inwg"], ["1200 cfm", "8.2 inwg"], ["1600 cfm", "4.9 inwg"]]
separator = { kind = "cyclone", loss = "2 inwg", at = "1000 cfm" }
filter = { clean = "0.5 inwg", change = "2.5 inwg", at = "1000 cfm" }
run_up = "3 s"
bonded = "2 ohm"
[[machine]]
name = "Saw"
kind = "table saw"
coast = "12 s"
noise = "92 dBA"
port = { name = "cabinet", size = "4 in", flow = "350 cfm" }
[[machine]]
name = "Planer"
kind = "planer"
port = { name = "hood", size = "6 in", flow = "785 cfm" }
[[machine]]
name = "Lathe"
kind = "lathe"
port = { name = "scoop", size = "4 in", flow = "350 cfm" }
[[duct]]
name = "Main"
to = "Cyclone"
size = "8 in"
length = "30 ft"
bonded = "3 ohm"
[[duct]]
name = "Saw drop"
to = "Main"
size = "5 in"
length = "10 ft"
serves = ["Saw"]
[[duct]]
name = "Planer drop"
to = "Main"
joins = "20 ft"
size = "6 in"
length = "10 ft"
serves = ["Planer"]
[[gate]]
name = "Saw gate"
on = "Saw drop"
travel = "0.8 s"
open_stop = "4 mm"
[[gate]]
name = "Planer gate"
on = "Planer drop"
[[tap]]
name = "Main tap"
on = "Main"
at = "25 ft"
[[tap]]
name = "Saw tap"
on = "Saw drop"
at = "5 ft"
[[trigger]]
name = "Saw running"
senses = "current"
machine = "Saw"
threshold = "2.5 A"
opens = ["Saw gate"]
starts = "Cyclone"
start_delay = "1 s"
run_on = "8 s"
[[sensor]]
name = "Filter gauge"
senses = "filter pressure"
high = "2.5 inwg"
[[use]]
name = "Both"
machines = ["Saw", "Planer"]
[[revision]]
mark = "A"
date = 2026-11-24
`

func planOf(t *testing.T, text string, records []*record.Record, asOf entry.Date) *plan.Plan {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(s, records, asOf)
}

// result is a use's result on the cyclone.
func result(t *testing.T, p *plan.Plan, use, filter string) *duct.Result {
	t.Helper()
	for _, r := range p.Air.FindUse(use).Results {
		if r.Filter == filter {
			return r
		}
	}
	t.Fatalf("no result of %s with the filter %s", use, filter)
	return nil
}

// Every expected value is the one of the use and state of the filter that the
// reading names.
func TestExpectAir(t *testing.T) {
	p := planOf(t, proofShop, nil, entry.Date{})
	stretch := func(r *duct.Result, name string) *duct.StretchResult {
		for i := range r.Stretches {
			if r.Stretches[i].Stretch.Name() == name {
				return &r.Stretches[i]
			}
		}
		t.Fatalf("no stretch %s", name)
		return nil
	}
	clean, due, both := result(t, p, "Saw", duct.Clean), result(t, p, "Saw", duct.ChangeOut), result(t, p, "Both", duct.Clean)
	tap := func(r *duct.Result, name string) float64 {
		for _, at := range p.Shop.Taps {
			if at.Name == name {
				x, known := p.Air.Suction(r, at.On, at.Where)
				if !known {
					t.Errorf("%s is not known", name)
				}
				return float64(x)
			}
		}
		return math.NaN()
	}
	for _, c := range []struct {
		of, at, use, filter string
		low, high           float64
	}{
		{"hood pressure", "Saw/cabinet", "", "clean", float64(clean.Ports[0].Hood), float64(clean.Ports[0].Hood)},
		{"hood pressure", "Saw/cabinet", "Saw", "change-out", float64(due.Ports[0].Hood), float64(due.Ports[0].Hood)},
		{"hood pressure", "Saw/cabinet", "", "", float64(due.Ports[0].Hood), float64(clean.Ports[0].Hood)},
		{"hood pressure", "Saw/cabinet", "", "used", float64(due.Ports[0].Hood), float64(clean.Ports[0].Hood)},
		{"hood pressure", "Saw/cabinet", "Both", "clean", float64(both.Ports[0].Hood), float64(both.Ports[0].Hood)},
		{"flow", "Saw/cabinet", "", "clean", float64(clean.Ports[0].Flow), float64(clean.Ports[0].Flow)},
		{"velocity", "Saw/cabinet", "", "clean", float64(clean.Ports[0].PortSpeed()), float64(clean.Ports[0].PortSpeed())},
		{"flow", "Saw drop", "", "clean", float64(stretch(clean, "Saw drop").Flow), float64(stretch(clean, "Saw drop").Flow)},
		{"velocity", "Main 2", "Both", "clean", float64(stretch(both, "Main 2").Velocity), float64(stretch(both, "Main 2").Velocity)},
		{"velocity", "Main 1", "", "clean", float64(stretch(clean, "Main 1").Velocity), float64(stretch(clean, "Main 1").Velocity)}, // the saw's alone
		{"tap pressure", "Main tap", "Saw", "clean", tap(clean, "Main tap"), tap(clean, "Main tap")},
		{"tap pressure", "Saw tap", "", "clean", tap(clean, "Saw tap"), tap(clean, "Saw tap")},
		{"flow", "Cyclone", "Both", "clean", float64(both.Flow), float64(both.Flow)},
		{"velocity", "Cyclone", "Both", "clean", float64(both.InletSpeed()), float64(both.InletSpeed())},
		{"fan pressure", "Cyclone", "Saw", "", float64(clean.Static), float64(due.Static)},
		{"filter pressure", "Cyclone", "Saw", "clean", float64(clean.FilterGauge()), float64(clean.FilterGauge())},
		{"filter pressure", "Filter gauge", "Saw", "clean", float64(clean.FilterGauge()), float64(clean.FilterGauge())},
		{"separator pressure", "Cyclone", "Saw", "clean", float64(p.Air.SeparatorGauge(clean)), float64(p.Air.SeparatorGauge(clean))},
	} {
		e := p.Expect(record.Reading{Of: c.of, At: c.at, Use: c.use, Filter: c.filter})
		if !e.Known() || e.Low != c.low || e.High != c.high || e.Given || e.Low == 0 {
			t.Errorf("%s at %s in %q, filter %q: %+v, want %g to %g", c.of, c.at, c.use, c.filter, e, c.low, c.high)
		}
	}
}

func TestExpectGiven(t *testing.T) {
	p := planOf(t, proofShop, nil, entry.Date{})
	for _, c := range []struct {
		of, at string
		want   float64
	}{
		{"time", "Saw gate", 0.8}, {"time", "Saw", 12}, {"time", "Cyclone", 3}, {"threshold", "Saw running", 2.5}, {"start delay", "Saw running", 1},
		{"run-on", "Saw running", 8}, {"resistance", "Main", 3}, {"resistance", "Cyclone", 2}, {"sound level", "Saw", 92},
	} {
		if e := p.Expect(record.Reading{Of: c.of, At: c.at}); !e.Known() || !e.Given || e.Low != c.want || e.High != c.want {
			t.Errorf("%s at %s: %+v, want %g", c.of, c.at, e, c.want)
		}
	}
	if e := p.Expect(record.Reading{Of: "open stop", At: "Saw gate"}); e.Text != "4 mm" {
		t.Errorf("%+v", e)
	}
}

func TestExpectNothing(t *testing.T) {
	p := planOf(t, proofShop, nil, entry.Date{})
	for _, c := range []struct{ of, at, use, filter, why string }{
		{"hood pressure", "Planer/hood", "Saw", "", "its machine does not run in this use"},
		{"hood pressure", "Lathe/scoop", "", "", "no duct serves it"},
		{"hood pressure", "Gone/hood", "", "", "the shop file does not have it any more"},
		{"hood pressure", "Saw/cabinet", "Gone", "", "the shop file does not have it any more"},
		{"velocity", "Main", "Saw", "", "say which stretch, Main 1 to Main 2"},
		{"velocity", "Main 2", "", "", "say which use ran"},
		{"tap pressure", "Main tap", "", "", "say which use ran"},
		{"tap pressure", "Main tap", "Duct off", "", "this use does not draw on its collector"},
		{"velocity", "Main 2", "Duct off", "", "this use does not draw on its collector"},
		{"tap pressure", "Gone tap", "Saw", "", "the shop file does not have it any more"},
		{"filter pressure", "Cyclone", "", "", "say which use ran"},
		{"hood pressure", "Saw/cabinet", "", "none", "the plan has no figure for this state of the filter"},
		{"current", "Saw", "", "", "the plan has no figure for it"},
		{"voltage", "Saw gate", "", "", "the plan has no figure for it"},
		{"time", "Planer gate", "", "", "the plan has no figure for it"},
		{"open stop", "Planer gate", "", "", "the plan has no figure for it"},
		{"duct pressure", "Main", "Saw", "", "the plan has no figure for it"},
		{"nonsense", "Main", "Saw", "", "the shop file does not have it any more"},
	} {
		if e := p.Expect(record.Reading{Of: c.of, At: c.at, Use: c.use, Filter: c.filter}); e.Why.String() != c.why {
			t.Errorf("%s at %s in %q: %q, want %q", c.of, c.at, c.use, e.Why, c.why)
		}
	}
	choose := strings.Replace(proofShop, "size = \"8 in\"", "size = \"choose\"", 1)
	if e := planOf(t, choose, nil, entry.Date{}).Expect(record.Reading{Of: "hood pressure", At: "Saw/cabinet"}); e.Why.String() != "the plan has none in this use: the size of Main is still to be chosen" {
		t.Errorf("%q", e.Why)
	}
}

// A reading agrees up to the share of the data and not beyond it, and never
// where less than the need is shown.
func TestJudge(t *testing.T) {
	p := planOf(t, proofShop, nil, entry.Date{})
	e := p.Expect(record.Reading{Of: "hood pressure", At: "Saw/cabinet", Filter: "clean"})
	if e.Least <= 0 || e.Least >= 0.9*e.Low {
		t.Fatalf("the need shows %g Pa of %g", e.Least, e.Low)
	}
	of := func(x float64) record.Quantity {
		q := record.Quantity{SI: x, Text: "x"}
		m, _ := record.FindMeasure("hood pressure")
		q.Kind = m.Kind
		return q
	}
	for _, c := range []struct {
		x    float64
		want plan.Outcome
	}{
		{e.Low, plan.Agrees}, {1.1 * e.Low, plan.Agrees}, {1.101 * e.Low, plan.Over}, {0.9 * e.Low, plan.Agrees}, {0.899 * e.Low, plan.Under},
		{e.Least, plan.Under}, {0.999 * e.Least, plan.TooLow}, {-e.Low, plan.TooLow},
	} {
		if got := e.Judge(of(c.x)); got != c.want {
			t.Errorf("%g Pa of %g: %v, want %v", c.x, e.Low, got, c.want)
		}
	}
	if got := p.Expect(record.Reading{Of: "hood pressure", At: "Lathe/scoop"}).Judge(of(1)); got != plan.NotJudged {
		t.Errorf("where nothing is expected: %v", got)
	}
	if got := p.Expect(record.Reading{Of: "time", At: "Saw gate"}).Judge(of(9)); got != plan.NotJudged {
		t.Errorf("against the shop file's own figure: %v", got)
	}
	stop := p.Expect(record.Reading{Of: "open stop", At: "Saw gate"})
	if stop.Judge(record.Quantity{Text: "4 mm"}) != plan.Same || stop.Judge(record.Quantity{Text: "5 mm"}) != plan.Differs {
		t.Error("a text is judged wrongly")
	}
}

// The plan is as of the latest revision or record, and leaves out what comes
// after the day it is told.
func TestRecordsUntilTheDay(t *testing.T) {
	day := func(m, d int) entry.Date { return entry.Date{Year: 2026, Month: m, Day: d} }
	records := []*record.Record{{Kind: "service", Date: day(11, 1)}, {Kind: "service", Date: day(12, 24)}}
	for _, c := range []struct {
		records []*record.Record
		told    entry.Date
		want    entry.Date
		kept    int
	}{
		{nil, entry.Date{}, day(11, 24), 0},
		{records[:1], entry.Date{}, day(11, 24), 1},
		{records, entry.Date{}, day(12, 24), 2},
		{records, day(12, 24), day(12, 24), 2},
		{records, day(12, 23), day(12, 23), 1},
		{records, day(10, 31), day(10, 31), 0},
	} {
		p := planOf(t, proofShop, c.records, c.told)
		if p.AsOf != c.want || len(p.Records) != c.kept {
			t.Errorf("told %v: as of %v with %d records, want %v with %d", c.told, p.AsOf, len(p.Records), c.want, c.kept)
		}
	}
}

// A name that the shop does not have is a problem of a record that is not
// older than the shop's newest revision.
func TestCheckRecords(t *testing.T) {
	s, _ := shop.Read("shop.toml", []byte(proofShop))
	read := func(date string) *record.Record {
		r, problems := record.Read("records/"+date+"-service-1.toml", []byte("kind = \"service\"\ndate = "+date+"\n[[reading]]\nof = \"open stop\"\nat = \"Gone gate\"\nvalue = \"4 mm\"\n"))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		return r
	}
	for date, want := range map[string]int{"2026-11-23": 0, "2026-11-24": 1, "2026-12-01": 1} {
		if got := plan.CheckRecords(s, []*record.Record{read(date)}); len(got) != want {
			t.Errorf("%s: %v", date, got)
		}
	}
}

func TestNames(t *testing.T) {
	s, _ := shop.Read("shop.toml", []byte(proofShop))
	n := plan.Names(s)
	for what, c := range map[string][2]string{
		"ports":      {strings.Join(n.Ports, ","), "Saw/cabinet,Planer/hood,Lathe/scoop"},
		"ducts":      {strings.Join(n.Ducts, ","), "Main,Main 1,Main 2,Saw drop,Planer drop"},
		"gates":      {strings.Join(n.Gates, ","), "Saw gate,Planer gate"},
		"taps":       {strings.Join(n.Taps, ","), "Main tap,Saw tap"},
		"devices":    {strings.Join(n.Devices, ","), "Saw gate,Planer gate,Saw running,Filter gauge"},
		"collectors": {strings.Join(n.Collectors, ","), "Cyclone"},
		"filters":    {strings.Join(n.Filters, ","), "Cyclone"},
		"uses":       {strings.Join(n.Uses, ","), "Saw,Planer,Lathe,Both,Everything shut,Everything open,Duct off"},
	} {
		if c[0] != c[1] {
			t.Errorf("%s: %s, want %s", what, c[0], c[1])
		}
	}
}
