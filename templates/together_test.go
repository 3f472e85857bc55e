package templates

import (
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
			works := cell.Word == b.words.Text("together.word.works")
			if works != x.Pair(i, j).Works || cell.Sign == "" || !signs[cell.Sign] {
				t.Errorf("%s with %s: %+v", v.Rows[i].Name, v.Names[j].Name, cell)
			}
		}
	}
	_, words := b.sheet(t, "together.html")
	inOrder(t, "together", words, "at once", "Machine by machine", "What works here works by the model", "Open another gate as well", "Machines that do not work alone", "% of the speed it needs", "The largest sets that work", "How many gates")
}

// Each set that fails says why, and what would help or that nothing does.
func TestBrokenSetsSayWhy(t *testing.T) {
	b := roomsBook(t)
	words := map[string]int{}
	for _, s := range b.Plan.Together().All {
		word := standing(s)
		words[word]++
		why, helps := b.whyBroken(s), b.helps(s)
		if word == "works" {
			if len(why) != 0 {
				t.Errorf("%s works, and: %v", setName(s), why)
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
	limited := *x
	limited.People = x.Size + 1
	if s := b.togetherView(&limited); !strings.Contains(s.Limited, "more than 3 machines") {
		t.Errorf("limited: %q", s.Limited)
	}
	if s := b.togetherView(x); s.Limited != "" {
		t.Errorf("not limited: %q", s.Limited)
	}
}
