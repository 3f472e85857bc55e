package templates

import (
	"html/template"
	"strconv"
	"strings"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// Layout is another layout of the shop, reckoned and checked, that a book sets
// beside its own.
type Layout struct {
	Plan     *plan.Plan
	Findings []checks.Finding
}

// beside is two layouts side by side: the book's own, and the other.
type beside struct {
	*Book
	this, other *side
	uses        []usePair
}

// side is one of the two layouts. The book of the other knows its plan and
// findings and has no sheets.
type side struct {
	*Book
	asks []duct.Enough // what its uses ask of its collectors
}

// usePair is a use that both layouts have, by its name.
type usePair struct{ this, other *duct.Use }

// addBeside adds the sheet that sets the book's layout beside another; the
// list is empty where there is none.
func (b *Book) addBeside(list []Layout) {
	for _, l := range list {
		other := &Book{Plan: l.Plan, Findings: l.Findings, units: b.units, words: b.words, board: drawing.NewBoard(l.Plan)}
		v := &beside{Book: b, this: &side{b, b.Plan.Air.BigEnough()}, other: &side{other, l.Plan.Air.BigEnough()}}
		v.pairUses()
		b.add(&Sheet{Part: partPlan, Path: "beside.html", Title: b.words.Text("beside.title"), Kind: "beside", Lede: b.words.Text("beside.lede"), Scale: b.words.Text("block.by-bar"),
			Verdict: v.verdict(), name: "beside.html", view: func() any { return v.view() }})
	}
}

// pairUses finds the uses of machines that both layouts have, in the order of
// this one.
func (v *beside) pairUses() {
	for _, u := range v.Plan.Air.Uses {
		if o := v.other.Plan.Air.FindUse(u.Name); len(u.Machines) > 0 && o != nil && len(o.Machines) > 0 {
			v.uses = append(v.uses, usePair{u, o})
		}
	}
}

// serves reports whether a use is captured and carried by the plan's figures,
// with the filter in every state; and whether its findings say so for sure,
// and not that it is thin.
func (b *Book) serves(u *duct.Use) (yes, sure bool) {
	for _, r := range u.Results {
		if !r.OnCurve || !r.Captured || !r.Carried {
			return false, false
		}
	}
	air, dust := b.finding("air-captured", kindOf(u), u.Name), b.finding("dust-carried", kindOf(u), u.Name)
	return len(u.Results) > 0, air != nil && dust != nil && air.State == checks.Met && dust.State == checks.Met
}

// tally counts the uses that a layout serves; all of them for sure is a class
// of its own.
type tally struct {
	served int
	class  string
}

func (v *beside) tally(s *side, of func(usePair) *duct.Use) tally {
	t := tally{class: "met"}
	for _, pair := range v.uses {
		yes, sure := s.serves(of(pair))
		if yes {
			t.served++
		}
		if !sure {
			t.class = "thin"
		}
	}
	return t
}

// worse is the lesser of two classes of being served.
func worse(a, b string) string {
	if a == "met" {
		return b
	}
	return a
}

// verdict says which layout serves more of the uses that both have, and what
// the way to the collector loses less in one of them.
func (v *beside) verdict() Verdict {
	all := len(v.uses)
	here := v.tally(v.this, func(p usePair) *duct.Use { return p.this })
	there := v.tally(v.other, func(p usePair) *duct.Use { return p.other })
	say := func(key string) string { return v.words.Text("beside.verdict." + key) }
	if all == 0 {
		return Verdict{Words: []Word{{"blank", say("none")}}, Says: say("none-says"), Do: say("none-do")}
	}
	if v.this.unsized(nil) || v.other.unsized(nil) {
		return v.openSizes()
	}
	out := Verdict{Says: v.words.Count("beside.verdict.of", all) + " " + v.words.Text("beside.verdict.serves", strconv.Itoa(here.served), strconv.Itoa(there.served)), Do: v.saved()}
	if more := v.hedges(); more != "" {
		out.Says += " " + more
	}
	some := ""
	if first, second := v.unshared(); first > 0 || second > 0 {
		some = "-shared"
		here.class, there.class = worse(here.class, "thin"), worse(there.class, "thin")
	}
	switch {
	case here.served == all && there.served == all:
		out.Words = []Word{{worse(here.class, there.class), say("both" + some)}}
	case here.served == all:
		out.Words = []Word{{here.class, say("this-all" + some)}}
	case there.served == all:
		out.Words = []Word{{there.class, say("other-all" + some)}}
	case here.served == there.served:
		out.Words = []Word{{"notmet", say("neither")}}
	case here.served > there.served:
		out.Words = []Word{{"notmet", say("neither")}, {"advice", say("this-more")}}
	default:
		out.Words = []Word{{"notmet", say("neither")}, {"advice", say("other-more")}}
	}
	return out
}

// saved says where the ways to the collectors differ most, and by how much.
func (v *beside) saved() string {
	var most, here, there unit.Pressure
	use := ""
	for _, pair := range v.uses {
		for _, m := range v.meetings(pair) {
			a, known := v.this.runLoss(m.this)
			b, same := v.other.runLoss(m.other)
			apart := unit.Pressure(unit.Six(float64(max(a, b) - min(a, b))))
			if known && same && apart > most {
				most, here, there, use = apart, a, b, pair.this.Name
			}
		}
	}
	figure := func(p unit.Pressure) string { return unit.Press.Figure(v.units, p) }
	print := func(p unit.Pressure) string { return unit.Press.Print(v.units, p) }
	text, sign := off(figure(here), figure(there))
	less := strings.TrimLeft(text, "+-") + " " + unit.Press.Unit(v.units)
	switch {
	case use == "" || sign == 0:
		return v.words.Text("beside.saved.none")
	case sign > 0:
		return v.words.Text("beside.saved.this", use, less, print(here), print(there))
	}
	return v.words.Text("beside.saved.other", use, less, print(there), print(here))
}

// runLoss is what the way that governs loses in a result's use at the air the
// ports need.
func (b *side) runLoss(r *duct.Result) (unit.Pressure, bool) {
	d := b.demand(r)
	if d == nil {
		return 0, false
	}
	return b.Plan.Air.RunLoss(r.Collector, d)
}

// demand is what a result's use asks of its collector; nil where none is
// known.
func (b *side) demand(r *duct.Result) *duct.Demand {
	if r == nil || r.Collector == nil {
		return nil
	}
	for _, e := range b.asks {
		for i := range e.Demands {
			if d := &e.Demands[i]; e.Collector == r.Collector && d.Use == r.Use && d.Filter == r.Filter {
				return d
			}
		}
	}
	return nil
}

// besideView is what the sheet shows.
type besideView struct {
	Sides    [2]besideSide
	Moved    []string
	Press    string // units
	Run      string
	Uses     []besideUse
	Alike    []string // uses that are the same in both
	Amounts  []besideAmounts
	Lists    []besideList
	Findings []besideFindings
}

// besideSide is one of the two layouts.
type besideSide struct {
	Head, Name, File, Revision string
	Drawing                    template.HTML
}

func (v *beside) view() besideView {
	out := besideView{Press: unit.Press.Unit(v.units), Run: unit.Run.Unit(v.units), Moved: v.moved()}
	out.Sides[0] = v.this.besideSide("beside.this", "beside-this")
	out.Sides[1] = v.other.besideSide("beside.other", "beside-other")
	for _, pair := range v.uses {
		u := v.use(pair)
		if out.Uses = append(out.Uses, u); u.Alike {
			out.Alike = append(out.Alike, u.Name)
		}
	}
	out.Amounts, out.Lists, out.Findings = v.amounts(), v.lists(), v.findings()
	return out
}

func (b *side) besideSide(head, id string) besideSide {
	s := besideSide{Head: b.words.Text(head), Name: b.Plan.Shop.Name, File: b.Plan.Shop.File, Revision: b.words.Text("beside.no-revision"), Drawing: trusted(b.board.Plan(nil, id))}
	if r, ok := b.Plan.Revision(); ok {
		s.Revision = b.words.Text("beside.revision", r.Mark, r.Date.String())
	}
	return s
}

// moved names the collectors that stand elsewhere in the other layout.
func (v *beside) moved() []string {
	var list []string
	for _, c := range v.Plan.Shop.Collectors {
		for _, o := range v.other.Plan.Shop.Collectors {
			if o.Name == c.Name && (o.Place.V != c.Place.V || roomName(o.Room) != roomName(c.Room)) {
				list = append(list, c.Name)
			}
		}
	}
	return list
}

func roomName(r *shop.Room) string {
	if r == nil {
		return ""
	}
	return r.Name
}
