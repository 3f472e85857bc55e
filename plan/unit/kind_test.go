package unit

import (
	"errors"
	"strings"
	"testing"
)

func TestKinds(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Kinds() {
		if k.String() == "" || seen[k.String()] {
			t.Errorf("kind %d is called %q", k, k)
		}
		seen[k.String()] = true
		if !strings.HasSuffix(k.phrase(), " "+k.String()) {
			t.Errorf("%q is not %q with an article", k.phrase(), k)
		}
		for _, e := range k.examples() {
			if _, err := ReadKind(k, e); err != nil {
				t.Errorf("an example that is refused: %v", err)
			}
		}
	}
	if len(seen) != 18 {
		t.Errorf("%d kinds", len(seen))
	}
	if got := KindLength.Example(); got != `"4 in" or "100 mm"` {
		t.Errorf("example %s", got)
	}
}

// Every type says its own kind, and reads its own examples.
func TestTypes(t *testing.T) {
	checkType[Length](t, KindLength)
	checkType[Area](t, KindArea)
	checkType[Volume](t, KindVolume)
	checkType[Flow](t, KindFlow)
	checkType[Velocity](t, KindVelocity)
	checkType[Pressure](t, KindPressure)
	checkType[Density](t, KindDensity)
	checkType[Viscosity](t, KindViscosity)
	checkType[Temperature](t, KindTemperature)
	checkType[Power](t, KindPower)
	checkType[Current](t, KindCurrent)
	checkType[Voltage](t, KindVoltage)
	checkType[Resistance](t, KindResistance)
	checkType[Time](t, KindTime)
	checkType[Angle](t, KindAngle)
	checkType[Sound](t, KindSound)
	checkType[Inertia](t, KindInertia)
	checkType[Wire](t, KindWire)
}

func checkType[Q Measure](t *testing.T, k Kind) {
	t.Helper()
	text := k.examples()[0]
	q, err := Read[Q](text)
	want, _ := ReadKind(k, text)
	if q.Kind() != k || err != nil || float64(q) != want || q <= 0 || Must[Q](text) != q {
		t.Errorf("%s: kind %s, read %v (%v), want %v", k, q.Kind(), q, err, want)
	}
	var e *Error
	if q, err := Read[Q]("7 none"); !errors.As(err, &e) || q != 0 {
		t.Errorf("%s: read nonsense as %v, %v", k, q, err)
	}
}

// A kind that is none panics nowhere.
func TestNoKind(t *testing.T) {
	for _, k := range []Kind{0, KindWire + 1, 255} {
		if k.String() != "quantity" || k.Example() == "" {
			t.Errorf("kind %d: %q, %s", k, k, k.Example())
		}
		for _, text := range []string{"", "4", "4 in", "4 nonsense", `5' 6"`, "4 in (100 mm)"} {
			if x, err := ReadKind(k, text); err == nil {
				t.Errorf("kind %d reads %q as %v", k, text, x)
			}
		}
	}
}

func TestMustPanics(t *testing.T) {
	defer func() {
		if r := recover(); r == nil || !strings.Contains(r.(string), `Write the unit: "4 in".`) {
			t.Errorf("recovered %v", r)
		}
	}()
	Must[Length]("4")
}
