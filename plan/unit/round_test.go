package unit

import (
	"encoding/json"
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"testing"
)

func TestSix(t *testing.T) {
	for _, c := range []struct{ x, want float64 }{
		{0, 0}, {math.Copysign(0, -1), 0},
		{1234567, 1234570}, {1234564.9, 1234560}, {-1234567, -1234570},
		{0.12345649, 0.123456}, {0.12345651, 0.123457},
		{999999.5, 1e6}, {999999.4, 999999},
		{1.0000004, 1}, {1.000006, 1.00001},
		{1.8e-5, 1.8e-5}, {5e-324, 5e-324}, {math.MaxFloat64, 1.79769e308},
		{math.Inf(1), math.Inf(1)}, {math.Inf(-1), math.Inf(-1)},
	} {
		got := Six(c.x)
		if got != c.want || got == 0 && math.Signbit(got) {
			t.Errorf("Six(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	if !math.IsNaN(Six(math.NaN())) {
		t.Error("Six(NaN) is a number")
	}
}

// Six is settled after one pass, keeps order and sign, and moves a number by
// no more than half of its sixth digit.
func TestSixProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for range 20000 {
		x, y := anyNumber(r), anyNumber(r)
		s := Six(x)
		if Six(s) != s || Six(-x) != -s {
			t.Fatalf("Six(%v) = %v does not settle", x, s)
		}
		if math.Abs(s-x) > 5.0001e-6*math.Abs(x) {
			t.Fatalf("Six(%v) = %v is too far", x, s)
		}
		if x <= y && s > Six(y) {
			t.Fatalf("Six turns the order of %v and %v", x, y)
		}
	}
}

func anyNumber(r *rand.Rand) float64 {
	x := (r.Float64() + 0.1) * math.Pow(10, float64(r.IntN(24)-12))
	if r.IntN(2) == 0 {
		return -x
	}
	return x
}

func TestCompare(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		a, b    float64
		compare int
		atLeast bool
	}{
		{1, 2, -1, false}, {2, 1, 1, true}, {2, 2, 0, true},
		{350, 350.0004, 0, true}, {350, 350.0006, -1, false},
		{0, math.Copysign(0, -1), 0, true},
		{nan, 1, -1, false}, {1, nan, 1, false}, {nan, nan, 0, false},
	} {
		if got := Compare(c.a, c.b); got != c.compare {
			t.Errorf("Compare(%v, %v) = %d, want %d", c.a, c.b, got, c.compare)
		}
		if got := AtLeast(c.a, c.b); got != c.atLeast {
			t.Errorf("AtLeast(%v, %v) = %v", c.a, c.b, got)
		}
	}
}

func TestShort(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{
		{0, "0"}, {math.Copysign(0, -1), "0"}, {1.14, "1.14"}, {0.165182, "0.165182"},
		{2310, "2310"}, {2310.00001, "2310"}, {123456789, "123457000"}, {-0.5, "-0.5"},
		{1.8e-5, "1.8e-5"}, {-1.80000049e-5, "-1.8e-5"}, {0.0001, "0.0001"}, {0.000099, "9.9e-5"},
		{8.230468e-7, "8.23047e-7"}, {1e-10, "1e-10"}, {1e20, "100000000000000000000"}, {1.5e21, "1.5e21"},
		{1.0 / 3, "0.333333"}, {math.NaN(), "null"}, {math.Inf(-1), "null"},
	} {
		if got := Short(c.x); got != c.want {
			t.Errorf("Short(%v) = %s, want %s", c.x, got, c.want)
		}
	}
	r := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		x := anyNumber(r)
		var back float64
		if err := json.Unmarshal([]byte(Short(x)), &back); err != nil || back != Six(x) {
			t.Fatalf("Short(%v) = %s reads in JSON as %v, %v", x, Short(x), back, err)
		}
	}
}

func TestFixed(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{
		{0, 0, "0"}, {0, 2, "0.00"}, {-0.001, 2, "0.00"}, {-0.004999, 2, "0.00"}, {-0.005, 2, "-0.01"},
		{1037.2, 0, "1037"}, {1037.2, 3, "1037.200"}, {2.5, 0, "3"}, {-2.5, 0, "-3"}, {0.35, 1, "0.4"},
		{12.25, 1, "12.3"}, {9.996, 2, "10.00"}, {0.5, 0, "1"}, {0.49, 0, "0"}, {0.049, 1, "0.0"},
		{123456.7, 1, "123457.0"}, {1e9, 0, "1000000000"}, {99999.96, 1, "100000.0"},
		{1e22, 1, "10000000000000000000000.0"}, {1e-9, 3, "0.000"}, {7, -1, "7"},
		{2.4999999, 0, "3"}, // 2.50000 after Six
		{math.NaN(), 2, "—"}, {math.Inf(1), 0, "—"},
	} {
		if got := Fixed(c.x, c.decimals); got != c.want {
			t.Errorf("Fixed(%v, %d) = %s, want %s", c.x, c.decimals, got, c.want)
		}
	}
}

func TestSignificant(t *testing.T) {
	for _, c := range []struct {
		x      float64
		digits int
		want   string
	}{
		{1037.2, 3, "1040"}, {0.3054, 3, "0.305"}, {12.04, 3, "12.0"}, {-12.04, 3, "-12.0"},
		{9.996, 3, "10.0"}, {999.6, 3, "1000"}, {99.96, 3, "100"}, {0.09996, 3, "0.100"},
		{1234567, 3, "1230000"}, {0.00001234, 2, "0.000012"}, {5, 1, "5"}, {45, 1, "50"}, {96, 1, "100"},
		{0, 3, "0.00"}, {0, 1, "0"}, {1037.2, 0, "1000"}, {1.25, 2, "1.3"}, {1037.2, 9, "1037.20000"},
		{math.NaN(), 3, "—"},
	} {
		if got := Significant(c.x, c.digits); got != c.want {
			t.Errorf("Significant(%v, %d) = %s, want %s", c.x, c.digits, got, c.want)
		}
	}
}

// Fixed is checked against rational arithmetic on the six digits, which
// rounds halves away from nought.
func TestFixedAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		x := anyNumber(r)
		decimals := r.IntN(8)
		exact, _ := new(big.Rat).SetString(strconv.FormatFloat(x, 'e', 5, 64))
		want := exact.FloatString(decimals)
		if zero, _ := new(big.Rat).SetString(want); zero.Sign() == 0 && want[0] == '-' {
			want = want[1:]
		}
		if got := Fixed(x, decimals); got != want {
			t.Fatalf("Fixed(%v, %d) = %s, rational arithmetic says %s", x, decimals, got, want)
		}
	}
}
