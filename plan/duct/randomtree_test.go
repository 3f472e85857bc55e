package duct

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// A drawing is a random shop file: a collector, ducts that join anywhere,
// ports with and without hoses, gates and holes. The same seed draws the same.
type drawing struct {
	*rand.Rand
	text strings.Builder

	seed      uint64
	ducts     int    // how many
	curve     string // the fan's points
	junctions string
	chance    chances
}

// chances are how often a thing is there.
type chances struct{ gate, none, hose, hole, end float64 }

var usual = chances{gate: 0.7, none: 0.2, hose: 0.5, hole: 0.15, end: 0.25}

func newDrawing(seed uint64, ducts int) *drawing {
	d := &drawing{Rand: rand.New(rand.NewPCG(seed, 20)), seed: seed, ducts: ducts, junctions: "by angle", chance: usual}
	d.curve = d.falling(1)
	return d
}

// often is the count of random trees: a thousand where DUSTBOOK_WHOLE is set.
func often() uint64 {
	if os.Getenv("DUSTBOOK_WHOLE") == "1" {
		return 1000
	}
	return 100
}

func (d *drawing) name() string { return fmt.Sprintf("seed %d", d.seed) }

func (d *drawing) say(format string, values ...any) { fmt.Fprintf(&d.text, format+"\n", values...) }

func (d *drawing) between(low, high float64) float64 { return low + (high-low)*d.Float64() }

func (d *drawing) pick(list ...string) string { return list[d.IntN(len(list))] }

// falling is a fan curve that never rises, up to a share of 2 m³/s.
func (d *drawing) falling(share float64) string {
	var points []string
	q, p := 0.0, d.between(500, 4000)
	for range 2 + d.IntN(6) {
		points = append(points, fmt.Sprintf(`["%.7f m3/s", "%.4f Pa"]`, q, p))
		q += share * d.between(0.02, 0.3)
		p *= d.between(0.3, 1)
	}
	points = append(points, fmt.Sprintf(`["%.7f m3/s", "0 Pa"]`, q+share*0.5))
	return strings.Join(points, ", ")
}

// shop draws the file and reads it.
func (d *drawing) shop(t testing.TB) *shop.Shop {
	t.Helper()
	d.say("[shop]\nname = \"Drawn\"\nunits = \"metric\"\naltitude = \"%.0f m\"", d.between(0, 2500))
	d.say("[method]\njunctions = %q\nsize_changes = %q", d.junctions, d.pick("taper", "abrupt", "none"))
	d.say("[[collector]]\nname = \"Fan\"\ninlet = \"%d mm\"\nfan_curve = [%s]", 100+25*d.IntN(9), d.curve)
	if d.Float64() < 0.6 {
		d.say("filter = { clean = \"%.0f Pa\", change = \"%.0f Pa\", at = \"0.5 m3/s\" }", d.between(20, 200), d.between(200, 600))
	}
	if d.Float64() < 0.6 {
		d.say("separator = { loss = \"%.0f Pa\", at = \"0.5 m3/s\" }\noutlet = { size = \"200 mm\", length = \"3 m\", loss = 0.5 }", d.between(20, 500))
	}
	lengths := make([]float64, d.ducts)
	joined := make([]bool, d.ducts)
	into := make([]int, d.ducts)
	for i := range into {
		lengths[i] = d.between(0.1, 30)
		if i > 0 {
			into[i] = d.IntN(i)
			joined[into[i]] = true
		}
	}
	for i := range into {
		d.duct(i, into[i], lengths, joined[i])
	}
	return mustRead(t, d.text.String())
}

// duct draws one duct with what is on it.
func (d *drawing) duct(i, into int, lengths []float64, joined bool) {
	d.say("[[duct]]\nname = \"D%d\"\nsize = \"%d mm\"\nmaterial = %q\nlength = \"%.4f m\"\nloss = %.3f", i, 40+10*d.IntN(30), d.pick("spiral steel", "smooth plastic"), lengths[i], d.between(0, 4)*float64(d.IntN(2)))
	if i == 0 {
		d.say("to = \"Fan\"")
	} else {
		d.say("to = \"D%d\"", into)
		if d.IntN(3) > 0 {
			d.say("joins = \"%.4f m\"", d.Float64()*lengths[into])
		}
		if d.IntN(2) > 0 {
			d.say("entry = \"%d deg\"", 5*d.IntN(19))
		}
	}
	if d.IntN(2) > 0 {
		d.say("fittings = [\"elbow 90\", \"elbow %d\"]", 10+d.IntN(80))
	}
	if serves := !joined && d.Float64() < 0.95 || d.Float64() < d.chance.end; serves {
		if d.Float64() < d.chance.hose {
			d.say("hose = { size = \"%d mm\", length = \"%.3f m\", stretched = %t }", 30+10*d.IntN(20), d.between(0, 8), d.IntN(2) > 0)
		}
		d.say("serves = [\"M%d\"]", i)
		d.say("[[machine]]\nname = \"M%d\"\nkind = \"other\"\nport = { size = \"%d mm\", flow = \"%.4f m3/s\", hood_loss = %.2f }", i, 40+10*d.IntN(20), d.between(0.01, 0.3), d.between(0, 2)*float64(d.IntN(4))/3)
	}
	if d.Float64() < d.chance.gate {
		d.say("[[gate]]\nname = \"G%d\"\non = \"D%d\"\nat = \"%.4f m\"", i, i, d.Float64()*lengths[i])
		switch chance := d.Float64(); {
		case chance < d.chance.none:
			d.say("leak = \"none\"")
		case chance < 0.6:
			d.say("leak = %.4f", d.between(0.001, 0.1))
		case chance < 0.8:
			d.say("leak = \"%.5f m3/s at 2000 Pa\"", d.between(0.0001, 0.01))
		}
	}
	if d.Float64() < d.chance.hole {
		d.say("[[leak]]\non = \"D%d\"\nhole = \"%.1f mm\"", i, d.between(1, 40))
		if d.IntN(2) > 0 {
			d.say("at = \"%.4f m\"", d.Float64()*lengths[i])
		}
	}
}

// opened is a random set of open gates.
func (d *drawing) opened(s *shop.Shop) map[*shop.Gate]bool {
	open := map[*shop.Gate]bool{}
	share := d.Float64()
	for _, g := range s.Gates {
		if d.Float64() < share {
			open[g] = true
		}
	}
	return open
}
