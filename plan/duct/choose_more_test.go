package duct

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

func chosen(t *testing.T, text string) *Choice {
	t.Helper()
	s := mustRead(t, text)
	list, err := Reckon(s).Choose(context.Background(), s)
	if err != nil || len(list) != 1 {
		t.Fatal(err, len(list))
	}
	return list[0]
}

// pipeToChoose is one machine on one pipe to be chosen.
const pipeToChoose = `
[shop]
name = "Pipe"
units = "metric"
[[collector]]
name = "Fan"
inlet = "160 mm"
fan_curve = [["0 m3/s", "2500 Pa"], ["0.5 m3/s", "2000 Pa"], ["1 m3/s", "0 Pa"]]
[[machine]]
name = "M"
kind = "other"
port = { size = "100 mm", flow = "800 m3/h" }
[[duct]]
name = "Pipe"
to = "Fan"
size = "choose"
length = "10 m"
serves = ["M"]
`

// By hand: of the sizes of one pipe the smallest with which the machine gets
// its need and the air is fast enough.
func TestChoiceOfOnePipe(t *testing.T) {
	v := chosen(t, pipeToChoose)
	want := unit.Length(0)
	for _, size := range StockSizes(unit.Metric) {
		if size > 0.160 {
			break
		}
		r := theResult(t, Reckon(mustRead(t, replaced(t, pipeToChoose, `"choose"`, fmt.Sprintf(`"%.9g m"`, float64(size))))), "M", NoFilter)
		if r.Captured && r.Carried {
			want = size
			break
		}
	}
	if want == 0 || !v.Met || !v.Proven || len(v.Sizes) != 1 || v.Sizes[0].Size != want {
		t.Fatalf("%+v, want %g m", v, want)
	}
	if area := math.Pi * float64(want) * 10; !near(float64(v.Area), area, 1e-5) || v.Cost != v.Area || v.Energy <= 0 || v.Score != 1 {
		t.Errorf("%+v, want %g m² and nothing for gates", v, area)
	}
}

// A need that no size meets: the nearest miss names it, and gets as near as
// any size does.
func TestChoiceMisses(t *testing.T) {
	text := replaced(t, pipeToChoose, "800 m3/h", "3000 m3/h")
	v := chosen(t, text)
	if v.Met || !v.Proven || v.Miss == nil || v.Miss.Use.Name != "M" || v.Miss.Port == nil || v.Miss.Share != v.Score {
		t.Fatalf("%+v", v)
	}
	for _, size := range StockSizes(unit.Metric) {
		if size > 0.160 {
			break
		}
		r := theResult(t, Reckon(mustRead(t, replaced(t, text, `"choose"`, fmt.Sprintf(`"%.9g m"`, float64(size))))), "M", NoFilter)
		if miss := missOf(r.Use, r); miss.Share > v.Score {
			t.Errorf("%g m misses by less: %g", size, miss.Share)
		}
	}
}

// Where a duct that stays is wider than the inlet, nothing fits between them.
func TestChoiceFitsNothing(t *testing.T) {
	v := chosen(t, pipeToChoose+"[[duct]]\nname = \"Wide\"\nto = \"Pipe\"\nsize = \"200 mm\"\nlength = \"1 m\"\n")
	if v.Met || len(v.Sizes) > 0 || !v.Proven {
		t.Errorf("%+v", v)
	}
}

// A shop without a duct to choose has no choice; two collectors have one each;
// uses that no size meets are told apart.
func TestChoiceByCollector(t *testing.T) {
	s := mustRead(t, yard)
	if list, err := Reckon(s).Choose(context.Background(), s); len(list) > 0 || err != nil {
		t.Errorf("%d choices, %v", len(list), err)
	}
	text := yard
	for _, name := range []string{"Sweep drop", "Press pipe"} {
		from := strings.Index(text, fmt.Sprintf("[[duct]]\nname = %q", name))
		at := from + strings.Index(text[from:], "size = ")
		text = text[:at] + "size = \"choose\"" + text[at+strings.Index(text[at:], "\n"):]
	}
	s = mustRead(t, text)
	list, err := Reckon(s).Choose(context.Background(), s)
	if err != nil || len(list) != 2 || list[0].Collector.Name != "Cyclone" || list[1].Sizes[0].Duct.Name != "Press pipe" {
		t.Fatal(err, list)
	}
	if b := list[0].Beyond; len(b) != 1 || b[0].Name != "Lathe and sander" {
		t.Errorf("beyond: %v", b)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Reckon(s).Choose(ctx, s); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped work returns %v", err)
	}
}

// The bounds of the search hold: with some sizes open, no choice among them
// does better than the bound says. And no chosen duct is wider than the next.
func TestChoiceBoundsHold(t *testing.T) {
	checked := 0
	for seed := uint64(1000); seed < 1000+often()/4; seed++ {
		s := mustRead(t, chooseAllOf(seed, 4))
		k := Reckon(s)
		c := newChooser(context.Background(), s, k.Trees[0], k.Uses)
		r := rand.New(rand.NewPCG(seed, 3))
		for range 10 {
			open := c.all()
			at := make([]int, len(c.ducts))
			for d := range at {
				// the first duct is the main: upstream of it nothing is wider
				at[d] = r.IntN(7)
				if d > 0 {
					at[d] = r.IntN(at[0] + 1)
				}
				if r.IntN(2) == 0 {
					open.only(d, at[d])
				}
			}
			for _, c.least = range []float64{1, 0} {
				known := make([]bound, len(c.uses))
				for d := range c.ducts {
					known = c.bounds.update(known, d, open)
				}
				best, gates := 1.0, 0
				for _, b := range known {
					best, gates = min(best, b.score), gates+b.gates
				}
				c.best, c.least = nil, 0
				o := c.try(at, nil)
				given := 0
				for _, relief := range o.relief {
					given += len(relief.Gates)
				}
				if o.score > best+slack || o.score == 1 && given < gates {
					t.Errorf("seed %d: %v comes to %g with %d gates; the bound says %g, %d", seed, at, o.score, given, best, gates)
				}
				checked++
			}
		}
	}
	if checked < 100 {
		t.Errorf("%d choices checked", checked)
	}
}

func chooseAllOf(seed uint64, machines int) string {
	return strings.Replace(everySize.ReplaceAllString(rowOf(seed, machines), "${1}size = \"choose\""), `inlet = "200 mm"`, `inlet = "180 mm"`, 1)
}

// On a row with every duct to be chosen, what is chosen stands up to a full
// solve, and no duct is wider than what it empties into.
func TestChoiceStandsUp(t *testing.T) {
	for _, seed := range []uint64{7, 21} {
		text := chooseAllOf(seed, 6)
		s := mustRead(t, text)
		list, err := Reckon(s).Choose(context.Background(), s)
		if err != nil {
			t.Fatal(err)
		}
		v := list[0]
		for _, size := range v.Sizes {
			text = strings.Replace(text, `size = "choose"`, fmt.Sprintf(`size = "%.9g m"`, float64(size.Size)), 1)
		}
		s = mustRead(t, text)
		for _, d := range s.Ducts {
			if d.Into != nil && d.Size > d.Into.Size {
				t.Errorf("seed %d: %s is wider than %s", seed, d.Name, d.Into.Name)
			}
		}
		met := true
		for _, u := range Reckon(s).Uses[:6] {
			results := u.Results
			if i := slices.IndexFunc(v.Relief, func(o Opened) bool { return o.Use.Name == u.Name }); i >= 0 {
				var also []*shop.Gate
				for _, g := range v.Relief[i].Gates {
					also = append(also, s.Gates[slices.IndexFunc(s.Gates, func(h *shop.Gate) bool { return h.Name == g.Name })])
				}
				results = Grow(s, s.Collectors[0], StateOf(s)).solveAll(u.with(also))
			}
			captured, carried := judged(results)
			met = met && captured && carried
		}
		if met != v.Met {
			t.Errorf("seed %d: met %v, solved in full %v", seed, v.Met, met)
		}
	}
}
