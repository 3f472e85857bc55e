package timing

import (
	"slices"
	"testing"

	"dustbook/plan/unit"
)

// Thresholds worked out beforehand: the geometric mean of the currents off
// and idling. Common practice, no source.
func TestBand(t *testing.T) {
	for _, row := range []struct {
		off, on unit.Current
		want    string
	}{{0.05, 5.1, "0.50"}, {0.2, 2.0, "0.63"}, {0.02, 0.5, "0.10"}} {
		s := Sensed{Off: row.off, On: row.on, OffKnown: true, OnKnown: true}
		low, best, high := s.Band()
		if unit.Fixed(float64(best), 2) != row.want || best < low || best > high || !s.Usable() {
			t.Errorf("%v: %v between %v and %v, want %s", row, best, low, high, row.want)
		}
	}
	// bounded on both sides: twice the one is more than the mean, six tenths of the other less
	if low, best, high := (Sensed{Off: 1, On: 3.4, OffKnown: true, OnKnown: true}).Band(); low != 2 || best != 2 || high != 2.04 {
		t.Errorf("%v, %v, %v", low, best, high)
	}
	if low, best, high := (Sensed{Off: 1, On: 3, OffKnown: true, OnKnown: true}).Band(); low != 2 || best != 1.8 || high != 1.8 {
		t.Errorf("no room between: %v, %v, %v", low, best, high)
	}
	if low, high := LetsGo(2); low != 1.4 || high != 1.7 {
		t.Errorf("lets go at %v to %v", low, high)
	}
}

// Both sides of usable: three times the current off.
func TestUsable(t *testing.T) {
	for on, want := range map[unit.Current]bool{2.99: false, 3: true} {
		if got := (Sensed{Off: 1, On: on, OffKnown: true, OnKnown: true}).Usable(); got != want {
			t.Errorf("off 1 A, idling %v A: usable %v", on, got)
		}
	}
}

// Turns by the sheets of current-operated switches: 0.5 A to act, a fan of
// 0.17 A: 2.94 turns, so 3 and one to spare, which see 0.68 A.
func TestTurnsFor(t *testing.T) {
	for _, row := range []struct {
		current, least unit.Current
		want           int
	}{{0.17, 0.5, 4}, {0.5, 0.5, 1}, {0.49, 0.5, 3}, {0.25, 0.5, 3}, {0.01, 0.5, 0}, {0, 0.5, 0}} {
		if got := TurnsFor(row.current, row.least); got != row.want {
			t.Errorf("%v A for %v A: %d turns, want %d", row.current, row.least, got, row.want)
		}
	}
	if sees := unit.Fixed(0.17*4, 2); sees != "0.68" {
		t.Error(sees)
	}
}

const currents = "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"1.5 A\"\nrange = \"0.5 A to 50 A\"\n"

// Every stand of a threshold, with its far side.
func TestStand(t *testing.T) {
	for _, row := range []struct {
		name, with string
		want       Stand
		contact    bool
	}{
		{"stands", currents, Stands, false},
		{"at the lower margin", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"0.4 A\"\n", Stands, false},
		{"below the lower margin", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"0.39 A\"\n", LittleMargin, false},
		{"at the upper margin", "standby = \"0.2 A\"\nno_load = \"5 A\"\nthreshold = \"3 A\"\n", Stands, false},
		{"above the upper margin", "standby = \"0.2 A\"\nno_load = \"5 A\"\nthreshold = \"3.01 A\"\n", LittleMargin, false},
		{"at the current idling", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"5.1 A\"\n", Misses, false},
		{"at the current off", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"0.2 A\"\n", NeverStops, false},
		{"too near", "standby = \"2 A\"\nno_load = \"5.9 A\"\nthreshold = \"4 A\"\n", Near, true},
		{"not set", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\n", ThresholdNotSet, false},
		{"off missing", "no_load = \"5.1 A\"\nthreshold = \"1.5 A\"\n", CurrentsMissing, false},
		{"idling missing", "standby = \"0.2 A\"\nthreshold = \"1.5 A\"\n", CurrentsMissing, false},
		{"the bands of the readings meet", `readings = [{ state = "standby", mean = "1 A", spread = "0.5 A" }, { state = "idle", mean = "3 A", spread = "0.5 A" }]` + "\n", NotApart, true},
		{"the bands lie apart by a hair", `readings = [{ state = "standby", mean = "1 A", spread = "0.5 A" }, { state = "idle", mean = "3.02 A", spread = "0.5 A" }]` + "\nthreshold = \"2.01 A\"\n", Near, true},
		{"below the sensor", "standby = \"0.02 A\"\nno_load = \"0.17 A\"\nthreshold = \"0.17 A\"\nrange = \"0.5 A to 50 A\"\n", BelowRange, false},
		{"with turns enough", "standby = \"0.02 A\"\nno_load = \"0.34 A\"\nthreshold = \"0.17 A\"\nturns = 3\nrange = \"0.5 A to 60 A\"\n", Stands, false},
		{"the sensor acts where practice puts one, just", "standby = \"0.02 A\"\nno_load = \"1 A\"\nrange = \"0.6 A to 50 A\"\n", ThresholdNotSet, false},
		{"not set, and the sensor acts above practice", "standby = \"0.02 A\"\nno_load = \"0.99 A\"\nrange = \"0.6 A to 50 A\"\n", BelowRange, false},
		{"set, and the sensor acts above practice", "standby = \"0.02 A\"\nno_load = \"0.99 A\"\nthreshold = \"0.6 A\"\nrange = \"0.6 A to 50 A\"\n", LittleMargin, false},
		{"at the top of the sensor", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"1.5 A\"\nturns = 2\nrange = \"0.5 A to 34 A\"\n", Stands, false},
		{"over the top of the sensor", "standby = \"0.2 A\"\nno_load = \"5.1 A\"\nthreshold = \"1.5 A\"\nturns = 3\nrange = \"0.5 A to 50 A\"\n", AboveRange, false},
	} {
		_, r := yard(t, Air{}, currents, row.with)
		x := trigger(t, r, "Saw runs").Threshold
		if x.Stand != row.want || x.Contact != row.contact {
			t.Errorf("%s: stand %v, contact %v; want %v, %v: %+v", row.name, x.Stand, x.Contact, row.want, row.contact, x)
		}
	}
	_, r := yard(t, Air{})
	if x := trigger(t, r, "Planer runs").Threshold; x.Stand != NoCurrent || x.Cautions != nil {
		t.Errorf("a contact: %+v", x)
	}
}

// What the sensor sees and how the turns divide its range.
func TestTurnsDivideTheRange(t *testing.T) {
	_, r := yard(t, Air{}, currents, "standby = \"0.02 A\"\nno_load = \"0.17 A\"\nthreshold = \"0.17 A\"\nturns = 2\nrange = \"0.5 A to 50 A\"\n")
	x := trigger(t, r, "Saw runs").Threshold
	if x.Stand != BelowRange || x.Sees != 0.34 || x.RangeLow != 0.25 || x.RangeHigh != 25 {
		t.Errorf("got %+v", x)
	}
}

// A published measurement: a motor of 250 W at 230 V drew 0.55 A near idle,
// half of the 1.1 A that its nameplate's watts and volts would give. The
// threshold comes from the current measured, and the nameplate's share of it
// is nothing to suspect.
func TestMeasuredIdle(t *testing.T) {
	_, r := yard(t, Air{}, currents, "standby = \"0.02 A\"\nno_load = \"0.55 A\"\n", `amps = "17 A"`, `amps = "1.1 A"`)
	x := trigger(t, r, "Saw runs").Threshold
	if unit.Fixed(float64(x.Best), 3) != "0.105" || x.High >= 0.55 || x.Stand != ThresholdNotSet || slices.Contains(x.Cautions, BothInClamp) {
		t.Errorf("got %+v", x)
	}
}

// Each caution, and where it is not raised.
func TestCautions(t *testing.T) {
	has := func(c Caution, changes ...string) bool {
		_, r := yard(t, Air{}, changes...)
		return slices.Contains(trigger(t, r, "Saw runs").Threshold.Cautions, c)
	}
	idle := func(text string) []string { return []string{`no_load = "5.1 A"`, text} }
	for _, row := range []struct {
		name  string
		of    Caution
		there []string
		not   []string
	}{
		{"both in the clamp", BothInClamp, idle(`no_load = "3.39 A"`), idle(`no_load = "3.4 A"`)},
		{"both legs", BothLegs, nil, []string{`power = "3 hp", volts = "230 V", phase = 1 }` + "\namps", `power = "3 hp", volts = "120 V", phase = 1 }` + "\namps"}},
		{"variable speed", LineSide, idle(`readings = [{ state = "lowest speed", mean = "4 A" }]`), idle(`readings = [{ state = "idling", mean = "4 A" }]`)},
		{"weak reading", WeakReading, nil, []string{`standby = "0.2 A"`, `standby = "0.3 A"`}},
		{"the nameplate alone", NameplateOnly, idle(""), nil},
	} {
		if !has(row.of, row.there...) || has(row.of, row.not...) {
			t.Errorf("%s: %v and %v", row.name, has(row.of, row.there...), has(row.of, row.not...))
		}
	}
	if !has(OneConductor) || !has(AtTheMachine) {
		t.Error("what holds for every sensor is missing")
	}
}

// The band lies within what the sensor can do: its range, divided by the turns.
func TestBandInRange(t *testing.T) {
	for _, row := range []struct {
		with          string
		low, high     unit.Current
		noRoom        bool
		standby, idle string
	}{
		{with: "range = \"0.5 A to 50 A\"\n", low: 0.5, high: 3, standby: "0.05 A", idle: "5 A"},
		{with: "range = \"0.5 A to 50 A\"\nturns = 2\n", low: 0.25, high: 3, standby: "0.05 A", idle: "5 A"},
		{with: "range = \"0.05 A to 50 A\"\n", low: 0.1, high: 3, standby: "0.05 A", idle: "5 A"},
		{with: "range = \"0.05 A to 2 A\"\n", low: 0.1, high: 2, standby: "0.05 A", idle: "5 A"},
		{with: "range = \"4 A to 50 A\"\n", low: 0.1, high: 3, noRoom: true, standby: "0.05 A", idle: "5 A"},
	} {
		_, r := yard(t, Air{}, currents, "standby = \""+row.standby+"\"\nno_load = \""+row.idle+"\"\n"+row.with)
		x := trigger(t, r, "Saw runs").Threshold
		if x.Low != row.low || x.High != row.high || x.NoRoom != row.noRoom {
			t.Errorf("%s: between %v and %v, no room %v", row.with, x.Low, x.High, x.NoRoom)
		}
	}
}

// What brings a sensor into its range is the least work, and holds: after it
// the same shop stands in its range and band. No two answers send round in a
// circle.
func TestMend(t *testing.T) {
	for _, row := range []struct {
		name, with, amps string
		stand            Stand
		turns            int
		moves            bool
	}{
		{"the threshold alone", "threshold = \"0.2 A\"\nno_load = \"5 A\"\n", "17 A", BelowRange, 1, true},
		{"too many turns for the nameplate: fewer, and the threshold", "threshold = \"0.2 A\"\nno_load = \"5 A\"\nturns = 4\n", "17 A", AboveRange, 2, true},
		{"the threshold stays", "threshold = \"0.3 A\"\nno_load = \"5 A\"\nturns = 4\n", "17 A", AboveRange, 2, false},
		{"more turns, one to spare", "threshold = \"0.17 A\"\nno_load = \"0.4 A\"\n", "1 A", BelowRange, 4, false},
		{"more turns, and the threshold", "threshold = \"0.3 A\"\nno_load = \"0.4 A\"\n", "1 A", BelowRange, 3, true},
		{"the nameplate leaves no turns", "threshold = \"0.17 A\"\nno_load = \"0.4 A\"\n", "40 A", BelowRange, 0, false},
		{"one turn, and over the top", "threshold = \"30 A\"\nno_load = \"90 A\"\n", "17 A", AboveRange, 0, false},
	} {
		with := "standby = \"0.01 A\"\nrange = \"0.5 A to 50 A\"\n" + row.with
		_, r := yard(t, Air{}, currents, with, `amps = "17 A"`, `amps = "`+row.amps+`"`)
		x := trigger(t, r, "Saw runs").Threshold
		if m := x.Mend; x.Stand != row.stand || m.Turns != row.turns || m.Moves != row.moves {
			t.Errorf("%s: stand %v, mend %+v", row.name, x.Stand, m)
		}
		if x.Mend.Turns == 0 {
			continue
		}
		s, _ := yard(t, Air{}, currents, with, `amps = "17 A"`, `amps = "`+row.amps+`"`)
		saw := s.Triggers[0]
		for _, end := range []unit.Current{x.Mend.Low, x.Mend.High} {
			if saw.Turns.V = x.Mend.Turns; x.Mend.Moves {
				saw.Threshold.V = end
			}
			if y := thresholdOf(saw); y.Stand != Stands {
				t.Errorf("%s: mended to %v it is %v: %+v", row.name, saw.Threshold.V, y.Stand, y)
			}
		}
	}
}

// A sensor lets go above what the machine draws with the spindle off, or the
// fan never stops.
func TestLetsGoAboveOff(t *testing.T) {
	for _, row := range []struct {
		threshold string
		low, high unit.Current
		above, no bool
	}{
		{"0.51 A", 0.357, 0.4335, false, false},
		{"0.5 A", 0.35, 0.425, true, false},
		{"0.42 A", 0.35, 0.357, true, false},
		{"0.41 A", 0.35, 0.3485, true, true},
	} {
		_, r := yard(t, Air{}, currents, "standby = \"0.35 A\"\nno_load = \"4.2 A\"\nthreshold = \""+row.threshold+"\"\n")
		x := trigger(t, r, "Saw runs").Threshold
		if x.OffLow != row.low || x.OffHigh != row.high || x.AboveOff() != row.above || x.NoLetGo != row.no || x.Stand != LittleMargin {
			t.Errorf("%s: %v to %v, above %v, none %v, stand %v", row.threshold, x.OffLow, x.OffHigh, x.AboveOff(), x.NoLetGo, x.Stand)
		}
	}
}
