package templates

import (
	"strconv"

	"dustbook/plan/duct"
)

// togetherView is the sheet on which machines may run at once.
type togetherView struct {
	Open    string   // says that no set was tried; empty where they were
	Notes   []string // how the sets were reckoned, and which were not
	Names   []togetherName
	Rows    []togetherRow
	Key     []togetherKey
	Thin    []string // why sets that work are thin
	Largest []string
	More    string
	Relief  []togetherBroken // of one or two machines, that another gate mends
	Unshown string           // how many more of those
	Alone   []togetherBroken // machines that fail alone
	Filters bool             // a collector has one
	Short   []togetherBroken // pairs that fail, of which a machine fails alone
	Unsaid  string           // how many more of those
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
	mostShort   = 80
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
	lede := b.words.Text("together.lede", strconv.Itoa(x.Size))
	if x.Size < 2 {
		lede = b.words.Text("together.lede-one")
	}
	b.add(&Sheet{Part: partAir, Path: "together.html", Title: b.words.Text("together.title"), Kind: "table", Lede: lede,
		Verdict: b.togetherVerdict(x), name: "together.html", view: func() any { return b.togetherView(x) }})
}

func (b *Book) togetherView(x *duct.Sets) togetherView {
	v := togetherView{Notes: b.togetherNotes(x), Thin: b.whyThin(x.All), Filters: b.filters()}
	b.pairs(x, &v)
	for i, s := range x.Largest {
		if i == mostLargest {
			v.More = b.words.Count("together.more", len(x.Largest)-i)
			break
		}
		v.Largest = append(v.Largest, setName(s))
	}
	b.reliefs(x, &v)
	b.shorts(x, &v)
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
		v.Gates = append(v.Gates, togetherGates{g.Collector.Name, b.Path("collector", g.Collector.Name), strconv.Itoa(g.Least), b.setWith(g.Fewest, g.FewestAlso), strconv.Itoa(g.Most), b.setWith(g.Widest, g.WidestAlso)})
	}
	return v
}

// reliefs lists the sets of one or two machines that another gate mends.
func (b *Book) reliefs(x *duct.Sets, v *togetherView) {
	unshown := 0
	for _, s := range x.All {
		switch {
		case len(s.Machines) > 2 || s.Stands() != "relief":
		case len(v.Relief) < mostRelief:
			v.Relief = append(v.Relief, togetherBroken{setName(s), b.whyWorst(s), b.helps(s)})
		default:
			unshown++
		}
	}
	if unshown > 0 {
		v.Unshown = b.words.Count("together.more-broken", unshown)
	}
}

// shorts lists the pairs that fall short and stand in no other list.
func (b *Book) shorts(x *duct.Sets, v *togetherView) {
	unsaid := 0
	for _, s := range x.All {
		switch {
		case len(s.Machines) != 2 || s.Works || s.Stands() == "relief" || x.Of(s.Machines[0]).Works && x.Of(s.Machines[1]).Works:
		case len(v.Short) < mostShort:
			v.Short = append(v.Short, togetherBroken{setName(s), b.whyWorst(s), b.helps(s)})
		default:
			unsaid++
		}
	}
	if unsaid > 0 {
		v.Unsaid = b.words.Count("together.more-broken", unsaid)
	}
}

// pairs fills the table machine by machine, and the key of its signs.
func (b *Book) pairs(x *duct.Sets, v *togetherView) {
	machines := b.Plan.Shop.Machines
	met := map[string]int{} // of a sign, how many gates at once were tried for all that have it
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
			word := s.Sign()
			if least, had := met[word]; !had || s.Tried() < least {
				met[word] = s.Tried()
			}
			row.Cells = append(row.Cells, togetherCell{b.words.Text("together.sign." + word), b.words.Text("together.tip." + word)})
		}
		v.Rows = append(v.Rows, row)
	}
	for _, word := range duct.Signs {
		if tried, had := met[word]; had {
			v.Key = append(v.Key, togetherKey{b.words.Text("together.sign." + word), b.signWord(word, tried)})
		}
	}
}
