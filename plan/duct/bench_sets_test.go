package duct

import (
	"context"
	"fmt"
	"regexp"
	"strings"
	"testing"
)

// twentyFour is a shop of 24 machines on one main, where the sets of up to four
// are 12,950, with the filter in two states.
func twentyFour() string {
	return strings.Replace(rowOf(7, 24), "people_at_machines = 3", "people_at_machines = 4", 1)
}

// BenchmarkSets judges every set of up to four of 24 machines.
func BenchmarkSets(b *testing.B) {
	s := mustRead(b, twentyFour())
	k := Reckon(s)
	b.ReportAllocs()
	count, relieved := 0, 0
	for b.Loop() {
		x, err := k.RunTogether(context.Background(), s, nil)
		if err != nil {
			b.Fatal(err)
		}
		count, relieved = len(x.All), 0
		for _, set := range x.All {
			relieved += len(set.Relief)
		}
	}
	b.ReportMetric(float64(count), "sets")
	b.ReportMetric(float64(relieved), "reliefs")
}

// BenchmarkDucts solves one use from nothing on trees of many ducts.
func BenchmarkDucts(b *testing.B) {
	for _, n := range []int{50, 500, 5000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			d := newDrawing(4242, min(n, 500))
			s := d.shop(b)
			tree := Grow(s, s.Collectors[0], StateOf(s))
			u := &Use{Open: d.opened(s), Machines: s.Machines[:1]}
			net, fan := abreast(tree.Set(u), max(1, n/500)), NewFan(tree.Collector, tree.State, Clean)
			_, high := fan.Range()
			solver := NewSolver(net)
			b.ReportAllocs()
			for b.Loop() {
				solver.rest()
				if _, _, ok := solver.Meet(fan, high/2); !ok {
					b.Fatal("did not settle")
				}
			}
			edges, _ := live(net)
			b.ReportMetric(float64(edges), "edges")
		})
	}
}

// abreast is a network beside itself so many times on one root: a shop file
// holds no tree of thousands of ducts.
func abreast(n *Network, times int) *Network {
	var edges []Edge
	for range times {
		from := len(edges)
		for _, e := range n.Edges {
			if e.Down >= 0 {
				e.Down += from
			}
			edges = append(edges, e)
		}
	}
	return NewNetwork(edges)
}

// everySize finds the size of every duct of a row.
var everySize = regexp.MustCompile(`(?m)(\[\[duct\]\]\nname = .*\nto = .*\n(?:joins = .*\n)?)size = .*`)

// BenchmarkChoose chooses every duct of a row.
func BenchmarkChoose(b *testing.B) {
	for _, n := range []int{6, 12, 24} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s := mustRead(b, everySize.ReplaceAllString(rowOf(7, n), `${1}size = "choose"`))
			k := Reckon(s)
			for b.Loop() {
				list, err := k.Choose(context.Background(), s)
				if err != nil || len(list[0].Sizes) != n+1 {
					b.Fatal(err, list)
				}
				met := 0.0
				if list[0].Met {
					met = 1
				}
				b.ReportMetric(float64(list[0].Tried), "tried")
				b.ReportMetric(met, "met")
				proven := 0.0
				if list[0].Proven {
					proven = 1
				}
				b.ReportMetric(proven, "proven")
			}
		})
	}
}
