package main

import (
	"strconv"
	"strings"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/export"
	"dustbook/plan/shop"
)

// mostPrinted is how many sets are printed one by one; of more, only the largest
// that work and the smallest that fail are, up to mostListed of each.
const (
	mostPrinted = 200
	mostListed  = 40
)

// sizeSets prints which machines may run together and the table machine by
// machine: every set, the smaller ones first, where they are few.
func (p *program) sizeSets(made *plan.Plan) error {
	if open := toBeChosen(made); open != "" {
		return wrongUse{open, "then ask which machines together"}
	}
	ctx, release := p.untilStopped()
	defer release()
	x, err := made.Air.RunTogether(ctx, made.Shop, p.progress.count("sets"))
	if err != nil {
		return stopped(err)
	}
	if p.json {
		return p.document(export.MakeSets(made, x))
	}
	p.print("%s, as of %s", made.Shop.Name, made.AsOf)
	if x.Size == 0 {
		p.print("the shop file has no machines that could run together")
		return nil
	}
	p.setsHead(made.Shop, x)
	if len(x.All) <= mostPrinted {
		for size := 1; size <= x.Size; size++ {
			p.print("")
			p.countSets(x, size)
			p.listSets(setsOfSize(x, size), mostPrinted)
		}
	} else {
		p.stands(x)
	}
	p.pairs(made, x)
	for _, g := range x.Gates {
		p.print("")
		p.print("%s: from %s open (%s) to %d (%s), over all sets that work", g.Collector.Name, countOf(g.Least, "gate"), withAlso(g.Fewest, g.FewestAlso), g.Most, withAlso(g.Widest, g.WidestAlso))
	}
	return nil
}

// setsHead says how the sets were reckoned, and which were not.
func (p *program) setsHead(s *shop.Shop, x *duct.Sets) {
	filters := ""
	for _, c := range s.Collectors {
		if c.Filter != nil {
			filters = ", with the filter clean and due for change"
		}
	}
	p.print("up to %s at once%s", countOf(x.Size, "machine"), filters)
	for _, c := range s.Collectors {
		if duct.FilterOpen(c) {
			p.print("the filter's pressure of %s is not given: reckoned without a filter, so nothing that needs it is better than thin", c.Name)
		}
	}
	switch {
	case len(s.Machines) == 1:
	case x.Size < x.Asked:
		p.print("sets of more than %s are too many and are left out", countOf(x.Size, "machine"))
	case x.Assumed:
		p.print("the file does not say how many machines run at once (people_at_machines); sets of two were tried all the same")
	case x.Asked == 1:
		p.print("pairs were not tried: the file says people_at_machines = 1")
	}
}

// stands prints what stands out of many sets: the largest that work and the
// smallest that fail.
func (p *program) stands(x *duct.Sets) {
	p.print("%d sets are many: below are the largest that work and the smallest that fail; --json has every one", len(x.All))
	p.print("")
	for size := 1; size <= x.Size; size++ {
		p.countSets(x, size)
	}
	if len(x.Largest) > 0 {
		p.print("")
		p.print("the largest that work")
		p.listSets(x.Largest, mostListed)
	}
	if len(x.Broken) > 0 {
		p.print("")
		p.print("the smallest that fail: every smaller set of their machines works")
		p.listSets(x.Broken, mostListed)
	}
}

func setsOfSize(x *duct.Sets, size int) (list []*duct.Set) {
	for _, s := range x.All {
		if len(s.Machines) == size {
			list = append(list, s)
		}
	}
	return list
}

// countSets prints how many sets of one size work.
func (p *program) countSets(x *duct.Sets, size int) {
	all, works, thin := 0, 0, 0
	for _, s := range setsOfSize(x, size) {
		all++
		if s.Works {
			works++
		}
		if len(s.Thin) > 0 {
			thin++
		}
	}
	head, tail := "one machine alone", ""
	if size > 1 {
		head = strconv.Itoa(size) + " machines at once"
	}
	if thin > 0 {
		tail = ", " + strconv.Itoa(thin) + " of them thin"
	}
	p.print("%s: %d of %d work%s", head, works, all, tail)
}

// listSets prints sets one by one, so many at most, and how many it leaves out.
func (p *program) listSets(list []*duct.Set, most int) {
	t := columns{}
	t.add("machines", "together", "why", "what helps")
	left := max(len(list)-most, 0)
	for _, s := range list[:len(list)-left] {
		word := "fails"
		switch {
		case len(s.Thin) > 0:
			word = "thin"
		case s.Works:
			word = "works"
		}
		why, helps := whyNot(s), whatHelps(s)
		for i := range max(len(why), len(helps), 1) {
			row := []string{"", "", cell(why, i), cell(helps, i)}
			if i == 0 {
				row[0], row[1] = machineList(s.Machines), word
			}
			t.add(row...)
		}
	}
	p.rows(t)
	if left > 0 {
		p.print("  and %d more", left)
	}
}

// pairs prints the table machine by machine, with the signs of the sheet on
// which machines together.
func (p *program) pairs(made *plan.Plan, x *duct.Sets) {
	words := content.WordsIn(content.English)
	t := columns{right: map[int]bool{0: true}}
	head := []string{"", ""}
	for i := range made.Shop.Machines {
		t.right[i+2] = true
		head = append(head, strconv.Itoa(i+1))
	}
	t.add(head...)
	met := map[string]int{}
	for i, m := range made.Shop.Machines {
		row := []string{strconv.Itoa(i + 1), m.Name}
		for j := range made.Shop.Machines {
			sign := ""
			if s := x.Pair(i, j); s != nil {
				word := s.Sign()
				if least, had := met[word]; !had || s.Tried() < least {
					met[word] = s.Tried()
				}
				sign = words.Text("together.sign." + word)
			}
			row = append(row, sign)
		}
		t.add(row...)
	}
	p.print("")
	p.print("machine by machine; where a number meets itself, that machine alone")
	p.rows(t)
	for _, word := range duct.Signs {
		if tried, had := met[word]; had {
			p.print("  %s %s", words.Text("together.sign."+word), strings.ReplaceAll(standsFor[word], "{1}", countOf(tried, "gate")))
		}
	}
}

// standsFor is what the signs of the table mean.
var standsFor = map[string]string{
	"works": "works", "thin": "works, but thin", "relief": "works with another gate open as well", "dust": "air enough, but dust settles on the way; no gate mends it",
	"tried": "air enough, but dust settles on the way; up to {1} tried, and none mends it", "air": "too little air at a port", "apart": "share an end: one at a time",
	"curve": "off the fan's curve", "unserved": "no duct serves a port of it",
}
