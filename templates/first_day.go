package templates

import (
	"slices"
	"strconv"
	"strings"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// firstDayView is the guide for whoever works in the shop for the first time:
// two sides of paper to read, walk and sign.
type firstDayView struct {
	Halted   []UseTab // cards of the machines that must not run
	Stopped  int      // how many those are in all
	Stops    int      // findings that say stop
	Steps    []string
	Machines []dayMachine
	More     int // machines that the table leaves to their cards
	Rules    []string
	Who      []dayWho
	Most     []string // how many machines at once, a line for each collector
	Together []dayUse
	Not      []dayUse
	MoreUses int    // that the lists leave to the plan
	Sets     string // the sheet of machines together; empty where there is none
	Never    []dayNever
	Places   []dayPlace
	Write    []string // what nobody can know from the shop file
	Rows     []int    // to sign on

	Unchecked bool // its translation
}

// How much the guide lists of each: it is two sides of paper.
const (
	mostDayMachines = 12
	mostDayUses     = 4
	mostDayHoses    = 3
	mostDayNames    = 12 // in a sentence
	signRows        = 4
)

// dayMachine is how a machine is started here.
type dayMachine struct {
	Name, Path     string
	Halted         bool
	ByItself, Open []string // gates
	Starts         []string
}

// dayWho is who may use which machines.
type dayWho struct {
	Says     string
	Machines string
}

// dayUse is a use of several machines.
type dayUse struct{ Name, Path, Machines string }

// dayNever is what must not go into the ducts of some machines.
type dayNever struct {
	Of   string // which machines; empty where it is the same at all
	Into []string
}

// MoreHalted is how many machines must not run beside those that are named.
func (v firstDayView) MoreHalted() int { return v.Stopped - len(v.Halted) }

// addFirstDay adds the guide in the languages of the shop.
func (b *Book) addFirstDay() {
	for _, language := range languages(b.Plan.Shop.Language) {
		in := *b
		in.words = content.WordsIn(language)
		if b.Plan.Shop.Language == "both" && language == content.Spanish {
			in.prefix = "es-"
		}
		v := in.firstDayView()
		b.add(&Sheet{Part: partPeople, Path: in.Path("first day", ""), Title: in.words.Text("day.title"), Kind: "first-day", Lede: in.words.Text("day.lede"),
			Verdict: in.dayVerdict(v), Language: language, name: "first-day.html", view: func() any { return v }})
	}
}

// dayVerdict says what holds on a first day: what must not run, and that
// nothing is run before it was shown.
func (b *Book) dayVerdict(v firstDayView) Verdict {
	words := []Word{{"advice", b.words.Text("day.to-sign")}}
	says := b.words.Count("day.machines", len(b.Plan.Shop.Machines))
	if n := v.Stopped; n > 0 {
		words = append([]Word{{"stop", b.words.Text("day.halt")}}, words...)
		says += " " + b.words.Count("day.halted", n)
	}
	return Verdict{Words: words, Says: says, Do: b.words.Text("day.do")}
}

func (b *Book) firstDayView() firstDayView {
	v := firstDayView{Unchecked: b.unchecked(plan.FirstDay), Rows: make([]int, signRows)}
	care := map[string][]string{}
	hands, itself := false, false
	for _, u := range b.Plan.Air.Uses {
		if u.Kind != duct.OneMachine {
			continue
		}
		m := u.Machines[0]
		card := b.cardView(m, u)
		row := dayMachine{Name: m.Name, Path: b.prefix + b.Path("card", m.Name), Halted: card.Stop != "", ByItself: gateNames(card.ByItself), Open: gateNames(card.Open), Starts: b.dayStarts(m, u)}
		hands, itself = hands || len(row.Open) > 0, itself || len(row.ByItself) > 0
		if row.Halted {
			v.Stopped++
			if len(v.Halted) < mostDayNames {
				v.Halted = append(v.Halted, UseTab{Name: m.Name, Path: row.Path})
			}
		}
		if len(v.Machines) < mostDayMachines {
			v.Machines = append(v.Machines, row)
		} else {
			v.More++
		}
		care[card.Who] = append(care[card.Who], m.Name)
		if !slices.ContainsFunc(v.Who, func(w dayWho) bool { return w.Says == card.Who }) {
			v.Who = append(v.Who, dayWho{Says: card.Who})
		}
	}
	for i := range v.Who {
		v.Who[i].Machines = b.few(care[v.Who[i].Says])
	}
	for _, f := range b.Findings {
		if f.Weight == checks.Stop && f.State != checks.Met {
			v.Stops++
		}
	}
	v.Rules = b.dayRules(hands, itself)
	v.Most, v.Together, v.Not = b.dayTogether()
	v.fewUses()
	if slices.ContainsFunc(b.Sheets, func(s *Sheet) bool { return s.Path == "together.html" }) {
		v.Sets = "together.html"
	}
	v.Never = b.dayNever()
	v.Places = b.dayPlaces()
	for _, key := range []string{"meet", "number", "steward", "first-aid", "empties"} {
		v.Write = append(v.Write, b.words.Text("day.write."+key))
	}
	for _, key := range []string{"walk", "smoke", "card", "watch", "once", "sign"} {
		v.Steps = append(v.Steps, b.words.Text("day.step."+key))
	}
	return v
}

func gateNames(gates []cardGate) []string {
	return namesIn(gates, func(g cardGate) string { return g.Name })
}

// fewUses keeps the first uses of each list and counts the rest; where much is
// left out, there is less room to sign as well.
func (v *firstDayView) fewUses() {
	most := mostDayUses
	if len(v.Together) > 0 && len(v.Not) > 0 {
		most--
	}
	all := len(v.Together) + len(v.Not)
	v.Together, v.Not = v.Together[:min(len(v.Together), most)], v.Not[:min(len(v.Not), most)]
	v.MoreUses = all - len(v.Together) - len(v.Not)
	if v.More > 0 || v.MoreUses > 0 {
		v.Rows = v.Rows[1:]
	}
}

// dayStarts says how the collectors of a machine start.
func (b *Book) dayStarts(m *shop.Machine, u *duct.Use) []string {
	s := b.startingOf(m, u)
	var list []string
	if len(s.itself) > 0 {
		list = append(list, b.words.Text("day.starts.itself", b.list(s.itself)))
	}
	if s.pressed != nil {
		list = append(list, b.words.Text("day.starts.pressed", s.pressed.Name, b.list(s.with)))
	}
	if len(s.switched) > 0 {
		list = append(list, b.words.Text("day.starts.switched", b.list(s.switched)))
	}
	if len(list) == 0 {
		list = append(list, b.words.Text("day.starts.none"))
	}
	return list
}

// dayRules are the rules that hold at every machine, as the shop is built.
func (b *Book) dayRules(hands, itself bool) []string {
	var keys []string
	if itself {
		keys = append(keys, "itself")
	}
	if hands {
		keys = append(keys, "hands")
	}
	keys = append(keys, "last-gate", "empty", "done", "band", "power")
	var list []string
	for _, key := range keys {
		list = append(list, b.words.Text("day.rule."+key))
	}
	hoses := 0
	for _, d := range b.Plan.Shop.Ducts {
		if d.Movable() && hoses < mostDayHoses {
			hoses++
			var at []string
			for _, p := range d.Serves {
				at = append(at, p.Full())
			}
			list = append(list, b.words.Text("day.rule.hose", d.Name, b.list(at)))
		}
	}
	return list
}

// dayTogether says how many machines may run at once on each collector, and
// which known uses of several work and which do not.
func (b *Book) dayTogether() (most []string, together, not []dayUse) {
	at := map[*shop.Collector]int{}
	for _, u := range b.Plan.Air.Uses {
		collectors := u.Collectors(b.Plan.Shop)
		if u.Kind == duct.OneMachine {
			for _, c := range collectors {
				at[c] = max(at[c], 1)
			}
		}
		if u.Kind != duct.Together || len(u.Machines) < 2 {
			continue
		}
		use := dayUse{Name: u.Name, Path: b.Path("use", u.Name), Machines: b.few(names(u.Machines))}
		if !works(u) {
			not = append(not, use)
			continue
		}
		together = append(together, use)
		if len(collectors) == 1 {
			at[collectors[0]] = max(at[collectors[0]], len(u.Machines))
		}
	}
	for _, c := range b.Plan.Shop.Collectors {
		if at[c] > 0 {
			most = append(most, b.words.Text("day.most", c.Name, strconv.Itoa(at[c])))
		}
	}
	return most, together, not
}

// few joins names as a sentence does; of many the first, and how many more.
func (b *Book) few(names []string) string {
	if more := len(names) - mostDayNames; more > 0 {
		return b.words.Text("day.and-more", strings.Join(names[:mostDayNames], ", "), strconv.Itoa(more))
	}
	return b.list(names)
}

// dayNever is what must never go into a duct; where wood and metal are worked,
// for each.
func (b *Book) dayNever() []dayNever {
	var wood, metal dayNever
	for _, m := range b.Plan.Shop.Machines {
		if m.Makes == "metal" {
			metal = dayNever{b.words.Text("day.never-metal"), b.neverInto(m)}
		} else {
			wood = dayNever{b.words.Text("day.never-wood"), b.neverInto(m)}
		}
	}
	switch {
	case metal.Into == nil:
		return []dayNever{{Into: wood.Into}}
	case wood.Into == nil:
		return []dayNever{{Into: metal.Into}}
	}
	return []dayNever{wood, metal}
}
