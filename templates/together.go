package templates

import (
	"strconv"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// togetherView is the sheet on which machines may run at once.
type togetherView struct {
	Open    string // says that no set was tried; empty where they were
	Limited string // says that larger sets were not reckoned; empty where they were
	Names   []togetherName
	Rows    []togetherRow
	Key     []togetherKey
	Largest []string
	More    string
	Relief  []togetherBroken // of one or two machines, that another gate mends
	Unshown string           // how many more of those
	Alone   []togetherBroken // machines that fail alone
	Broken  []togetherBroken
	Left    string
	Gates   []togetherGates
}

type togetherName struct{ Name, Path string }

type togetherRow struct {
	togetherName
	Cells []togetherCell
}

type togetherCell struct{ Sign, Word string }

type togetherKey struct{ Sign, Means string }

type togetherBroken struct {
	Set        string
	Why, Helps []string
}

type togetherGates struct {
	Collector, Path    string
	Least, LeastWith   string
	Widest, WidestWith string
}

// The most sets that stand on the sheet; the rest is counted.
const (
	mostLargest = 24
	mostBroken  = 40
	mostRelief  = 60
)

// addTogether adds the sheet, where the shop has machines and a collector.
func (b *Book) addTogether() {
	if len(b.Plan.Shop.Machines) == 0 || len(b.Plan.Shop.Collectors) == 0 {
		return
	}
	if b.unsized(nil) { // no set is judged before the sizes stand in the file
		b.add(&Sheet{Part: partAir, Path: "together.html", Title: b.words.Text("together.title"), Kind: "table", Lede: b.words.Text("together.lede-open"),
			Verdict: b.openSizes(nil), name: "together.html", view: func() any { return togetherView{Open: b.words.Text("sizes.open.none")} }})
		return
	}
	x := b.Plan.Together()
	b.add(&Sheet{Part: partAir, Path: "together.html", Title: b.words.Text("together.title"), Kind: "table", Lede: b.words.Text("together.lede", strconv.Itoa(x.Size)),
		Verdict: b.togetherVerdict(x), name: "together.html", view: func() any { return b.togetherView(x) }})
}

func (b *Book) togetherVerdict(x *duct.Sets) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("together."+key, about...) }
	if len(x.Largest) == 0 {
		return Verdict{Words: []Word{{"notmet", say("none")}}, Says: say("none-says"), Do: say("none-do")}
	}
	size, works, tried := len(x.Largest[0].Machines), len(x.Largest), 0
	for _, s := range x.All {
		if len(s.Machines) == size {
			tried++
		}
	}
	if size == 1 {
		return Verdict{Words: []Word{{"thin", say("one")}}, Says: say("one-says", strconv.Itoa(works), strconv.Itoa(tried)), Do: say("one-do")}
	}
	word := say("many", strconv.Itoa(size))
	if size == len(b.Plan.Shop.Machines) {
		word = say("all")
	}
	return Verdict{Words: []Word{{"advice", word}}, Says: say("many-says", strconv.Itoa(size), strconv.Itoa(works), strconv.Itoa(tried)), Do: say("many-do")}
}

func (b *Book) togetherView(x *duct.Sets) togetherView {
	var v togetherView
	if x.Size < x.People && x.Size < len(b.Plan.Shop.Machines) {
		v.Limited = b.words.Text("together.limited", strconv.Itoa(x.Size))
	}
	b.pairs(x, &v)
	for i, s := range x.Largest {
		if i == mostLargest {
			v.More = b.words.Count("together.more", len(x.Largest)-i)
			break
		}
		v.Largest = append(v.Largest, setName(s))
	}
	b.reliefs(x, &v)
	for _, s := range x.Broken {
		switch row := (togetherBroken{setName(s), b.whyBroken(s), b.helps(s)}); {
		case len(s.Machines) == 1:
			v.Alone = append(v.Alone, row)
		case len(v.Broken) < mostBroken:
			v.Broken = append(v.Broken, row)
		}
	}
	if left := len(x.Broken) - len(v.Alone) - len(v.Broken); left > 0 {
		v.Left = b.words.Count("together.more-broken", left)
	}
	for _, g := range x.Gates {
		v.Gates = append(v.Gates, togetherGates{g.Collector.Name, b.Path("collector", g.Collector.Name), strconv.Itoa(g.Least), setName(g.Fewest), strconv.Itoa(g.Most), setName(g.Widest)})
	}
	return v
}

// reliefs lists the sets of one or two machines that another gate mends.
func (b *Book) reliefs(x *duct.Sets, v *togetherView) {
	unshown := 0
	for _, s := range x.All {
		switch {
		case len(s.Machines) > 2 || standing(s) != "relief":
		case len(v.Relief) < mostRelief:
			v.Relief = append(v.Relief, togetherBroken{setName(s), nil, b.helps(s)})
		default:
			unshown++
		}
	}
	if unshown > 0 {
		v.Unshown = b.words.Count("together.more-broken", unshown)
	}
}

// pairs fills the table machine by machine, and the key of its signs.
func (b *Book) pairs(x *duct.Sets, v *togetherView) {
	machines := b.Plan.Shop.Machines
	met := map[string]bool{}
	for i, m := range machines {
		name := togetherName{m.Name, b.Path("machine", m.Name)}
		v.Names = append(v.Names, name)
		row := togetherRow{togetherName: name}
		for j := range machines {
			s := x.Pair(i, j)
			if s == nil {
				row.Cells = append(row.Cells, togetherCell{})
				continue
			}
			word := standing(s)
			met[word] = true
			row.Cells = append(row.Cells, togetherCell{b.words.Text("together.sign." + word), b.words.Text("together.word." + word)})
		}
		v.Rows = append(v.Rows, row)
	}
	for _, word := range []string{"works", "relief", "dust", "air", "apart", "curve", "unserved"} {
		if met[word] {
			v.Key = append(v.Key, togetherKey{b.words.Text("together.sign." + word), b.words.Text("together.word." + word)})
		}
	}
}

// standing is the one word for how a set stands.
func standing(s *duct.Set) string {
	switch {
	case s.Works:
		return "works"
	case s.Apart != nil:
		return "apart"
	case len(s.On) == 0:
		return "unserved"
	}
	air := false
	for _, v := range s.On {
		if !v.OnCurve {
			return "curve"
		}
		air = air || !v.Captured
	}
	if air {
		return "air"
	}
	for _, r := range s.Relief {
		if len(r.Gates) == 0 {
			return "dust"
		}
	}
	return "relief"
}

// setName is the machines of a set, in file order.
func setName(s *duct.Set) string { return strings.Join(names(s.Machines), ", ") }

// whyBroken says what breaks a set, of each collector and state of its filter.
func (b *Book) whyBroken(s *duct.Set) []string {
	say := func(key string, about ...string) string { return b.words.Text("together.why."+key, about...) }
	if s.Apart != nil {
		return []string{say("apart", s.Apart.Name)}
	}
	if len(s.On) == 0 {
		return []string{say("unserved")}
	}
	var list []string
	for _, v := range s.On {
		state := b.filterState(v.Filter)
		switch {
		case !v.OnCurve:
			list = append(list, say("curve", v.Collector.Name, b.words.Because(v.Why)))
			continue
		case v.Port != nil:
			list = append(list, say("air", v.Port.Full(), unit.Percent(v.PortShare), state))
		}
		if v.Slowest != nil {
			key := "dust"
			if v.Hose {
				key = "hose"
			}
			name := v.Slowest.Name()
			if v.Hose {
				name = v.Slowest.Duct.Name
			}
			list = append(list, say(key, name, unit.Percent(v.Speed), state))
		}
	}
	return list
}

// filterState says in which state a filter is.
func (b *Book) filterState(filter string) string {
	switch filter {
	case duct.Clean:
		return b.words.Text("together.clean")
	case duct.ChangeOut:
		return b.words.Text("together.change-out")
	}
	return b.words.Text("together.no-filter")
}

// helps says what would mend a set.
func (b *Book) helps(s *duct.Set) []string {
	say := func(key string, about ...string) string { return b.words.Text("together.helps."+key, about...) }
	switch standing(s) {
	case "apart":
		return []string{say("apart")}
	case "air":
		return []string{say("air")}
	}
	var list []string
	for _, r := range s.Relief {
		switch {
		case len(r.Gates) > 0:
			list = append(list, say("open", namesOfGates(r.Gates)))
		case r.Through >= 0:
			list = append(list, say("bound", strconv.Itoa(r.Through)))
		default:
			list = append(list, say("none"))
		}
	}
	return list
}

func namesOfGates(gates []*shop.Gate) string {
	return strings.Join(namesIn(gates, func(g *shop.Gate) string { return g.Name }), ", ")
}
