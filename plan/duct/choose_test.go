package duct

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// toChoose is a small drawn shop with up to three ducts to be chosen; %s in it
// stands for each size.
func toChoose(seed uint64) (text string, ducts []string) {
	r := rand.New(rand.NewPCG(seed, 555))
	machines := 2 + r.IntN(2)
	text = rowOf(seed, machines)
	text = strings.Replace(text, `inlet = "200 mm"`, `inlet = "160 mm"`, 1)
	text = strings.Replace(text, "name = \"Row\"", fmt.Sprintf("name = \"Row\"\nair_temperature = \"%d C\"", 10+r.IntN(20)), 1)
	ducts = []string{"Main"}
	for i := range machines {
		if r.IntN(3) > 0 && len(ducts) < 3 {
			ducts = append(ducts, fmt.Sprintf("D%d", i))
		}
	}
	if r.IntN(4) == 0 && len(ducts) > 1 {
		ducts = ducts[1:]
	}
	for _, d := range ducts {
		from := strings.Index(text, fmt.Sprintf("[[duct]]\nname = %q\n", d))
		at := from + strings.Index(text[from:], "size = \"")
		end := at + strings.Index(text[at:], "\n")
		text = text[:at] + "size = \"%s\"" + text[end:]
	}
	if r.IntN(2) == 0 {
		text += "[[use]]\nname = \"Two\"\nmachines = [\"M0\", \"M1\"]\nhours = 2\n"
	}
	if r.IntN(8) == 0 {
		text = strings.Replace(text, "[[collector]]", "[method]\njunctions = \"flow split\"\n[[collector]]", 1)
	}
	return text, ducts
}

func filled(text string, sizes []string) string {
	var values []any
	for _, s := range sizes {
		values = append(values, s)
	}
	return fmt.Sprintf(text, values...)
}

// weighed is one choice as a plain search sees it.
type weighed struct {
	sizes               []float64
	score, cost, energy float64
}

// weigh reads a shop file with its sizes in place and finds what they come to.
// It is nothing where a duct is wider than what it empties into, looked at
// where one of the two was chosen.
func weigh(t *testing.T, text string, chosen []string) *weighed {
	t.Helper()
	s := mustRead(t, text)
	w := &weighed{score: 1}
	picked := func(d *shop.Duct) bool { return d != nil && slices.Contains(chosen, d.Name) }
	for _, d := range s.Ducts {
		below := s.Collectors[0].Inlet
		if d.Into != nil {
			below = d.Into.Size
		}
		if (picked(d) || picked(d.Into)) && unit.Compare(float64(d.Size), float64(below)) > 0 {
			return nil
		}
		if picked(d) {
			w.sizes = append(w.sizes, float64(d.Size))
			w.cost += math.Pi * float64(d.Bore) * float64(d.Length)
		}
	}
	k := Reckon(s)
	price := 0
	for _, u := range k.Uses {
		if len(u.Machines) == 0 {
			continue
		}
		results := u.Results
		set := &Set{Machines: u.Machines}
		for _, r := range results {
			if !r.Captured {
				set = nil
			}
		}
		if _, carried := judged(results); set != nil && !carried {
			if also := bruteRelief(k.Trees[0], set, mostRelief); also != nil {
				price += len(also)
				results = k.Trees[0].solveAll(asUse(set, also...))
			}
		}
		for _, r := range results {
			switch {
			case !r.OnCurve:
				w.score = 0
			case !r.Captured || !r.Carried:
				if p, share := r.Weakest(); p != nil {
					w.score = min(w.score, share, almost)
				}
				if at, share := r.Slowest(); at != nil && !r.Carried {
					w.score = min(w.score, share, almost)
				}
			}
		}
		if hours := 1.0; results[0].OnCurve {
			if u.Name == "Two" {
				hours = 2
			}
			w.energy += hours * float64(results[0].Flow) * float64(results[0].Static)
		}
	}
	w.cost, w.energy = unit.Six(unit.Six(w.cost)+0.3*float64(price)), unit.Six(w.energy)
	return w
}

// plainSearch tries every choice of sizes.
func plainSearch(t *testing.T, text string, ducts []string) (best *weighed) {
	t.Helper()
	sizes := StockSizes(unit.Metric)
	at := make([]int, len(ducts))
	most := 0.160 // the inlet; without the main, what it has at most
	if ducts[0] != "Main" {
		most = 0.190
	}
	for {
		var chosen []string
		for _, i := range at {
			chosen = append(chosen, fmt.Sprintf("%g mm", math.Round(float64(sizes[i])*1000)))
		}
		if w := weigh(t, filled(text, chosen), ducts); w != nil && (best == nil || w.score > best.score ||
			w.score == best.score && (w.cost < best.cost || w.cost == best.cost && w.energy < best.energy)) {
			best = w // of choices that are alike the first stays: the smallest in file order
		}
		d := len(at) - 1
		for ; d >= 0; d-- {
			if at[d]++; at[d] < len(sizes) && unit.Compare(float64(sizes[at[d]]), most) <= 0 {
				break
			}
			at[d] = 0
		}
		if d < 0 {
			return best
		}
	}
}

// The chosen sizes are those of a plain search over every choice, read anew
// from a file for each.
func TestChoiceEqualsPlainSearch(t *testing.T) {
	count, met, missed, relieved := uint64(20), 0, 0, 0
	if os.Getenv("DUSTBOOK_WHOLE") == "1" {
		count = 100
	}
	for seed := range count {
		text, ducts := toChoose(seed)
		var open []string
		for range ducts {
			open = append(open, "choose")
		}
		s := mustRead(t, filled(text, open))
		list, err := Reckon(s).Choose(context.Background(), s)
		if err != nil || len(list) != 1 {
			t.Fatal(err, len(list))
		}
		got, want := list[0], plainSearch(t, text, ducts)
		if want == nil {
			if len(got.Sizes) > 0 {
				t.Errorf("seed %d: sizes %v where none fit", seed, got.Sizes)
			}
			continue
		}
		var sizes []float64
		for _, v := range got.Sizes {
			sizes = append(sizes, float64(v.Size))
		}
		if !got.Proven || !slices.Equal(sizes, want.sizes) || got.Score != want.score || float64(got.Cost) != want.cost || got.Energy != want.energy {
			t.Errorf("seed %d: sizes %v, score %g, cost %g, energy %g, proven %v; a plain search finds %+v", seed, sizes, got.Score, got.Cost, got.Energy, got.Proven, *want)
		}
		if got.Met != (want.score == 1) || got.Met != (got.Miss == nil) {
			t.Errorf("seed %d: met %v, miss %+v, at a score of %g", seed, got.Met, got.Miss, want.score)
		}
		if got.Met {
			met++
		} else {
			missed++
		}
		if len(got.Relief) > 0 {
			relieved++
		}
	}
	t.Logf("%d met, %d missed, %d with relief", met, missed, relieved)
	if met < 3 || missed < 3 || relieved < 1 {
		t.Errorf("%d met, %d missed, %d with relief: too few to say anything", met, missed, relieved)
	}
}
