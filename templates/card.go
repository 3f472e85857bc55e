package templates

import (
	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// cardView is a machine's card: for whoever runs it, gloves on, two metres
// away.
type cardView struct {
	Verdict  Verdict
	Stopper  string     // the stop button on the way out, by name
	ByItself []cardGate // gates that a trigger of the machine opens
	Open     []cardGate // gates that whoever runs it opens
	Many     bool       // more gates than fit in large type
	Driven   bool       // a trigger of the machine opens or starts something
	Start    []string   // steps in order
	End      []string
	Lockout  string
	With     string // which one other machine may run beside it
	Hoses    []string
	Gauges   []cardGauge
	Never    []string
	Wear     []string
	Cut      string // the heaviest cut, where a cut can be too heavy
	Use      string
	FirstDay string
	Stop     string // why it must not run, where a finding says stop
	StopDo   string
	Bin      []string
	Who      string // who may use it
	Code     *code

	Unchecked bool // its translation
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

// cardFrame is what a card has beside a sheet's frame: the class of its type,
// by how much stands on it, and its code.
type cardFrame struct {
	Fit  string
	Code *code
}

// addCards adds a card for each machine, a sign for each collector's switch, a
// card for each gate, and the sheets of all of them for the printer; in the
// languages of the shop.
func (b *Book) addCards() {
	for _, language := range languages(b.Plan.Shop.Language) {
		in := *b
		in.words = content.WordsIn(language)
		in.Sheets = nil
		if b.Plan.Shop.Language == "both" && language == content.Spanish {
			in.prefix = "es-"
		}
		in.machineCards()
		in.addSigns()
		in.addGateCards()
		for _, s := range in.Sheets {
			s.Language = language
			b.add(s)
		}
	}
	b.addAllCards()
}

// languages are those that cards and signs are printed in.
func languages(word string) []string {
	switch word {
	case "es":
		return []string{content.Spanish}
	case "both":
		return []string{content.English, content.Spanish}
	}
	return []string{content.English}
}

// unchecked reports whether the translation of a thing's card has not been
// read by a fluent speaker, by the records. Any other words of a record about
// it, as of a fault found, do not count.
func (b *Book) unchecked(name string) bool {
	if b.words.Language() == content.English {
		return false
	}
	m, _ := record.FindMeasure("wording")
	unchecked := true // until the newest record about it says so
	for _, r := range b.Plan.Records {
		for _, reading := range r.Readings {
			if reading.Of == m.Word && reading.At == name {
				unchecked = reading.Value.Text != m.Example
			}
		}
	}
	return unchecked
}

// machineCards adds the cards of the machines.
func (b *Book) machineCards() {
	for _, m := range b.Plan.Shop.Machines {
		for _, u := range b.Plan.Air.Uses {
			if u.Kind == duct.OneMachine && u.Machines[0] == m {
				v := b.cardView(m, u)
				v.Verdict = b.slowOnCard(b.short(b.useVerdict(u)), u)
				v.Code = b.codeFor(b.prefix + b.Path("card", m.Name))
				v.Unchecked = b.unchecked(m.Name)
				b.add(&Sheet{Part: partMachines, Path: b.prefix + b.Path("card", m.Name), Title: m.Name, Kind: "card", Lede: v.Who,
					Verdict: v.Verdict, Card: &cardFrame{fit(v.height()), v.Code}, name: "card.html", view: func() any { return v }})
			}
		}
	}
}

// short keeps the words of a verdict and leaves the sentence to the sheet of
// the use.
func (b *Book) short(v Verdict) Verdict {
	for _, w := range v.Words {
		if w.Class != "met" {
			return Verdict{Words: v.Words, Says: v.Do, Language: v.Language}
		}
	}
	return Verdict{Words: v.Words, Says: b.words.Text("card.by-plan")}
}

func (b *Book) cardView(m *shop.Machine, u *duct.Use) cardView {
	v := cardView{Use: b.Path("use", m.Name), FirstDay: b.Path("first day", ""), Never: b.neverInto(m), Wear: b.gearOf(m), Cut: b.cutLimit(m), Who: b.whoMayUse(m)}
	b.cardGates(&v, m, u)
	v.Many = max(len(v.ByItself), len(v.Open)) > mostLarge
	b.cardOrder(&v, m, u)
	b.cardWith(&v, m)
	for _, p := range m.Ports {
		if p.Duct != nil && p.Duct.Movable() {
			v.Hoses = append(v.Hoses, b.words.Text("card.hose", p.Duct.Name, p.Full()))
		}
	}
	for _, c := range u.Collectors(b.Plan.Shop) {
		if c.Bin != nil {
			v.Bin = append(v.Bin, b.binOnCard(m, c))
		}
	}
	b.cardStop(&v, m, u)
	v.Gauges = b.gauges(u)
	return v
}

// cutLimit is the heaviest cut that the file gives; empty where no cut of the
// machine is too heavy for its duct.
func (b *Book) cutLimit(m *shop.Machine) string {
	switch {
	case m.Cut != nil:
		return b.words.Text("card.cut-is", unit.Size.Print(b.units, m.Cut.Width), unit.Depth.Print(b.units, m.Cut.Depth), unit.Feed.Print(b.units, m.Cut.Feed))
	case cuts(m):
		return b.words.Text("card.cut-blank")
	}
	return ""
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
func (b *Book) neverInto(m *shop.Machine) []string {
	keys := []string{"metal", "sparks", "wet", "rags", "cigarettes"}
	if m.Makes == "metal" {
		keys = []string{"wood-dust", "rags", "solvent", "glows"}
	}
	var list []string
	for _, key := range keys {
		list = append(list, b.words.Text("never."+key))
	}
	return list
}
