package duct

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// rowOf draws a shop as small shops are: drops along one main, a gate on each,
// now and then a zone gate or a shared hose. Its main is wide for one machine
// and its fan good for two or three.
func rowOf(seed uint64, machines int) string {
	r := rand.New(rand.NewPCG(seed, 77))
	var text strings.Builder
	say := func(format string, values ...any) { fmt.Fprintf(&text, format+"\n", values...) }
	say("[shop]\nname = \"Row\"\nunits = \"metric\"\npeople_at_machines = %d", 3)
	say("[[collector]]\nname = \"Fan\"\ninlet = \"200 mm\"\nfan_curve = [[\"0 m3/s\", \"%d Pa\"], [\"0.4 m3/s\", \"2400 Pa\"], [\"0.9 m3/s\", \"600 Pa\"], [\"1.1 m3/s\", \"0 Pa\"]]", 2600+r.IntN(600))
	say("filter = { clean = \"100 Pa\", change = \"%d Pa\", at = \"0.5 m3/s\" }", 150+r.IntN(200))
	say("[[duct]]\nname = \"Main\"\nto = \"Fan\"\nsize = \"%d mm\"\nlength = \"%d m\"", 140+10*r.IntN(6), 3*machines)
	if r.IntN(2) == 0 {
		say("[[gate]]\nname = \"Zone gate\"\non = \"Main\"\nat = \"%d m\"", 1+r.IntN(3*machines-1))
	}
	for i := range machines {
		size := 80 + 20*r.IntN(3)
		say("[[machine]]\nname = \"M%d\"\nkind = \"other\"\nport = { size = \"%d mm\", flow = \"%d m3/h\" }", i, size, 200+50*r.IntN(8))
		say("[[duct]]\nname = \"D%d\"\nto = \"Main\"\njoins = \"%d m\"\nsize = \"%d mm\"\nlength = \"%d m\"\nserves = [\"M%d\"]", i, 3*i, size, 2+r.IntN(5), i)
		if r.IntN(3) == 0 {
			say("hose = { length = \"%d m\" }", 1+r.IntN(2))
		}
		if r.IntN(8) > 0 {
			say("[[gate]]\nname = \"G%d\"\non = \"D%d\"", i, i)
			if r.IntN(2) == 0 {
				say("leak = \"none\"")
			}
		}
	}
	return text.String()
}
