package timing

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// machinesOf are machines used for one hour a day with these starts.
func machinesOf(starts ...int) []Rate {
	var list []Rate
	for i, n := range starts {
		m := &shop.Machine{Name: fmt.Sprint("Machine ", i+1)}
		m.Starts, m.Hours = shop.Field[int]{V: n, How: shop.Stated}, shop.Field[float64]{V: 1, How: shop.Stated}
		list = append(list, rateOf(m))
	}
	return list
}

// judged are the starts of a fan with a limit and a run-on.
func judged(rates []Rate, people int, limit float64, runOn unit.Time) Starts {
	x := Starts{Limit: Limit{By: ByMaker, PerHour: limit}, Machines: rates, RunOn: runOn}
	for _, r := range rates {
		x.Missing = append(x.Missing, r.Missing...)
	}
	full := busiest(rates, people)
	x.Asked = full.asked()
	x.judge(full, people)
	return x
}

// countedBySeconds is how often a fan starts, found second by second in
// another way than the package's: the fan is on while its run-on lasts.
func countedBySeconds(times []float64, runOn float64) int {
	n, until := 0, math.Inf(-1)
	for _, at := range times {
		if at > until+1e-3 {
			n++
		}
		until = at + runOn
	}
	return n
}

// No hour of a shop that is called within breaks the limit: whichever machines
// rest and however many people work, with the starts spread evenly. Each hour
// is made here once more, by the words of the doc comments.
func TestNoQuieterHourBreaks(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	verdicts := map[StartsVerdict]int{}
	for range 600 {
		var starts []int
		for range 1 + random.IntN(5) {
			starts = append(starts, 1+random.IntN(25))
		}
		people, limit := 1+random.IntN(3), float64(1+random.IntN(14))
		rates := machinesOf(starts...)
		x := judged(rates, people, limit, unit.Time(30+random.IntN(1200)))
		if x.Verdict == Over && x.Hold > 0 {
			if y := judged(rates, people, limit, x.Hold); y.Verdict != Within {
				t.Fatalf("%v, %d people, %v an hour: advised %v is not within", starts, people, limit, x.Hold)
			}
			if y := judged(rates, people, limit, x.Hold-1); y.Verdict == Within && !y.IsSure() {
				t.Fatalf("%v, %d people, %v an hour: a second less than %v would do", starts, people, limit, x.Hold)
			}
		}
		verdicts[x.Verdict]++
		worst := 0
		for set := 1; set < 1<<len(starts); set++ {
			var some []int
			for i, n := range starts {
				if set>>i&1 == 1 {
					some = append(some, n)
				}
			}
			slices.SortFunc(some, func(a, b int) int { return b - a })
			for p := 1; p <= people; p++ {
				worst = max(worst, startsWhen(some, p, limit, float64(x.RunOn)))
			}
		}
		if broken := worst > int(limit); broken == (x.Verdict == Within) {
			t.Fatalf("%v, %d people, %v an hour, run-on %v: verdict %v, %d starts in the worst hour", starts, people, limit, x.RunOn, x.Verdict, worst)
		}
	}
	if verdicts[Within] < 50 || verdicts[Over] < 50 {
		t.Errorf("one-sided: %v", verdicts)
	}
}

// startsWhen are the fan's starts in an hour in which some people work at
// machines that are used a whole hour, the most often started first; nought
// where they start no more often than the motor may.
func startsWhen(some []int, people int, limit, runOn float64) int {
	var times []float64
	asked := 0
	for i, n := range some {
		for j := range n {
			if i < people {
				times = append(times, 3600*(float64(j)+(float64(i)+0.5)/float64(len(some)))/float64(n))
			}
		}
		if i < people {
			asked += n
		}
	}
	if float64(asked) <= limit {
		return 0
	}
	slices.Sort(times)
	return countedBySeconds(times, runOn)
}

// Too many hours to try: the run-on that covers the busiest is not called
// within, the sure one is; a second machine fewer and each hour is tried.
func TestTooManyHours(t *testing.T) {
	many := make([]int, 15)
	for i := range many {
		many[i] = 10
	}
	for _, row := range []struct {
		machines int
		runOn    unit.Time
		want     StartsVerdict
	}{{15, 600, Within}, {15, 599, OnlyBusiest}, {15, 200, Over}, {12, 599, Within}, {12, 359, Over}} {
		x := judged(machinesOf(many[:row.machines]...), 1, 6, row.runOn)
		if x.Verdict != row.want {
			t.Errorf("%+v: %v, counted %d", row, x.Verdict, x.Counted)
		}
		if x.Verdict == Over && row.machines == 15 && x.Hold != x.Sure {
			t.Errorf("%+v: hold %v, want the sure %v", row, x.Hold, x.Sure)
		}
	}
}

func BenchmarkHours(b *testing.B) {
	rates := machinesOf(20, 12, 30, 8, 25, 14, 6, 18, 9, 11)
	for b.Loop() {
		judged(rates, 3, 5, 200)
	}
}
