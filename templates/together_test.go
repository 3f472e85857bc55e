package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/plan/duct"
)

// Every pair stands in the table with the word that the plan gives it, the
// same from both sides.
func TestTogetherSheet(t *testing.T) {
	b := roomsBook(t)
	x := b.Plan.Together()
	v := b.togetherView(x)
	signs := map[string]bool{}
	for _, k := range v.Key {
		signs[k.Sign] = true
	}
	for i := range v.Rows {
		for j, cell := range v.Rows[i].Cells {
			if cell != v.Rows[j].Cells[i] {
				t.Errorf("%s with %s: %q and %q", v.Rows[i].Name, v.Names[j].Name, cell.Sign, v.Rows[j].Cells[i].Sign)
			}
			works := cell.Word == b.words.Text("together.tip.works") || cell.Word == b.words.Text("together.tip.thin")
			if works != x.Pair(i, j).Works || cell.Sign == "" || !signs[cell.Sign] {
				t.Errorf("%s with %s: %+v", v.Rows[i].Name, v.Names[j].Name, cell)
			}
		}
	}
	_, words := b.sheet(t, "together.html")
	inOrder(t, "together", words, "at once", "Machine by machine", "What works here works by the model", "Why thin", "Open another gate as well", "Machines that do not work alone", "% of the speed it needs", "Pairs that fall short, and why", "The largest sets that work", "How many gates")
}

// Each set that fails says why, and what would help or that nothing does.
func TestBrokenSetsSayWhy(t *testing.T) {
	b := roomsBook(t)
	words := map[string]int{}
	for _, s := range b.Plan.Together().All {
		word := s.Stands()
		words[word]++
		why, helps := b.whyBroken(s), b.helps(s)
		if word == "works" {
			if len(why) != 0 || len(helps) != 0 {
				t.Errorf("%s works, and: %v, %v", setName(s), why, helps)
			}
			continue
		}
		if len(why) == 0 || len(helps) == 0 {
			t.Errorf("%s (%s): why %v, helps %v", setName(s), word, why, helps)
		}
	}
	for _, word := range []string{"works", "air", "dust", "relief", "apart"} {
		if words[word] == 0 {
			t.Errorf("the school has no set that is %q: %v", word, words)
		}
	}
}

// The verdict: none, one at a time, so many, all.
func TestTogetherVerdict(t *testing.T) {
	b := roomsBook(t)
	x := b.Plan.Together()
	var one, works *duct.Set
	for _, s := range x.All {
		if s.Works && len(s.Machines) == 1 {
			one = s
		}
		if s.Works {
			works = s
		}
	}
	all := &duct.Set{Machines: b.Plan.Shop.Machines, Works: true}
	for _, c := range []struct {
		largest []*duct.Set
		word    string
	}{{nil, "none works"}, {[]*duct.Set{one}, "one at a time"}, {[]*duct.Set{works}, "3 at once"}, {[]*duct.Set{all}, "all at once"}} {
		v := b.togetherVerdict(&duct.Sets{All: x.All, Largest: c.largest, Size: x.Size})
		if v.Words[0].Text != c.word || v.Says == "" || v.Do == "" {
			t.Errorf("%+v, want %q", v, c.word)
		}
	}
	relief := x.All[slices.IndexFunc(x.All, func(s *duct.Set) bool { return len(s.Machines) == 2 && s.Stands() == "relief" })]
	for _, c := range []struct {
		all, largest []*duct.Set
		says         bool
	}{{[]*duct.Set{one, relief}, []*duct.Set{one}, true}, {[]*duct.Set{one}, []*duct.Set{one}, false}, {[]*duct.Set{relief}, nil, true}, {nil, nil, false}} {
		if v := b.togetherVerdict(&duct.Sets{All: c.all, Largest: c.largest, Size: 2}); strings.Contains(v.Says, "1 set works with another gate open as well") != c.says {
			t.Errorf("%d sets, %d work: %q", len(c.all), len(c.largest), v.Says)
		}
	}
	limited := *x
	limited.Asked = x.Size + 1
	if s := strings.Join(b.togetherView(&limited).Notes, " "); !strings.Contains(s, "more than 3 machines") {
		t.Errorf("limited: %q", s)
	}
	if s := strings.Join(b.togetherView(x).Notes, " "); strings.Contains(s, "more than") {
		t.Errorf("not limited: %q", s)
	}
}
