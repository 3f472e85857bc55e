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

// sizeSets prints which machines may run together: every set, the smaller ones
// first, and the table machine by machine.
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
	p.print("up to %d machines at once, with the filter clean and due for change", x.Size)
	if x.Size < x.People && x.Size < len(made.Shop.Machines) {
		p.print("sets of more than %d machines are too many and are left out", x.Size)
	}
	for size := 1; size <= x.Size; size++ {
		p.setsOf(x, size)
	}
	p.pairs(made, x)
	for _, g := range x.Gates {
		p.print("")
		p.print("%s: from %s open (%s) to %d (%s), over all sets that work", g.Collector.Name, countOf(g.Least, "gate"), machineList(g.Fewest.Machines), g.Most, machineList(g.Widest.Machines))
	}
	return nil
}

// setsOf prints the sets of one size.
func (p *program) setsOf(x *duct.Sets, size int) {
	t := columns{}
	t.add("machines", "together", "why not", "what helps")
	all, works := 0, 0
	for _, s := range x.All {
		if len(s.Machines) != size {
			continue
		}
		all++
		word := "fails"
		if s.Works {
			word = "works"
			works++
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
	p.print("")
	if size == 1 {
		p.print("one machine alone: %d of %d work", works, all)
	} else {
		p.print("%d machines at once: %d of %d work", size, works, all)
	}
	p.rows(t)
}

// cell is a place of a list; "-" in the first row where the list is empty.
func cell(list []string, i int) string {
	switch {
	case i < len(list):
		return list[i]
	case i == 0:
		return "-"
	}
	return ""
}

func countOf(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

func machineList(list []*shop.Machine) string {
	var names []string
	for _, m := range list {
		names = append(names, m.Name)
	}
	return strings.Join(names, ", ")
}

// whyNot says what breaks a set, on each collector with its filter in each
// state.
func whyNot(s *duct.Set) (list []string) {
	switch export.Standing(s) {
	case "works":
		return nil
	case "apart":
		return []string{"both take their air through the end of " + s.Apart.Name}
	case "unserved":
		return []string{"no duct serves it"}
	}
	for _, v := range s.On {
		in := ", " + filterWord(v.Filter)
		if !v.OnCurve {
			list = append(list, v.Collector.Name+": "+v.Why.String()+in)
		}
		if v.Port != nil {
			list = append(list, shortOfAir(v.Port, v.PortShare)+in)
		}
		if v.Slowest != nil {
			list = append(list, tooSlow(v.Slowest, v.Hose, v.Speed)+in)
		}
	}
	return list
}

// whatHelps says what would mend a set.
func whatHelps(s *duct.Set) (list []string) {
	switch export.Standing(s) {
	case "apart":
		return []string{"run them one after the other"}
	case "air":
		return []string{"another gate takes air away"}
	}
	for _, r := range s.Relief {
		switch {
		case len(r.Gates) > 0:
			list = append(list, "open "+strings.Join(gateNames(r.Gates), ", ")+" as well")
		case r.Through >= 0:
			list = append(list, "no gate mends it, up to "+countOf(r.Through, "gate"))
		default:
			list = append(list, "no gate mends it")
		}
	}
	return list
}

func gateNames(gates []*shop.Gate) []string {
	var names []string
	for _, g := range gates {
		names = append(names, g.Name)
	}
	return names
}

// standings are the words for how a set stands, in the order of the key.
var standings = []string{"works", "relief", "dust", "air", "apart", "curve", "unserved"}

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
	met := map[string]bool{}
	for i, m := range made.Shop.Machines {
		row := []string{strconv.Itoa(i + 1), m.Name}
		for j := range made.Shop.Machines {
			sign := ""
			if s := x.Pair(i, j); s != nil {
				word := export.Standing(s)
				met[word] = true
				sign = words.Text("together.sign." + word)
			}
			row = append(row, sign)
		}
		t.add(row...)
	}
	p.print("")
	p.print("machine by machine; where a number meets itself, that machine alone")
	p.rows(t)
	for _, word := range standings {
		if met[word] {
			p.print("  %s %s", words.Text("together.sign."+word), standsFor[word])
		}
	}
}

// standsFor is what the signs of the table mean.
var standsFor = map[string]string{
	"works": "works", "relief": "works with another gate open as well, named above", "dust": "air enough, but dust settles on the way",
	"air": "too little air at a port", "apart": "share an end: one at a time", "curve": "off the fan's curve", "unserved": "no duct serves it",
}
