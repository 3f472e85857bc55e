package export_test

import (
	"math"
	"runtime"
	"testing"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/export"
	"dustbook/plan/shop"
)

// A band holds the number it stands beside, and stands just where the contract
// says: at a flow that reaches a port on the curve, and in every stretch that
// is judged.
func TestBandsHoldTheirNumbers(t *testing.T) {
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		bands := 0
		holds := func(name string, value, low, high *float64, want bool) {
			switch {
			case (low == nil) != (high == nil) || (low != nil) != want:
				t.Errorf("%s: low %v, high %v; a band is wanted: %v", name, low, high, want)
			case want && !(*low < *value && *value < *high):
				t.Errorf("%s: %v does not lie between %v and %v", name, *value, *low, *high)
			case want:
				bands++
			}
		}
		for _, u := range decoded(t, data).Uses {
			for _, at := range u.Ports {
				holds(u.Name+" "+at.Port, at.Flow, at.Low, at.High, at.Flow != nil && *at.Flow > 0)
			}
			for _, at := range u.Ducts {
				speed := at.Velocity
				if speed != nil && at.Hose != nil {
					slower := math.Min(*speed, *at.Hose)
					speed = &slower
				}
				holds(u.Name+" "+at.Duct, speed, at.Low, at.High, at.Transport != nil && u.Fan.OnCurve && *speed > 0)
			}
		}
		if bands < 20 {
			t.Errorf("only %d bands were seen", bands)
		}
	})
}

// However many processors solve them, the bands are the same.
func TestBandsOnOneProcessor(t *testing.T) {
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
		again, err := export.JSON(export.MakeSize(plan.Make(s, nil, entry.Date{})))
		if err != nil || string(again) != string(data) {
			t.Errorf("differs on one processor: %v", err)
		}
	})
}
