package templates

import (
	"slices"
	"strconv"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// togetherVerdict says how many machines may run at once, and how sure that is.
func (b *Book) togetherVerdict(x *duct.Sets) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("together."+key, about...) }
	if len(x.Largest) == 0 {
		return Verdict{Words: []Word{{"notmet", say("none")}}, Says: say("none-says") + b.reliefToo(x, 1), Do: say("none-do")}
	}
	size, works, tried := len(x.Largest[0].Machines), len(x.Largest), 0
	for _, s := range x.All {
		if len(s.Machines) == size {
			tried++
		}
	}
	var v Verdict
	switch {
	case len(b.Plan.Shop.Machines) == 1:
		v = Verdict{Words: []Word{{"advice", say("only")}}, Says: say("only-says"), Do: say("only-do")}
	case size == 1 && x.Size == 1:
		v = Verdict{Words: []Word{{"thin", say("one")}}, Says: say("untried-says", strconv.Itoa(works), strconv.Itoa(tried)), Do: say("untried-do")}
		if x.Asked > 1 {
			v.Do = say("many-untried-do")
		}
	case size == 1:
		v = Verdict{Words: []Word{{"thin", say("one")}}, Says: say("one-says", strconv.Itoa(works), strconv.Itoa(tried)) + b.reliefToo(x, 2), Do: say("one-do")}
	default:
		word := say("many", strconv.Itoa(size))
		if size == len(b.Plan.Shop.Machines) {
			word = say("all")
		}
		v = Verdict{Words: []Word{{"advice", word}}, Says: say("many-says", strconv.Itoa(size), strconv.Itoa(works), strconv.Itoa(tried)), Do: say("many-do")}
	}
	b.thinVerdict(x.Largest, &v)
	return v
}

// reliefToo says how many sets of so many machines or more, up to two, another
// gate mends; nothing where it mends none.
func (b *Book) reliefToo(x *duct.Sets, least int) string {
	n := 0
	for _, s := range x.All {
		if size := len(s.Machines); size >= least && size <= 2 && s.Stands() == "relief" {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return " " + b.words.Count("together.relief-too", n)
}

// thinVerdict adds to a verdict how many of its sets are thin, and why where all
// are.
func (b *Book) thinVerdict(sets []*duct.Set, v *Verdict) {
	thin, had := 0, map[duct.Doubt]bool{}
	for _, s := range sets {
		if len(s.Thin) > 0 {
			thin++
		}
		for _, d := range s.Thin {
			had[d] = true
		}
	}
	switch {
	case thin == 0:
		return
	case thin < len(sets):
		v.Says += " " + b.words.Text("together.thin-some", strconv.Itoa(thin))
		return
	}
	var why []string
	for _, d := range duct.EveryDoubt {
		if had[d] {
			why = append(why, b.words.Text("enough.doubt."+string(d)))
		}
	}
	v.Words = append(v.Words, Word{"thin", b.words.Text("together.thin")})
	v.Says += " " + b.words.Text("together.thin-all", joined(why))
}

// filters reports whether a collector has a filter.
func (b *Book) filters() bool {
	return slices.ContainsFunc(b.Plan.Shop.Collectors, func(c *shop.Collector) bool { return c.Filter != nil })
}

// togetherNotes says how the sets were reckoned, and which were not.
func (b *Book) togetherNotes(x *duct.Sets) (list []string) {
	say := func(key string, about ...string) string { return b.words.Text("together."+key, about...) }
	if b.filters() {
		list = append(list, say("reckoned"))
	}
	for _, c := range b.Plan.Shop.Collectors {
		if duct.FilterOpen(c) {
			list = append(list, say("filter-open", c.Name))
		}
	}
	if len(b.Plan.Shop.Machines) > 1 {
		switch {
		case x.Size < x.Asked:
			list = append(list, say("limited", strconv.Itoa(x.Size)))
		case x.Assumed && len(b.Plan.Shop.Machines) > x.Size:
			list = append(list, say("assumed"))
		case x.Assumed:
			list = append(list, say("assumed-all"))
		case x.Asked == 1:
			list = append(list, say("stated-one"))
		}
	}
	return list
}

// whyThin says what sets that work rest on that is not sure, and how many.
func (b *Book) whyThin(sets []*duct.Set) (list []string) {
	works, had := 0, map[duct.Doubt]int{}
	for _, s := range sets {
		if s.Works {
			works++
		}
		for _, d := range s.Thin {
			had[d]++
		}
	}
	for _, d := range duct.EveryDoubt {
		if had[d] > 0 {
			list = append(list, b.words.Text("together.thin-of", b.words.Text("enough.doubt."+string(d)), strconv.Itoa(had[d]), strconv.Itoa(works)))
		}
	}
	return list
}
