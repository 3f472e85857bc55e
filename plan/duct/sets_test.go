package duct

import (
	"context"
	"os"
	"reflect"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// curved finds the curve of a fan.
var curved = regexp.MustCompile(`fan_curve = .*`)

func setsOf(t testing.TB, s *shop.Shop) *Sets {
	t.Helper()
	x, err := Reckon(s).RunTogether(context.Background(), s, nil)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// people is a shop file whose shop says how many machines run at once.
func people(t testing.TB, text, count string) string {
	return replaced(t, text, "[shop]\n", "[shop]\npeople_at_machines = "+count+"\n")
}

// asUse is a set as a use of the shop, the way the file would state it.
func asUse(set *Set, also ...*shop.Gate) *Use {
	return &Use{Name: "Set", Kind: Together, Machines: set.Machines, Open: openFor(set.Machines, also)}
}

// checkSet holds a set's verdicts against the results of a use of the same
// machines.
func checkSet(t *testing.T, k *Reckoning, s *shop.Shop, set *Set) {
	t.Helper()
	if set.Apart != nil {
		return
	}
	u := asUse(set)
	works, n := true, 0
	for i, tree := range k.Trees {
		if !slices.Contains(u.Collectors(s), tree.Collector) {
			continue
		}
		for _, filter := range States(tree.Collector) {
			r, v := tree.Solve(u, filter), set.On[n]
			n++
			if v.Collector != tree.Collector || v.Filter != filter || v.OnCurve != r.OnCurve || v.Why != r.Why || v.Captured != r.Captured || v.Carried != r.Carried {
				t.Fatalf("%s: verdict %+v; the use: on curve %v %q, captured %v, carried %v", names(set), v, r.OnCurve, r.Why, r.Captured, r.Carried)
			}
			works = works && r.Captured && r.Carried
			if !r.OnCurve {
				continue
			}
			if p, share := r.Weakest(); (p == nil) != (v.Port == nil) || p != nil && (p.Port != v.Port || share != v.PortShare) {
				t.Errorf("%s: weakest port %v at %g; the use says %+v at %g", names(set), v.Port, v.PortShare, p, share)
			}
			if at, share := r.Slowest(); v.Slowest != nil && (at == nil || at.Stretch != v.Slowest || share != v.Speed) {
				t.Errorf("%s: slowest %s at %g; the use says %s at %g", names(set), v.Slowest.Name(), v.Speed, at.Stretch.Name(), share)
			}
			if open := len(r.OpenGates(s)); open != set.Open[i] {
				t.Errorf("%s: %d gates open, the use opens %d", names(set), set.Open[i], open)
			}
		}
	}
	if n != len(set.On) || set.Works != (works && n > 0) {
		t.Errorf("%s: %d verdicts, works %v; the use has %d, %v", names(set), len(set.On), set.Works, n, works)
	}
}

func names(set *Set) (text string) {
	for _, m := range set.Machines {
		text += m.Name + " "
	}
	return text
}

// bruteRelief tries every addition up to a size in order, without a shortcut.
func bruteRelief(tree *Tree, set *Set, most int) []*shop.Gate {
	var shut []*shop.Gate
	for _, g := range tree.gates {
		if !asUse(set).Open[g] {
			shut = append(shut, g)
		}
	}
	for size := 1; size <= min(most, len(shut)); size++ {
		for at, more := first(size), true; more; more = next(at, len(shut)) {
			var also []*shop.Gate
			for _, i := range at {
				also = append(also, shut[i])
			}
			works := true
			for _, filter := range States(tree.Collector) {
				r := tree.Solve(asUse(set, also...), filter)
				works = works && r.Captured && r.Carried
			}
			if works {
				return also
			}
		}
	}
	return nil
}

// Every set equals a use of the same machines, on random trees, on the yard
// with its two collectors and movable end, and on the example; every relief
// equals a plain search.
func TestSetsEqualUses(t *testing.T) {
	school, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	shops := []*shop.Shop{mustRead(t, people(t, yard, "4")), mustRead(t, string(school))}
	for seed := uint64(0); seed < often()/5; seed++ {
		d := newDrawing(4100+seed, 6)
		if seed%5 == 4 {
			d.junctions = "flow split"
		}
		if seed%5 == 2 {
			d.curve = humps[seed%3]
		}
		s := d.shop(t)
		s.PeopleAtMachines.V = 3
		row := rowOf(seed, 6)
		if seed%4 == 1 {
			row = curved.ReplaceAllString(row, "fan_curve = ["+strings.ReplaceAll(humps[0], "00 Pa", "50 Pa")+"]")
		}
		shops = append(shops, s, mustRead(t, row))
	}
	relieved, hopeless := 0, 0
	for i, s := range shops {
		k := Reckon(s)
		for j, set := range setsOf(t, s).All {
			if i != 1 || j%5 == 0 {
				checkSet(t, k, s, set)
			}
			for _, relief := range set.Relief {
				if i == 1 && j%9 > 0 {
					continue
				}
				most := relief.Through
				if most < 0 {
					most = mostRelief
				}
				if len(relief.Gates) > 0 {
					most, relieved = len(relief.Gates), relieved+1
				} else {
					hopeless++
				}
				if want := bruteRelief(treeOf(k, &Result{Collector: relief.Collector}), set, most); !slices.Equal(relief.Gates, want) {
					t.Errorf("shop %d, %s: relief %v, plain search %v", i, names(set), gateNames(relief.Gates), gateNames(want))
				}
			}
		}
	}
	if relieved < 50 || hopeless < 50 {
		t.Errorf("%d sets relieved, %d not: too few to say anything", relieved, hopeless)
	}
}

func gateNames(gates []*shop.Gate) (list []string) {
	for _, g := range gates {
		list = append(list, g.Name)
	}
	return list
}

// The sets do not depend on how many processors work at them.
func TestSetsOnOneProcessor(t *testing.T) {
	s := mustRead(t, people(t, yard, "4"))
	many := setsOf(t, s)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if one := setsOf(t, s); !reflect.DeepEqual(one, many) {
		t.Error("one processor finds other sets than several")
	}
}
