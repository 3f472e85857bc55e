package templates

import (
	"html/template"
	"strconv"

	"dustbook/plan/unit"
)

// beliefsView is what people say of dust and air, each with an answer.
type beliefsView struct{ Beliefs []belief }

// belief is one of them: the answer, the figures of this shop, and where more
// stands.
type belief struct {
	ID, Says string
	Answer   template.HTML
	Figures  []string
	Path     string
	More     string
}

// addBeliefs adds the sheet; none for a shop without a collector.
func (b *Book) addBeliefs() {
	if len(b.Plan.Shop.Collectors) == 0 {
		return
	}
	b.add(&Sheet{Part: partPeople, Path: "beliefs.html", Title: b.words.Text("beliefs.title"), Kind: "table", Lede: b.words.Text("beliefs.lede"),
		Verdict: Verdict{Words: []Word{{"advice", b.words.Text("beliefs.word")}}, Says: b.words.Text("beliefs.says"), Do: b.words.Text("beliefs.do")},
		name:    "beliefs.html", view: func() any { return b.beliefsView() }})
}

func (b *Book) beliefsView() beliefsView {
	var v beliefsView
	add := func(key, path string, figures ...string) {
		if len(figures) == 0 {
			figures = []string{b.words.Text("beliefs.no-figure")}
		}
		one := belief{ID: "belief-" + key, Says: b.words.Text("beliefs.claim." + key), Answer: trusted(b.words.HTML("beliefs.answer." + key)), Figures: figures}
		if path != "" {
			one.Path, one.More = path, b.words.Text("beliefs.more."+key)
		}
		v.Beliefs = append(v.Beliefs, one)
	}
	add("motor", "enough.html", b.motorFigures()...)
	add("closed", "", b.closedFigures()...)
	add("smaller", "gauges.html", b.smallerFigures()...)
	add("hand", "gauges.html", b.handFigures()...)
	add("wire", "findings.html", b.wireFigures()...)
	add("rules", "findings.html", b.rulesFigures()...)
	add("vacuum", "", b.vacuumFigures()...)
	add("fire", b.Path("first day", ""), b.fireFigures()...)
	if !b.has("enough.html") {
		v.Beliefs[0].Path = ""
	}
	return v
}

// motorFigures set each motor and label against the air of one machine.
func (b *Book) motorFigures() (list []string) {
	for _, c := range b.Plan.Shop.Collectors {
		motor, claimed := b.notGiven(), b.notGiven()
		if c.Motor != nil && c.Motor.Power > 0 {
			motor = unit.Shaft.Print(b.units, c.Motor.Power)
		}
		if c.Claims != nil {
			claimed = unit.Air.Print(b.units, c.Claims.Flow)
		}
		if _, one := b.shutAndOne(c); one != nil {
			list = append(list, b.words.Text("beliefs.motor.figures", c.Name, motor, claimed, one.Use.Name, unit.Air.Print(b.units, one.Flow)))
		}
	}
	return list
}

// closedFigures set everything shut against one machine alone.
func (b *Book) closedFigures() (list []string) {
	for _, c := range b.Plan.Shop.Collectors {
		if shut, one := b.shutAndOne(c); shut != nil && one != nil {
			list = append(list, b.words.Text("beliefs.closed.figures", c.Name, unit.Press.Print(b.units, shut.Inlet), unit.Air.Print(b.units, shut.Flow), one.Use.Name, unit.Press.Print(b.units, one.Inlet), unit.Air.Print(b.units, one.Flow)))
		}
	}
	return list
}

// smallerFigures put the first machine's duct into the next smaller size.
func (b *Book) smallerFigures() (list []string) {
	for _, c := range b.Plan.Shop.Collectors {
		_, one := b.shutAndOne(c)
		if one == nil {
			continue
		}
		if n, known := b.Plan.Air.Narrower(one); known {
			list = append(list, b.words.Text("beliefs.smaller.figures", n.Port.Full(),
				unit.Size.Print(b.units, n.Port.Duct.Size), unit.Air.Print(b.units, n.Flow), unit.Speed.Print(b.units, n.Velocity),
				unit.Size.Print(b.units, n.Size), unit.Air.Print(b.units, n.Less), unit.Speed.Print(b.units, n.Faster)))
		}
	}
	return list
}

// handFigures are the expected and the least reading of the first hood gauge.
func (b *Book) handFigures() []string {
	for _, g := range b.Plan.Air.HoodGauges(b.units) {
		least, full := g.Readings[0], ""
		for _, r := range g.Readings {
			if r.Press == g.Expected {
				full = unit.Air.Print(b.units, r.Flow)
			}
		}
		if full != "" {
			return []string{b.words.Text("beliefs.hand.figures", g.Port.Full(), unit.Press.Print(b.units, g.Expected), full, unit.Press.Print(b.units, least.Press), unit.Air.Print(b.units, least.Flow))}
		}
	}
	return nil
}

// wireFigures are the ducts that do not conduct and the bonds that were
// measured.
func (b *Book) wireFigures() (list []string) {
	var plastic, measured, missing []string
	for _, d := range b.Plan.Shop.Ducts {
		switch {
		case !d.Conducts:
			plastic = append(plastic, d.Name)
		case d.Bonded.Known():
			measured = append(measured, b.words.Text("beliefs.bond", d.Name, unit.Ohms.Print(b.units, d.Bonded.V)))
		default:
			missing = append(missing, d.Name)
		}
	}
	say := func(key string, names []string) {
		if len(names) > 0 {
			list = append(list, b.words.Text("beliefs.wire."+key, b.few(names)))
		}
	}
	say("plastic", plastic)
	say("measured", measured)
	say("missing", missing)
	return list
}

// rulesFigures are what the check of the shop's size found.
func (b *Book) rulesFigures() (list []string) {
	for _, f := range b.Findings {
		if f.Check == "dust-scope" {
			list = append(list, f.Says)
		}
	}
	return list
}

func (b *Book) vacuumFigures() (list []string) {
	for _, c := range b.Plan.Shop.Collectors {
		if shut, one := b.shutAndOne(c); shut != nil && one != nil {
			list = append(list, b.words.Text("beliefs.vacuum.figures", c.Name, unit.Press.Print(b.units, shut.Inlet), unit.Air.Print(b.units, one.Flow), one.Use.Name))
		}
	}
	return list
}

// fireFigures are what of this shop a fire would find.
func (b *Book) fireFigures() []string {
	s := b.Plan.Shop
	list := []string{b.words.Text("beliefs.fire.figures", strconv.Itoa(len(s.Stops)), strconv.Itoa(len(s.Extinguishers)))}
	for _, thing := range b.binThings() {
		list = append(list, b.words.Text("beliefs.fire.bin", thing.Name, thing.Says))
	}
	return list
}
