package templates

import (
	"cmp"
	"slices"

	"dustbook/checks"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// besideAmounts is how much duct and hose two collectors have.
type besideAmounts struct {
	Collector string
	Rows      []amountRow
}

type amountRow struct{ Size, Material, This, Other, Off string }

// amounts lists the ducts and hoses by collector: those of one name together,
// then those of one layout alone.
func (v *beside) amounts() []besideAmounts {
	var list []besideAmounts
	var trees [][2]*duct.Tree
	for _, t := range v.Plan.Air.Trees {
		trees = append(trees, [2]*duct.Tree{t, treeNamed(v.other.Plan.Air.Trees, t.Collector.Name)})
	}
	for _, t := range v.other.Plan.Air.Trees {
		if treeNamed(v.Plan.Air.Trees, t.Collector.Name) == nil {
			trees = append(trees, [2]*duct.Tree{nil, t})
		}
	}
	for _, pair := range trees {
		one := besideAmounts{Collector: cmp.Or(nameOf(pair[0]), nameOf(pair[1]))}
		here, there := amountsOf(pair[0]), amountsOf(pair[1])
		for _, a := range sizesOf(here, there) {
			x, y := lengthOf(here, a), lengthOf(there, a)
			row := amountRow{Size: unit.Size.Print(v.units, a.Size), Material: a.Material, This: unit.Run.Figure(v.units, x), Other: unit.Run.Figure(v.units, y), Off: v.difference(unit.Run.Figure(v.units, x), unit.Run.Figure(v.units, y))}
			if a.Size == 0 {
				row.Size = v.words.Text("beside.to-choose")
			}
			one.Rows = append(one.Rows, row)
		}
		if len(one.Rows) > 0 {
			list = append(list, one)
		}
	}
	return list
}

func treeNamed(trees []*duct.Tree, name string) *duct.Tree {
	for _, t := range trees {
		if t.Collector.Name == name {
			return t
		}
	}
	return nil
}

func nameOf(t *duct.Tree) string {
	if t == nil {
		return ""
	}
	return t.Collector.Name
}

func amountsOf(t *duct.Tree) []duct.Amount {
	if t == nil {
		return nil
	}
	return t.Amounts()
}

// sizesOf are the sizes and materials of both, the widest first.
func sizesOf(here, there []duct.Amount) []duct.Amount {
	list := slices.Clone(here)
	for _, a := range there {
		if !slices.ContainsFunc(here, a.Alike) {
			list = append(list, a)
		}
	}
	slices.SortStableFunc(list, func(a, b duct.Amount) int { return unit.Compare(float64(b.Size), float64(a.Size)) })
	return list
}

func lengthOf(list []duct.Amount, like duct.Amount) unit.Length {
	if at := slices.IndexFunc(list, like.Alike); at >= 0 {
		return list[at].Length
	}
	return 0
}

// besideList is a kind of things that only one layout has.
type besideList struct {
	Kind        string
	This, Other []string
}

// lists are the uses and things that only one layout has.
func (v *beside) lists() []besideList {
	var list []besideList
	for _, kind := range thingKinds {
		here, there := kind.names(v.this), kind.names(v.other)
		one := besideList{Kind: v.words.Text(kind.key), This: without(here, there), Other: without(there, here)}
		if len(one.This)+len(one.Other) > 0 {
			list = append(list, one)
		}
	}
	return list
}

// thingKinds are the kinds of things that two layouts are held against.
var thingKinds = []struct {
	key   string
	names func(*side) []string
}{
	{"beside.uses", func(b *side) []string { return namesIn(b.Plan.Shop.Uses, func(u *shop.Use) string { return u.Name }) }},
	{"beside.machines", func(b *side) []string {
		return namesIn(b.Plan.Shop.Machines, func(m *shop.Machine) string { return m.Name })
	}},
	{"beside.collectors", func(b *side) []string {
		return namesIn(b.Plan.Shop.Collectors, func(c *shop.Collector) string { return c.Name })
	}},
	{"beside.ducts", func(b *side) []string { return namesIn(b.Plan.Shop.Ducts, func(d *shop.Duct) string { return d.Name }) }},
	{"beside.gates", func(b *side) []string { return namesIn(b.Plan.Shop.Gates, func(g *shop.Gate) string { return g.Name }) }},
}

// without are the names of a list that another lacks.
func without(list, other []string) []string {
	return slices.DeleteFunc(slices.Clone(list), func(name string) bool { return slices.Contains(other, name) })
}

// besideFindings is a group of findings that tell the layouts apart.
type besideFindings struct {
	Head, Lede string
	Rows       []besideFinding
}

// besideFinding is one finding, with its state in the other layout where it
// has one there.
type besideFinding struct {
	State, Other          Word
	Weight, OtherWeight   string // the other's where it is not the same
	About, Says           string
	CheckPath, CheckTitle string
	File                  string
	Line                  int
}

// findings are those that stand in one layout and not in the other, and those
// that stand in both with another state. What is met is no finding here.
func (v *beside) findings() []besideFindings {
	var gone, came, other []besideFinding
	left := openFindings(v.other.Findings)
	for _, f := range openFindings(v.Findings) {
		at := slices.IndexFunc(left, func(o checks.Finding) bool { return o.Check == f.Check && o.Kind == f.Kind && o.About == f.About })
		if at < 0 {
			gone = append(gone, v.this.besideFinding(f))
			continue
		}
		if o := left[at]; o.State != f.State || o.Weight != f.Weight {
			row := v.this.besideFinding(f)
			if row.Other = v.other.besideState(o); o.Weight != f.Weight {
				row.OtherWeight = string(o.Weight)
			}
			other = append(other, row)
		}
		left = slices.Delete(left, at, at+1)
	}
	for _, f := range left {
		came = append(came, v.other.besideFinding(f))
	}
	var list []besideFindings
	for _, group := range []struct {
		key  string
		rows []besideFinding
	}{{"this", gone}, {"other", came}, {"both", other}} {
		if len(group.rows) > 0 {
			list = append(list, besideFindings{v.words.Text("beside.findings." + group.key), v.words.Text("beside.findings." + group.key + "-lede"), group.rows})
		}
	}
	return list
}

// openFindings are those that are not met.
func openFindings(list []checks.Finding) []checks.Finding {
	return slices.DeleteFunc(slices.Clone(list), func(f checks.Finding) bool { return f.State == checks.Met })
}

func (b *side) besideFinding(f checks.Finding) besideFinding {
	row := besideFinding{State: b.besideState(f), Weight: string(f.Weight), About: f.About, Says: f.Says, CheckPath: b.Path("check", f.Check), File: f.FileBeside(b.Plan.Shop.File), Line: f.At.Line}
	if c := checks.Find(f.Check); c != nil {
		row.CheckTitle = c.Name
	}
	return row
}

// besideState is a finding's state; that of one that says stop is the word
// stop.
func (b *side) besideState(f checks.Finding) Word {
	if f.Weight == checks.Stop {
		return Word{"stop", b.words.Text("overview.stop")}
	}
	return stateWord(f.State)
}
