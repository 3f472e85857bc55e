package timing

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// inSI are a motor and wheel of the trade as SI numbers.
func inSI(hp string, rpm float64, wheel string) (inertia, speed, torque, pounds float64) {
	power := float64(unit.Must[unit.Power](hp))
	speed = rpm * 2 * math.Pi / 60
	return float64(unit.Must[unit.Inertia](wheel)), speed, power / speed, power / speed / 1.3558179
}

// Run-up and coasting worked out beforehand from the published equation t =
// WK² ΔN/(308 T) of the motor course, T = 5252 hp/rpm, with 1.0 and 1.5 of the
// rated torque to spare; coasting on air drag alone, and to a stand with
// bearings at 3 % of the rated torque.
func TestRunUpTable(t *testing.T) {
	for _, row := range []struct {
		hp                                       string
		rpm                                      float64
		wheel                                    string
		torque, slow, fast, carries, half, stand float64
	}{
		{"1.5 hp", 3450, "0.9 lb ft2", 2.28, 4.4, 2.9, 1.0, 4.4, 36},
		{"3 hp", 3450, "2.1 lb ft2", 4.57, 5.2, 3.4, 1.1, 5.2, 42},
		{"5 hp", 3450, "4.0 lb ft2", 7.61, 5.9, 3.9, 1.3, 5.9, 48},
		{"7.5 hp", 3500, "7 lb ft2", 11.3, 7.1, 4.7, 1.6, 7.1, 57},
		{"5 hp", 1750, "10 lb ft2", 15.0, 3.8, 2.5, 0.8, 3.8, 31},
	} {
		inertia, speed, torque, pounds := inSI(row.hp, row.rpm, row.wheel)
		up := func(times float64) float64 {
			return float64(RunUp(inertia, speed, func(float64) float64 { return times * torque }))
		}
		for _, c := range []struct {
			what      string
			got, want float64
			within    float64
		}{
			{"torque", pounds, row.torque, 0.005},
			{"run-up, 1.0 T", up(1), row.slow, 0.02},
			{"run-up, 1.5 T", up(1.5), row.fast, 0.02},
			{"to 82 %", float64(CoastTo(0.82, inertia, speed, torque)), row.carries, 0.055},
			{"to half", float64(CoastTo(0.5, inertia, speed, torque)), row.half, 0.02},
			{"to a stand", float64(CoastOut(inertia, speed, torque, 0.03*torque)), row.stand, 0.02},
		} {
			if !near(c.got, c.want, c.within) {
				t.Errorf("%s %v: %s %v, want %v", row.hp, row.rpm, c.what, c.got, c.want)
			}
		}
	}
}

// The equation of the trade against the one in SI units: 308 is 60·32.174/2π,
// rounded.
func TestRunUpInTradeUnits(t *testing.T) {
	inertia, speed, torque, _ := inSI("5 hp", 3450, "4.0 lb ft2")
	trade := 4.0 * 3450 / (308 * 5252 * 5 / 3450)
	if got := float64(RunUp(inertia, speed, func(float64) float64 { return torque })); !near(got, trade, 0.004) {
		t.Errorf("%v s, by the trade's equation %v s", got, trade)
	}
}

// With torque that falls along the way the steps come near to the integral:
// for T (1 − s²/2) it is √2 artanh(1/√2) J ω/T.
func TestRunUpInSteps(t *testing.T) {
	want := math.Sqrt2 * math.Atanh(1/math.Sqrt2)
	got := float64(RunUp(1, 1, func(s float64) float64 { return 1 - s*s/2 }))
	if !near(got, want, 0.002) || got == want {
		t.Errorf("%v, want about %v", got, want)
	}
	if share("speed steps") < 10 {
		t.Error("fewer than ten steps")
	}
}

func TestFan(t *testing.T) {
	_, r := yard(t, Air{})
	f := collector(t, r, "Cyclone").Fan
	if !f.Known() || !near(float64(f.RunUp.Most), 5.2, 0.02) || !near(float64(f.RunUp.Least), 3.45, 0.02) || f.Patient != Soon || f.Apart != NotCompared {
		t.Errorf("got %+v", f)
	}
	if !near(float64(f.Half), 5.2, 0.02) || !near(float64(f.Carries), 1.14, 0.02) || !near(float64(f.Stands), 42, 0.02) {
		t.Errorf("coasts %v, %v, %v", f.Carries, f.Half, f.Stands)
	}
	f = collector(t, r, "Bag unit").Fan
	if f.Known() || missing(f.Missing) != "Bag unit collector.wheel_inertia, Bag unit motor.poles" || f.Patient != NoRunUp {
		t.Errorf("got %+v", f)
	}
	if _, known := f.Takes(); known {
		t.Error("a run-up of nothing")
	}
}

// The run-up of the file against the reckoned, and how patient it asks to be.
func TestFanStated(t *testing.T) {
	for _, row := range []struct {
		set, wheel string
		apart      Apart
		patient    Patience
	}{
		{"3 s", "2.1 lb ft2", Sooner, Soon},
		{"4 s", "2.1 lb ft2", Agrees, Soon},
		{"6 s", "2.1 lb ft2", Later, Soon},
		{"12 s", "4.5 lb ft2", Later, Soon},
		{"13 s", "5.5 lb ft2", Agrees, Slow},
		{"20 s", "9 lb ft2", Agrees, Slow},
		{"21 s", "9 lb ft2", Agrees, AskMaker},
	} {
		_, r := yard(t, Air{}, `wheel_inertia = "2.1 lb ft2"`, `wheel_inertia = "`+row.wheel+`"`+"\nrun_up = \""+row.set+`"`)
		f := collector(t, r, "Cyclone").Fan
		if f.Apart != row.apart || f.Patient != row.patient {
			t.Errorf("%s with %s: %v and %v, want %v and %v (reckoned %v)", row.set, row.wheel, f.Apart, f.Patient, row.apart, row.patient, f.RunUp)
		}
		if takes, known := f.Takes(); !known || takes.Least != takes.Most || takes.Most != f.Set.V {
			t.Errorf("takes %v", takes)
		}
	}
	_, r := yard(t, Air{}, `phase = 3, poles = 2`, `phase = 3, poles = 8`)
	if f := collector(t, r, "Cyclone").Fan; f.Known() || f.OffPole != 8 {
		t.Errorf("a run-up at a speed the data does not have: %+v", f)
	}
}

// The wheels that were seen stand as quantities, the lighter end first.
func TestWheels(t *testing.T) {
	for _, r := range inertiaTable.Rows {
		least, most := unit.Must[unit.Inertia](r.Text("least")), unit.Must[unit.Inertia](r.Text("most"))
		if least <= 0 || least > most || most > 5 {
			t.Errorf("%s: %v to %v kg m2", r.Text("wheel"), least, most)
		}
	}
}
