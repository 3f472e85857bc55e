package templates

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// cardView is a machine's card: for whoever runs it, gloves on, two metres
// away.
type cardView struct {
	Verdict   Verdict
	Stopper   string     // the stop button on the way out, by name
	ByItself  []cardGate // gates that a trigger of the machine opens
	Open      []cardGate // gates that whoever runs it opens
	Many      bool       // more gates than fit in large type
	Fit       string     // the class of its type, by how much stands on it
	Driven    bool       // a trigger of the machine opens or starts something
	Start     []string   // steps in order
	End       []string
	Lockout   string
	Hoses     []string
	Collector []string
	Gauges    []cardGauge
	Never     []string
	Makes     string
	Room      string
	Use       string
	Stop      string // why it must not run, where a finding says stop
	StopDo    string
	Bin       []string
}

// mostLarge is how many gates of a box stand in large type.
const mostLarge = 3

// cardGate is a gate on a card, with a word on why.
type cardGate struct {
	Name string
	Why  string
}

// cardGauge is the pressure to expect at a port's hood.
type cardGauge struct {
	Port, Low, High, Unit string
	LowAt, HighAt         string // places on the scale, 0 to 200
	Top                   string
}

// addCards adds a card for each machine and a sign for each collector's
// switch.
func (b *Book) addCards() {
	for _, m := range b.Plan.Shop.Machines {
		for _, u := range b.Plan.Air.Uses {
			if u.Kind == duct.OneMachine && u.Machines[0] == m {
				v := b.cardView(m, u)
				v.Verdict = b.useVerdict("machine", u).short()
				v.Fit = fit(v.height())
				b.add(&Sheet{Part: partMachines, Path: b.Path("card", m.Name), Title: m.Name, Kind: "card", Lede: "Gates, order and limits for whoever runs it. Trained users only.",
					Verdict: v.Verdict, name: "card.html", view: func() any { return v }})
			}
		}
	}
	b.addSigns()
}

// short keeps the words of a verdict and leaves the sentence to the sheet of
// the use.
func (v Verdict) short() Verdict {
	for _, w := range v.Words {
		if w.Class != "met" {
			return Verdict{Words: v.Words, Says: v.Do}
		}
	}
	return Verdict{Words: v.Words, Says: "By the plan. The gauge has to say so too."}
}

func (b *Book) cardView(m *shop.Machine, u *duct.Use) cardView {
	v := cardView{Use: b.Path("use", m.Name), Never: neverInto(m), Makes: m.Makes}
	if m.Room != nil {
		v.Room = m.Room.Name
	}
	b.cardGates(&v, m, u)
	v.Many = max(len(v.ByItself), len(v.Open)) > mostLarge
	b.cardOrder(&v, m, u)
	for _, p := range m.Ports {
		if p.Duct != nil && p.Duct.Movable() {
			v.Hoses = append(v.Hoses, "Put the hose of "+p.Duct.Name+" on "+p.Full()+". One machine at a time.")
		}
	}
	for _, c := range u.Collectors(b.Plan.Shop) {
		v.Collector = append(v.Collector, c.Name)
		if c.Bin != nil {
			v.Bin = append(v.Bin, "Look how full the "+c.Bin.Called+" of "+c.Name+" is before you start.")
		}
	}
	b.cardStop(&v, m, u)
	v.Gauges = b.gauges(u)
	return v
}

// gauges is the band of hood pressures between the filter clean and due.
func (b *Book) gauges(u *duct.Use) []cardGauge {
	var list []cardGauge
	for i := range u.Results[0].Ports {
		low, high := unit.Pressure(0), unit.Pressure(0)
		for _, r := range u.Results {
			if i >= len(r.Ports) || !r.OnCurve || r.Ports[i].Hood == 0 || r.Collector != u.Results[0].Collector {
				continue
			}
			p := r.Ports[i].Hood
			if low == 0 || p < low {
				low = p
			}
			high = max(high, p)
		}
		if high == 0 {
			continue
		}
		top := scaleTop(unit.Press.In(b.units, high))
		at := func(p unit.Pressure) string { return unit.Fixed(200*unit.Press.In(b.units, p)/top, 1) }
		list = append(list, cardGauge{
			Port: u.Results[0].Ports[i].Port.Full(), Low: unit.Press.Figure(b.units, low), High: unit.Press.Figure(b.units, high), Unit: unit.Press.Unit(b.units),
			LowAt: at(low), HighAt: at(high), Top: unit.Short(top),
		})
	}
	return list
}

// scaleTop is a round figure above a value, for the end of a scale.
func scaleTop(x float64) float64 {
	for _, top := range []float64{1, 2, 4, 6, 8, 10, 15, 20, 30, 50, 100, 200, 500, 1000, 1500, 2000, 3000, 5000, 10000} {
		if unit.Six(x) <= 0.85*top {
			return top
		}
	}
	return x * 1.2
}

// neverInto lists what must not go into the machine's duct.
func neverInto(m *shop.Machine) []string {
	if m.Makes == "metal" {
		return []string{"wood dust", "rags", "solvent", "anything that still glows"}
	}
	return []string{"metal", "sparks", "wet or painted stock", "rags", "cigarette ends"}
}
