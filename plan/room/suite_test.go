package room

import (
	"math"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// mustRead reads a shop file that has no fault.
func mustRead(t testing.TB, text string) *shop.Shop {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if s == nil {
		t.Fatalf("%v\n%s", problems, text)
	}
	return s
}

// near reports whether two numbers agree within a share of the second.
func near(got, want, share float64) bool { return math.Abs(got-want) <= share*math.Abs(want) }

// standard is the air that the handbook figures are for.
var standard = Air{Density: unit.Must[unit.Density]("1.2 kg/m3"), Discharge: 0.65}

func flow(text string) unit.Flow { return unit.Must[unit.Flow](text) }
