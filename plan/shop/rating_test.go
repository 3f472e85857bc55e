package shop_test

import (
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Motors in kilowatts are the rows in horsepower that they are sold as, as the
// two lists of ratings of common practice stand side by side; what lies between
// two rows is none of them.
func TestSameRating(t *testing.T) {
	for _, c := range []struct {
		power, row string
		want       bool
	}{
		{"0.75 kW", "1 hp", true}, {"1.1 kW", "1.5 hp", true}, {"1.5 kW", "2 hp", true}, {"2.2 kW", "3 hp", true}, {"3.7 kW", "5 hp", true},
		{"5.5 kW", "7.5 hp", true}, {"7.5 kW", "10 hp", true}, {"11 kW", "15 hp", true}, {"15 kW", "20 hp", true}, {"18.5 kW", "25 hp", true},
		{"3 kW", "3 hp", false}, {"3 kW", "5 hp", false}, {"4 kW", "5 hp", false},
		{"1.02 hp", "1 hp", true}, {"1.021 hp", "1 hp", false}, {"0.98 hp", "1 hp", true}, {"0.979 hp", "1 hp", false},
	} {
		if got := shop.SameRating(unit.Must[unit.Power](c.power), unit.Must[unit.Power](c.row)); got != c.want {
			t.Errorf("%s as %s: %v", c.power, c.row, got)
		}
	}
}
