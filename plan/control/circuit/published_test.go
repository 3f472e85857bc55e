package circuit

import (
	"strings"
	"testing"
)

// NEC 2023 table 430.248, full-load currents of single-phase motors, every row,
// as a public transcription of the code prints them: hp, then the currents on
// 115, 200, 208 and 230 V. Row 1/2 was also seen shifted in another copy, as
// 7.2 A on 115 V: that one is wrong.
const table430248 = `
1/6  4.4  2.5  2.4  2.2
1/4  5.8  3.3  3.2  2.9
1/3  7.2  4.1  4.0  3.6
1/2  9.8  5.6  5.4  4.9
3/4  13.8 7.9  7.6  6.9
1    16   9.2  8.8  8.0
1.5  20   11.5 11.0 10
2    24   13.8 13.2 12
3    34   19.6 18.7 17
5    56   32.2 30.8 28
7.5  80   46   44   40
10   100  57.5 55   50`

// NEC 2023 table 430.250, three-phase motors, every row to 25 hp, from the same
// transcription: 200, 208, 230, 460 and 575 V.
const table430250 = `
1/2  2.5  2.4  2.2  1.1  0.9
3/4  3.7  3.5  3.2  1.6  1.3
1    4.8  4.6  4.2  2.1  1.7
1.5  6.9  6.6  6.0  3.0  2.4
2    7.8  7.5  6.8  3.4  2.7
3    11.0 10.6 9.6  4.8  3.9
5    17.5 16.7 15.2 7.6  6.1
7.5  25.3 24.2 22   11   9
10   32.2 30.8 28   14   11
15   48.3 46.2 42   21   17
20   62.1 59.4 54   27   22
25   78.2 74.8 68   34   27`

func TestPublishedCurrents(t *testing.T) {
	for _, c := range []struct {
		name, rows string
		phase      int
		supplies   []string
	}{
		{"430.248", table430248, 1, []string{"115 V", "200 V", "208 V", "230 V"}},
		{"430.250", table430250, 3, []string{"200 V", "208 V", "230 V", "460 V", "575 V"}},
	} {
		seen := 0
		for _, row := range strings.Split(strings.TrimSpace(c.rows), "\n") {
			cells := strings.Fields(row)
			for i, supply := range c.supplies {
				seen++
				got, why := Table(power(cells[0]+" hp"), volts(supply), c.phase)
				if why != Told || got.Current != amps(cells[i+1]+" A") {
					t.Errorf("NEC table %s, %s hp on %s: %v %v, want %s A", c.name, cells[0], supply, got.Current, why, cells[i+1])
				}
			}
		}
		if seen != 12*len(c.supplies) {
			t.Errorf("NEC table %s: %d cells", c.name, seen)
		}
	}
}

// NEC 2023 table 310.16, copper, as public excerpts print it: what 14 to 6 AWG
// carry at 60 and 75 °C.
func TestPublishedAmpacities(t *testing.T) {
	for _, c := range []struct{ size, cool, warm string }{
		{"14 AWG", "15 A", "20 A"}, {"12 AWG", "20 A", "25 A"}, {"10 AWG", "30 A", "35 A"}, {"8 AWG", "40 A", "50 A"}, {"6 AWG", "55 A", "65 A"},
	} {
		for on, want := range map[Terminals]string{Cool: c.cool, Warm: c.warm} {
			if got, ok := Ampacity(wire(c.size), on, 1); !ok || got.Current != amps(want) {
				t.Errorf("NEC table 310.16, %s, column %v: %v, want %s", c.size, on, got.Current, want)
			}
		}
	}
}

// NEC 2023 430.22 (125 % of the table's current), table 430.52(C)(1) (250 % for
// an inverse-time breaker) with its exception 1 (the next size up of 240.6(A)),
// and 430.32(A)(1) (overload at 125 % of the nameplate with a service factor of
// 1.15 or more, else 115 %). The five motors are worked by hand from the tables.
func TestPublishedSteps(t *testing.T) {
	for _, c := range []struct {
		power           string
		phase           int
		carry, breaker  string
		overload, small string // at service factors 1.15 and 1, with the table's current as the nameplate's
	}{
		{"1.5 hp", 1, "12.5 A", "25 A", "12.5 A", "11.5 A"},
		{"3 hp", 1, "21.25 A", "45 A", "21.25 A", "19.55 A"},
		{"5 hp", 1, "35 A", "70 A", "35 A", "32.2 A"},
		{"5 hp", 3, "19 A", "40 A", "19 A", "17.48 A"},
		{"10 hp", 3, "35 A", "70 A", "35 A", "32.2 A"},
	} {
		f, why := Table(power(c.power), volts("230 V"), c.phase)
		if why != Told || Conductors(f.Current) != amps(c.carry) {
			t.Errorf("NEC 430.22, %s %d: %v, want %s", c.power, c.phase, Conductors(f.Current), c.carry)
		}
		if b := Breaker(f.Current); !b.Known || b.Size != amps(c.breaker) {
			t.Errorf("NEC 430.52, %s %d: %v, want %s", c.power, c.phase, b.Size, c.breaker)
		}
		if got := Overload(f.Current, 1.15); got != amps(c.overload) {
			t.Errorf("NEC 430.32, %s %d: %v, want %s", c.power, c.phase, got, c.overload)
		}
		if got := Overload(f.Current, 1.14); got != amps(c.small) {
			t.Errorf("NEC 430.32, %s %d, below a service factor of 1.15: %v, want %s", c.power, c.phase, got, c.small)
		}
	}
}

// NEC 240.6(A), the standard sizes to 150 A as two public copies list them; 10 A
// came later and is in neither.
func TestPublishedSizes(t *testing.T) {
	sizes := strings.Fields("15 20 25 30 35 40 45 50 60 70 80 90 100 110 125 150")
	for i, size := range sizes {
		if d := next(amps(size + " A")); !d.Known || d.Size != amps(size+" A") {
			t.Errorf("NEC 240.6(A): %s A gives %v", size, d.Size)
		}
		if i == 0 {
			continue
		}
		if d := next(amps(sizes[i-1]+" A") + 0.01); d.Size != amps(size+" A") {
			t.Errorf("NEC 240.6(A): just over %s A gives %v, want %s A", sizes[i-1], d.Size, size)
		}
	}
}
