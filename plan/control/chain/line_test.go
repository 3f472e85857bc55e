package chain

import (
	"errors"
	"math"
	"testing"

	"dustbook/plan/unit"
)

// spread is a line of loads at places in metres from where the supply stands,
// with the same resistance, out and back, for each metre; and, beside the
// loads, a current taken evenly all along. An even current loses over a run
// what half of it at each end does.
func spread(perMetre, even float64, places, amps []float64) Line {
	l := Line{Loads: make([]Load, len(places)+1)}
	before := 0.0
	for i, x := range places {
		length := x - before
		l.Loops = append(l.Loops, unit.Resistance(perMetre*length))
		l.Loads[i].Current += unit.Current(even * length / 2)
		l.Loads[i+1].Current += unit.Current(even*length/2 + amps[i])
		before = x
	}
	return l
}

func solved(t *testing.T, l Line, feeds ...Feed) []float64 {
	t.Helper()
	volts, err := l.Solve(feeds...)
	if err != nil {
		t.Fatal(err)
	}
	list := make([]float64, len(volts))
	for i, v := range volts {
		list[i] = float64(v)
	}
	return list
}

func hold(t *testing.T, what string, got, want []float64, off float64) {
	t.Helper()
	for i := range want {
		if !near(got[i], want[i], off) {
			t.Errorf("%s: %v V, want %v", what, got, want)
			return
		}
	}
}

// Worked examples of direct-current feeders.
func TestPublishedFeeders(t *testing.T) {
	supply := func(v float64) Feed { return Feed{0, unit.Voltage(v)} }

	// D1: textbook on distribution, example 13.1, as a public digest has it.
	d1 := solved(t, spread(0.02e-3, 0, []float64{500, 1000, 1600, 2000}, []float64{100, 150, 200, 50}), supply(300))
	hold(t, "D1", d1[1:], []float64{295.0, 291.0, 288.0, 287.6}, 0.01)

	// D2: the same, example 13.2: of 1.164 cm², 10 V are lost.
	const area = 1.164e-4
	d2 := solved(t, spread(2*1.78e-8/area, 0, []float64{40, 100, 150, 250}, []float64{30, 40, 100, 50}), supply(250))
	if !near(250-d2[4], 10, 0.005) {
		t.Errorf("D2: %v V are lost, want 10", 250-d2[4])
	}

	// D3: a question bank on distribution systems.
	d3 := solved(t, spread(0.04e-3, 0, []float64{2000, 4000}, []float64{100, 200}), supply(500))
	hold(t, "D3", d3[1:], []float64{476, 460}, 0.01)

	// D4: lecture on distribution, example 13.14: fed at both ends.
	d4 := solved(t, spread(0.1e-3, 0.5, []float64{500, 1000}, []float64{0, 0}), supply(220), Feed{2, 220})
	hold(t, "D4", d4, []float64{220, 213.75, 220}, 0.01)

	// D5: a question bank on uniform loads; the answers are from memory.
	d5 := solved(t, spread(0.6e-3, 2, []float64{150, 200}, []float64{0, 0}), supply(250))
	hold(t, "D5", d5[1:], []float64{250 - 22.5, 250 - 24}, 0.01)

	// D6: an electrician's lesson: 16 AWG of 4.99 ohm a thousand feet.
	d6 := solved(t, Line{[]unit.Resistance{2 * 100 * 4.99e-3}, []Load{{}, {Current: 4}}}, supply(24))
	if lost := 24 - d6[1]; !near(lost, 3.992, 1e-9) || !near(lost, 4.0, 0.05) || math.Round(1000*lost/24) != 166 {
		t.Errorf("D6: %v V are lost", lost)
	}
	if LossOf(1-d6[1]/24) != GreatLoss {
		t.Error("D6: the lesson calls it too much")
	}

	// D7: a page on feeders.
	d7 := solved(t, Line{[]unit.Resistance{2 * 60 * 1.72e-8 / 21.2e-6}, []Load{{}, {Current: 50}}}, supply(240))
	if lost := 240 - d7[1]; !near(lost, 4.868, 0.001) || !near(lost/240, 0.0203, 0.0001) {
		t.Errorf("D7: %v V are lost", lost)
	}

	// D8: a student's question; the answers were worked out beforehand.
	d8 := solved(t, spread(1e-4, 0.5, []float64{200, 500, 800, 900}, []float64{50, 100, 150, 0}), supply(400))
	if !near(d8[2], 370.25, 0.01) || !near(d8[4], 361.75, 0.01) {
		t.Errorf("D8: %v", d8)
	}
}

// gates is a chain of five gates, three metres apart, all at rest but the last
// so many.
func gates(gauge string, warmth, rest, moving float64, movers int) Line {
	ohms, _ := PerMetre(awg(gauge), celsius(warmth))
	l := Line{Loads: make([]Load, 6)}
	for i := 1; i <= 5; i++ {
		l.Loops = append(l.Loops, unit.Resistance(2*3*ohms))
		l.Loads[i].Current = unit.Current(rest)
		if i > 5-movers {
			l.Loads[i].Current = unit.Current(moving)
		}
	}
	return l
}

// Our own cases, worked out beforehand with another program, to the printed
// figure.
func TestGolden(t *testing.T) {
	for _, c := range []struct {
		what  string
		line  Line
		volts float64
		want  []float64
	}{
		{"24 V, the last moves", gates("18", 20, 0.02, 1, 1), 24, []float64{23.8643, 23.7310, 23.6003, 23.4721, 23.3464}},
		{"24 V, all move", gates("18", 20, 1, 1, 5), 24, []float64{23.3716, 22.8688, 22.4917, 22.2404, 22.1147}},
		{"5 V, the last is stalled", gates("22", 20, 0.01, 0.8, 1), 5, []float64{4.7331, 4.4693, 4.2087, 3.9514, 3.6971}},
		{"5 V, thicker", gates("14", 20, 0.01, 0.8, 1), 5, []float64{4.9582, 4.9170, 4.8762, 4.8360, 4.7962}},
		{"12 V", gates("18", 20, 0.03, 3, 1), 12, []float64{11.6079, 11.2195, 10.8349, 10.4540, 10.0770}},
		{"12 V, warm", gates("18", 40, 0.03, 3, 1), 12, []float64{11.5770, 11.1581, 10.7433, 10.3325, 9.9258}},
	} {
		hold(t, c.what, solved(t, c.line, Feed{0, unit.Voltage(c.volts)})[1:], c.want, 0.0002)
	}
}

// A load of constant power has a closed form, and a limit.
func TestConstantPower(t *testing.T) {
	r18, _ := PerMetre(awg("18"), celsius(20))
	r22, _ := PerMetre(awg("22"), celsius(20))
	one := func(ohms, watts float64) Line {
		return Line{[]unit.Resistance{unit.Resistance(2 * 15 * ohms)}, []Load{{}, {Power: unit.Power(watts)}}}
	}
	volts := solved(t, one(r18, 12), Feed{0, 24})[1]
	if !near(volts, 23.68155, 1e-5) || !near(float64(Load{Power: 12}.Amps(unit.Voltage(volts))), 0.50672, 5e-6) {
		t.Errorf("12 W: %v V", volts)
	}
	loop := 2 * 15 * r22
	limit := 25 / (4 * loop)
	if _, err := one(r22, 5).Solve(Feed{0, 5}); !errors.Is(err, ErrNoSolution) {
		t.Errorf("5 W: %v, want no solution", err)
	}
	if got, err := one(r22, 5).Limit(Feed{0, 5}); err != nil || !near(float64(got), limit, 1e-6) || !near(limit, 3.934, 0.0005) {
		t.Errorf("limit %v, %v, want %v", got, err, limit)
	}
	for _, share := range []float64{0.1, 0.5, 0.9, 0.999, 0.999999} {
		watts := share * limit
		want := (5 + math.Sqrt(25-4*loop*watts)) / 2
		if got := solved(t, one(r22, watts), Feed{0, 5})[1]; !near(got, want, 1e-7) {
			t.Errorf("%v of the limit: %v V, want %v", share, got, want)
		}
	}
	if _, err := one(r22, limit*1.000001).Solve(Feed{0, 5}); !errors.Is(err, ErrNoSolution) {
		t.Errorf("just over the limit: %v", err)
	}
	if got, err := (Line{[]unit.Resistance{0}, []Load{{}, {Power: 5}}}).Limit(Feed{0, 5}); err != nil || !math.IsInf(float64(got), 1) {
		t.Errorf("a line without resistance carries %v, %v", got, err)
	}
	if got, err := (Line{[]unit.Resistance{1}, []Load{{}, {Current: 10}}}).Limit(Feed{0, 5}); err != nil || got != 0 {
		t.Errorf("a line short already carries %v, %v", got, err)
	}
}

// Where the supply is connected: the middle halves the reach, the far end
// turns it round.
func TestFeeds(t *testing.T) {
	l := spread(0.05, 0, []float64{10, 20, 30, 40}, []float64{1, 1, 1, 1})
	near1 := solved(t, l, Feed{0, 24})
	far := solved(t, l, Feed{4, 24})
	middle := solved(t, l, Feed{2, 24})
	hold(t, "at the start", near1, []float64{24, 22, 20.5, 19.5, 19}, 1e-9)
	hold(t, "at the far end", far, []float64{21, 21, 21.5, 22.5, 24}, 1e-9)
	hold(t, "in the middle", middle, []float64{23.5, 23.5, 24, 23, 22.5}, 1e-9)
	both := solved(t, l, Feed{0, 24}, Feed{4, 24})
	for i := range both {
		if both[i] < near1[i]-1e-9 || both[i] < far[i]-1e-9 {
			t.Errorf("fed at both ends, node %d has %v, less than by one", i, both[i])
		}
	}
	// Even loads, even spacing: n nodes lose 2 r L I (n+1)/(2n).
	if lost, want := 24-near1[4], 0.05*40*4*5/8.0; !near(lost, want, 1e-9) {
		t.Errorf("%v V are lost, want %v", lost, want)
	}
	// Runs of no length share their volts.
	none := Line{[]unit.Resistance{0, 0, 0.5, 0}, []Load{{}, {Current: 1}, {Power: 2}, {Current: 1}, {Power: 3}}}
	got := solved(t, none, Feed{0, 12})
	if got[1] != 12 || got[2] != 12 || got[3] != got[4] || !(got[3] < 12) {
		t.Errorf("runs of no length: %v", got)
	}
	hold(t, "no length, both ends", solved(t, Line{[]unit.Resistance{0, 0}, []Load{{}, {Current: 1}, {}}}, Feed{0, 12}, Feed{2, 12}), []float64{12, 12, 12}, 0)
	hold(t, "one node", solved(t, Line{nil, []Load{{Current: 1}}}, Feed{0, 12}), []float64{12}, 0)
}

func TestRefusesBadLines(t *testing.T) {
	good := func() Line { return Line{[]unit.Resistance{1, 1}, []Load{{}, {Current: 1}, {Current: 1}}} }
	nan, inf := math.NaN(), math.Inf(1)
	for what, try := range map[string]func(l *Line, f *[]Feed){
		"no nodes":         func(l *Line, f *[]Feed) { *l = Line{} },
		"a run too few":    func(l *Line, f *[]Feed) { l.Loops = l.Loops[:1] },
		"below nought":     func(l *Line, f *[]Feed) { l.Loops[0] = -1 },
		"no number":        func(l *Line, f *[]Feed) { l.Loops[0] = unit.Resistance(nan) },
		"endless":          func(l *Line, f *[]Feed) { l.Loops[0] = unit.Resistance(inf) },
		"load below":       func(l *Line, f *[]Feed) { l.Loads[1].Current = -1 },
		"load no number":   func(l *Line, f *[]Feed) { l.Loads[1].Power = unit.Power(nan) },
		"load endless":     func(l *Line, f *[]Feed) { l.Loads[1].Current = unit.Current(inf) },
		"no feed":          func(l *Line, f *[]Feed) { *f = nil },
		"feed off":         func(l *Line, f *[]Feed) { (*f)[0].Node = 3 },
		"feed of no volts": func(l *Line, f *[]Feed) { (*f)[0].Volts = 0 },
		"feed no number":   func(l *Line, f *[]Feed) { (*f)[0].Volts = unit.Voltage(nan) },
		"feed twice":       func(l *Line, f *[]Feed) { *f = append(*f, (*f)[0]) },
		"unlike supplies":  func(l *Line, f *[]Feed) { l.Loops[0], *f = 0, append(*f, Feed{1, 12}) },
		"too much asked":   func(l *Line, f *[]Feed) { l.Loads[2].Current = 100 },
	} {
		l, feeds := good(), []Feed{{0, 24}}
		if _, err := l.Solve(feeds...); err != nil {
			t.Fatal(err)
		}
		try(&l, &feeds)
		if volts, err := l.Solve(feeds...); err == nil {
			t.Errorf("%s: solved, %v", what, volts)
		}
	}
	bad := Line{}
	if _, err := bad.Limit(); err == nil {
		t.Error("a line without nodes has a limit")
	}
}

// A tangent too steep for its line is no step: beyond a feed, between two,
// just where it turns, and where a second one turns it back.
func TestSteep(t *testing.T) {
	for _, c := range []struct {
		watts []unit.Power
		feeds []Feed
		ok    bool
	}{
		{[]unit.Power{0, 100, 0}, []Feed{{0, 12}}, false},
		{[]unit.Power{0, 24, 0}, []Feed{{0, 12}}, true},
		{[]unit.Power{0, 100, 0}, []Feed{{0, 12}, {2, 12}}, false},
		{[]unit.Power{0, 50, 0}, []Feed{{0, 12}, {2, 12}}, false},
		{[]unit.Power{0, 49, 0}, []Feed{{0, 12}, {2, 12}}, true},
		{[]unit.Power{0, 100, 100, 0}, []Feed{{0, 12}, {3, 12}}, false},
		{[]unit.Power{0, 20, 20, 0}, []Feed{{0, 12}, {3, 12}}, true},
	} {
		var l Line
		var at []unit.Voltage
		for i, p := range c.watts {
			if i > 0 {
				l.Loops = append(l.Loops, 1)
			}
			l.Loads, at = append(l.Loads, Load{Power: p}), append(at, 5)
		}
		if _, ok := l.step(at, c.feeds); ok != c.ok {
			t.Errorf("%v W by %v: ok %v", c.watts, c.feeds, ok)
		}
	}
}
