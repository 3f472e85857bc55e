package chain

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"dustbook/plan/unit"
)

// plain solves the equations of the nodes as they stand, by elimination: at
// every node that is not fed, what flows in is what the load takes. Every run
// has a resistance.
func plain(l Line, feeds []Feed) []float64 {
	n := len(l.Loads)
	rows := make([][]float64, n)
	for i := range rows {
		rows[i] = make([]float64, n+1)
	}
	for i, r := range l.Loops {
		g := 1 / float64(r)
		rows[i][i] += g
		rows[i+1][i+1] += g
		rows[i][i+1] -= g
		rows[i+1][i] -= g
	}
	for i, load := range l.Loads {
		rows[i][n] = -float64(load.Current)
	}
	for _, f := range feeds {
		clear(rows[f.Node])
		rows[f.Node][f.Node], rows[f.Node][n] = 1, float64(f.Volts)
	}
	for c := range n {
		best := c
		for r := c; r < n; r++ {
			if math.Abs(rows[r][c]) > math.Abs(rows[best][c]) {
				best = r
			}
		}
		rows[c], rows[best] = rows[best], rows[c]
		for r := range n {
			if r != c {
				by := rows[r][c] / rows[c][c]
				for k := c; k <= n; k++ {
					rows[r][k] -= by * rows[c][k]
				}
			}
		}
	}
	volts := make([]float64, n)
	for i := range volts {
		volts[i] = rows[i][n] / rows[i][i]
	}
	return volts
}

// any line, with one feed or two; watts says whether some loads are of
// constant power.
func anyLine(random *rand.Rand, watts bool) (Line, []Feed) {
	n := 2 + random.IntN(12)
	l := Line{Loads: make([]Load, n)}
	for i := range n {
		if i > 0 {
			l.Loops = append(l.Loops, unit.Resistance(0.01+random.Float64()))
		}
		l.Loads[i].Current = unit.Current(random.Float64() * 0.5)
		if watts && random.IntN(2) == 0 {
			l.Loads[i].Power = unit.Power(random.Float64() * 4)
		}
	}
	volts := unit.Voltage([]float64{5, 12, 24}[random.IntN(3)])
	feeds := []Feed{{random.IntN(n), volts}}
	if random.IntN(2) == 0 && feeds[0].Node < n-1 {
		feeds = append(feeds, Feed{feeds[0].Node + 1 + random.IntN(n-1-feeds[0].Node), volts * unit.Voltage(0.9+random.Float64()/5)})
	}
	return l, feeds
}

// Seeded lines of constant currents against the plain equations.
func TestAgainstPlain(t *testing.T) {
	random := rand.New(rand.NewPCG(26, 11))
	solvedOnes, refused := 0, 0
	for range 3000 {
		l, feeds := anyLine(random, false)
		want := plain(l, feeds)
		short := false
		for _, v := range want {
			short = short || !(v > 0)
		}
		got, err := l.Solve(feeds...)
		if short {
			refused++
			if !errors.Is(err, ErrNoSolution) {
				t.Fatalf("%+v %v: %v, want no solution: %v", l, feeds, err, want)
			}
			continue
		}
		solvedOnes++
		if err != nil {
			t.Fatalf("%+v %v: %v", l, feeds, err)
		}
		for i := range want {
			if !near(float64(got[i]), want[i], 1e-9*float64(feeds[0].Volts)) {
				t.Fatalf("%+v %v: node %d: %v, want %v", l, feeds, i, got[i], want[i])
			}
		}
	}
	if solvedOnes < 500 || refused < 100 {
		t.Errorf("%d solved, %d refused: both sides have to be met", solvedOnes, refused)
	}
}

// Seeded lines with loads of constant power: the solution is one of the plain
// equations with its own currents, and no line has volts at hand where the
// solver says that there are none: a plain fixed point, from above, ends too.
func TestPowerAgainstPlain(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 1958))
	solvedOnes, refused := 0, 0
	for range 2000 {
		l, feeds := anyLine(random, true)
		got, err := l.Solve(feeds...)
		fixed, settles := fixedPoint(l, feeds)
		if errors.Is(err, ErrNoSolution) {
			refused++
			if settles {
				t.Fatalf("%+v %v: refused, but %v holds", l, feeds, fixed)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		solvedOnes++
		currents := Line{l.Loops, nil}
		for i, load := range l.Loads {
			currents.Loads = append(currents.Loads, Load{Current: load.Amps(got[i])})
		}
		want := plain(currents, feeds)
		for i := range want {
			if math.IsNaN(float64(got[i])) || !near(float64(got[i]), want[i], 1e-6*float64(feeds[0].Volts)) {
				t.Fatalf("%+v %v: node %d: %v, its currents give %v", l, feeds, i, got[i], want[i])
			}
			if settles && !near(float64(got[i]), fixed[i], 1e-6*float64(feeds[0].Volts)) {
				t.Fatalf("%+v %v: node %d: %v, the fixed point is %v", l, feeds, i, got[i], fixed[i])
			}
		}
	}
	if solvedOnes < 300 || refused < 200 {
		t.Errorf("%d solved, %d refused: both sides have to be met", solvedOnes, refused)
	}
}

// fixedPoint goes from the highest feed down: currents by volts, volts by
// currents. It falls steadily to the upper solution where there is one.
func fixedPoint(l Line, feeds []Feed) (volts []float64, settles bool) {
	volts = make([]float64, len(l.Loads))
	for i := range volts {
		for _, f := range feeds {
			volts[i] = max(volts[i], float64(f.Volts))
		}
	}
	for range 5000 {
		currents := Line{l.Loops, nil}
		for i, load := range l.Loads {
			currents.Loads = append(currents.Loads, Load{Current: load.Amps(unit.Voltage(volts[i]))})
		}
		next := plain(currents, feeds)
		moved := 0.0
		for i, v := range next {
			if !(v > 0) {
				return nil, false
			}
			moved = max(moved, math.Abs(v-volts[i]))
		}
		volts = next
		if moved < 1e-10 {
			return volts, true
		}
	}
	return nil, false
}

// Lower volts anywhere never come of less load, thicker cable or more supply.
func TestMonotone(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 14))
	met := 0
	for range 500 {
		l, feeds := anyLine(random, true)
		base, err := l.Solve(feeds...)
		if err != nil {
			continue
		}
		met++
		eased := Line{append([]unit.Resistance(nil), l.Loops...), append([]Load(nil), l.Loads...)}
		if random.IntN(2) == 0 || len(feeds) > 1 {
			at := random.IntN(len(eased.Loads))
			eased.Loads[at].Current *= 0.5
			eased.Loads[at].Power *= 0.5
		} else {
			eased.Loops[random.IntN(len(eased.Loops))] *= 0.5
		}
		better, err := eased.Solve(feeds...)
		if err != nil {
			t.Fatalf("%+v: eased, no solution", l)
		}
		for i := range base {
			if better[i] < base[i]-1e-9 {
				t.Fatalf("%+v: eased, node %d falls from %v to %v", l, i, base[i], better[i])
			}
		}
	}
	if met < 100 {
		t.Errorf("only %d lines", met)
	}
}
