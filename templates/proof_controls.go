package templates

import (
	"slices"

	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// controlsView is the sheet of the controls.
type controlsView struct {
	Triggers  []triggerProof
	Two       string // two machines to run together
	Gates     bool   // there are gates that a trigger opens
	Stops     []stopProof
	ByHand    []string // collectors that no trigger starts
	Sensors   []sensorProof
	Restarts  []string // machines that come back by themselves
	PowerCut  string
	ByItself  bool
	Lockout   string
	Purge     string // where its button is; empty where there is none
	AllFans   string
	NoControl bool
	Fill      fillView
}

type triggerProof struct {
	Name, Machine, Senses, Threshold string
	Opens, Starts                    []string
	StartDelay, RunOn                string
	Start, Run                       blank
}

type stopProof struct {
	Name  string
	Stops []string
}

type sensorProof struct{ Name, Senses, High, VeryHigh string }

// controlsVerdict says what there is to prove.
func (b *Book) controlsVerdict() Verdict {
	n := len(b.Plan.Shop.Triggers)
	if n == 0 {
		return Verdict{Words: []Word{{"blank", b.words.Text("controls.by-hand-b")}}, Says: b.words.Text("controls.the-shop-file-has-no-b"), Do: b.words.Text("controls.prove-the-stop-and-what")}
	}
	return Verdict{Words: []Word{{"blank", b.words.Text("controls.to-prove")}}, Says: b.words.Count("controls.to-be-seen", n), Do: b.words.Text("controls.one-person-at-the-machine")}
}

func (b *Book) controlsView() controlsView {
	s := b.Plan.Shop
	v := controlsView{PowerCut: b.notGiven(), Lockout: b.notGiven(), NoControl: len(s.Triggers) == 0}
	if s.Control.AfterPowerCut.Known() {
		v.PowerCut, v.ByItself = s.Control.AfterPowerCut.V, b.Plan.Control.RestartsByItself()
	}
	if s.Control.Lockout.Known() {
		v.Lockout = s.Control.Lockout.V
	}
	v.Purge = s.Control.Purge.V
	for _, t := range s.Triggers {
		v.Triggers = append(v.Triggers, b.triggerProof(t))
		v.Gates = v.Gates || len(t.Opens) > 0
	}
	v.Two = b.twoTogether()
	var fans []string
	for _, c := range s.Collectors {
		fans = append(fans, c.Name)
		if !slices.ContainsFunc(s.Triggers, func(t *shop.Trigger) bool { return slices.Contains(t.Starts, c) }) {
			v.ByHand = append(v.ByHand, c.Name)
		}
	}
	v.AllFans = b.list(fans)
	for _, stop := range s.Stops {
		row := stopProof{Name: stop.Name}
		for _, c := range stop.Collectors {
			row.Stops = append(row.Stops, c.Name)
		}
		for _, m := range stop.Machines {
			row.Stops = append(row.Stops, m.Name)
		}
		v.Stops = append(v.Stops, row)
	}
	for _, m := range s.Machines {
		if m.Restarts.V {
			v.Restarts = append(v.Restarts, m.Name)
		}
	}
	for _, x := range s.Sensors {
		v.Sensors = append(v.Sensors, b.sensorProof(x))
	}
	var groups []string
	if len(v.Triggers) > 0 {
		groups = append(groups, byWatch)
	}
	v.Fill = b.fillView("commissioning-controls.html", groups...)
	return v
}

func (b *Book) triggerProof(t *shop.Trigger) triggerProof {
	row := triggerProof{Name: t.Name, Senses: t.Senses, Machine: "—", StartDelay: b.delay(t.StartDelay), RunOn: b.delay(t.RunOn)}
	if times := b.Plan.Times.Of(t); times != nil {
		row.StartDelay = b.setOrReckoned(times.Delay.Set, times.Delay.Used, len(times.Delay.Missing) == 0 && len(t.Starts) > 0)
		row.RunOn = b.setOrReckoned(times.RunOn.Set, times.RunOn.Used, len(times.RunOn.Missing)+len(times.RunOn.Unsolved) == 0 && len(t.Starts) > 0)
	}
	if t.Machine != nil {
		row.Machine = t.Machine.Name
	}
	if t.Threshold.Known() {
		row.Threshold = unit.Amps.Print(b.units, t.Threshold.V)
	}
	row.Start = b.timeBlank("start delay", t)
	row.Run = b.timeBlank("run-on", t)
	for _, g := range t.Opens {
		row.Opens = append(row.Opens, g.Name)
	}
	for _, c := range t.Starts {
		row.Starts = append(row.Starts, c.Name)
	}
	return row
}

// setOrReckoned is a time as the file sets it, or the least that is reckoned where
// it sets none and nothing is missing for it.
func (b *Book) setOrReckoned(set shop.Field[unit.Time], used unit.Time, known bool) string {
	if set.Known() || !known {
		return b.delay(set)
	}
	return b.words.Text("controls.reckoned", b.seconds(used))
}

// timeBlank is the blank of a time of a trigger, with what the plan expects.
func (b *Book) timeBlank(of string, t *shop.Trigger) blank {
	r := record.Reading{Of: of, At: t.Name}
	expected := ""
	if e := b.Plan.Expect(r); e.Known() {
		m, _ := record.FindMeasure(of)
		expected = m.Figure(b.units, e.Low)
	}
	return b.blankFor(r, expected)
}

// sensorProof is a sensor with its levels; the second is empty where it is not
// given.
func (b *Book) sensorProof(x *shop.Sensor) sensorProof {
	row := sensorProof{Name: x.Name, Senses: x.Senses, High: b.level(x.High)}
	if x.VeryHigh.Press.Known() || x.VeryHigh.Text != "" {
		row.VeryHigh = b.level(x.VeryHigh)
	}
	return row
}

// twoTogether names two triggers that start the same collector for different
// machines, for the test of two at once; empty where there are no such.
func (b *Book) twoTogether() string {
	triggers := b.Plan.Shop.Triggers
	for i, a := range triggers {
		for _, other := range triggers[i+1:] {
			if a.Machine == other.Machine {
				continue
			}
			for _, c := range a.Starts {
				if slices.Contains(other.Starts, c) {
					return b.list([]string{whose(a), whose(other)})
				}
			}
		}
	}
	return ""
}

// whose is the machine of a trigger, or the trigger that has none.
func whose(t *shop.Trigger) string {
	if t.Machine == nil {
		return t.Name
	}
	return t.Machine.Name
}

// level is a level of a sensor in words.
func (b *Book) level(l shop.Level) string {
	switch {
	case l.Press.Known():
		return unit.Press.Print(b.units, l.Press.V)
	case l.Text != "":
		return l.Text
	}
	return b.notGiven()
}
