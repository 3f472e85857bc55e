package timing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Fan is how a collector's fan comes to speed and how it coasts. Its wheel is
// taken to turn at the speed of its motor, and the motor to run on 60 Hz.
type Fan struct {
	Missing []Missing // what the file leaves out; nothing is reckoned then
	OffPole int       // poles of which the data has no speed; nought where it has

	Speed  float64 // full speed, in radians a second
	Torque float64 // rated torque of the motor, in newton metres

	RunUp   Span      // with the stronger and the weaker end of the torque to spare
	Carries unit.Time // how long a coasting fan still turns fast enough to carry
	Half    unit.Time // until half speed
	Stands  unit.Time // until it stands, brought there by its bearings

	Set     shop.Field[unit.Time] // the run-up of the shop file
	Apart   Apart                 // that one against the reckoned
	Patient Patience
}

// Apart holds a run-up that the file states against the one reckoned.
type Apart uint8

const (
	NotCompared Apart = iota
	Agrees
	Sooner // stated shorter than the wheel and motor allow
	Later
)

// Patience says how long a run-up may last; common practice, no source.
type Patience uint8

const (
	NoRunUp  Patience = iota
	Soon              // up within what a small motor on the line should take
	Slow              // longer than that
	AskMaker          // so long that the motor's maker has to be asked
)

// Known reports whether the run-up was reckoned.
func (f *Fan) Known() bool { return f.RunUp.Most > 0 }

// Takes is the run-up to work with: the stated one, else the reckoned. It is
// false where there is neither.
func (f *Fan) Takes() (Span, bool) {
	if f.Set.Known() {
		return Span{f.Set.V, f.Set.V}, true
	}
	return f.RunUp, f.Known()
}

// fanOf reckons the fan of a collector.
func fanOf(c *shop.Collector) Fan {
	f := Fan{Set: c.RunUp}
	if !c.WheelInertia.Known() || c.WheelInertia.V == 0 {
		f.Missing = append(f.Missing, Missing{c.Name, "collector.wheel_inertia"})
	}
	switch {
	case c.Motor == nil:
		f.Missing = append(f.Missing, Missing{c.Name, "collector.motor"})
	case !c.Motor.Poles.Known():
		f.Missing = append(f.Missing, Missing{c.Name, "motor.poles"})
	default:
		if f.Speed = unit.Six(ratedSpeed(c.Motor.Poles.V)); f.Speed == 0 {
			f.OffPole = c.Motor.Poles.V
		}
	}
	if len(f.Missing) == 0 && f.Speed > 0 && c.Motor.Power > 0 {
		f.reckon(float64(c.WheelInertia.V), float64(c.Motor.Power))
	}
	f.judge()
	return f
}

func (f *Fan) reckon(inertia, power float64) {
	f.Torque = power / f.Speed
	up := func(name string) unit.Time {
		spare := share(name) * f.Torque
		return unit.SixOf(RunUp(inertia, f.Speed, func(float64) float64 { return spare }))
	}
	f.RunUp = Span{Least: up("accelerating torque most"), Most: up("accelerating torque least")}
	f.Carries = unit.SixOf(CoastTo(share("carrying speed kept"), inertia, f.Speed, f.Torque))
	f.Half = unit.SixOf(CoastTo(share("half speed kept"), inertia, f.Speed, f.Torque))
	f.Stands = unit.SixOf(CoastOut(inertia, f.Speed, f.Torque, share("bearing drag")*f.Torque))
	f.Torque = unit.Six(f.Torque)
}

func (f *Fan) judge() {
	takes, known := f.Takes()
	if !known {
		return
	}
	switch {
	case takes.Most <= seconds("run-up soon"):
		f.Patient = Soon
	case takes.Most <= seconds("run-up long"):
		f.Patient = Slow
	default:
		f.Patient = AskMaker
	}
	if !f.Set.Known() || !f.Known() {
		return
	}
	switch {
	case unit.Compare(float64(f.Set.V), float64(f.RunUp.Least)) < 0:
		f.Apart = Sooner
	case unit.Compare(float64(f.Set.V), float64(f.RunUp.Most)) > 0:
		f.Apart = Later
	default:
		f.Apart = Agrees
	}
}

// ratedSpeed is the full speed of a motor by its poles, in radians a second;
// nought where the data has none.
func ratedSpeed(poles int) float64 {
	name := "rated speed of " + polesText(poles)
	for _, r := range figureTable.Rows {
		if r.Text("name") == name {
			return r.Number("value") * 2 * math.Pi / float64(minute)
		}
	}
	return 0
}

var minute = unit.Must[unit.Time]("1 min")

// RunUp is how long a wheel takes to full speed: t = Σ J Δω/T over equal steps
// of speed, with T the torque to spare at the middle of each, by the share of
// full speed. Inertia in kg m², speed in rad/s, torque in N m.
func RunUp(inertia, speed float64, spare func(share float64) float64) unit.Time {
	steps := share("speed steps")
	var sum float64
	for i := 0.0; i < steps; i++ {
		sum += inertia * speed / steps / spare((i+0.5)/steps)
	}
	return unit.Time(sum)
}

// CoastTo is how long a wheel coasts to a share of its speed on the drag of
// its air alone, which falls with the square of the speed: t = J ω/T (1/f − 1).
func CoastTo(left, inertia, speed, torque float64) unit.Time {
	return unit.Time(inertia * speed / torque * (1/left - 1))
}

// CoastOut is how long a wheel coasts to a stand, with the drag of its
// bearings beside that of its air: t = J ω/√(T B) · atan √(T/B).
func CoastOut(inertia, speed, torque, bearing float64) unit.Time {
	return unit.Time(inertia * speed / math.Sqrt(torque*bearing) * math.Atan(math.Sqrt(torque/bearing)))
}
